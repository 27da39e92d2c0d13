package rinsing_test

import (
	"strings"
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/rinsing"
	"etchbound/hazards/wash"
	"etchbound/schemas/nearly"
)

const (
	acid = "  - {do: charge, in: pot, what: [{substance: hydrochloric acid, strength: 9 mol/L, volume: 20 mL}], " +
		"temperature: 20 degC}\n"
	etch = acid + "  - {do: add, in: pot, what: [{substance: lithium fluoride, mass: 1.6 g}], over: 10 min, " +
		"temperature: 20 degC}\n  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}\n" +
		"  - {do: hold, in: pot, time: 24 h, temperature: 35 degC}\n  - {do: wash, in: pot, into: drum, what: " +
		"[{substance: water, volume: 18 mL}], cycles: 7, retained: 2 mL, temperature: 20 degC}\n"
	salt = acid + "  - {do: add, in: pot, what: [{substance: lithium fluoride, mass: 6.226 g}], over: 10 min, " +
		"temperature: 20 degC}\n  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 40 mL}], cycles: 7, " +
		"target_ph: 6, retained: 2 mL, water: co2_free, temperature: 20 degC}\n"
)

func washed(t *testing.T, steps string) rinsing.Wash {
	t.Helper()
	b := bench.Steps(t, steps)
	all := rinsing.Read(b.Case, &b.Walk)
	if len(all) != 1 || len(all[0].Ways) != 3 {
		t.Fatalf("%d washes followed", len(all))
	}
	return all[0]
}

// Washed with 0.05 mol/L of bicarbonate each time, a cycle that takes no acid stays at its pH,
// 8.3 (half of pK1 and pK2 of carbonic acid, 6.35 and 10.33: handbook, from memory), somewhat
// below it under carbon dioxide of 1 atm; those with acid give carbon dioxide off.
func TestBicarbonateAsWritten(t *testing.T) {
	b := bench.Steps(t, strings.Replace(etch, "{substance: water, volume: 18 mL}",
		"{substance: sodium hydrogencarbonate, strength: 0.05 mol/L, volume: 18 mL}", 1))
	w := rinsing.Read(b.Case, &b.Walk)
	if len(w) != 1 || len(w[0].Ways) != 1 {
		t.Fatalf("%+v", w)
	}
	x := w[0].Ways[0]
	last := x.Decants[len(x.Decants)-1].PH
	if !nearly.Between(last, 7.3, 8.4) || !nearly.Between(x.CarbonDioxide, 0.005, 0.16) {
		t.Errorf("pH %.2f in the end, %g L of carbon dioxide", last, x.CarbonDioxide)
	}
}

// A wash with water after one with bicarbonate begins with the bicarbonate that stayed: its pH
// is that of the decant before, and water without carbon dioxide dilutes it tenfold (18 mL on
// 2), 7 to 9, where lye of the same sodium, 5 mmol/L, would be at 11.7 (14 + log 0.005).
// Cryolite that settled dissolves again: 0.05 mol/L of sodium held it, and a tenth does not.
func TestWaterAfterBicarbonate(t *testing.T) {
	steps := strings.Replace(etch, "water, volume: 18 mL}], cycles: 7", "sodium hydrogencarbonate, strength: 0.05 mol/L, "+
		"volume: 18 mL}], cycles: 7", 1) + "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 18 mL}], " +
		"cycles: 2, retained: 2 mL, water: co2_free, temperature: 20 degC}\n"
	hold := "  - {do: hold, in: pot, time: 1 min, temperature: 20 degC}\n"
	for _, between := range []string{"", hold} {
		at := strings.LastIndex(steps, "  - {do: wash")
		b := bench.Steps(t, steps[:at]+between+steps[at:])
		all := rinsing.Read(b.Case, &b.Walk)
		if len(all) != 2 {
			t.Fatalf("%d washes", len(all))
		}
		first, d := all[0].Ways[0].Decants, all[1].Ways[0].Decants
		if last := first[7].PH; between == "" && !nearly.To(d[0].PH, last, 1e-9) || !nearly.Between(d[0].PH, 7, 8.4) {
			t.Errorf("%q: goes on at pH %.3f from %.3f", between, d[0].PH, last)
		}
		if !nearly.Between(d[1].PH, 7, 9) {
			t.Errorf("%q: pH %.2f after water, want 7 to 9", between, d[1].PH)
		}
		if between == "" && !nearly.To(d[0].Fluoride, first[7].Fluoride, 1e-9) {
			t.Errorf("goes on with %g mg/L from %g", d[0].Fluoride, first[7].Fluoride)
		}
	}
}

// Bicarbonate brings the pH before the fluoride is out: the cycles by pH end above 20 mg/L
// (drinking water guidance is 1.5: handbook, from memory), and those to both are more.
func TestPHAloneDoesNotWash(t *testing.T) {
	aimed := strings.Replace(etch, "cycles: 7", "cycles: 7, target_ph: 5.5", 1)
	b := bench.Steps(t, strings.Replace(aimed, "{substance: water,", "{substance: sodium hydrogencarbonate, "+
		"strength: 0.05 mol/L,", 1))
	x := rinsing.Read(b.Case, &b.Walk)[0].Ways[0]
	if !(x.Left > x.Limit) || !(x.Clean > x.Slowly) || !nearly.To(x.Left, x.Decants[x.Slowly].SlowFluoride, 1e-9) {
		t.Errorf("bicarbonate: %g mg/L after %d, clean after %d", x.Left, x.Slowly, x.Clean)
	}
	if x := washed(t, aimed).Ways[0]; x.Left > x.Limit || x.Clean != x.Slowly {
		t.Errorf("water: %g mg/L after %d, clean after %d", x.Left, x.Slowly, x.Clean)
	}
}

// Published equilibria of a LiF/HCl liquor washed so that a tenth stays, in air: pH 1.32,
// 2.25, 3.17, 4.10, 5.05, 5.53 after 2 to 7 refills, the end 5.61 by carbon dioxide. Here
// somewhat less than a tenth stays, and some LiF has gone into the etch.
func TestDecantsInAir(t *testing.T) {
	w := washed(t, at(etch, "25 degC"))
	d := w.Ways[0].Decants
	for n, want := range map[int]float64{2: 1.32, 3: 2.25, 4: 3.17, 5: 4.10, 6: 5.05, 7: 5.53} {
		if !nearly.To(d[n].PH, want, 0.35) {
			t.Errorf("pH %.2f after %d, want about %.2f", d[n].PH, n, want)
		}
		if !(d[n].SlowPH <= d[n].PH) || !(d[n].SlowFluoride >= d[n].Fluoride) {
			t.Errorf("decant %d is better with acid between the layers: %+v", n, d[n])
		}
	}
	if last := d[len(d)-1].PH; !nearly.To(last, 5.61, 0.02) {
		t.Errorf("ends at pH %.3f", last)
	}
	if !nearly.Between(float64(w.Ways[0].Needed), 6, 7) || !(w.Ways[0].Slowly > w.Ways[0].Needed) {
		t.Errorf("%d to %d cycles, want 6 or 7 and more", w.Ways[0].Needed, w.Ways[0].Slowly)
	}
	// seven cycles and the etch liquor, each of 18 mL on the 2 that stay, in one pot of 250 mL
	if x := w.Tubes; x.Spins != 8 || x.Longest != w.Ways[0].Slowly+1 || x.Count != 1 || !nearly.To(x.Filled, 20, 1e-9) ||
		!nearly.To(x.Holds, 250, 1e-9) || x.Minutes != [2]float64{5, 15} {
		t.Errorf("%+v", x)
	}
	if !(d[0].PH != d[0].PH) || !d[0].Collected || !d[3].Collected || d[9].Collected {
		t.Errorf("first decants %+v %+v", d[0], d[3])
	}
}

// at is steps of which the last is at another temperature.
func at(steps, celsius string) string {
	return steps[:strings.LastIndex(steps, "20 degC")] + celsius + "}\n"
}

// Water in air ends at half of pK1 and pKH of carbon dioxide and 3.38, -log of the 0.00042 atm that
// air has of it: at 5 degC (6.52 + 1.19 + 3.38)/2 = 5.55, at 40 degC (6.30 + 1.63 + 3.38)/2 = 5.66
// (handbook, from memory). Colder than constants are held for counts as the coldest.
func TestWashesAtTheirTemperature(t *testing.T) {
	for celsius, want := range map[string]struct{ at, pH float64 }{"2 degC": {5, 5.55}, "40 degC": {40, 5.66}} {
		w := washed(t, at(etch, celsius))
		d := w.Ways[0].Decants
		if last := d[len(d)-1].PH; w.Celsius != want.at || !nearly.To(last, want.pH, 0.02) {
			t.Errorf("%s: at %g degC ends at pH %.3f, want %.2f", celsius, w.Celsius, last, want.pH)
		}
	}
}

// Published equilibria without air: pH 6.05 after 7 refills of which a tenth stays, 6.81 after 8.
// In air pH 6.5 asks for 10^(6.5-6.35-1.47-3.38) = 0.020 mmol/L of bicarbonate and what acid is
// left (pK1, pKH: handbook, from memory). Water alone never passes pH 7; bicarbonate in air is at
// 9 with some 7 mmol/L of it, carbonate among it, and needs more than the 50 of a rinse for 10.
func TestWhatReachesATargetAboveAir(t *testing.T) {
	for target, want := range map[string]struct{ least, most, low, high float64 }{
		"6.5": {7, 8, 0.02, 0.035}, "9": {0, 0, 5, 9}, "10": {0, 0, 1, 0}, "5.5": {0, 0, 1, 0}} {
		w := washed(t, strings.Replace(at(etch, "25 degC"), "cycles: 7", "cycles: 7, target_ph: "+target, 1))
		r := w.Reach
		if w.Ceiling != (target != "5.5") || !nearly.Between(float64(r.Free[0]), want.least, want.most) ||
			want.least > 0 && !(r.Free[1] > r.Free[0]) || (r.Bicarbonate != r.Bicarbonate) != (want.low > want.high) ||
			want.low <= want.high && !nearly.Between(r.Bicarbonate, want.low, want.high) {
			t.Errorf("%s: %+v", target, r)
		}
		if g := 84.007 * 18e-6 * r.Bicarbonate; r.Bicarbonate > 0 && !nearly.To(r.Salt, g, 0.02*g) { // a cycle of 18 mL
			t.Errorf("%s: %g g, want %g", target, r.Salt, g)
		}
	}
}

// 240 mmol of LiF in 180 mmol of HCl leave 60 mmol undissolved (12 mol/L in 9 mol/L,
// 20 mL). Saturated at 0.052 mol/kg it holds 988 mg/L of fluoride, whatever the pH, and 40 mL
// take 2.08 mmol: 29 washes for it alone. A rinse with 1.5 mol/L of acid takes about half
// (by hand: s^2/(1513 (1.5 - s)) = 10^-2.74, and less where lithium is there before).
func TestUndissolvedFluorideIsNotWashed(t *testing.T) {
	w := washed(t, salt)
	x := w.Ways[0]
	if !nearly.Between(float64(x.Needed), 29, 33) {
		t.Errorf("%d washes, want 29 and some of the acid", x.Needed)
	}
	if d := x.Decants[7]; !(d.PH > 6) || !nearly.To(d.Fluoride, 988, 3) || !nearly.Between(x.Undissolved, 45, 55) {
		t.Errorf("after seven: pH %.2f, %g mg/L, %g mmol undissolved", d.PH, d.Fluoride, x.Undissolved)
	}
	if a := w.Ways[1]; !nearly.Between(float64(a.Needed), 10, 20) {
		t.Errorf("%d washes after a rinse with acid", a.Needed)
	}
}

// What dilution alone says of that wash has a range to what the salt asks for, and says why.
func TestUndissolvedFluorideWidensTheWash(t *testing.T) {
	b := bench.Steps(t, salt)
	figs := wash.Read(b.Case, nil, b.Walk, nil, nil)
	warned := rinsing.Widen(b.Case, &b.Walk, figs)
	for i := range figs {
		if f := &figs[i]; f.ID.String() == "wash.cycles@3" && !nearly.Between(f.High().V, 29, 33) {
			t.Errorf("%s: %g to %g", f.ID, f.Low().V, f.High().V)
		}
	}
	if len(warned) != 1 {
		t.Errorf("%d warnings", len(warned))
	}
	b = bench.Steps(t, etch)
	figs = wash.Read(b.Case, nil, b.Walk, nil, nil)
	if rinsing.Widen(b.Case, &b.Walk, figs) != nil {
		t.Error("warns of what is dissolved")
	}
}

// With something in it of which no equilibrium is held, a trace of oxalic acid, the same wash
// is no better: how many cycles it takes at most is not known, and it is warned of.
func TestWhatIsNotHeldDoesNotDissolveTheFluoride(t *testing.T) {
	b := bench.Steps(t, strings.Replace(salt, "{substance: lithium fluoride, mass: 6.226 g}",
		"{substance: lithium fluoride, mass: 6.226 g}, {substance: oxalic acid, mass: 10 mg}", 1))
	figs := wash.Read(b.Case, nil, b.Walk, nil, nil)
	if warned := rinsing.Widen(b.Case, &b.Walk, figs); len(warned) != 1 {
		t.Errorf("%d warnings", len(warned))
	}
	for i := range figs {
		if f := &figs[i]; f.ID.String() == "wash.cycles@3" && !f.High().Unknown() {
			t.Errorf("%s: %g to %g", f.ID, f.Low().V, f.High().V)
		}
	}
}

// A gram that holds a millimol of acid between its layers gives half of what is left with
// each cycle: 10^-3/2^n mol in 18 mL are 10^-5.5 mol/L after some 14 of them. Where no
// equilibrium is held of something in it, how many it takes is not known.
func TestAcidBetweenTheLayersWidensTheWash(t *testing.T) {
	for _, row := range []struct {
		steps string
		known bool
	}{{etch, true}, {strings.Replace(etch, "mass: 1.6 g}", "mass: 1.6 g}, {substance: oxalic acid, mass: 10 mg}", 1),
		false}} {
		b := bench.Steps(t, strings.Replace(row.steps, "cycles: 7", "cycles: 7, target_ph: 5.5", 1))
		figs := wash.Read(b.Case, nil, b.Walk, nil, nil)
		for i := range figs {
			figs[i].SetRange(figs[i].Value.V, figs[i].Value.V)
		}
		rinsing.Widen(b.Case, &b.Walk, figs)
		cycles, pH := bench.Find(t, figs, "wash.cycles@5"), bench.Find(t, figs, "wash.ph@5")
		if row.known && (!nearly.Between(cycles.High().V, 13, 18) || !(pH.Low().V < 4.5) || !(pH.Low().V > 2)) {
			t.Errorf("%g to %g cycles, pH %g to %g", cycles.Low().V, cycles.High().V, pH.Low().V, pH.High().V)
		}
		if !row.known && (!cycles.High().Unknown() || !pH.Low().Unknown() || pH.Value.Unknown()) {
			t.Errorf("%g to %g cycles, pH %g to %g", cycles.Low().V, cycles.High().V, pH.Low().V, pH.High().V)
		}
	}
}
