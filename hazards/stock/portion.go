package stock

import (
	"etchbound/chemicals"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// weighed is a portion of a substance: Pure and Whole are kg without and with
// its water, Fraction is g/g.
type weighed struct{ pure, whole, fraction working.Num }

// Portion is so much of a substance that the site keeps or that a route takes.
type Portion struct {
	substance
	by int // position of the route, or ofSite
	ends
}

// ends are a portion on its central values and at the lower and the upper ends of all
// that was stated with a range.
type ends struct{ low, mid, top weighed }

// times is n such portions.
func (e ends) times(n working.Num) ends { return ends{e.low.times(n), e.mid.times(n), e.top.times(n)} }

// at is what weigh makes of the lower ends, the values stated and the upper ends.
func at(weigh func(end) weighed) ends { return ends{weigh(lower), weigh(same), weigh(upper)} }

const ofSite = -1

// By are the portions of a route, at another position of it. They are changed.
func By(route int, of []Portion) []Portion {
	for i := range of {
		of[i].by = route
	}
	return of
}

// substance names a pure substance. CAS is empty for a powder.
type substance struct {
	cas, name, formula, state, slug string
	unheld                          bool
	sub                             *chemicals.Substance // nil for a powder
}

// key tells substances apart: the CAS number, or the formula of a powder. What is not
// held is told by its name alone.
func (s substance) key() string {
	switch {
	case s.unheld:
		return s.slug
	case s.cas != "":
		return s.cas
	}
	return s.formula
}

func named(s *chemicals.Substance) substance {
	return substance{s.CAS, s.Name, s.Formula.Text, s.State, s.Slug, s.NotHeld, s}
}

// lower is a stated quantity at the lower end of its range.
func lower(q quantity.Value) quantity.Value {
	if q.HasRange() {
		q.SI = min(q.SI, q.Low)
	}
	return q
}

// Upper is a stated quantity at the upper end of its range.
func Upper(q quantity.Value) quantity.Value { return upper(q) }

// upper is a stated quantity at the upper end of its range.
func upper(q quantity.Value) quantity.Value {
	if q.HasRange() {
		q.SI = max(q.SI, q.High)
	}
	return q
}

func same(q quantity.Value) quantity.Value { return q }

type end func(quantity.Value) quantity.Value

// bottled weighs a portion of which a mass or a volume is stated.
func bottled(st *chemicals.Store, s *chemicals.Substance, strength, volume, mass quantity.Value, at end) weighed {
	var v, g working.Num
	switch {
	case volume.Set:
		v = working.Given("V", "mL", at(volume).In("mL"), volume.At)
	case mass.Set:
		g = working.Given("m", "g", at(mass).In("g"), mass.At)
	}
	c := solution.Charged(st, nil, s, at(strength), v, g)
	return weighed{kilograms(c.Solute, s.Formula.MolarMass(st, nil)), thousandth(c.Mass), c.Fraction}
}

func kilograms(n, molar working.Num) working.Num {
	var w *working.Sheet
	return w.Line("m", "kg", "n*M/1000", n.V*molar.V/1000, n.As("n"), molar.As("M"))
}

func thousandth(g working.Num) working.Num {
	var w *working.Sheet
	return w.Line("m", "kg", "m/1000", g.V/1000, g)
}

// undiluted is so much of the substance itself.
func undiluted(kg working.Num) weighed {
	return weighed{kg, kg, working.Exact("w", "g/g", 1, "undiluted")}
}

func times(a, n working.Num) working.Num {
	var w *working.Sheet
	return w.Line("m", "kg", "m*N", a.V*n.V, a.As("m"), n.As("N"))
}

func (x weighed) times(n working.Num) weighed {
	return weighed{times(x.pure, n), times(x.whole, n), x.fraction}
}

// Kept is the stock of a site. Water is not counted.
func Kept(st *chemicals.Store, s *route.Site) []Portion {
	var out []Portion
	for i := range s.Stock {
		x := &s.Stock[i]
		if x.Substance.Solution == "water" {
			continue
		}
		out = append(out, Portion{named(x.Substance), ofSite, at(func(e end) weighed {
			return bottled(st, x.Substance, x.Strength, x.Volume, x.Mass, e)
		})})
	}
	return out
}

// Taken is what one run of a route takes; by is the position of the route.
func Taken(by int, c *route.Case, k *process.Walk, figs *figure.Set) []Portion {
	var out []Portion
	if p := c.Route.Precursor; p != nil {
		s := substance{name: p.Phase.Text + " powder", formula: p.Phase.Text, state: "s"}
		out = append(out, Portion{s, by, at(func(e end) weighed { return powder(p, e) })})
	}
	for i := range c.Route.Steps {
		s := &c.Route.Steps[i]
		n := cycles(s, figs)
		nth := map[*chemicals.Substance]int{}
		for j := range s.What {
			m := &s.What[j]
			if m.Precursor || m.Substance == nil || m.Substance.Solution == "water" {
				continue
			}
			t := taker{c, k, figs, s, m, nth}
			out = append(out, Portion{named(m.Substance), by, t.weigh().times(n)})
		}
	}
	return out
}

// powder is the layered phase of the powder; all of the powder where its purity
// is not stated.
func powder(p *route.Precursor, at end) weighed {
	if !p.Mass.Set {
		return undiluted(working.Absent("m", "kg", working.Lacks(working.NotGiven, "precursor.mass")))
	}
	kg := working.Given("m", "kg", at(p.Mass).In("g")/1000, p.Mass.At)
	if !p.Purity.Set {
		return undiluted(kg.Worse(working.Bound))
	}
	return undiluted(times(kg, working.Given("w", "1", at(p.Purity).SI, p.Purity.At)))
}

// cycles is how often a step takes its materials.
func cycles(s *route.Step, figs *figure.Set) working.Num {
	if !s.Verb().Cycles() {
		return working.Exact("N", "1", 1, "once")
	}
	if s.Cycles > 0 {
		return working.Given("N", "1", float64(s.Cycles), route.At(s.Number, "cycles"))
	}
	if f := figs.One("wash.cycles", figure.Step(s.Number)); f != nil {
		return f.Value
	}
	return working.Absent("N", "1", working.Lacks(working.NotGiven, route.At(s.Number, "cycles")))
}

// taker weighs one material of a step. nth counts the dissolved materials of a
// substance, as they stand in the walk.
type taker struct {
	c    *route.Case
	k    *process.Walk
	figs *figure.Set
	s    *route.Step
	m    *route.Material
	nth  map[*chemicals.Substance]int
}

func (t *taker) weigh() ends {
	m, st := t.m, t.c.Store
	dissolved := m.Substance.State == "s" && !m.Volume.Set && !(m.Strength.Set && m.Mass.Set)
	if dissolved {
		defer func() { t.nth[m.Substance]++ }()
	}
	switch {
	case m.Volume.Set || m.Mass.Set:
		return at(func(e end) weighed { return bottled(st, m.Substance, m.Strength, m.Volume, m.Mass, e) })
	case m.Amount.Set:
		return at(t.byAmount)
	case dissolved && (m.Ratio.Set || m.Strength.Set):
		return t.fromWalk()
	}
	x := undiluted(t.asNeeded())
	return ends{x, x, x}
}

// byAmount is a stated amount of the substance, with the water of its strength
// where that is a mass fraction.
func (t *taker) byAmount(at end) weighed {
	n := working.Given("n", "mol", at(t.m.Amount).In("mol"), t.m.Amount.At)
	x := undiluted(kilograms(n, t.m.Substance.Formula.MolarMass(t.c.Store, nil)))
	if f := at(t.m.Strength); f.Set && f.Dim == quantity.MassFraction && t.m.Substance.State != "s" {
		x.fraction = working.Given("w", "g/g", f.SI, f.At)
		var w *working.Sheet
		low := x.fraction.V
		x.whole = w.Line("m", "kg", "m/w", x.pure.V/low, x.pure, x.fraction)
	} else if f.Set && t.m.Substance.State != "s" {
		c := solution.Charged(t.c.Store, nil, t.m.Substance, f, working.Num{}, working.Given("m", "g", 1, f.At))
		var w *working.Sheet
		x.fraction = c.Fraction
		x.whole = w.Line("m", "kg", "m/w", x.pure.V/x.fraction.V, x.pure, x.fraction)
	}
	return x
}

// fromWalk is a material told by its ratio to the powder or by the strength it
// comes to in the liquid of its step: the walk knows how much that is.
func (t *taker) fromWalk() ends {
	n, at := working.Absent("n", "mol", working.Lacks("amount_of", t.m.Substance.Name).In(t.s.Number)), 0
	for i := range t.k.Steps {
		d := &t.k.Steps[i]
		if d.Number != t.s.Number || d.Mixed == nil {
			continue
		}
		for _, e := range d.Mixed.Salts {
			if e.Sub == t.m.Substance {
				if at == t.nth[e.Sub] {
					n = e.N
				}
				at++
			}
		}
	}
	kg := kilograms(n, t.m.Substance.Formula.MolarMass(t.c.Store, nil))
	return ends{t.widened(kg, lower), undiluted(kg), t.widened(kg, upper)}
}

// widened is a mass that follows from a ratio or a strength, at an end of what was stated.
func (t *taker) widened(kg working.Num, e end) weighed {
	by := widening(t.m.Ratio, e) * widening(t.m.Strength, e)
	if p := t.c.Route.Precursor; t.m.Ratio.Set && p != nil {
		by *= widening(p.Mass, e) * widening(p.Purity, e)
	}
	return undiluted(times(kg, working.Exact("N", "1", by, "ends over the values stated")))
}

// widening is an end of a quantity over its value; 1 without a range.
func widening(q quantity.Value, e end) float64 {
	if !q.HasRange() || !(q.SI > 0) {
		return 1
	}
	return e(q).SI / q.SI
}

// asNeeded is a material without an amount: what neutralising takes, or unknown.
func (t *taker) asNeeded() working.Num {
	for f := range t.figs.At("neutralise.mass", figure.Step(t.s.Number)) {
		if figure.AgentsOf(f.Agent)[0] == t.m.Substance.Slug {
			return f.Value.Worse(working.Bound)
		}
	}
	return working.Absent("m", "kg", working.Lacks("amount_of", t.m.Substance.Name).In(t.s.Number))
}
