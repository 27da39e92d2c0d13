package book

import (
	"bufio"
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
	"etchbound/schemas/quantity"
)

// Explain writes how one figure was made: its line, the lines that one was made
// from, and so on down to data and to what the route states. A line used twice
// is shown once. An id that is not in the review is an error that offers the
// nearest ones.
func Explain(w io.Writer, r hazards.Review, figureID string) error {
	b := newBuilder(&r, draft.Options{})
	id, err := figure.Parse(figureID)
	f, ok := b.ByID[id]
	if err != nil || !ok {
		return fmt.Errorf("%s", words.Of("explain.unknown", figureID, strings.Join(nearestOf(figureID, b.ids(), 3), ", ")))
	}
	e := newExplainer(b, w)
	e.centre(f)
	hazards.Ends(&r, []figure.ID{f.ID}, e.end)
	return e.w.Flush()
}

func newExplainer(b *builder, w io.Writer) *explainer {
	e := &explainer{b: b, w: bufio.NewWriter(w), data: map[datum.ID]*chemicals.Datum{}}
	for i := range b.Review.Used {
		e.data[b.Review.Used[i].ID] = &b.Review.Used[i]
	}
	return e
}

// centre shows a figure and the working of its best estimate.
func (e *explainer) centre(f *figure.Figure) {
	e.shown = map[int]bool{}
	e.head(f)
	e.tree(f)
}

// ids are the ids of the figures in review order.
func (b *builder) ids() []string {
	out := make([]string, len(b.Review.Figures))
	for i := range b.Review.Figures {
		out[i] = b.Review.Figures[i].ID.String()
	}
	return out
}

// nearestOf picks the n texts nearest to s, nearest first; one that contains s
// stands before one that does not.
func nearestOf(s string, from []string, n int) []string {
	from = slices.Clone(from)
	score := func(t string) int {
		d := quantity.Distance(s, t)
		if !strings.Contains(t, s) {
			d += len(s)
		}
		return d
	}
	scores := make(map[string]int, len(from))
	for _, t := range from {
		scores[t] = score(t)
	}
	slices.SortStableFunc(from, func(a, b string) int { return cmp.Compare(scores[a], scores[b]) })
	return from[:min(n, len(from))]
}

type explainer struct {
	b     *builder
	w     *bufio.Writer
	sheet *working.Sheet
	shown map[int]bool
	data  map[datum.ID]*chemicals.Datum
}

func (e *explainer) print(depth int, s string) {
	e.w.WriteString(strings.Repeat("  ", depth) + s + "\n")
}

func (e *explainer) head(f *figure.Figure) {
	e.print(0, f.ID.String())
	e.print(0, e.b.FigureName(f))
	e.print(0, number.Units{}.Whole(f)+", "+number.StatusText(f.Value.Status))
	if q, ok := figure.Lookup(f.Quantity); ok && q.Definition != "" {
		e.print(0, words.Of("explain.definition", q.Definition))
	}
	if c := e.b.Conditions(f); c != "" {
		e.print(0, words.Of("explain.conditions", c))
	}
	if !f.Of().IsZero() {
		e.print(0, words.Of("explain.of", f.Of().String()))
	}
	e.print(0, "")
}

func (e *explainer) tree(f *figure.Figure) {
	e.sheet = e.b.Review.Sheet
	if n := f.Value.Line(); e.sheet != nil && n > 0 && n <= len(e.sheet.Lines) {
		e.line(0, n)
		return
	}
	e.print(0, words.Of("sheets.none"))
}

// end shows the working of the dangerous end: what stands elsewhere than at its best
// estimate there, then its lines.
func (e *explainer) end(x *hazards.End) {
	e.print(0, "")
	key := "explain.end_low"
	if x.High {
		key = "explain.end_high"
	}
	e.print(0, words.Of(key, number.Units{}.Amount(x.Figure.Quantity, x.Figure.Agent, x.Value.V, 0)))
	for i := range x.Stood {
		e.print(1, stoodText(&x.Stood[i]))
	}
	e.sheet, e.shown = x.Sheet, map[int]bool{}
	e.line(0, x.Value.Line())
}

// line prints one line and what it was made from, one step further in.
func (e *explainer) line(depth, n int) {
	l := &e.sheet.Lines[n-1]
	if e.shown[n] && len(l.In) > 0 {
		e.print(depth, words.Of("explain.shown", n, l.Symbol, number.Measure(l.V, draft.SheetDigits, l.Unit)))
		return
	}
	e.shown[n] = true
	e.print(depth, words.Of("explain.line", n, l.Symbol, number.Measure(l.V, draft.SheetDigits, l.Unit),
		number.StatusText(l.Status), e.origin(l)))
	for _, m := range words.Names(l.Missing) {
		if len(l.In) == 0 {
			e.print(depth+1, words.Of("figure.lacks", m))
		}
	}
	seen := map[int]bool{}
	for _, in := range l.In {
		if in.Line > 0 && in.Line <= len(e.sheet.Lines) && !seen[in.Line] {
			seen[in.Line] = true
			e.line(depth+1, in.Line)
		}
	}
}

// origin is where a line came from, of a datum with its row.
func (e *explainer) origin(l *working.Line) string {
	if id, reads := l.Datum(); reads {
		return e.datum(id)
	}
	return draft.Origin(l)
}

func (e *explainer) datum(id datum.ID) string {
	d, ok := e.data[id]
	if !ok {
		st := e.b.Review.Case.Store
		if st == nil {
			return words.Of("made.datum", draft.DatumName(id))
		}
		row, found := st.Row(id)
		if !found {
			return words.Of("made.datum", draft.DatumName(id))
		}
		d = &row
	}
	s := []string{words.Of("made.datum", draft.DatumName(id))}
	if !math.IsNaN(d.Low) && !math.IsNaN(d.High) {
		s = append(s, draft.DataRange(*d))
	}
	s = append(s, draft.DataStatus(*d))
	if src := e.sourceName(d); src != "" {
		s = append(s, words.Of("explain.source", src))
	}
	if d.Note != "" {
		s = append(s, words.Of("explain.note", plain.Fold(d.Note)))
	}
	return strings.Join(s, ", ")
}

func (e *explainer) sourceName(d *chemicals.Datum) string {
	if st := e.b.Review.Case.Store; st != nil {
		var titles []string
		for _, src := range draft.SourcesOf(st, *d) {
			titles = append(titles, draft.SourceText(src))
		}
		if len(titles) > 0 {
			return strings.Join(titles, "; ")
		}
	}
	return strings.Trim(d.Source+" "+d.Where, " ")
}
