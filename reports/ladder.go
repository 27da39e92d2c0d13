package reports

import (
	"io"

	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/scaling"
)

// ladderFigures are the main figures of a ladder, in the order of its columns.
var ladderFigures = []string{"gas.hydrogen.total", "heat.etch.total", "heat.adiabatic_rise",
	"heat.mtsr", "fluoride.hf_equivalent", "wash.liquor", "neutralise.mass", "neutralise.dilution_water"}

// Ladder writes the main figures of a route at many sizes as a Markdown table,
// central values. A quantity the route has no figure of is left out.
func Ladder(w io.Writer, c route.Case, rungs []scaling.Rung) error {
	t := Table{Caption: say("ladder.caption"), Columns: []Column{{Text: say("ladder.batch"), RowHead: true, Right: true}}}
	var names []string
	for _, name := range ladderFigures {
		q, _ := figure.Lookup(name)
		for _, r := range rungs {
			if _, ok := r.Figure(name); ok {
				names = append(names, name)
				t.Columns = append(t.Columns, Column{Text: q.Label + ", " + q.Unit, Right: true})
				break
			}
		}
	}
	for _, r := range rungs {
		row := []Cell{text(r.Batch.Format("g", 4))}
		for _, name := range names {
			q, _ := figure.Lookup(name)
			cell := text(say("value.unknown"))
			if f, ok := r.Figure(name); ok && !f.Value.Unknown() {
				cell = text(nearest(f.Value.V, q.Digits))
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, row)
	}
	return Markdown(w, Document{Title: c.Route.Title, Lang: "en", Sections: []Section{{Key: "ladder", Title: say("ladder.title"),
		Blocks: []Block{Paragraph{Text: say("ladder.intro")}, t, Paragraph{Text: say("deference.line"), Tone: Note}}}}})
}
