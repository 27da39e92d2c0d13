package hazards

import (
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/assess"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/ranges"
)

// End is the working of the dangerous end of a figure: the case assessed once more, on
// a sheet of its own, with the data where they stand at that end.
type End struct {
	Figure figure.ID
	High   bool        // the high end of its range
	Value  working.Num // with its line
	Sheet  *working.Sheet
	Stood  []ranges.Stood // the data that are not at their best estimate
}

// Member is the figure that stands behind an id: itself, or the one that it repeats.
func (r *Review) Member(id figure.ID) figure.ID {
	for i := range r.Figures {
		if f := &r.Figures[i]; f.ID == id && !f.Of().IsZero() {
			return f.Of()
		}
	}
	return id
}

// Deciding are the figures on which the verdicts stand that are near or exceed, of what
// is as it is meant: of each quantity and agent that of the worst place and law.
func (r *Review) Deciding() []figure.ID {
	by := map[figure.FindingID]figure.ID{}
	for i := range r.Findings {
		f := &r.Findings[i]
		if by[f.ID()] = f.Figure; !f.Of.IsZero() {
			by[f.ID()] = f.Of
		}
	}
	var out []figure.ID
	for i := range r.Turns {
		if id := r.Member(by[r.Turns[i].Finding]); !slices.Contains(out, id) {
			out = append(out, id)
		}
	}
	return out
}

// Ends work out the dangerous ends of some figures, those that stand on the same run one
// after the other, and give each to tell: no more than one run is held. Left out are
// those whose end is the best estimate, is not known, or stands in no run, and all of a
// brief review.
func Ends(r *Review, ids []figure.ID, tell func(*End)) {
	done := make([]bool, len(ids))
	for i := range r.Figures {
		if f := &r.Figures[i]; f.Widened {
			for j := range ids {
				done[j] = done[j] || r.Member(ids[j]) == f.ID
			}
		}
	}
	for i, first := range ids {
		c, stood, there := r.Leads.Case(r.Case, r.Member(first))
		if done[i] || !there {
			continue
		}
		w := working.NewSheet()
		c.Brief = first.Case.Failure == ""
		a := Assess(c, w)
		for j := i; j < len(ids); j++ {
			id := r.Member(ids[j])
			if done[j] || !r.Leads.Same(r.Member(first), id) {
				continue
			}
			done[j] = true
			for k := range a.Figures {
				if f := &a.Figures[k]; f.ID == id {
					q, _ := figure.Lookup(id.Quantity)
					tell(&End{id, q.Danger != figure.Low, w.Keep(f.Value), w, stood})
				}
			}
		}
	}
}

// CoursesAt are the courses of the route with the data where they stand at the dangerous
// end of a figure; none where that is the best estimate, or is not known.
func CoursesAt(r *Review, id figure.ID) []course.Course {
	c, _, there := r.Leads.Case(r.Case, r.Member(id))
	if !there {
		return nil
	}
	c.Brief = true
	return assess.Some(c, assess.Of(assess.Thermal)).Courses
}
