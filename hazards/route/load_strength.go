package route

import (
	"fmt"
	"math"

	"etchbound/chemicals"
	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

// strongestMade is the highest strength at which a solution is sold or can be made, or
// up to which it is calculated here.
type strongestMade struct {
	chemicals.Strength
	mass float64 // g/mol, to turn the share into mol/kg
}

// strength refuses solutions that do not exist, and hydrofluoric acid beyond
// what is calculated here.
func (l *loader) strength(n *schemas.Node, s *chemicals.Substance, v quantity.Value) {
	if !v.Set {
		return
	}
	for _, what := range [...]string{"reviewed", "most"} {
		for _, x := range chemicals.Strengths(what) {
			k := strongestMade{x, molarMass(s)}
			if x.Substance != s.Slug || !k.exceeded(v) {
				continue
			}
			if what == "reviewed" {
				l.refuse(n, s.Name+" of "+v.Text+" is outside of what is calculated here", k.most(v.Dim),
					"it needs a specialist's review")
				return
			}
			l.refuse(n, fmt.Sprintf("%s of %s does not exist", s.Name, v.Text), k.most(v.Dim), strengthHint(s))
		}
	}
}

// molarMass is that of a substance, g/mol, for checks alone.
func molarMass(s *chemicals.Substance) float64 { return s.Formula.MolarMass(chemicals.Base(), nil).V }

// strengthHint is for strengths that are told of the water and not of the
// solution, as recipes do that dissolve pellets.
func strengthHint(s *chemicals.Substance) string {
	if solid(s) {
		return "where it is told per litre of water, put " + s.Name + " in by mass and the water by volume"
	}
	return "read the label of the bottle again"
}

// molality is the strength in mol/kg of water.
func (k strongestMade) molality() float64 { return k.WT / (100 - k.WT) / k.mass * 1e3 }

// most says the limit as a mass fraction and in the writer's own unit.
func (k strongestMade) most(written quantity.Dimension) string {
	x, unit := k.Molar, "mol/L"
	switch written {
	case quantity.Molality:
		x, unit = k.molality(), "mol/kg"
	case quantity.MassConc:
		x, unit = k.Molar*k.mass, "g/L"
	}
	return fmt.Sprintf("at most %.3g wt%%, about %s %s", k.WT, quantity.Number(x, 3), unit)
}

func (k strongestMade) exceeded(v quantity.Value) bool {
	top := v.SI
	if v.HasRange() {
		top = v.High
	}
	switch v.Dim {
	case quantity.MassFraction:
		return top > k.WT/100*(1+1e-9)
	case quantity.Molarity:
		return top > k.Molar*1e3
	case quantity.Molality:
		return top > k.molality()*(1+1e-9)
	case quantity.MassConc:
		return top > k.Molar*k.mass
	}
	return false
}

// Decomposes reports whether a solution is so strong, at the high end of what is stated, that
// it gives gas by itself while it stands; one of which no strength is stated may be.
func (m *Material) Decomposes() bool {
	for _, x := range chemicals.Strengths("decomposes") {
		if m.Substance == nil || x.Substance != m.Substance.Slug {
			continue
		}
		x.WT, x.Molar = x.WT*(1-least), x.Molar*(1-least)
		k := strongestMade{x, molarMass(m.Substance)}
		return !m.Strength.Set || k.exceeded(m.Strength)
	}
	return false
}

// least is the part of a strength by which one that is stated as it is reaches it.
const least = 1e-6

// note keeps the strongest acid that went into a place.
func (c *charge) note(place string, m Material) {
	if m.Precursor || m.Substance.Kind != "acid" || m.Substance.Acid <= 0 || !m.Strength.Set {
		return
	}
	if x := roughMolarity(m); x > c.acid[place].molarity {
		c.acid[place] = strongest{x, m.Strength.Text + " " + m.Substance.Name}
	}
}

// roughMolarity is the molarity of acid equivalents in mol/L. From wt% it takes
// the density as 1 + w/2 in g/mL, within 5 % for HCl and HF at any strength
// (memory): enough to tell a ratio from a strength.
func roughMolarity(m Material) float64 {
	v, s := m.Strength, m.Substance
	mass := molarMass(s)
	switch v.Dim {
	case quantity.Molarity:
		return v.In("mol/L") * s.Acid
	case quantity.MassFraction:
		return v.SI * (1 + v.SI/2) * 1e3 / mass * s.Acid
	case quantity.Molality:
		return v.In("mol/kg") * s.Acid
	case quantity.MassConc:
		return v.In("g/L") / mass * s.Acid
	}
	return math.NaN()
}

// saltRatio refuses the commonest misreading of published recipes: the mole
// ratio of lithium fluoride to the powder, written as a molarity.
func (l *loader) saltRatio(n *schemas.Node, m Material, acid strongest) {
	if m.Precursor || m.Strength.Dim != quantity.Molarity || !m.Strength.Set {
		return
	}
	for _, k := range chemicals.Strengths("dissolves") {
		if k.Substance == m.Substance.Slug {
			l.ratioOrStrength(n, m, acid, k.Molar)
		}
	}
}

// ratioOrStrength refuses a strength of a salt beyond what dissolves, mol/L, or beyond
// that of the acid beside it.
func (l *loader) ratioOrStrength(n *schemas.Node, m Material, acid strongest, dissolves float64) {
	x := m.Strength.In("mol/L")
	mass := molarMass(m.Substance)
	what := ""
	switch {
	case x > dissolves:
		what = fmt.Sprintf("%s of %s is more than can be meant", m.Strength.Text, m.Substance.Name)
	case acid.molarity > 0 && x > acid.molarity*(1+1e-9):
		what = fmt.Sprintf("%s of %s is more than the acid beside it, %s", m.Strength.Text, m.Substance.Name, acid.text)
	default:
		return
	}
	number := quantity.Number(x, 0)
	l.refuse(n.Near("strength"), what, fmt.Sprintf("a mass, an amount or a ratio; a strength up to %.4g mol/L and "+
		"up to that of the acid", dissolves),
		fmt.Sprintf("%s mol/L of %s would be %.3g g in each litre; in papers this number is usually the mole ratio to "+
			"the precursor: write ratio: %s mol/mol",
			number, m.Substance.Name, x*mass, number))
}
