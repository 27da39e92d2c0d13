package process

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// unheld charges a substance that the data do not hold: how much of it is known
// as far as it is written and its formula tells, and nothing else is.
func (k *walker) unheld(q *Pool, m *route.Material, s *route.Step, mix *Mixing) {
	sub := m.Substance
	lack := func(symbol, unit string) working.Num { return working.Absent(symbol, unit, sub.Lacks()) }
	n, g, v := lack("n", "mol"), lack("m", "g"), lack("V", "mL")
	if m.Volume.Set {
		v = k.c.Given("V", "mL", m.Volume)
	}
	if m.Mass.Set {
		g = k.c.Given("m", "g", m.Mass)
	}
	switch {
	case m.Amount.Set:
		n = k.c.Given("n", "mol", m.Amount)
	case m.Ratio.Set:
		n = k.byRatio(m)
	case m.Strength.Dim == quantity.Molarity && m.Strength.Set:
		c, in := k.c.Given("c", "mol/L", m.Strength), v.As("V")
		if !m.Volume.Set && !m.Mass.Set { // over the liquid of the step
			in = q.Volume.As("V")
		}
		n = k.w.Line("n", "mol", "c*V/1000", c.V*in.V/1000, c, in)
	case m.Mass.Set && !m.Strength.Set && len(sub.Formula.Order) > 0:
		M, x := sub.Formula.MolarMass(k.st, k.w).As("M"), g.As("m")
		n = k.w.Line("n", "mol", "m/M", x.V/M.V, x, M)
	}
	mix.Fed = true
	k.enter(q, sub, n)
	q.poured(sub)
	if m.Strength.Set {
		water, _ := chemicals.Library().Find("water")
		k.enter(q, water, lack("n_w", "mol"))
	}
	q.Volume, q.Mass = k.w.Sum("V", "mL", q.Volume.As("V"), v), k.w.Sum("m", "g", q.Mass.As("m"), g)
	q.Uncounted = q.Uncounted.and(uncounted{math.NaN(), []working.Missing{sub.Lacks()}})
	if n.Unknown() || len(sub.Formula.Order) == 0 {
		k.open(sub.Lacks())
	}
	k.fact("not_held", s.Number, phrase.Of("fact.not_held", sub.Name, phrase.Step(s.Number)))
}

// open notes what has to be known to say what went into the route.
func (k *walker) open(missing working.Missing) {
	if !slices.Contains(k.out.Open, missing) {
		k.out.Open = append(k.out.Open, missing)
	}
	if !slices.Contains(k.unclosed, missing) {
		k.unclosed = append(k.unclosed, missing)
	}
}

// Strangers are the substances of a place that the data do not hold, each once.
func (s *State) Strangers() []*chemicals.Substance {
	var out []*chemicals.Substance
	for i := range s.Liquid {
		for j := range s.Liquid[i].Entries {
			if x := s.Liquid[i].Entries[j].Sub; x != nil && x.NotHeld && !slices.Contains(out, x) {
				out = append(out, x)
			}
		}
	}
	return out
}

// Stranger is a substance of a pool that the data do not hold; nil where there is
// none.
func (q *Pool) Stranger() *chemicals.Substance {
	for i := range q.Entries {
		if s := q.Entries[i].Sub; s != nil && s.NotHeld {
			return s
		}
	}
	return nil
}

// mayGive releases what a substance that is not held can give off where it meets
// anything: carbon dioxide, once in each place.
func (k *walker) mayGive(q *Pool, s *route.Step, place string) {
	x := q.Stranger()
	if x == nil || !math.IsNaN(x.Carbonate()) || slices.ContainsFunc(k.out.Releases, func(r Release) bool {
		return r.Cause == NotHeld && r.Place == place
	}) {
		return
	}
	k.out.Releases = append(k.out.Releases, Release{s.Number, place, "CO2", NotHeld,
		working.Absent("n_CO2", "mol", x.Lacks())})
	if len(q.Entries) > 1 { // it meets something
		k.fact("carbon_dioxide", s.Number, phrase.Of("fact.carbon_dioxide_unknown", phrase.Step(s.Number)))
	}
}

// NotHeld is the cause of a gas that a substance which is not held can give.
const NotHeld = "not held"
