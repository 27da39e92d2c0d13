package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals/datum"
	"etchbound/hazards"
	"etchbound/hazards/phrase"
	"etchbound/schemas/long"
)

// The time an addition takes goes with 1/(T - 0 degC) of the temperature it is stopped
// at: 20 (15 to 25) degC makes its high end 20/15 times that of 20 degC, its low end
// 20/25 times. It was unknown where that temperature has a range.
func TestAStopWithARange(t *testing.T) {
	long.NotShort(t)
	stopped := func(at string) string {
		return strings.Replace(inIce("1 g", "200 mL", "2 W/K"), "over: 10 min,", "over: 10 min, not_above: "+at+",", 1)
	}
	exact, ranged := review(t, stopped("20 degC")), review(t, stopped("20 (15 to 25) degC"))
	const id = "heat.addition_time.required@2"
	a, b := byID(exact.Figures)[id], byID(ranged.Figures)[id]
	if a == nil || b == nil {
		t.Fatal(a, b)
	}
	for _, x := range []struct{ got, want float64 }{
		{b.Value.V, a.Value.V}, {b.High().V, a.High().V * 20 / 15}, {b.Low().V, a.Low().V * 20 / 25}} {
		if !within(x.got, x.want, 1e-6) {
			t.Errorf("%g min, want %g", x.got, x.want)
		}
	}
}

// A range of a measured curve moves what is run by it. Only its values counted, and
// nothing said so.
func TestACurveWithARange(t *testing.T) {
	long.NotShort(t)
	measured := func(conversion string) string {
		return inIce("1 g", "200 mL", "2 W/K") + "measured: {curve: {temperature: 2 degC, points: [{time: 1 h, conversion: " +
			conversion + "}, {time: 4 h, conversion: 95 %}]}}\n"
	}
	exact, ranged := review(t, measured("50 %")), review(t, measured("50 (30 to 70) %"))
	const id = "gas.hydrogen.dilution_air@2:measured"
	a, b := byID(exact.Figures)[id], byID(ranged.Figures)[id]
	if a == nil || b == nil {
		t.Fatal(a, b)
	}
	if !within(b.Value.V, a.Value.V, 1e-9) || !(b.High().V > 1.2*a.High().V) {
		t.Errorf("%g to %g m3/h, and without the range %g to %g", b.Low().V, b.High().V, a.Low().V, a.High().V)
	}
}

// What a long hold can come to at its worst does not go by whether the powder went in over
// ten minutes or forty: it has hardly begun to react by then. The dangerous end of the flow
// jumped from 18 to 27 and 40 mL/min between them, since no datum alone shows that several
// together heat the liquor up. By hand there is no more than that they are alike: 1 %.
func TestTheWorstOfAHoldGoesOnSmoothly(t *testing.T) {
	long.Only(t)
	demo := bundledTexts(t)["demo-lif-hcl-2g.yaml"]
	high := func(minutes, id string) float64 {
		rv := reviewed(t, strings.Replace(demo, "over: 20 min", "over: "+minutes+" min", 1), true)
		f := byID(rv.Figures)[id]
		if f == nil {
			t.Fatal("no figure", id)
		}
		return f.High().V
	}
	for _, id := range []string{"gas.hydrogen.peak_rate.after_addition@3:self_accelerating", "air.mist@3/hf"} {
		first := high("10", id)
		for _, minutes := range []string{"20", "40"} {
			if got := high(minutes, id); !within(got, first, 0.01) {
				t.Errorf("%s: %g where powder goes in over %s min, %g over 10 min", id, got, minutes, first)
			}
		}
	}
}

// Near a runaway a quick etch gets hotter and a slow one lets more wait: the dangerous end of a
// flow is never less than what it comes to at data within their ranges. Of 50 g in a lined
// reactor these, by hand the low end of heat out of it and the pace at its best estimate, come to
// 20 times what the quickest etch alone does, and others, found among corners drawn at random, to
// 2.4 and 8 times the greatest of the corners that are looked for. Its end is a bound.
func TestASlowEtchCanRunAwayToo(t *testing.T) {
	long.NotShort(t)
	rv := reviewed(t, bundledTexts(t)["reactor-50g.yaml"], true)
	for _, x := range []struct {
		law   string
		least float64 // L/min, of the figure with the data so
		at    map[datum.ID]float64
	}{
		{"self_accelerating", 20, map[datum.ID]float64{"etch_heat.Ti3AlC2": 835, "termination.oxygen": 2,
			"kinetics.hold_share": 0.1, "wall.other": 10, "conductivity.polymer": 0.1}},
		{"self_accelerating", 60, map[datum.ID]float64{"etch_heat.Ti3AlC2": 835, "termination.oxygen": 0,
			"impurity.unstated": 0.05, "kinetics.activation": 70, "kinetics.seed": 0.001, "kinetics.hold_share": 0.1,
			"kinetics.metal_time": 80, "boiling.offset": 2, "film.inside": 1000, "wall.other": 10}},
		{"early_peak", 3, map[datum.ID]float64{"etch_heat.Ti3AlC2": 835, "termination.oxygen": 2, "impurity.unstated": 0.05,
			"kinetics.activation": 70, "kinetics.metal_time": 80, "wall.other": 10, "conductivity.polymer": 0.1}},
	} {
		move := map[int]float64{}
		for id, at := range x.at {
			d, held := rv.Case.Store.Row(id)
			if !held || !(at >= d.Low && at <= d.High) {
				t.Fatalf("%s: %+v", id, d)
			}
			move[d.Index] = at
		}
		c := rv.Case
		c.Store = c.Store.With(move)
		id := "gas.hydrogen.peak_rate.during_addition@2:" + x.law
		at := figureOf(&hazards.Review{Figures: hazards.Assess(c, nil).Figures}, id)
		if f := byID(rv.Figures)[id]; !(at.Value.V > x.least) || !(f.High().V >= at.Value.V) || !f.Bounded {
			t.Errorf("%s: %g L/min, and its range ends at %g", id, at.Value.V, f.High().V)
		}
	}
	if !slices.ContainsFunc(rv.Warnings, func(p phrase.Phrase) bool { return p.Key == "warn.runs_away" }) {
		t.Error("it is not told that no run bounds a flow")
	}
}
