package process

import (
	"fmt"

	"etchbound/chemicals/working"
	"etchbound/hazards/route"
)

// neutralise records the liquor as it stands, then lets the agent in: what
// base it brings goes into the account, and carbonate leaves as CO2 as far as
// there is acid for it.
func (k *walker) neutralise(p *State, s *route.Step) {
	q := k.merged(p)
	l := Liquor{Step: s.Number, Place: p.Place, Pool: *q}
	l.Pool.Entries = append([]Entry(nil), q.Entries...)
	acid := value(q, func(e *Entry) float64 { return e.Acid })
	for i := range s.What {
		m := &s.What[i]
		if m.Precursor || m.Substance.Acid >= 0 {
			continue
		}
		l.Agent = m.Substance
		l.Added = k.added(m)
		break
	}
	k.out.Treated = append(k.out.Treated, l)
	var d Done
	k.put(p, s, &d)
	k.react(p, s, reaction{})
	k.carbonate(p, s, acid)
	p.Neutralised = true
}

func (k *walker) added(m *route.Material) working.Num {
	if m.Mass.Set && !m.Strength.Set {
		return k.c.Given("m", "kg", m.Mass)
	}
	if !m.Amount.Set {
		return working.Absent("m", "kg", m.At+".mass")
	}
	n, M := k.c.Given("n", "mol", m.Amount), m.Substance.Formula.MolarMass(k.st, k.w).As("M")
	return k.w.Line("m", "kg", "n*M/1000", n.V*M.V/1000, n, M)
}

// carbonate frees CO2 from the carbonate of a pool, limited by the acid there.
func (k *walker) carbonate(p *State, s *route.Step, acid float64) {
	q := k.merged(p)
	for i := range q.Entries {
		e := q.Entries[i]
		if e.Sub == nil || e.Sub.Kind != "carbonate" || e.Sub.Acid >= 0 {
			continue
		}
		x := working.Exact("x", "1", max(0, min(1, acid/(-e.Sub.Acid*e.N.V))), "share of the carbonate that meets acid")
		if e.N.V == 0 {
			continue
		}
		n := e.N.As("n")
		gas := k.w.Line("n_CO2", "mol", "n*x", n.V*x.V, n, x)
		of := *atoms("C", 1)
		o := atoms("O", 2)
		for j := range of {
			of[j] += o[j]
		}
		k.release(q, s.Number, p.Place, "CO2", "neutralise", &of, gas)
		k.fact("carbon_dioxide", s.Number, fmt.Sprintf("Step %d gives carbon dioxide: add in portions, keep the vessel open, leave it open for hours afterwards.", s.Number))
	}
}
