// Package failures knows how it is told what happens when something goes wrong: a
// table for every vessel, and what is done first. It must not know another page.
package failures

import (
	"slices"
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/upset"
	"etchbound/hazards/vessel"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// Section is the section on failures. What is done first is printed on the bench card.
func Section(d *draft.Draft) document.Section {
	s := from(d).upset("air")
	for i, x := range s.Blocks {
		if l, ok := x.(document.List); ok && l.Ordered && i > 0 { // behind the table of steps
			once := []document.Block{document.Unprinted{Blocks: []document.Block{s.Blocks[i-1], l}},
				document.Paragraph{Text: words.Of("first.on_card"), Tone: document.OnPaper}}
			s.Blocks = append(append(s.Blocks[:i-1:i-1], once...), s.Blocks[i+1:]...)
			break
		}
	}
	if n := len(from(d).SpillLine()); n > 0 { // the emergency pointers and the card print it
		at := len(s.Blocks) - n
		s.Blocks = append(s.Blocks[:at:at], document.Unprinted{Blocks: s.Blocks[at:]})
	}
	return s
}

// Alone is the same in a paper that has no bench card.
func Alone(d *draft.Draft) document.Section { return from(d).upset() }

// upset is what happens when something goes wrong, and what is done first. The figures of
// some families are listed elsewhere.
func (b *builder) upset(elsewhere ...figure.Family) document.Section {
	s := document.Begin("upset")
	s.Blocks = append(s.Blocks, b.failures(elsewhere)...)
	s.Blocks = append(s.Blocks, b.First()...)
	s.Blocks = append(s.Blocks, b.Counts(func(f *figure.Figure) bool {
		return draft.InFamily(f.Quantity, "spill")
	})...)
	s.Blocks = append(s.Blocks, b.NotAssessed("spill")...)
	s.Blocks = append(s.Blocks, b.SpillLine()...)
	return s
}

// failures is a table for every vessel, the findings, and every figure but those of
// families that are listed elsewhere.
func (b *builder) failures(elsewhere []figure.Family) []document.Block {
	switch {
	case b.Review.Case.Brief:
		return []document.Block{document.Paragraph{Text: words.Of("upset.brief"), Tone: document.Warning}}
	case len(b.Review.Courses) == 0:
		return append([]document.Block{document.Paragraph{Text: words.Of("upset.none"), Tone: document.Warning}},
			b.unfollowed()...)
	}
	out := []document.Block{document.Paragraph{Text: words.Of("upset.lead")}}
	for i := range b.Review.Courses {
		out = append(out, b.failureTable(&b.Review.Courses[i])...)
	}
	out = append(out, document.Paragraph{Text: words.Of("upset.note"), Tone: document.Note})
	held := b.Findings(func(f *figure.Finding) bool {
		g, ok := b.ByID[f.Figure]
		return ok && g.Case.Failure != ""
	})
	if len(held) > 0 {
		out = append(out, document.Fold{Summary: words.Of("upset.findings"), Blocks: held})
	}
	for i := range b.Review.Courses {
		out = append(out, b.byLaw(&b.Review.Courses[i])...)
	}
	all := b.Listed(func(f *figure.Figure) bool {
		return f.Case.Failure != "" && !draft.InFamily(f.Quantity, elsewhere...)
	})
	return append(out, document.Unprinted{Blocks: []document.Block{
		document.Fold{Summary: words.Of("upset.ids", len(all.Rows)), Blocks: []document.Block{all}, Away: true}}})
}

// byLaw is every failure by every law, without the conditions, which stand at each figure.
func (b *builder) byLaw(n *course.Course) []document.Block {
	place := figure.Step(n.Stages[0].Step.Number)
	t := document.Table{Caption: words.Of("upset.by_law", place.String()),
		Columns: document.Columns("col.failure", "upset.law", "col.figure", "col.figure", "col.figure", "col.figure")}
	shown := [...]string{"heat.temperature_peak", "gas.hydrogen.peak_rate", "heat.time_to_boil",
		"heat.time_to_maximum_rate"}
	for i, q := range shown {
		t.Columns[i+2].Text = number.LabelOf(q)
	}
	row := func(key, law, says string) {
		row, any := document.Row(draft.CaseName(figure.If(key)), says), false
		for _, q := range shown {
			f := b.ByID[figure.ID{Quantity: q, Place: place, Case: figure.If(key).By(law)}]
			any = any || f != nil
			row = append(row, document.Text(b.failureText(f, place)))
		}
		if any {
			t.Rows = append(t.Rows, row)
		}
	}
	for _, key := range upset.Keys() {
		row(key, "", words.Of("upset.worst_law"))
		for _, law := range laws {
			row(key, string(law), draft.CaseName(figure.By(string(law))))
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{document.Fold{Summary: t.Caption, Blocks: []document.Block{t,
		document.Paragraph{Text: words.Of("upset.worst_note"), Tone: document.Note}}}}
}

// laws are those a failure may be worked out by.
var laws = [...]vessel.Law{vessel.Instantaneous, vessel.SelfAccelerating, vessel.Contracting, vessel.FirstOrder,
	vessel.Measured}

// failureTable has a row for every failure that can happen to a course.
func (b *builder) failureTable(n *course.Course) []document.Block {
	place := figure.Step(n.Stages[0].Step.Number)
	t := document.Table{Caption: words.Of("upset.caption", place.String()), Kind: document.Failing,
		Columns: document.Columns("col.failure", "col.figure", "col.figure", "col.figure", "col.verdict", "upset.prevent")}
	shown := [...]string{"heat.temperature_peak", "gas.hydrogen.peak_rate", "heat.time_to_boil"}
	for i, q := range shown {
		t.Columns[i+1].Text = number.LabelOf(q)
	}
	for _, key := range upset.Keys() {
		row, any := document.Row(draft.CaseName(figure.If(key))), false
		for _, q := range shown {
			f := b.ofFailure(q, place, key)
			any = any || f != nil
			row = append(row, document.Text(b.decides(f, place)))
		}
		if q, ok := comesTo[key]; ok {
			if also := b.comesTo(q, place, key); also != "" {
				if b.ofFailure("heat.time_to_boil", place, key) != nil {
					also = row[3].Text + "; " + also
				}
				row[3], any = document.Text(also), true
			}
		}
		if any {
			t.Rows = append(t.Rows, append(row, b.verdictOf(n, key), document.Text(words.Of("prevent."+key))))
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{t}
}

// verdictOf is the worst verdict on what a failure does to a course or to a container.
func (b *builder) verdictOf(n *course.Course, key string) document.Cell {
	worst, judged := figure.Within, false
	for i := range b.Review.Findings {
		f := &b.Review.Findings[i]
		g, ok := b.ByID[f.Figure]
		if !ok || g.Case.Failure != key {
			continue
		}
		if step, of := g.Place.Step(); of && !slices.ContainsFunc(n.Stages, func(s course.Stage) bool {
			return s.Step.Number == step
		}) {
			continue
		}
		worst, judged = max(worst, f.Verdict), true
	}
	if !judged {
		return document.Text(words.Of("value.dash"))
	}
	return draft.VerdictCell(worst)
}

// comesTo is what counts of a failure instead of the time to boiling.
var comesTo = map[string]string{"lid_closed": "gas.closed.time_to_10_kpa", "hood_fails": "gas.hydrogen.room_time",
	"suck_back": "gas.suck_back", "ignition": "gas.headspace.flammable_from", "moved_unfinished": "gas.closed.pressure"}

// comesTo lists that figure of a failure, at the step or at the containers that
// take part in it.
func (b *builder) comesTo(quantity string, place figure.Place, key string) string {
	if f := b.ofFailure(quantity, place, key); f != nil {
		also := words.Of("upset.where", number.LabelOf(quantity), b.failureText(f, place))
		if key == "suck_back" {
			return words.Of("upset.where", words.Of("upset.sucked"), also)
		}
		return also
	}
	var s []string
	for f := range b.Set.Of(quantity) {
		if f.Case.Failure == key && f.Of().IsZero() {
			s = append(s, words.Of("upset.where", b.PlaceName(f.Place), b.ValueAndRange(f)))
		}
	}
	return strings.Join(s, "; ")
}

// ofFailure is the figure of a failure, the worst of its laws; nil if there is
// none.
func (b *builder) ofFailure(quantity string, place figure.Place, key string) *figure.Figure {
	return b.ByID[figure.ID{Quantity: quantity, Place: place, Case: figure.If(key)}]
}

// decides is what decides of a figure of a failure: of a flow the end where danger lies.
// The range stands with the laws.
func (b *builder) decides(f *figure.Figure, place figure.Place) string {
	if f == nil || f.Value.Unknown() || f.Quantity != "gas.hydrogen.peak_rate" {
		return b.failureText(f, place)
	}
	return words.Of("range.up_to", b.Options.Units.Danger(f))
}

// failureText is a figure of a failure in its cell, with what it comes to.
func (b *builder) failureText(f *figure.Figure, place figure.Place) string {
	switch {
	case f == nil:
		return words.Of("value.dash")
	case f.Value.Unknown():
		return words.Of("value.unknown")
	case f.Quantity == "heat.temperature_peak" && f.Danger().V >= b.BoilsFrom(place):
		if t, capped := b.BoilsAt(f); capped && f.High().V >= t {
			return b.ValueAndRange(f)
		}
		if b.Shut(place) {
			return words.Of("upset.shut", b.ValueAndRange(f))
		}
		return words.Of("upset.boils", b.ValueAndRange(f))
	case f.Quantity == "heat.time_to_boil":
		return b.ToBoiling(f, place, b.ValueAndRange(f))
	}
	return b.ValueAndRange(f)
}

// Only is a review with nothing but the figures of failures, what they are
// held against, and the lines under them.
func Only(r hazards.Review) hazards.Review {
	all := r.Figures
	r.Figures = nil
	keep := map[figure.ID]bool{}
	for i := range all {
		if f := &all[i]; f.Case.Failure != "" || f.Quantity == "heat.time_left" || f.Quantity == "heat.boiling_point" &&
			!f.Place.IsZero() {
			r.Figures = append(r.Figures, *f)
			keep[f.ID] = true
		}
	}
	found := r.Findings
	r.Findings = nil
	for i := range found {
		if keep[found[i].Figure] {
			r.Findings = append(r.Findings, found[i])
		}
	}
	return r
}
