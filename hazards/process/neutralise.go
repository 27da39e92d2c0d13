package process

import (
	"fmt"

	"etchbound/chemicals"
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

// carbonate frees the carbon dioxide of whatever carbonate has met acid by now
// and has not been freed yet:
//
//	freed in all = carbon (1 - base left / base of the carbonate)
func (k *walker) carbonate(p *State, s *route.Step) {
	q := k.merged(p)
	c, _ := chemicals.ElementIndex("C")
	of := func(e *Entry) bool { return e.Sub != nil && e.Sub.Kind == "carbonate" && e.Sub.Acid < 0 }
	carbon := Total(k.w, q, "n_C", func(e *Entry) float64 {
		if of(e) {
			return e.Of[c]
		}
		return 0
	})
	if carbon.V == 0 {
		return
	}
	base := value(q, func(e *Entry) float64 {
		if of(e) {
			return -e.Acid
		}
		return 0
	})
	left := max(0, -value(q, func(e *Entry) float64 { return e.Base })) // dissolved metal takes base too
	x := working.Given("x", "1", max(0, 1-left/base), "share of the carbonate that has met acid")
	gone := Total(k.w, q, "n_gone", func(e *Entry) float64 {
		if e.Name == freed {
			return -1
		}
		return 0
	})
	gas := k.w.Line("n_CO2", "mol", "n_C*x-n_gone", carbon.V*x.V-gone.V, carbon, x, gone)
	if gas.V <= 1e-12*carbon.V {
		return
	}
	co2 := *atoms("C", 1)
	o, _ := chemicals.ElementIndex("O")
	co2[o] = 2
	k.release(q, s.Number, p.Place, "CO2", "carbonate", &co2, gas)
	k.fact("carbon_dioxide", s.Number, fmt.Sprintf("Step %d gives carbon dioxide: add in portions, keep the vessel open, leave it open for hours afterwards.", s.Number))
}

// freed is the name of the entry that takes carbon dioxide out of a pool.
const freed = "CO2 given off"
