package draft

import (
	_ "embed"
	"slices"
	"sync"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/words"
	tables "etchbound/schemas/columns"
)

//go:embed matrices.csv
var matricesCSV string

// A matrix is some quantities side by side, with a row for each place or each agent.
type matrix struct {
	key, rows  string
	quantities []string
}

var matrices = sync.OnceValue(func() []matrix {
	var out []matrix
	tables.Must("reports/draft/matrices.csv", matricesCSV, func(r tables.Row) struct{} {
		key, rows, quantity := r.Named("matrix"), r.Choice("rows", "place", "agent"), r.Named("quantity")
		if n := len(out); n == 0 || out[n-1].key != key {
			out = append(out, matrix{key: key, rows: rows})
		}
		m := &out[len(out)-1]
		m.quantities = append(m.quantities, quantity)
		return struct{}{}
	})
	return out
})

// inMatrix reports whether a quantity stands in one of the matrices.
func inMatrix(quantity string) bool {
	return slices.ContainsFunc(matrices(), func(m matrix) bool { return slices.Contains(m.quantities, quantity) })
}

// grid is a matrix on its way to a table: what stands in each row and column.
type grid struct {
	rows, columns []string
	kinds         []figure.ID // of the columns, without a place
	cells         map[[2]string]*line
}

func (g *grid) add(row string, kind figure.ID, place, value string) {
	column := kind.String()
	if !slices.Contains(g.rows, row) {
		g.rows = append(g.rows, row)
	}
	if !slices.Contains(g.columns, column) {
		g.columns, g.kinds = append(g.columns, column), append(g.kinds, kind)
	}
	at := [2]string{row, column}
	if g.cells[at] == nil {
		g.cells[at] = &line{}
	}
	g.cells[at].add(place, value)
}

// matricesOf are the matrices of the figures that want picks, each number the worst end
// of its range by the worst law, with its verdict where it is not within every limit.
func (b *Draft) matricesOf(want func(*figure.Figure) bool) []document.Block {
	worst, beside := b.verdicts(), b.beside(want)
	var out []document.Block
	for _, m := range matrices() {
		g := grid{cells: map[[2]string]*line{}}
		for _, q := range m.quantities {
			for f := range b.Set.Of(q) {
				if want(f) && b.shown(f.ID) == f.ID {
					b.place(&g, &m, f, beside[kindOf(f.ID)].Danger(f)+verdictAfter(worst[f.ID]))
				}
			}
		}
		if len(g.rows) > 0 {
			out = append(out, g.table(&m))
		}
	}
	return out
}

// place puts a figure where it belongs in a matrix.
func (b *Draft) place(g *grid, m *matrix, f *figure.Figure, value string) {
	kind := f.ID
	kind.Place = figure.Place{}
	if m.rows == "place" {
		if _, repeats := b.ByID[f.Of()]; f.Place.IsZero() && repeats || f.Case.Over != 0 {
			return // the place it repeats has a row, and a mean over some time is of no step
		}
		g.add(words.OrNone(b.placeOf(f)), kind, "", value)
		return
	}
	kind.Agent = ""
	g.add(words.OrNone(AgentName(f.Quantity, f.Agent)), kind, b.placeOf(f), value)
}

// table is the grid as a table. The columns of one quantity stand side by side.
func (g *grid) table(m *matrix) document.Table {
	t := document.Table{Caption: words.Of("matrix." + m.key), Columns: document.Columns("matrix." + m.rows)}
	for i := range g.columns {
		t.Columns = append(t.Columns, document.Column{Text: glanceName(g.kinds[i])})
	}
	for _, r := range g.rows {
		row := document.Row(r)
		for _, c := range g.columns {
			text := words.Of("value.dash")
			if l := g.cells[[2]string{r, c}]; l != nil {
				text = l.text()
			}
			row = append(row, document.Text(text))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
