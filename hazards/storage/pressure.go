package storage

import (
	"math"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/flammable"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// content is the gas that all the flakes of a place give, mol.
type content struct {
	hydrogen [ways]working.Num
	carbon   working.Num // as methane or carbon dioxide
	nitrogen working.Num // as ammonia
	oxygen   working.Num // that all of it takes up, carbon kept
	residual working.Num // hydrogen of powder that the etch left
	fluorine working.Num // as HF
	halide   working.Num // other halides, as their acids
	own      working.Num // carbon dioxide that additives can give themselves
}

// content adds up the balance of all flakes of a stage.
func (r *reader) content(s *stage) content {
	var hydrogen [ways][]working.Num
	var carbon, nitrogen, fluorine, halide []working.Num
	for _, x := range product(&s.d.After) {
		n := x.N.As("n")
		b := process.DegradedOf(r.c.Store, r.w, r.k, x)
		c, a := b.Carbon.As("c"), b.Nitrogen.As("y")
		carbon = append(carbon, r.w.Line("n_C", "mol", "n*c", n.V*c.V, n, c))
		nitrogen = append(nitrogen, r.w.Line("n_N", "mol", "n*y", n.V*a.V, n, a))
		f, d := b.Fluorine.As("f"), b.Halides.As("d")
		fluorine = append(fluorine, r.w.Line("n_F", "mol", "n*f", n.V*f.V, n, f))
		halide = append(halide, r.w.Line("n_X", "mol", "n*(d-f)", n.V*(d.V-f.V), n, d, f))
		for i := range ways {
			h := b.Hydrogen[i].As("h")
			hydrogen[i] = append(hydrogen[i], r.w.Line("n_H2", "mol", "n*h", n.V*h.V, n, h))
		}
	}
	out := content{carbon: r.w.Sum("n_C", "mol", carbon...), nitrogen: r.w.Sum("n_N", "mol", nitrogen...),
		residual: r.w.Sum("n_r", "mol", process.Left(r.w, r.k, &s.d.After)...),
		fluorine: r.w.Sum("n_F", "mol", fluorine...), halide: r.w.Sum("n_X", "mol", halide...), own: r.own(s)}
	for i := range ways {
		out.hydrogen[i] = r.w.Sum("n_H2", "mol", hydrogen[i]...)
	}
	h := out.hydrogen[0].As("h")
	out.oxygen = r.w.Line("n_O2", "mol", "h/2", h.V/2, h)
	return out
}

// own is the carbon dioxide that what is added to a stage can give itself, at most, mol.
func (r *reader) own(s *stage) working.Num {
	var out []working.Num
	for i := range s.d.After.Liquid {
		q := &s.d.After.Liquid[i]
		for _, e := range q.Entries {
			if e.Sub == nil {
				continue
			}
			id := datum.Of("storage.additive_gas", e.Sub.Slug)
			if _, held := r.c.Store.Row(id); held {
				n, y := process.PartOf(r.w, q, e.N).As("n"), r.c.Store.Num(id).As("y")
				out = append(out, r.w.Line("n_A", "mol", "n*y", n.V*y.V, n, y))
			}
		}
	}
	return r.w.Sum("n_A", "mol", out...)
}

// space is the gas space over what is stored, mL, and the liquid that gas dissolves in.
func (r *reader) space(p *route.Place, s *stage) (gas, liquid working.Num) {
	gas, liquid = s.room.Space.As("V_g"), s.room.Liquid.As("V_l")
	if N := r.batches(p); !N.None() {
		cap, solid := s.room.Capacity.As("cap"), s.room.Solid.As("V_s")
		if !gas.Unknown() {
			gas = r.w.Line("V_g", "mL", "cap-N*(V_l+V_s)", cap.V-N.V*(liquid.V+solid.V), cap, N, liquid, solid)
		}
		liquid = r.w.Line("V_l", "mL", "N*V_l", N.V*liquid.V, N, liquid)
	}
	if s.temperature.V < 0 {
		x, cap, solid := r.c.Store.Num("ice.expansion").As("x"), s.room.Capacity.As("cap"), s.room.Solid.As("V_s")
		if !gas.Unknown() {
			gas = r.w.Line("V_g", "mL", "cap-V_l*x-V_s", cap.V-liquid.V*x.V-solid.V, cap, liquid, x, solid)
			if N := r.batches(p); !N.None() {
				gas = r.w.Line("V_g", "mL", "cap-V_l*x-N*V_s", cap.V-liquid.V*x.V-N.V*solid.V, cap, liquid, x, N, solid)
			}
		}
		liquid = working.Exact("V_l", "mL", 0, "ice dissolves no gas")
	}
	if s.brine {
		liquid = working.Exact("V_l", "mL", 0, "what brine dissolves is not credited")
	}
	if gas.V <= 0 {
		gas = working.Absent("V_g", "mL", working.Lacks("no_gas_space", p.Key))
	}
	return gas, liquid
}

// holds is what a place takes up of a gas with its gas space and its liquid, mol/kPa.
func (r *reader) holds(s *stage, gas string, space, liquid working.Num) working.Num {
	st, T, R := r.c.Store, s.temperature, r.c.Store.Num("constant.R").As("R")
	h, b := st.Num(datum.Of("henry", gas)).As("H"), st.Num(datum.Of("henry_warming", gas)).As("B")
	g, l := space.As("V_g"), liquid.As("V_l")
	return r.w.Line("q", "mol/kPa", "V_g/1000/(R*(T+273.15))+H/100*exp(B*(1/(T+273.15)-1/298.15))*V_l/1000",
		g.V/1000/(R.V*(T.V+kelvin))+h.V/100*math.Exp(b.V*(1/(T.V+kelvin)-1/298.15))*l.V/1000, g, R, T, h, b, l)
}

// full is the pressure of all the gas of a way if every flake is gone, kPa, and that of
// the powder which the etch left; in the outer bound, of an additive too.
func (r *reader) full(p *route.Place, s *stage, way int) (full, left working.Num) {
	space, liquid := r.space(p, s)
	q, n, m := r.holds(s, "hydrogen", space, liquid).As("q"), s.gas.hydrogen[way].As("n"), s.gas.residual.As("n")
	left = r.w.Line("p_r", "kPa", "n/q", m.V/q.V, m, q)
	parts := []working.Num{r.w.Line("p_H2", "kPa", "n/q", n.V/q.V, n, q)}
	if way > 0 {
		x, c := r.holds(s, [...]string{"", "methane", "carbon_dioxide"}[way], space, liquid).As("q"), s.gas.carbon.As("n")
		parts = append(parts, r.w.Line("p_C", "kPa", "n/q", c.V/x.V, c, x))
		if a := s.gas.own.As("n"); way == outer && a.V != 0 {
			left = r.w.Sum("p_r", "kPa", left, r.w.Line("p_A", "kPa", "n/q", a.V/x.V, a, x))
		}
	}
	if N := s.gas.nitrogen.V; N > 0 && !(s.ph.V < dissolves && N <= s.gas.fluorine.V+s.gas.halide.V) {
		x, a := r.holds(s, "ammonia", space, liquid).As("q"), s.gas.nitrogen.As("n")
		parts = append(parts, r.w.Line("p_N", "kPa", "n/q", a.V/x.V, a, x))
	}
	full = r.w.Sum("p_1", "kPa", parts...)
	if N := r.batches(p); !N.None() {
		f, l := full.As("p_1"), left.As("p_r")
		full, left = r.w.Line("p_1", "kPa", "N*p_1", N.V*f.V, N, f), r.w.Line("p_r", "kPa", "N*p_r", N.V*l.V, N, l)
	}
	return full, left
}

// batches is how many stand in a place of waste until it is picked up; none where it is one.
// Where nobody states it, it is not known where it matters: what may hold no pressure exceeds
// by one batch too.
func (r *reader) batches(p *route.Place) working.Num {
	switch {
	case p.Batches > 1:
		return working.Given("N", "1", float64(p.Batches), p.At+".batches")
	case p.Batches == 0 && p.Rating.Set && p.Relief.Set && r.c.Route.TakesWaste(p):
		return working.Absent("N", "1", working.Lacks(working.NotGiven, "places."+p.Key+".batches"))
	}
	return working.Num{}
}

// dissolves is the pH up to which ammonia stays in the water as its ion.
const dissolves = 8

// pressure is that at the end of a stage, and the time to 10 kPa.
func (r *reader) pressure(p *route.Place, s *stage, way int) (pressure, soon working.Num) {
	full, left := r.full(p, s, way)
	K, g, l := s.fastest.As("K"), r.c.Store.Num("storage.gas_share").As("f_g"), left.As("p_r")
	pressure = r.w.Line("p", "kPa gauge", "(1-exp(-K))*f_g*p_1+p_r", (1-math.Exp(-K.V))*g.V*full.V+l.V, K, g, full, l)
	if s.air {
		u := r.used(p, s)
		x := pressure.As("p_g")
		pressure = r.w.Line("p", "kPa gauge", "p_g-p_O", x.V-u.V, x, u)
	}
	if h := r.warmed(s); !h.None() {
		x, y := pressure.As("p_g"), left.As("p_r")
		pressure = r.w.Line("p", "kPa gauge", "p_g+p_h", x.V+h.V, x, h)
		left = r.w.Line("p_r", "kPa", "p_r+p_h", y.V+h.V, y, h)
	}
	if way == outer {
		return pressure.Worse(working.Bound), working.Num{}
	}
	soon, s.later[way] = r.soon(s, full, left), r.further(s, full, left)
	return pressure, soon
}

// warmed is what the gas that was shut in and the vapour of the liquid gain where a stage is
// warmer than the 25 degC at which it was shut, kPa; none where it is not. A solvent counts as
// undiluted. What they lose where it is colder is not credited.
//
//	p_h = P (T/T_f - 1) + sum of p_v(T) - p_v(T_f)
func (r *reader) warmed(s *stage) working.Num {
	P, fill := r.c.Store.Num("gas.pressure").As("P"), r.c.Store.Num("gas.temperature").As("T_f")
	T := s.temperature
	if !(T.V+kelvin > fill.V+1e-6) {
		return working.Num{}
	}
	gains := []working.Num{r.w.Line("p_a", "kPa", "P*((T+273.15)/T_f-1)", P.V*((T.V+kelvin)/fill.V-1), P, T, fill)}
	gain := func(name string, at func(celsius float64) float64) {
		gains = append(gains, r.w.Model("p_v", "kPa", "vapour pressure of "+name+", less that at which it was shut",
			at(T.V)-at(fill.V-kelvin), T, fill))
	}
	if s.wet {
		gain("water", func(c float64) float64 { return solution.Saturation(c + kelvin) })
	}
	for i := range s.d.After.Liquid {
		for _, e := range s.d.After.Liquid[i].Entries {
			if e.Sub == nil || e.Sub.Kind != "solvent" {
				continue
			}
			if l := flammable.Of(e.Sub); l != nil {
				gain(e.Sub.Name, l.Pressure)
				continue
			}
			gains = append(gains, working.Absent("p_v", "kPa", working.Lacks("flammable", e.Sub.Name)))
		}
	}
	return r.w.Sum("p_h", "kPa", gains...).Worse(working.Bound)
}

// used is the pressure of the oxygen that is used by the end of a stage, kPa.
func (r *reader) used(p *route.Place, s *stage) working.Num {
	m := 0
	if s.aired[1].V < s.aired[0].V { // the slower uses the least
		m = 1
	}
	x, most := r.byOxygen(s, m).As("X"), r.suffices(s).As("X_m")
	y, P := r.c.Store.Num("air.oxygen").As("x"), r.c.Store.Num("gas.pressure").As("P")
	return r.w.Line("p_O", "kPa", "x/100*P*min(X/X_m,1)", y.V/100*P.V*min(x.V/most.V, 1), y, P, x, most)
}

// never is the time in d that says not within ten years.
const never = 3650

// until is the time in d to a pressure in kPa; never where it is not reached by then.
func until(k, share, full, left, kpa float64) float64 {
	x := (kpa - left) / (share * full)
	switch {
	case x != x || k != k:
		return math.NaN()
	case x <= 0:
		return 0
	case x >= 1 || !(k > 0):
		return never
	}
	return min(-math.Log1p(-x)/k, never)
}

// soon is the time to the pressure at which a shut container is looked at.
func (r *reader) soon(s *stage, full, left working.Num) working.Num {
	k, g, p := s.faster, r.c.Store.Num("storage.gas_share").As("f_g"), r.c.Store.Num("closed.check").As("p_c")
	return r.w.Model("t", "d", "time until the gas, of first order, is at this pressure",
		until(k.V, g.V, full.V, left.V, p.V),
		k, g, full, left, p)
}

// further says when it is at 30 and at 50 kPa; nothing where nobody knows.
func (r *reader) further(s *stage, full, left working.Num) phrase.Phrase {
	if r.w == nil {
		return phrase.Phrase{}
	}
	at := func(kpa float64) float64 {
		return until(s.faster.V, r.c.Store.Num("storage.gas_share").V, full.V, left.V, kpa)
	}
	if math.IsNaN(at(30)) {
		return phrase.Phrase{}
	}
	return phrase.Of("store.further", figure.Round(at(30), 2), figure.Round(at(50), 2))
}
