package ode

import "math"

// control is the memory of the step-size controller. Solving Ordinary
// Differential Equations II, Springer, 1996, section IV.2 (proportional and
// integral, explicit) and section IV.8 (predictive, implicit).
type control struct {
	first    bool // no accepted step to compare with
	rejected bool // the last try was rejected
	err, h   float64
}

const (
	safety        = 0.9
	explicitBeta  = 0.04
	explicitFloor = 1e-4 // least error remembered
	implicitFloor = 1e-2
)

// next is the step after an accepted one of h with error err.
func (r *run) next(h, err float64) float64 {
	c := &r.control
	shrink, floor := 0.0, explicitFloor
	if r.implicit {
		shrink, floor = c.predictive(h, err), implicitFloor
	} else {
		shrink = c.proportional(err)
	}
	if c.rejected {
		shrink = max(shrink, 1)
	}
	*c = control{err: max(err, floor), h: h}
	return h / shrink
}

func (c *control) proportional(err float64) float64 {
	if err == 0 {
		return 0.1
	}
	f := math.Pow(err, 0.2-float64(0.75*explicitBeta))
	if !c.first {
		f /= math.Pow(c.err, explicitBeta)
	}
	return min(max(f/safety, 0.1), 5)
}

func (c *control) predictive(h, err float64) float64 {
	f := fourthRoot(err) / safety
	if !c.first {
		f = max(f, c.h/h*math.Sqrt(err)/fourthRoot(c.err)/safety)
	}
	return min(max(f, 1.0/6), 5)
}

// after is the step after a rejected one.
func (r *run) after(h, err float64) float64 {
	r.control.rejected = true
	var shrink float64
	if r.implicit {
		shrink = fourthRoot(err) / safety
	} else {
		shrink = math.Pow(err, 0.2) / safety
	}
	return h / min(max(shrink, 1.1), 10)
}

func fourthRoot(x float64) float64 { return math.Sqrt(math.Sqrt(x)) }

// firstStep guesses a step from the size of f and of its change. Solving
// Ordinary Differential Equations I, Springer, 1993, section II.4.
func (r *run) firstStep() float64 {
	span := r.end - r.t
	if r.o.InitialStep > 0 {
		return min(r.o.InitialStep, span)
	}
	r.scale(r.y, r.y)
	size, slope := r.norm(r.y), r.norm(r.f)
	h := 1e-6 * span
	if size > 1e-10 && slope > 1e-10 {
		h = min(0.01*size/slope, span)
	}
	for range 20 {
		add1(r.z, r.y, h, r.f)
		if r.rate(r.t+h, r.z, r.g) {
			break
		}
		h *= 0.1
	}
	return min(r.guess(h, slope), span)
}

// guess makes the first term the methods neglect about a hundredth of the
// tolerance.
func (r *run) guess(h, slope float64) float64 {
	bend := r.normDiff(r.g, r.f) / h
	if math.IsNaN(bend) || math.IsInf(bend, 0) {
		return h
	}
	largest := max(slope, bend)
	if largest <= 1e-15 {
		return max(1e-6*(r.end-r.t), 1e-3*h)
	}
	order := float64(explicitOrder)
	if r.implicit {
		order = implicitOrder
	}
	return min(100*h, math.Pow(0.01/largest, 1/order))
}
