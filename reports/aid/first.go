// Package aid knows what people do first: on the skin and in the eyes, where something
// is spilled, and when something fails. It must not know on which sheet that stands,
// and holds no dose and no time that is safe.
package aid

import (
	"math"
	"slices"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// Aid is what people do first with the material of a review.
type Aid struct{ *draft.Draft }

// Of is the aid of a review.
func Of(d *draft.Draft) *Aid { return &Aid{d} }

// First is what is done first in each step that can run away, and the rules
// that hold in all of them.
func (b *Aid) First() []document.Block {
	t := document.Table{Caption: words.Of("first.caption"),
		Columns: document.Columns("col.step", "first.minutes", "first.water", "first.away")}
	for i := range b.Review.Courses {
		n := &b.Review.Courses[i]
		for j := range n.Stages {
			step := figure.Step(n.Stages[j].Step.Number)
			t.Rows = append(t.Rows, document.Row(step.String(), b.minutesThereAre(step), b.quench(step),
				b.away(step)))
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{t, b.rules(), document.Paragraph{Text: words.Of("first.local"), Tone: document.Note}}
}

// rules are in the order in which they are followed.
func (b *Aid) rules() document.Block {
	l := document.List{Ordered: true}
	for _, k := range [...]string{"stop", "keep", "sash", "cool", "never", "leave"} {
		l.Items = append(l.Items, words.Of("first."+k))
	}
	return l
}

// minutesThereAre is the shortest time to boiling once something in the
// equipment fails in a step, at its dangerous end.
func (b *Aid) minutesThereAre(step figure.Place) string {
	f, ok := b.At("heat.time_left", step)
	switch {
	case !ok || f.Low().Unknown():
		return words.Of("first.unknown")
	case number.Never(f.Quantity, f.Low().V):
		return words.Of("first.more_than_a_day")
	case f.Low().V < 1:
		return b.IfOpen(step, words.Of("first.none"))
	}
	return b.IfOpen(step, b.Options.Units.Danger(f))
}

func (b *Aid) quench(step figure.Place) string {
	f, ok := b.At("heat.quench_water", step)
	if !ok || f.Value.Unknown() {
		return words.Of("first.water_missing")
	}
	for i := range b.Review.Findings {
		if x := &b.Review.Findings[i]; x.Figure == f.ID && x.Limit.Key == limit.Named(limit.Route, "vessel_room") {
			return words.Of("first.water_"+x.Verdict.String(), b.ValueAndRange(f))
		}
	}
	return b.ValueAndRange(f)
}

// nearBoiling is how far below boiling nobody goes near any more, K.
const nearBoiling = 10

func (b *Aid) away(step figure.Place) string {
	t := b.BoilsFrom(step)
	if math.IsNaN(t) {
		return words.Of("first.near_unknown")
	}
	return words.Of("first.near", b.Options.Units.Amount("heat.boiling_point", "", t-nearBoiling, -1))
}

// FirstLines are for a card at the bench, and never for a door: nobody goes in to do them.
// Steps of which the same holds are said together.
func (b *Aid) FirstLines() []document.Block {
	var said, hot []string
	steps := map[string][]int{}
	for i := range b.Review.Courses {
		n := &b.Review.Courses[i]
		for j := range n.Stages {
			number := n.Stages[j].Step.Number
			text := b.ifHot(figure.Step(number))
			if steps[text] == nil {
				said = append(said, text)
			}
			steps[text] = append(steps[text], number)
		}
	}
	if len(said) == 0 {
		return nil
	}
	for _, text := range said {
		of := steps[text]
		slices.Sort(of)
		key := "first.at"
		if of = slices.Compact(of); len(of) > 1 {
			key = "first.at_steps"
		}
		hot = append(hot, words.Of(key, words.List(words.Runs(of)), text))
	}
	return []document.Block{document.Paragraph{Text: strings.Join(hot, " "), Tone: document.Warning}, b.rules()}
}

// ifHot is how long there may be in a step, and when to stay away from it.
func (b *Aid) ifHot(step figure.Place) string {
	return words.Of("first.hot", b.minutesThereAre(step), b.away(step))
}
