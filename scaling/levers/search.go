package levers

import (
	"fmt"
	"slices"
	"sync"
	"sync/atomic"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/proposal"
	"etchbound/schemas/edit"
)

// mostTries is how often a search assesses at most, beside the reviews that it ends with.
const mostTries = 450

// search is a file on its way to exceed less. Chosen is the value of each choice, -1 where
// it stays as written.
type search struct {
	written  proposal.File
	choices  []choice
	chosen   []int
	kept     map[int]bool // choices that are not taken back
	views    []view
	now      standing
	tries    atomic.Int64
	judged   sync.Map // what was judged, by what is chosen: several ways of going on look at the same
	stated   int      // keys below measured, beside their source
	plain    bool     // no pairs and no steps that only come nearer
	progress func(tried, most int)
}

// pick is a choice with a value.
type pick struct{ choice, level int }

// with is what is chosen with some picks in the place of what was.
func (s *search) with(picks ...pick) []int {
	out := slices.Clone(s.chosen)
	for _, p := range picks {
		out[p.choice] = p.level
	}
	return out
}

// changes are those of what is chosen, in the order of the levers, with what was measured
// under other conditions taken out.
func (s *search) changes(chosen []int) []proposal.Change {
	var out []proposal.Change
	var last []proposal.Change // what moves steps stands behind what names them as they were
	for i, l := range chosen {
		switch {
		case l < 0:
		case s.choices[i].levels[l][0].Before || s.choices[i].levels[l][0].With != "":
			last = append(last, s.choices[i].levels[l]...)
		default:
			out = append(out, s.choices[i].levels[l]...)
		}
	}
	out = append(out, last...)
	keys := dropped(s, chosen)
	for _, key := range keys {
		out = append(out, proposal.Change{Edit: edit.Edit{Path: "measured." + key}})
	}
	if n := len(out); len(keys) > 0 && len(keys) == s.stated { // nothing stays of it but a source
		out = append(out[:n-len(keys)], proposal.Change{Edit: edit.Edit{Path: "measured"}})
	}
	return out
}

// dropped are the keys below measured whose conditions are moved.
func dropped(s *search, chosen []int) []string {
	var out []string
	for i, l := range chosen {
		if l < 0 {
			continue
		}
		for _, key := range s.choices[i].drops {
			if s.measured(key) && !slices.Contains(out, key) {
				out = append(out, key)
			}
		}
	}
	return out
}

// measured reports whether the route states a key below measured.
func (s *search) measured(key string) bool {
	m := &s.written.Case.Route.Measured
	switch key {
	case "conversion":
		return m.Conversion.Set
	case "curve":
		return m.Curve != nil
	case "kinetics":
		return m.Kinetics != ""
	case "td24":
		return m.TD24.Set
	}
	return false
}

// judgement is how what is chosen stands by so many views; not ok where the file is refused or
// cannot be assessed.
type judgement struct {
	standing
	ok bool
}

// try judges what is chosen; false where the file is refused or cannot be assessed. What was
// judged before counts as a try and is not judged again.
func (s *search) try(chosen []int) (standing, bool) {
	if s.tries.Add(int64(1+len(s.views))) > mostTries {
		return standing{}, false
	}
	name := fmt.Sprint(len(s.views), chosen)
	if x, there := s.judged.Load(name); there {
		j := x.(judgement)
		return j.standing, j.ok
	}
	out, ok := s.judge(chosen)
	s.judged.Store(name, judgement{out, ok})
	return out, ok
}

// judge is try without what was judged before.
func (s *search) judge(chosen []int) (standing, bool) {
	f, err := s.written.With(s.changes(chosen)...)
	if err != nil {
		return standing{}, false
	}
	out, err := stand(f, s.views, len(s.written.Case.Route.Steps))
	return out, err == nil
}

// tried is a way to choose with how it stands.
type tried struct {
	chosen []int
	standing
	ok bool
}

// all tries several ways, on every processor.
func (s *search) all(ways [][]int) []tried {
	out := make([]tried, len(ways))
	hazards.Each(len(ways), func(i int) {
		out[i].chosen = ways[i]
		out[i].standing, out[i].ok = s.try(ways[i])
	})
	s.progress(int(min(s.tries.Load(), mostTries)), mostTries)
	return out
}

// best is the first of those that stand best, if one is better than what there is.
func (s *search) best(list []tried) (tried, bool) {
	return s.first(list, (*standing).better)
}

// first is the first of those that stand best by a rule.
func (s *search) first(list []tried, better func(s, than *standing) bool) (tried, bool) {
	at := -1
	for i := range list {
		if list[i].ok && better(&list[i].standing, &s.now) && (at < 0 || better(&list[i].standing, &list[at].standing)) {
			at = i
		}
	}
	if at < 0 {
		return tried{}, false
	}
	return list[at], true
}

func (s *search) take(t *tried) { s.chosen, s.now = t.chosen, t.standing }

// of are the values of a choice beyond the one that is chosen.
func (s *search) of(i int) [][]int {
	var out [][]int
	for l := s.chosen[i] + 1; l < len(s.choices[i].levels); l++ {
		out = append(out, s.with(pick{i, l}))
	}
	return out
}

// begin takes what comes first, where something exceeds in its place that it takes away; it
// reports whether there was any.
func (s *search) begin() bool {
	any := false
	for i := range s.choices {
		c := &s.choices[i]
		here := func(list []figure.Finding) int {
			n := 0
			for k := range list {
				if x := &list[k]; x.Figure.Place == c.first && slices.Contains(c.helps, x.Figure.Quantity) {
					n++
				}
			}
			return n
		}
		if c.first.IsZero() || here(s.now.exceeding()) == 0 {
			continue
		}
		if t, ok := s.try(s.with(pick{i, 0})); ok && here(t.sure) == 0 {
			s.chosen, s.now, s.kept[i] = s.with(pick{i, 0}), t, true
			any = true
		}
	}
	return any
}

// run goes on until nothing helps.
func (s *search) run() {
	const often = 3 // changes that only come nearer
	for nearer := 0; ; {
		if s.alone() || !s.plain && s.pairs() {
			continue
		}
		if nearer++; s.plain || nearer > often || len(s.now.sure) == 0 || !s.nearer() {
			break
		}
	}
	s.prune()
}

// alone takes, lever by lever, the least value that leaves fewest exceeding.
func (s *search) alone() bool {
	any := false
	for i := range s.choices {
		if !s.serves(i) {
			continue
		}
		rule := (*standing).better
		if s.choices[i].etch {
			rule = (*standing).surer
		}
		if t, ok := s.least(s.of(i), rule); ok {
			s.take(&t)
			any = true
		}
	}
	return any
}

// serves reports whether a choice is worth trying. What the etch itself feels is changed
// for what exceeds over its best estimate alone.
func (s *search) serves(i int) bool {
	c := &s.choices[i]
	if c.etch {
		return !s.plain && c.helpsAny(s.now.exceeding())
	}
	return c.helpsAny(s.now.sure) || c.helpsAny(s.now.may)
}

// least is the first of some ways, the smallest change first, that stands best: of the
// least, the middle and the largest first, then of those below the one that is best.
func (s *search) least(ways [][]int, better func(s, than *standing) bool) (tried, bool) {
	looked := sampled(len(ways))
	list := s.all(chosenOf(ways, looked))
	first, ok := s.first(list, better)
	if !ok {
		return first, false
	}
	at := slices.IndexFunc(list, func(t tried) bool { return slices.Equal(t.chosen, first.chosen) })
	if at == 0 {
		return first, true
	}
	between := s.all(ways[looked[at-1]+1 : looked[at]])
	return s.first(append(between, first), better)
}

// sampled are the first, the middle and the last of n.
func sampled(n int) []int {
	switch {
	case n < 4:
		return []int{0, 1, 2}[:n]
	}
	return []int{0, n / 2, n - 1}
}

func chosenOf(ways [][]int, at []int) [][]int {
	out := make([][]int, len(at))
	for i, k := range at {
		out[i] = ways[k]
	}
	return out
}

// pairs takes a lever that takes something away and makes something else exceed, with
// those that help that, one after the other.
func (s *search) pairs() bool {
	for i := range s.choices {
		if !s.serves(i) {
			continue
		}
		ways := s.of(i)
		for _, first := range s.all(chosenOf(ways, sampled(len(ways)))) {
			if !first.ok || len(beyond(s.now.sure, first.sure))+len(beyond(s.now.may, first.may)) == 0 {
				continue
			}
			if t, ok := s.mended(first, i); ok {
				s.take(&t)
				return true
			}
		}
	}
	return false
}

// mended is a way with what it newly makes exceed helped by other levers than the one of
// it, if that is better than what there is.
func (s *search) mended(way tried, of int) (tried, bool) {
	const deep = 3 // levers beside it
	for range deep {
		new := append(beyond(way.sure, s.now.sure), beyond(way.may, s.now.may)...)
		if len(new) == 0 {
			break
		}
		list := s.all(s.against(&way, of, new))
		if t, ok := s.best(list); ok {
			return t, true
		}
		at := -1
		for k := range list {
			x := &list[k]
			n := len(beyond(x.sure, s.now.sure)) + len(beyond(x.may, s.now.may))
			if x.ok && !x.worsens(&way.standing) && n < len(new) {
				at, new = k, new[:n]
			}
		}
		if at < 0 {
			break
		}
		way = list[at]
	}
	return tried{}, false
}

// against are the ways in which other levers than one of them help some findings that
// come with a way.
func (s *search) against(way *tried, of int, new []figure.Finding) [][]int {
	var out [][]int
	for j := range s.choices {
		if j == of || !s.choices[j].helpsAny(new) {
			continue
		}
		n := len(s.choices[j].levels) - way.chosen[j] - 1
		for _, k := range sampled(n) {
			next := slices.Clone(way.chosen)
			next[j] = way.chosen[j] + 1 + k
			out = append(out, next)
		}
	}
	return out
}

// nearer takes the change after which what exceeds is over by least.
func (s *search) nearer() bool {
	var ways [][]int
	for i := range s.choices {
		if s.serves(i) {
			all := s.of(i)
			ways = append(ways, chosenOf(all, sampled(len(all)))...)
		}
	}
	at, list := -1, s.all(ways)
	for i := range list {
		x := &list[i]
		if x.ok && x.asGood(&s.now) && x.over < s.now.over-1e-3 && (at < 0 || x.over < list[at].over-1e-3) {
			at = i
		}
	}
	if at < 0 {
		return false
	}
	s.take(&list[at])
	return true
}

// prune takes back, from the largest change to the smallest, what buys nothing, and lets
// each stand at the least value that buys as much.
func (s *search) prune() {
	for i := len(s.chosen) - 1; i >= 0; i-- {
		if s.chosen[i] < 0 || s.kept[i] {
			continue
		}
		for _, ways := range [][][]int{{s.with(pick{i, -1})}, {s.with(pick{i, s.chosen[i] / 2})}} {
			list := s.all(ways)
			if list[0].ok && list[0].asGood(&s.now) {
				s.take(&list[0])
				break
			}
		}
	}
}
