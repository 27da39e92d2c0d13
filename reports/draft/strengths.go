package draft

import (
	"math"

	"etchbound/hazards/meeting"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// worse is the greater of two numbers, and not known where one of them is.
func worse(a, b float64) float64 {
	if math.IsNaN(a) || math.IsNaN(b) {
		return math.NaN()
	}
	return math.Max(a, b)
}

// upTo is the high end of a stated quantity in a unit, NaN where it is not
// stated or cannot be had in it.
func upTo(v quantity.Value, unit string) float64 {
	if !v.Set || !v.Can(unit) {
		return math.NaN()
	}
	if v.HasRange() {
		_, high := v.Range(unit)
		return high
	}
	return v.In(unit)
}

// StrongestHF is the strength of the strongest acid fluoride anybody handles,
// wt% as HF: that of every liquor of the route and of the acid as poured. Not
// known where one of them is not, or where none is computed.
func (b *Draft) StrongestHF() float64 {
	out := math.Inf(-1)
	for f := range b.Set.Of("fluoride.hf_strength") {
		if f.Case.Failure == "" {
			out = worse(out, f.Danger().V)
			if f.Value.Unknown() {
				return math.NaN()
			}
		}
	}
	if math.IsInf(out, -1) {
		return math.NaN()
	}
	return worse(out, b.PouredHF())
}

// wtPerMolar bounds the wt% of 1 mol/L of hydrofluoric acid from above: 20.006 g
// in a litre that weighs no less than one of water at 25 degC, 997 g.
const wtPerMolar = 100 * 20.006 / 997

// PouredHF is the strength of the strongest hydrofluoric acid that is put in,
// wt%; zero where none is.
func (b *Draft) PouredHF() float64 {
	out := 0.0
	b.eachMaterial(func(m *route.Material) {
		if m.Substance.Formula.Text != "HF" {
			return
		}
		v := upTo(m.Strength, "wt%")
		if c := upTo(m.Strength, "mol/L"); !math.IsNaN(c) {
			v = c * wtPerMolar
		}
		out = worse(out, v)
	})
	return out
}

// Poured is the strength of the strongest solution put in of what bears a tag,
// wt%; not known where the strength of one is not stated in wt%.
func (b *Draft) Poured(tag string) float64 {
	out := math.Inf(-1)
	b.eachMaterial(func(m *route.Material) {
		if m.Substance.Is(tag) {
			out = worse(out, upTo(m.Strength, "wt%"))
		}
	})
	if math.IsInf(out, -1) {
		return math.NaN()
	}
	return out
}

func (b *Draft) eachMaterial(do func(*route.Material)) {
	for i := range b.Route().Steps {
		what := b.Route().Steps[i].What
		for j := range what {
			if what[j].Substance != nil {
				do(&what[j])
			}
		}
	}
}

// Largest is the capacity of the largest container that comes to hold a tag,
// mL; not known where one is not stated, or where there is none.
func (b *Draft) Largest(tag meeting.Tag) float64 {
	out := math.Inf(-1)
	for i := range b.Places {
		if c := &b.Places[i]; c.Tags.Has(tag) {
			out = worse(out, upTo(c.Place.Capacity, "mL"))
		}
	}
	if math.IsInf(out, -1) {
		return math.NaN()
	}
	return out
}

// Powder is the mass of the powder of the route, g; not known where powder is
// put in that is not the one of the route.
func (b *Draft) Powder() float64 {
	p := b.Route().Precursor
	if p == nil {
		return math.NaN()
	}
	out := upTo(p.Mass, "g")
	b.eachMaterial(func(m *route.Material) {
		if m.Substance.Is("powder") {
			out += upTo(m.Mass, "g")
		}
	})
	return out
}
