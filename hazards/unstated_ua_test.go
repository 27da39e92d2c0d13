package hazards_test

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/hazards/route"
	"etchbound/schemas/long"
	"etchbound/schemas/quantity"
)

// uaLeftOut holds that a route whose baths and jackets say no ua never gets a milder verdict
// than the same route with any that is stated, from next to nothing to what no wall passes. A
// flow of gas that is only near its limit in the midst of a runaway is let pass: between two
// transfers of heat it can peak at a third, which no corner is.
func uaLeftOut(t *testing.T, name string, r *route.Route, stated ...float64) {
	t.Helper()
	less := r.Copy()
	for i := range less.Places {
		if k := less.Places[i].Cooling; k != nil {
			k.UA = quantity.Value{}
		}
	}
	bare := must(t, briefly(t, less))
	for _, ua := range stated {
		with := less.Copy()
		for i := range with.Places {
			if k := with.Places[i].Cooling; k != nil && k.Kind != "none" {
				k.UA = quantity.Of(ua, "W/K")
			}
		}
		full := must(t, briefly(t, with))
		after := worstOf(&bare)
		for k, was := range worstOf(&full) {
			if is, there := after[k]; !there || is < was && (was > 1 || !strings.HasPrefix(k.quantity, "gas.")) {
				t.Errorf("%s, ua of %g W/K left out: %s @%s +%s: rank %d becomes %d (there %v)", name, ua, k.quantity, k.place,
					k.limit.ID, was, is, there)
			}
		}
	}
}

// A little more than still air takes of 200 mL is 0.13 W/K.
func TestUnstatedHeatTransferIsNeverMilderThanAStatedOne(t *testing.T) {
	long.NotShort(t)
	for _, kind := range long.Some([]string{"jacket", "ice_bath", "water_bath"}, 1, 1) {
		for _, material := range long.Some([]string{"PTFE", "316", "polypropylene", "unobtainium"}, 1, 1) {
			for _, grams := range long.Some([]float64{10, 30, 2}, 2, 1) {
				r := load(t, inIce(fmt.Sprintf("%g g", grams), "200 mL", "2 W/K"))
				p := &r.Places[0]
				p.Material, p.Cooling.Kind = material, kind
				if kind != "ice_bath" {
					p.Cooling.Ice = quantity.Value{}
				}
				uaLeftOut(t, fmt.Sprintf("%s of %s, %g g", kind, material, grams), r,
					long.Some([]float64{0.13, 1e-4, 1, 0.1, 0.2, 0.5, 2, 5, 20, 100}, 3, 1)...)
			}
		}
	}
}

// The same in the routes of the examples.
func TestUnstatedHeatTransferOfTheExamplesIsNeverMilder(t *testing.T) {
	long.Only(t)
	routes := bundled(t)
	for _, name := range sorted(routes) {
		uaLeftOut(t, name, routes[name], 1e-4, 0.03, 0.1, 0.3, 1, 10)
	}
}
