package upset

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed mistaken.csv
var mistakenCSV string

// mistake is an acid that is taken for one of the route.
type mistake struct {
	key, held, taken string
	molar, capacity  float64  // mol/L; J/mL/K
	boils            float64  // degC at the most
	model            string   // of its heat with water; "" where none is counted
	oxidises         float64  // mol of hydrogen by one of it; 0 of what is no oxidant
	heat             datum.ID // row of the data for that heat, kJ/mol
	gives            []driven
}

// driven is a gas that such an acid gives, and what a mole of it takes, mol.
type driven struct {
	gas                      string
	acid, fluoride, chloride float64
}

var mistakes = sync.OnceValue(func() []mistake {
	return columns.Must("hazards/upset/mistaken.csv", mistakenCSV, func(r columns.Row) mistake {
		r.Named("source")
		r.Named("status")
		r.Text("note")
		m := mistake{key: r.Named("id"), held: r.Named("for"), taken: r.Named("taken"), molar: r.Stated("molar"),
			capacity: r.Stated("capacity"), boils: r.Stated("boils"), model: r.Text("dilution"),
			oxidises: r.Stated("oxidises"), heat: datum.ID(r.Text("heat"))}
		for _, text := range r.List("gives") {
			g, err := parseDriven(text)
			if err != nil {
				r.Fault("gives", err)
			}
			m.gives = append(m.gives, g)
		}
		return m
	})
})

func parseDriven(text string) (driven, error) {
	parts := strings.Split(text, ":")
	if len(parts) != 4 {
		return driven{}, fmt.Errorf("%q is not a gas and three numbers", text)
	}
	var of [3]float64
	for i := range of {
		v, err := strconv.ParseFloat(parts[i+1], 64)
		if err != nil || !(v >= 0) {
			return driven{}, fmt.Errorf("%q of %q is no number from 0 on", parts[i+1], text)
		}
		of[i] = v
	}
	return driven{parts[0], of[0], of[1], of[2]}, nil
}

// OtherAcid is the highest temperature, degC, at which an acid boils that is taken for another
// in a failure; false for any other failure. All that it drives out is counted at once.
func OtherAcid(key string) (boils float64, is bool) {
	for i := range mistakes() {
		if m := &mistakes()[i]; m.key == key {
			return m.boils, true
		}
	}
	return 0, false
}

// water is what a mL of anything in such a liquor takes at most, J/K.
const water = 4.2

// mistaken bounds every acid that can be taken for one which a course holds: the same volume
// out of the wrong bottle, at its full strength, instead of it or made up with the water of it,
//
//	T_max = T + max(Q/(C c/4.2), (Q + Q_w)/(C + c V))    [degC: kJ, J/K, J/mL/K, mL]
//	Q     = max(heat of the etch, that of all dissolving) + min(2.5 n, n_H2) q    by an oxidant
//	Q_w   = heat of the acid with all the water of the liquor
//
// and each gas by what runs short; of what takes the acid and chloride
//
//	n_g = 1/(a/n + b/n_Cl)
//
// where part of it came from either bottle. All of it goes off in the time of a pour. Where
// what is not held may bring what the gas has of the acid, the gas is unknown.
func (r *reader) mistaken(n *course.Course) {
	for i := range mistakes() {
		m := &mistakes()[i]
		if v := r.poured(n, m.held); !v.None() {
			r.mistake(n, m, v)
		}
	}
}

// poured is the volume of an acid that goes into the place of a course, mL; nothing where
// there is none, unknown where something that is not held may be it.
func (r *reader) poured(n *course.Course, slug string) working.Num {
	var parts []working.Num
	c := r.c
	eachIn(&c, n, func(m *route.Material) {
		if m.Substance != nil && mayBe(m, slug) {
			parts = append(parts, working.Absent("V", "mL", m.Substance.Lacks()))
		}
		if m.Substance == nil || m.Substance.Slug != slug {
			return
		}
		if m.Mass.Set && !m.Volume.Set { // it is no lighter than water
			x, rho := r.c.Given("m", "g", m.Mass), working.Exact("rho", "g/mL", 1, "acids are no lighter than water")
			parts = append(parts, r.w.Line("V", "mL", "m/rho", x.V/rho.V, x, rho))
			return
		}
		parts = append(parts, r.c.Given("V", "mL", m.Volume))
	})
	if parts == nil {
		return working.Num{}
	}
	return r.w.Sum("V", "mL", parts...)
}

// mayBe reports whether a liquor that the data do not hold may be an acid: by its formula, or
// because nobody states one. A solid is no bottle of acid.
func mayBe(m *route.Material, slug string) bool {
	acid, held := chemicals.Library().Find(slug)
	return held && m.Substance.NotHeld && (m.Volume.Set || m.Strength.Set) &&
		!slices.ContainsFunc(acid.Formula.Order, func(element string) bool { return !m.Substance.May(element) })
}

func (r *reader) mistake(n *course.Course, m *mistake, volume working.Num) {
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If(m.key)
	says := phrase.On(r.w, "upset.mistaken", says(r.w, m.key))
	v, strength := volume.As("V"), working.Exact("c", "mol/L", m.molar,
		"as such a bottle is bought").Worse(working.Estimated)
	acid := r.w.Line("n", "mol", "c*V/1000", strength.V*v.V/1000, strength, v)
	l := r.lot(r.w, n, r.boils(n))
	q, heats := r.reacting(n, m, acid).As("Q"), r.withWater(n, m, acid).As("Q_w")
	t, c := l.set.As("T"), n.Capacity.As("C")
	k := working.Exact("k", "J/mL/K", m.capacity, "least heat capacity of the acid").Worse(working.Estimated)
	w := working.Exact("k_w", "J/mL/K", water, "most that any liquor takes")
	top := r.w.Line("T_max", "degC", "T+1000*max(Q/(C*k/k_w),(Q+Q_w)/(C+k*V))",
		t.V+1000*math.Max(q.V/(c.V*k.V/w.V), (q.V+heats.V)/(c.V+k.V*v.V)), t, q, c, k, w, heats, v)
	r.put("heat.temperature_peak", place, kase, top.Worse(working.Bound), says)
	for i := range m.gives {
		r.drivenOut(n, m, &m.gives[i], acid, &l, says)
	}
}

// reacting is the heat of the powder with an acid, kJ.
func (r *reader) reacting(n *course.Course, m *mistake, acid working.Num) working.Num {
	q, h := n.Heat.As("Q_e"), n.Gas.As("n_H2")
	if m.oxidises == 0 {
		return q
	}
	for i := range n.Stages {
		place := figure.Step(n.Stages[i].Step.Number)
		if f := r.b.Heat.One("heat.etch.dissolution_bound", place); f != nil && !(f.Value.V <= q.V) {
			q = f.Value.As("Q_e")
		}
		if f := r.b.Gas.One("gas.hydrogen.dissolution_bound", place); f != nil {
			x := f.Value.As("V_H2")
			if g := r.w.Line("n_H2", "mol", "V_H2/Vm", x.V/r.vm.V, x, r.vm); !(g.V <= h.V) {
				h = g
			}
		}
	}
	e, x, a := r.c.Store.Num(m.heat).As("q"), working.Exact("x", "mol/mol", m.oxidises,
		"hydrogen that one of it takes up"),
		acid.As("n")
	return r.w.Line("Q", "kJ", "Q_e+min(x*n,n_H2)*q", q.V+math.Min(x.V*a.V, h.V)*e.V, q, x, a, h, e)
}

// withWater is the heat of an acid with all the water of the liquor, kJ.
func (r *reader) withWater(n *course.Course, m *mistake, acid working.Num) working.Num {
	if m.model == "" {
		return working.Exact("Q_w", "kJ", 0, "little beside the heat of its reaction")
	}
	var most working.Num
	for i := range n.Stages {
		held := process.AcidsIn(r.w, n.Stages[i].Done.Contents())
		if x := held.Water; most.None() || x.Unknown() || !most.Unknown() && x.V > most.V {
			most = x
		}
	}
	return solution.IntegralHeat(r.c.Store, r.w, m.model, acid, most)
}

// drivenOut reports a gas that a wrong acid gives, and what it does to the air.
func (r *reader) drivenOut(n *course.Course, m *mistake, g *driven, acid working.Num, l *lot, says phrase.Phrase) {
	gas := r.limitedBy(g, acid.As("n"), l.acid[0].As("n_F"), l.acid[1].As("n_Cl"))
	if x := besideAcid(n, m, g); x != nil && !gas.None() {
		gas = working.Absent("n_g", "mol", x.Lacks())
	}
	p := r.c.Route.Place(n.Stages[0].Done.Place)
	if gas.None() {
		return
	}
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If(m.key)
	x := gas.As("n_g").Worse(working.Bound)
	r.of("gas.evolved.bound", place, g.gas, kase, r.w.Line("V", "L", "n_g*Vm", x.V*r.vm.V, x, r.vm), says)
	if r.b.Breath == nil || p == nil || p.Closure == route.Closed && p.ClosureStated {
		return
	}
	t := r.c.Store.Num("air.pour").As("t")
	f := r.w.Line("n_e", "mol/s", "n_g/t", x.V/t.V, x, t)
	for _, y := range r.b.Breath(n.Stages[0].Step.Number, g.gas, f, x, kase, says) {
		y.Searched = r.searched
		r.out = append(r.out, y)
	}
}

// besideAcid is what the data do not hold of a course and may bring what a gas has of the
// wrong acid, so that the acid bounds the gas no more: nitrogen of nitrogen dioxide. It is
// nil where there is nothing of it. Fluoride and chloride of such a substance are counted
// where the liquor is.
func besideAcid(n *course.Course, m *mistake, g *driven) *chemicals.Substance {
	acid, _ := chemicals.Library().Find(m.taken)
	gas, _ := chemicals.Library().Find(g.gas)
	water, _ := chemicals.Library().Find("water")
	for i := range n.Stages {
		here := n.Stages[i].Done.Contents()
		for j := range here.Liquid {
			for _, e := range here.Liquid[j].Entries {
				if e.Sub == nil || !e.Sub.NotHeld {
					continue
				}
				for _, element := range gas.Formula.Order {
					if acid.Formula.Count(element) > 0 && water.Formula.Count(element) == 0 && e.Sub.May(element) {
						return e.Sub
					}
				}
			}
		}
	}
	return nil
}

// limitedBy is how much of a gas there can be, mol; nothing where what it takes is not there.
func (r *reader) limitedBy(g *driven, acid, fluoride, chloride working.Num) working.Num {
	of := func(v float64) working.Num { return working.Exact("a", "mol/mol", v, "taken by one mol of gas") }
	none := func(x working.Num) bool { return x.None() || !x.Unknown() && x.V == 0 }
	a, b := of(g.acid), of(g.chloride).As("b")
	switch {
	case g.fluoride > 0 && none(fluoride) || g.chloride > 0 && none(chloride):
		return working.Num{}
	case g.fluoride > 0:
		f := of(g.fluoride)
		return r.w.Line("n_g", "mol", "n_F/a", fluoride.V/f.V, fluoride, f)
	case g.chloride > 0:
		return r.w.Line("n_g", "mol", "1/(a/n+b/n_Cl)", 1/(a.V/acid.V+b.V/chloride.V), a, acid, b, chloride)
	}
	return r.w.Line("n_g", "mol", "n/a", acid.V/a.V, acid, a)
}
