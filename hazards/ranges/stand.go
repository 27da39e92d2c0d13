package ranges

import (
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/verdict"
)

// Findings holds every figure of a case against its limits.
func (s *Sized) Findings() []figure.Finding {
	figs := verdict.Bare(verdict.WithoutTraces(slices.Clone(s.Figures)))
	return verdict.Judge(s.Case, figs, &s.Walk)
}

// Watch picks the figures that a finding of a figure stands on: that figure, what
// may be judged in its place, and the figures that its limits are made of.
func Watch(id figure.ID) func(*figure.Figure) bool {
	stands := figure.Row(id.Quantity).StandsOn
	return func(f *figure.Figure) bool {
		return f.ID == id || f.Place == id.Place && slices.Contains(stands, f.Quantity)
	}
}

// Wanted reports whether a figure has, or may have, a verdict, or is a limit of one
// that has.
func Wanted(f *figure.Figure) bool {
	return !verdict.Beside(f.Quantity) || figure.Row(f.Quantity).HasLimit
}

// Stand is a finding with how far it is from turning.
type Stand struct {
	figure.Finding
	Danger float64 // the dangerous end that was judged
	Near   float64 // where near begins, in the same unit
	Low    bool    // danger lies below the limit
}

// Judge is the finding of one figure against one of its limits. It
// is false where there is no such figure or limit at this size.
func (s *Sized) Judge(id figure.FindingID) (Stand, bool) {
	figs := figure.NewSet(s.Figures)
	f := figs.Get(id.Figure)
	if f == nil || !verdict.Judged(figs, f) {
		return Stand{}, false
	}
	ls := verdict.LimitsOf(s.Case, figs, &s.Walk, f, nil)
	for j := range ls {
		if ls[j].Key == id.Limit {
			return s.stand(figs, f, &ls[j]), true
		}
	}
	return Stand{}, false
}

func (s *Sized) stand(figs *figure.Set, f *figure.Figure, l *limit.Limit) Stand {
	q, _ := figure.Lookup(f.Quantity)
	low := q.Danger == figure.Low
	danger := f.Danger().V
	if f.Quantity == "heat.mtsr" {
		danger, _ = verdict.Highest(figs, f.Place)
	}
	found := verdict.Finding(s.Case, figs, &s.Walk, f, l)
	return Stand{Finding: found, Danger: danger, Near: l.NearFrom(low), Low: low}
}
