package verdict

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
)

// surely says how much of the range of a figure has the verdict that its dangerous
// end gives, or a worse one; an end that is not known is not counted. A bound, and what
// is worked out by a law that nobody has measured, has no best estimate: all of its
// range may have the verdict, and of less nothing is said. Nor is anything said where no
// number stands behind the verdict. Saying nothing softens nothing: such a verdict ranks
// with one that is sure.
func surely(f *figure.Figure, l *limit.Limit, v figure.Verdict) figure.Surety {
	q, _ := figure.Lookup(f.Quantity)
	low := q.Danger == figure.Low
	tame := f.Low()
	if low {
		tame = f.High()
	}
	reaches := func(n working.Num) bool {
		level, _ := l.Compare(n.V, low)
		return level != limit.Unknown && levels[level] >= v
	}
	switch {
	case v == figure.UnknownVerdict || !reaches(f.Danger()):
		return figure.NotSaid
	case reaches(tame) && reaches(f.Value):
		return figure.WholeRange
	case f.Value.Status <= working.Bound || f.Case.Bracketed():
		return figure.NotSaid
	case reaches(f.Value):
		return figure.BestEstimate
	}
	return figure.DangerousEnd
}

// levels are the verdicts of the outcomes of a comparison.
var levels = [...]figure.Verdict{limit.Within: figure.Within, limit.Near: figure.Near,
	limit.Unknown: figure.UnknownVerdict, limit.Exceeds: figure.Exceeds}

// behind is the figure that a verdict on f was taken from: f, or another that the
// finding names.
func behind(figs *figure.Set, f *figure.Figure, of figure.ID) *figure.Figure {
	if g := figs.Get(of); g != nil {
		return g
	}
	return f
}
