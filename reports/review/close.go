package review

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"etchbound/chemicals"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/selection"
	"etchbound/reports/words"
)

func (b *builder) emergency() document.Section {
	s := document.Begin("emergency")
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("emergency.pointer")})
	if b.Tags.Has("hf") {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("emergency.hf"), Tone: document.Warning})
	}
	if b.Tags.Has("tmaoh") {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("emergency.tmaoh"), Tone: document.Warning})
	}
	s.Blocks = append(append(append(s.Blocks, b.SpillWords()...), b.spillBase()...), b.FireTable()...)
	var asked []string
	if b.Ready() == nil { // else they are asked for with the first aid
		asked = []string{words.Of("emergency.number"), words.Of("emergency.medical"), words.Of("emergency.gel"),
			words.Of("emergency.shower")}
	}
	s.Blocks = append(s.Blocks, document.Blanks{Labels: append(asked, words.Of("emergency.kit"),
		words.Of("emergency.fire"), words.Of("emergency.assembly"))})
	return s
}

// spillBase is what of each base the largest spill takes, for who fills the kit.
func (b *builder) spillBase() []document.Block {
	var parts []string
	for f := range b.Set.Of("spill.neutraliser") {
		if f.Agent != "" && f.Case.Failure == "" {
			parts = append(parts, words.Of("emergency.base_of", b.Options.Units.Danger(f),
				draft.AgentName(f.Quantity, f.Agent)))
		}
	}
	if parts == nil {
		return nil
	}
	return []document.Block{document.Paragraph{Text: words.Of("emergency.base",
		strings.Join(parts, words.Of("emergency.base_or")))}}
}

func (b *builder) local() document.Section {
	s := document.Begin("local")
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("local.lead")})
	for _, group := range [...]string{"people", "place", "protection", "control"} {
		var labels []string
		for _, f := range leaveFields() {
			if f.group == group {
				labels = append(labels, words.Of("local.field", f.label, f.id))
			}
		}
		s.Subs = append(s.Subs, document.Section{Key: "local-" + group, Title: words.Of("local." + group),
			Blocks: []document.Block{document.Blanks{Labels: labels}}})
	}
	s.Subs = append(s.Subs, document.Section{Key: "local-notice", Title: words.Of("local.notice"),
		Blocks: []document.Block{document.Paragraph{Text: words.Of("deference.full")},
			document.Paragraph{Text: words.Of("deference.long")}}})
	return s
}

func (b *builder) actions() document.Section {
	s := document.Begin("actions")
	t := document.Table{Caption: words.Of("actions.caption"),
		Columns: document.Columns("col.number", "col.action", "col.owner", "col.due",
			"col.closed")}
	add := func(what string) {
		t.Rows = append(t.Rows, []document.Cell{document.Text(strconv.Itoa(len(t.Rows) + 1)), document.Text(what),
			{Blank: true}, {Blank: true},
			document.Text("☐")})
	}
	for n := range selection.StopTexts(b.Draft) { // page 1 has them whole
		add(words.Of("actions.hold", n+1))
	}
	add("")
	s.Blocks = append(s.Blocks, t)
	if t := b.unknownTable(); len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	s.Blocks = append(s.Blocks, document.Unprinted{Blocks: []document.Block{
		document.Paragraph{Text: words.Of("actions.ask"), Tone: document.Note}}})
	return s
}

func (b *builder) values(moves int) document.Section {
	s := document.Begin("values")
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("values.lead")})
	none := "" // what is empty: on paper without a heading of its own
	rare := func(key string, blocks []document.Block) document.Section {
		x := sub(key, blocks)
		if x.Screen = len(blocks) == 0; x.Screen {
			none += " " + words.Of("values.empty", x.Title, words.Of("values.none_"+key))
		}
		return x
	}
	unknown := sub("unknown", b.unknownBlocks())
	unknown.Screen = len(b.NotAssessed()) == 0 // what is missing is printed among the actions
	s.Subs = append(s.Subs, sub("turns", b.turnBlocks()),
		unknown, folded("assumptions", b.assumptionBlocks(moves)), folded("spread", b.spreadBlocks()),
		folded("data", b.dataBlocks()), rare("overrides", b.overrideBlocks()),
		folded("limits", b.limitBlocks()), folded("sources", b.sourceBlocks()), rare("warnings", b.warningBlocks()))
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("values.on_paper", len(b.Review.Assumptions),
		len(b.Review.Used)+len(b.Review.Tables), len(b.Sources())) + none, Tone: document.OnPaper})
	return s
}

// Checked is the section of values as who checks it reads it: nothing in it is folded.
func Checked(d *draft.Draft) document.Section {
	s := from(d).values(maxMoves / 6)
	s.Blocks = s.Blocks[:1] // what is said on paper of what is folded away
	for i := range s.Subs {
		if s.Subs[i].Screen = s.Subs[i].Key == "values-spread"; s.Subs[i].Screen { // of no route: it stays folded
			continue
		}
		for j, b := range s.Subs[i].Blocks {
			if f, ok := b.(document.Fold); ok {
				s.Subs[i].Blocks = append(append(s.Subs[i].Blocks[:j:j], f.Blocks...), s.Subs[i].Blocks[j+1:]...)
				break
			}
		}
	}
	return s
}

// sub is a part of the values section; one that is empty says so.
func sub(key string, blocks []document.Block) document.Section {
	if len(blocks) == 0 {
		blocks = []document.Block{document.Paragraph{Text: words.Of("values.none_" + key)}}
	}
	return document.Section{Key: "values-" + key, Title: words.Of("values." + key), Blocks: blocks}
}

// folded is a part of the values section that is read by who checks, and folded away.
func folded(key string, blocks []document.Block) document.Section {
	if rows := rowsOf(blocks); rows > 0 {
		blocks = []document.Block{document.Fold{Summary: words.Of("values.fold_"+key, rows), Blocks: blocks}}
	}
	s := sub(key, blocks)
	s.Screen = true
	return s
}

// rowsOf is how many rows the tables of blocks have.
func rowsOf(blocks []document.Block) int {
	n := 0
	for _, b := range blocks {
		if t, ok := b.(document.Table); ok {
			n += len(t.Rows)
		}
	}
	return n
}

func (b *builder) unknownBlocks() []document.Block {
	out := b.notAssessedAll()
	if n := len(b.Review.Unknown); n > 0 {
		out = append([]document.Block{document.Paragraph{Text: words.Of("unknown.told", n)}}, out...)
	}
	return out
}

// unknownTable is what is missing, worst first, with what settles it and who does; what
// the same settles is one action.
func (b *builder) unknownTable() document.Table {
	t := document.Table{Caption: words.Of("unknown.caption"), Columns: document.OnScreen(document.Columns("col.missing",
		"col.id", "col.settle", "col.owner", "col.due", "col.closed", "col.figures"), 1, 6)}
	for _, u := range b.Review.Unknown {
		what, settles := words.Ask(u.Missing)
		same := func(r []document.Cell) bool { return r[2].Text == plain.Fold(settles) }
		if at := slices.IndexFunc(t.Rows, same); at >= 0 {
			r := t.Rows[at]
			r[0].Add(plain.Fold(what))
			r[1].Add(words.Name(u.Missing))
			r[6].Add(strings.Join(draft.Names(u.Figures), ", "))
			continue
		}
		t.Rows = append(t.Rows, []document.Cell{document.Text(plain.Fold(what)), document.Code(words.Name(u.Missing)),
			document.Text(plain.Fold(settles)), {Blank: true}, {Blank: true}, document.Text("☐"),
			document.Code(strings.Join(draft.Names(u.Figures), ", "))})
	}
	return t
}

func (b *builder) notAssessedAll() []document.Block { return b.NotAssessed() }

func (b *builder) assumptionBlocks(moves int) []document.Block {
	t := document.Table{Caption: words.Of("assumptions.caption"),
		Columns: document.Right(document.Columns("col.id", "col.assumed", "col.value", "col.moves"), 2)}
	for _, a := range b.Review.Assumptions {
		t.Rows = append(t.Rows, []document.Cell{document.Code(draft.DatumName(a.ID)), document.Text(plain.Fold(a.Text)),
			document.Text(number.Measure(a.Value, 6, a.Unit)),
			document.Text(b.MovesText(a.Moves, moves))})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{t}
}

// maxMoves is how many of the figures an assumption moves are named; the JSON
// review has all.
const maxMoves = 6

func (b *builder) dataBlocks() []document.Block {
	t := document.Table{Caption: words.Of("data.caption"),
		Columns: document.Right(document.Tight(document.Columns("col.id", "col.symbol", "col.value",
			"col.range", "col.status", "col.source", "col.note"), 2), 2)}
	for _, d := range b.Review.Used {
		t.Rows = append(t.Rows, []document.Cell{{Text: draft.DatumName(d.ID), Code: true, Anchor: draft.DatumAnchor(d.ID)},
			document.Text(d.Symbol), document.Text(number.Measure(d.Value, 9, d.Unit)),
			document.Text(draft.DataRange(d)),
			document.Text(draft.DataStatus(d)), document.Text(strings.Trim(d.Source+" "+plain.Fold(d.Where), " ")),
			document.Text(plain.Fold(d.Note))})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	out := []document.Block{t}
	var tables []string
	for _, x := range b.Review.Tables {
		tables = append(tables, x.ID+" ("+draft.DataStatus(chemicals.Datum{Status: x.Status})+")")
	}
	if tables != nil {
		out = append(out, document.Paragraph{Text: words.Of("data.tables", strings.Join(tables, ", "))})
	}
	return out
}

func (b *builder) overrideBlocks() []document.Block {
	t := document.Table{Caption: words.Of("overrides.caption"),
		Columns: document.Right(document.Columns("col.id", "col.old", "col.new", "col.from", "col.source"), 1, 2)}
	for _, a := range b.Review.Applied {
		value := number.Nearest(a.Value, 9)
		if !math.IsNaN(a.Low) && !math.IsNaN(a.High) {
			value += " (" + words.Of("range", number.Nearest(a.Low, 9), number.Nearest(a.High, 9)) + ")"
		}
		t.Rows = append(t.Rows, []document.Cell{document.Code(draft.DatumName(a.ID)), document.Text(number.Nearest(a.Old, 9)),
			document.Text(number.With(value, a.Unit)),
			document.Text(strings.Trim(a.From+" "+a.At, " ")), document.Text(plain.Fold(a.Source))})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{t}
}

func (b *builder) limitBlocks() []document.Block {
	set := b.Review.Case.Limits
	if set == nil || len(set.Limits) == 0 {
		return nil
	}
	t := document.Table{Caption: words.Of("limits.caption"),
		Columns: document.Columns("col.limit", "col.on", "col.value", "col.document",
			"col.edition", "col.status")}
	for _, l := range set.Limits {
		on := number.LabelOf(l.Quantity)
		if l.Agent != "" {
			on += ", " + draft.AgentName(l.Quantity, l.Agent)
		}
		t.Rows = append(t.Rows, document.Row(l.Label, on, b.Options.Units.Limit(&l, l.Agent),
			strings.Trim(l.Document+" "+l.Section, " "), l.Edition, l.Status))
	}
	out := []document.Block{t}
	for _, n := range set.Notices {
		out = append(out, document.Paragraph{Text: plain.Fold(words.Say(n)), Tone: document.Note})
	}
	return out
}

func (b *builder) sourceBlocks() []document.Block {
	t := document.Table{Caption: words.Of("sources.caption"), Columns: document.Columns("col.key", "col.source")}
	for _, s := range b.Sources() {
		t.Rows = append(t.Rows, []document.Cell{document.Code(s.Key), document.Text(draft.SourceText(s))})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{t}
}

func (b *builder) warningBlocks() []document.Block {
	l := document.List{}
	for _, group := range [][]string{words.SayAll(b.Review.Warnings), b.Route().Notices,
		words.SayAll(b.Review.Walk.Warnings)} {
		for _, w := range group {
			if w = plain.Fold(w); !slices.Contains(l.Items, w) {
				l.Items = append(l.Items, w)
			}
		}
	}
	if len(l.Items) == 0 {
		return nil
	}
	return []document.Block{l}
}

func (b *builder) signOff() document.Section {
	s := document.Begin("signoff")
	change := document.Table{Caption: words.Of("signoff.changes"),
		Columns: document.Columns("col.version", "col.date", "col.change", "col.by")}
	change.Rows = append(change.Rows, []document.Cell{document.Text(words.Of("signoff.route", b.DigestText())),
		document.Text(plain.Fold(b.Route().Date)), document.Text(b.since()), {Blank: true}})
	for range 2 {
		change.Rows = append(change.Rows, []document.Cell{{Blank: true}, {Blank: true}, {Blank: true}, {Blank: true}})
	}
	sign := document.Table{Caption: words.Of("signoff.signatures"),
		Columns: document.Columns("col.role", "col.name", "col.signature", "col.date")}
	for _, k := range []string{"author", "supervisor", "committee", "user", "user", "user"} {
		sign.Rows = append(sign.Rows, document.ToFill(words.Of("signoff."+k), 4))
	}
	s.Blocks = []document.Block{document.Paragraph{Text: words.Of("signoff.valid")}, change, sign,
		document.Blanks{Labels: []string{words.Of("signoff.review_by")}}}
	if x := b.Options.Since; x != nil && len(x.Changed) > 0 {
		t := document.Table{Caption: words.Of("signoff.since_caption", len(x.Changed), plain.ShortDigest(x.Digest)),
			Columns: document.Columns("change.where", "change.what", "change.was", "change.is")}
		for _, d := range x.Changed {
			t.Rows = append(t.Rows, document.Row(d.Where, strings.ReplaceAll(d.What, "_", " "),
				words.OrDash(plain.Fold(d.Was)), words.OrDash(plain.Fold(d.Is))))
		}
		s.Blocks = append(s.Blocks, t)
	}
	return s
}

// since is what changed, as the record of changes has it.
func (b *builder) since() string {
	x := b.Options.Since
	switch {
	case x == nil:
		return words.Of("signoff.first")
	case len(x.Changed) == 0:
		return words.Of("signoff.same", plain.Fold(x.Title), plain.ShortDigest(x.Digest))
	}
	return words.Of("signoff.since", len(x.Changed), plain.Fold(x.Title), plain.ShortDigest(x.Digest))
}
