package process_test

import (
	"testing"

	"etchbound/hazards/bench"
	"etchbound/schemas/nearly"
)

const (
	washed = "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 100 mL}], cycles: 9}\n"
	urea   = "  - {do: intercalate, in: pot, what: [{substance: urea, amount: 50 mmol}, " +
		"{substance: water, volume: 30 mL}], "
)

// ammonia is what a step is told to give, mol; nothing where it is not told.
func ammonia(t *testing.T, steps ...string) []float64 {
	t.Helper()
	b := bench.Steps(t, append([]string{bench.Etch, washed}, steps...)...)
	var out []float64
	for i := range b.Walk.Evolved {
		if x := &b.Walk.Evolved[i]; x.Gas != nil && x.Gas.Slug == "ammonia" {
			out = append(out, x.N.V)
		}
	}
	return out
}

// Powder that the etch left gives hydrogen in what is alkaline, in an amine and in hydrazine
// as in TMAOH, and not in urea: common practice, since a metal like aluminium dissolves there.
func TestAminesAreBases(t *testing.T) {
	for name, want := range map[string]bool{"hydrazine": true, "isopropylamine": true, "butylamine": true,
		"ethanolamine": true, "urea": false} {
		b := bench.Steps(t, bench.Etch, washed, "  - {do: intercalate, in: pot, what: [{substance: "+name+
			", amount: 1 mol}, {substance: water, volume: 30 mL}], time: 18 h, temperature: 25 degC}\n")
		got := false
		for i := range b.Walk.Releases {
			got = got || b.Walk.Releases[i].Cause == "residual"
		}
		if got != want {
			t.Errorf("%s: hydrogen of what the etch left: %t", name, got)
		}
	}
}

// By hand: 4.2e-5 1/s at 90 degC and 136 kJ/mol; two ammonia of each urea, 0.1 mol of 50 mmol.
func TestUreaGivesAmmoniaSlowly(t *testing.T) {
	for _, tt := range []struct {
		steps []string
		want  []float64
	}{
		{[]string{urea + "time: 24 h, temperature: 90 degC}\n"}, []float64{0.09735}},
		{[]string{urea + "time: 1 h, temperature: 90 degC}\n"}, []float64{0.01403}},
		{[]string{urea + "time: 24 h, temperature: 60 degC}\n"}, []float64{0.00608}},
		// a step that says no time counts thirty days, and what stands on goes on
		{[]string{urea + "temperature: 60 degC}\n"}, []float64{0.8478 * 0.1}},
		{[]string{urea + "time: 1 h, temperature: 90 degC}\n",
			"  - {do: hold, in: pot, time: 23 h, temperature: 90 degC}\n"}, []float64{0.01403, 0.09735}},
	} {
		got := ammonia(t, tt.steps...)
		if len(got) != len(tt.want) {
			t.Fatalf("%v: %v, want %v", tt.steps, got, tt.want)
		}
		for i := range got {
			if !nearly.Share(got[i], tt.want[i], 0.02) {
				t.Errorf("%v: %g mol, want %g", tt.steps, got[i], tt.want[i])
			}
		}
	}
}
