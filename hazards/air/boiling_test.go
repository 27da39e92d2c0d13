package air_test

import (
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/air"
	"etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

// A mole of HF and two of HCl that boil off within 30 s as a step is meant: over eight hours
// a person is beside 1/28800 and 2/28800 mol/s, half as much HF as HCl; each takes C/L of 2
// ppm, and the two act together (by hand). A failure, and one acid alone, have no such sum.
func TestWhatBoilsOffIsAveragedAndAddedUp(t *testing.T) {
	c := bench.CaseOf(t, bench.Head+bench.Etch)
	c.Site = &route.Site{RoomVolume: quantity.Of(100, "m3"), RoomFlow: quantity.Of(600, "m3/h"), Jurisdiction: "eu"}
	acid := func(breath func(int, string, working.Num, working.Num, figure.Case, phrase.Phrase) []figure.Figure,
		agent string, mol float64, kase figure.Case) []figure.Figure {
		return breath(2, agent, working.Exact("n", "mol/s", mol/30, "by hand"), working.Exact("N", "mol", mol, "by hand"),
			kase, phrase.Of("upset.boils_as_run"))
	}
	breath := air.Breath(c, nil)
	hf := acid(breath, "hf", 1, figure.By(figure.Boiling))
	both := append(hf, acid(breath, "hcl", 2, figure.By(figure.Boiling))...)
	at := bench.Find(t, both, "air.breathing_zone@2/hf:boiling").Value.V
	for id, want := range map[string]float64{"air.boiled_average@2/hf:boiling,over_480_min": at * 30 / 28800,
		"air.boiled_average@2/hcl:boiling,over_480_min": 2 * at * 30 / 28800, "air.additive@2:boiling": at/2 + 2*at/2} {
		if f := bench.Find(t, both, id); !nearly.Share(f.Value.V, want, 1e-9) {
			t.Errorf("%s: %g, want %g", id, f.Value.V, want)
		}
	}
	alone := acid(air.Breath(c, nil), "hf", 1, figure.By(figure.Boiling))
	for _, f := range append(alone, acid(breath, "hf", 1, figure.If("all_at_once"))...) {
		if f.Quantity == "air.additive" || f.Case.Failure != "" && f.Quantity == "air.boiled_average" {
			t.Errorf("%s", f.ID)
		}
	}
	none := bench.Find(t, acid(air.Breath(c, nil), "hf", 0, figure.By(figure.Boiling)),
		"air.boiled_average@2/hf:boiling,over_480_min")
	if none.Value.V != 0 || none.Value.Unknown() {
		t.Errorf("of nothing: %+v", none.Value)
	}
}
