package book

import (
	"strconv"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// Sections is the auditor's book but for its data: what is in it, the register of
// figures, what they hold for, the findings, and the working of those that count.
func Sections(d *draft.Draft) (front document.Section, rest []document.Section) {
	b := from(d)
	k := b.bind()
	front = document.Section{Key: "page-1", Blocks: []document.Block{document.Paragraph{Text: words.Of("book.lead")},
		document.List{Items: []string{words.Of("book.figures", len(k.shown)),
			words.Of("book.findings", len(d.Review.Findings)),
			words.Of("book.lines", len(k.told), len(b.sheet().Lines))}}}}
	return front, []document.Section{k.register(), k.conditions(), k.findings(), k.ends(), k.lines()}
}

// A binding is the book on its way: which figures it shows under which number, which
// lines it tells, and which line is told for those that say the same.
type binding struct {
	*builder
	shown []*figure.Figure  // those that count first
	count int               // how many of them count; the others are folded away
	kept  int               // how many of what figures hold for those that count need
	at    map[figure.ID]int // the number of a figure, from 1
	holds []string          // what figures hold for, each once
	told  []int             // numbers of the lines
	as    []int             // of each line the one that is told for it
	used  map[int][]document.Link
}

func (b *builder) bind() *binding {
	k := &binding{builder: b, at: map[figure.ID]int{}, used: map[int][]document.Link{}}
	open := b.open()
	for _, counts := range []bool{true, false} {
		for i := range b.Review.Figures { // of what fails those that are not within every limit
			f := &b.Review.Figures[i]
			_, repeats := b.ByID[f.Of()]
			if !repeats && counts == (open[f.ID] || f.Value.Unknown()) && (f.Case.Failure == "" || open[f.ID]) {
				k.shown = append(k.shown, f)
				k.at[f.ID] = len(k.shown)
			}
		}
		if counts {
			k.count = len(k.shown)
		}
	}
	for i := range b.Review.Figures { // what repeats another is found under its number
		if f := &b.Review.Figures[i]; k.at[f.ID] == 0 {
			k.at[f.ID] = k.at[f.Of()]
		}
	}
	k.merge()
	return k
}

func anchor(n int) string { return "figure-" + strconv.Itoa(n) }

func (k *binding) register() document.Section {
	s := document.Begin("register")
	t := document.Table{Caption: words.Of("register.caption"), Columns: document.Right(document.Columns("col.number",
		"col.figure", "col.id", "col.value", "col.range", "col.status", "col.condition", "col.line"), 0)}
	seen := map[string]int{}
	for i, f := range k.shown {
		if i == k.count {
			k.kept = len(k.holds)
		}
		says := k.Conditions(f)
		if says != "" && seen[says] == 0 {
			k.holds = append(k.holds, says)
			seen[says] = len(k.holds)
		}
		holds := document.Cell{}
		if n := seen[says]; n > 0 {
			holds.Links = []document.Link{{Text: strconv.Itoa(n), To: "holds-" + strconv.Itoa(n)}}
		}
		t.Rows = append(t.Rows, []document.Cell{{Text: strconv.Itoa(i + 1), Anchor: anchor(i + 1)},
			document.Text(k.FigureName(f)), document.Code(f.ID.String()), document.Text(k.ValueText(f)),
			document.Text(k.RangeText(f)), document.Text(number.StatusText(f.Value.Status)), holds, k.lineOf(f)})
	}
	if k.count == len(k.shown) {
		k.kept = len(k.holds)
	}
	s.Blocks = parted(t, k.count, "book.fold_figures")
	return s
}

// parted is a table whose first n rows are printed and whose others are folded away,
// under a sentence that counts them.
func parted(t document.Table, n int, key string) []document.Block {
	rest := t
	t.Rows, rest.Rows = t.Rows[:n], t.Rows[n:]
	var out []document.Block
	if len(t.Rows) > 0 {
		out = append(out, t)
	}
	if len(rest.Rows) > 0 {
		out = append(out, document.Fold{Summary: words.Of(key, len(rest.Rows)), Blocks: []document.Block{rest}})
	}
	return out
}

func (k *binding) conditions() document.Section {
	s := document.Begin("conditions")
	t := document.Table{Caption: words.Of("title.conditions"), Columns: document.Columns("col.number", "col.conditions")}
	for i, h := range k.holds {
		n := strconv.Itoa(i + 1)
		t.Rows = append(t.Rows, []document.Cell{{Text: n, Anchor: "holds-" + n}, document.Text(h)})
	}
	s.Blocks = parted(t, k.kept, "book.fold_holds")
	return s
}

// findings are those that count before those that are within, which are folded away.
func (k *binding) findings() document.Section {
	s := document.Begin("judged")
	t := document.Table{Caption: words.Of("judged.caption"),
		Columns: document.Columns("col.limit_basis", "col.verdict", "col.margin", "col.figure")}
	open := 0
	for _, v := range []figure.Verdict{figure.Exceeds, figure.UnknownVerdict, figure.Near, figure.Within} {
		if v == figure.Within {
			open = len(t.Rows)
		}
		rows, last := map[[2]string]int{}, map[int]figure.ID{}
		for i := range k.Review.Findings {
			f := &k.Review.Findings[i]
			if f.Verdict != v || k.Repeated(f) {
				continue
			}
			limit := k.LimitText(&f.Limit, f.Figure) + draft.BasisText(&f.Limit)
			key := [2]string{limit, k.Margin(f)}
			at, ok := rows[key]
			if !ok {
				at = len(t.Rows)
				rows[key] = at
				t.Rows = append(t.Rows, []document.Cell{document.Text(plain.Fold(limit)), draft.VerdictCell(v),
					document.Text(key[1]), {}})
			}
			link := k.figureLink(f.Figure)
			if was := last[at]; was.Quantity == f.Figure.Quantity && was.Agent == f.Figure.Agent && k.at[f.Figure] > 0 {
				link.Text = strconv.Itoa(k.at[f.Figure]) // what it is stands before it
			}
			last[at] = f.Figure
			t.Rows[at][3].Links = append(t.Rows[at][3].Links, link)
		}
	}
	s.Blocks = parted(t, open, "book.fold_findings")
	return s
}

func (k *binding) figureLink(id figure.ID) document.Link {
	if k.at[id] == 0 {
		return document.Link{Text: k.NameOf(id), To: "register"}
	}
	return document.Link{Text: words.Of("book.named", k.at[id], k.NameOf(id)), To: anchor(k.at[id])}
}
