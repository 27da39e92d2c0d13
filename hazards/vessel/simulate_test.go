package vessel_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"etchbound/hazards/vessel"
	"etchbound/schemas/nearly"
)

// The reference cases R1 to R9: integrations by an explicit method of order 8
// at rtol 3e-14, agreeing with an implicit method at 1e-12 to 1e-10 K. Their
// constants are round test numbers, no claims about a material. They stand in
// testdata/published/ode with their source and status.

type row map[string]string

func (r row) num(t testing.TB, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("%s: %v", column, err)
	}
	return v
}

func table(t testing.TB, name string) []row {
	t.Helper()
	f, err := os.Open("../../testdata/published/ode/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []row
	for _, record := range records[1:] {
		r := row{}
		for i, column := range records[0] {
			r[column] = record[i]
		}
		rows = append(rows, r)
	}
	return rows
}

var laws = map[float64]vessel.Law{1: vessel.FirstOrder, 2: vessel.SelfAccelerating, 3: vessel.Contracting}

const (
	molar    = 0.194605 // kg/mol, of the solid
	molarVap = 0.018015 // kg/mol
)

// references turns the reference cases into plans.
func references(t testing.TB, tolerance float64) map[string]vessel.Plan {
	t.Helper()
	params := map[string]map[string]float64{}
	for _, r := range table(t, "parameters.csv") {
		if params[r["case"]] == nil {
			params[r["case"]] = map[string]float64{}
		}
		params[r["case"]][r["parameter"]] = r.num(t, "value")
	}
	out := map[string]vessel.Plan{}
	for name, p := range params {
		plan := vessel.Plan{Law: laws[p["law"]], Start: p["T0"], Ready: p["ns0"], Tolerance: tolerance,
			Slow: vessel.Solid{Amount: p["ntot"], Heat: p["dH"], Gas: p["nuH2"], Capacity: p["ntot"] * molar * p["cpS"],
				Kinetics: vessel.Kinetics{Rate: p["kref"], Activation: p["Ea"], Reference: p["Tref"], Seed: p["eps"]}},
			Liquor: vessel.Liquor{Capacity: p["mL"]*p["cpL"] + p["Cv"], Acid: p["nHF0"], Taken: p["nuHF"], Volume: p["V"]}}
		if p["aev"] != 0 {
			plan.Liquor.Vapour = &vessel.Vapour{Molar: molarVap, Specific: p["cpL"], Latent: p["Hv"], Boiling: p["Tb"],
				Evaporation: p["aev"], Boil: p["Kb"]}
		}
		for _, r := range table(t, "segments.csv") {
			if r["case"] == name {
				plan.Pieces = append(plan.Pieces, vessel.Piece{Until: r.num(t, "end_s"), Dose: r.num(t, "dose_mol_s"),
					Feed: p["Td"], UA: r.num(t, "ua_w_k"),
					Coolant: r.num(t, "coolant_k"), Stirring: r.num(t, "stirring_w"), Settled: r.num(t, "heap") != 0,
					Lift: r.num(t, "resuspend") != 0})
			}
		}
		out[name] = plan
	}
	return out
}

func TestReferenceRuns(t *testing.T) {
	for _, at := range []struct{ rtol, kelvin, rate, seconds, share float64 }{
		{1e-10, 1e-6, 1e-7, 1e-3, 1e-8}, // tolerances of the reference for each rtol
		{1e-6, 1e-3, 1e-5, 0.1, 5e-6},
	} {
		plans := references(t, at.rtol)
		for _, want := range table(t, "peaks.csv") {
			name := want["case"]
			r, err := vessel.Simulate(plans[name])
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			near := func(what string, got, want, tol float64) {
				t.Helper()
				if !(math.Abs(got-want) <= tol) {
					t.Errorf("%s at rtol %g: %s %.10g, want %.10g within %g", name, at.rtol, what, got, want, tol)
				}
			}
			near("highest temperature", r.Peak.Value, want.num(t, "temperature_max_k"), at.kelvin)
			near("peak gas", r.Gas.Value, want.num(t, "h2_peak_mol_s"), at.rate*want.num(t, "h2_peak_mol_s"))
			near("time of peak gas", r.Gas.At, want.num(t, "h2_peak_s"), at.seconds)
			near("highest temperature if cooling fails", r.MTSR.Value, want.num(t, "mtsr_max_k"), max(at.kelvin, 1e-6))
			near("conversion", r.Conversion, want.num(t, "conversion_end"), at.share)
			if !(r.Closure <= 100*at.rtol) {
				t.Errorf("%s at rtol %g: the energy balance is off by %g of the heat", name, at.rtol, r.Closure)
			}
		}
	}
}

func TestReferenceTrajectories(t *testing.T) {
	runs := map[string]vessel.Run{}
	for name, p := range references(t, 1e-10) {
		r, err := vessel.Simulate(p)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		runs[name] = r
	}
	for _, want := range table(t, "trajectories.csv") {
		r := runs[want["case"]]
		p, err := r.Path.At(want.num(t, "t_s"))
		if err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(p.Temperature - want.num(t, "temperature_k")); !(d <= 1e-6) {
			t.Errorf("%s at %s s: temperature off by %g K", want["case"], want["t_s"], d)
		}
		if d := math.Abs(p.Conversion*r.Plan.Slow.Amount - want.num(t, "reacted_mol")); !(d <= 1e-8*r.Plan.Slow.Amount) {
			t.Errorf("%s at %s s: conversion off by %g mol", want["case"], want["t_s"], d)
		}
	}
}

// Full accumulation of the reference cases: published as adiabatic rises of a
// full charge (36.145000, 37.691546, 75.034521, 77.195004 and 79.177413 K).
func TestAccumulated(t *testing.T) {
	plans := references(t, 0)
	for name, want := range map[string]float64{"R1": 36.145, "R2": 37.691546, "R4b": 75.034521, "R6": 77.195004,
		"R8": 79.177413} {
		p := plans[name]
		p.Law = vessel.Accumulated
		r, err := vessel.Simulate(p)
		if err != nil {
			t.Fatal(err)
		}
		if !nearly.To(r.Rise, want, 1e-6) {
			t.Errorf("%s: rise %.7f K, want %.6f", name, r.Rise, want)
		}
		if !math.IsNaN(r.Heat.Value) || !math.IsNaN(r.Gas.Value) {
			t.Errorf("%s: full accumulation gave a rate: %v W, %v mol/s", name, r.Heat.Value, r.Gas.Value)
		}
	}
}

// Dosing-controlled heat: n dH / t = UA dT, so 10 K above the coolant ask
// 1541.58 s in R1 and 7707.92 s in R2 (computed in the reference from the same
// test constants).
func TestInstantaneous(t *testing.T) {
	for name, x := range map[string]struct{ ua, seconds float64 }{"R1": {2, 1541.58}, "R2": {40, 7707.92}} {
		p := references(t, 0)[name]
		p.Law, p.Dose = vessel.Instantaneous, x.seconds
		r, err := vessel.Simulate(p)
		if err != nil {
			t.Fatal(err)
		}
		if got := r.Heat.Value / x.ua; !nearly.To(got, 10, 1e-4) {
			t.Errorf("%s: %g K above the coolant over %g s, want 10", name, got, x.seconds)
		}
	}
}

// Each law, calibrated to a hold, reaches Complete at the end of that hold at
// constant temperature: the closed forms of the rate constant against the
// integration.
func TestCalibration(t *testing.T) {
	const hold = 18 * 3600.0
	for _, law := range []vessel.Law{vessel.FirstOrder, vessel.Contracting, vessel.SelfAccelerating} {
		r, err := vessel.Simulate(vessel.Plan{Law: law, Start: 308.15, Ready: 0.01, Tolerance: 1e-9,
			Slow: vessel.Solid{Amount: 0.01, Heat: 0, Gas: 3, Capacity: 1,
				Kinetics: vessel.Kinetics{Rate: vessel.Calibrate(law, hold, 0.01), Activation: 60000, Reference: 308.15,
					Seed: 0.01}},
			Liquor: vessel.Liquor{Capacity: 80}, Pieces: []vessel.Piece{{Until: hold, UA: 1, Coolant: 308.15}}})
		if err != nil {
			t.Fatal(err)
		}
		if !nearly.To(r.Conversion, vessel.Complete, 1e-7) {
			t.Errorf("%s: conversion %.9f after the hold, want %g", law, r.Conversion, vessel.Complete)
		}
	}
	for _, bad := range []float64{vessel.Calibrate(vessel.FirstOrder, 0, 0),
		vessel.Calibrate(vessel.SelfAccelerating, 1, 0), vessel.Calibrate(vessel.Accumulated, 1, 0.1)} {
		if !math.IsNaN(bad) {
			t.Errorf("calibration of nothing gave %g", bad)
		}
	}
}

// A fast solid releases its gas and heat beside the slow one, and all of it is
// counted.
func TestFastSolid(t *testing.T) {
	p := references(t, 1e-9)["R1"]
	p.Fast = vessel.Solid{Amount: 0.002, Heat: 568450, Gas: 1.5, Capacity: 0.05,
		Kinetics: vessel.Kinetics{Rate: 0.02, Activation: 50000, Reference: 298.15}}
	r, err := vessel.Simulate(p)
	if err != nil {
		t.Fatal(err)
	}
	want := 2.5*r.Conversion*p.Slow.Amount + 1.5*0.002
	if !nearly.To(r.Released, want, 1e-7) {
		t.Errorf("released %.9g mol, want %.9g: all of the fast solid and the converted slow one", r.Released, want)
	}
	if !(r.Closure <= 1e-6) {
		t.Errorf("energy off by %g", r.Closure)
	}
}

func TestPlansThatCannotRun(t *testing.T) {
	good := references(t, 0)["R1"]
	for name, spoil := range map[string]func(*vessel.Plan){
		"no law":               func(p *vessel.Plan) { p.Law = "" },
		"no pieces":            func(p *vessel.Plan) { p.Pieces = nil },
		"no powder":            func(p *vessel.Plan) { p.Slow.Amount = 0 },
		"unknown powder":       func(p *vessel.Plan) { p.Slow.Amount = math.NaN() },
		"unknown capacity":     func(p *vessel.Plan) { p.Liquor.Capacity = math.NaN() },
		"unknown acid":         func(p *vessel.Plan) { p.Liquor.Acid = math.NaN() },
		"pieces back in time":  func(p *vessel.Plan) { p.Pieces[1].Until = 1 },
		"unknown heat":         func(p *vessel.Plan) { p.Slow.Heat = math.NaN() },
		"unknown coolant flow": func(p *vessel.Plan) { p.Pieces[0].UA = math.NaN() },
	} {
		p := good
		p.Pieces = append([]vessel.Piece(nil), good.Pieces...)
		spoil(&p)
		if r, err := vessel.Simulate(p); err == nil {
			t.Errorf("%s: ran to %g K", name, r.Peak.Value)
		}
	}
}

func BenchmarkReference(b *testing.B) {
	for name, p := range references(b, 1e-6) {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := vessel.Simulate(p); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
