package ode_test

import (
	"testing"

	"etchbound/hazards/ode"
	"etchbound/schemas/nearly"
)

// bounds are the agreement asked for at one relative tolerance. They leave the
// integrator ten times and more of its own tolerance on temperature, and are
// the errors a reviewer would not see in any printed figure.
type bounds struct{ rtol, kelvin, conversion, peak, seconds float64 }

var tight = bounds{1e-10, 1e-6, 1e-8, 1e-7, 1e-3}
var loose = bounds{1e-6, 1e-3, 5e-6, 1e-5, 0.1}

var methods = map[string]ode.Method{"automatic": ode.Automatic, "explicit": ode.Explicit, "implicit": ode.Implicit}

func eachReference(t *testing.T, do func(t *testing.T, c *reference, b bounds, m ode.Method)) {
	all := references(t)
	for _, name := range referenceNames {
		for label, m := range methods {
			for _, b := range []bounds{tight, loose} {
				t.Run(name+"/"+label, func(t *testing.T) { do(t, all[name], b, m) })
			}
		}
	}
}

func solved(t testing.TB, p ode.Problem, o ode.Options) ode.Result {
	t.Helper()
	res, err := ode.Solve(p, o)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

func off(got, want float64) float64 { return nearly.Off(got, want) }

func TestTrajectories(t *testing.T) {
	rows := table(t, "trajectories.csv")
	eachReference(t, func(t *testing.T, c *reference, b bounds, m ode.Method) {
		res := solved(t, c.problem(), c.options(b.rtol, m))
		y, seen := make([]float64, 6), 0
		for _, r := range rows {
			if r["case"] != c.name {
				continue
			}
			seen++
			if err := res.At(r.num(t, "t_s"), y); err != nil {
				t.Fatal(err)
			}
			if d := off(y[3], r.num(t, "temperature_k")); d > b.kelvin {
				t.Errorf("rtol %g, %s s: T off by %.2e K", b.rtol, r["t_s"], d)
			}
			if d := off(y[2], r.num(t, "reacted_mol")) / c.dosed(); d > b.conversion {
				t.Errorf("rtol %g, %s s: conversion off by %.2e", b.rtol, r["t_s"], d)
			}
			total := c.p["dH"] * c.dosed()
			if d := off(y[4], r.num(t, "removed_j")) / total; d > b.conversion {
				t.Errorf("rtol %g, %s s: heat removed off by %.2e of all heat", b.rtol, r["t_s"], d)
			}
		}
		if seen < 9 {
			t.Errorf("%d rows", seen)
		}
	})
}

func TestPeaksOfReferences(t *testing.T) {
	rows := map[string]row{}
	for _, r := range table(t, "peaks.csv") {
		rows[r["case"]] = r
	}
	eachReference(t, func(t *testing.T, c *reference, b bounds, m ode.Method) {
		p := c.problem()
		p.Peaks = c.peaks()
		res, r := solved(t, p, c.options(b.rtol, m)), rows[c.name]
		rate, top, fail := res.Peaks[0], res.Peaks[1], res.Peaks[2]
		if d := off(c.p["nuH2"]*rate.Value/r.num(t, "h2_peak_mol_s"), 1); d > b.peak {
			t.Errorf("rtol %g: peak rate off by %.2e", b.rtol, d)
		}
		if d := off(rate.T, r.num(t, "h2_peak_s")); d > b.seconds {
			t.Errorf("rtol %g: time of the peak rate off by %.2e s", b.rtol, d)
		}
		if d := off(top.Value, r.num(t, "temperature_max_k")); d > b.kelvin {
			t.Errorf("rtol %g: highest temperature off by %.2e K", b.rtol, d)
		}
		// Printed to 1e-6 K from a grid of 4001 times a piece.
		if d := off(fail.Value, r.num(t, "mtsr_max_k")); d > b.kelvin+2e-6 {
			t.Errorf("rtol %g: temperature after loss of cooling off by %.2e K", b.rtol, d)
		}
	})
}

// The time of the highest temperature is as sharp as the top is: R3 is flat
// over a day (1e-7 K in 200 s), R6 ends on an asymptote.
func TestTimeOfHighestTemperature(t *testing.T) {
	all := references(t)
	for _, r := range table(t, "peaks.csv") {
		if r["case"] == "R3" || r["case"] == "R6" {
			continue
		}
		c := all[r["case"]]
		p := c.problem()
		p.Peaks = c.peaks()
		for _, b := range []bounds{tight, loose} {
			res := solved(t, p, c.options(b.rtol, ode.Automatic))
			if d := off(res.Peaks[1].T, r.num(t, "temperature_max_s")); d > b.seconds {
				t.Errorf("%s, rtol %g: off by %.2e s", c.name, b.rtol, d)
			}
		}
	}
}

func TestEdgeOfPeaks(t *testing.T) {
	all := references(t)
	for name, want := range map[string]bool{"R4a": true, "R4b": false, "R9": false} {
		c := all[name]
		p := c.problem()
		p.Peaks = c.peaks()
		if got := solved(t, p, c.options(1e-6, ode.Automatic)).Peaks[1].Edge; got != want {
			t.Errorf("%s: highest temperature at an edge: %v, want %v", name, got, want)
		}
	}
}

// Energy: what the vessel holds = heat of reaction - heat removed + stirring,
// dosed solid counted from its own temperature. R8 boils, so that its balance
// is no function of the end state.
func TestEnergyBalanceCloses(t *testing.T) {
	eachReference(t, func(t *testing.T, c *reference, b bounds, m ode.Method) {
		if c.name == "R8" {
			return // boils
		}
		p, y := c.p, solved(t, c.problem(), c.options(b.rtol, m)).Y
		dosed, stirring := c.dosed()-p["ns0"], 0.0
		for _, s := range c.segments {
			stirring += s.stirring * (s.end - s.start)
		}
		held := (p["mL"]*p["cpL"] + p["Cv"] + p["ns0"]*solid*p["cpS"]) * (y[3] - p["T0"])
		held += dosed * solid * p["cpS"] * (y[3] - p["Td"])
		released := p["dH"]*y[2] - y[4] + stirring
		if d := off(held, released) / (p["dH"] * c.dosed()); d > b.rtol {
			t.Errorf("rtol %g: open by %.2e of all heat", b.rtol, d)
		}
		// A linear sum is kept exactly, but for the rounding in a Jacobian by
		// differences.
		if d := off(y[0]+y[1]+y[2], c.dosed()) / c.dosed(); d > 1e-10 || (m == ode.Explicit && d > 1e-13) {
			t.Errorf("rtol %g: solid lost %.2e", b.rtol, d)
		}
	})
}
