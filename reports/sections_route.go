package reports

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

func (b *builder) purpose() document.Section {
	s := document.Begin("purpose")
	r := b.route()
	s.Blocks = append(s.Blocks, document.Facts{Pairs: []document.Pair{
		{Name: words.Of("purpose.title"), Value: plain.Fold(r.Title)},
		{Name: words.Of("purpose.basis"), Value: basisOf(r.Basis)},
		{Name: words.Of("purpose.batch"), Value: b.batchText()},
		{Name: words.Of("purpose.powder"), Value: b.powderText()},
		{Name: words.Of("purpose.site"), Value: b.siteText()},
	}})
	if strings.TrimSpace(r.Purpose) != "" {
		s.Blocks = append(s.Blocks, document.Prose{Markdown: r.Purpose})
	} else {
		s.Blocks = append(s.Blocks, document.Blanks{Labels: []string{words.Of("purpose.blank")}})
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("purpose.bounds")})
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
	p := b.route().Precursor
	if p == nil {
		return words.Of("powder.none")
	}
	s := []string{words.Of("batch.of", amount(p.Mass), p.Phase.Text)}
	if p.Purity.Set {
		s = append(s, words.Of("powder.purity", amount(p.Purity)))
	}
	if p.ParticleSize.Set {
		s = append(s, words.Of("powder.size", amount(p.ParticleSize)))
	}
	switch {
	case !p.Stated:
		s = append(s, words.Of("powder.unstated"))
	case len(p.Impurities) == 0:
		s = append(s, words.Of("powder.none_stated", plain.Fold(p.Source)))
	}
	for i := range p.Impurities {
		s = append(s, words.Of("powder.impurity", amount(p.Impurities[i].Share), p.Impurities[i].Formula.Text))
	}
	return strings.Join(s, ", ")
}

func (b *builder) siteText() string {
	site := b.r.Case.Site
	if site == nil {
		return words.Of("site.none")
	}
	s := []string{plain.Fold(site.Title)}
	if site.Jurisdiction != "" {
		s = append(s, strings.ReplaceAll(site.Jurisdiction, "_", " "))
	}
	if h := site.Hood; h != nil && h.Flow.Set {
		s = append(s, words.Of("site.hood", amount(h.Flow)))
	}
	return strings.Join(s, ", ")
}

func (b *builder) steps() document.Section {
	s := document.Begin("steps")
	t := document.Table{Caption: words.Of("steps.caption"),
		Columns: document.Right(document.Columns("col.step", "col.done", "col.where", "col.materials",
			"col.time", "col.temperature", "col.attended"), 0)}
	for i := range b.route().Steps {
		t.Rows = append(t.Rows, b.stepRow(&b.route().Steps[i]))
	}
	if len(t.Rows) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("steps.none")})
		return s
	}
	s.Blocks = append(s.Blocks, t)
	for i := range b.route().Steps {
		if st := &b.route().Steps[i]; strings.TrimSpace(st.Note) != "" {
			s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("steps.note", st.Number)},
				document.Prose{Markdown: st.Note})
		}
	}
	return s
}

func (b *builder) stepRow(s *route.Step) []document.Cell {
	return document.Row(strconv.Itoa(s.Number), stepText(s), stepWhere(s), b.stepMaterials(s),
		stepTime(s), amount(s.Temperature), attended(s))
}

// stepText is the verb with what the writer added to it.
func stepText(s *route.Step) string {
	verb := strings.ReplaceAll(s.Do, "_", " ")
	if key := "verb." + s.Do; words.Has(key) {
		verb = words.Of(key)
	}
	t := []string{verb}
	if s.Label != "" {
		t[0] = words.Of("step.label", verb, plain.Fold(s.Label))
	}
	if s.Cycles > 0 {
		t = append(t, words.Of("step.cycles", s.Cycles))
	}
	if s.TargetPH != nil {
		t = append(t, words.Of("step.target", number.Nearest(*s.TargetPH, 3)))
	}
	if s.Retained.Set {
		t = append(t, words.Of("step.retained", amount(s.Retained)))
	}
	if s.Part.Set {
		t = append(t, words.Of("step.part", amount(s.Part)))
	}
	if s.Current.Set {
		t = append(t, amount(s.Current))
	}
	if s.Stirred != nil && !*s.Stirred {
		t = append(t, words.Of("step.unstirred"))
	}
	return strings.Join(t, ", ")
}

func (b *builder) stepMaterials(s *route.Step) string {
	var t []string
	for i := range s.What {
		t = append(t, b.materialText(&s.What[i]))
	}
	return strings.Join(t, "; ")
}

// held is one material of the route and every step that puts some in.
type held struct {
	name, formula, cas string
	uses               []string
}

func (b *builder) held() []*held {
	var out []*held
	at := map[string]*held{}
	for i := range b.route().Steps {
		s := &b.route().Steps[i]
		for j := range s.What {
			m := &s.What[j]
			name := b.materialName(m)
			h := at[name]
			if h == nil {
				h = &held{name: name}
				if m.Substance != nil {
					h.formula, h.cas = m.Substance.Formula.Text, m.Substance.CAS
				}
				at[name] = h
				out = append(out, h)
			}
			use := strings.TrimPrefix(b.materialText(m), name+" ")
			h.uses = append(h.uses, words.Of("material.use", use, s.Number)+cyclesOf(s))
		}
	}
	return out
}

func cyclesOf(s *route.Step) string {
	switch {
	case !s.Verb().Cycles():
		return ""
	case s.Cycles > 0:
		return words.Of("material.cycles", s.Cycles)
	}
	return words.Of("material.each_cycle")
}

func (b *builder) materials() document.Section {
	s := document.Begin("materials")
	t := document.Table{Caption: words.Of("materials.caption"),
		Columns: document.Tight(document.Columns("col.material", "col.formula", "col.cas", "col.amount", "col.on_hand"), 2)}
	for _, h := range b.held() {
		t.Rows = append(t.Rows, []document.Cell{document.Text(h.name), document.Text(h.formula), document.Text(h.cas),
			document.Text(strings.Join(h.uses, "; ")),
			{Blank: true}})
	}
	if len(t.Rows) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("materials.none")})
		return s
	}
	s.Blocks = append(s.Blocks, t, document.Paragraph{Text: words.Of("materials.note")})
	return s
}

func (b *builder) chemistry() document.Section {
	s := document.Begin("chemistry")
	var facts document.List
	for _, f := range b.r.Walk.Facts {
		facts.Items = append(facts.Items, factText(f))
	}
	if len(facts.Items) > 0 {
		s.Blocks = append(s.Blocks, facts)
	}
	s.Blocks = append(s.Blocks, b.about("account", "fluoride")...)
	if t := b.account(); len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	} else {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("account.none")})
	}
	return s
}

func factText(f process.Fact) string {
	if f.Step > 0 {
		return words.Of("fact.step", f.Step, plain.Fold(words.Say(f.Says)))
	}
	return plain.Fold(words.Say(f.Says))
}

func (b *builder) account() document.Table {
	t := document.Table{Caption: words.Of("account.caption"),
		Columns: document.Right(document.Columns("col.element", "col.in", "col.out", "col.error"), 1, 3)}
	for _, e := range b.r.Walk.Account {
		var out []string
		for _, k := range sortedKeys(e.Out) {
			if v := tiny(e.Out[k]); v != 0 {
				out = append(out, words.Of("account.out", k, number.Nearest(v, 6)))
			}
		}
		t.Rows = append(t.Rows, document.Row(e.Element, number.Nearest(e.In, 6), strings.Join(out, "; "),
			number.Nearest(tiny(e.Error), 2)))
	}
	return t
}

// tiny is v, or 0 where it is only rounding of the machine.
func tiny(v float64) float64 {
	if math.Abs(v) < 1e-12 {
		return 0
	}
	return v
}

func sortedKeys[V any](m map[string]V) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}
