package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// 3 g of powder, 760/194.605 kJ a gram, in 60 mL of 10 wt% acid; a bath of 20 degC takes
// 2 W/K.
func inPortions(keys string) string {
	return "route: etchbound/1\ntitle: check\nbasis: {status: invented}\n" +
		"precursor: {phase: Ti3AlC2, mass: 3 g, impurities: none (certificate)}\nplaces:\n" +
		"  pot: {kind: bottle, material: PTFE, capacity: 250 mL, closure: vented, cooling: {kind: water_bath, " +
		"temperature: 20 degC, ua: 2 W/K}}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 60 mL}], " +
		"temperature: 20 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 60 min" + keys + ", temperature: 20 degC}\n" +
		"  - {do: hold, in: pot, time: 24 h, temperature: 20 degC}\n"
}

// A gram of 3.905 kJ tipped in within 30 s gives 130.2 W, and 3 mol of gas per mol are
// 377.2 mL in that time (24.4654 L/mol): 0.754 L/min. Evenly over the hour it is a
// fortieth. In 246 J/K (62.0 g of 3.93 J/g/K, 2 J/K of powder) the bath brings back to
// 20 degC what a portion warms in 20 min, and each ends at
// 20 + 65.1 (1 - exp(-2 30/246)) = 34.1 degC.
func TestPowderInPortions(t *testing.T) {
	long.Only(t)
	const power, flow, peak = "heat.peak_power.during_addition@2:instantaneous",
		"gas.hydrogen.peak_rate.during_addition@2:instantaneous", "heat.temperature_peak@2:instantaneous"
	for _, c := range []struct {
		keys              string
		watts, rate, degC float64
	}{
		{"", 3.254, 0.01886, 21.6},
		{", portions: 3", 130.2, 0.7544, 34.1},
		{", portions: 3, portion_time: 1 min", 65.1, 0.3772, 32.5},
		{", portions: 3, portion_time: 20 min", 3.254, 0.01886, 21.6},
		{", portions: 100, portion_time: 0.1 s", 1171.6, 6.79, 21.7},
	} {
		f := byID(review(t, inPortions(c.keys)).Figures)
		for id, want := range map[string]float64{power: c.watts, flow: c.rate} {
			if x := f[id]; x == nil || !nearly.Share(x.Value.V, want, 2e-3) {
				t.Errorf("%s of%s: %v, want %g", id, c.keys, x, want)
			}
		}
		if x := f[peak]; x == nil || !nearly.To(x.Value.V, c.degC, 0.2) {
			t.Errorf("%s of%s: %v, want %g", peak, c.keys, x, c.degC)
		}
	}
}

// By the laws that are integrated a portion is in the vessel as soon as it is tipped in:
// by one that is done in an hour it gives half as much again as an even one (3 k of 3.9 kJ a
// portion, by hand 1.6), and all
// of the powder has gone in and reacted by the end. Tipped in at once it gives three
// times the gas of a portion, whatever the portions are.
func TestPortionsAreSeenByTheRunsAndTheFailures(t *testing.T) {
	long.NotShort(t)
	quick := func(keys string) string {
		return strings.Replace(inPortions(keys), "24 h", "60 min", 1) + "measured: {kinetics: first_order}\n"
	}
	rv, even := review(t, quick(", portions: 3")), review(t, quick(""))
	const law = "heat.peak_power.during_addition@2:first_order"
	a, b := figureOf(&rv, law), figureOf(&even, law)
	if a == nil || b == nil || !(a.Value.V > 1.3*b.Value.V) || !(a.Value.V < 150) {
		t.Errorf("power in portions %g W, evenly %g W", a.Value.V, b.Value.V)
	}
	if n := len(rv.Courses); n != 1 || !nearly.To(rv.Courses[0].Runs[0].Vessel.Conversion, 1, 1e-3) ||
		!(rv.Courses[0].Runs[0].Vessel.Closure < 1e-3) {
		t.Errorf("%d courses, %+v", n, rv.Courses[0].Runs[0].Vessel.End)
	}
	const tipped = "gas.hydrogen.peak_rate@2:all_at_once,instantaneous"
	if x, y := figureOf(&rv, tipped), figureOf(&even, tipped); x == nil || y == nil ||
		!nearly.Share(x.Value.V, 3*0.7544, 2e-3) || !nearly.Share(x.Value.V, y.Value.V, 1e-12) {
		t.Errorf("all at once %v, and %v from an even addition", x, y)
	}
}

// The cooling follows the heat of an even hour, 11.7 kJ at 2 W/K, and not that of
// portions that are in within a minute and a half.
func TestCoolingIsHeldToThePortions(t *testing.T) {
	long.NotShort(t)
	const id = "heat.addition_time.required@2+written_over"
	for keys, want := range map[string]figure.Verdict{"": figure.Within, ", portions: 3": figure.Exceeds} {
		rv := review(t, inPortions(keys))
		if got, there := verdicts(&rv)[id]; !there || got != want {
			t.Errorf("%q: %v (there %v), want %v", keys, got, there, want)
		}
	}
}

// Portions that would overlap, or of which nothing says over what time they come.
func TestPortionsThatCannotBe(t *testing.T) {
	for keys, want := range map[string]string{
		", portions: 3, portion_time: 25 min": "take longer than 60 min",
		", portion_time: 1 min":               "without portions",
		", portions: 1":                       "1",
		", portions: 200":                     "200",
	} {
		if said := refusal(t, inPortions(keys)); !strings.Contains(said, want) {
			t.Errorf("%q: refused with %q, want %q in it", keys, said, want)
		}
	}
}

// refusal is what a route that is not taken is refused with.
func refusal(t *testing.T, text string) string {
	t.Helper()
	r, problems, err := route.Load("check.yaml", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for i := range problems {
		out = append(out, problems[i].String())
	}
	if r != nil {
		t.Errorf("taken, with %q", out)
	}
	return strings.Join(out, "\n")
}
