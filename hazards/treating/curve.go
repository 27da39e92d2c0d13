package treating

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/aqueous"
	"etchbound/hazards/process"
	"etchbound/hazards/residue"
)

// Curve is one agent put to a liquor dose by dose, as slowly as its Dosing says.
type Curve struct {
	Of     *chemicals.Substance
	Points []Point
	Seems  float64 // the dose at which the acid seems gone while fluoride is not; NaN where there is none
}

// Point is a dose for each that is needed, and what it comes to: pH, fluoride dissolved in
// mg/L, degC, and L of carbon dioxide that have left. NaN is not known.
type Point struct{ Share, PH, Left, Temperature, Gas float64 }

// A curve has so many steps, to so many times the dose.
const (
	points   = 24
	furthest = 1.2
)

// chalk is followed where a route writes nothing but lime.
const chalk = "calcium_carbonate"

// curves are those of lime, and of the first base that a step writes, or of chalk.
func (b *bench) curves(l *Liquor, of []*process.Liquor) {
	other := chalk
	for _, x := range of {
		for i := range x.Doses {
			if s := x.Doses[i].Sub; other == chalk && s.Slug != lime && bringsOf(s).base > 0 && common(s) {
				other = s.Slug
			}
		}
	}
	for _, slug := range []string{lime, other} {
		for i := range l.Ways {
			if w := &l.Ways[i]; len(w.Parts) == 1 && w.Parts[0].Sub.Slug == slug && l.Thinned > 0 {
				b.curve(l, w)
			}
		}
	}
}

// curve follows one way dose by dose.
func (b *bench) curve(l *Liquor, w *Way) {
	s := w.Parts[0].Sub
	x := bringsOf(s)
	if !(l.Base > 0) {
		return
	}
	text, _ := formula(s)
	d := w.Dosing
	if d == nil {
		d = b.dosing(w, l)
	}
	out := Curve{Of: s, Seems: math.NaN()}
	for i := 0; i <= points; i++ {
		share := furthest * float64(i) / points
		m := l.thin
		m.Solids = solids(false)
		m.Added = append(slices.Clone(l.thin.Added),
			aqueous.Amount{Of: text, Mol: share * l.Base / x.base / l.kilo / l.Thinned})
		if x.carbon > 0 {
			m.Gas = aqueous.Gas{Kind: aqueous.Pressure, Value: 1}
		}
		p := Point{Share: share, PH: math.NaN(), Left: math.NaN()}
		if at, err := b.model.Solve(m); err == nil {
			p.PH, p.Left = at.PH(), at.Fluoride()*residue.Milligrams
		}
		if p.Temperature, p.Gas = d.at(share, b.litres()); w.False != nil && out.Seems != out.Seems && p.PH >= w.False.PH {
			out.Seems = share
		}
		out.Points = append(out.Points, p)
	}
	l.Curves = append(l.Curves, out)
}

// litres of gas in a mol.
func (b *bench) litres() float64 { return process.MolarVolume(b.c.Store, nil).V }
