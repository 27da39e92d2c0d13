package process

import (
	"math"
	"slices"

	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// Quenched is a liquor that was poured into what stands in another place.
type Quenched struct {
	From  State       // the place it comes from, as it was
	Ice   working.Num // kg of ice that is left in the other place when it comes; not there where none was put in
	Comes working.Num // degC that the two come to together, with nothing lost
}

// quench pours all that is in a place into another, and lets what meets there react. From
// then on the step is one of the place that receives. Its temperature is the one it sets,
// and never colder than what the two come to by themselves.
func (k *walker) quench(s *route.Step, from, before State, d *Done) {
	k.arrive(s, before, d)
	to := k.places[s.Into]
	d.Place, d.Before, d.After, d.Filled = to.Place, before, to.copy(), nil
	d.Etches = append([]int(nil), to.Etches...)
	x := Quenched{From: from}
	x.Comes = k.comesTo(s, &x, &before, d)
	hot := x.Comes.As("T")
	if s.Temperature.Set {
		set, t := k.c.Given("T_set", "degC", s.Temperature), x.Comes.As("T_q")
		hot = k.w.Line("T", "degC", "max(T_set,T_q)", math.Max(set.V, t.V), set, t)
	}
	d.Hot, to.Set, d.After.Set, d.Quenched = hot, hot, hot, &x
}

// comesTo is the temperature that a liquor and what it is poured into come to, degC:
//
//	T_q = max(0,(C_a T_a + (C_b - 1000 c_w m_i) T_b + 1000 Q - 1000 h_f m)/(C_a + C_b))
//
// with Q the heat of mixing in kJ, m_i the ice put in and m what is left of it, kg. The
// heat capacities are low ends; where the liquor is the warmer of the two all of it counts
// as water, which brings more heat than any of it.
func (k *walker) comesTo(s *route.Step, x *Quenched, before *State, d *Done) working.Num {
	a, b := k.stands(&x.From).As("T_a"), k.stands(before).As("T_b")
	if len(before.Liquid) == 0 && len(before.Solids) == 0 {
		return a.As("T_q")
	}
	cw, hf, q := k.st.Num("water.heat_capacity").As("c_w"), k.st.Num("ice.fusion").As("h_f"), k.mixes(d).As("Q")
	ca, cb := x.From.HeatCapacity(k.w).As("C_a"), before.HeatCapacity(k.w).As("C_b")
	if !(a.V < b.V) && !ca.Unknown() {
		m := k.mass(&x.From).As("m_a")
		ca = k.w.Line("C_a", "J/K", "m_a*c_w", m.V*cw.V, m, cw)
	}
	all := k.iceIn(before)
	if all.V == 0 {
		return k.w.Line("T_q", "degC", "(C_a*T_a+C_b*T_b+1000*Q)/(C_a+C_b)",
			(ca.V*a.V+cb.V*b.V+1000*q.V)/(ca.V+cb.V), ca, a, cb, b, q).Worse(working.Estimated)
	}
	x.Ice = k.iceLeft(s, before, all)
	m, i := x.Ice.As("m"), all.As("m_i")
	return k.w.Line("T_q", "degC", "max(0,(C_a*T_a+(C_b-1000*c_w*m_i)*T_b+1000*Q-1000*h_f*m)/(C_a+C_b))",
		max(0, (ca.V*a.V+(cb.V-1000*cw.V*i.V)*b.V+1000*q.V-1000*hf.V*m.V)/(ca.V+cb.V)), ca, a, cb, cw, i, b, q, hf,
		m).Worse(working.Estimated)
}

// stands is the temperature that a place was last set to, degC.
func (k *walker) stands(s *State) working.Num {
	if s.Set.None() {
		return working.Absent("T", "degC", working.Lacks("temperature_in", s.Place))
	}
	return s.Set
}

// mass is that of everything in a place, g.
func (k *walker) mass(s *State) working.Num {
	terms := make([]working.Num, 0, usualTerms)
	for i := range s.Liquid {
		terms = append(terms, k.Part(&s.Liquid[i], s.Liquid[i].Mass))
	}
	for i := range s.Solids {
		if m := s.Solids[i].Mass; !m.None() { // what the etch left is counted with the product
			terms = append(terms, m)
		}
	}
	return k.w.Sum("m", "g", terms...)
}

// lasts is a time of a step, s; nothing where none is stated.
func (k *walker) lasts(q quantity.Value) working.Num {
	if !q.Set {
		return working.Exact("t", "s", 0, "the step says no time")
	}
	return k.c.Given("t", "s", q)
}

// mixes is the heat of diluting where two liquors come together, kJ; not known where acid
// meets base or something meets another of which no model gives the heat.
func (k *walker) mixes(d *Done) working.Num {
	m := d.Mixed
	if m == nil || m.There == nil {
		return working.Exact("Q", "kJ", 0, "nothing mixes")
	}
	if rise := m.There.MostRise(m.Met); m.Met != 0 && !(rise <= NoRise) {
		return working.Absent("Q", "kJ", working.Lacks("acid_meets_base", "").In(d.Number))
	}
	if m.Strange != "" {
		return working.Absent("Q", "kJ", working.Lacks("heat_of_mixing", m.Strange))
	}
	terms := make([]working.Num, 0, usualTerms)
	for i := range m.After {
		p := &m.After[i]
		terms = append(terms, solution.IntegralHeat(k.st, k.w, p.Model, p.Acid, p.Water).As("q_a"))
	}
	for i := range m.Before {
		p := &m.Before[i]
		q := solution.IntegralHeat(k.st, k.w, p.Model, p.Acid, p.Water).As("q")
		terms = append(terms, k.w.Line("q_b", "kJ", "-q", -q.V, q))
	}
	return k.w.Sum("Q", "kJ", terms...)
}

// iceIn is the ice that was put into a place, kg, whether it has melted or not.
func (k *walker) iceIn(s *State) working.Num {
	terms := make([]working.Num, 0, usualTerms)
	for i := range s.Liquid {
		q := &s.Liquid[i]
		for j := range q.Entries {
			e := &q.Entries[j]
			if e.Sub == nil || e.Sub.State != "s" || e.Sub.Solution != "water" {
				continue
			}
			n, M := k.Part(q, e.N).As("n"), e.Sub.Formula.MolarMass(k.st, k.w).As("M")
			terms = append(terms, k.w.Line("m_i", "kg", "n*M/1000", n.V*M.V/1000, n, M))
		}
	}
	return k.w.Sum("m_i", "kg", terms...)
}

// iceLeft is what the room leaves of the ice of a place until a step, kg: none where powder
// stands in it, or where the place was set warmer since. It stands as a cylinder as high as
// it is wide in still air, from the end of the step that brings it on:
//
//	m = max(0,m_i - U A (T_r - T_i) t/(1000 h_f)),  A = 5 V/D
func (k *walker) iceLeft(s *route.Step, before *State, all working.Num) working.Num {
	times, stands, gone := make([]working.Num, 0, usualTerms), false, len(before.Solids) > 0
	melts := k.st.Num("ice.temperature").As("T_i")
	for i := range k.c.Route.Steps[:s.Number-1] {
		x := &k.c.Route.Steps[i]
		if stands {
			times = append(times, k.lasts(x.Over), k.lasts(x.Time))
		}
		here := x.In == before.Place
		gone = gone || stands && here && x.Temperature.Set && !(x.Temperature.In("degC") <= melts.V+1)
		stands = stands || here && slices.ContainsFunc(x.What, func(m route.Material) bool { return !m.Precursor && ice(&m) })
	}
	if gone {
		return working.Exact("m", "kg", 0, "the ice has melted")
	}
	t, v, u, room := k.w.Sum("t", "s", times...), before.Volume(k.w).As("V"), k.st.Num("loss.still_air").As("U"),
		k.st.Num("room.temperature").As("T_r")
	i, h := all.As("m_i"), k.st.Num("ice.fusion").As("h_f")
	D := k.w.Line("D", "m", "pow(4*V/1e6/3.141592653589793,1/3.0)", math.Pow(4*v.V/1e6/math.Pi, 1/3.0), v)
	return k.w.Line("m", "kg", "max(0,m_i-U*5*V/1e6/D*(T_r-T_i)*t/1000/h_f)",
		max(0, i.V-u.V*5*v.V/1e6/D.V*(room.V-melts.V)*t.V/1000/h.V), i, u, v, D, room, melts, t, h)
}
