package review

import (
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
	"etchbound/scaling"
)

func (b *builder) purpose() document.Section {
	s := document.Begin("purpose")
	r := b.Route()
	s.Blocks = append(s.Blocks, document.Facts{Pairs: []document.Pair{
		{Name: words.Of("purpose.title"), Value: plain.Fold(r.Title)},
		{Name: words.Of("purpose.basis"), Value: basisOf(r.Basis)},
		{Name: words.Of("purpose.batch"), Value: b.BatchText()},
		{Name: words.Of("purpose.powder"), Value: b.powderText()},
		{Name: words.Of("purpose.site"), Value: b.siteText()},
	}})
	if strings.TrimSpace(r.Purpose) != "" {
		s.Blocks = append(s.Blocks, document.Prose{Markdown: r.Purpose})
	} else {
		s.Blocks = append(s.Blocks, document.Blanks{Labels: []string{words.Of("purpose.blank")}})
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("purpose.bounds")},
		document.Paragraph{Text: words.Of("purpose.reading")})
	if strings.TrimSpace(r.Basis.Note) != "" {
		s.Blocks = append(s.Blocks, document.Prose{Markdown: r.Basis.Note})
	}
	return s
}

func basisOf(v route.Basis) string {
	var s []string
	for _, p := range []string{v.Title, v.Publisher, v.Year, v.DOI, v.Section} {
		if p != "" {
			s = append(s, plain.Fold(p))
		}
	}
	status := v.Status
	if key := "basis." + v.Status; words.Has(key) {
		status = words.Of(key)
	}
	if status != "" {
		s = append(s, status)
	}
	return strings.Join(s, ", ")
}

func (b *builder) powderText() string {
	p := b.Route().Precursor
	if p == nil {
		return words.Of("powder.none")
	}
	s := []string{words.Of("batch.of", draft.Amount(p.Mass), p.Phase.Text)}
	if p.Purity.Set {
		s = append(s, words.Of("powder.purity", draft.Amount(p.Purity)))
	}
	if p.ParticleSize.Set {
		s = append(s, words.Of("powder.size", draft.Amount(p.ParticleSize)))
	}
	switch {
	case !p.Stated:
		s = append(s, words.Of("powder.unstated"))
	case len(p.Impurities) == 0:
		s = append(s, words.Of("powder.none_stated", plain.Fold(p.Source)))
	}
	for i := range p.Impurities {
		s = append(s, words.Of("powder.impurity", draft.Amount(p.Impurities[i].Share), p.Impurities[i].Formula.Text))
	}
	return strings.Join(s, ", ")
}

func (b *builder) siteText() string {
	site := b.Review.Case.Site
	if site == nil {
		return words.Of("site.none")
	}
	s := []string{plain.Fold(site.Title)}
	if site.Jurisdiction != "" {
		s = append(s, strings.ReplaceAll(site.Jurisdiction, "_", " "))
	}
	if h := site.Hood; h != nil && h.Flow.Set {
		s = append(s, words.Of("site.hood", draft.Amount(h.Flow)))
	}
	return strings.Join(s, ", ")
}

func (b *builder) steps() document.Section {
	s := document.Begin("steps")
	t := document.Table{Caption: words.Of("steps.caption"),
		Columns: document.Right(document.Columns("col.step", "col.done", "col.where", "col.materials",
			"col.time", "col.temperature", "col.attended"), 0)}
	for i := range b.Route().Steps {
		t.Rows = append(t.Rows, b.stepRow(&b.Route().Steps[i]))
	}
	if len(t.Rows) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("steps.none")})
		return s
	}
	s.Blocks = append(s.Blocks, t)
	for i := range b.Route().Steps {
		if st := &b.Route().Steps[i]; strings.TrimSpace(st.Note) != "" {
			s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("steps.note", st.Number)},
				document.Prose{Markdown: st.Note})
		}
	}
	return s
}

func (b *builder) stepRow(s *route.Step) []document.Cell {
	return document.Row(strconv.Itoa(s.Number), draft.StepText(s), draft.StepWhere(s), b.StepMaterials(s),
		draft.StepTime(s), draft.Amount(s.Temperature), draft.Attended(s))
}

func (b *builder) materials() document.Section {
	s := document.Begin("materials")
	t := document.Table{Caption: words.Of("materials.caption"),
		Columns: document.Tight(document.Columns("col.material", "col.formula", "col.cas", "col.amount", "col.on_hand",
			"col.room", "col.sheet_date"), 2)}
	run := scaling.RunOf(b.Review)
	for _, h := range b.Held() {
		t.Rows = append(t.Rows, []document.Cell{document.Text(h.Name), document.Text(words.OrDash(h.Formula)), casOf(h.Cas),
			document.Text(strings.Join(h.Uses, "; ")), onHand(&run, h.Cas), {Blank: true}, {Blank: true}})
	}
	t.Rows = append(t.Rows, b.formedRow()...)
	if len(t.Rows) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("materials.none")})
		return s
	}
	s.Blocks = append(s.Blocks, t, document.Paragraph{Text: words.Of("materials.note")})
	s.Blocks = append(s.Blocks, b.classes()...)
	if draft.InAny(b.Review.Figures, "stock") {
		s.Blocks = append(s.Blocks, b.About("stock")...)
	}
	s.Blocks = append(s.Blocks, b.forms())
	s.Blocks = append(s.Blocks, b.molar(&run)...)
	s.Blocks = append(s.Blocks, b.airLimits()...)
	s.Blocks = append(s.Blocks, b.thresholds(&run)...)
	s.Blocks = append(s.Blocks, b.receiving()...)
	return s
}

// casOf is a number of the register; a blank where none is held, for the label of the bottle.
func casOf(number string) document.Cell {
	if number == "" {
		return document.Cell{Blank: true}
	}
	return document.Text(number)
}

func (b *builder) chemistry() document.Section {
	s := document.Begin("chemistry")
	if facts := b.facts(); len(facts) > 0 {
		s.Blocks = append(s.Blocks, document.List{Items: facts})
	}
	s.Blocks = append(s.Blocks, b.equations()) // first, as a table fills a sheet that no picture fits on
	s.Blocks = append(s.Blocks, firstPrinted(append(b.fed(), b.fluorine()...))...)
	s.Blocks = append(s.Blocks, b.About("account", "fluoride")...)
	s.Blocks = append(s.Blocks, b.speciated()...)
	if t := b.account(); len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, document.Fold{Summary: words.Of("account.fold", len(t.Rows)),
			Blocks: []document.Block{t}})
	} else {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("account.none")})
	}
	return s
}

// facts are those of the walk that no hold point tells, which stand on page 1; what is so
// in several steps is said once.
func (b *builder) facts() []string {
	var says []phrase.Phrase
	for _, f := range b.Review.Walk.Facts {
		if !slices.ContainsFunc(b.Review.Holds, func(h hazards.Hold) bool { return h.Tells(f.Says) }) {
			says = append(says, f.Told())
		}
	}
	var out []string
	for _, text := range words.SayAll(words.Together(says)) {
		out = append(out, plain.Fold(text))
	}
	return out
}

func (b *builder) account() document.Table {
	t := document.Table{Caption: words.Of("account.caption"),
		Columns: document.Right(document.Columns("col.element", "col.in", "col.out", "col.error"), 1, 3)}
	for _, e := range b.Review.Walk.Account {
		var out []string
		for _, k := range sortedKeys(e.Out) {
			if v := draft.Tiny(e.Out[k]); v != 0 {
				out = append(out, words.Of("account.out", k, number.Said(v, 6, "")))
			}
		}
		t.Rows = append(t.Rows, document.Row(e.Element, number.Nearest(e.In, 6), strings.Join(out, "; "),
			number.Nearest(draft.Tiny(e.Error), 2)))
	}
	return t
}

func sortedKeys[V any](m map[string]V) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}
