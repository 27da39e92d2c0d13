package storage_test

import (
	"math"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/storage"
	"etchbound/schemas/nearly"
)

// By hand: 0.1 g of the reference, 201.8 g/mol, has 0.297 mmol of fluorine, 5.95 mg as HF. Of
// 0.763 of it in 20 mL that is 11.35 mmol/L; with pK 3.17 x^2/(0.01135-x) = 10^-3.17 gives
// x = 2.45 mmol/L, pH 2.61. As chloride it is a strong acid: pH 1.95.
func TestAnOldDispersionIsAcid(t *testing.T) {
	figs := vial{gas: "argon"}.read(t)
	if m := value(t, figs, "store.fluoride@pot"); !nearly.Share(m, 0.763*5.95e-3, 0.01) {
		t.Errorf("%g g of HF", m)
	}
	if x := value(t, figs, "store.ph@pot"); !nearly.To(x, 2.61, 0.03) {
		t.Errorf("pH %g, want 2.61", x)
	}
	chloride := vial{gas: "argon", of: map[string]float64{"Ti": 3, "C": 2, "O": 1.4, "H": 0.4, "Cl": 0.6}}.read(t)
	if x := value(t, chloride, "store.ph@pot"); !nearly.To(x, 1.95, 0.03) {
		t.Errorf("chloride: pH %g, want 1.95", x)
	}
	if m := value(t, chloride, "store.fluoride@pot"); !nearly.To(m, 0, 1e-12) {
		t.Errorf("chloride: %g g of HF", m)
	}
}

// Ice takes 1.09 of its water: 20 mL in 25 mL come to 87 %, 23 mL to more than there is.
// What is not frozen has no such figure, and what a solvent keeps from freezing is no slower
// than its temperature alone makes it.
func TestIceBreaksWhatIsFull(t *testing.T) {
	for mL, want := range map[float64]float64{10: 43.7, 20: 87.3, 23: 100.4} {
		figs := vial{celsius: -20, mL: mL}.read(t)
		if x := value(t, figs, "store.ice@pot"); !nearly.Share(x, want, 0.005) {
			t.Errorf("%g mL: %g %%, want %g", mL, x, want)
		}
	}
	for _, f := range (vial{}).read(t) {
		if f.Quantity == "store.ice" {
			t.Error("ice at 25 degC")
		}
	}
	rate := func(v vial) float64 { return -math.Log1p(-value(t, v.read(t), lost1)) }
	wet := vial{celsius: -20, gas: "argon"}
	with := wet
	with.add = map[string]float64{"ethanol": 1}
	if x := rate(with) / rate(wet); !nearly.Share(x, 10, 0.01) {
		t.Errorf("with ethanol in it %g times as fast, want 10", x)
	}
}

// Ammonia over alkaline water, by hand: 0.1 g of Ti3C1.5N0.5O1.4(OH)0.4F0.6 at 201.8 g/mol gives
// 0.248 mmol; in 20 mL with 59 mol/L/bar and 5 mL of gas it adds 0.021 kPa. At pH 7 the HF of 0.6 takes it;
// of one nitrogen it does not take all, which counts as free at any pH: 0.496 mmol are 8.44 mg.
func TestAmmoniaOfANitride(t *testing.T) {
	half := map[string]float64{"Ti": 3, "C": 1.5, "N": 0.5, "O": 1.4, "H": 0.4, "F": 0.6}
	one := map[string]float64{"Ti": 3, "C": 1, "N": 1, "O": 1.4, "H": 0.4, "F": 0.6}
	at := func(of map[string]float64, ph float64, id string) float64 {
		return value(t, vial{gas: "argon", days: 3650, of: of, ph: ph}.read(t), id)
	}
	if x := at(half, 9, kept) - at(half, 7, kept); !nearly.To(x, 0.021, 0.002) {
		t.Errorf("%g kPa of ammonia, want 0.021", x)
	}
	if x := at(one, 9, kept) - at(one, 7, kept); !nearly.To(x, 0, 1e-9) {
		t.Errorf("%g kPa more at pH 9, where the acid of the flakes does not take it all", x)
	}
	if m := at(one, 7, "store.ammonia@pot"); !nearly.Share(m, 0.00844, 0.01) {
		t.Errorf("%g g of ammonia, want 8.44 mg", m)
	}
}

// By hand, ideal solutions at 25 degC, pKa of tables: citric acid 3.13, 4.76, 6.40, 10 mmol/L:
// h^2/(c-h) = 10^-3.13 gives 2.38 mmol/L, and the second proton a little, pH 2.62; ascorbic acid
// 4.17, 5.05 mmol/L: 0.55 mmol/L; its salt: (14+4.17-2.297)/2; oxalic acid 1.25, 4.27: 8.7 mmol/L;
// tartaric acid 3.04, 4.37: 2.6 mmol/L; polyphosphate as the NaH2PO4 it goes to: (2.17+7.21)/2.
func TestPHOfWeakAcid(t *testing.T) {
	for name, row := range map[string]struct{ c, pH float64 }{
		"citric acid": {10, 2.62}, "ascorbic acid": {5.05, 3.26}, "sodium ascorbate": {5.05, 7.94},
		"oxalic acid": {10, 2.06}, "tartaric acid": {10, 2.58}, "sodium polyphosphate": {100, 4.69},
	} {
		f := bench.Find(t, vial{gas: "argon", days: 1e-6, add: map[string]float64{name: row.c}}.read(t), "store.ph@pot")
		if !nearly.To(f.Value.V, row.pH, 0.03) || f.Value.Status != working.Estimated {
			t.Errorf("%s: pH %v, want %g", name, f.Value, row.pH)
		}
	}
}

// The outer bound has what an additive can give itself, by hand: 5.05 mmol/L of ascorbate in 20 mL,
// one CO2 each, 0.101 mmol, over (5/1000)/(0.0831446*298.15) + 0.034*0.02 mol/bar are 11.4 kPa; three
// of 10 mmol/L of citric acid 68 kPa. What is counted with the flakes alone has none of it.
func TestOuterBoundHasTheGasOfAnAdditive(t *testing.T) {
	at := func(add map[string]float64, id string) float64 {
		return value(t, vial{gas: "argon", days: 1e-6, add: add}.read(t), id)
	}
	for name, row := range map[string]struct{ c, kPa float64 }{
		"sodium ascorbate": {5.05, 11.4}, "citric acid": {10, 68}, "sodium polyphosphate": {100, 0},
	} {
		add := map[string]float64{name: row.c}
		if got := at(add, "store.pressure@pot:carbon_dioxide"); !nearly.To(got, row.kPa, 0.02*row.kPa+0.01) {
			t.Errorf("%s: %g kPa, want %g", name, got, row.kPa)
		}
		if got := at(add, kept); !nearly.To(got, 0, 0.01) {
			t.Errorf("%s: %g kPa of flakes, want none yet", name, got)
		}
	}
}

// Shut at 25 degC and kept at 40, by hand: the gas shut in gains 101.325*15/298.15 = 5.10 kPa, water
// 7.38 - 3.17 = 4.21 (handbook), isopropanol 14 - 6 (memory: 6.0 kPa at 25 degC, 14 at 40). Colder
// there is nothing to gain, and nothing is credited.
func TestWarmthAddsToThePressure(t *testing.T) {
	for _, row := range []struct{ celsius, isopropanol, kPa, near float64 }{
		{40, 0, 9.31, 0.05}, {40, 10, 17.3, 2}, {25, 0, 0, 1e-3}, {5, 0, 0, 1e-3},
	} {
		v := vial{gas: "argon", days: 1e-6, celsius: row.celsius}
		if row.isopropanol > 0 {
			v.add = map[string]float64{"isopropanol": row.isopropanol}
		}
		x := value(t, v.read(t), kept)
		if !nearly.To(x, row.kPa, row.near) {
			t.Errorf("%g degC, %g mmol/L: %g kPa, want %g", row.celsius, row.isopropanol, x, row.kPa)
		}
	}
}

// Two stages, 1 d at 40 degC and then 60 d at 25 degC, are not worse than their sum: 0.0842
// and then 0.024 a day come to a fifth, 0.2231, after 1 + (0.2231-0.0842)/0.024 = 6.8 d.
func TestLifeGoesOnFromStageToStage(t *testing.T) {
	b := bench.Steps(t, bench.Etch, "  - {do: store, in: pot, time: 1 d, temperature: 40 degC, gas: argon}\n"+
		"  - {do: store, in: pot, time: 60 d, temperature: 25 degC, gas: argon}\n")
	p, n := b.Case.Route.Place("pot"), len(b.Case.Route.Steps)
	p.Closure, p.ClosureStated = route.Closed, true
	p.Capacity.SI = 25e-6
	exact := func(unit string, x float64) working.Num { return working.Exact("x", unit, x, "of the test") }
	for _, i := range []int{n - 2, n - 1} {
		after := &b.Walk.Steps[i].After
		after.Liquid = []process.Pool{{Volume: exact("mL", 20), Mass: exact("g", 20), Share: exact("1", 1), Whole: true,
			Entries: []process.Entry{entry(t, "water", 20/18.015)}}}
		after.Solids = []process.Solid{{Name: "flakes", Kind: process.Product, Of: vial{}.composition(),
			N: exact("mol", 0.1/201.8), Mass: exact("g", 0)}}
	}
	figs := storage.Read(b.Case, nil, b.Walk, nil, nil)
	if x := value(t, figs, "store.shelf_life@pot:ph_mode_1"); !nearly.Share(x, 6.8, 0.02) {
		t.Errorf("%g d to a fifth, want 6.8", x)
	}
	want := 1 - math.Exp(-0.0842-1.44)
	if x := value(t, figs, lost1); !nearly.Share(x, want, 0.005) {
		t.Errorf("%g of it lost, want %g", x, want)
	}
}

// A container that is shut at the end with flakes in it, which no step stores, is not passed
// over: it comes to the gas of all of it. 0.1 g of Ti3C2O1.0(OH)0.4F0.6 in 20 of 25 mL: 545 mL/g as
// hydrogen with the carbon kept, 303 mL/g as methane and hydrogen, 1273 mL/g in the outer bound; over
// (5/1000)/(R T) + H 20/1000 that is 10.2, 5.5 and 20.7 bar. Two batches in twice the room are no
// more; where nobody says how large it is nobody knows. With a vent there is nothing to say.
func TestWhatStandsShutIsNotPassedOver(t *testing.T) {
	read := func(closure route.Closure, capacity float64, batches int) []figure.Figure {
		b := bench.Steps(t, bench.Etch, "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 1 L}], "+
			"cycles: 8}\n")
		p := b.Case.Route.Place("pot")
		p.Closure, p.ClosureStated, p.Batches = closure, true, batches
		p.Capacity.SI, p.Capacity.Set = capacity, capacity > 0
		exact := func(unit string, x float64) working.Num { return working.Exact("x", unit, x, "of the test") }
		for i := range b.Walk.Ends {
			if x := &b.Walk.Ends[i]; x.Place == "pot" {
				x.Liquid = []process.Pool{{Volume: exact("mL", 20), Mass: exact("g", 20), Share: exact("1", 1), Whole: true,
					Entries: []process.Entry{entry(t, "water", 20/18.015)}}}
				x.Solids = []process.Solid{{Name: "flakes", Kind: process.Product, Of: vial{}.composition(),
					N: exact("mol", 0.1/201.8), Mass: exact("g", 0)}}
			}
		}
		var out []figure.Figure
		for _, f := range storage.Read(b.Case, nil, b.Walk, nil, nil) {
			if f.Quantity == "store.pressure" && f.Place == figure.At("pot") {
				out = append(out, f)
			}
		}
		return out
	}
	for _, closure := range []route.Closure{route.Vented, route.Open} {
		if f := read(closure, 25e-6, 0); len(f) > 0 {
			t.Errorf("closed as %d: %v", closure, f)
		}
	}
	for batches, capacity := range map[int]float64{0: 25e-6, 2: 50e-6} {
		f := read(route.Closed, capacity, batches)
		for i, want := range []float64{1020, 552, 2070} {
			if len(f) != 3 || !nearly.Share(f[i].Value.V, want, 0.02) || f[i].Value.Status != working.Bound {
				t.Errorf("%d batches: %v, want %g", batches, f, want)
			}
		}
	}
	if f := read(route.Closed, 0, 0); len(f) != 3 || !f[0].Value.Unknown() {
		t.Errorf("no capacity: %v", f)
	}
}
