package assess

import (
	"sync"

	"etchbound/chemicals"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Kept remembers what the stages of a case gave, so that the case with other data
// works out only what the data move. The result of a stage serves where every datum
// that it read has the same value, and what it was given by the stages before are
// the same results. Nothing else of the case may differ. It is safe for use by
// several goroutines.
type Kept struct {
	c     route.Case
	known *course.Known
	met   process.Meetings
	walks stage[*walked]
	found stage[[]course.Course]
	parts [Parts]stage[[]figure.Figure]
}

// Keep remembers nothing yet of a case but the runs that are known.
func Keep(c route.Case, known *course.Known) *Kept {
	return &Kept{c: c, known: known, met: process.Met(c.Route)}
}

// From has the walks of the case go on from a beginning that it has in common with others.
func (k *Kept) From(common *process.Common) *Kept {
	k.met = k.met.From(common)
	return k
}

// Anew assesses the case with other data whole, and neither uses nor remembers what a
// stage gave. It gives what Case does without a sheet.
func (k *Kept) Anew(st *chemicals.Store) Assessment {
	c := k.c
	c.Store = st
	return some(c, nil, k.met, course.Know(nil), All)
}

// Set is a set of parts.
type Set uint

// All is the set of all parts.
const All = Set(1)<<Parts - 1

// Of is the set of some parts.
func Of(parts ...Part) Set {
	var out Set
	for _, p := range parts {
		out |= 1 << p
	}
	return out
}

// Has reports whether a part is in the set.
func (s Set) Has(p Part) bool { return s&(1<<p) != 0 }

// whole is the set with the parts that those in it stand on.
func (s Set) whole() Set {
	if s.Has(Upset) {
		s |= Of(Gas, Thermal)
	}
	return s
}

// runs reports whether a part of the set looks at courses.
func (s Set) runs() bool {
	for p := range readers {
		if readers[p].runs && s.Has(Part(p)) {
			return true
		}
	}
	return false
}

// GivenBy is the set of parts that may give a quantity.
func GivenBy(quantity string) Set {
	if s, ok := givenBy[figure.Row(quantity).Family]; ok {
		return s
	}
	return All
}

// givenBy is by the family of a quantity.
var givenBy = map[figure.Family]Set{
	"gas":        Of(Gas, Upset, Sums),
	"vessel":     Of(Gas),
	"heat":       Of(Thermal, Upset, Sums),
	"fluoride":   Of(Fluoride, Sums),
	"air":        Of(Air, Upset, Sums),
	"wash":       Of(Wash, Sums),
	"neutralise": Of(Waste, Sums),
	"spill":      Of(Waste, Sums),
	"order":      Of(Order),
	"store":      Of(Storage),
	"handling":   Of(Handling),
	"account":    Of(Account),
}

// Lot are the figures of a part, with a number of their own: lots of the same part
// and number are the same lot. Asked are the places whose figures are there.
type Lot struct {
	Number  int
	Figures []figure.Figure
	Asked   figure.Asked
}

// Lots are the figures of an assessment by their parts.
type Lots struct {
	Of  [Parts]Lot
	Err error // the route cannot be walked

	walk    *walked
	courses []course.Course // where a part that is there looks at them
}

// With assesses the case with other data, as far as some of its parts: the figures
// of others may be left out, and then a sum lacks their terms. It gives what Case
// does without a sheet.
func (k *Kept) With(st *chemicals.Store, want Set) Lots { return k.At(st, want, figure.Everywhere) }

// At is With as far as some places: of a part that can be read for some of them, the
// figures of others may be left out.
func (k *Kept) At(st *chemicals.Store, want Set, asked figure.Asked) Lots {
	c := k.c
	at := func(st *chemicals.Store) route.Case { c := c; c.Store = st; return c }
	walk := k.walks.of(st, from{}, func(st *chemicals.Store) *walked { return walk(at(st), nil, k.met) })
	if walk.gave.err != nil {
		return Lots{Err: walk.gave.err}
	}
	want = want.whole()
	courses := &result[[]course.Course]{}
	if want.runs() {
		courses = k.found.of(st, from{walk.number}, func(st *chemicals.Store) []course.Course {
			return course.Find(at(st), nil, &walk.gave.walk, k.known)
		})
	}
	out := Lots{walk: walk.gave, courses: courses.gave}
	part := func(p Part, from from, make func(st *chemicals.Store) []figure.Figure) {
		r := k.parts[p].of(st, from, make)
		out.Of[p] = Lot{r.number, r.gave, figure.Everywhere}
	}
	for p := range readers {
		if !want.Has(Part(p)) {
			continue
		}
		from := from{walk.number}
		if readers[p].runs {
			from[1] = courses.number
		}
		out.Of[p] = k.read(Part(p), st, from, asked, func(st *chemicals.Store, asked figure.Asked) []figure.Figure {
			return readers[p].some(at(st), walk.gave, courses.gave, asked)
		})
	}
	if want.Has(Upset) {
		gas, heat := &out.Of[Gas], &out.Of[Thermal]
		part(Upset, from{walk.number, courses.number, gas.Number, heat.Number}, func(st *chemicals.Store) []figure.Figure {
			return failures(at(st), nil, walk.gave, courses.gave, k.known, gas.Figures, heat.Figures)
		})
	}
	if want.Has(Account) {
		part(Account, from{walk.number}, func(*chemicals.Store) []figure.Figure { return walk.gave.account() })
	}
	if want.Has(Sums) {
		k.sum(st, &out)
	}
	return out
}

// read are the figures of a reader, of everywhere where those are kept.
func (k *Kept) read(p Part, st *chemicals.Store, from from, asked figure.Asked,
	make func(*chemicals.Store, figure.Asked) []figure.Figure) Lot {
	if readers[p].at == nil {
		asked = figure.Everywhere
	}
	if asked != figure.Everywhere {
		if r := k.parts[p].find(st, from); r != nil {
			return Lot{r.number, r.gave, figure.Everywhere}
		}
	}
	from[Parts] = int(asked)
	r := k.parts[p].of(st, from, func(st *chemicals.Store) []figure.Figure { return make(st, asked) })
	return Lot{r.number, r.gave, asked}
}

// Assessment is At as an assessment, of some parts.
func (k *Kept) Assessment(st *chemicals.Store, want Set, asked figure.Asked) Assessment {
	l := k.At(st, want, asked)
	if l.Err != nil {
		return Assessment{Err: l.Err}
	}
	a := Assessment{Walk: l.walk.walk, Courses: l.courses, Warnings: l.walk.walk.Warnings}
	if want.whole().runs() {
		a.Runs = l.walk.runs()
	}
	for p := range l.Of {
		a.Figures, a.Counts[p] = append(a.Figures, l.Of[p].Figures...), len(l.Of[p].Figures)
	}
	return a
}

// sum adds the sums of the parts that are there.
func (k *Kept) sum(st *chemicals.Store, out *Lots) {
	var from from
	var parts [Parts][]figure.Figure
	for p := range out.Of {
		if terms().Has(Part(p)) {
			from[p], parts[p] = out.Of[p].Number, out.Of[p].Figures
		}
	}
	r := k.parts[Sums].of(st, from, func(*chemicals.Store) []figure.Figure { return sums(nil, &parts) })
	out.Of[Sums] = Lot{r.number, r.gave, figure.Everywhere}
}

// from are the numbers of the results of earlier stages, and last the places that are
// asked for.
type from [Parts + 1]int

// stage remembers what one stage gave.
type stage[T any] struct {
	mu   sync.Mutex
	next int
	kept map[from][]*result[T]
	used []*result[T] // the last used last
}

// result is what a stage gave, of what.
type result[T any] struct {
	number int // from 1, in its stage
	from   from
	reads  *chemicals.Reads
	gave   T
}

// most is how many results of a stage are kept: those used last.
const most = 24

// of is the result of a stage, worked out unless it is kept.
func (s *stage[T]) of(st *chemicals.Store, from from, make func(*chemicals.Store) T) *result[T] {
	if r := s.find(st, from); r != nil {
		return r
	}
	noting, reads := st.Noting()
	r := &result[T]{from: from, reads: reads, gave: make(noting)}
	s.keep(r)
	return r
}

func (s *stage[T]) find(st *chemicals.Store, from from) *result[T] {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, r := range s.kept[from] {
		if r.reads.Same(st) {
			s.touch(r)
			return r
		}
	}
	return nil
}

// touch makes a result the last used.
func (s *stage[T]) touch(r *result[T]) {
	for i := len(s.used) - 1; i >= 0; i-- {
		if s.used[i] == r {
			copy(s.used[i:], s.used[i+1:])
			s.used[len(s.used)-1] = r
			return
		}
	}
}

func (s *stage[T]) keep(r *result[T]) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.kept == nil {
		s.kept = map[from][]*result[T]{}
	}
	s.next++
	r.number = s.next
	if len(s.used) == most {
		s.drop(s.used[0])
	}
	s.kept[r.from] = append(s.kept[r.from], r)
	s.used = append(s.used, r)
}

// drop forgets a result, the one used longest ago.
func (s *stage[T]) drop(r *result[T]) {
	s.used = append(s.used[:0], s.used[1:]...)
	all := s.kept[r.from]
	for i := range all {
		if all[i] == r {
			all = append(all[:i], all[i+1:]...)
			break
		}
	}
	if len(all) == 0 {
		delete(s.kept, r.from)
		return
	}
	s.kept[r.from] = all
}
