package gas

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// warm reports what a place comes to shut and hot: how full it is too, if it is heated
// closed or closed as written; if nobody means to shut it, by its own heat alone.
func (r *reader) warm(p *route.Place, h *hottest, s *process.State, n working.Num, heated bool) {
	room := process.RoomIn(r.c, r.w, r.k, p, s)
	if hot := r.hot(p, h, &room, n); heated || p.Closure == route.Closed {
		cap, l, m := room.Capacity.As("cap"), room.Liquid.As("V_l"), room.Solid.As("V_s")
		r.put("vessel.filling", figure.At(p.Key), "", figure.Case{},
			r.w.Line("f", "%", "100*(V_l+V_s)/cap", 100*(l.V+m.V)/cap.V, l, m, cap),
			phrase.Of("gas.filling"))
		r.pressed(p, figure.Case{State: figure.Heated}, hot, h.says)
	} else {
		r.put("gas.closed.pressure", figure.At(p.Key), "", figure.Case{State: figure.Closed}.By(figure.OwnHeat),
			hot, phrase.Of("gas.closed_if_shut_warm"))
	}
}

// hot is what a shut place comes to as warm as it gets, kPa gauge:
//
//	space   = capacity - liquid x - powder, x how far the liquid swells
//	gas     = n R T/space
//	air     = P T/298.15
//	p       = gas + air + vapour - P
func (r *reader) hot(p *route.Place, h *hottest, room *process.Room, n working.Num) working.Num {
	cap, l, solid, st := room.Capacity.As("cap"), room.Liquid.As("V_l"), room.Solid.As("V_s"), r.c.Store
	t, x := h.at.As("T"), r.swells(h.at)
	if h.done.Melts {
		x = working.Absent("x", "1", working.Lacks("melt_swells", "").In(h.done.Number))
		if v := r.atLeast(h, room, n); !v.Unknown() {
			h.says = phrase.Of("gas.heated_melt", figure.Round(v.V, 2), figure.Round(h.at.V, 3))
			r.put("gas.closed.least", figure.At(p.Key), "", figure.Case{}, v.Worse(working.Estimated),
				phrase.Of("gas.least", figure.Round(h.at.V, 3)))
		}
	}
	space := r.w.Line("V_g", "mL", "cap-V_l*x-V_s", cap.V-l.V*x.V-solid.V, cap, l, x, solid)
	if space.V <= 0 {
		space = working.Absent("V_g", "mL", working.Lacks("no_space_hot", p.Key))
	}
	R, P, fill, m, v := st.Num("constant.R").As("R"), st.Num("gas.pressure").As("P"),
		st.Num("gas.temperature").As("T_f"), n.As("n"), r.vapour(h)
	return r.w.Line("p", "kPa gauge", "n*R*(T+273.15)/V_g*1000+P*(T+273.15)/T_f+p_v-P",
		m.V*R.V*(t.V+kelvin)/space.V*1000+P.V*(t.V+kelvin)/fill.V+v.V-P.V, m, R, t, space, P, fill, v)
}

// atLeast is what gas and air of a shut melt alone come to at its temperature, in the room that
// is free cold: n R T/V_g + P T/T_f - P, kPa gauge. A melt that swells leaves less room, and the
// vapour of its salt comes on top: it is more than this.
func (r *reader) atLeast(h *hottest, room *process.Room, n working.Num) working.Num {
	st := r.c.Store
	R, P, T, space, fill, m := st.Num("constant.R").As("R"), st.Num("gas.pressure").As("P"), h.at.As("T"),
		room.Space.As("V_g"), st.Num("gas.temperature").As("T_f"), n.As("n")
	if space.V <= 0 {
		space = working.Absent("V_g", "mL", working.Lacks("no_space_hot", h.done.Place))
	}
	return r.w.Line("p", "kPa gauge", "n*R*(T+273.15)/V_g*1000+P*(T+273.15)/T_f-P",
		m.V*R.V*(T.V+kelvin)/space.V*1000+P.V*(T.V+kelvin)/fill.V-P.V, m, R, T, space, P, fill)
}

// hottest is how warm a closed place gets, degC, with the liquor of which step.
type hottest struct {
	done *process.Done
	at   working.Num
	says phrase.Phrase
}

// warmest is how warm a place gets that a step heats closed, or that is closed, or could be
// shut, while something reacts in it: what is set, or what its own heat makes of it if cooling
// fails, since in a closed place temperature and pressure rise together. None where neither is so.
func (r *reader) warmest(p *route.Place, step int, courses []course.Course) *hottest {
	var out *hottest
	if d := r.done(step); step != 0 && d != nil {
		out = &hottest{d, d.Hot, phrase.Of("gas.heated")}
	}
	if p.Closure == route.Open && step == 0 {
		return out
	}
	for i := range courses {
		n := &courses[i]
		last := &n.Stages[len(n.Stages)-1]
		if last.Done.Contents().Place != p.Key {
			continue
		}
		if out == nil {
			out = &hottest{done: last.Done, at: last.Set}
		}
		out.at, out.says = r.alone(out.at, last.Set, n), phrase.Of("gas.heated_itself")
	}
	return out
}

// doubted is how warm a shut place gets in which nobody can say whether the powder reacts:
// not known. None where nothing leaves that open.
func (r *reader) doubted(p *route.Place) *hottest {
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		if m := d.After.Doubted(); d.Place == p.Key && !m.IsZero() {
			return &hottest{d, working.Absent("T", "degC", m), phrase.Of("gas.heated_itself")}
		}
	}
	return nil
}

// unbegun is how warm a place gets in which powder lies that has met its etchant elsewhere and
// of which nothing has reacted: from what is set there, at least 25 degC, by all the heat of
// what came to it, in all that the place holds. None of any other place.
//
//	T = max(25, T_s) + Q n/(N C)      [degC: degC, kJ, mol, mol, J/K]
func (r *reader) unbegun(held *process.State, courses []course.Course) *hottest {
	if held == nil {
		return nil
	}
	lies, made := working.Num{}, 0.0
	for i := range held.Solids {
		switch x := &held.Solids[i]; x.Kind {
		case process.Residual, process.Based:
			lies = x.N
		case process.Product:
			made += x.N.V
		}
	}
	if lies.None() || lies.V <= 0 || made > 0 { // how much of it there is may not be known
		return nil
	}
	for i := range courses {
		for j := range courses[i].Stages {
			s := &courses[i].Stages[j]
			for _, e := range s.Etches {
				return r.begins(held, lies, s, &r.k.Etches[e])
			}
		}
	}
	return nil
}

// begins is that of an etch that began in a stage.
func (r *reader) begins(held *process.State, lies working.Num, s *course.Stage, e *process.Etch) *hottest {
	f := r.c.Store.Num("gas.temperature").As("T_f")
	from := r.w.Line("T_s", "degC", "T_f-273.15", f.V-kelvin, f)
	if set := held.Set.As("T"); !held.Set.None() && set.V > from.V {
		from = set.As("T_s")
	}
	q, n, N, c := e.Heat.As("Q"), lies.As("n"), e.N.As("N"), held.HeatCapacity(r.w).As("C")
	return &hottest{s.Done, r.w.Line("T", "degC", "T_s+Q*1000*n/(N*C)", from.V+q.V*1000*n.V/(N.V*c.V), from, q, n, N,
		c).Worse(working.Bound), phrase.Of("gas.heated_itself")}
}

// alone is the highest of a temperature and those of a course if cooling fails, degC;
// where it was not run, with all of its heat on top of what is set.
func (r *reader) alone(at, set working.Num, n *course.Course) working.Num {
	for i := range n.Runs {
		x := &n.Runs[i]
		top := working.Num{}
		if x.Missing == nil {
			top = r.w.Model("T_m", "degC", x.Balance(), x.Vessel.MTSR.Value-kelvin, x.Inputs...)
		} else {
			t, q, c := set.As("T_s"), n.Heat.As("Q"), n.Capacity.As("C")
			top = r.w.Line("T_m", "degC", "T_s+Q*1000/C", t.V+q.V*1000/c.V, t, q, c).Worse(working.Bound)
		}
		t := at.As("T")
		at = r.w.Line("T", "degC", "max(T,T_m)", max(t.V, top.V), t, top)
	}
	return at
}

const kelvin = 273.15

func (r *reader) done(step int) *process.Done {
	for i := range r.k.Steps {
		if r.k.Steps[i].Number == step {
			return &r.k.Steps[i]
		}
	}
	return nil
}

// swells is the volume of water at a temperature over that at 25 degC.
func (r *reader) swells(celsius working.Num) working.Num {
	t, ok := r.c.Store.Table("expansion.water")
	switch {
	case celsius.Unknown() || !ok:
		return working.Absent("x", "1", celsius.Missing()...)
	case celsius.V <= t.X[0]:
		return working.Exact("x", "1", 1, "not warmer than it was filled")
	}
	v, in := t.At(0, celsius.V)
	if !in {
		return working.Absent("x", "1", working.Lacks("expansion", ""))
	}
	return r.w.Table("x", "1", "expansion.water", v, celsius).Worse(working.Estimated)
}

// vapour is the pressure over the liquor of a step at its temperature: from its
// boiling point on by the heat of vaporisation of water, which is more than that
// of an acid in it; over a liquor with nothing volatile in it, that of water:
//
//	p = 101.325 exp(-L/R (1/T - 1/T_b))
func (r *reader) vapour(h *hottest) working.Num {
	d, t, st := h.done, h.at.As("T"), r.c.Store
	if d.Melts {
		return working.Absent("p_v", "kPa", working.Lacks("melt_vapour", "").In(d.Number))
	}
	boils, _ := course.Boiling(r.c, r.w, d)
	if !boils.Unknown() {
		b, l, R, P := boils.As("T_b"), st.Num("water.vaporisation").As("L"), st.Num("constant.R").As("R"),
			st.Num("gas.pressure").As("P")
		v := P.V * math.Exp(-l.V*1000/R.V*(1/(t.V+kelvin)-1/(b.V+kelvin)))
		return r.w.Line("p_v", "kPa", "P*exp(-L*1000/R*(1/(T+273.15)-1/(T_b+273.15)))", v, P, l, R, t,
			b).Worse(working.Estimated)
	}
	for i := range d.Contents().Liquid {
		for j := range d.Contents().Liquid[i].Entries {
			e := &d.Contents().Liquid[i].Entries[j]
			if e.Sub != nil && volatile(e.Sub) {
				return working.Absent("p_v", "kPa", working.Lacks("vapour_of_liquor", e.Sub.Name))
			}
		}
	}
	if t.Unknown() || t.V > mostWater {
		return working.Absent("p_v", "kPa", working.Joined(t.Missing(),
			[]working.Missing{working.Lacks("water_vapour", "")})...)
	}
	return r.w.Model("p_v", "kPa", "saturation pressure of water", solution.Saturation(t.V+kelvin), t).Worse(working.Bound)
}

// mostWater is below the critical temperature of water, degC.
const mostWater = 370

// volatile reports whether a substance can add to the vapour of water.
func volatile(s *chemicals.Substance) bool {
	switch {
	case s.Solution == "water" || s.Vapour == "none":
		return false
	case s.Ammonium > 0 || s.Vapour == "gives":
		return true
	}
	return s.State != "s" && s.State != "aq"
}
