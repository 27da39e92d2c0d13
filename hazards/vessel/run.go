package vessel

import (
	"errors"
	"fmt"
	"math"

	"etchbound/hazards/ode"
)

// R is the gas constant, J/mol/K.
const R = 8.314462618

// Run is what a plan gives. A number that does not follow from the law of the
// plan is NaN: full accumulation bounds no rate.
type Run struct {
	Plan Plan
	Rise float64 // K, if all the heat stays in what is there when the last powder is in
	Peak Moment  // highest temperature, K
	Heat Moment  // greatest heat output, W
	Gas  Moment  // greatest gas flow, mol/s
	MTSR Moment  // highest temperature reached if cooling fails at once, K

	Conversion float64  // of the slow solid that went in, at the end
	Released   float64  // mol of gas by the end
	Closure    float64  // energy: |in - out - stored| / heat
	Windows    []Window // in order of time; none for the closed-form laws
	Path       *Path    // nil for the closed-form laws
	End        State
}

// Window is a run of pieces of one step.
type Window struct {
	Step                  int
	From, To              float64 // s
	Peak, Heat, Gas, MTSR Moment
	End                   Point
	Bounds                *Bounds // nil: the peaks are those of the run
}

// Moment is a value and when it is reached, s. Edge says that it stands at the
// end of the run or at a switch and may go on growing.
type Moment struct {
	Value, At float64
	Edge      bool
}

// Path is the dense output of an integrated run.
type Path struct {
	b     *balance
	parts []part
}

// part is one integration; the next begins where it ends.
type part struct {
	piece  int // number of its first piece
	to     float64
	result ode.Result
}

// Point is one moment of a run.
type Point struct {
	Time        float64 // s
	Temperature float64 // K
	Heat        float64 // W
	Gas         float64 // mol/s
	Released    float64 // mol of gas so far
	Conversion  float64 // of the slow solid of the whole plan
	Waiting     float64 // mol of the slow solid in the vessel that has not reacted
	MTSR        float64 // K, if cooling failed now and all that waits reacted
	Jacket      float64 // K of the liquid in the jacket; 0 where there is none
}

// ErrPlan says why a plan cannot be run.
type ErrPlan struct{ Why string }

// Error implements error.
func (e *ErrPlan) Error() string { return "vessel: " + e.Why }

// Simulate runs a plan: in closed form for Instantaneous and Accumulated, by
// integration for the other laws. It fails for a plan that states no law or no
// time, and passes on a failure of the integration as it is.
func Simulate(p Plan) (Run, error) {
	switch p.Law {
	case Instantaneous, Accumulated:
		return closed(p), nil
	case FirstOrder, Contracting, SelfAccelerating, Measured:
		return integrate(p)
	}
	return Run{}, &ErrPlan{fmt.Sprintf("law %q is not one of %s, %s, %s, %s, %s, %s", p.Law, Instantaneous, Accumulated,
		FirstOrder, Contracting, SelfAccelerating, Measured)}
}

// closed works the two bounds out. No heat is lost in either:
//
//	rise = heat / capacity
//	peak = start + rise
//	power = heat / dose, flow = gas / dose   (Instantaneous only)
func closed(p Plan) Run {
	heat := float64(p.Slow.Amount*p.Slow.Heat) + float64(p.Fast.Amount*p.Fast.Heat)
	gas := float64(p.Slow.Amount*p.Slow.Gas) + float64(p.Fast.Amount*p.Fast.Gas)
	r := Run{Plan: p, Rise: heat / (p.Liquor.Capacity + p.Slow.Capacity + p.Fast.Capacity), Conversion: 1, Released: gas}
	none := Moment{Value: math.NaN(), At: math.NaN()}
	r.Heat, r.Gas = none, none
	if p.Law == Instantaneous {
		r.Heat, r.Gas = Moment{Value: heat / p.Dose}, Moment{Value: gas / p.Dose}
	}
	r.Peak = Moment{Value: p.Start + r.Rise}
	r.MTSR = r.Peak
	return r
}

// integrate solves the balance of the plan window by window, with the peaks of
// each.
func integrate(p Plan) (Run, error) {
	b, err := newBalance(p)
	if err != nil {
		return Run{}, err
	}
	var peaks []ode.Peak
	if !p.Coarse {
		for _, of := range b.scalars() {
			peaks = append(peaks, ode.Peak{Of: of})
		}
	}
	path := &Path{b: b}
	var windows []Window
	t, y, o := 0.0, b.start(), b.options()
	for i := 0; i < len(p.Pieces); {
		j := i + 1
		for j < len(p.Pieces) && p.Pieces[j].Step == p.Pieces[i].Step {
			j++
		}
		b.enter(&p.Pieces[i], y)
		problem := b.problem(i, j, t, y)
		problem.Peaks = peaks
		res, err := ode.Solve(problem, o)
		var failed *ode.Failure
		if errors.As(err, &failed) {
			return Run{}, fmt.Errorf("vessel: the heat and mass balance could not be integrated: %w", err)
		}
		if err != nil {
			return Run{}, err
		}
		windows = append(windows, b.window(i, t, &res))
		path.parts = append(path.parts, part{piece: i, to: res.T, result: res})
		t, y, i = res.T, append([]float64(nil), res.Y...), j
	}
	return b.run(windows, path, y), nil
}
