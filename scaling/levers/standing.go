package levers

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/proposal"
	"etchbound/hazards/route"
)

// view is a set of data to judge by, and the findings that are judged by it.
type view struct {
	store   *chemicals.Store
	of      map[figure.FindingID]bool
	widened bool // at the ends to which no datum moves a figure
}

// findings are those of a case at the data of a view.
func (v *view) findings(c route.Case) ([]figure.Finding, error) {
	c.Store = v.store
	if v.widened {
		return hazards.Widened(c)
	}
	return hazards.Centre(c)
}

// standing is how a file stands.
type standing struct {
	sure   []figure.Finding // what exceeds at the best estimate as the route is written, or is not known
	may    []figure.Finding // what only its dangerous end exceeds
	failed int              // what exceeds where something fails or is done wrong
	stops  int              // what goes against a rule of order, or must not meet
	over   float64          // how far those of the first are over, added up
}

// stand judges a file of so many written steps at its best estimates, and what else there
// are views for.
func stand(f proposal.File, views []view, written int) (standing, error) {
	var out standing
	f.Case.Brief = true
	all, err := hazards.Centre(f.Case)
	if err != nil {
		return out, err
	}
	for i := range all {
		x := &all[i]
		switch {
		case x.Verdict.Rank() < figure.Exceeds.Rank():
		case x.Figure.Case.Failure != "":
			out.failed++
		default:
			if added(x, written) && unknownElsewhere(x, all) {
				continue
			}
			out.sure = append(out.sure, *x)
			if q := x.Figure.Quantity; q == "order.against" || q == "meeting.pair" {
				out.stops++
			}
			out.over += overrun(x)
		}
	}
	for i := range views {
		v := &views[i]
		at, err := v.findings(f.Case)
		if err != nil {
			return out, err
		}
		for i := range at {
			if x := &at[i]; v.of[x.ID()] && x.Verdict == figure.Exceeds && !out.has(x.ID()) {
				out.may = append(out.may, *x)
			}
		}
	}
	return out, nil
}

func (s *standing) has(id figure.FindingID) bool {
	return slices.ContainsFunc(s.sure, func(x figure.Finding) bool { return x.ID() == id })
}

// added reports whether a finding is of a step that the written file does not have.
func added(x *figure.Finding, written int) bool {
	n, ok := x.Figure.Place.Step()
	return ok && n > written
}

// unknownElsewhere reports whether a finding is not known, and neither is that of the same
// quantity, agent and limit at another place: a step more makes nothing less known then.
func unknownElsewhere(x *figure.Finding, all []figure.Finding) bool {
	return x.Verdict == figure.UnknownVerdict && slices.ContainsFunc(all, func(y figure.Finding) bool {
		return y.Verdict == figure.UnknownVerdict && y.Figure.Place != x.Figure.Place &&
			y.Figure.Quantity == x.Figure.Quantity && y.Figure.Agent == x.Figure.Agent && y.Limit.Key == x.Limit.Key
	})
}

// overrun is how far a finding is over its limit: the logarithm of how often, or kelvins
// over a tenth of what boiling water is above a room; one where it is not known.
func overrun(x *figure.Finding) float64 {
	const span = 8 // K
	v := -x.Margin
	if x.Limit.Unit == "degC" {
		v /= span
	}
	if math.IsNaN(v) {
		return 1
	}
	return math.Log1p(math.Max(v, 0))
}

// worsens reports whether one standing has more than another of what no other gain makes
// up for: failures, steps against a rule of order, things that must not meet.
func (s *standing) worsens(than *standing) bool {
	return s.failed > than.failed || s.stops > than.stops
}

// better reports whether one standing has less that exceeds than another, and worsens
// nothing.
func (s *standing) better(than *standing) bool {
	switch {
	case s.worsens(than):
		return false
	case len(s.sure) != len(than.sure):
		return len(s.sure) < len(than.sure)
	}
	return len(s.may) < len(than.may)
}

// surer reports whether one standing has less that exceeds at its best estimate than
// another, nothing more that is not known, and no failure more.
func (s *standing) surer(than *standing) bool {
	return !s.worsens(than) && len(s.sure) <= len(than.sure) && len(s.exceeding()) < len(than.exceeding())
}

// exceeding is what exceeds at its best estimate, without what is not known.
func (s *standing) exceeding() []figure.Finding {
	var out []figure.Finding
	for i := range s.sure {
		if s.sure[i].Verdict == figure.Exceeds {
			out = append(out, s.sure[i])
		}
	}
	return out
}

// asGood reports whether one standing has no more that exceeds than another.
func (s *standing) asGood(as *standing) bool { return !as.better(s) && !s.worsens(as) }

// helpsAny reports whether a lever can help something of a list.
func (r *row) helpsAny(list []figure.Finding) bool {
	return slices.ContainsFunc(list, func(x figure.Finding) bool { return slices.Contains(r.helps, x.Figure.Quantity) })
}

// beyond are the findings of one list that are not in another.
func beyond(list, other []figure.Finding) []figure.Finding {
	var out []figure.Finding
	for i := range list {
		if !slices.ContainsFunc(other, func(x figure.Finding) bool { return x.ID() == list[i].ID() }) {
			out = append(out, list[i])
		}
	}
	return out
}
