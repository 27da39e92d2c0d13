// Package holdings knows how it is told what a site holds and what its routes take.
// It must not know another page.
package holdings

import (
	"slices"
	"strconv"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/hazards/stock"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// Build is what a site holds and what one run of every route takes, as a
// document.
func Build(h *scaling.Holdings, o draft.Options) document.Document {
	d := document.Document{Title: words.Of("stock.title"), Lang: words.Of("lang"), Paper: o.Paper, Flows: true,
		Control: controlOf(h, o)}
	top := document.Section{Key: "page-1", Title: d.Title,
		Blocks: []document.Block{document.Paragraph{Text: words.Of("deference.line")},
			document.Paragraph{Text: words.Of("stock.lead", len(h.Routes))}}}
	if h.Site == nil {
		top.Blocks = append(top.Blocks, document.Paragraph{Text: words.Of("stock.no_site"), Tone: document.Warning})
	} else if h.Site.Jurisdiction == "" {
		top.Blocks = append(top.Blocks, document.Paragraph{Text: words.Of("stock.no_jurisdiction"), Tone: document.Warning})
	}
	if len(h.Mixed) > 0 {
		top.Blocks = append(top.Blocks, document.Paragraph{Text: words.Of("stock.mixed_first", len(h.Mixed),
			strings.Join(containers(h), ", ")), Tone: document.Warning})
	}
	d.Sections = []document.Section{top,
		{Key: "thresholds", Title: words.Of("stock.shares"), Blocks: stockShares(h)},
		{Key: "substances", Title: words.Of("stock.substances"), Blocks: stockMasses(h)},
		{Key: "mixed", Title: words.Of("stock.mixed"), Blocks: stockMixed(h)},
		{Key: "bottles", Title: words.Of("stock.bottles"), Blocks: stockBottles(h)},
		{Key: "hood", Title: words.Of("stock.hood"), Blocks: stockHood(h)},
		{Key: "routes", Title: words.Of("stock.routes"), Blocks: stockRoutes(h)}}
	return d
}

// stockMixed are the pairs that meet where routes share a container of waste, the worst first.
func stockMixed(h *scaling.Holdings) []document.Block {
	if len(h.Mixed) == 0 {
		return []document.Block{document.Paragraph{Text: words.Of("stock.mixed_none")},
			document.Paragraph{Text: words.Of("stock.mixed_note"), Tone: document.Note}}
	}
	t := document.Table{Caption: words.Of("stock.mixed_caption"), Columns: document.Columns("stock.container",
		"stock.pair", "stock.result", "stock.brings", "stock.brings_other", "col.verdict", "col.source", "col.status")}
	for _, m := range worstFirst(h.Mixed) {
		name := m.Names
		if name == "" {
			name = words.Of("stock.pair_of_store")
		}
		t.Rows = append(t.Rows, []document.Cell{document.Text(m.Container), document.Text(name), document.Text(m.Result),
			document.Text(numbers(m.One)), document.Text(numbers(m.Other)), draft.VerdictCell(mixedVerdict(&m)),
			document.Text(m.Source), document.Text(m.Status)})
	}
	return []document.Block{t, document.Paragraph{Text: words.Of("stock.mixed_note"), Tone: document.Note}}
}

func worstFirst(all []meeting.Mixed) []meeting.Mixed {
	out := slices.Clone(all)
	slices.SortStableFunc(out, func(a, b meeting.Mixed) int { return strings.Compare(b.Severity, a.Severity) })
	return out
}

func mixedVerdict(m *meeting.Mixed) figure.Verdict {
	if m.Unknown {
		return figure.UnknownVerdict
	}
	return figure.Exceeds
}

// containers are those in which something meets, each once.
func containers(h *scaling.Holdings) []string {
	var out []string
	for i := range h.Mixed {
		if c := h.Mixed[i].Container; !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	return out
}

// numbers are routes by their numbers, the first of many.
func numbers(routes []int) string {
	out := make([]string, 0, most)
	for _, r := range routes {
		if len(out) == most {
			return strings.Join(out, ", ") + " " + words.Of("stock.by_more", len(routes)-most)
		}
		out = append(out, strconv.Itoa(r+1))
	}
	return strings.Join(out, ", ")
}

// most is how many routes are named one by one.
const most = 8

// controlOf is the control line of a stock list, on all of its routes.
func controlOf(h *scaling.Holdings, o draft.Options) string {
	var routes []string
	for _, r := range h.Routes {
		routes = append(routes, r.Digest)
	}
	return draft.ControlOf(o, h.Site, h.Limits, routes...)
}

func stockShares(h *scaling.Holdings) []document.Block {
	t := document.Table{Caption: words.Of("stock.shares_caption"),
		Columns: document.Right(document.Columns("col.material", "stock.threshold", "stock.held", "stock.limit",
			"stock.share", "stock.headroom", "col.verdict",
			"stock.counts"), 2, 3, 4, 5)}
	for i := range h.Substances {
		s := &h.Substances[i]
		for j := range s.Shares {
			x := &s.Shares[j]
			t.Rows = append(t.Rows, []document.Cell{document.Text(s.Name + " (" + s.CAS + ")"),
				document.Text(thresholdName(x.Threshold)),
				document.Text(kilos(x.Held, 1)),
				document.Text(kilos(working.Exact("T", "kg", x.Threshold.Limit, ""), 0)), document.Text(shareText(x.Ratio)),
				document.Text(rooms(x.Headroom)), draft.VerdictCell(x.Verdict),
				document.Text(shareNote(x))})
		}
	}
	for i := range h.Sums {
		x := &h.Sums[i]
		t.Rows = append(t.Rows, []document.Cell{document.Text(words.Of("stock.all")),
			document.Text(thresholdName(x.Threshold)),
			document.Text(kilos(x.Held, 1)), document.Text(words.Of("value.dash")), document.Text(shareText(x.Ratio)),
			document.Text(words.Of("value.dash")), draft.VerdictCell(x.Verdict), document.Text(shareNote(x))})
	}
	if len(t.Rows) == 0 {
		return []document.Block{document.Paragraph{Text: words.Of("stock.no_threshold")}}
	}
	return []document.Block{t, document.Paragraph{Text: words.Of("stock.shares_note"), Tone: document.Note}}
}

// rooms is how many runs of each route a threshold leaves room for.
func rooms(n working.Num) string {
	if n.Unknown() {
		return words.Of("value.dash")
	}
	return number.Significant(n.V, 3, -1)
}

// stockBottles is what the site keeps, an entry each, with what it is.
func stockBottles(h *scaling.Holdings) []document.Block {
	t := document.Table{Caption: words.Of("stock.bottles_caption"),
		Columns: document.Right(document.Columns("col.material", "col.cas", "stock.strength", "stock.whole", "stock.each",
			"stock.count", "stock.classes", "stock.group"), 2, 3, 4, 5)}
	for i := range h.Substances {
		s := &h.Substances[i]
		for j := range s.Bottles {
			x := &s.Bottles[j]
			t.Rows = append(t.Rows, document.Row(s.Name, s.CAS, strength(x.Strength), kilos(x.Whole, 1), kilos(x.Each, 1),
				rounded(x.Count, 6, 1), classesOf(x), words.OrDash(strings.Join(x.Groups, ", "))))
		}
	}
	if len(t.Rows) == 0 {
		return []document.Block{document.Paragraph{Text: words.Of("stock.no_bottles"), Tone: document.Warning}}
	}
	return []document.Block{t, document.Paragraph{Text: words.Of("stock.bottles_note"), Tone: document.Note}}
}

func classesOf(x *stock.Bottle) string {
	switch {
	case slices.Equal(x.Classes, []string{stock.NotClassified}):
		return words.Of("value.unknown")
	case len(x.Classes) == 0:
		return words.Of("stock.no_class")
	}
	return strings.Join(x.Classes, ", ")
}

func thresholdName(t *stock.Threshold) string {
	from := slices.DeleteFunc([]string{t.Document, t.Section, t.Edition}, func(s string) bool { return s == "" })
	return t.Programme + ", " + t.Tier + ": " + t.Substance + " (" + strings.Join(from, ", ") + ")"
}

// shareNote is what counts, what does not, what is missing, and whether the
// threshold itself was seen.
func shareNote(x *stock.Share) string {
	var out []string
	if x.Threshold.Note != "" {
		out = append(out, x.Threshold.Note)
	}
	if !x.Left.Unknown() && x.Left.V > 0 {
		out = append(out, words.Of("stock.left", kilos(x.Left, 1)))
	}
	if x.Ratio.Unknown() {
		out = append(out, words.Of("stock.missing", strings.Join(words.Names(x.Ratio.Missing()), ", ")))
	}
	if x.Threshold.Status == "memory" {
		out = append(out, words.Of("stock.memory"))
	}
	return strings.Join(out, "; ")
}

func stockMasses(h *scaling.Holdings) []document.Block {
	t := document.Table{Caption: words.Of("stock.masses_caption"),
		Columns: document.Right(document.Columns("col.material", "col.cas", "stock.sum", "stock.largest", "stock.on_site",
			"stock.runs",
			"stock.strongest", "stock.taken"), 2, 3, 4, 5, 6)}
	for i := range h.Substances {
		s := &h.Substances[i]
		t.Rows = append(t.Rows, document.Row(s.Name, s.CAS, massText(s.Sum.Mass), massText(s.Largest.Mass),
			massText(s.Stock), rounded(s.Runs, 3, -1), strength(s.Strongest), takenBy(s)))
	}
	out := []document.Block{t}
	if x, there := h.AsHF(); there {
		out = append(out, document.Paragraph{Text: words.Of("stock.as_hf", massText(x.Runs), massText(x.Stock)),
			Tone: document.Warning})
	}
	return append(out, document.Paragraph{Text: words.Of("stock.masses_note"), Tone: document.Note})
}

// massText is a mass, its upper end where it has one, or what is missing.
func massText(m stock.Mass) string {
	if m.Mid.Unknown() {
		return words.Of("stock.unknown", strings.Join(words.Names(m.Mid.Missing()), ", "))
	}
	if mid, top := kilos(m.Mid, 0), kilos(m.Top, 1); number.Round9(m.Top.V) != number.Round9(m.Mid.V) {
		return words.Of("stock.up_to", mid, top)
	}
	return kilos(m.Mid, 0)
}

func takenBy(s *stock.Holding) string {
	if len(s.Takes) == 0 {
		return words.Of("stock.by_none")
	}
	var out []int
	for _, t := range s.Takes {
		out = append(out, t.Route)
	}
	return numbers(out)
}

func stockHood(h *scaling.Holdings) []document.Block {
	l := &h.Hood
	t := document.Table{Caption: words.Of("stock.hood_caption"),
		Columns: document.Right(document.Columns("stock.need", "stock.amount", "stock.of_flow", "stock.missing_head"), 1, 2)}
	none := working.Absent("x", "1")
	for _, r := range []struct {
		label      string
		need, part working.Num
	}{{words.Of("stock.hydrogen"), l.Hydrogen, none}, {words.Of("stock.dilution"), l.Dilution, l.DilutionShare},
		{words.Of("stock.exhaust"), l.Exhaust, l.ExhaustShare}, {words.Of("stock.flow"), l.Flow, none}} {
		part := shareText(r.part)
		if r.part.Unknown() && len(r.part.Missing()) == 0 {
			part = words.Of("value.dash")
		}
		t.Rows = append(t.Rows, document.Row(r.label, measureNum(r.need), part,
			fewOf(words.Names(r.need.Missing()))))
	}
	return []document.Block{document.Paragraph{Text: assumes(h)}, t,
		document.Paragraph{Text: words.Of("stock.hood_note"), Tone: document.Note}}
}

// assumes says which routes run at once.
func assumes(h *scaling.Holdings) string {
	if h.SameDay {
		return words.Of("stock.one_day")
	}
	return words.Of("stock.one_at_a_time")
}

// fewOf names what is missing; of many only the first and how many more.
func fewOf(missing []string) string {
	if n := len(missing); n > 6 {
		return strings.Join(missing[:6], ", ") + " " + words.Of("stock.by_more", n-6)
	}
	return strings.Join(missing, ", ")
}

func stockRoutes(h *scaling.Holdings) []document.Block {
	t := document.Table{Caption: words.Of("stock.routes_caption"),
		Columns: document.Right(document.Columns("stock.number", "stock.file", "stock.route_title", "stock.hydrogen",
			"stock.dilution",
			"stock.exhaust"), 3, 4, 5)}
	for i, r := range h.Routes {
		l := &h.Hood.Routes[i]
		t.Rows = append(t.Rows, document.Row(strconv.Itoa(i+1), r.Name, r.Title, measureNum(l.Hydrogen),
			measureNum(l.Dilution), measureNum(l.Exhaust)))
	}
	return []document.Block{t}
}

func kilos(n working.Num, way int) string {
	if n.Unknown() {
		return words.Of("value.unknown")
	}
	return number.With(rounded(n, 4, way), "kg")
}

// rounded is a number rounded towards way, or the word for unknown.
func rounded(n working.Num, digits, way int) string {
	if n.Unknown() {
		return words.Of("value.unknown")
	}
	return number.Significant(n.V, digits, way)
}

func measureNum(n working.Num) string {
	if n.Unknown() {
		return words.Of("value.unknown")
	}
	return number.With(number.Significant(n.V, 3, 1), n.Unit)
}

func shareText(n working.Num) string {
	if n.Unknown() {
		return words.Of("value.unknown")
	}
	return number.Percent(n.V, 3, 1)
}

func strength(n working.Num) string {
	if n.Unknown() {
		return words.Of("value.unknown")
	}
	return number.Significant(100*n.V, 3, 1) + " wt%"
}
