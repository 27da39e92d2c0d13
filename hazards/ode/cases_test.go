package ode_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"etchbound/hazards/ode"
)

// row is one row of a table of check values, by column name.
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

// segment is one piece of a reference case with constant inputs.
type segment struct {
	start, end, dose, heap, ua, coolant, stirring, resuspend float64
}

// reference is a fully specified vessel: made-up constants, not claims about a
// material. States: n_s suspended, n_b in a settled heap, n_r reacted (mol), T
// (K), heat removed (J), liquid evaporated (mol).
type reference struct {
	name     string
	p        map[string]float64
	segments []segment
}

const (
	gas    = 8.314462618 // J/mol/K
	solid  = 0.194605    // kg/mol
	liquid = 0.018015    // kg/mol
)

var referenceNames = []string{"R1", "R2", "R3", "R4a", "R4b", "R5", "R6", "R8", "R9"}

func references(t testing.TB) map[string]*reference {
	t.Helper()
	all := map[string]*reference{}
	for _, r := range table(t, "parameters.csv") {
		if all[r["case"]] == nil {
			all[r["case"]] = &reference{name: r["case"], p: map[string]float64{}}
		}
		all[r["case"]].p[r["parameter"]] = r.num(t, "value")
	}
	for _, r := range table(t, "segments.csv") {
		c := all[r["case"]]
		c.segments = append(c.segments, segment{
			r.num(t, "start_s"), r.num(t, "end_s"), r.num(t, "dose_mol_s"), r.num(t, "heap"),
			r.num(t, "ua_w_k"), r.num(t, "coolant_k"), r.num(t, "stirring_w"), r.num(t, "resuspend"),
		})
	}
	return all
}

// dosed is the solid that went in by the end, mol.
func (c *reference) dosed() float64 {
	n := c.p["ns0"]
	for _, s := range c.segments {
		n += s.dose * (s.end - s.start)
	}
	return n
}

// rater gives the reaction rate, mol/s. The constants are taken out of the map
// once: the benchmarks time it.
func (c *reference) rater() func(y []float64) float64 {
	kref, ea, tref := c.p["kref"], c.p["Ea"], c.p["Tref"]
	acid, per, volume, ntot, eps := c.p["nHF0"], c.p["nuHF"], c.p["V"], c.p["ntot"], c.p["eps"]
	law, root := c.p["law"], math.Cbrt(c.p["ntot"])
	return func(y []float64) float64 {
		k := kref * math.Exp(-ea/gas*(1/y[3]-1/tref))
		k *= math.Max(0, (acid-per*y[2])/volume)
		ns := math.Max(0, y[0])
		switch law {
		case 2:
			return k * ns * (eps + y[2]/ntot)
		case 3:
			cube := math.Cbrt(ns)
			return k * cube * cube * root
		}
		return k * ns
	}
}

func (c *reference) capacity(y []float64) float64 {
	p := c.p
	return (p["mL"]-liquid*y[5])*p["cpL"] + (y[0]+y[1]+y[2])*solid*p["cpS"] + p["Cv"]
}

func (c *reference) rate() func(piece int, t float64, y, dy []float64) {
	r, segments := c.rater(), c.segments
	mass, cpl, cps, cv := c.p["mL"], c.p["cpL"], c.p["cpS"], c.p["Cv"]
	dh, td, aev, kb, hv, tb := c.p["dH"], c.p["Td"], c.p["aev"], c.p["Kb"], c.p["Hv"], c.p["Tb"]
	return func(piece int, _ float64, y, dy []float64) {
		s := &segments[piece]
		rate, T := r(y), y[3]
		removed := s.ua * (T - s.coolant)
		vapour := 0.0
		if aev != 0 {
			vapour = aev*math.Exp(-hv/gas*(1/T-1/tb)) + kb/hv*math.Max(0, T-tb)
		}
		capacity := (mass-liquid*y[5])*cpl + (y[0]+y[1]+y[2])*solid*cps + cv
		dy[0], dy[1] = s.dose-rate, 0
		if s.heap != 0 {
			dy[0], dy[1] = -rate, s.dose
		}
		dy[2] = rate
		dy[3] = (dh*rate - removed - s.dose*solid*cps*(T-td) + s.stirring - hv*vapour) / capacity
		dy[4], dy[5] = removed, vapour
	}
}

func resuspend(_ int, _ float64, y []float64) { y[0], y[1] = y[0]+y[1], 0 }

func (c *reference) problem() ode.Problem {
	p := ode.Problem{
		To:         c.segments[len(c.segments)-1].end,
		Start:      []float64{c.p["ns0"], 0, 0, c.p["T0"], 0, 0},
		Rate:       c.rate(),
		Autonomous: true,
	}
	for _, s := range c.segments[1:] {
		w := ode.Switch{At: s.start}
		if s.resuspend != 0 {
			w.Jump = resuspend
		}
		p.Switches = append(p.Switches, w)
	}
	return p
}

// peaks asks for the rate, the temperature and the temperature that would be
// reached if cooling failed and all solid present reacted.
func (c *reference) peaks() []ode.Peak {
	r, dh := c.rater(), c.p["dH"]
	return []ode.Peak{
		{Of: func(_ int, _ float64, y []float64) float64 { return r(y) }},
		{Of: func(_ int, _ float64, y []float64) float64 { return y[3] }},
		{Of: func(_ int, _ float64, y []float64) float64 { return y[3] + dh*(y[0]+y[1])/c.capacity(y) }},
	}
}

// options takes the absolute tolerances the reference runs were made with.
func (c *reference) options(rtol float64, m ode.Method) ode.Options {
	n := 1e-2 * rtol * c.p["ntot"]
	return ode.Options{
		RelTol: rtol, Method: m,
		AbsTol: []float64{n, n, n, 0.1 * rtol, n * c.p["dH"], 1e-2 * rtol},
	}
}
