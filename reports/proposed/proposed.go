// Package proposed knows how it is told what would have to change of a route, what each
// change buys and what remains. It must not know another page.
package proposed

import (
	"strconv"
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/plain"
	"etchbound/reports/words"
	"etchbound/scaling/levers"
)

// Format names the shape of the JSON of a proposal.
const Format = "etchbound.proposal/1"

// Build lays out what would have to change of a route.
func Build(f *levers.Found, o draft.Options) document.Document {
	a, b := newBuilder(&f.Before, o), newBuilder(&f.After, o)
	d := document.Document{Title: words.Of("propose.title", a.Title()), Lang: words.Of("lang"), Paper: o.Paper,
		Flows: true, Control: controlOf(f, o)}
	top := document.Section{Key: "page-1", Title: words.Of("propose.sheet"), Blocks: []document.Block{
		document.Facts{Pairs: []document.Pair{
			{Name: words.Of("propose.written"), Value: a.Title() + " (" + a.DigestText() + ")"},
			{Name: words.Of("propose.changed"), Value: words.Of("propose.state")},
			{Name: words.Of("propose.tried"), Value: strconv.Itoa(f.Tried)},
			{Name: words.Of("control.version"), Value: a.VersionText()}}},
		document.Paragraph{Text: words.Of("deference.line")},
		document.Paragraph{Text: words.Of("propose.lead"), Tone: document.Warning}, counts(f)}}
	d.Sections = []document.Section{top,
		{Key: "propose-changes", Title: words.Of("propose.changes"), Blocks: changes(f, a, b)},
		{Key: "propose-left", Title: words.Of("propose.left"), Blocks: left(f, b)},
		{Key: "propose-file", Title: words.Of("propose.file"), Blocks: []document.Block{
			document.Paragraph{Text: words.Of("propose.file_lead")}, document.Verbatim{Lines: lines(f.Text)}}}}
	return d
}

// lines are those of a text.
func lines(text []byte) []string {
	return strings.Split(strings.TrimRight(strings.ReplaceAll(string(text), "\r\n", "\n"), "\n"), "\n")
}

// controlOf is the control line of a proposal, on both files.
func controlOf(f *levers.Found, o draft.Options) string {
	c := &f.After.Case
	return draft.ControlOf(o, c.Site, c.Limits, f.Before.Case.Route.Digest, c.Route.Digest)
}

// Count is how many findings of a review exceed, and how many are not known.
type Count struct{ Surely, May, Failing, Unknown int }

// count adds them up.
func count(r *hazards.Review) Count {
	var n Count
	for i := range r.Findings {
		switch f := &r.Findings[i]; {
		case f.Verdict == figure.UnknownVerdict:
			n.Unknown++
		case f.Verdict != figure.Exceeds:
		case f.Figure.Case.Failure != "":
			n.Failing++
		case f.Surely >= figure.BestEstimate:
			n.Surely++
		default:
			n.May++
		}
	}
	return n
}

func counts(f *levers.Found) document.Block {
	t := document.Table{Caption: words.Of("propose.counts"), Columns: document.Right(document.Columns("propose.which",
		"propose.before", "propose.after"), 1, 2)}
	a, b := count(&f.Before), count(&f.After)
	row := func(key string, was, is int) {
		t.Rows = append(t.Rows, document.Row(words.Of(key), strconv.Itoa(was), strconv.Itoa(is)))
	}
	row("propose.surely", a.Surely, b.Surely)
	row("propose.may", a.May, b.May)
	row("propose.failing", a.Failing, b.Failing)
	row("propose.unknown", a.Unknown, b.Unknown)
	return t
}

// changes are what a writer would change, each with what it buys.
func changes(f *levers.Found, a, b *builder) []document.Block {
	if len(f.Bought) == 0 {
		return []document.Block{document.Paragraph{Text: words.Of("propose.none")}}
	}
	t := document.Table{Caption: words.Of("propose.changes_caption"), Columns: document.Columns("propose.change",
		"propose.takes")}
	for i := range f.Bought {
		x := &f.Bought[i]
		t.Rows = append(t.Rows, document.Row(strings.Join(said(x), " "), takes(x, a)))
	}
	out := []document.Block{t}
	if len(f.Dropped) > 0 {
		out = append(out, document.Paragraph{Text: words.Of("propose.dropped", strings.Join(f.Dropped, ", ")),
			Tone: document.Warning})
	}
	return out
}

// said is what is to be done, in words.
func said(x *levers.Bought) []string {
	var out []string
	for i := range x.Changes {
		out = append(out, words.Say(x.Changes[i].Says))
	}
	return out
}

// takes is what a change takes away: of a quantity and an agent the first finding.
func takes(x *levers.Bought, a *builder) string {
	var out []string
	told := map[[2]string]bool{}
	for i := range x.Moved {
		m := &x.Moved[i]
		same := [...]string{m.Was.Figure.Quantity, m.Was.Figure.Agent}
		if told[same] {
			continue
		}
		told[same] = true
		u := &a.Options.Units
		was := words.FirstPage("surely." + m.Was.Surely.String())
		name := a.FigureName(&m.WasOf)
		if m.Is.Figure.IsZero() {
			out = append(out, words.Of("propose.gone", name, u.Whole(&m.WasOf), was))
			continue
		}
		is := draft.VerdictName(m.Is.Verdict)
		if m.Is.Verdict == figure.Exceeds {
			is = words.FirstPage("surely." + m.Is.Surely.String())
		}
		out = append(out, words.Of("propose.moved", name, u.Whole(&m.WasOf), was, u.Whole(&m.IsOf), is))
	}
	if len(out) == 0 {
		return words.Of("propose.for_others")
	}
	return strings.Join(out, "; ")
}

// left is what remains, in three tables.
func left(f *levers.Found, b *builder) []document.Block {
	of := func(key string, want func(*levers.Left) bool) []document.Block {
		t := document.Table{Caption: words.Of(key), Columns: document.Columns("col.figure", "col.value", "col.limit_basis",
			"propose.why")}
		for _, same := range alike(f.Left, want) {
			t.Rows = append(t.Rows, b.leftRow(same))
		}
		if len(t.Rows) == 0 {
			return nil
		}
		return []document.Block{t}
	}
	surely := of("propose.left_sure", func(l *levers.Left) bool {
		return l.Failure() == "" && l.Finding.Surely >= figure.BestEstimate
	})
	if len(surely) == 0 {
		surely = []document.Block{document.Paragraph{Text: words.Of("propose.nothing_left")}}
	}
	out := append(surely, of("propose.left_may", func(l *levers.Left) bool {
		return l.Failure() == "" && l.Finding.Surely < figure.BestEstimate
	})...)
	if t := b.failing(f.Left); len(t.Rows) > 0 {
		out = append(out, document.Fold{Summary: words.Of("propose.left_failing"), Blocks: []document.Block{t}})
	}
	return out
}

// alike are what is left of one figure with one reason, which is told in one row: its
// limits after one another.
func alike(all []levers.Left, want func(*levers.Left) bool) [][]levers.Left {
	type told struct {
		of  figure.ID
		why string
	}
	at := map[told]int{}
	var out [][]levers.Left
	for i := range all {
		l := &all[i]
		if !want(l) {
			continue
		}
		key := told{l.Finding.Figure, whyText(l)}
		k, there := at[key]
		if !there {
			k, at[key] = len(out), len(out)
			out = append(out, nil)
		}
		out[k] = append(out[k], *l)
	}
	return out
}

func (b *builder) leftRow(same []levers.Left) []document.Cell {
	return document.Row(b.leftName(same, b.NameOf(same[0].Finding.Figure)), b.leftValue(&same[0]), b.limits(same),
		whyText(&same[0]))
}

func (b *builder) leftName(same []levers.Left, name string) string {
	others := 0
	for i := range same {
		others = max(others, same[i].Others)
	}
	if others > 0 {
		return words.Of("propose.others", name, others)
	}
	return name
}

// leftValue is the figure, and how surely what stands first of it is exceeded.
func (b *builder) leftValue(l *levers.Left) string {
	if l.Figure.ID.IsZero() {
		return words.Of("value.unknown")
	}
	return b.ValueAndRange(&l.Figure) + ", " + words.FirstPage("surely."+l.Finding.Surely.String())
}

func (b *builder) limits(same []levers.Left) string {
	out := make([]string, len(same))
	for i := range same {
		out[i] = b.LimitText(&same[i].Finding.Limit, same[i].Finding.Figure)
	}
	return strings.Join(out, "; ")
}

// failing is a row a failure: what it comes to, and what keeps it from happening, which
// is the same for all of it.
func (b *builder) failing(all []levers.Left) document.Table {
	t := document.Table{Caption: words.Of("propose.left_failing"), Columns: document.Columns("propose.fails",
		"propose.exceeds_then", "propose.why")}
	var keys []string
	comes := map[string][]string{}
	for _, same := range alike(all, func(l *levers.Left) bool { return l.Failure() != "" }) {
		l := &same[0]
		bare := l.Finding.Figure
		bare.Case.Failure = ""
		name := b.leftName(same, b.FigureName(&figure.Figure{ID: bare}))
		if len(comes[l.Failure()]) == 0 {
			keys = append(keys, l.Failure())
			t.Rows = append(t.Rows, document.Row(draft.CaseName(figure.Case{Failure: l.Failure()}), "", whyText(l)))
		}
		comes[l.Failure()] = append(comes[l.Failure()], words.Of("propose.comes", name, b.leftValue(l), b.limits(same)))
	}
	for i, key := range keys {
		t.Rows[i][1].Text = strings.Join(comes[key], "; ")
	}
	return t
}

// whyText is why nothing reaches it, with what would.
func whyText(l *levers.Left) string {
	text := words.Say(l.Why)
	if prevent := "prevent." + l.Failure(); l.Failure() != "" && words.Has(prevent) {
		return plain.Fold(text + " " + words.Of(prevent))
	}
	if len(l.Data) > 0 && l.Finding.Surely == figure.DangerousEnd {
		text = words.Of("propose.on_data", text, strings.Join(draft.DatumNames(l.Data), ", "))
	}
	if l.Batch != "" && l.Finding.Surely >= figure.BestEstimate {
		text = words.Of("propose.at_batch", text, l.Batch)
	}
	return text
}
