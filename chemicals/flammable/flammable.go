// Package flammable knows the liquids whose vapour can burn: from which temperature, from
// which share of the air, and how much of it stands over the liquid. It must not know any
// route, nor what else is in the liquid. The vapour pressure is
//
//	p(t) = p25 exp(-s (1/T - 1/298.15))      kPa, T = t + 273.15
//
// within some 60 K of room temperature to a tenth or two.
package flammable

import (
	_ "embed"
	"fmt"
	"math"
	"sync"

	"etchbound/chemicals"
	"etchbound/schemas/columns"
)

//go:embed flammable.csv
var table string

// Liquid is one whose vapour can burn.
type Liquid struct {
	Flash  float64 // degC, closed cup, the lowest found
	Lower  float64 // vol% in air, the lower flammable limit, the lowest found
	Dries  bool    // of a solvent: gone when what it wetted has been dried as water is
	Source string
	Status string

	pressure, slope float64 // kPa at 25 degC; K
}

// Pressure is the vapour pressure of the pure liquid in kPa at a temperature in degC.
func (l *Liquid) Pressure(celsius float64) float64 {
	return l.pressure * math.Exp(-l.slope*(1/(celsius+273.15)-1/298.15))
}

var held = sync.OnceValue(func() map[string]*Liquid {
	out := map[string]*Liquid{}
	columns.Must("chemicals/flammable/flammable.csv", table, func(r columns.Row) bool {
		name := r.Named("substance")
		s, there := chemicals.Library().Find(name)
		if !there {
			r.Fault("substance", fmt.Errorf("%s is no substance that is held", name))
			return false
		}
		out[s.Slug] = &Liquid{Flash: r.Stated("flash"), Lower: r.Stated("lower"), pressure: r.Stated("pressure"),
			slope: r.Stated("slope"), Dries: r.Yes("dries"), Source: r.Named("source"),
			Status: r.Choice("status", "read", "two-sources", "memory", "assumed")}
		return true
	})
	return out
})

// Of is what is held of a liquid; nil where nothing is.
func Of(s *chemicals.Substance) *Liquid { return held()[s.Slug] }

// Can reports whether the vapour of a substance can burn, as far as what it is tells: what
// is held as such, and any liquid or unheld substance that holds carbon and hydrogen.
func Can(s *chemicals.Substance) bool {
	if Of(s) != nil {
		return true
	}
	organic := s.Count("C") != 0 && s.Count("H") != 0 // NaN where nobody knows what it is made of
	return organic && (s.NotHeld || s.State == "l")
}

// Tables is the text of the tables of this package as the program carries them.
func Tables() string { return table }
