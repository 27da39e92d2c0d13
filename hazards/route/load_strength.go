package route

import (
	"fmt"
	"math"

	"etchbound/chemicals"
	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

// strongestMade is the highest strength at which a solution is sold or can be
// made. The molar one stands for the same solution, from densities known to a
// few percent (memory): it is a bound against slips, not a datum.
type strongestMade struct {
	slug     string
	fraction float64
	molar    float64 // mol/L
	mass     float64 // g/mol, to turn the fraction into mol/kg
}

var strongestKnown = [...]strongestMade{
	{"hf", 0.70, 43, 20.006},
	{"hcl", 0.45, 15.5, 36.46},
	{"sulfuric_acid", 0.985, 18.6, 98.07},
	{"sodium_hydroxide", 0.75, 32, 40.00}, // hot autoclave liquors are written above what dissolves at room temperature
}

// strength refuses solutions that do not exist, and hydrofluoric acid beyond
// what is calculated here.
func (l *loader) strength(n *schemas.Node, s *chemicals.Substance, v quantity.Value) {
	if !v.Set {
		return
	}
	for _, k := range strongestKnown {
		if k.slug != s.Slug || !k.exceeded(v) {
			continue
		}
		if s.Slug == "hf" {
			l.refuse(n, "hydrofluoric acid of "+v.Text+" is outside of what is calculated here", k.most(v.Dim),
				"it needs a specialist's review")
			return
		}
		l.refuse(n, fmt.Sprintf("%s of %s does not exist", s.Name, v.Text), k.most(v.Dim), strengthHint(s))
	}
}

// strengthHint is for strengths that are told of the water and not of the
// solution, as recipes do that dissolve pellets.
func strengthHint(s *chemicals.Substance) string {
	if solid(s) {
		return "where it is told per litre of water, put " + s.Name + " in by mass and the water by volume"
	}
	return "read the label of the bottle again"
}

// most says the limit as a mass fraction and in the writer's own unit.
func (k strongestMade) most(written quantity.Dimension) string {
	x, unit := k.molar, "mol/L"
	switch written {
	case quantity.Molality:
		x, unit = k.fraction/(1-k.fraction)/k.mass*1e3, "mol/kg"
	case quantity.MassConc:
		x, unit = k.molar*k.mass, "g/L"
	}
	return fmt.Sprintf("at most %.3g wt%%, about %s %s", 100*k.fraction, quantity.Number(x, 3), unit)
}

func (k strongestMade) exceeded(v quantity.Value) bool {
	top := v.SI
	if v.HasRange() {
		top = v.High
	}
	switch v.Dim {
	case quantity.MassFraction:
		return top > k.fraction*(1+1e-9)
	case quantity.Molarity:
		return top > k.molar*1e3
	case quantity.Molality:
		return k.fraction < 1 && top > k.fraction/(1-k.fraction)/k.mass*1e3*(1+1e-9)
	case quantity.MassConc:
		return top > k.molar*k.mass
	}
	return false
}

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
	mass := s.Formula.MolarMass(chemicals.Base(), nil).V
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

// mostFluoride is the molarity above which a lithium or sodium fluoride
// "strength" is certainly a mole ratio: neither dissolves that far.
const mostFluoride = 4

// saltRatio refuses the commonest misreading of published recipes: the mole
// ratio of lithium fluoride to the powder, written as a molarity.
func (l *loader) saltRatio(n *schemas.Node, m Material, acid strongest) {
	if m.Precursor || m.Substance.Slug != "lithium_fluoride" && m.Substance.Slug != "sodium_fluoride" ||
		m.Strength.Dim != quantity.Molarity || !m.Strength.Set {
		return
	}
	x := m.Strength.In("mol/L")
	mass := m.Substance.Formula.MolarMass(chemicals.Base(), nil).V
	what := ""
	switch {
	case x > mostFluoride:
		what = fmt.Sprintf("%s of %s is more than can be meant", m.Strength.Text, m.Substance.Name)
	case acid.molarity > 0 && x > acid.molarity*(1+1e-9):
		what = fmt.Sprintf("%s of %s is more than the acid beside it, %s", m.Strength.Text, m.Substance.Name, acid.text)
	default:
		return
	}
	number := quantity.Number(x, 0)
	l.refuse(n.Get("strength"), what, "a mass, an amount or a ratio; a strength up to 4 mol/L and up to that of the acid",
		fmt.Sprintf("%s mol/L of %s would be %.3g g in each litre; in papers this number is usually the mole ratio to "+
			"the precursor: write ratio: %s mol/mol",
			number, m.Substance.Name, x*mass, number))
}
