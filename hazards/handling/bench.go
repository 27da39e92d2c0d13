package handling

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// sonicated is how fast a sonicator warms what it stands in, without cooling.
func (r *reader) sonicated(d *process.Done, s *route.Step) {
	if s.Verb().Tag != "sonicate" {
		return
	}
	P := r.c.Given("P", "W", s.Power)
	if !s.Power.Set {
		P = working.Absent("P", "W", working.Lacks("sonicator_power", "").In(d.Number))
	}
	C := d.After.HeatCapacity(r.w).As("C")
	rate := r.w.Line("y", "K", "P*60/C", P.V*60/C.V, P, C)
	at := figure.Step(d.Number)
	r.put("sonicate.heating", at, "", rate, phrase.Of("handling.sonicated"))
	y := rate.As("y")
	r.put("sonicate.minutes", at, "", r.w.Line("t", "min", "10/y", 10/y.V, y), phrase.Of("handling.sonicated"))
}

// spun is how dense what a centrifuge spins is.
func (r *reader) spun(d *process.Done, s *route.Step) {
	p := r.c.Route.Place(d.Place)
	if p == nil || s.Verb().Spins == "" || s.Verb().Spins == "tube" && p.Kind != "tube" {
		return
	}
	full := &d.Before
	if len(full.Liquid) == 0 {
		return
	}
	m, l := r.solids(r.carried(full), process.Product, process.Unetched, process.Residual, process.Based), r.liquid(full)
	room := process.RoomIn(r.c, r.w, r.k, p, full)
	V, S := room.Liquid.As("V_l"), room.Powder.As("V_s") // salt makes it denser
	at := figure.Step(d.Number)
	rho := r.w.Line("rho", "g/mL", "(m+m_l)/(V_l+V_s)", (m.V+l.V)/(V.V+S.V), m, l, V, S)
	r.put("spin.density", at, "", rho, phrase.Of("handling.spun"))
	rated := r.num("spin.rated", "rho_r")
	r.put("spin.speed", at, "", r.w.Line("y", "%", "100*min(pow(rho_r/rho,0.5),1)",
		100*min(math.Pow(rated.V/rho.V, 0.5), 1), rated, rho.As("rho")), phrase.Of("handling.speed"))
}

// intercalated ranks what stands between layers, or is to, by its way through the skin.
// What is not held and stands in the liquor already may be as bad as any of them.
func (r *reader) intercalated(d *process.Done, s *route.Step) {
	lethal := func(x *chemicals.Substance) {
		n, M := r.mol(&d.After, x), x.Formula.MolarMass(r.c.Store, r.w)
		if x.NotHeld {
			n = working.Absent("n", "mol", x.Lacks())
			if len(x.Formula.Order) == 0 {
				M = working.Absent("M", "g/mol", x.Lacks())
			}
		}
		dose, body := r.num(datum.Of("skin.dose", x.Slug), "d"), r.num("skin.body", "b")
		r.put("skin.lethal", figure.Step(d.Number), x.Slug, r.w.Line("y", "1", "n*M*1000/(d*b)",
			n.V*M.V*1000/(dose.V*body.V), n, M, dose, body), phrase.Of("handling.skin"))
	}
	there := d.After.Strangers()
	for i := range s.What {
		x := s.What[i].Substance
		if first := slices.IndexFunc(s.What, func(m route.Material) bool { return m.Substance == x }); first < i {
			continue // all of it is there already
		}
		if x == nil || !betweenLayers(x) && !(s.Verb().Tag == "intercalate" && x.Kind != "water") {
			continue
		}
		for _, y := range there {
			if !slices.ContainsFunc(s.What, func(m route.Material) bool { return m.Substance == y }) {
				lethal(y)
			}
		}
		there = nil // each once
		lethal(x)
	}
}

// betweenLayers reports whether a substance is one of those that part the layers.
func betweenLayers(x *chemicals.Substance) bool {
	return x.NotHeld || x.Kind == "intercalant" || x.Kind == "base" && x.Count("C") > 0
}

// mol is how much of a substance the liquid of a place holds.
func (r *reader) mol(s *process.State, x *chemicals.Substance) working.Num {
	var terms []working.Num
	for i := range s.Liquid {
		q := &s.Liquid[i]
		for j := range q.Entries {
			if e := &q.Entries[j]; e.Sub != nil && e.Sub.Slug == x.Slug {
				terms = append(terms, process.PartOf(r.w, q, e.N))
			}
		}
	}
	return r.w.Sum("n", "mol", terms...).As("n")
}

// quickened is how many times as fast powder that the etch left is in a warmer step.
func (r *reader) quickened(d *process.Done, s *route.Step) {
	if len(r.k.Etches) == 0 || len(d.Etches) > 0 || !s.Temperature.Set || !slices.ContainsFunc(d.Before.Solids, left) {
		return
	}
	hottest := working.Num{}
	for i := range r.k.Steps {
		x := &r.k.Steps[i]
		if x.Number < d.Number && len(x.Etches) > 0 && !x.Hot.Unknown() && (hottest.None() || x.Hot.V > hottest.V) {
			hottest = x.Hot
		}
	}
	T, was := r.c.Given("T", "degC", s.Temperature), hottest.As("T_e")
	if was.None() || !(T.V > was.V) {
		return
	}
	E, R := r.num("kinetics.activation", "E"), r.num("constant.R", "R")
	r.put("step.quickened", figure.Step(d.Number), "", r.w.Line("y", "1",
		"exp(E*1000/R*(1/(T_e+273.15)-1/(T+273.15)))",
		math.Exp(E.V*1000/R.V*(1/(was.V+kelvin)-1/(T.V+kelvin))), E, R, was, T).Worse(working.Estimated),
		phrase.Of("handling.quickened"))
}

// left reports whether a solid can still give gas.
func left(x process.Solid) bool { return x.Kind == process.Residual || x.Kind == process.Unetched }

// fumes is the hydrogen chloride of all chloride vapour of a melt, once moisture meets it.
func (r *reader) fumes(d *process.Done, s *route.Step) {
	if !d.Melts {
		return
	}
	var terms []working.Num
	for i := range r.k.Evolved {
		e := &r.k.Evolved[i]
		if e.Step != d.Number || e.Moved || e.Gas == nil || e.Gas.Count("Cl") == 0 {
			continue
		}
		n, x := e.N.As("n"), working.Exact("x", "mol/mol", e.Gas.Count("Cl"), "chloride of "+e.Gas.Name)
		terms = append(terms, r.w.Line("n", "mol", "n*x", n.V*x.V, n, x))
	}
	if len(terms) == 0 {
		return
	}
	r.put("melt.hydrogen_chloride", figure.Step(d.Number), "", r.litres(terms), phrase.Of("handling.fumes"))
}

// oxygen is what the peroxides and peroxydisulfates of a place can give, at its most.
func (r *reader) oxygen(p *route.Place) {
	most, at := r.k.MostOxygen(r.w, p.Key)
	if at == nil {
		return
	}
	r.put("release.oxygen", figure.At(p.Key), "", r.litres([]working.Num{most}), phrase.Of("handling.oxygen"))
}

func (r *reader) litres(mol []working.Num) working.Num {
	n, v := r.w.Sum("n", "mol", mol...), process.MolarVolume(r.c.Store, r.w)
	return r.w.Line("V", "L", "n*Vm", n.V*v.V, n, v).Worse(working.Bound)
}
