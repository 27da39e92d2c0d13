package course

import (
	"math"

	"etchbound/hazards/vessel"
)

// Dose is how hot a vessel gets with a share of what is dosed, in degC.
type Dose struct{ Share, Hottest float64 }

// doses is in how many equal parts the share is shown.
const doses = 40

// Dosed is the highest temperature of a stage in which an etch begins against the share
// of what it doses that is in, with nothing lost; nil where it is not known. Powder that
// goes into liquor reacts as far as it is in:
//
//	T = T_set + x Q/(C - (1 - x) C_s)
//
// Liquor that goes on to powder lets as much of it react as there is liquor for, in what
// lies there and has gone in, so that the highest is where the last of it can react:
//
//	T = T_set + min(1, x/s) Q/(C_0 + x (C - C_0))
func (s *Stage) Dosed() []Dose {
	if s.Etches == nil {
		return nil
	}
	q, all, solid := 1000*s.Heat.V, s.Filled.V, s.Done.Contents().SolidCapacity(nil).V
	at := func(x float64) float64 { return s.Set.V + x*q/(all-(1-x)*solid) }
	least := 0.0
	if s.Onto != nil {
		there, share := s.Onto.There.V, s.Onto.Share.V
		at = func(x float64) float64 { return s.Set.V + math.Min(1, x/share)*q/(there+x*(all-there)) }
		least = share
	}
	if t := at(1); math.IsNaN(t) || math.IsInf(t, 0) {
		return nil
	}
	out := []Dose{{0, s.Set.V}}
	for i := 1; i <= doses; i++ {
		x := float64(i) / doses
		if before := out[len(out)-1].Share; least > before && least < x {
			out = append(out, Dose{least, at(least)})
		}
		out = append(out, Dose{x, at(x)})
	}
	return out
}

// Dosing is a vessel at the moment in which a share of what a stage doses is in, by the
// law of a run.
type Dosing struct {
	Share       float64
	Time        float64 // s from the start of the addition
	Temperature float64 // degC
	Waiting     float64 // share of the layered phase there that has not reacted
	Could       float64 // degC, if cooling failed now, nothing more came and all that waits reacted
}

// Dosing is the run of a course against the share of what a stage doses that is in, at so
// many equal steps of the time that the addition takes; nil where there is no run or where
// it goes in at once. Liquor that is poured on to powder goes in evenly, and wets all of the
// powder with the first of it.
func (x *Run) Dosing(s *Stage, steps int) []Dosing {
	during, _ := x.Window(s.Step.Number)
	if x.Missing != nil || x.Vessel.Path == nil || s.Etches == nil || !(during.To > during.From) {
		return nil
	}
	in := func(p *vessel.Point) float64 { return p.Waiting + p.Conversion*x.Vessel.Plan.Slow.Amount }
	begins, err := x.Vessel.Path.At(during.From)
	if err != nil {
		return nil
	}
	first, all := in(&begins), in(&during.End)
	var out []Dosing
	for i := 0; i <= steps; i++ {
		t := during.From + (during.To-during.From)*float64(i)/float64(steps)
		p, err := x.Vessel.Path.At(t)
		if err != nil || !(all > first) {
			return nil
		}
		d := Dosing{Share: (in(&p) - first) / (all - first), Time: t - during.From, Temperature: p.Temperature - kelvin,
			Could: p.MTSR - kelvin}
		if s.Onto != nil {
			d.Share = d.Time / (during.To - during.From)
		}
		if n := in(&p); n > 0 {
			d.Waiting = p.Waiting / n
		}
		out = append(out, d)
	}
	return out
}
