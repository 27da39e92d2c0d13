package reports

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/reports/words"
)

func (b *builder) emergency() Section {
	s := section("emergency")
	s.Blocks = append(s.Blocks, Paragraph{Text: say("emergency.pointer")})
	if b.tags.has("hf") {
		s.Blocks = append(s.Blocks, Paragraph{say("emergency.hf"), Warning})
	}
	if b.tags.has("tmaoh") {
		s.Blocks = append(s.Blocks, Paragraph{say("emergency.tmaoh"), Warning})
	}
	s.Blocks = append(s.Blocks, b.spillWords()...)
	s.Blocks = append(s.Blocks, Blanks{[]string{say("emergency.number"), say("emergency.medical"), say("emergency.gel"),
		say("emergency.shower"), say("emergency.kit"), say("emergency.fire"), say("emergency.assembly")}})
	return s
}

func (b *builder) local() Section {
	s := section("local")
	s.Blocks = append(s.Blocks, Paragraph{Text: say("local.lead")})
	for _, group := range [...]string{"people", "place", "protection", "control"} {
		var labels []string
		for _, f := range leaveFields() {
			if f.group == group {
				labels = append(labels, say("local.field", f.label, f.id))
			}
		}
		s.Subs = append(s.Subs, Section{Key: "local-" + group, Title: say("local." + group), Blocks: []Block{Blanks{labels}}})
	}
	s.Subs = append(s.Subs, Section{Key: "local-notice", Title: say("local.notice"),
		Blocks: []Block{Paragraph{Text: say("deference.full")}, Paragraph{Text: say("deference.long")}}})
	return s
}

func (b *builder) actions() Section {
	s := section("actions")
	t := Table{Caption: say("actions.caption"), Columns: columns("col.number", "col.action", "col.owner", "col.due",
		"col.closed")}
	add := func(what string) {
		t.Rows = append(t.Rows, []Cell{text(strconv.Itoa(len(t.Rows) + 1)), text(what), {Blank: true}, {Blank: true},
			text("☐")})
	}
	for _, h := range b.r.Holds {
		add(fold(words.Say(h.Says)))
	}
	for _, u := range b.r.Unknown {
		if what, settles := words.Named(u.Missing); settles != "" {
			add(say("actions.settle", fold(what), fold(settles)))
		}
	}
	for range 3 {
		add("")
	}
	s.Blocks = append(s.Blocks, t)
	return s
}

func (b *builder) values() Section {
	s := section("values")
	s.Blocks = append(s.Blocks, Paragraph{Text: say("values.lead")})
	s.Subs = append(s.Subs,
		sub("unknown", b.unknownBlocks()), sub("assumptions", b.assumptionBlocks()),
		sub("data", b.dataBlocks()), sub("overrides", b.overrideBlocks()),
		sub("limits", b.limitBlocks()), sub("sources", b.sourceBlocks()), sub("warnings", b.warningBlocks()))
	return s
}

// sub is a part of the values section; one that is empty says so.
func sub(key string, blocks []Block) Section {
	if len(blocks) == 0 {
		blocks = []Block{Paragraph{Text: say("values.none_" + key)}}
	}
	return Section{Key: "values-" + key, Title: say("values." + key), Blocks: blocks}
}

func (b *builder) unknownBlocks() []Block {
	t := Table{Caption: say("unknown.caption"), Columns: columns("col.missing", "col.id", "col.settle", "col.figures")}
	for _, u := range b.r.Unknown {
		what, settles := words.Ask(u.Missing)
		t.Rows = append(t.Rows, []Cell{text(fold(what)), code(words.Name(u.Missing)), text(fold(settles)),
			code(strings.Join(names(u.Figures), ", "))})
	}
	out := b.notAssessedAll()
	if len(t.Rows) > 0 {
		out = append([]Block{t}, out...)
	}
	return out
}

func (b *builder) notAssessedAll() []Block { return b.notAssessed() }

func (b *builder) assumptionBlocks() []Block {
	t := Table{Caption: say("assumptions.caption"),
		Columns: right(columns("col.id", "col.assumed", "col.value", "col.moves"), 2)}
	for _, a := range b.r.Assumptions {
		t.Rows = append(t.Rows, []Cell{code(datumName(a.ID)), text(fold(a.Text)), text(measure(a.Value, 6, a.Unit)),
			text(b.movesText(a.Moves, maxMoves))})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []Block{t}
}

// maxMoves is how many of the figures an assumption moves are named; the JSON
// review has all.
const maxMoves = 6

func (b *builder) movesText(moves []hazards.Move, n int) string {
	var s []string
	for _, m := range moves[:min(n, len(moves))] {
		name := m.Figure.String()
		if f, ok := b.byID[m.Figure]; ok {
			name = b.figureName(f)
		}
		s = append(s, say("move", name, b.ending(m.Figure, m.From), b.ending(m.Figure, m.To)))
	}
	if more := len(moves) - n; more > 0 {
		s = append(s, say("moves.more", more))
	}
	return strings.Join(s, "; ")
}

func (b *builder) dataBlocks() []Block {
	t := Table{Caption: say("data.caption"), Columns: right(tight(columns("col.id", "col.symbol", "col.value",
		"col.range", "col.status", "col.source", "col.note"), 2), 2)}
	for _, d := range b.r.Used {
		t.Rows = append(t.Rows, []Cell{code(datumName(d.ID)), text(d.Symbol), text(measure(d.Value, 9, d.Unit)),
			text(dataRange(d)),
			text(dataStatus(d)), text(strings.Trim(d.Source+" "+fold(d.Where), " ")), text(fold(d.Note))})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []Block{t}
}

func dataRange(d chemicals.Datum) string {
	if math.IsNaN(d.Low) || math.IsNaN(d.High) {
		return say("range.none")
	}
	return say("range", nearest(d.Low, 9), nearest(d.High, 9))
}

// dataStatus marks what was not seen in a source, so that it stands out in
// print.
func dataStatus(d chemicals.Datum) string {
	s := d.Status
	if s == "memory" || s == "assumed" {
		s = say("data.doubtful", s)
	}
	if d.OverriddenBy != "" {
		s += ", " + say("data.overridden", d.OverriddenBy)
	}
	return s
}

func (b *builder) overrideBlocks() []Block {
	t := Table{Caption: say("overrides.caption"),
		Columns: right(columns("col.id", "col.old", "col.new", "col.from", "col.source"), 1, 2)}
	for _, a := range b.r.Applied {
		value := nearest(a.Value, 9)
		if !math.IsNaN(a.Low) && !math.IsNaN(a.High) {
			value += " (" + say("range", nearest(a.Low, 9), nearest(a.High, 9)) + ")"
		}
		t.Rows = append(t.Rows, []Cell{code(datumName(a.ID)), text(nearest(a.Old, 9)), text(with(value, a.Unit)),
			text(strings.Trim(a.From+" "+a.At, " ")), text(fold(a.Source))})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []Block{t}
}

func (b *builder) limitBlocks() []Block {
	set := b.r.Case.Limits
	if set == nil || len(set.Limits) == 0 {
		return nil
	}
	t := Table{Caption: say("limits.caption"), Columns: columns("col.limit", "col.on", "col.value", "col.document",
		"col.edition", "col.status")}
	for _, l := range set.Limits {
		on := labelOf(l.Quantity)
		if l.Agent != "" {
			on += ", " + agentName(l.Agent)
		}
		t.Rows = append(t.Rows, []Cell{text(l.Label), text(on), text(measure(l.Value, 6, l.Unit)),
			text(strings.Trim(l.Document+" "+l.Section, " ")), text(l.Edition), text(l.Status)})
	}
	out := []Block{t}
	for _, n := range set.Notices {
		out = append(out, Paragraph{fold(words.Say(n)), Note})
	}
	return out
}

// sources are the sources of the rows used, in the order of first use.
func (b *builder) sources() []chemicals.Source {
	st := b.r.Case.Store
	if st == nil {
		return nil
	}
	seen := map[string]bool{}
	var out []chemicals.Source
	for _, d := range b.r.Used {
		for _, src := range sourcesOf(st, d) {
			if !seen[src.Key] {
				seen[src.Key] = true
				out = append(out, src)
			}
		}
	}
	return out
}

// sourcesOf resolves the keys of a row, which blanks part.
func sourcesOf(st *chemicals.Store, d chemicals.Datum) []chemicals.Source {
	var out []chemicals.Source
	for _, key := range strings.Fields(d.Source) {
		if src, ok := st.Source(key); ok {
			out = append(out, src)
		}
	}
	return out
}

func (b *builder) sourceBlocks() []Block {
	t := Table{Caption: say("sources.caption"), Columns: columns("col.key", "col.source")}
	for _, s := range b.sources() {
		t.Rows = append(t.Rows, []Cell{code(s.Key), text(sourceText(s))})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []Block{t}
}

func sourceText(s chemicals.Source) string {
	var p []string
	for _, v := range []string{s.Title, s.Publisher, s.Year, s.DOI, s.Section} {
		if v != "" {
			p = append(p, v)
		}
	}
	return strings.Join(p, ", ")
}

func (b *builder) warningBlocks() []Block {
	l := List{}
	for _, group := range [][]string{words.SayAll(b.r.Warnings), b.route().Notices, words.SayAll(b.r.Walk.Warnings)} {
		for _, w := range group {
			if w = fold(w); !slices.Contains(l.Items, w) {
				l.Items = append(l.Items, w)
			}
		}
	}
	if len(l.Items) == 0 {
		return nil
	}
	return []Block{l}
}

func (b *builder) signOff() Section {
	s := section("signoff")
	change := Table{Caption: say("signoff.changes"), Columns: columns("col.version", "col.date", "col.change", "col.by")}
	for range 3 {
		change.Rows = append(change.Rows, []Cell{{Blank: true}, {Blank: true}, {Blank: true}, {Blank: true}})
	}
	sign := Table{Caption: say("signoff.signatures"),
		Columns: columns("col.role", "col.name", "col.signature", "col.date")}
	for _, k := range []string{"author", "supervisor", "committee", "user", "user", "user"} {
		sign.Rows = append(sign.Rows, toFill(say("signoff."+k), 4))
	}
	s.Blocks = []Block{Paragraph{Text: say("signoff.valid")}, change, sign, Blanks{[]string{say("signoff.review_by")}}}
	return s
}
