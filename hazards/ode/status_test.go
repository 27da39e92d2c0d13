package ode_test

import (
	"errors"
	"math"
	"testing"

	"etchbound/hazards/ode"
)

func decay() ode.Problem {
	return ode.Problem{
		To: 1, Start: []float64{1}, Autonomous: true,
		Rate: func(_ int, _ float64, y, dy []float64) { dy[0] = -y[0] },
	}
}

// statusCases are changes of a decay, and the status that they end in.
var statusCases = map[string]struct {
	want   ode.Status
	change func(p *ode.Problem, o *ode.Options)
}{
	"no rate":       {ode.BadProblem, func(p *ode.Problem, _ *ode.Options) { p.Rate = nil }},
	"no states":     {ode.BadProblem, func(p *ode.Problem, _ *ode.Options) { p.Start = nil }},
	"start NaN":     {ode.BadProblem, func(p *ode.Problem, _ *ode.Options) { p.Start = []float64{math.NaN()} }},
	"backwards":     {ode.BadProblem, func(p *ode.Problem, _ *ode.Options) { p.To = -1 }},
	"endless":       {ode.BadProblem, func(p *ode.Problem, _ *ode.Options) { p.To = math.Inf(1) }},
	"switch at end": {ode.BadProblem, func(p *ode.Problem, _ *ode.Options) { p.Switches = []ode.Switch{{At: 1}} }},
	"switches unsorted": {ode.BadProblem, func(p *ode.Problem,
		_ *ode.Options) {
		p.Switches = []ode.Switch{{At: 0.5}, {At: 0.5}}
	}},
	"event without":     {ode.BadProblem, func(p *ode.Problem, _ *ode.Options) { p.Events = []ode.Event{{}} }},
	"peak without":      {ode.BadProblem, func(p *ode.Problem, _ *ode.Options) { p.Peaks = []ode.Peak{{}} }},
	"method":            {ode.BadProblem, func(_ *ode.Problem, o *ode.Options) { o.Method = 7 }},
	"max step":          {ode.BadProblem, func(_ *ode.Problem, o *ode.Options) { o.MaxStep = math.NaN() }},
	"first step":        {ode.BadProblem, func(_ *ode.Problem, o *ode.Options) { o.InitialStep = -1 }},
	"negative steps":    {ode.BadProblem, func(_ *ode.Problem, o *ode.Options) { o.MaxSteps = -1 }},
	"no tolerance":      {ode.BadTolerance, func(_ *ode.Problem, o *ode.Options) { o.RelTol = 0 }},
	"tolerance NaN":     {ode.BadTolerance, func(_ *ode.Problem, o *ode.Options) { o.RelTol = math.NaN() }},
	"tolerance tiny":    {ode.BadTolerance, func(_ *ode.Problem, o *ode.Options) { o.RelTol = 1e-15 }},
	"no absolute":       {ode.BadTolerance, func(_ *ode.Problem, o *ode.Options) { o.AbsTol = nil }},
	"absolute zero":     {ode.BadTolerance, func(_ *ode.Problem, o *ode.Options) { o.AbsTol = []float64{0} }},
	"absolute too many": {ode.BadTolerance, func(_ *ode.Problem, o *ode.Options) { o.AbsTol = []float64{1, 1} }},
	"NaN at start": {ode.NonFiniteAtStart, func(p *ode.Problem, _ *ode.Options) {
		p.Rate = func(_ int, _ float64, _, dy []float64) { dy[0] = math.NaN() }
	}},
	"NaN later": {ode.NonFiniteRate, func(p *ode.Problem, _ *ode.Options) {
		p.Rate = func(_ int, u float64, _, dy []float64) { dy[0] = math.Sqrt(0.5 - u) }
	}},
	"NaN Jacobian": {ode.NonFiniteRate, func(p *ode.Problem, o *ode.Options) {
		p.Jacobian = func(_ int, _ float64, _, j []float64) { j[0] = math.NaN() }
		o.Method = ode.Implicit
	}},
	"NaN after a switch": {ode.NonFiniteRate, func(p *ode.Problem, _ *ode.Options) {
		p.Switches = []ode.Switch{{At: 0.5}}
		p.Rate = func(piece int, _ float64, _, dy []float64) { dy[0] = math.Sqrt(-float64(piece)) }
	}},
	"event NaN": {ode.NonFiniteScalar, func(p *ode.Problem, _ *ode.Options) {
		p.Events = []ode.Event{{Of: func(_ int, _ float64, y []float64) float64 { return math.Log(y[0] - 0.5) }}}
	}},
	"peak NaN": {ode.NonFiniteScalar, func(p *ode.Problem, _ *ode.Options) {
		p.Peaks = []ode.Peak{{Of: func(_ int, _ float64, y []float64) float64 { return math.Log(y[0] - 0.5) }}}
	}},
	"jump NaN": {ode.NonFiniteJump, func(p *ode.Problem, _ *ode.Options) {
		p.Switches = []ode.Switch{{At: 0.5, Jump: func(_ int, _ float64, y []float64) { y[0] = math.NaN() }}}
	}},
	"steps": {ode.TooManySteps, func(_ *ode.Problem,
		o *ode.Options) {
		o.MaxSteps = 3
		o.RelTol = 1e-12
		o.AbsTol = []float64{1e-12}
	}},
	"blow up": {ode.StepTooSmall, func(p *ode.Problem, _ *ode.Options) {
		p.To = 2 // y = 1/(1-t)
		p.Rate = func(_ int, _ float64, y, dy []float64) { dy[0] = y[0] * y[0] }
	}},
	"singular": {ode.SingularMatrix, func(p *ode.Problem, o *ode.Options) {
		p.Start = []float64{1, 1}
		p.Rate = func(_ int, _ float64, y, dy []float64) { dy[0], dy[1] = -y[0], -y[1] }
		p.Jacobian = func(_ int, _ float64, _, j []float64) { j[0], j[1], j[2], j[3] = 1e300, 1e300, 1e300, 1e300 }
		o.Method = ode.Implicit
	}},
	"required": {ode.EventNotBracketed, func(p *ode.Problem, _ *ode.Options) {
		p.Events = []ode.Event{{Required: true, Of: func(_ int, _ float64, y []float64) float64 { return y[0] - 0.1 }}}
	}},
}

// Every failure of the list, each by its own cause.
func TestStatuses(t *testing.T) {
	plain := ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-9}}
	for name, c := range statusCases {
		p, o := decay(), plain
		c.change(&p, &o)
		res, err := ode.Solve(p, o)
		var failure *ode.Failure
		if !errors.As(err, &failure) || failure.Status != c.want || res.Status != c.want || !c.want.Failed() {
			t.Errorf("%s: %v, %v, want %v", name, res.Status, err, c.want)
			continue
		}
		if failure.Error() == "" || !allFinite(res) {
			t.Errorf("%s: not finite: %+v", name, res)
		}
	}
}

func allFinite(res ode.Result) bool {
	values := append([]float64{res.T}, res.Y...)
	for _, h := range res.Hits {
		values = append(append(values, h.T), h.Y...)
	}
	for _, m := range res.Peaks {
		values = append(append(values, m.T, m.Value), m.Y...)
	}
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// A failure keeps what was reached: the blow-up of 1/(1-t) is known to its
// last step.
func TestFailureKeepsTheWayThere(t *testing.T) {
	p := decay()
	p.To = 2
	p.Rate = func(_ int, _ float64, y, dy []float64) { dy[0] = y[0] * y[0] }
	res, err := ode.Solve(p, ode.Options{RelTol: 1e-8, AbsTol: []float64{1e-8}})
	if err == nil || off(res.T, 1) > 1e-6 {
		t.Fatalf("%v at %.12g", err, res.T)
	}
	y := make([]float64, 1)
	if e := res.At(0.5, y); e != nil || off(y[0], 2) > 1e-6 {
		t.Errorf("%v, %g", e, y[0])
	}
}

// A rate outside whose domain a step reaches is met with a shorter step: the
// square root of what is left, emptied at t = 2.
func TestStepsStayInsideTheDomain(t *testing.T) {
	for label, m := range methods {
		p := ode.Problem{
			To: 1.9, Start: []float64{1}, Autonomous: true,
			Rate: func(_ int, _ float64, y, dy []float64) { dy[0] = -math.Sqrt(y[0]) },
		}
		res, err := ode.Solve(p, ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-9}, Method: m, InitialStep: 1.9})
		if err != nil || off(res.Y[0], 0.0025) > 1e-6 {
			t.Errorf("%s: %v, %v", label, err, res.Y)
		}
	}
}

func TestNoTimeNoChange(t *testing.T) {
	p := decay()
	p.To = p.From
	res, err := ode.Solve(p, ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-9}})
	if err != nil || res.Y[0] != 1 || res.T != 0 || res.Stats.Steps != 0 {
		t.Errorf("%+v, %v", res, err)
	}
}

// Random right-hand sides and options: never a NaN, never an answer without a
// status, never past the end.
func FuzzSolve(f *testing.F) {
	f.Add(1.0, -2.0, 3.0, 0.5, 1e-6, int8(0))
	f.Add(-1e6, 1e3, 0.0, 1.0, 1e-3, int8(2))
	f.Add(1e300, 1e-300, 5.0, -1.0, 1e-9, int8(1))
	f.Fuzz(func(t *testing.T, a, b, c, y0, rtol float64, m int8) {
		p := ode.Problem{
			To: 10, Start: []float64{y0, 1}, Switches: []ode.Switch{{At: 3}},
			Rate: func(piece int, u float64, y, dy []float64) {
				dy[0] = a*y[0] + b*y[1]*y[1] + math.Sin(c*u)
				dy[1] = float64(piece) - c*math.Sqrt(math.Abs(y[0]))*y[1]
			},
			Events: []ode.Event{{Of: func(_ int, _ float64, y []float64) float64 { return y[1] - y[0] }}},
			Peaks:  []ode.Peak{{Of: func(_ int, _ float64, y []float64) float64 { return y[0] }}},
		}
		res, err := ode.Solve(p, ode.Options{RelTol: rtol, AbsTol: []float64{1e-6}, Method: ode.Method(m), MaxSteps: 500})
		if (err != nil) != res.Status.Failed() || !allFinite(res) || res.T > 10 {
			t.Errorf("%v, %v, %+v", res.Status, err, res)
		}
	})
}
