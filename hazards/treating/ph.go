package treating

import (
	"math"
	"slices"

	"etchbound/chemicals/aqueous"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/residue"
	"etchbound/hazards/route"
)

// asWeighed is how far a dose and the acid it meets are from what is written, at most.
const asWeighed = 0.05

// PH is the pH of each liquor that a step treats, once all that the step writes is in and
// at equilibrium: neutralise.ph, held against what is too acid, and neutralise.ph_most,
// held against what is too alkaline, at 25 degC whatever a step sets: at that a pH above 12 is
// measured where it decides what waste is (recalled). The range is of a dose a twentieth less
// and more.
// Unlike what is set side by side it is of every review.
func PH(c route.Case, w *working.Sheet, k *process.Walk) []figure.Figure {
	model, err := aqueous.At(25)
	if err != nil {
		return nil
	}
	var out []figure.Figure
	for i := range k.Treated {
		l := &k.Treated[i]
		if l.Step == 0 {
			continue
		}
		low, v, high := ends(c, model, l)
		value := w.Table("pH", "1", "pH of a treated liquor by chemicals/aqueous", v, l.Added).Worse(working.Estimated)
		switch {
		case k.Open != nil:
			value = working.Absent("pH", "1", k.Open...)
		case l.Pool.More != nil:
			value = working.Absent("pH", "1", l.Pool.More...)
		case v+low+high != v+low+high:
			value = working.Absent("pH", "1", working.Lacks("treated_ph", "").In(l.Step))
		}
		value = w.Keep(value)
		for _, quantity := range [...]string{"neutralise.ph", "neutralise.ph_most"} {
			f := figure.Figure{ID: figure.ID{Quantity: quantity, Place: figure.Step(l.Step)}, Value: value,
				Conditions: phrase.Of("treated.ph")}
			if f.SetRange(low, high); value.Unknown() {
				f.SetRange(math.NaN(), math.NaN())
			}
			out = append(out, f)
		}
	}
	return out
}

// ends are the pH with a little less than is written, with it, and with a little more.
func ends(c route.Case, model *aqueous.Model, l *process.Liquor) (low, v, high float64) {
	nan := math.NaN()
	m, water, known := residue.Whole(c.Store, &l.Pool)
	if !known {
		return nan, nan, nan
	}
	if n := l.First.V; !l.First.None() && n > 0 { // water of the step that is there first
		more := n * process.MolarMass(c.Store, nil, "H2O").V / 1000
		m, water = residue.Thin(m, (water+more)/water), water+more
	}
	m.Solids = solids(false)
	var doses []aqueous.Amount
	for i := range l.Doses {
		d := &l.Doses[i]
		x := bringsOf(d.Sub)
		text, asIs := formula(d.Sub)
		switch {
		case d.Sub.Kind == "water":
			continue
		case !x.any() || !asIs:
			return nan, nan, nan // what it does to the pH is not held
		case x.carbon > 0:
			m.Gas = aqueous.Gas{Kind: aqueous.Pressure, Value: 1}
		}
		doses = append(doses, aqueous.Amount{Of: text, Mol: d.N.V / water})
	}
	at := func(times float64) float64 {
		x := m
		x.Added = slices.Clone(m.Added)
		for _, a := range doses {
			x.Added = append(x.Added, aqueous.Amount{Of: a.Of, Mol: a.Mol * times})
		}
		s, err := model.Solve(x)
		if err != nil || len(s.Outside()) > 0 {
			return nan
		}
		return s.PH()
	}
	low, v, high = at(1-asWeighed), at(1), at(1+asWeighed)
	return min(low, v), v, max(v, high)
}
