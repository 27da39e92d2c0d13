package reports

import (
	"math"

	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// A measures holds the numbers the rows of protection.csv are judged by: wt%,
// mL and g, each at its dangerous end. NaN is not known; a name that is not
// there means that the route has no such thing.
type measures map[string]float64

func (b *builder) measures() measures {
	m := measures{}
	if b.tags.has("hf") {
		m["hf_strength"], m["hf_volume"] = b.strongestHF(), b.largest("hf")
	}
	if b.tags.has("tmaoh") {
		m["tmaoh_strength"] = b.poured("tmaoh")
	}
	if b.tags.has("powder") || b.tags.has("dry") {
		m["powder_mass"] = b.powder()
	}
	return m
}

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

// strongestHF is the strength of the strongest acid fluoride anybody handles,
// wt% as HF: that of every liquor of the route and of the acid as poured. Not
// known where one of them is not, or where none is computed.
func (b *builder) strongestHF() float64 {
	out := math.Inf(-1)
	for f := range b.figs.Of("fluoride.hf_strength") {
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
	return worse(out, b.pouredHF())
}

// wtPerMolar bounds the wt% of 1 mol/L of hydrofluoric acid from above: 20.006 g
// in a litre that weighs no less than one of water at 25 degC, 997 g.
const wtPerMolar = 100 * 20.006 / 997

// pouredHF is the strength of the strongest hydrofluoric acid that is put in,
// wt%; zero where none is.
func (b *builder) pouredHF() float64 {
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

// poured is the strength of the strongest solution put in of what bears a tag,
// wt%; not known where the strength of one is not stated in wt%.
func (b *builder) poured(tag string) float64 {
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

func (b *builder) eachMaterial(do func(*route.Material)) {
	for i := range b.route().Steps {
		what := b.route().Steps[i].What
		for j := range what {
			if what[j].Substance != nil {
				do(&what[j])
			}
		}
	}
}

// largest is the capacity of the largest container that comes to hold a tag,
// mL; not known where one is not stated, or where there is none.
func (b *builder) largest(tag string) float64 {
	out := math.Inf(-1)
	for i := range b.places {
		if c := &b.places[i]; c.tags.has(tag) {
			out = worse(out, upTo(c.place.Capacity, "mL"))
		}
	}
	if math.IsInf(out, -1) {
		return math.NaN()
	}
	return out
}

// powder is the mass of the powder of the route, g; not known where powder is
// put in that is not the one of the route.
func (b *builder) powder() float64 {
	p := b.route().Precursor
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
