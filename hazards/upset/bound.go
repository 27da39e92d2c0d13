package upset

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/vessel"
)

// bounded are the failures nobody can follow in time: a closed form bounds them.
var bounded = []string{"acid_onto_powder", "base_added", "lid_closed", "suck_back", "hood_fails", "ignition"}

// bounds reports those of a course.
func (r *reader) bounds(n *course.Course) {
	for i := range n.Stages {
		if s := &n.Stages[i]; s.Etches != nil && r.acid(s) {
			r.reversed(n, s)
			r.base(n, s)
			break
		}
	}
	if slowly(n) || tipped(n) {
		r.wetted(n, atOnce)
	}
	for i := range failures {
		if f := &failures[i]; f.heaps && f.needs(n) {
			r.wetted(n, f.key)
		}
	}
	for i := range n.Runs {
		r.unventilated(n, &n.Runs[i])
	}
}

// acid reports whether all the etches that begin in a stage are by acid, or may
// be: where base was charged with it, amounts that are not known do not tell.
func (r *reader) acid(s *course.Stage) bool {
	if process.AcidsIn(nil, s.Done.Contents()).Acids > 0 && r.b.Walk.Layered != nil {
		return true
	}
	for _, e := range s.Etches {
		if f := r.b.Walk.Etches[e].Family; f != process.FluorideAcid && f != process.Unheld || r.b.Walk.Layered == nil {
			return false
		}
	}
	return true
}

// reversed bounds acid poured onto the powder: at the moment in which there is
// just as much acid as the powder takes, all the heat is in the least liquor.
//
//	T_max = T + Q/(min(1, n/A) C_l + C_s)
//	n     = powder (electrons + F + Cl)      [mol of acid]
func (r *reader) reversed(n *course.Course, s *course.Stage) {
	kase := figure.If("acid_onto_powder")
	place, state := figure.Step(n.Stages[0].Step.Number), n.Stages[0].Done.Contents()
	need, acid := course.Needed(r.w, r.b.Walk, s)
	q, t, solid := n.Heat.As("Q"), s.Set.As("T"), state.SolidCapacity(r.w).As("C_s")
	c := s.Filled.As("C")
	top := r.w.Line("T_max", "degC", "T+Q*1000/(min(1,n/A)*(C-C_s)+C_s)",
		t.V+q.V*1000/(min(1, need.V/acid.V)*(c.V-solid.V)+solid.V), t, q, need, acid, c, solid)
	share := r.w.Line("s", "1", "min(1,n/A)", min(1, need.V/acid.V), need, acid)
	thin := r.lot(r.w, n, r.boils(n)) // the least liquor in which all can react
	thin.capacity = r.w.Line("C", "J/K", "s*(C-C_s)+C_s", share.V*(c.V-solid.V)+solid.V, share, c, solid)
	m := thin.mass
	thin.mass = r.w.Line("m_l", "g", "s*m_l", share.V*m.V, share, m)
	r.lots[lotOf{place, kase.Failure}] = thin
	cond := phrase.Of("upset.acid_onto_powder")
	r.put("heat.temperature_peak", place, kase, top.Worse(working.Bound), cond)
	r.whileWetted(n, place, kase, cond, top)
}

// wetted bounds powder that is tipped in at once, or lies as a heap and is wetted late:
// all of it reacts within the time of wetting, and loses nothing meanwhile.
//
//	T_max = T + Q/C
func (r *reader) wetted(n *course.Course, key string) {
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If(key).By(string(vessel.Instantaneous))
	q, t, c := n.Heat.As("Q"), n.Stages[0].Set.As("T"), n.Capacity.As("C")
	top := r.w.Line("T_max", "degC", "T+Q*1000/C", t.V+q.V*1000/c.V, t, q, c)
	cond := phrase.On(r.w, "upset.heap", says(r.w, key))
	r.put("heat.temperature_peak", place, kase, top.Worse(working.Bound), cond)
	r.whileWetted(n, place, kase, cond, top)
}

// whileWetted is all the hydrogen in the time it takes to wet the powder, and boiling
// within that time where it is hot enough:
//
//	t = t_w where T_max is above T_b, else as long as a failure is followed
func (r *reader) whileWetted(n *course.Course, place figure.Place, kase figure.Case, cond phrase.Phrase,
	top working.Num) {
	boils, hot, wets := r.boils(n), top.As("T_max"), r.c.Store.Num("kinetics.wetting").As("t_w")
	t := r.w.Line("t_b", "min", "t_w/60*above(T_max,T_b)+43200*(1-above(T_max,T_b))",
		wets.V/60*working.Above(hot.V, boils.V)+Followed*(1-working.Above(hot.V, boils.V)), wets, hot, boils)
	r.put("heat.time_to_boil", place, kase, t.Worse(working.Bound),
		phrase.On(r.w, "upset.boils_while_wetted", cond))
	r.released(n, place, kase, cond)
}

func (r *reader) released(n *course.Course, place figure.Place, kase figure.Case, cond phrase.Phrase) {
	g, t := n.Gas.As("n_H2"), r.c.Store.Num("kinetics.wetting").As("t_w")
	f := r.w.Line("F_n", "mol/s", "n_H2/t_w", g.V/t.V, g, t)
	r.put("gas.hydrogen.peak_rate", place, kase, r.flow(f).Worse(working.Bound),
		phrase.On(r.w, "upset.gas_while_wetted", cond))
}

// base bounds base that is added before anything has reacted: the heat of the
// etch on that of neutralising all the acid, in the liquor as it is.
//
//	T_max = T + (Q + A q)/C,  q = H(HF) + H(OH-) - H(F-) - H(H2O)
func (r *reader) base(n *course.Course, s *course.Stage) {
	kase := figure.If("base_added")
	place, st := figure.Step(n.Stages[0].Step.Number), r.c.Store
	_, acid := course.Needed(r.w, r.b.Walk, s)
	hf, oh, f, h2o := st.Num("enthalpy.HF(aq)").As("h_HF"), st.Num("enthalpy.OH(-)(aq)").As("h_OH"),
		st.Num("enthalpy.F(-)(aq)").As("h_F"), st.Num("enthalpy.H2O(l)").As("h_W")
	h := r.w.Line("q", "kJ/mol", "h_HF+h_OH-h_F-h_W", hf.V+oh.V-f.V-h2o.V, hf, oh, f, h2o)
	q, t, c := n.Heat.As("Q"), s.Set.As("T"), s.Filled.As("C")
	top := r.w.Line("T_max", "degC", "T+(Q+A*q)*1000/C", t.V+(q.V+acid.V*h.V)*1000/c.V, t, q, acid, h, c)
	r.put("heat.temperature_peak", place, kase, top.Worse(working.Bound), phrase.Of("upset.base_added"))
	r.whileWetted(n, place, kase, phrase.Of("upset.carbonate_added"), top)
}

// unventilated is the time in which the largest flow alone brings the air of
// the whole room to a quarter of the lower flammable limit.
//
//	t = y V/((1 - y) F)      [min: m3, L/min]
func (r *reader) unventilated(n *course.Course, x *course.Run) {
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If("hood_fails").By(string(x.Law))
	cond := phrase.On(r.w, "upset.hood_fails", x.Conditions())
	volume := r.c.RoomVolume("V")
	y := process.Flammable(r.c.Store, r.w)
	flow := r.asMeant(x, place, kase, cond)
	r.put("gas.hydrogen.room_time", place, kase,
		r.w.Line("t", "min", "y*V*1000/((1-y)*F)", y.V*volume.V*1000/((1-y.V)*flow.V), y, volume, flow), cond)
}

// moved reports what powder that has not reacted does in the containers it is
// moved to: each as if the etch had given nothing before, and as warm as that makes it.
func (r *reader) moved() {
	l := r.b.Walk.Layered
	if l == nil || len(r.b.Courses) == 0 {
		return
	}
	c := r.c
	c.Brief = true
	st, err := unreacted(c, l.Formula.Text)
	if err != nil {
		return
	}
	c.Store = st
	figs, _, err := r.b.Again(c)
	if err != nil {
		return
	}
	for f := range figs.Of("gas.closed.pressure") {
		meant := r.b.Gas.Get(f.ID)
		if r.etches(f.Place) || same(meant, f) || meant == nil && f.Case.Hot() {
			continue
		}
		says := phrase.Of("upset.moved_and_shut")
		if hot := figs.Get(byItself(f)); hot != nil && !known(r.b.Gas.Get(hot.ID)) {
			says = phrase.Of("upset.moved_and_hot")
			f = &figure.Figure{ID: f.ID, Value: hot.Value}
		}
		v := working.Absent("p", "kPa gauge", f.Value.Missing()...)
		if !f.Value.Unknown() {
			v = r.w.Model("p", "kPa gauge", model, f.Value.V, r.b.Courses[0].Gas, r.b.Courses[0].Heat).Worse(f.Value.Status)
		}
		r.put("gas.closed.pressure", f.Place, f.Case.If("moved_unfinished"), v, says)
	}
}

// known reports whether a figure is there and known.
func known(f *figure.Figure) bool { return f != nil && !f.Value.Unknown() }

// byItself is the id of the pressure of a place as warm as its own heat makes it.
func byItself(cold *figure.Figure) figure.ID {
	id := cold.ID
	if id.Case.State == figure.Closed {
		id.Case = id.Case.By(figure.OwnHeat)
	} else {
		id.Case.State = figure.Heated
	}
	return id
}

// etches reports whether an etch begins in a place.
func (r *reader) etches(at figure.Place) bool {
	for i := range r.b.Courses {
		if figure.At(r.b.Courses[i].Stages[0].Done.Place) == at {
			return true
		}
	}
	return false
}

// same reports whether the route as it is meant to go has a figure with this value;
// what is unknown is never the same.
func same(meant, f *figure.Figure) bool { return meant != nil && meant.Value.V == f.Value.V }
