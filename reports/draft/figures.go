package draft

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/incompatible"
	"etchbound/hazards/limit"
	"etchbound/hazards/meeting"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// PlaceName is a place in words: "step 2", "waste", "vessel etch".
func (b *Draft) PlaceName(place figure.Place) string {
	if _, ok := place.Step(); ok {
		return words.Of("place.step", place.String())
	}
	if key := "place." + place.Key(); words.Has(key) {
		return words.Of(key)
	}
	for i := range b.Route().Places {
		if p := &b.Route().Places[i]; p.Key == place.Key() {
			return KindAndKey(p)
		}
	}
	for i := range b.Review.Held {
		if h := &b.Review.Held[i]; h.ID().Place == place {
			return h.Name
		}
	}
	return place.Key()
}

// KindAndKey is what a place is and its key, which stands alone where it begins with that.
func KindAndKey(p *route.Place) string {
	if strings.HasPrefix(p.Key, p.Kind) {
		return p.Key
	}
	return words.Of("place.key", p.Kind, p.Key)
}

// AgentName is the substance of a figure, or two of them, in words: what is in the air is
// called by its gas, which hydrochloric acid is not.
func AgentName(quantity, agent string) string {
	if quantity == incompatible.Quantity {
		if p := meeting.Named(agent); p != nil {
			return p.Names
		}
	}
	parts := figure.AgentsOf(agent)
	for i, p := range parts {
		if key := "vapour." + p; words.Has(key) && figure.Row(quantity).Family == "air" {
			parts[i] = words.Of(key)
		} else if s, ok := chemicals.Library().Find(p); ok {
			parts[i] = s.Name
		} else if t, ok := stock.ThresholdOf(p); ok && figure.Row(quantity).Family == "stock" {
			parts[i] = t.Programme + ", " + t.Tier
		} else {
			parts[i] = chemicals.SaidOf(p)
		}
	}
	return strings.Join(parts, words.Of("agent.and"))
}

// CaseName is a law, failure or branch in words.
func CaseName(kase figure.Case) string {
	parts := kase.Parts()
	for i, p := range parts {
		if key := "case." + p; words.Has(key) {
			parts[i] = words.Of(key)
		} else if kase.Over != 0 && strings.HasPrefix(p, "over_") {
			parts[i] = words.Of("case.over", number.Thing{Unit: "min"}.Bound(kase.Over, 0))
		} else {
			parts[i] = strings.ReplaceAll(p, "_", " ")
		}
	}
	return strings.Join(parts, ", ")
}

// FigureName is the label of a figure with where and for what it holds.
func (b *Draft) FigureName(f *figure.Figure) string {
	place, agent, kase := f.Place, f.Agent, f.Case
	if m, ok := b.ByID[f.Of()]; ok {
		place, agent, kase = m.Place, m.Agent, m.Case
	}
	s := []string{number.LabelOf(f.Quantity)}
	if !place.IsZero() {
		s = append(s, b.PlaceName(place))
	}
	if agent != "" {
		s = append(s, AgentName(f.Quantity, agent))
	}
	if !kase.IsZero() {
		s = append(s, CaseName(kase))
	}
	return strings.Join(s, ", ")
}

// FigureTable is the figures that want picks at a glance and, folded behind that, each
// with what it holds for. A figure that only repeats another under a shorter id is left
// out there: the other one is there.
func (b *Draft) FigureTable(want func(*figure.Figure) bool) []document.Block {
	t := b.Listed(want)
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{b.glance(want),
		document.Fold{Summary: words.Of("figures.fold", len(t.Rows)), Blocks: []document.Block{t}}}
}

// Listed is every figure that want picks, each with what it holds for, but for those that
// only repeat another under a shorter id.
func (b *Draft) Listed(want func(*figure.Figure) bool) document.Table {
	t := document.Table{Caption: words.Of("figures.caption"),
		Columns: document.Right(document.Tight(document.Columns("col.figure", "col.value", "col.range", "col.status",
			"col.conditions", "col.id",
			"col.line"), 1, 2), 6)}
	for i := range b.Review.Figures {
		f := &b.Review.Figures[i]
		if _, repeats := b.ByID[f.Of()]; repeats || !want(f) {
			continue
		}
		t.Rows = append(t.Rows, b.figureRow(f))
	}
	return t
}

func (b *Draft) figureRow(f *figure.Figure) []document.Cell {
	return []document.Cell{{Text: b.FigureName(f), Anchor: FigureAnchor(f.ID)}, document.Text(b.ValueText(f)),
		document.Text(b.RangeText(f)),
		document.Text(number.StatusText(f.Value.Status)),
		document.Text(b.Conditions(f)), document.Code(f.ID.String()), b.lineCell(f)}
}

// FigureAnchor is where a link to a figure leads: its row, wherever it is shown.
func FigureAnchor(id figure.ID) string { return "of-" + plain.ID(id.String()) }

// lineCell is the number of the line of a figure, which leads to it where the document
// has the lines: not in a brief one, nor one of failures alone.
func (b *Draft) lineCell(f *figure.Figure) document.Cell {
	n := f.Value.Line()
	switch {
	case n <= 0:
		return document.Text(words.Of("value.dash"))
	case b.Options.Brief || b.NoLines || b.Review.Sheet == nil || n > len(b.Review.Sheet.Lines):
		return document.Text(strconv.Itoa(n))
	}
	return document.Cell{Links: []document.Link{{Text: strconv.Itoa(n), To: LineAnchor(n)}},
		Behind: &document.Behind{Summary: words.Of("figure.worked"), Cell: MadeOf(&b.Review.Sheet.Lines[n-1])}}
}

// LineAnchor is where a link to a line leads.
func LineAnchor(n int) string { return "line-" + strconv.Itoa(n) }

// Conditions says what a number holds for and, where it is unknown, what for.
func (b *Draft) Conditions(f *figure.Figure) string {
	s := plain.Fold(words.Say(f.Conditions))
	if f.Value.Unknown() && len(f.Value.Missing()) > 0 {
		lacks := words.Of("figure.lacks", strings.Join(words.Names(f.Value.Missing()), ", "))
		if s == "" {
			return lacks
		}
		return s + "; " + lacks
	}
	return s
}

// Findings are the findings that want picks: a row for each figure that is not within all
// of its limits and, folded behind that, every finding, with what would meet the limit.
// Those that differ only in where they hold share a row.
func (b *Draft) Findings(want func(*figure.Finding) bool) []document.Block {
	open, within := findingHead(), findingHead()
	var rows []*held
	count := 0
	for i := range b.Review.Findings {
		f := &b.Review.Findings[i]
		if !want(f) || b.Repeated(f) {
			continue
		}
		t := &open
		if f.Verdict == figure.Within {
			t = &within
			count++
		} else {
			rows = b.hold(rows, f)
		}
		if row := b.findingRow(f); !Joins(t.Rows, row) {
			t.Rows = append(t.Rows, row)
		}
	}
	var out []document.Block
	if len(rows) > 0 {
		out = append(out, heldTable(rows),
			document.Fold{Summary: words.Of("findings.fold", len(open.Rows)), Blocks: []document.Block{open}})
	}
	if count > 0 {
		out = append(out, document.Fold{Summary: words.Of("findings.within", count), Blocks: []document.Block{within}})
	}
	return out
}

func findingHead() document.Table {
	return document.Table{Caption: words.Of("findings.caption"),
		Columns: document.Tight(document.Columns("col.figure", "col.limit_basis", "col.margin", "col.verdict", "col.needs"),
			2)}
}

func (b *Draft) findingRow(f *figure.Finding) []document.Cell {
	return []document.Cell{document.Text(b.NameOf(f.Figure)),
		document.Text(b.LimitText(&f.Limit, f.Figure) + BasisText(&f.Limit)),
		document.Text(b.Margin(f)), VerdictCell(f.Verdict), document.Text(b.needsText(f))}
}

// Joins adds the name of a row to an earlier one that says the same.
func Joins(rows [][]document.Cell, row []document.Cell) bool {
	for i := range rows {
		if slices.EqualFunc(rows[i][1:], row[1:], document.Cell.Says) {
			rows[i][0].Add(row[0].Items()...)
			return true
		}
	}
	return false
}

// NameOf is the name of the figure of an id, whether the review has that figure or not.
func (b *Draft) NameOf(id figure.ID) string {
	if f, ok := b.ByID[id]; ok {
		return b.FigureName(f)
	}
	return b.FigureName(&figure.Figure{ID: id})
}

// Repeated reports whether a finding only says again what one on the member
// that its figure repeats says.
func (b *Draft) Repeated(f *figure.Finding) bool {
	g, ok := b.ByID[f.Figure]
	if !ok {
		return false
	}
	_, there := b.ByID[g.Of()]
	return there && b.judged(figure.FindingID{Figure: g.Of(), Limit: f.Limit.Key})
}

// judged reports whether a figure has a finding of its own for a limit.
func (b *Draft) judged(id figure.FindingID) bool {
	for i := range b.Review.Findings {
		if b.Review.Findings[i].ID() == id {
			return true
		}
	}
	return false
}

func BasisText(l *limit.Limit) string {
	var s []string
	for _, p := range []string{words.Say(l.From()), SectionOf(l), l.Edition, l.Status} {
		if p != "" {
			s = append(s, p)
		}
	}
	if len(s) == 0 {
		return ""
	}
	return words.Of("limit.basis", strings.Join(s, ", "))
}

// SectionOf is where a limit stands; a place in a file as people say it.
func SectionOf(l *limit.Limit) string {
	if l.Origin == limit.Route || l.Origin == limit.Site {
		return route.Told(l.Section)
	}
	return l.Section
}

func (b *Draft) needsText(f *figure.Finding) string {
	var s []string
	if !f.Says.IsZero() {
		s = append(s, plain.Fold(words.Say(f.Says)))
	}
	for _, n := range f.Needs {
		s = append(s, words.Of("need", number.LabelOf(n.Quantity),
			b.Options.Units.Amount(n.Quantity, f.Figure.Agent, n.Value, 0),
			plain.Fold(words.Say(n.Says))))
	}
	return strings.Join(s, "; ")
}

// NotAssessed names the quantities of some families, or of all where none is named,
// that no model covers yet.
func (b *Draft) NotAssessed(of ...figure.Family) []document.Block {
	var names []string
	for _, q := range figure.Catalogue() {
		if b.missing[q.Name] && (len(of) == 0 || slices.Contains(of, q.Family)) {
			names = append(names, q.Label)
		}
	}
	if len(names) == 0 {
		return nil
	}
	says := "not_assessed.here"
	if len(of) == 0 {
		says = "not_assessed" // what that means is said once
	}
	return []document.Block{document.Paragraph{Text: words.Of(says, strings.Join(names, "; ")), Tone: document.Note}}
}

// InFamily reports whether a quantity is of one of some families.
func InFamily(quantity string, of ...figure.Family) bool {
	return slices.Contains(of, figure.Row(quantity).Family)
}

// InAny reports whether one of the figures is of a family.
func InAny(all []figure.Figure, of figure.Family) bool {
	return slices.ContainsFunc(all, func(f figure.Figure) bool { return InFamily(f.Quantity, of) })
}

// About is the figures, findings and gaps of the quantities of some families, but
// for what is so only when something fails, which has its own section, and a plain sentence where
// there are none of any.
func (b *Draft) About(of ...figure.Family) []document.Block {
	out := b.Counts(func(f *figure.Figure) bool { return f.Case.Failure == "" && InFamily(f.Quantity, of...) })
	out = append(out, b.NotAssessed(of...)...)
	if len(out) == 0 {
		out = []document.Block{document.Paragraph{Text: words.Of("figures.none")}}
	}
	return out
}

// Names are ids as text.
func Names[T fmt.Stringer](ids []T) []string {
	out := make([]string, len(ids))
	for i := range ids {
		out[i] = ids[i].String()
	}
	return out
}
