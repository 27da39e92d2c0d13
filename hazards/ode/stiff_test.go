package ode_test

import (
	"math"
	"testing"

	"etchbound/hazards/ode"
	"etchbound/schemas/nearly"
)

// robertson is the classic stiff problem of chemical kinetics, with rates
// 0.04, 1e4 and 3e7. Solving Ordinary Differential Equations II, Springer,
// 1996, section IV.1.
func robertson(to float64) ode.Problem {
	return ode.Problem{
		To: to, Start: []float64{1, 0, 0}, Autonomous: true,
		Rate: func(_ int, _ float64, y, dy []float64) {
			dy[0] = -0.04*y[0] + 1e4*y[1]*y[2]
			dy[2] = 3e7 * y[1] * y[1]
			dy[1] = -dy[0] - dy[2]
		},
		Jacobian: func(_ int, _ float64, y, j []float64) {
			j[0], j[1], j[2] = -0.04, 1e4*y[2], 1e4*y[1]
			j[3], j[4], j[5] = 0.04, -1e4*y[2]-6e7*y[1], -1e4*y[1]
			j[7] = 6e7 * y[1]
		},
	}
}

func robertsonOptions(rtol float64) ode.Options {
	return ode.Options{RelTol: rtol, AbsTol: []float64{rtol * 1e-10, rtol * 1e-15, rtol * 1e-10}}
}

// wrong is the greatest relative error against a row of the table.
func wrong(t *testing.T, y []float64, r row) (worst float64) {
	for i, column := range []string{"y1", "y2", "y3"} {
		worst = max(worst, off(y[i]/r.num(t, column), 1))
	}
	return worst
}

// Every digit the tolerance promises, over fifteen decades of time: ten times
// the tolerance of one step, as on the other problems. The reference itself is
// good to about 4e-11.
func TestRobertson(t *testing.T) {
	for _, r := range table(t, "robertson.csv") {
		for _, analytic := range []bool{true, false} {
			for _, rtol := range []float64{1e-4, 1e-6, 1e-8, 1e-10} {
				p := robertson(r.num(t, "t_s"))
				if !analytic {
					p.Jacobian = nil
				}
				y := solved(t, p, robertsonOptions(rtol)).Y
				if d := wrong(t, y, r); d > 10*rtol {
					t.Errorf("%s s, analytic %v, rtol %g: off by %.2e", r["t_s"], analytic, rtol, d)
				}
				if sum := y[0] + y[1] + y[2]; off(sum, 1) > 1e-11 {
					t.Errorf("%s s, rtol %g: mass off by %.2e", r["t_s"], rtol, sum-1)
				}
			}
		}
	}
}

// Inside a step the slaved state y2 has the error of an interpolant of order 3.
func TestRobertsonInsideSteps(t *testing.T) {
	for _, rtol := range []float64{1e-4, 1e-6, 1e-8, 1e-10} {
		res, y := solved(t, robertson(1e11), robertsonOptions(rtol)), make([]float64, 3)
		for _, r := range table(t, "robertson.csv") {
			if err := res.At(r.num(t, "t_s"), y); err != nil {
				t.Fatal(err)
			}
			if d := wrong(t, y, r); d > 50*rtol {
				t.Errorf("%s s, rtol %g: off by %.2e", r["t_s"], rtol, d)
			}
		}
	}
}

func TestRobertsonStaysPositiveAndQuick(t *testing.T) {
	res, y := solved(t, robertson(1e11), robertsonOptions(1e-6)), make([]float64, 3)
	for _, u := range res.Times() {
		if err := res.At(u, y); err != nil || y[0] <= 0 || y[1] < 0 || y[2] < 0 {
			t.Fatalf("%g s: %v, %v", u, y, err)
		}
	}
	if res.Stats.Steps > 700 || res.Stats.ImplicitSteps < 300 {
		t.Errorf("%+v", res.Stats)
	}
}

// exotherm is a jacketed semi-batch reactor with made-up numbers, dosed for
// 1200 s. States: A, B (mol), T, jacket (K), gas (mol), a lagging reading,
// volume (L).
func exotherm() ode.Problem {
	return ode.Problem{
		To: 7200, Start: []float64{0.2, 0, 293.15, 293.15, 0, 0, 0.1}, Autonomous: true,
		Switches: []ode.Switch{{At: 1200}},
		Rate: func(piece int, _ float64, y, dy []float64) {
			feed := 5e-5
			if piece > 0 {
				feed = 0
			}
			r := 1e9 * math.Exp(-7e4/(gas*y[2])) * y[0] * y[1] / y[6]
			c := y[1] / y[6]
			dy[0], dy[1] = -r, 10*feed-r
			dy[2] = (3e5*r - 0.5*(y[2]-y[3]) - 4000*feed*(y[2]-293.15)) / (4000 * y[6])
			dy[3] = (0.5*(y[2]-y[3]) - 40*(y[3]-293.15)) / 400
			dy[4], dy[5], dy[6] = 1.5*r, 1e3*(c/(1+c)-y[5]), feed
		},
	}
}

// Reference at 7200 s: Radau at rtol 1e-11, atol 1e-13 (computed).
var exothermEnd = []float64{0, 0.4, 293.58977293634, 293.15547098473, 0.3, 0.714285714286, 0.16}

func TestExotherm(t *testing.T) {
	for _, rtol := range []float64{1e-6, 1e-9} {
		p := exotherm()
		p.Peaks = []ode.Peak{{Of: func(_ int, _ float64, y []float64) float64 { return y[2] }}}
		res := solved(t, p, ode.Options{RelTol: rtol, AbsTol: []float64{1e-3 * rtol}})
		for i, want := range exothermEnd {
			if d := off(res.Y[i], want); d > 10*rtol*math.Abs(want)+1e-9 {
				t.Errorf("rtol %g: state %d off by %.2e", rtol, i, d)
			}
		}
		// 408.51994 K is the largest step value of the reference, so at or
		// just below the true maximum.
		if top := res.Peaks[0].Value; !nearly.Between(top, 408.51993, 408.51994+5e-4) {
			t.Errorf("rtol %g: peak %.6f K", rtol, top)
		}
	}
}

// At a tight tolerance the explicit pair keeps well inside its stability
// domain and could creep on for ever; the change must come all the same.
func TestStiffnessIsSeenAtTightTolerance(t *testing.T) {
	res := solved(t, exotherm(), ode.Options{RelTol: 1e-9, AbsTol: []float64{1e-12}})
	if s := res.Stats; s.Steps > 6000 || s.ImplicitSteps < s.Steps/2 {
		t.Errorf("%+v", s)
	}
	mild := references(t)["R1"]
	if s := solved(t, mild.problem(), mild.options(1e-6, ode.Automatic)).Stats; s.ImplicitSteps > 0 {
		t.Errorf("mild problem: %+v", s)
	}
}
