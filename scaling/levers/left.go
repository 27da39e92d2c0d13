package levers

import (
	"slices"

	"etchbound/chemicals/datum"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/schemas/edit"
	"etchbound/schemas/quantity"
)

// Left is what still exceeds: of a quantity, an agent and a limit the worst.
type Left struct {
	Finding figure.Finding
	Figure  figure.Figure // what it was judged by
	Others  int           // findings of the same at other places and by other laws
	Why     phrase.Phrase // why no lever reaches it
	Batch   string        // a smaller batch at whose best estimate it no longer exceeds; empty where none was found
	Data    []datum.ID    // ids of the data on whose ends it stands, where only its dangerous end exceeds
}

// Failure is the key of the failure that it is of; empty where it is of the route as it
// is written.
func (l *Left) Failure() string { return l.Finding.Figure.Case.Failure }

// matter is what findings have in common that are told once.
type matter struct {
	quantity, agent, failure string
	limit                    limit.Key
}

// remains lists what exceeds in the review of the changed file, what is over its best
// estimate first.
func (f *Found) remains() {
	figs := figure.NewSet(f.After.Figures)
	smaller := f.smaller()
	at := map[matter]int{}
	for i := range f.After.Findings {
		x := &f.After.Findings[i]
		if x.Verdict != figure.Exceeds {
			continue
		}
		m := matter{x.Figure.Quantity, x.Figure.Agent, x.Figure.Case.Failure, x.Limit.Key}
		if k, there := at[m]; there {
			l := &f.Left[k]
			l.Others++
			if !worse(x, &l.Finding) {
				continue
			}
			l.Finding = *x
			continue
		}
		at[m] = len(f.Left)
		f.Left = append(f.Left, Left{Finding: *x})
	}
	for i := range f.Left {
		l := &f.Left[i]
		of := l.Finding.Figure
		if !l.Finding.Of.IsZero() {
			of = l.Finding.Of
		}
		if x := figs.Get(of); x != nil {
			l.Figure = *x
		}
		l.Batch = enough(smaller, &l.Finding)
		l.Data = f.standsOn(of)
		l.Why = l.why(f.Written.Case.Route)
	}
	slices.SortStableFunc(f.Left, func(a, b Left) int { return rank(&a) - rank(&b) })
}

// rank is the order in which what is left is told.
func rank(l *Left) int {
	switch {
	case l.Failure() != "":
		return 3
	case l.Finding.Surely >= figure.BestEstimate:
		return 0
	case l.Finding.Surely == figure.DangerousEnd:
		return 1
	}
	return 2
}

// worse reports whether a finding is told before another of the same matter.
func worse(x, than *figure.Finding) bool {
	if x.Surely != than.Surely {
		return x.Surely > than.Surely
	}
	return x.Margin < than.Margin
}

// standsOn are the data on whose ends the dangerous end of a figure stands.
func (f *Found) standsOn(id figure.ID) []datum.ID {
	_, stood, there := f.After.Leads.Case(f.After.Case, f.After.Member(id))
	var out []datum.ID
	for i := range stood {
		if there && len(out) < 3 {
			out = append(out, stood[i].ID)
		}
	}
	return out
}

// site are the quantities of what stands in the room or comes to it, whatever the route.
var site = map[string]bool{"delivery": true, "yard": true}

// rated reports whether a figure is of a place of a route that has a rating, and a larger
// container would help it: that is one with a rating of its own.
func rated(r *route.Route, id figure.ID) bool {
	key := id.Place.Key()
	if n, ok := id.Place.Step(); ok && n <= len(r.Steps) {
		key = r.Steps[n-1].Works()
	}
	p := r.Place(key)
	return p != nil && p.Rating.Set && slices.Contains(lever("capacity").helps, id.Quantity)
}

// why says why no lever reaches what is left of a route.
func (l *Left) why(r *route.Route) phrase.Phrase {
	x := &l.Finding
	switch {
	case l.Failure() != "":
		return phrase.Of("left.failure")
	case site[x.Figure.Place.Key()]:
		return phrase.Of("left.site")
	case rated(r, x.Figure):
		return phrase.Of("left.rating")
	}
	if p := meeting.Named(x.Figure.Agent); p != nil && x.Figure.Quantity == "meeting.pair" {
		if _, wall := p.Wall(); wall {
			return phrase.Of("left.material")
		}
	}
	for i := range rows() {
		r := &rows()[i]
		told := !r.written && r.name != "batch" && (r.name != "lid" || x.Limit.ID == "technical_limit")
		if told && slices.Contains(r.helps, x.Figure.Quantity) {
			return phrase.Of("left." + r.name)
		}
	}
	switch {
	case x.Surely < figure.BestEstimate:
		return phrase.Of("left.measurement")
	case l.Batch != "":
		return phrase.Of("left.batch")
	}
	return phrase.Of("left.etchant")
}

// enough is the largest of some smaller batches at which what exceeds at its best estimate is
// told of and no longer does; empty where there is none, and of what does not exceed there.
func enough(smaller []sized, x *figure.Finding) string {
	for _, s := range smaller {
		if over, told := s.over[x.ID()]; told && !over && x.Surely >= figure.BestEstimate {
			return s.batch
		}
	}
	return ""
}

// sized is a smaller batch with whether what is told of it exceeds at its best estimate, or
// is not known.
type sized struct {
	batch string
	over  map[figure.FindingID]bool
}

// smaller are the changed route at smaller batches, the largest first.
func (f *Found) smaller() []sized {
	c := f.Changed.Case
	if c.Route.Precursor == nil || !c.Route.Precursor.Mass.Set {
		return nil
	}
	var out []sized
	for _, k := range lever("batch").values {
		grams := c.Route.Precursor.Mass.In("g") / k
		r := c.Route.Scaled(quantity.Of(grams, "g", quantity.Mass))
		at, err := route.NewCase(r, c.Site, c.Limits)
		if err != nil {
			return out
		}
		at.Brief = true
		all, err := hazards.Centre(at)
		if err != nil {
			return out
		}
		s := sized{r.BatchText, map[figure.FindingID]bool{}}
		for i := range all {
			s.over[all[i].ID()] = all[i].Verdict.Rank() >= figure.Exceeds.Rank()
		}
		out = append(out, s)
	}
	return out
}

// marked is the text of the changed file with what it is at its head and in its title.
// What a paper says of the route as it was it no longer says of all of it.
func (f *Found) marked() []byte {
	const says = "proposed, not tried"
	text := f.Changed.Text
	r := f.Written.Case.Route
	edits := []edit.Edit{{Path: "title", To: edit.Quoted(r.Written + " (" + says + ")")}}
	if r.Basis.Status != "mixed" && r.Basis.Status != "invented" {
		edits = append(edits, edit.Edit{Path: "basis.status", To: "mixed", Note: "was " + r.Basis.Status})
	}
	for _, e := range edits {
		if changed, err := edit.Apply(text, e); err == nil {
			text = changed
		}
	}
	return edit.Head(text, "Proposed, not tried: nobody has run, reviewed or signed this version. Its changed lines are",
		"marked. Less is exceeded by computation; what is left, and what nobody assessed, stands in its",
		"review. Have it reviewed like a new route.", "")
}
