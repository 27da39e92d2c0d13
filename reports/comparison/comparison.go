// Package comparison knows how routes are put side by side, without a score. It must
// not know another page.
package comparison

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/record"
	"etchbound/reports/selection"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// Format names the shape of the JSON of a comparison.
const Format = "etchbound.compare/1"

// letter names a route of a comparison.
func letter(i int) string { return string(rune('A' + i)) }

// Build lays out routes side by side. There is no score: a row says
// whether it tells the routes apart, and what one gives less of another may give
// more of.
func Build(c scaling.Comparison, o draft.Options) document.Document {
	var b []*builder
	for i := range c.Reviews {
		b = append(b, newBuilder(&c.Reviews[i], o))
	}
	d := document.Document{Title: words.Of("compare.title"), Lang: words.Of("lang"), Paper: o.Paper, Flows: true,
		Control: controlOf(&c, o)}
	d.Sections = []document.Section{{Key: "page-1", Title: d.Title,
		Blocks: []document.Block{document.Paragraph{Text: words.Of("deference.line")}, compareRoutes(b, &c),
			document.Paragraph{Text: words.Of("compare.lead")},
			compareTrade(&c)}},
		{Key: "compare-figures", Title: words.Of("compare.figures"),
			Blocks: []document.Block{compareTable(&c, o.Units),
				document.Paragraph{Text: words.Of("compare.note"), Tone: document.Note}}},
		{Key: "compare-findings", Title: words.Of("compare.findings"), Blocks: compareWorst(b, &c)}}
	return d
}

// controlOf is the control line of a comparison.
func controlOf(c *scaling.Comparison, o draft.Options) string {
	var routes []string
	for i := range c.Reviews {
		routes = append(routes, c.Reviews[i].Case.Route.Digest)
	}
	if len(routes) == 0 {
		return draft.ControlOf(o, nil, nil)
	}
	return draft.ControlOf(o, c.Reviews[0].Case.Site, c.Reviews[0].Case.Limits, routes...)
}

// compareRoutes says which route is which.
func compareRoutes(b []*builder, c *scaling.Comparison) document.Block {
	t := document.Table{Caption: words.Of("compare.routes"), Columns: document.Columns("compare.letter", "compare.route",
		"compare.batch",
		"compare.product", "compare.hf", "compare.hours", "compare.alone", "compare.digest")}
	for i := range b {
		r := &c.Reviews[i]
		attended, alone := scaling.Hours(r.Case.Route)
		hf := words.Of("compare.no_hf")
		if b[i].Tags.Has("hf") {
			hf = words.Of("compare.is_hf")
		}
		t.Rows = append(t.Rows, []document.Cell{document.Text(letter(i)), document.Text(b[i].Title()),
			document.Text(words.OrDash(r.Case.Route.BatchText)),
			document.Text(number.Said(c.Product[i], 3, "g")), document.Text(hf),
			document.Text(number.Nearest(attended, 3)), document.Text(number.Nearest(alone, 3)),
			document.Code(b[i].DigestText())})
	}
	return t
}

// rowName is a quantity of a comparison with what it is per.
func rowName(r *scaling.Row) string {
	s := number.LabelOf(r.Quantity)
	if r.Agent != "" {
		s += ", " + draft.AgentName(r.Quantity, r.Agent)
	}
	if r.PerGram {
		s += ", " + words.Of("compare.per_gram")
	}
	return s
}

func compareTable(c *scaling.Comparison, u number.Units) document.Block {
	t := document.Table{Caption: words.Of("compare.caption"), Columns: document.Columns("col.figure")}
	for i := range c.Reviews {
		t.Columns = append(t.Columns, document.Column{Text: letter(i), Right: true})
	}
	t.Columns = append(t.Columns, document.Column{Text: words.Of("compare.told")})
	for i := range c.Rows {
		r := &c.Rows[i]
		row := document.Row(rowName(r))
		for k := range r.Cells {
			row = append(row, document.Text(compareCell(u.Of(r.Quantity, r.Agent), &r.Cells[k])))
		}
		t.Rows = append(t.Rows, append(row, document.Text(toldText(r))))
	}
	return t
}

func compareCell(t number.Thing, x *scaling.RowCell) string {
	switch {
	case !x.There:
		return words.Of("compare.none")
	case math.IsNaN(x.Value):
		return words.Of("value.unknown")
	}
	s := t.Whole(number.Ends{Value: x.Value, Low: x.Low, High: x.High})
	if !math.IsNaN(x.P05) && !math.IsNaN(x.P95) {
		s += "; " + words.Of("compare.drawn", t.Bound(x.P05, 0), t.Bound(x.P95, 0))
	}
	return s
}

// toldText says what a row tells: which has less than which, or that it does not.
func toldText(r *scaling.Row) string {
	switch r.Told {
	case scaling.Unknown:
		return words.Of("compare.unknown")
	case scaling.Overlap:
		return words.Of("compare.overlap")
	}
	var s []string
	for _, i := range r.Least {
		s = append(s, letter(i))
	}
	return strings.Join(s, " < ")
}

// compareTrade names what each route has least of, where that can be told.
func compareTrade(c *scaling.Comparison) document.Block {
	l := document.List{}
	q := map[string]figure.Quantity{}
	for i := range c.Reviews {
		var less []string
		for k := range c.Rows {
			r := &c.Rows[k]
			if _, there := q[r.Quantity]; !there {
				q[r.Quantity], _ = figure.Lookup(r.Quantity)
			}
			if r.Told == scaling.Apart && r.PerGram == perGramToo(r.Quantity, c) && r.Least[0] == i &&
				q[r.Quantity].Danger != figure.Low && !someUnknown(r.Quantity, c) {
				less = append(less, leastName(r))
			}
		}
		if less != nil {
			l.Items = append(l.Items, words.Of("compare.least", letter(i), strings.Join(less, ", ")))
		}
	}
	if l.Items == nil {
		return document.Paragraph{Text: words.Of("compare.nothing_told")}
	}
	return l
}

// leastName is a quantity of a comparison with its substance and what it is per.
func leastName(r *scaling.Row) string {
	s := number.LabelOf(r.Quantity)
	if r.Agent != "" {
		s += " (" + draft.AgentName(r.Quantity, r.Agent) + ")"
	}
	if r.PerGram {
		s += " " + words.Of("compare.per_gram")
	}
	return s
}

// someUnknown reports whether a quantity is not known of some substance: less of
// another is then no less of it.
func someUnknown(quantity string, c *scaling.Comparison) bool {
	for i := range c.Rows {
		if c.Rows[i].Quantity == quantity && c.Rows[i].Agent != "" && c.Rows[i].Told == scaling.Unknown {
			return true
		}
	}
	return false
}

// perGramToo reports whether a quantity stands per gram of product as well, which
// is what routes of other batches are told apart by.
func perGramToo(quantity string, c *scaling.Comparison) bool {
	for i := range c.Rows {
		if c.Rows[i].Quantity == quantity && c.Rows[i].PerGram {
			return true
		}
	}
	return false
}

// compareWorst counts the findings of each route and names its worst.
func compareWorst(b []*builder, c *scaling.Comparison) []document.Block {
	t := document.Table{Caption: words.Of("compare.counts"),
		Columns: document.Right(document.Columns("compare.letter", "compare.exceeds",
			"compare.unknowns", "compare.near", "compare.within", "compare.worst"), 1, 2, 3, 4)}
	for i := range b {
		n := scaling.Verdicts(&c.Reviews[i])
		var names []string
		worst := selection.Worst(b[i].Draft)
		for _, f := range worst[:min(len(worst), 4)] {
			names = append(names, b[i].NameOf(f.Figure)+": "+draft.VerdictName(f.Verdict))
		}
		t.Rows = append(t.Rows, document.Row(letter(i), strconv.Itoa(n[figure.Exceeds]),
			strconv.Itoa(n[figure.UnknownVerdict]), strconv.Itoa(n[figure.Near]),
			strconv.Itoa(n[figure.Within]), strings.Join(names, "; ")))
	}
	return []document.Block{t, document.Paragraph{Text: words.Of("compare.no_count"), Tone: document.Note}}
}

type Shape struct {
	record.Opening
	Routes []compareRouteJSON `json:"routes"`
	Rows   []compareRowJSON   `json:"rows"`
}

type compareRouteJSON struct {
	Letter   string         `json:"letter"`
	Title    string         `json:"title"`
	Digest   string         `json:"digest"`
	Batch    string         `json:"batch"`
	Product  record.Nine    `json:"product_g"`
	HF       bool           `json:"hf_present"`
	Attended record.Nine    `json:"hours_attended"`
	Alone    record.Nine    `json:"hours_not_said_to_be_attended"`
	Verdicts map[string]int `json:"findings"`
}

type compareRowJSON struct {
	Quantity string            `json:"quantity"`
	Agent    string            `json:"agent"`
	Unit     string            `json:"unit"`
	PerGram  bool              `json:"per_gram_of_product"`
	Cells    []compareCellJSON `json:"cells"`
	Told     string            `json:"told"`
	Rising   []string          `json:"rising"`
}

type compareCellJSON struct {
	Figure string      `json:"figure"`
	There  bool        `json:"there"`
	Value  record.Nine `json:"value"`
	Low    record.Nine `json:"low"`
	High   record.Nine `json:"high"`
	P05    record.Nine `json:"p05"`
	P95    record.Nine `json:"p95"`
}

var toldNames = [...]string{"not told apart", "told apart", "not known"}

// JSON writes a comparison for programs.
func JSON(w io.Writer, c scaling.Comparison, o draft.Options) error {
	out := Shape{Opening: record.OpeningOf(Format, o, controlOf(&c, o)),
		Routes: []compareRouteJSON{}, Rows: []compareRowJSON{}}
	for i := range c.Reviews {
		r := &c.Reviews[i]
		attended, alone := scaling.Hours(r.Case.Route)
		x := compareRouteJSON{letter(i), r.Case.Route.Title, r.Case.Route.Digest, r.Case.Route.BatchText,
			record.Nine(c.Product[i]), newBuilder(r, o).Tags.Has("hf"), record.Nine(attended), record.Nine(alone),
			map[string]int{}}
		for v, n := range scaling.Verdicts(r) {
			x.Verdicts[v.String()] = n
		}
		out.Routes = append(out.Routes, x)
	}
	for i := range c.Rows {
		out.Rows = append(out.Rows, compareRowOf(&c.Rows[i]))
	}
	return record.Write(w, out)
}

func compareRowOf(r *scaling.Row) compareRowJSON {
	x := compareRowJSON{r.Quantity, r.Agent, number.UnitOf(r.Quantity), r.PerGram, []compareCellJSON{}, toldNames[r.Told],
		[]string{}}
	for k := range r.Cells {
		y := &r.Cells[k]
		z := compareCellJSON{y.Figure.String(), y.There, record.Nine(y.Value), record.Nine(y.Low), record.Nine(y.High),
			record.Nine(y.P05), record.Nine(y.P95)}
		if !y.There {
			none := record.Nine(math.NaN())
			z.Value, z.Low, z.High, z.P05, z.P95 = none, none, none, none, none
		}
		x.Cells = append(x.Cells, z)
	}
	for _, k := range r.Least {
		x.Rising = append(x.Rising, letter(k))
	}
	return x
}

var Columns = []string{"route", "title", "quantity", "agent", "per_gram_of_product", "figure", "value", "low",
	"high",
	"unit", "told"}

// CSV writes a comparison, one value a row.
func CSV(w io.Writer, c scaling.Comparison) error {
	out := csv.NewWriter(w)
	out.Write(Columns)
	for i := range c.Rows {
		r := &c.Rows[i]
		for k := range r.Cells {
			x := &r.Cells[k]
			v, lo, hi := "", "", ""
			if x.There {
				v, lo, hi = record.Shortest(x.Value), record.Shortest(x.Low), record.Shortest(x.High)
			}
			out.Write([]string{letter(k), record.Guard(c.Reviews[k].Case.Route.Title), r.Quantity, r.Agent,
				strconv.FormatBool(r.PerGram), record.Guard(x.Figure.String()), v, lo, hi, record.Guard(number.UnitOf(r.Quantity)),
				toldNames[r.Told]})
		}
	}
	out.Flush()
	return out.Error()
}
