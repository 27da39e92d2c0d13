package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/schemas/nearly"
)

const solventWash = `route: etchbound/1
title: check
basis: {status: invented}
places:
  tubes: {kind: bottle, material: PP, lid_material: PP, capacity: 1 L, closure: vented, vent: 5 mm}
steps:
  - {do: charge, in: tubes, what: [%s], temperature: 20 degC, attended: true}
`

// Pure 2-propanol at 20 degC has 4.41 kPa over it (Antoine, constants from memory), 4.35
// vol%, 2.18 times its lower limit of 2.0 vol% (IEC 60079-20-1:2010 as open data). Water
// with a hundredth of it by mass, x = 0.00302, counts at twentyfold: 0.13. Water does not
// burn, and of a solvent that nobody holds it is not known.
func TestVapourThatBurns(t *testing.T) {
	for _, v := range []struct {
		what string
		want float64 // NaN: no figure; negative: unknown
		over bool
	}{
		{"{substance: isopropanol, volume: 500 mL}", 2.18, true},
		{"{substance: isopropanol, mass: 1 g}, {substance: water, mass: 99 g}", 0.132, false},
		{"{substance: water, volume: 500 mL}", 0, false},
		{"{substance: oddium solvent, formula: C4H10O, not_held: true, volume: 100 mL}", -1, true},
	} {
		r := review(t, strings.Replace(solventWash, "%s", v.what, 1))
		var of *figure.Figure
		for i := range r.Figures {
			if f := &r.Figures[i]; f.Quantity == "air.flammable_share" && f.Agent == "" && !f.Place.IsZero() {
				of = f
			}
		}
		switch {
		case v.want == 0 && of != nil:
			t.Errorf("%s: %g", v.what, of.Value.V)
		case v.want < 0 && (of == nil || !of.Value.Unknown()):
			t.Errorf("%s is taken as known", v.what)
		case v.want > 0 && (of == nil || !nearly.Share(of.Value.V, v.want, 0.03)):
			t.Errorf("%s: %+v, want %g", v.what, of, v.want)
		}
		held := false
		for _, h := range r.Holds {
			held = held || h.ID == "flammable_quarter"
		}
		if held != v.over {
			t.Errorf("%s: hold point %v", v.what, held)
		}
	}
}
