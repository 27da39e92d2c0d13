package upset

import (
	"cmp"
	"math"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/vessel"
)

// fail reports one failure of a course by every law it is run by.
func (r *reader) fail(n *course.Course, f *failure) {
	if f.needs != nil && !f.needs(n) {
		return
	}
	boils := r.boils(n)
	for i := range n.Runs {
		x := &n.Runs[i]
		if x.Missing != nil {
			r.missing(n, f.key, x)
			continue
		}
		from, to, ok := f.when(n, &x.Vessel.Plan)
		if !ok {
			continue
		}
		s := search{x: x, f: f, s: r.setting(), boils: boils.V + kelvin, closer: 1}
		s.s.air = air(n)
		if r.w == nil { // one of many runs, for a range
			s.closer = 0
		}
		shared, like := searched{}, false
		if f.as != "" && !heats(&x.Vessel.Plan) {
			shared, like = r.tried[tried{n, i, f.as}]
		}
		s.known = shared.tried
		worst, err := shared.worst, shared.err
		if !like || shared.from != from || shared.to != to {
			worst, err = s.worst(from, to)
			r.tried[tried{n, i, f.key}] = searched{from, to, s.tried, worst, err}
		}
		if err != nil {
			m := *x
			m.Missing = []working.Missing{working.Lacks("run", "")}
			r.missing(n, f.key, &m)
			continue
		}
		r.tell(n, f, x, boils, worst)
	}
}

// air is what the vessel of a course loses to still air, W/K; 0 where that is not
// known. A stirrer that goes on heats it to P/UA above the air within C/UA.
func air(n *course.Course) float64 {
	still := n.Stages[0].Still
	if still.None() || still.Unknown() {
		return 0
	}
	return max(still.V, 0)
}

// missing reports that what a failure does is not known.
func (r *reader) missing(n *course.Course, key string, x *course.Run) {
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If(key).By(string(x.Law))
	cond := x.Conditions()
	r.put("heat.temperature_peak", place, kase, working.Absent("T_max", "degC", x.Missing...), cond)
	r.put("gas.hydrogen.peak_rate", place, kase, working.Absent("F", "L/min", x.Missing...), cond)
	r.put("heat.time_to_boil", place, kase, working.Absent("t_b", "min", x.Missing...), cond)
}

// tell reports the worst of each kind, each with the moment it follows from.
func (r *reader) tell(n *course.Course, f *failure, x *course.Run, boils working.Num, worst [kinds]outcome) {
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If(f.key).By(string(x.Law))
	in := r.inputs(x, f)
	model := func(symbol, unit string, v float64, more ...working.Num) working.Num {
		return r.w.Model(symbol, unit, "heat and mass balance from the failure on, "+x.Balance(), v, append(more, in...)...)
	}
	cond := func(key string, o *outcome) phrase.Phrase {
		return phrase.On(r.w, key, says(r.w, f.key), when(r.w, o.at), x.Conditions())
	}
	hot, gas, soon := &worst[hottest], &worst[mostGas], &worst[soonest]
	r.put("heat.temperature_peak", place, kase, model("T_max", "degC", hot.run.Peak.Value-kelvin),
		cond("upset.from_peak", hot))
	r.put("gas.hydrogen.peak_rate", place, kase, r.flow(model("F_n", "mol/s", gas.run.Gas.Value)),
		cond("upset.from_gas", gas))
	r.put("heat.time_to_maximum_rate", place, kase, model("t_max", "min", hot.run.Heat.At/60), cond("upset.from", hot))
	if boils.Unknown() {
		r.put("heat.time_to_boil", place, kase, working.Absent("t_b", "min", boils.Missing()...), cond("upset.from", soon))
		return
	}
	r.put("heat.time_to_boil", place, kase, model("t_b", "min", boiling(&soon.run, boils.V+kelvin)/60, boils),
		cond("upset.from_boils", soon))
}

// says is what a failure, or something done wrong, is taken to be.
func says(w *working.Sheet, key string) phrase.Phrase {
	if w == nil {
		return phrase.Phrase{}
	}
	return phrase.Of("upset.how." + key)
}

// when is a moment of a course, in s, as words that the start of the powder follows.
func when(w *working.Sheet, t float64) phrase.Phrase {
	switch {
	case t == 0:
		return phrase.Of("upset.from_when")
	case t < 5400:
		return phrase.On(w, "upset.minutes_after", t/60)
	}
	return phrase.On(w, "upset.hours_after", t/3600)
}

// The kinds of worst.
const (
	hottest = iota
	mostGas
	soonest
	kinds
)

// mostRuns is how often a failure is run at most by one law.
const mostRuns = 25

// looking is the tolerance of the runs that only look for the worst moment, or
// for the ends of a range.
const looking = 1e-4

// search looks for the worst moment of a failure in the run it interrupts.
type search struct {
	x     *course.Run
	f     *failure
	s     setting
	boils float64 // K; NaN where not known
	runs  int

	closer int       // how often to look closer around the worst
	known  []outcome // of the same failure elsewhere in the run
	tried  []outcome // in order of time
}

// tried names the runs of a failure of a course by one of its laws.
type tried struct {
	course  *course.Course
	law     int
	failure string
}

// searched is what a search between two moments found.
type searched struct {
	from, to float64
	tried    []outcome
	worst    [kinds]outcome
	err      error
}

// outcome is what a failure at a moment leads to.
type outcome struct {
	at  float64 // s from the start of the course
	run vessel.Run
	bad [kinds]float64 // greater is worse
}

// worst are the outcomes of the worst moments between from and to: first at the
// moments the run itself marks, then closer around the worst of each kind.
// Those found are run once more with their peaks sought.
func (s *search) worst(from, to float64) ([kinds]outcome, error) {
	if to <= from {
		return s.only(from)
	}
	var best [kinds]outcome
	if err := s.try(s.moments(from, to)); err != nil {
		return best, err
	}
	for range s.closer {
		var more []float64
		for k := range kinds {
			more = append(more, s.beside(k)...)
		}
		if err := s.try(s.affordable(more)); err != nil {
			return best, err
		}
	}
	for k := range kinds {
		t := s.tried[s.most(k)].at
		if i := slices.IndexFunc(best[:k], func(o outcome) bool { return o.at == t }); i >= 0 {
			best[k] = best[i]
			continue
		}
		var err error
		if best[k], err = s.at(t, false); err != nil {
			return best, err
		}
	}
	return best, nil
}

// only is the outcome of a failure that has one moment.
func (s *search) only(t float64) ([kinds]outcome, error) {
	o, err := s.at(t, false)
	s.tried = append(s.tried, o)
	return [kinds]outcome{o, o, o}, err
}

// moments are where to look first: the ends, where the run changes, its own
// peaks, and some of its steps, which stand close where much happens.
func (s *search) moments(from, to float64) []float64 {
	out := []float64{from, to}
	for _, o := range s.known {
		if o.at > from && o.at < to {
			s.tried = append(s.tried, o)
		}
	}
	if s.tried != nil {
		return out
	}
	v := &s.x.Vessel
	add := func(t float64) {
		if t > from && t < to && len(out) < 10 && !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	add(v.MTSR.At)
	add(v.Gas.At)
	for i := range v.Windows {
		add(v.Windows[i].To)
	}
	times := v.Path.Times()
	for _, share := range [...]float64{0.5, 0.25, 0.75, 0.125, 0.375, 0.625} {
		add(times[int(share*float64(len(times)-1))])
	}
	slices.Sort(out)
	return out
}

// affordable drops moments already tried and those beyond the runs there are,
// with as many left as the last runs take.
func (s *search) affordable(moments []float64) []float64 {
	var out []float64
	for _, t := range moments {
		known := slices.ContainsFunc(s.tried, func(o outcome) bool { return o.at == t }) || slices.Contains(out, t)
		if !known && s.runs+len(out) < mostRuns-kinds {
			out = append(out, t)
		}
	}
	return out
}

// beside are the moments half-way to the neighbours of the worst of a kind.
func (s *search) beside(kind int) []float64 {
	i := s.most(kind)
	var out []float64
	if i > 0 {
		out = append(out, 0.5*(s.tried[i-1].at+s.tried[i].at))
	}
	if i < len(s.tried)-1 {
		out = append(out, 0.5*(s.tried[i].at+s.tried[i+1].at))
	}
	return out
}

// most is the first of the worst of a kind.
func (s *search) most(kind int) int {
	best := 0
	for i := range s.tried {
		if s.tried[i].bad[kind] > s.tried[best].bad[kind] {
			best = i
		}
	}
	return best
}

// try runs the failure at some moments, and keeps what it leads to.
func (s *search) try(moments []float64) error {
	for _, t := range moments {
		o, err := s.at(t, true)
		if err != nil {
			return err
		}
		s.tried = append(s.tried, o)
	}
	slices.SortFunc(s.tried, func(a, b outcome) int { return cmp.Compare(a.at, b.at) })
	return nil
}

// at runs the failure from a moment on until nothing waits.
func (s *search) at(t float64, coarse bool) (outcome, error) {
	s.runs++
	from, err := s.x.Vessel.Path.State(t)
	if err != nil {
		return outcome{}, err
	}
	p := s.x.Vessel.Plan
	p.Begin, p.Coarse = &from, coarse
	if coarse || s.closer == 0 {
		p.Tolerance = looking
	}
	p.Pieces = s.f.then(&p, t, &s.s)
	last := vessel.Piece{Until: followed}
	if n := len(p.Pieces); n > 0 {
		last = p.Pieces[n-1]
		last.Until, last.Dose, last.Lift, last.Settled = max(followed, last.Until+1), 0, last.Settled, false
		last.Added, last.Pour = 0, 0
	}
	p.Pieces = append(p.Pieces, last)
	if s.f.uncooled {
		p.Pieces = limited(p.Pieces, p.Capacity(&from)/s.s.air) // without end where the loss is not known
	}
	run, err := vessel.Simulate(p)
	if err != nil {
		return outcome{}, err
	}
	o := outcome{at: t, run: run}
	o.bad[hottest], o.bad[mostGas], o.bad[soonest] = run.Peak.Value, run.Gas.Value, -run.Heat.At
	if run.Peak.Value >= s.boils {
		o.bad[soonest] = followed - boiling(&run, s.boils)
	} else if !math.IsNaN(s.boils) {
		o.bad[soonest] = run.Peak.Value - s.boils // none boils: the one that comes closest
	}
	return o, nil
}
