package gas

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/vessel"
)

// headspace reports how long the gas over the liquor can burn if it is lit. It
// never gets better by itself: above the upper limit, air that is drawn back
// makes it flammable again.
func (r *reader) headspace(n *course.Course) {
	place := figure.Step(n.Stages[0].Step.Number)
	l, u := r.c.Store.Num("hydrogen.flammable"), r.c.Store.Num("hydrogen.upper")
	for i := range n.Runs {
		x := &n.Runs[i]
		missing := working.Joined(x.Missing, n.Space.Missing())
		cond := phrase.On(r.w, "gas.headspace", x.Conditions())
		if missing != nil {
			r.put("gas.headspace.flammable_time", place, "", figure.By(string(x.Law)), working.Absent("t", "min", missing...),
				cond)
			continue
		}
		at := func(share float64) (float64, bool) { return r.passes(x, n.Space.V, share) }
		y := process.Flammable(r.c.Store, r.w)
		from, ok := at(y.V)
		end := x.Vessel.Path.Times()
		t := 0.0
		if ok {
			t = end[len(end)-1] - from
		}
		if r.w != nil {
			cond = phrase.Of("gas.headspace_passes", x.Conditions(), passing(at, l.V), passing(at, u.V))
		}
		v := r.w.Model("t", "min", "hydrogen in the headspace, "+x.Balance(), t/60,
			append([]working.Num{y, n.Space, r.vm}, x.Inputs...)...)
		r.put("gas.headspace.flammable_time", place, "", figure.By(string(x.Law)), v, cond)
	}
}

// passes is the time in s at which the headspace passes a share of hydrogen.
func (r *reader) passes(x *course.Run, space, share float64) (float64, bool) {
	need := vessel.VolumeFor(share, space/1000) / r.vm.V // mol
	return x.Vessel.Path.Given(need)
}

// passing says when the headspace passes a share in vol%.
func passing(at func(float64) (float64, bool), percent float64) phrase.Phrase {
	t, ok := at(percent / 100)
	if !ok {
		return phrase.Of("gas.passes_not", percent)
	}
	return phrase.Of("gas.passes", percent, t/60)
}

// closing reports how soon each place that can be shut is at 10 kPa, if that
// happens in the moment of the largest flow:
//
//	t = p V_g/(R T)/F      [min: kPa, mL, J/mol/K, K, mol/min]
//
// A place that powder is moved to is given the largest flow of all vessels.
func (r *reader) closing(courses []course.Course) {
	for _, x := range r.open {
		r.shutWhere(x, courses)
	}
	for _, x := range r.shut {
		own := r.shutWhere(x, courses)
		if space, ok := r.spaces[x.key]; ok && !own && len(courses) > 0 {
			r.shutting(x, space, worstRuns(courses), "gas.shut_moved")
		}
	}
}

// shutWhere reports the time of a place in which powder reacts, by the worst of its courses
// and the least of their gas spaces; false where none does.
func (r *reader) shutWhere(x shut, courses []course.Course) bool {
	var runs []course.Run
	var space working.Num
	for i := range courses {
		n := &courses[i]
		if n.Stages[0].Done.Place != x.key {
			continue
		}
		if runs == nil || n.Space.Unknown() || n.Space.V < space.V {
			space = n.Space
		}
		runs = append(runs, n.Runs...)
	}
	if runs == nil {
		return false
	}
	r.shutting(x, space, runs, "gas.shut")
	return true
}

// worstRuns are the runs of all courses.
func worstRuns(courses []course.Course) []course.Run {
	var out []course.Run
	for i := range courses {
		out = append(out, courses[i].Runs...)
	}
	return out
}

// shutting reports the time of one place, by the worst of the runs of each law; cond is
// the key of what it holds for.
func (r *reader) shutting(s shut, space working.Num, runs []course.Run, cond string) {
	if space.V < 0 { // what overfills it leaves none
		V := space.As("V")
		space = r.w.Line("V_g", "mL", "max(V,0)", max(V.V, 0), V)
	}
	worst := map[vessel.Law]*course.Run{}
	var order []vessel.Law
	for i := range runs {
		x := &runs[i]
		w, there := worst[x.Law]
		switch {
		case !there:
			order = append(order, x.Law)
			worst[x.Law] = x
		case w.Missing == nil && (x.Missing != nil || x.Vessel.Gas.Value > w.Vessel.Gas.Value):
			worst[x.Law] = x
		}
	}
	for _, law := range order {
		x, st := worst[law], r.c.Store
		f := working.Absent("F_n", "mol/s", x.Missing...)
		if x.Missing == nil {
			f = r.w.Model("F_n", "mol/s", x.Balance(), x.Vessel.Gas.Value, x.Inputs...)
		}
		R, T, v, p := st.Num("constant.R").As("R"), st.Num("gas.temperature").As("T"), space.As("V_g"),
			st.Num("closed.check").As("p")
		t := r.w.Line("t", "min", "p*V_g/1000/(R*T)/F_n/60", p.V*v.V/1000/(R.V*T.V)/f.V/60, p, v, R, T, f)
		r.put("gas.closed.time_to_10_kpa", figure.At(s.key), "", s.kase.By(string(law)), t,
			phrase.On(r.w, cond, x.Conditions()))
	}
}
