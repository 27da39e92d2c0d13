package review

import (
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling/keeping"
)

// Keeping is the section on how product can be kept, with how it goes over time where the
// ways are traced.
func Keeping(d *draft.Draft, ways []keeping.Way) document.Section {
	b := from(d)
	s := document.Begin("keeping")
	s.Blocks = b.kept(ways)
	if s.Blocks == nil {
		s.Blocks = []document.Block{document.Paragraph{Text: words.Of("keep.none"), Tone: document.Warning}}
	}
	return s
}

// keeping is how the product of each place can be kept, side by side; nothing where none is
// stored.
func (b *builder) keeping() []document.Block {
	if b.Review.Case.Route == nil || b.Review.Case.Route.Text == "" ||
		!slices.ContainsFunc(b.Review.Figures, func(f figure.Figure) bool { return f.Quantity == "store.shelf_life" }) {
		return nil
	}
	ways, err := keeping.Of(b.Review.Case)
	if err != nil {
		return []document.Block{document.Paragraph{Text: words.Of("keep.failed", err.Error()), Tone: document.Warning}}
	}
	keeping.TraceDrawn(ways)
	return b.kept(ways)
}

// kept are ways place by place; nothing where there is none.
func (b *builder) kept(ways []keeping.Way) []document.Block {
	var out []document.Block
	for len(ways) > 0 {
		n := slices.IndexFunc(ways, func(w keeping.Way) bool { return w.Place != ways[0].Place })
		if n < 0 {
			n = len(ways)
		}
		out = append(out, b.keptIn(ways[:n])...)
		ways = ways[n:]
	}
	if out == nil {
		return nil
	}
	out = append([]document.Block{document.Paragraph{Text: words.Of("keep.lead")}}, out...)
	return append(out, watch()...)
}

// keptIn are the ways of one place: table, pictures, additives and edits.
func (b *builder) keptIn(ways []keeping.Way) []document.Block {
	place := b.PlaceName(figure.At(ways[0].Place))
	t := document.Table{Caption: words.Of("keep.caption", place),
		Columns: document.Columns("keep.condition", "keep.days", "keep.pressure", "col.verdict", "keep.hazard")}
	edits := document.Table{Caption: words.Of("keep.edits", place),
		Columns: document.Columns("keep.condition", "keep.edit")}
	for i := range ways {
		w := &ways[i]
		row := document.Row(keptBy(w), b.daysOf(w), b.pressureOf(w), "", keptHazard(w))
		if w.Judged {
			row[3] = draft.VerdictCell(w.Verdict)
		}
		t.Rows = append(t.Rows, row)
		if len(w.Edits) > 0 && w.Why.IsZero() {
			edits.Rows = append(edits.Rows, []document.Cell{document.Text(keptBy(w)),
				{Text: strings.Join(saidOf(w), "; "), Code: true}})
		}
	}
	out := []document.Block{t}
	out = append(out, b.keptPicture(ways)...)
	out = append(out, keptCurves(ways)...)
	out = append(out, b.additives(ways, place)...)
	return append(out, document.Fold{Summary: words.Of("keep.as_file"), Blocks: []document.Block{edits}})
}

// saidOf are the edits of a way as the file would read.
func saidOf(w *keeping.Way) []string {
	out := []string{}
	for _, e := range w.Edits {
		if s := keeping.Says(e); !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

// keptWaste is what an additive does to the waste.
func keptWaste(slug string) string {
	if key := "keep.waste." + slug; words.Has(key) {
		return words.Of(key)
	}
	return words.Of("value.unknown")
}

// keptBy is the name of a condition, or what a row that has none is called in the table.
func keptBy(w *keeping.Way) string {
	if key := "keep.is." + w.Condition; words.Has(key) {
		return words.Of(key)
	}
	return w.Condition
}

// keptHazard is what a condition brings with it; of one without a sentence it is not known.
func keptHazard(w *keeping.Way) string {
	if key := "keep.brings." + w.Condition; words.Has(key) {
		return words.Of(key)
	}
	return words.Of("value.unknown")
}

// daysOf is the time to a loss of 10, 20 and 50 %, as expected, and the earliest to 20 %.
func (b *builder) daysOf(w *keeping.Way) string {
	if !w.Why.IsZero() {
		return words.Say(w.Why)
	}
	var days []any
	for _, d := range w.Days {
		days = append(days, daysText(d.V))
	}
	if number.Never("store.shelf_life", w.Life.Low().V) {
		return words.Of("keep.to_late", days...)
	}
	return words.Of("keep.to", append(days, daysText(w.Life.Low().V))...)
}

// daysText is a time in d to two digits; what takes ten years is said so.
func daysText(d float64) string {
	switch {
	case d != d:
		return words.Of("value.unknown")
	case number.Never("store.shelf_life", d):
		return words.Of("keep.years")
	}
	return number.Nearest(d, 2)
}

// pressureOf is the pressure at the end of the store, and when it is at 10 kPa.
func (b *builder) pressureOf(w *keeping.Way) string {
	switch {
	case !w.Why.IsZero():
		return words.Of("value.dash")
	case w.Pressure == nil:
		return words.Of("keep.open")
	}
	key := "keep.at"
	if w.Supposed {
		key = "keep.if_shut"
	}
	s := words.Of(key, b.ValueText(w.Pressure), b.Options.Units.Danger(w.Pressure))
	switch {
	case w.Soon == nil || w.Soon.Value.Unknown():
		return s
	case w.Soon.Danger().V <= 0:
		return s + words.Of("keep.at_once", b.ValueText(w.Soon))
	}
	return s + words.Of("keep.soon", b.ValueText(w.Soon), b.Options.Units.Danger(w.Soon))
}

// keptPicture draws the days to a fifth lost and the pressure by condition.
func (b *builder) keptPicture(ways []keeping.Way) []document.Block {
	life := chart.Bars{ID: "keep-life-" + ways[0].Place, Title: words.Of("keep.bars_life"),
		Alt: words.Of("keep.bars_life"),
		X:   chart.Axis{Label: words.Of("keep.axis_life"), Unit: "d", Log: true}}
	press := chart.Bars{ID: "keep-pressure-" + ways[0].Place, Title: words.Of("keep.bars_pressure"),
		Alt: words.Of("keep.bars_pressure"), X: chart.Axis{Label: words.Of("keep.axis_pressure"), Unit: "kPa", Log: true}}
	lives := document.Table{Columns: document.Columns("keep.condition", "col.value_range")}
	pressures := lives
	for i := range ways {
		w := &ways[i]
		if !w.Why.IsZero() {
			continue
		}
		for _, x := range []struct {
			c *chart.Bars
			t *document.Table
			f *figure.Figure
		}{{&life, &lives, w.Life}, {&press, &pressures, w.Pressure}} {
			if r, ok := b.keptBar(w, x.f); ok {
				x.c.Rows = append(x.c.Rows, r)
				x.t.Rows = append(x.t.Rows, document.Row(r.Label, r.Text))
			}
		}
	}
	return append(bars(life, lives), bars(press, pressures)...)
}

// leastDrawn is the least value that is drawn on a logarithmic axis.
const leastDrawn = 0.01

// keptBar is what is expected, with the end where danger lies.
func (b *builder) keptBar(w *keeping.Way, f *figure.Figure) (chart.Row, bool) {
	if f == nil || f.Value.Unknown() || f.Danger().Unknown() {
		return chart.Row{}, false
	}
	at, end := max(f.Value.V, leastDrawn), max(f.Danger().V, leastDrawn)
	return chart.Row{Label: keptBy(w), Text: b.ValueText(f),
		Parts: []chart.Part{{From: min(at, end), To: max(at, end), Mark: at}}}, true
}

// additives is the mass of each additive for the batch, its own gas and what it does to the
// waste.
func (b *builder) additives(ways []keeping.Way, place string) []document.Block {
	t := document.Table{Caption: words.Of("keep.additives", place),
		Columns: document.Columns("keep.additive", "keep.mass", "keep.own_gas", "keep.waste")}
	seen := map[string]bool{}
	for i := range ways {
		for _, a := range ways[i].Additives {
			if seen[a.Of.Slug] {
				continue
			}
			seen[a.Of.Slug] = true
			gas := words.Of("value.unknown")
			if !a.Own.Unknown() {
				gas = words.Of("keep.up_to", number.Nearest(a.Own.V, 2))
			}
			t.Rows = append(t.Rows, document.Row(a.Of.Name, number.Thing{Unit: "g"}.Bound(a.Mass.V, 0), gas,
				keptWaste(a.Of.Slug)))
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{t}
}

// signs are what to look for while product is kept: the sign, what it tells, when it goes to
// waste.
func signs() [][3]string {
	var out [][3]string
	for i := 1; words.Has("keep.sign." + strconv.Itoa(i)); i++ {
		n := strconv.Itoa(i)
		out = append(out, [3]string{words.Of("keep.sign." + n), words.Of("keep.look." + n), words.Of("keep.discard." + n)})
	}
	return out
}

// watch is the table of signs.
func watch() []document.Block {
	t := document.Table{Caption: words.Of("keep.watch"),
		Columns: document.Columns("keep.sign", "keep.look", "keep.discard")}
	for _, s := range signs() {
		t.Rows = append(t.Rows, document.Row(s[0], s[1], s[2]))
	}
	return []document.Block{t, document.Paragraph{Text: words.Of("keep.left_out"), Tone: document.Note},
		document.Paragraph{Text: words.Of("keep.note"), Tone: document.Note}}
}
