package ode_test

import (
	"math"
	"testing"

	"etchbound/hazards/ode"
)

// ball falls from 10 m with a gravity of 9.81 m/s2: closed form in every test.
func ball(to float64) ode.Problem {
	return ode.Problem{
		To: to, Start: []float64{10, 0}, Autonomous: true,
		Rate: func(_ int, _ float64, y, dy []float64) { dy[0], dy[1] = y[1], -9.81 },
	}
}

func height(_ int, _ float64, y []float64) float64 { return y[0] }

var exactly = ode.Options{RelTol: 1e-10, AbsTol: []float64{1e-12}}

func TestTerminalEvent(t *testing.T) {
	want := math.Sqrt(2 * 10 / 9.81)
	for label, m := range methods {
		p, o := ball(10), exactly
		o.Method = m
		p.Events = []ode.Event{{Of: height, Direction: ode.Falling, Terminal: true, Required: true}}
		res := solved(t, p, o)
		if res.Status != ode.Stopped || off(res.T, want) > 1e-9 || off(res.Y[0], 0) > 1e-8 ||
			off(res.Y[1], -9.81*want) > 1e-8 {
			t.Errorf("%s: %v at %.12g, y %v, want %.12g", label, res.Status, res.T, res.Y, want)
		}
		if len(res.Hits) != 1 || res.Hits[0].T != res.T || res.Hits[0].Rising {
			t.Errorf("%s: %+v", label, res.Hits)
		}
		y := make([]float64, 2)
		if err := res.At(res.T, y); err != nil || y[0] != res.Y[0] {
			t.Errorf("%s: %v, %v", label, err, y)
		}
		if err := res.At(res.T+0.1, y); err != ode.ErrOutside {
			t.Errorf("%s: beyond the end: %v", label, err)
		}
	}
}

// The zeros of a sine, by direction; zero at the start is no event.
func TestDirections(t *testing.T) {
	for direction, want := range map[ode.Direction][]float64{
		ode.Either:  {math.Pi, 2 * math.Pi, 3 * math.Pi, 4 * math.Pi},
		ode.Rising:  {2 * math.Pi, 4 * math.Pi},
		ode.Falling: {math.Pi, 3 * math.Pi},
	} {
		p := ode.Problem{
			To: 13, Start: []float64{0, 1}, Autonomous: true,
			Rate:   func(_ int, _ float64, y, dy []float64) { dy[0], dy[1] = y[1], -y[0] },
			Events: []ode.Event{{Of: height, Direction: direction}},
		}
		res := solved(t, p, exactly)
		if len(res.Hits) != len(want) {
			t.Fatalf("direction %d: %+v", direction, res.Hits)
		}
		for i, h := range res.Hits {
			if off(h.T, want[i]) > 1e-8 {
				t.Errorf("direction %d: %.12g, want %.12g", direction, h.T, want[i])
			}
		}
	}
}

// Events of several functions come in order of time, and none after the
// terminal one.
func TestOrderOfEvents(t *testing.T) {
	p := ball(10)
	at := func(h float64, terminal bool) ode.Event {
		return ode.Event{Terminal: terminal, Of: func(_ int, _ float64, y []float64) float64 { return y[0] - h }}
	}
	p.Events = []ode.Event{at(2, false), at(4, true), at(8, false), at(6, false), at(3.9999999, false)}
	res := solved(t, p, ode.Options{RelTol: 1e-3, AbsTol: []float64{1e-3}})
	var got []int
	for _, h := range res.Hits {
		got = append(got, h.Event)
	}
	if len(got) != 3 || got[0] != 2 || got[1] != 3 || got[2] != 1 || res.Status != ode.Stopped {
		t.Errorf("%v, %v", got, res.Status)
	}
}

// A right-hand side that jumps: y' = 1, then -2 from t = 1. The switch is met
// to the last bit, so that the tolerance does not matter.
func TestSwitch(t *testing.T) {
	for label, m := range methods {
		p := ode.Problem{
			To: 3, Start: []float64{0}, Switches: []ode.Switch{{At: 1},
				{At: 2, Jump: func(_ int, _ float64, y []float64) { y[0] += 100 }}},
			Rate:   func(piece int, _ float64, y, dy []float64) { dy[0] = []float64{1, -2, 0}[piece] },
			Events: []ode.Event{{Of: func(_ int, _ float64, y []float64) float64 { return y[0] - 50 }}},
			Peaks:  []ode.Peak{{Of: height}},
		}
		res := solved(t, p, ode.Options{RelTol: 0.1, AbsTol: []float64{1}, Method: m})
		y := make([]float64, 1)
		check := func(got error, value, want float64) {
			t.Helper()
			if got != nil || off(value, want) > 1e-14 {
				t.Errorf("%s: %v, %.17g, want %g", label, got, value, want)
			}
		}
		check(res.At(1, y), y[0], 1)
		check(res.At(2, y), y[0], -1)
		check(res.After(2, y), y[0], 99)
		check(res.At(0, y), y[0], 0)
		check(res.After(3, y), y[0], 99)
		if len(res.Hits) != 1 || res.Hits[0].T != 2 || res.Hits[0].Piece != 2 || !res.Hits[0].Rising {
			t.Errorf("%s: %+v", label, res.Hits)
		}
		if top := res.Peaks[0]; top.T != 2 || off(top.Value, 99) > 1e-13 || !top.Edge || top.Piece != 2 {
			t.Errorf("%s: %+v", label, top)
		}
	}
}

// Many maxima: the greatest is taken, at the zero of the derivative.
// y = exp(-t/10) sin t has its greatest value at atan(10).
func TestGreatestOfManyMaxima(t *testing.T) {
	want := math.Atan(10)
	for label, m := range methods {
		for _, rtol := range []float64{1e-4, 1e-6, 1e-10} {
			p := ode.Problem{
				To: 40, Start: []float64{0, 1}, Autonomous: true,
				Rate: func(_ int, _ float64, y, dy []float64) {
					dy[0], dy[1] = y[1]-0.1*y[0], -y[0]-0.1*y[1]
				},
				Peaks: []ode.Peak{{Of: height}, {Of: func(_ int, _ float64, y []float64) float64 { return -y[0] }}},
			}
			res := solved(t, p, ode.Options{RelTol: rtol, AbsTol: []float64{rtol}, Method: m})
			for i, at := range []float64{want, want + math.Pi} {
				top := res.Peaks[i]
				value := math.Exp(-at/10) * math.Abs(math.Sin(at))
				if off(top.T, at) > 10*rtol || off(top.Value, value) > 10*rtol || top.Edge {
					t.Errorf("%s, rtol %g: %+v, want %g at %g", label, rtol, top, value, at)
				}
			}
		}
	}
}

// A function that is not defined beyond the solution still has its maximum.
func TestPeakAtTheBorderOfItsDomain(t *testing.T) {
	p := ode.Problem{
		To: 1, Start: []float64{0}, Autonomous: true,
		Rate:  func(_ int, _ float64, y, dy []float64) { dy[0] = 1 },
		Peaks: []ode.Peak{{Of: func(_ int, _ float64, y []float64) float64 { return math.Sqrt(y[0]) - y[0] }}},
	}
	top := solved(t, p, exactly).Peaks[0]
	if off(top.T, 0.25) > 1e-8 || off(top.Value, 0.25) > 1e-12 {
		t.Errorf("%+v", top)
	}
}

func TestStartIsNotChangedAndAnswersRepeat(t *testing.T) {
	c := references(t)["R5"]
	p, o := c.problem(), c.options(1e-6, ode.Automatic)
	first := solved(t, p, o)
	if p.Start[3] != c.p["T0"] {
		t.Error("start changed")
	}
	done := make(chan []float64)
	for range 4 {
		go func() {
			res, _ := ode.Solve(p, o)
			done <- res.Y
		}()
	}
	for range 4 {
		for i, v := range <-done {
			if v != first.Y[i] {
				t.Errorf("state %d: %.17g and %.17g", i, v, first.Y[i])
			}
		}
	}
}

func TestDiscardGivesTheSame(t *testing.T) {
	c := references(t)["R4b"]
	p, o := c.problem(), c.options(1e-6, ode.Automatic)
	p.Peaks = c.peaks()
	kept := solved(t, p, o)
	o.Discard = true
	bare := solved(t, p, o)
	for i := range kept.Y {
		if kept.Y[i] != bare.Y[i] {
			t.Errorf("state %d differs", i)
		}
	}
	if kept.Peaks[0].T != bare.Peaks[0].T || bare.Times() != nil {
		t.Error("peaks differ, or a trajectory was kept")
	}
	if err := bare.At(1, make([]float64, 6)); err != ode.ErrNoTrajectory {
		t.Error(err)
	}
	times := kept.Times()
	for i := 1; i < len(times); i++ {
		if times[i] <= times[i-1] {
			t.Errorf("times %d: %g after %g", i, times[i], times[i-1])
		}
	}
	if times[0] != 0 || times[len(times)-1] != 7200 {
		t.Errorf("times from %g to %g", times[0], times[len(times)-1])
	}
}
