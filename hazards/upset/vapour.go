package upset

import (
	"math"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Breath tells what an acid does to the air that leaves in a step, n mol/s of it and all mol
// at the most.
type Breath func(step int, agent string, n, all working.Num, kase figure.Case, says phrase.Phrase) []figure.Figure

// lot is a liquor that may boil, once everything is in.
type lot struct {
	set, heat, capacity, boils, mass working.Num // degC, kJ, J/K, degC, g
	acid                             [2]working.Num
}

// acids are the vapours that go off with a liquor: the agent, and what of it there is.
var acids = [...]struct {
	agent, formula string
	of             func(*process.Acids) working.Num
}{
	{"hf", "HF", func(l *process.Acids) working.Num { return l.Fluoride }},
	{"hcl", "HCl", func(l *process.Acids) working.Num { return l.HCl }},
}

// lot is the liquor of a course in which the last of its etches began, and at which
// temperature it boils; what is put in later cools nothing, but its acid can go off.
func (r *reader) lot(w *working.Sheet, n *course.Course, boils working.Num) lot {
	out := lot{set: n.Stages[0].Set, heat: n.Heat, capacity: n.Capacity, boils: boils}
	for i := range n.Stages {
		s := &n.Stages[i]
		if s.Set.V > out.set.V {
			out.set = s.Set
		}
		here := s.Done.Contents()
		held := process.AcidsIn(w, here)
		for j := range acids {
			if a := acids[j].of(&held); out.acid[j].None() || a.Unknown() || a.V > out.acid[j].V {
				out.acid[j] = a
			}
		}
		if s.Etches == nil {
			continue
		}
		var masses []working.Num
		for j := range here.Liquid {
			masses = append(masses, here.Liquid[j].Mass)
		}
		out.mass = w.Sum("m_l", "g", masses...)
	}
	return out
}

// shown is a lot of a route that was assessed again, as this sheet shows it.
func (r *reader) shown(l *lot, from working.Num) lot {
	show := func(x working.Num) working.Num {
		if x.None() || x.Unknown() {
			return x
		}
		return r.w.Model(x.Symbol, x.Unit, model, x.V, from).Worse(x.Status)
	}
	out := lot{show(l.set), show(l.heat), show(l.capacity), show(l.boils), show(l.mass), l.acid}
	for i := range out.acid {
		out.acid[i] = show(out.acid[i])
	}
	return out
}

// vapours reports the acid that goes off with what boils, of every step that reacts as it is
// meant and of every failure, each by the worst of its laws. A place that is shut holds it.
//
//	n_v = above(T_f,T_b) (max(T_f, T + Q/C) - T_b) C/1000/L       [mol of liquor]
//	n_a = min(N, n_v)                                             [mol of acid]
//	n_e = min(n_a/t_w, F/Vm q/L)                                  [mol/s]
//
// F is the largest flow of hydrogen by then, and q the heat that comes with a mole of it.
func (r *reader) vapours(n *course.Course) {
	p := r.c.Route.Place(n.Stages[0].Done.Place)
	if r.b.Breath == nil || p == nil || p.Closure == route.Closed && p.ClosureStated {
		return
	}
	meant := r.lot(r.w, n, r.boils(n))
	lost := meant.boils.Unknown()
	if lost {
		r.perhaps(n, &meant)
	}
	for i := 0; i < len(n.Stages) && (!lost || strange(n)); i++ {
		x := r.meant(n, i)
		r.vapour(n, &meant, &x)
	}
	own, place := figure.NewSet(r.out), figure.Step(n.Stages[0].Step.Number)
	for _, key := range Keys() {
		if _, other := OtherAcid(key); other || AsMeant(key) || lost && key == perhaps {
			continue
		}
		x := boiled{kase: figure.If(key), step: n.Stages[0].Step.Number, says: says(r.w, key)}
		switch key {
		case "acid_onto_powder":
			x.says = phrase.Of("upset.acid_onto_powder")
		case "base_added":
			x.says = phrase.Of("upset.base_added")
		}
		x.take(own, "heat.temperature_peak", place, key)
		x.take(own, "gas.hydrogen.peak_rate", place, key)
		l := meant
		if own, changed := r.lots[lotOf{place, key}]; changed {
			l = own
		}
		r.vapour(n, &l, &x)
	}
}

// strange reports whether something in a course is not held: as it is meant it has its
// figures then, as unknown, as it had them with what is held in its place.
func strange(n *course.Course) bool {
	return slices.ContainsFunc(n.Stages, func(s course.Stage) bool {
		here := s.Done.Contents()
		return slices.ContainsFunc(here.Liquid, func(q process.Pool) bool { return q.Stranger() != nil })
	})
}

// meant is a stage as it is meant, by the worst of its laws.
func (r *reader) meant(n *course.Course, stage int) boiled {
	s := &n.Stages[stage]
	place := figure.Step(s.Step.Number)
	x := boiled{kase: figure.By(figure.Boiling), step: s.Step.Number, says: phrase.Of("upset.boils_as_run")}
	x.take(r.b.Heat, "heat.temperature_peak", place, "")
	x.take(r.b.Gas, "gas.hydrogen.peak_rate.during_addition", place, "")
	x.take(r.b.Gas, "gas.hydrogen.peak_rate.after_addition", place, "")
	return x
}

// perhaps is a liquor of which nobody knows where it boils: whether it does is not known by
// any failure, and one of them says so in the step where failures of the course stand.
func (r *reader) perhaps(n *course.Course, l *lot) {
	for i := range n.Stages {
		x := r.meant(n, i)
		if x.top.None() {
			continue
		}
		x.kase, x.says, x.step = figure.If(perhaps), phrase.Of("upset.base_added"), n.Stages[0].Step.Number
		r.vapour(n, l, &x)
		return
	}
}

// perhaps is the failure that says so: one that every case knows, a brief one too.
const perhaps = "base_added"

// lotOf is where and by which failure a liquor is another one.
type lotOf struct {
	place figure.Place
	key   string
}

// boiled is a step that may boil, as it is meant or by a failure: how hot it gets, degC, and
// the largest flow of hydrogen, L/min, by the worst of its laws.
type boiled struct {
	kase      figure.Case
	step      int
	top, flow working.Num
	searched  bool
	says      phrase.Phrase
}

// take takes the greatest figure of a quantity in a place by any law; what is not known is
// greater than anything.
func (x *boiled) take(figs *figure.Set, quantity string, place figure.Place, failure string) {
	if figs == nil {
		return
	}
	to := &x.flow
	if quantity == "heat.temperature_peak" {
		to = &x.top
	}
	for f := range figs.At(quantity, place) {
		if f.Case.Failure != failure || f.Case.State == figure.Closed {
			continue
		}
		x.searched = x.searched || f.Searched
		if v := f.Value; to.None() || v.Unknown() || !to.Unknown() && v.V > to.V {
			*to = v
		}
	}
}

// vapour reports what of each acid goes off in a step, what it does to the air, and how much
// of the liquor it is.
func (r *reader) vapour(n *course.Course, l *lot, x *boiled) {
	if x.top.None() {
		return
	}
	place, st := figure.Step(x.step), r.c.Store
	r.searched = x.searched
	defer func() { r.searched = false }()
	b, set, q, c, lv := l.boils.As("T_b"), l.set.As("T"), l.heat.As("Q"), l.capacity.As("C"),
		st.Num("water.vaporisation").As("L")
	t := x.top.As("T_f")
	if t.Unknown() && !warms[x.kase.Failure] { // whichever law holds, no more than all of the heat is in it
		t = r.w.Line("T_f", "degC", "T+Q*1000/C", set.V+q.V*1000/c.V, set, q, c).Worse(working.Bound)
	}
	nv := r.w.Line("n_v", "mol", "above(T_f,T_b)*max(0,max(T_f,T+Q*1000/C)-T_b)*C/1000/L",
		working.Above(t.V, b.V)*max(0, max(t.V, set.V+q.V*1000/c.V)-b.V)*c.V/1000/lv.V, t, b, set, q, c, lv)
	M, m := process.MolarMass(st, r.w, "H2O").As("M"), l.mass.As("m_l")
	r.put("heat.boiled_off.share", place, x.kase, r.w.Line("x", "1", "n_v*M/m_l", nv.V*M.V/m.V, nv, M, m), x.says)
	per := r.perHydrogen(n)
	for i := range acids {
		all := l.acid[i]
		if all.None() || !all.Unknown() && all.V == 0 {
			continue
		}
		a := &acids[i]
		N, M, tw := all.As("N"), process.MolarMass(st, r.w, a.formula).As("M"), st.Num("kinetics.wetting").As("t_w")
		na := r.w.Line("n_a", "mol", "min(N,n_v)", math.Min(N.V, nv.V), N, nv).Worse(working.Bound)
		r.of("air.boiled_off", place, a.agent, x.kase, r.w.Line("m", "g", "n_a*M", na.V*M.V, na, M), x.says)
		n := r.w.Line("n_e", "mol/s", "n_a/t_w", na.V/tw.V, na, tw)
		if f := x.flow.As("F"); !f.None() && !f.Unknown() && !per.Unknown() {
			n = r.w.Line("n_e", "mol/s", "min(n_a/t_w,F/60/Vm*q/L)", min(na.V/tw.V, f.V/60/r.vm.V*per.V/lv.V), na, tw, f, r.vm,
				per, lv)
		}
		for _, f := range r.b.Breath(x.step, a.agent, n.Worse(working.Bound), na, x.kase, x.says) {
			f.Searched, f.Value = x.searched, r.w.Keep(f.Value)
			r.out = append(r.out, f)
		}
	}
}

// warms are the failures that bring heat of their own.
var warms = map[string]bool{"heater_on": true, "bath_wrong": true, "base_added": true}

// perHydrogen is the most heat that comes with a mole of hydrogen in a course, kJ/mol; not
// known where something reacts that gives none.
func (r *reader) perHydrogen(n *course.Course) working.Num {
	most := working.Absent("q", "kJ/mol", working.Lacks("run", ""))
	for i := range n.Stages {
		for _, e := range n.Stages[i].Etches {
			x := &r.b.Walk.Etches[e]
			q, g := course.HeatOf(r.w, x).As("Q"), r.w.Sum("n_H2", "mol", course.GasOf(x)...).As("n_H2")
			v := r.w.Line("q", "kJ/mol", "Q/n_H2", q.V/g.V, q, g)
			if v.Unknown() || !(g.V > 0) {
				return working.Absent("q", "kJ/mol", working.Lacks("run", ""))
			}
			if most.Unknown() || v.V > most.V {
				most = v
			}
		}
	}
	return most
}
