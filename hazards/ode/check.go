package ode

import "math"

// check refuses what cannot be integrated and fills in the defaults.
func check(p *Problem, o *Options) *Failure {
	if o.MaxSteps == 0 {
		o.MaxSteps = defaultMaxSteps
	}
	if why := badProblem(p); why != "" {
		return &Failure{BadProblem, p.From, why}
	}
	if why := badOptions(o); why != "" {
		return &Failure{BadProblem, p.From, why}
	}
	if why := badTolerance(o, len(p.Start)); why != "" {
		return &Failure{BadTolerance, p.From, why}
	}
	return nil
}

func badProblem(p *Problem) string {
	switch {
	case p.Rate == nil:
		return "no Rate"
	case len(p.Start) == 0:
		return "no states"
	case !finite(p.Start):
		return "Start is not finite"
	case !finite([]float64{p.From, p.To, p.To - p.From}) || p.To < p.From:
		return "To must not be before From, and both must be finite"
	}
	for i, e := range p.Events {
		if e.Of == nil || e.Direction < Falling || e.Direction > Rising {
			return "event " + itoa(i) + " has no function or no valid direction"
		}
	}
	for i, k := range p.Peaks {
		if k.Of == nil {
			return "peak " + itoa(i) + " has no function"
		}
	}
	return badSwitches(p)
}

func badSwitches(p *Problem) string {
	before := p.From
	for i, s := range p.Switches {
		if !(s.At > before && s.At < p.To) {
			return "switch " + itoa(i) + " does not lie after the one before and before To"
		}
		before = s.At
	}
	return ""
}

func badOptions(o *Options) string {
	switch {
	case o.Method < Automatic || o.Method > Implicit:
		return "unknown method"
	case !(o.InitialStep >= 0) || math.IsInf(o.InitialStep, 1):
		return "InitialStep is negative or not finite"
	case !(o.MaxStep >= 0) || math.IsInf(o.MaxStep, 1):
		return "MaxStep is negative or not finite"
	case o.MaxSteps < 0:
		return "MaxSteps is negative"
	}
	return ""
}

func badTolerance(o *Options, n int) string {
	if !(o.RelTol >= leastRelTol && o.RelTol <= greatestRelTol) {
		return "RelTol must lie between 1e-14 and 0.1"
	}
	if len(o.AbsTol) != 1 && len(o.AbsTol) != n {
		return "AbsTol needs one value, or one a state"
	}
	for i, a := range o.AbsTol {
		if !(a > 0) || math.IsInf(a, 1) {
			return "AbsTol " + itoa(i) + " is not above zero and finite"
		}
	}
	return ""
}
