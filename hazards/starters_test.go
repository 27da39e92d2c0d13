package hazards_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
	"etchbound/schemas/quantity"
)

// left are the failures over whose limit a starter may be, however it is written: each is
// done against what the route says, so that nothing in the route keeps it from happening.
var left = map[string]string{
	"acid_onto_powder":  "the order is the other one: the first of the acid meets all of the powder",
	"base_added":        "a base comes into the acid in the place of something else",
	"weighed_ten_times": "ten times the powder comes into the liquor of a tenth of it",
	"heater_on":         "a heater that nothing stops boils any liquor",

	"nitric_for_hydrochloric":   "the bottle is another one, and oxidises whatever the powder is",
	"sulfuric_for_hydrochloric": "the bottle is another one, and heats all water it meets",
}

// required is what a writer can meet at the dangerous end too, with the time and the wall
// that the file states; at the batch thick the bottles are tanks, of whose wall nobody knows.
// So is the rise of all heat at once, with more liquor.
const required, thick, rise = "heat.addition_time.required", "50 g", "heat.adiabatic_rise"

// A starter is an example: at its best estimate nothing exceeds a limit that who wrote it
// could have met, with the bore of a vent, a time of addition, a lid that lets gas out, a
// larger bottle or more liquor. What exceeds at the dangerous end alone rests on what is
// left to fill in: the impurities of the powder, and what the bath takes.
func TestStartersExceedNothingTheirWriterCouldHaveMet(t *testing.T) {
	long.Only(t)
	met := map[string]bool{}
	for _, s := range route.Starters() {
		for _, batch := range long.Some([]string{"1 g", "0.2 g", "5 g", "50 g"}, 1, 1) {
			m, err := quantity.Parse(batch, quantity.Mass)
			if err != nil {
				t.Fatal(err)
			}
			var b strings.Builder
			if err := route.WriteStarter(&b, s.Name, "Ti3AlC2", m); err != nil {
				t.Fatal(err)
			}
			rv := review(t, b.String())
			for i := range rv.Findings {
				f := &rv.Findings[i]
				g := figureOf(&rv, f.Figure.String())
				if f.Verdict != figure.Exceeds {
					continue
				}
				if f.Figure.Quantity == required && batch != thick || f.Figure.Quantity == rise {
					t.Errorf("%s, %s: %s exceeds at the dangerous end", s.Name, batch, f.ID())
				}
				if f.Surely == figure.DangerousEnd {
					continue
				}
				if why := left[f.Figure.Case.Failure]; why != "" {
					met[f.Figure.Case.Failure] = true
					continue
				}
				if f.Surely == figure.NotSaid && g != nil && g.Value.V <= f.Limit.Value {
					continue // a bracket, whose value is within
				}
				t.Errorf("%s, %s: %s exceeds (%s)", s.Name, batch, f.ID(), f.Surely)
			}
		}
	}
	if !testing.Short() && len(met) < len(left) {
		t.Errorf("of %v only %v are met: leave out what no starter does", slices.Sorted(maps.Keys(left)),
			slices.Sorted(maps.Keys(met)))
	}
}
