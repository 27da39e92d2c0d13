package verdict

import (
	"math"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/upset"
)

// Judge holds every figure that stands for something that can happen against
// every limit of its quantity, by its dangerous end.
func Judge(c route.Case, figs []figure.Figure, k *process.Walk) []figure.Finding {
	return judgedBy(c, figure.NewSet(figs), k, finding, func(*figure.Figure) bool { return false })
}

// Verdicts is Judge without words and without the figures that are left out.
func Verdicts(c route.Case, figs []figure.Figure, k *process.Walk, leftOut func(*figure.Figure) bool) []figure.Finding {
	return judgedBy(c, figure.NewSet(figs), k, compared, leftOut)
}

// Told is a verdict with the name of its finding.
type Told struct {
	ID      figure.FindingID
	Verdict figure.Verdict
}

// Names is Verdicts with the names of the findings alone: what is drawn very often is
// asked for no more.
func Names(c route.Case, figs []figure.Figure, k *process.Walk, leftOut func(*figure.Figure) bool) []Told {
	told := func(h *subject, l *limit.Limit) Told {
		f := compared(h, l)
		return Told{f.ID(), f.Verdict}
	}
	return judgedBy(c, figure.NewSet(figs), k, told, leftOut)
}

// judgedBy is Judge with what is made of a figure and a limit, and figures that are left
// out.
func judgedBy[T any](c route.Case, figs *figure.Set, k *process.Walk,
	find func(h *subject, l *limit.Limit) T, leftOut func(*figure.Figure) bool) []T {
	all := figs.List()
	out := make([]T, 0, len(all)/2)
	var ls []limit.Limit
	in := inOrder(c.Limits, "")
	for i := range all {
		f := &all[i]
		if !Judged(figs, f) || leftOut(f) {
			continue
		}
		if f.Quantity == "fluoride.hf_strength" && !isWorst(figs, f) && !isWorstKnown(figs, f) {
			continue // one strength is enough to say so
		}
		h := &subject{c, figs, k, f}
		ls = limitsOf(h, in, ls[:0])
		for i := range ls {
			out = append(out, find(h, &ls[i]))
		}
	}
	return out
}

// Judged reports whether a figure has a verdict of its own: not what is so only
// if a container were shut, nor what repeats another. What follows from a failure
// is judged once, by the worst of its laws.
func Judged(figs *figure.Set, f *figure.Figure) bool {
	switch {
	case f.Case.State == figure.Closed:
		return false
	case f.Quantity == "heat.temperature_peak" && upset.AsMeant(f.Case.Failure):
		return false
	case f.Case.Failure != "":
		return f.Case == figure.If(f.Case.Failure)
	}
	return f.Of().IsZero() && !(f.Place.IsZero() && hasMembers(figs, f.Quantity))
}

// Beside reports whether a quantity is shown beside another that carries the
// verdict.
func Beside(quantity string) bool { return figure.Row(quantity).Beside }

// mustBeKnown is the limit of a figure that no other limit judges and that is
// unknown where danger lies: a figure nobody knows is a finding of its own.
func mustBeKnown(f *figure.Figure) limit.Limit {
	return limit.Limit{Key: limit.HasToBeKnown, Quantity: f.Quantity, Value: math.NaN(), Unit: f.Value.Unit,
		Status: "common practice"}
}

// isWorstKnown reports whether f is the first of the greatest known members of
// a quantity whose worst is unknown: beside that one, it still has its verdict.
func isWorstKnown(figs *figure.Set, f *figure.Figure) bool {
	if f.Danger().Unknown() {
		return false
	}
	first := true
	for g := range figs.Of(f.Quantity) {
		switch {
		case g.Place.IsZero() && !g.Of().IsZero() && !g.Danger().Unknown():
			return false
		case g == f:
			first = false
		case g.Of().IsZero() && beyond(g.Danger().V, f.Danger().V):
			return false
		case g.Of().IsZero() && first && !beyond(f.Danger().V, g.Danger().V) && !g.Danger().Unknown():
			return false
		}
	}
	return true
}

// isWorst reports whether f is the member the bare figure repeats.
func isWorst(figs *figure.Set, f *figure.Figure) bool {
	for g := range figs.At(f.Quantity, figure.Place{}) {
		return g.Of() == f.ID
	}
	return false
}

func hasMembers(figs *figure.Set, quantity string) bool {
	for g := range figs.Of(quantity) {
		if !g.Place.IsZero() {
			return true
		}
	}
	return false
}

// Finding is a verdict with what it means and what would be necessary.
func Finding(c route.Case, figs *figure.Set, k *process.Walk, f *figure.Figure, l *limit.Limit) figure.Finding {
	return finding(&subject{c, figs, k, f}, l)
}

func finding(h *subject, l *limit.Limit) figure.Finding {
	out, figs, f := compared(h, l), h.figs, h.f
	out.Surely = surely(behind(figs, f, out.Of), l, out.Verdict)
	out.Says, out.Needs = words(h, l, out.Verdict)
	if f.Quantity == "heat.mtsr" {
		out.Says = out.Says.And(countedBy(figs, f)...)
	}
	return out
}

// compared holds a figure against a limit, without words.
func compared(h *subject, l *limit.Limit) figure.Finding {
	figs, f := h.figs, h.f
	q := figure.Row(f.Quantity)
	danger := f.High().V
	if q.Danger == figure.Low {
		danger = f.Low().V
	}
	var of figure.ID
	if f.Quantity == "heat.mtsr" {
		if danger, of = Highest(figs, f.Place); of == f.ID {
			of = figure.ID{}
		}
	}
	level, margin := l.Compare(danger, q.Danger == figure.Low)
	out := figure.Finding{Figure: f.ID, Of: of, Margin: margin, Limit: *l}
	out.Verdict = levels[level]
	if out.Verdict < figure.UnknownVerdict && behind(figs, f, of).Open() != nil {
		out.Verdict, out.Margin = figure.UnknownVerdict, math.NaN()
	}
	if level == limit.Unknown && (l.Role == limit.Unrated || bursts(f) || allOver(f, l, q.Danger == figure.Low)) {
		out.Verdict = figure.Exceeds // whatever it is, it is more than may be held
	}
	return out
}

// bursts reports whether the dangerous end of a pressure is not known because hot liquid fills
// all of a shut place: no wall holds that.
func bursts(f *figure.Figure) bool {
	return slices.ContainsFunc(f.Danger().Missing(), func(m working.Missing) bool { return m.Kind == "no_space_hot" })
}

// allOver reports whether what is known of a figure is over a limit at its other end and at the
// best estimate, where its dangerous end is not known.
func allOver(f *figure.Figure, l *limit.Limit, low bool) bool {
	tame := f.Low()
	if low {
		tame = f.High()
	}
	for _, n := range []working.Num{f.Value, tame} {
		if level, _ := l.Compare(n.V, low); level != limit.Exceeds {
			return false
		}
	}
	return true
}
