package scaling

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// stronger is how many times as strong one material is as another. Two that are stated in
// different ways are held against each other by the density that is held of the solution.
func (f *firing) stronger(where string, a, b *route.Material) float64 {
	if x, y := a.Strength, b.Strength; x.Set && y.Set && x.Dim != y.Dim {
		if r := share(b) / share(a); !math.IsNaN(r) {
			return r
		}
	}
	return f.ratio(where, a.Strength, b.Strength)
}

// millilitre of a material, as it would be charged.
func millilitre(m *route.Material) solution.Charge {
	return solution.Charged(chemicals.Base(), nil, m.Substance, m.Strength, working.Exact("V", "mL", 1, "one of it"),
		working.Num{})
}

// share is the mass fraction of a material, not a number where the density that it takes
// is not held.
func share(m *route.Material) float64 {
	switch {
	case m.Substance == nil || !m.Strength.Set:
		return math.NaN()
	case m.Strength.Dim == quantity.MassFraction:
		return m.Strength.SI
	}
	return millilitre(m).Fraction.V
}

// corrosive reports whether a material is an acid or a base.
func corrosive(m *route.Material) bool { return m.Substance != nil && m.Substance.Acid != 0 }

// molar is the strength of a material in mol/L; not a number where it has none.
func molar(m *route.Material) float64 {
	switch {
	case m.Substance == nil || !m.Strength.Set:
		return math.NaN()
	case m.Strength.Dim == quantity.Molarity:
		return m.Strength.In("mol/L")
	}
	return 1000 * millilitre(m).Solute.V
}
