package keeping

import (
	"math"
	"slices"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// Point is what is expected of a way after so many days of the store: NaN where it is not
// known, and for the pressure of an open container.
type Point struct {
	Days     float64
	Lost     [2]float64 // share, by the trade's mode of pH and by the other
	Pressure [2]float64 // kPa gauge, carbon kept and as methane; of a vented container that if it were shut
}

// moments are the parts of the store at which a curve has a point.
var moments = [...]float64{0.01, 0.03, 0.06, 0.125, 0.25, 0.375, 0.5, 0.75, 1}

// Trace follows every way over the time it is stored: each point is the route assessed anew
// with its store cut short. What has no stated time has no points.
func Trace(ways []Way) {
	hazards.Each(len(ways), func(i int) { ways[i].trace() })
}

// TraceDrawn follows the ways that a review draws: as written, and a few conditions.
func TraceDrawn(ways []Way) {
	hazards.Each(len(ways), func(i int) {
		if ways[i].Condition == AsWritten || drawn(ways[i].Condition) {
			ways[i].trace()
		}
	})
}

// drawn reports whether a review draws a condition.
func drawn(condition string) bool {
	return slices.ContainsFunc(rows(), func(r row) bool { return r.condition == condition && r.drawn })
}

func (w *Way) trace() {
	if w.Life == nil {
		return
	}
	total := 0.0
	var ends []float64
	for i := range w.of.Route.Steps {
		if s := &w.of.Route.Steps[i]; w.storing(s) {
			if !s.Time.Set {
				return
			}
			total += s.Time.SI
			ends = append(ends, total)
		}
	}
	for _, m := range moments {
		ends = append(ends, m*total)
	}
	slices.Sort(ends)
	for _, t := range slices.Compact(ends) {
		if t > 0 {
			w.Over = append(w.Over, w.after(t))
		}
	}
}

func (w *Way) storing(s *route.Step) bool { return s.In == w.Place && s.Verb().Does == route.Stores }

// after assesses the way with its store cut short after so many seconds.
func (w *Way) after(seconds float64) Point {
	c, left := w.of, seconds
	r := *c.Route
	for i := range r.Steps {
		if !w.storing(&r.Steps[i]) {
			continue
		}
		if t := r.Steps[i].Time.SI; left > t*(1+1e-9) {
			left -= t
			continue
		}
		r.Steps = slices.Clone(r.Steps[:i+1])
		r.Steps[i].Time.SI = left
		break
	}
	c.Route = &r
	out := Point{Days: seconds / 86400, Lost: [2]float64{math.NaN(), math.NaN()},
		Pressure: [2]float64{math.NaN(), math.NaN()}}
	a := hazards.StoredOnly(c, w.common)
	for i := range a.Figures {
		if f := &a.Figures[i]; at(f, w.Place) {
			out.take(f)
		}
	}
	return out
}

// take keeps what a figure says at this moment.
func (p *Point) take(f *figure.Figure) {
	v := f.Value.V
	if f.Value.Unknown() {
		v = math.NaN()
	}
	switch f.Quantity + ":" + f.Case.Branch {
	case "store.conversion:" + tradeMode:
		p.Lost[0] = v
	case "store.conversion:ph_mode_2":
		p.Lost[1] = v
	case "store.pressure:carbon_kept":
		p.Pressure[0] = v
	case "store.pressure:methane":
		p.Pressure[1] = v
	}
}
