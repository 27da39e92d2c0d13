package residue

import (
	_ "embed"
	"maps"
	"math"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/aqueous"
	"etchbound/hazards/process"
	"etchbound/schemas/columns"
)

//go:embed anions.csv
var anionsText string

// Anions are the components that organic substances bring, one a molecule, by their slug.
func Anions() map[string]string { return maps.Clone(anions()) }

var anions = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	columns.Must("hazards/residue/anions.csv", anionsText, func(r columns.Row) string {
		out[r.Named("substance")] = r.Choice("component", aqueous.Components()...)
		return r.Text("note")
	})
	return out
})

// Thin is a mixture in so many times the water.
func Thin(m aqueous.Mixture, times float64) aqueous.Mixture {
	out := m
	out.Totals = make([]aqueous.Amount, len(m.Totals))
	for i, a := range m.Totals {
		out.Totals[i] = aqueous.Amount{Of: a.Of, Mol: a.Mol / times}
	}
	out.Added = make([]aqueous.Amount, len(m.Added))
	for i, a := range m.Added {
		out.Added[i] = aqueous.Amount{Of: a.Of, Mol: a.Mol / times}
	}
	return out
}

// components are the elements that stand as they are in a mixture.
var components = map[string]string{"F": "F", "Cl": "Cl", "Al": "Al", "Ca": "Ca", "Mg": "Mg", "Li": "Li", "Na": "Na",
	"K": "K", "S": "S(6)", "Si": "Si", "B": "B"}

// Dissolved is what liquors that come together hold per kg of their water, and how much
// water that is, kg; it is not known where no equilibrium is held of something in them.
func Dissolved(st *chemicals.Store, pools ...*process.Pool) (m aqueous.Mixture, water float64, known bool) {
	total := map[string]float64{}
	known = true
	for _, q := range pools {
		known = known && !q.Unfollowed && q.More == nil // no metal that may be in it unknown
		share := q.Kept()
		for i := range q.Entries {
			e := &q.Entries[i]
			if e.Sub != nil && e.Sub.Solution == "water" {
				water += share * e.N.V * e.Sub.Formula.MolarMass(st, nil).V / 1000
				continue
			}
			known = into(total, e, share) && known
		}
	}
	if ti := total["Ti"]; ti > 0 { // it keeps six of the fluoride, as far as that goes
		x := min(ti, total["F"]/6)
		total["TiF6"], total["F"] = x, total["F"]-6*x
	}
	for _, x := range total {
		known = known && x == x
	}
	for _, name := range aqueous.Components() {
		if x := total[name] / water; x > 1e-12 {
			m.Totals = append(m.Totals, aqueous.Amount{Of: name, Mol: x})
		}
	}
	return m, water, known && water > 0
}

// Whole is Dissolved with the carbonate of the liquors, under carbon dioxide of 1 atm: what
// they cannot hold has left.
func Whole(st *chemicals.Store, pools ...*process.Pool) (m aqueous.Mixture, water float64, known bool) {
	rest, carbonate := Apart(pools...)
	m, water, known = Dissolved(st, rest...)
	for _, x := range carbonate {
		known = known && x.Mol == x.Mol
		m.Added = append(m.Added, aqueous.Amount{Of: x.Of, Mol: x.Mol / water})
		m.Gas = aqueous.Gas{Kind: aqueous.Pressure, Value: 1}
	}
	return m, water, known
}

// Apart takes the carbonates out of liquors, mol: acid drives their carbon dioxide out, which
// Dissolved does not count.
func Apart(pools ...*process.Pool) ([]*process.Pool, []aqueous.Amount) {
	rest := make([]*process.Pool, len(pools))
	var out []aqueous.Amount
	for i, q := range pools {
		x := *q
		x.Entries = nil
		for _, e := range q.Entries {
			if e.Sub != nil && !e.Sub.NotHeld && e.Sub.Carbonate() > 0 {
				out = append(out, aqueous.Amount{Of: e.Sub.Formula.Text, Mol: q.Kept() * e.N.V})
				continue
			}
			x.Entries = append(x.Entries, e)
		}
		rest[i] = &x
	}
	return rest, out
}

// phosphate reports whether all phosphorus of a substance is orthophosphate; others are not held.
func phosphate(s *chemicals.Substance) bool {
	return s != nil && s.Count("C") == 0 && s.Count("O") >= 4*s.Count("P")
}

// into adds a share of an entry of a liquor to the components; it is false where no
// equilibrium is held of it.
func into(total map[string]float64, e *process.Entry, share float64) bool {
	n := share * e.N.V
	if s := e.Sub; s != nil {
		switch {
		case s.NotHeld || e.N.Unknown():
			return false
		case s.HydrolysisHF > 0 && s.Count("B") > 0:
			total["BF4"] += n
		case s.HydrolysisHF > 0 && s.Count("P") > 0:
			total["PF6"] += n
		case s.Is("nitrate"):
			total["N(5)"] += n * (s.Count("N") - s.Ammonium)
		case s.Kind == "base" && s.Count("C") > 0: // an ammonium base whose cation takes part in nothing
			total["Na"] -= n * s.Acid
			return true
		case anions()[s.Slug] != "":
			total[anions()[s.Slug]] += n
		case s.Kind != "carbonate" && s.Count("C") > 0:
			return false
		}
		total["N(-3)"] += n * s.Ammonium
	}
	slow := e.Sub != nil && e.Sub.HydrolysisHF > 0 && (e.Sub.Count("B") > 0 || e.Sub.Count("P") > 0)
	for i, x := range e.Of {
		symbol := chemicals.ElementSymbol(i)
		switch {
		case x == 0 || slow && (symbol == "F" || symbol == "B" || symbol == "P"):
		case symbol == "H" || symbol == "O" || symbol == "N" || symbol == "C":
		case symbol == "Ti":
			total["Ti"] += n * x
		case symbol == "P" && phosphate(e.Sub):
			total["P"] += n * x
		case components[symbol] == "":
			if math.Abs(n*x) > 1e-9 {
				return false
			}
		default:
			total[components[symbol]] += n * x
		}
	}
	return true
}
