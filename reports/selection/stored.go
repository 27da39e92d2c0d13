package selection

import (
	"slices"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/reports/number"
)

// stored answers what stored product does: the place with the highest pressure if all
// that is left of the carbon stays or goes as methane, when it is at 10 kPa, and how much
// of the product is lost.
func (p *reader) stored(l *Line) {
	lasting := func(c figure.Case) bool { return c.Failure == "" && c.Branch != figure.OuterBound }
	worst, lost := p.mostOf("store.pressure", lasting)
	gone, unknown := p.mostOf("store.conversion", lasting)
	for _, s := range unknown {
		if !slices.Contains(lost, s) {
			lost = append(lost, s)
		}
	}
	if worst == nil && gone == nil && len(lost) == 0 {
		l.State, l.Answer = Absent, say("stored.none")
		return
	}
	p.verdict(l, p.findings("store.pressure", lasting))
	switch {
	case worst == nil && gone == nil:
		l.Answer = say("stored.not_known", strings.Join(lost, ", "))
		if l.Verdict == figure.Exceeds { // no gas at all may stand in what is not rated
			l.Answer = say("stored.shut", strings.Join(lost, ", "))
		}
		return
	case worst == nil:
		l.Answer = say("stored.open", p.v.Place(gone.Place))
		if i := slices.Index(lost, p.v.Place(gone.Place)); i >= 0 { // it is shut, and its pressure is what is not known
			l.Answer, lost = say("stored.unknown", lost[i]), slices.Delete(lost, i, i+1)
		}
	case worst.Case.State == figure.Closed:
		l.Against = say("lid.must_not")
		l.Answer = say("stored.supposed", p.v.Place(worst.Place), p.v.Value(worst))
	default:
		l.Answer = say("stored.pressure", p.v.Place(worst.Place), p.closure(worst.Place), p.v.Value(worst))
	}
	if worst != nil {
		l.Answer += p.unsaid(worst.Place)
		soon := worst.ID
		soon.Quantity = "store.time_to_10_kpa"
		if f := p.figs.Get(soon); f != nil && !f.Danger().Unknown() {
			l.Answer += p.soon(f)
		}
	}
	if gone != nil {
		l.Answer += say("stored.lost", percent(gone))
	}
	if len(lost) > 0 {
		l.Answer += say("answer.also_unknown", strings.Join(lost, ", "))
	}
}

// unsaid says that nobody states whether what stands in a place carries the flakes.
func (p *reader) unsaid(at figure.Place) string {
	for i := range p.r.Walk.Facts {
		f := &p.r.Walk.Facts[i]
		if f.ID == "stored_unsaid" && figure.At(p.r.Walk.Steps[f.Step-1].Place) == at {
			return say("stored.unsaid", p.r.Walk.Steps[f.Step-1].After.MayCarry)
		}
	}
	return ""
}

// soon says when a container is at 10 kPa. The gas of powder that the etch left counts at
// once: where that alone suffices the end of the range is no time to go by.
func (p *reader) soon(f *figure.Figure) string {
	if f.Danger().V <= 0 && f.Value.V > 0 {
		return say("stored.at_once", p.v.ValueText(f))
	}
	return say("stored.soon", p.v.Value(f))
}

// mostOf is the greatest figure of a quantity at any place, and the places where it is
// not known.
func (p *reader) mostOf(quantity string, of kind) (worst *figure.Figure, lost []string) {
	for f := range p.figs.Of(quantity) {
		if f.Place.IsZero() || !f.Of().IsZero() || !of(f.Case) {
			continue
		}
		switch {
		case f.Danger().Unknown():
			if s := p.v.Place(f.Place); !slices.Contains(lost, s) {
				lost = append(lost, s)
			}
		case worst == nil || moreThan(f, worst):
			worst = f
		}
	}
	return worst, lost
}

// moreThan reports whether a figure of a place is told before another: of what is shut as
// written before what is only supposed to be, then the greater.
func moreThan(f, than *figure.Figure) bool {
	written := func(f *figure.Figure) bool { return f.Case.State != figure.Closed && f.Danger().V > 0 }
	if a, b := written(f), written(than); a != b {
		return a
	}
	return f.Danger().V > than.Danger().V
}

// percent is a share with its range as people write it.
func percent(f *figure.Figure) string {
	e := number.EndsOf(f)
	return number.Thing{Unit: "%"}.Whole(number.Ends{Value: 100 * e.Value, Low: 100 * e.Low, High: 100 * e.High})
}
