package scaling

import (
	"fmt"
	"math"
	"strconv"

	"etchbound/hazards"
	"etchbound/hazards/figure"
)

// worstOf is the greatest known value of a quantity, 0 where there is none.
func worstOf(r *hazards.Review, quantity string) float64 {
	out := 0.0
	for f := range figure.NewSet(r.Figures).Of(quantity) {
		if f.Value.V > out {
			out = f.Value.V
		}
	}
	return out
}

// class is the worst a criticality class can be.
func class(f *figure.Figure) string {
	if f.High().Unknown() {
		return "not known"
	}
	return strconv.FormatFloat(f.High().V, 'g', -1, 64)
}

// creep is what many changes do together of which none meets a rule of its own.
func (f *firing) creep() {
	if len(f.out) > 0 {
		return
	}
	f.moves("creep", func(share float64) bool { return reaches(1+share, f.rule("creep").Value) })
}

// replaced is what another value of a datum, or another that was measured, does.
func (f *firing) replaced() {
	if f.out["replaced"] == nil {
		f.moves("replaced", func(share float64) bool { return reaches(math.Abs(share), f.rule("replaced").Value) })
	}
}

// moves meets a rule by the figures of those that people ask for first that moved so far, as
// it is meant to go. A temperature has no share, and what is next to nothing beside the worst of
// the reviewed route moves nothing.
func (f *firing) moves(rule string, far func(share float64) bool) {
	for i := range f.c.Moved {
		m := &f.c.Moved[i]
		q, _ := figure.Lookup(m.ID.Quantity)
		if m.ID.Case.Supposed() || q.Headline == 0 || q.Unit == "degC" || !far(m.Share) ||
			m.Is.Value.V < slight*worstOf(&f.c.Reviewed, m.ID.Quantity) {
			continue
		}
		f.hit(rule, m.ID.String(), told(&m.Was), told(&m.Is))
	}
}

// slight is the share of the worst figure of a quantity below which one says nothing.
const slight = 0.01

// told is the central value of a figure.
func told(f *figure.Figure) string {
	if f.Value.Unknown() {
		return "not known"
	}
	return fmt.Sprintf("%.3g %s", f.Value.V, f.Value.Unit)
}

// verdicts are findings that get worse, hold points that are new, and what is no longer
// known.
func (f *firing) verdicts() {
	for i := range f.c.Verdicts {
		switch v := &f.c.Verdicts[i]; {
		case !v.Worse():
		case v.Is.Verdict == figure.UnknownVerdict:
			f.hit("unknown", v.ID.String(), v.Was.Verdict.String(), v.Is.Verdict.String())
		default:
			f.hit("verdict", v.ID.String(), v.Was.Verdict.String(), v.Is.Verdict.String())
		}
	}
	for _, h := range f.b.stops() {
		f.out["verdict"] = append(f.out["verdict"], Met{Stop: h.Says, Was: "not there", Is: "hold point"})
	}
	before := f.b.figures()
	// a class has no verdict of its own
	for x := range figure.NewSet(f.c.Proposed.Figures).Of("heat.criticality_class") {
		old := before[x.ID]
		if !x.Of().IsZero() || old == nil {
			continue
		}
		if x.High().V > old.High().V || x.High().Unknown() && !old.High().Unknown() {
			f.hit("verdict", x.ID.String(), class(old), class(x))
		}
	}
	was := f.b.lacked()
	for _, u := range f.c.Proposed.Unknown {
		if !was[u.Missing] {
			f.out["unknown"] = append(f.out["unknown"], Met{Was: "known", Is: "not known", Lacks: u.Missing})
		}
	}
}
