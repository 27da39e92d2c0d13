package reports

import (
	"strconv"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// sheetDigits is what an eight-digit pocket calculator can follow.
const sheetDigits = 7

func (b *builder) sheets() document.Section {
	s := document.Begin("sheets")
	if b.r.Sheet == nil || len(b.r.Sheet.Lines) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("sheets.none")})
		return s
	}
	t := document.Table{Caption: words.Of("sheets.caption"),
		Columns: document.Right(document.Columns("col.line", "col.symbol", "col.value", "col.made", "col.status"), 0, 2)}
	used := underFigures(b.r)
	for i := range b.r.Sheet.Lines {
		l := &b.r.Sheet.Lines[i]
		if !used[l.N] {
			continue
		}
		t.Rows = append(t.Rows, []document.Cell{document.Text(strconv.Itoa(l.N)), document.Code(l.Symbol),
			document.Text(number.Measure(l.V, sheetDigits, l.Unit)),
			document.Code(made(l)), document.Text(number.StatusText(l.Status))})
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("sheets.lead")}, t)
	return s
}

// underFigures marks the lines that some figure rests on of what happens as it
// is meant to.
func underFigures(r *hazards.Review) []bool {
	used := make([]bool, len(r.Sheet.Lines)+1)
	var mark func(int)
	mark = func(n int) {
		if n <= 0 || n >= len(used) || used[n] {
			return
		}
		used[n] = true
		for _, in := range r.Sheet.Lines[n-1].In {
			mark(in.Line)
		}
	}
	for i := range r.Figures {
		if r.Figures[i].Case.Failure == "" { // what fails would fill as many pages again, and stands in the JSON
			mark(r.Figures[i].Value.Line())
		}
	}
	return used
}

// neverGiven stands for the place of what nobody stated.
func neverGiven(l *working.Line) string {
	return "missing: " + strings.Join(words.Names(l.Missing), ", ")
}

// givenAt says where a given was stated, or what an exact number is.
func givenAt(l *working.Line) string {
	if why, ok := strings.CutPrefix(l.Ref, working.ExactPrefix); ok {
		return words.Of("made.exact", why)
	}
	if l.Ref == "" && len(l.Missing) > 0 {
		return neverGiven(l)
	}
	return words.Of("made.given", words.OrNone(statedAt(l)))
}

// made is how a line came about: "n = m*w/M, m = 10 g (line 3), ...".
func made(l *working.Line) string {
	switch l.Kind {
	case working.KindGiven:
		return givenAt(l)
	case working.KindDatum:
		return words.Of("made.datum", datumName(l.Ref))
	}
	var s []string
	switch l.Kind {
	case working.KindTable:
		s = append(s, words.Of("made.table", l.Formula))
	case working.KindModel:
		s = append(s, words.Of("made.model", l.Formula))
	case working.KindSum:
		s = append(s, l.Symbol+" = "+sumOf(l))
	default:
		if l.Formula == "" {
			s = append(s, words.Of("value.not_stated"))
		} else {
			s = append(s, l.Symbol+" = "+l.Formula)
		}
	}
	for _, in := range l.In {
		s = append(s, words.Of("made.input", in.Symbol, number.Measure(in.V, sheetDigits, in.Unit), in.Line))
	}
	if len(l.Missing) > 0 {
		s = append(s, words.Of("figure.lacks", strings.Join(words.Names(l.Missing), ", ")))
	}
	return strings.Join(s, ", ")
}

// sumOf writes a sum out: several inputs may bear one symbol, and their line
// numbers tell them apart.
func sumOf(l *working.Line) string {
	if len(l.In) == 0 {
		return "0"
	}
	var s []string
	for _, in := range l.In {
		s = append(s, in.Symbol)
	}
	return strings.Join(s, " + ")
}

func (b *builder) stockTable() document.Section {
	s := document.Begin("stock")
	s.Blocks = append(s.Blocks, b.figuresOf("stock")...)
	t := document.Table{Caption: words.Of("stock.caption"),
		Columns: document.Tight(document.Columns("col.material", "col.cas", "col.need",
			"col.container", "col.on_hand", "col.room", "col.sheet_date"), 1)}
	for _, h := range b.held() {
		t.Rows = append(t.Rows, []document.Cell{document.Text(h.name), document.Text(h.cas),
			document.Text(strings.Join(h.uses, "; ")), {Blank: true},
			{Blank: true}, {Blank: true}, {Blank: true}})
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	s.Blocks = append(s.Blocks, b.notAssessed("stock")...)
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("stock.note")})
	return s
}

// figuresOf is the figures and findings of a family, and nothing where
// there are none.
func (b *builder) figuresOf(of figure.Family) []document.Block {
	for i := range b.r.Figures {
		if inFamily(b.r.Figures[i].Quantity, of) {
			return b.about(of)
		}
	}
	return nil
}

func (b *builder) doorSheet() document.Section {
	s := document.Begin("door")
	s.Blocks = append(s.Blocks, document.Facts{Pairs: []document.Pair{
		{Name: words.Of("door.operation"), Value: plain.Clip(plain.Fold(b.route().Title), titleLength)},
		{Name: words.Of("door.materials"), Value: b.namesOf(b.held())},
		{Name: words.Of("door.gas"), Value: b.gasText()},
		{Name: words.Of("envelope.batch"), Value: b.batchText()},
	}})
	if hf, ok := b.hfPresent(); ok {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: hf, Tone: document.Warning})
	}
	s.Blocks = append(s.Blocks, b.firstLines()...)
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("door.alarm"), Tone: document.Warning})
	s.Blocks = append(append(s.Blocks, b.spillLine()...), b.standing()...)
	s.Blocks = append(s.Blocks, document.Blanks{Labels: []string{words.Of("door.person"), words.Of("door.start"),
		words.Of("door.end"), words.Of("door.shut")}},
		document.Paragraph{Text: words.Of("deference.short")})
	return s
}

func (b *builder) namesOf(h []*held) string {
	var s []string
	for _, m := range h {
		s = append(s, m.name)
	}
	return strings.Join(s, "; ")
}

const hydrochloricAcid = "7647-01-0"

// gasText names the gases the review found.
func (b *builder) gasText() string {
	var s []string
	if _, ok := b.bare("fluoride.hf_equivalent"); ok {
		s = append(s, words.Of("gas.hf_vapour"))
	}
	for _, h := range b.held() {
		if h.cas == hydrochloricAcid {
			s = append(s, words.Of("gas.hcl_vapour"))
		}
	}
	for _, q := range []string{"gas.hydrogen.total", "gas.hydride.bound", "neutralise.ammonia"} {
		if f, ok := b.bare(q); ok && (f.Value.Unknown() || f.Value.V > 0 || f.High().V > 0) {
			s = append(s, b.figureName(f)+": "+b.valueAndRange(f))
		}
	}
	for f := range b.figs.Of("neutralise.carbon_dioxide") { // of an agent the route uses, not of those it might
		if !f.Place.IsZero() && f.Place != figure.Waste && f.Agent != "" {
			s = append(s, b.figureName(f)+": "+b.valueAndRange(f))
		}
	}
	if len(s) == 0 {
		return words.Of("gas.none_found")
	}
	return strings.Join(s, "; ")
}

func (b *builder) benchCard() document.Section {
	s := document.Begin("bench")
	if hf, ok := b.hfPresent(); ok {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: hf, Tone: document.Warning})
	}
	s.Blocks = append(s.Blocks, b.firstAid()...) // at the head of the page, so that no page break cuts it
	t := document.Table{Caption: words.Of("bench.caption"),
		Columns: document.Right(document.Columns("col.step", "col.done", "col.materials", "col.time",
			"col.temperature", "col.tick"), 0)}
	for i := range b.route().Steps {
		st := &b.route().Steps[i]
		t.Rows = append(t.Rows, document.Row(strconv.Itoa(st.Number), stepText(st)+", "+stepWhere(st),
			b.stepMaterials(st),
			stepTime(st), amount(st.Temperature), "☐"))
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	s.Blocks = append(s.Blocks, b.firstLines()...)
	var stop document.List
	stop.Ordered = true
	for _, h := range b.r.Holds {
		stop.Items = append(stop.Items, plain.Fold(words.Say(h.Says)))
	}
	if len(stop.Items) > 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("bench.holds")}, stop)
	}
	s.Blocks = append(append(s.Blocks, b.spillLine()...), b.standing()...)
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("deference.short")})
	return s
}

func (b *builder) wasteLabel() document.Section {
	s := document.Begin("label")
	filled := map[string]bool{}
	for i := range b.route().Steps {
		switch st := &b.route().Steps[i]; {
		case st.Verb().Waste == "yes" && st.Into != "":
			filled[st.Into] = true
		case st.Verb().Waste == "here":
			filled[st.In] = true
		}
	}
	for i := range b.route().Places {
		if p := &b.route().Places[i]; p.Kind == "drum" {
			filled[p.Key] = true
		}
	}
	for i := range b.places {
		if c := &b.places[i]; filled[c.place.Key] {
			s.Blocks = append(s.Blocks, document.Label{Lines: b.labelLines(c)})
		}
	}
	if len(s.Blocks) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("label.none")})
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("label.note")})
	return s
}

func (b *builder) labelLines(c *contents) []string {
	lines := []string{words.Of("label.head", c.place.Key), words.Of("label.contents", strings.Join(c.names, ", "))}
	if c.tags.has("hf") {
		lines = append(lines, words.Of("label.hf"))
	}
	if c.tags.has("tmaoh") {
		lines = append(lines, words.Of("label.tmaoh"))
	}
	if c.tags.has("powder") {
		lines = append(lines, words.Of("label.gas"))
	}
	return append(lines, words.Of("label.fill"), words.Of("label.shares"), words.Of("label.date"))
}

// datumName is the id of a data row, or of what the writer stated with a range.
func datumName(id string) string {
	if at, stated := strings.CutPrefix(id, route.RangePrefix); stated {
		return route.RangePrefix + " " + route.Told(at)
	}
	return id
}
