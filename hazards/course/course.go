package course

import (
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Course is one lot of etchant with its powder, from the step in which they
// meet until they are parted.
type Course struct {
	Stages   []Stage
	Heat     working.Num // kJ of everything that reacts
	Gas      working.Num // mol of hydrogen of everything that reacts
	Capacity working.Num // J/K of what is in the vessel when the last of it can react, low end
	Liquid   working.Num // mL in the vessel when the powder is in
	Space    working.Num // mL of gas over it; unknown where the contents leave none
	Still    working.Num // W/K to still air alone at its first stage; no symbol where no stirrer heats
	Runs     []Run       // by the laws that are integrated

	Incomplete []working.Missing // what of the heat capacity is not known
}

// Stage is one step of a course.
type Stage struct {
	Step     *route.Step
	Done     *process.Done
	Etches   []int       // etches that begin here
	Over     working.Num // s over which they begin; the wetting time where all goes in at once
	GoesIn   working.Num // s of it in which something goes in: less than all of it where that comes in portions
	AtOnce   bool
	Onto     *Onto             // where liquor is poured on to powder that lies there; nil elsewhere
	Heat     working.Num       // kJ of what begins here
	Gas      working.Num       // mol of hydrogen of what begins here
	Hold     working.Num       // s that the step lasts once everything is in
	Filled   working.Num       // J/K of what is in the vessel once everything is in, low end
	Set      working.Num       // degC
	Exchange                   // with the bath, the liquid in its jacket through the wall, or the room
	Stirring working.Num       // W that a stirrer puts in; no symbol where none counts
	Unheated bool              // nobody states what its stirrer puts in, and that is left out
	least    float64           // W/K that it loses at least, at the low ends of what that stands on
	Cooled   phrase.Phrase     // what cools
	Iced     bool              // it stands in the ice bath of its place
	Ice      *Ice              // that bath; nil where it stands in none
	Jacket   *Jacket           // what flows around it; nil where it stands in none, or that is not all stated
	Unsaid   []working.Missing // of its jacket, which counts for nothing then
	Loose    []working.Missing // of what cools it and how much that takes; nil where both are stated
	Bath     bool              // its place has a bath or a jacket
	Guessed  bool              // that bath is of ice, and nobody states how warm it is
	Boils    working.Num       // degC, boiling point of the liquor as it is in this step
	Boiling  phrase.Phrase     // what that holds for
}

// Find lists the courses of a walk, in the order they begin, with their runs.
// Runs of the same plan are taken from those known, and are known from then on.
func Find(c route.Case, w *working.Sheet, k *process.Walk, known *Known) []Course {
	f := finder{c: c, w: w, k: k, known: known}
	var out []Course
	seen := map[int]bool{}
	for i := range k.Steps {
		d := &k.Steps[i]
		var begin []int
		for _, e := range d.Etches {
			if !seen[e] && follows(k.Etches[e].Family) {
				begin = append(begin, e)
			}
		}
		if begin == nil {
			continue
		}
		n, place := Course{}, d.Place
		for j := i; j < len(k.Steps); j++ {
			at := &k.Steps[j]
			if j > i && at.Quenched != nil && at.Quenched.From.Place == place {
				place = at.Place // what waits goes on where it is poured to
			}
			if at.Place != place || !meets(at.Etches, begin) {
				if at.Place == place {
					break
				}
				continue
			}
			for _, e := range at.Etches {
				seen[e] = true
			}
			n.Stages = append(n.Stages, f.stage(at))
		}
		f.sum(&n)
		f.room(&n)
		f.still(&n)
		f.runs(&n)
		out = append(out, n)
	}
	return out
}

// Charged reports whether what begins to react in a stage was charged with the liquor,
// which takes no time of addition: that all of it reacts at once stands in its place.
func (s *Stage) Charged() bool { return s.AtOnce && s.Etches != nil && s.Step.Do == "charge" }

// Tipped reports whether what begins in a stage goes in all at once as it is written: it is
// charged with the liquor, or its addition takes no time.
func (s *Stage) Tipped() bool { return s.Charged() || s.AtOnce && s.Etches != nil && s.Step.Over.Set }

// Portions is how many what begins in a stage goes in by.
func (s *Stage) Portions() int {
	if s.AtOnce {
		return 1
	}
	return max(s.Step.Portions, 1)
}

// follows reports whether a way of etching gives hydrogen in a vessel of
// liquor; a melt and a current are no such thing.
func follows(x process.Family) bool { return x != process.Molten && x != process.Current }

func meets(a, b []int) bool {
	return slices.ContainsFunc(a, func(x int) bool { return slices.Contains(b, x) })
}

type finder struct {
	c route.Case
	w *working.Sheet
	k *process.Walk

	known *Known
}

func (f *finder) stage(d *process.Done) Stage {
	s := Stage{Step: &f.c.Route.Steps[d.Number-1], Done: d, Set: d.Hot.As("T")}
	var heat, gas []working.Num
	for _, e := range d.Etches {
		if x := &f.k.Etches[e]; x.Step == d.Number && follows(x.Family) {
			s.Etches = append(s.Etches, e)
			heat, gas = append(heat, heatOf(x)...), append(gas, GasOf(x)...)
		}
	}
	if s.Etches != nil {
		s.Heat, s.Gas = f.w.Sum("Q", "kJ", heat...), f.w.Sum("n_H2", "mol", gas...)
		s.Over = f.c.Given("t", "s", s.Step.Over)
		if s.Over.V == 0 || !s.Step.Over.Set { // within no time is at once
			s.Over, s.AtOnce = f.c.Store.Num("kinetics.wetting").As("t"), true
		}
		s.GoesIn = s.Over
		if s.Portions() > 1 {
			s.GoesIn = f.c.GoesIn(f.w, s.Step)
		}
	}
	s.Hold = f.holds(s.Step)
	s.Filled = capacity(f.w, d.Contents())
	if s.Etches != nil {
		s.Onto = f.onto(&s)
	}
	s.Boils, s.Boiling = Boiling(f.c, f.w, d)
	f.cooling(&s)
	f.stirring(&s)
	s.Ice = f.ice(&s)
	return s
}

// holds is how long a step lasts once everything is in. One that only warms or cools
// takes time whether it says so or not, and what waits in the liquor goes on in it.
func (f *finder) holds(s *route.Step) working.Num {
	switch v := s.Verb(); {
	case s.Time.Set:
		return f.c.Given("t", "s", s.Time)
	case v.Cooled && v.Needs == "nothing":
		return f.c.Store.Num("course.unstated_time").As("t")
	}
	return working.Exact("t", "s", 0, "the step says no time")
}

// MayStand reports whether a stage goes on once everything is in: by the time that its step
// states, and a wash by whatever time it does not.
func (s *Stage) MayStand() bool {
	does := s.Step.Verb().Does
	return s.Hold.V != 0 || (does == route.Washes || does == route.Prewashes) && !s.Step.Time.Set
}

// room says how much liquor there is when the powder is in, and how much gas
// over it; what is added later changes nothing of that.
func (f *finder) room(n *Course) {
	first := n.Stages[0].Done
	p := f.c.Route.Place(first.Place)
	if p == nil {
		n.Liquid, n.Space = working.Absent("V_l", "mL", working.Lacks("place", first.Place)),
			working.Absent("V_g", "mL", working.Lacks("place", first.Place))
		return
	}
	r := process.RoomIn(f.c, f.w, f.k, p, first.Contents())
	n.Liquid, n.Space = r.Liquid, r.Space
	if n.Space.V <= 0 {
		n.Space = working.Absent("V_g", "mL", working.Lacks("no_gas_space", p.Key))
	}
}

func heatOf(e *process.Etch) []working.Num {
	var out []working.Num
	if !e.Heat.None() {
		out = append(out, e.Heat)
	}
	for i := range e.Dissolved {
		out = append(out, e.Dissolved[i].Heat)
	}
	return out
}

// HeatOf is the heat of one etch with its impurities, in kJ.
func HeatOf(w *working.Sheet, e *process.Etch) working.Num { return w.Sum("Q", "kJ", heatOf(e)...) }

// GasOf are the hydrogen of one etch and of its impurities, in mol; none where there is
// none.
func GasOf(e *process.Etch) []working.Num {
	var out []working.Num
	if !e.Hydrogen.None() {
		out = append(out, e.Hydrogen)
	}
	for i := range e.Dissolved {
		out = append(out, e.Dissolved[i].Hydrogen)
	}
	return out
}

func (f *finder) sum(n *Course) {
	var heat, gas []working.Num
	for i := range n.Stages {
		if s := &n.Stages[i]; s.Etches != nil {
			heat, gas = append(heat, s.Heat), append(gas, s.Gas)
		}
	}
	n.Heat, n.Gas = f.w.Sum("Q", "kJ", heat...), f.w.Sum("n_H2", "mol", gas...)
	last := &n.Stages[lastEtch(n)]
	n.Capacity = last.Filled
	if last.Onto != nil {
		n.Capacity = last.Onto.Capacity
	}
	for i := range n.Stages {
		if n.Stages[i].Filled.Status == working.Bound {
			// Too low a heat capacity is no bound of a run: what is colder than its
			// bath would warm too fast, or too slowly.
			n.Incomplete = []working.Missing{working.Lacks("heat_capacity_solids", "")}
		}
	}
}

// capacity is the heat capacity of what is in a place, J/K, low end.
func capacity(w *working.Sheet, s *process.State) working.Num {
	if more := s.Unsaid(); more != nil {
		return working.Absent("C", "J/K", more...)
	}
	return s.HeatCapacity(w)
}

// lastEtch is the last stage of a course in which an etch begins.
func lastEtch(n *Course) int {
	last := 0
	for i := range n.Stages {
		if n.Stages[i].Etches != nil {
			last = i
		}
	}
	return last
}
