package levers

import (
	"slices"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/proposal"
	"etchbound/schemas"
)

// Found is what a search came to.
type Found struct {
	Written, Changed proposal.File
	Before, After    hazards.Review // of both, whole
	Bought           []Bought       // the changes, one after the other
	Dropped          []string       // keys below measured that were taken out
	Left             []Left         // what exceeds after them, or is not known
	Tried            int            // files that were judged
	Text             []byte         // the changed file, marked as what it is
	reviewedOf       []int          // what was chosen of Changed and After; nil before there is one
}

// Bought is a change with what it takes away from what exceeds, judged after the changes
// before it.
type Bought struct {
	Lever   string
	Changes []proposal.Change
	Moved   []Moved
}

// Moved is a finding before and after a change.
type Moved struct {
	Was, Is     figure.Finding // Is is zero where there is none any more
	WasOf, IsOf figure.Figure  // what they were judged by
}

// Search looks for what would have to change of a file so that less of it exceeds.
// Progress is called with how many files were judged and how many are at most. The error
// is that of a review.
func Search(f proposal.File, progress func(tried, most int)) (Found, error) {
	f.Case.Brief = false
	before, err := hazards.Make(f.Case)
	if err != nil {
		return Found{}, err
	}
	s := &search{written: f, choices: choices(f.Case.Route), progress: progress, kept: map[int]bool{}}
	s.chosen = make([]int, len(s.choices))
	for i := range s.chosen {
		s.chosen[i] = -1
	}
	root, _ := schemas.Places(f.Case.Route.Name, f.Text)
	if m := root.Get("measured"); m != nil {
		for i := range m.Keys {
			if m.Keys[i].Name != "source" {
				s.stated++
			}
		}
	}
	out := Found{Written: f, Before: before}
	if s.now, err = stand(f, nil, len(f.Case.Route.Steps)); err != nil {
		return out, err
	}
	base := &out.Before
	if s.begin() {
		if err := out.reviewed(s); err != nil {
			return out, err
		}
		opened := out.After
		base = &opened
	}
	s.run()
	if err := out.reviewed(s); err != nil {
		return out, err
	}
	s.views = viewsOf(&out.After)
	if len(s.views) > 0 {
		if s.now, err = stand(out.Changed, s.views, len(f.Case.Route.Steps)); err != nil {
			return out, err
		}
		s.plain = true
		s.run()
		if err := out.reviewed(s); err != nil {
			return out, err
		}
	}
	if err := out.notMore(s, base); err != nil {
		return out, err
	}
	out.Dropped = dropped(s, s.chosen)
	out.Tried = int(min(s.tries.Load(), mostTries))
	out.remains()
	out.Text = out.Written.Text
	if len(s.changes(s.chosen)) > 0 {
		out.Text = out.marked()
	}
	return out, out.buys(s)
}

// notMore takes changes back, the largest first, while the whole review has more that
// exceeds, or is not known, than one of the file as it was, with what came first.
func (f *Found) notMore(s *search, as *hazards.Review) error {
	for i := len(s.chosen) - 1; i >= 0 && harder(&f.After) > harder(as); i-- {
		if s.chosen[i] < 0 || s.kept[i] {
			continue
		}
		s.chosen[i] = -1
		if err := f.reviewed(s); err != nil {
			return err
		}
	}
	return nil
}

// harder is how many findings exceed or are not known.
func harder(r *hazards.Review) int {
	n := 0
	for i := range r.Findings {
		if r.Findings[i].Verdict.Rank() >= figure.Exceeds.Rank() {
			n++
		}
	}
	return n
}

// reviewed is the review of what is chosen, made once.
func (f *Found) reviewed(s *search) error {
	if slices.Equal(f.reviewedOf, s.chosen) && f.reviewedOf != nil {
		return nil
	}
	f.reviewedOf = slices.Clone(s.chosen)
	var err error
	if f.Changed, err = f.Written.With(s.changes(s.chosen)...); err != nil {
		return err
	}
	f.After, err = hazards.Make(f.Changed.Case)
	return err
}

// mostViews is how many dangerous ends are looked at beside the best estimate.
const mostViews = 3

// viewsOf are the data at which what may exceed does, of what is as the route says.
func viewsOf(r *hazards.Review) []view {
	var out []view
	var first []string
	wide := view{store: r.Case.Store, of: map[figure.FindingID]bool{}, widened: true}
	figs := figure.NewSet(r.Figures)
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Verdict != figure.Exceeds || f.Surely >= figure.BestEstimate || f.Figure.Case.Failure != "" {
			continue
		}
		id := r.Member(f.Figure)
		if !f.Of.IsZero() {
			id = r.Member(f.Of)
		}
		g := figs.Get(id)
		if g == nil {
			continue
		}
		if g.Widened {
			wide.of[f.ID()] = true
			continue
		}
		c, run, value, there := r.Leads.Run(r.Case, g)
		if !there || !exceeds(f, value) { // of what only a bound exceeds no run tells what helps
			continue
		}
		at := slices.Index(first, run)
		if at < 0 && len(out) < mostViews {
			at = len(out)
			first, out = append(first, run), append(out, view{store: c.Store, of: map[figure.FindingID]bool{}})
		}
		if at >= 0 {
			out[at].of[f.ID()] = true
		}
	}
	if len(wide.of) > 0 {
		out = append(out, wide)
	}
	return out
}

// exceeds reports whether a value exceeds the limit of a finding.
func exceeds(f *figure.Finding, v float64) bool {
	level, _ := f.Limit.Compare(v, figure.Row(f.Figure.Quantity).Danger == figure.Low)
	return level == limit.Exceeds
}

// buys tells what each change takes away, one after the other, in the order of the levers
// behind what came first.
func (f *Found) buys(s *search) error {
	so := make([]int, len(s.chosen))
	var order []int
	for _, kept := range []bool{true, false} {
		for i := range so {
			so[i] = -1
			if s.chosen[i] >= 0 && s.kept[i] == kept {
				order = append(order, i)
			}
		}
	}
	behind, errs := make([]*hazards.Review, len(order)), make([]error, len(order))
	changed := make([][]int, len(order))
	for k, i := range order {
		so[i] = s.chosen[i]
		changed[k] = slices.Clone(so)
	}
	hazards.Each(len(order), func(k int) { behind[k], errs[k] = f.after(s, changed[k]) })
	last := &f.Before
	for k, i := range order {
		if errs[k] != nil {
			return errs[k]
		}
		f.Bought = append(f.Bought, Bought{s.choices[i].name, s.choices[i].levels[s.chosen[i]], moved(last, behind[k])})
		last = behind[k]
	}
	return nil
}

// after is the review behind some of the changes: the one that there is behind all of them, and
// a brief one behind others, since of failures nothing is told there.
func (f *Found) after(s *search, so []int) (*hazards.Review, error) {
	if slices.Equal(so, f.reviewedOf) {
		return &f.After, nil
	}
	g, err := f.Written.With(s.changes(so)...)
	if err != nil {
		return nil, err
	}
	g.Case.Brief = true
	r, err := hazards.Make(g.Case)
	return &r, err
}

// moved are the findings that exceed in one review, as the route is written, and no
// longer in another.
func moved(was, is *hazards.Review) []Moved {
	now := map[figure.FindingID]*figure.Finding{}
	for i := range is.Findings {
		now[is.Findings[i].ID()] = &is.Findings[i]
	}
	a, b := figure.NewSet(was.Figures), figure.NewSet(is.Figures)
	var out []Moved
	for i := range was.Findings {
		f := &was.Findings[i]
		if f.Verdict != figure.Exceeds || f.Figure.Case.Failure != "" {
			continue
		}
		g := now[f.ID()]
		if g != nil && g.Verdict.Rank() >= f.Verdict.Rank() && g.Surely >= f.Surely {
			continue
		}
		m := Moved{Was: *f}
		if x := a.Get(f.Figure); x != nil {
			m.WasOf = *x
		}
		if g != nil {
			m.Is = *g
			if x := b.Get(g.Figure); x != nil {
				m.IsOf = *x
			}
		}
		out = append(out, m)
	}
	return out
}
