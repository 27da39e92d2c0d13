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
// ppm, and the two act together (by hand). At 24.4654 L/mol, 5 m3/min near by and 180 m3/h that
// mix into 100 m3, a mole of HF is 9786 ppm near by and never more than 245 ppm in the room,
// where 16310 would stand if it went on for hours: that counts on average alone, 27.18 ppm.
// Four thousand moles fill all of the air and no more. A failure, and one acid alone,
// have no such sum.
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
	for id, want := range map[string]float64{"air.breathing_zone@2/hf:boiling": 9786.16 + 244.654,
		"air.boiled_average@2/hf:boiling,over_480_min":  27.1838,
		"air.boiled_average@2/hcl:boiling,over_480_min": 2 * 27.1838, "air.additive@2:boiling": at/2 + 2*at/2} {
		if f := bench.Find(t, both, id); !nearly.Share(f.Value.V, want, 1e-5) {
			t.Errorf("%s: %g, want %g", id, f.Value.V, want)
		}
	}
	all := bench.Find(t, acid(breath, "hf", 4000, figure.By(figure.Boiling)), "air.breathing_zone@2/hf:boiling")
	if all.Value.V != 1e6 {
		t.Errorf("more than all of the air is vapour: %+v", all.Value)
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
