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
	Rise float64 // K, if all the heat stays in everything that goes in
	Peak Moment  // highest temperature, K
	Heat Moment  // greatest heat output, W
	Gas  Moment  // greatest gas flow, mol/s
	MTSR Moment  // highest temperature reached if cooling fails at once, K

	Conversion float64 // of the slow solid that went in, at the end
	Released   float64 // mol of gas by the end
	Closure    float64 // energy: |in - out - stored| / in
	Path       *Path   // nil for the closed-form laws
}

// Moment is a value and when it is reached, s. Edge says that it stands at the
// end of the run or at a switch and may go on growing.
type Moment struct {
	Value, At float64
	Edge      bool
}

// Path is the dense output of an integrated run.
type Path struct {
	b      *balance
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
	case FirstOrder, Contracting, SelfAccelerating:
		return integrate(p)
	}
	return Run{}, &ErrPlan{fmt.Sprintf("law %q is not one of %s, %s, %s, %s, %s", p.Law, Instantaneous, Accumulated, FirstOrder, Contracting, SelfAccelerating)}
}

// closed works the two bounds out. No heat is lost in either:
//
//	rise = heat / capacity
//	peak = start + rise
//	power = heat / dose, flow = gas / dose   (Instantaneous only)
func closed(p Plan) Run {
	heat := p.Slow.Amount*p.Slow.Heat + p.Fast.Amount*p.Fast.Heat
	gas := p.Slow.Amount*p.Slow.Gas + p.Fast.Amount*p.Fast.Gas
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

// integrate solves the balance of the plan with its peaks.
func integrate(p Plan) (Run, error) {
	b, err := newBalance(p)
	if err != nil {
		return Run{}, err
	}
	problem := b.problem()
	problem.Peaks = []ode.Peak{{Of: b.temperature}, {Of: b.power}, {Of: b.flow}, {Of: b.mtsr}}
	res, err := ode.Solve(problem, b.options())
	var failed *ode.Failure
	if errors.As(err, &failed) {
		return Run{}, fmt.Errorf("vessel: the heat and mass balance could not be integrated: %w", err)
	}
	if err != nil {
		return Run{}, err
	}
	return b.run(res), nil
}

// At is the run at t seconds; just before a switch.
func (p *Path) At(t float64) (Point, error) {
	y := make([]float64, p.b.n)
	if err := p.result.At(t, y); err != nil {
		return Point{}, err
	}
	return p.b.point(p.b.pieceAt(t), t, y), nil
}

// Times lists the moments the integration stepped to, for drawing.
func (p *Path) Times() []float64 { return p.result.Times() }

// Points is the run at the moments the integration stepped to; none for the
// closed-form laws.
func (r *Run) Points() []Point {
	if r.Path == nil {
		return nil
	}
	var out []Point
	for _, t := range r.Path.Times() {
		if p, err := r.Path.At(t); err == nil {
			out = append(out, p)
		}
	}
	return out
}
