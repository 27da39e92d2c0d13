package scrubbing

import (
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/scaling/ends"
	"etchbound/schemas/quantity"
)

// reader reads figures and keeps what is missing of those it read.
type reader struct {
	figs    *figure.Set
	missing []working.Missing
}

func (r *reader) lacks(kind, subject string) {
	m := working.Lacks(kind, subject)
	for _, have := range r.missing {
		if have == m {
			return
		}
	}
	r.missing = append(r.missing, m)
}

// of is a figure at both ends.
func (r *reader) of(f *figure.Figure) ends.Two {
	out := ends.Of(f)
	if !out.Known() {
		for _, m := range working.Joined(f.Value.Missing(), f.Danger().Missing()) {
			r.lacks(m.Kind, m.Subject.String())
		}
	}
	return out
}

// most is the worst over the figures of a quantity at some steps that are wanted; false
// where there is none.
func (r *reader) most(quantity string, steps []int, wanted func(figure.ID) bool) (ends.Two, bool) {
	out, there := ends.Two{}, false
	for _, n := range steps {
		for f := range r.figs.At(quantity, figure.Step(n)) {
			if !wanted(f.ID) {
				continue
			}
			if x := r.of(f); there {
				out = out.Worse(x)
			} else {
				out, there = x, true
			}
		}
	}
	return out, there
}

func every(figure.ID) bool { return true }

// end is the end of a datum at which danger lies.
type end bool

const (
	low  end = false
	high end = true
)

// datum is a row of the data at both ends; one of which nobody says how far it goes has no end.
func (b *builder) datum(id datum.ID, at end) ends.Two {
	d, held := b.r.Case.Store.Row(id)
	out := ends.Two{Best: d.Value, Most: d.Low}
	if at == high {
		out.Most = d.High
	}
	if !held || !out.Known() {
		b.lacks("datum", string(id))
		if !held {
			out = ends.Unknown()
		}
	}
	return out
}

// stated is what a person stated at both ends, the high one of a range.
func (b *builder) stated(q quantity.Value, unit string) ends.Two {
	out := ends.Same(b.r.Case.Given("x", unit, q).V)
	if q.HasRange() {
		_, out.Most = q.Range(unit)
	}
	return out
}
