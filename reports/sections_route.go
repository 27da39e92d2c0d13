package reports

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/reports/words"
)

func (b *builder) purpose() Section {
	s := section("purpose")
	r := b.route()
	s.Blocks = append(s.Blocks, Facts{[]Pair{
		{say("purpose.title"), fold(r.Title)},
		{say("purpose.basis"), basisOf(r.Basis)},
		{say("purpose.batch"), b.batchText()},
		{say("purpose.powder"), b.powderText()},
		{say("purpose.site"), b.siteText()},
	}})
	if strings.TrimSpace(r.Purpose) != "" {
		s.Blocks = append(s.Blocks, Prose{r.Purpose})
	} else {
		s.Blocks = append(s.Blocks, Blanks{[]string{say("purpose.blank")}})
	}
	s.Blocks = append(s.Blocks, Paragraph{Text: say("purpose.bounds")})
	if strings.TrimSpace(r.Basis.Note) != "" {
		s.Blocks = append(s.Blocks, Prose{r.Basis.Note})
	}
	return s
}

func basisOf(v route.Basis) string {
	var s []string
	for _, p := range []string{v.Title, v.Publisher, v.Year, v.DOI, v.Section} {
		if p != "" {
			s = append(s, fold(p))
		}
	}
	status := v.Status
	if key := "basis." + v.Status; said(key) {
		status = say(key)
	}
	if status != "" {
		s = append(s, status)
	}
	return strings.Join(s, ", ")
}

func (b *builder) powderText() string {
	p := b.route().Precursor
	if p == nil {
		return say("powder.none")
	}
	s := []string{say("batch.of", amount(p.Mass), p.Phase.Text)}
	if p.Purity.Set {
		s = append(s, say("powder.purity", amount(p.Purity)))
	}
	if p.ParticleSize.Set {
		s = append(s, say("powder.size", amount(p.ParticleSize)))
	}
	switch {
	case !p.Stated:
		s = append(s, say("powder.unstated"))
	case len(p.Impurities) == 0:
		s = append(s, say("powder.none_stated", fold(p.Source)))
	}
	for i := range p.Impurities {
		s = append(s, say("powder.impurity", amount(p.Impurities[i].Share), p.Impurities[i].Formula.Text))
	}
	return strings.Join(s, ", ")
}

func (b *builder) siteText() string {
	site := b.r.Case.Site
	if site == nil {
		return say("site.none")
	}
	s := []string{fold(site.Title)}
	if site.Jurisdiction != "" {
		s = append(s, strings.ReplaceAll(site.Jurisdiction, "_", " "))
	}
	if h := site.Hood; h != nil && h.Flow.Set {
		s = append(s, say("site.hood", amount(h.Flow)))
	}
	return strings.Join(s, ", ")
}

func (b *builder) steps() Section {
	s := section("steps")
	t := Table{Caption: say("steps.caption"), Columns: right(columns("col.step", "col.done", "col.where", "col.materials",
		"col.time", "col.temperature", "col.attended"), 0)}
	for i := range b.route().Steps {
		t.Rows = append(t.Rows, b.stepRow(&b.route().Steps[i]))
	}
	if len(t.Rows) == 0 {
		s.Blocks = append(s.Blocks, Paragraph{Text: say("steps.none")})
		return s
	}
	s.Blocks = append(s.Blocks, t)
	for i := range b.route().Steps {
		if st := &b.route().Steps[i]; strings.TrimSpace(st.Note) != "" {
			s.Blocks = append(s.Blocks, Paragraph{Text: say("steps.note", st.Number)}, Prose{st.Note})
		}
	}
	return s
}

func (b *builder) stepRow(s *route.Step) []Cell {
	return []Cell{text(strconv.Itoa(s.Number)), text(stepText(s)), text(stepWhere(s)), text(b.stepMaterials(s)),
		text(stepTime(s)), text(amount(s.Temperature)), text(attended(s))}
}

// stepText is the verb with what the writer added to it.
func stepText(s *route.Step) string {
	verb := strings.ReplaceAll(s.Do, "_", " ")
	if key := "verb." + s.Do; said(key) {
		verb = say(key)
	}
	t := []string{verb}
	if s.Label != "" {
		t[0] = say("step.label", verb, fold(s.Label))
	}
	if s.Cycles > 0 {
		t = append(t, say("step.cycles", s.Cycles))
	}
	if s.TargetPH != nil {
		t = append(t, say("step.target", nearest(*s.TargetPH, 3)))
	}
	if s.Retained.Set {
		t = append(t, say("step.retained", amount(s.Retained)))
	}
	if s.Part.Set {
		t = append(t, say("step.part", amount(s.Part)))
	}
	if s.Current.Set {
		t = append(t, amount(s.Current))
	}
	if s.Stirred != nil && !*s.Stirred {
		t = append(t, say("step.unstirred"))
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
			h.uses = append(h.uses, say("material.use", use, s.Number)+cyclesOf(s))
		}
	}
	return out
}

func cyclesOf(s *route.Step) string {
	switch {
	case !s.Verb().Cycles():
		return ""
	case s.Cycles > 0:
		return say("material.cycles", s.Cycles)
	}
	return say("material.each_cycle")
}

func (b *builder) materials() Section {
	s := section("materials")
	t := Table{Caption: say("materials.caption"),
		Columns: tight(columns("col.material", "col.formula", "col.cas", "col.amount", "col.on_hand"), 2)}
	for _, h := range b.held() {
		t.Rows = append(t.Rows, []Cell{text(h.name), text(h.formula), text(h.cas), text(strings.Join(h.uses, "; ")),
			{Blank: true}})
	}
	if len(t.Rows) == 0 {
		s.Blocks = append(s.Blocks, Paragraph{Text: say("materials.none")})
		return s
	}
	s.Blocks = append(s.Blocks, t, Paragraph{Text: say("materials.note")})
	return s
}

func (b *builder) chemistry() Section {
	s := section("chemistry")
	var facts List
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
		s.Blocks = append(s.Blocks, Paragraph{Text: say("account.none")})
	}
	return s
}

func factText(f process.Fact) string {
	if f.Step > 0 {
		return say("fact.step", f.Step, fold(words.Say(f.Says)))
	}
	return fold(words.Say(f.Says))
}

func (b *builder) account() Table {
	t := Table{Caption: say("account.caption"),
		Columns: right(columns("col.element", "col.in", "col.out", "col.error"), 1, 3)}
	for _, e := range b.r.Walk.Account {
		var out []string
		for _, k := range sortedKeys(e.Out) {
			if v := tiny(e.Out[k]); v != 0 {
				out = append(out, say("account.out", k, nearest(v, 6)))
			}
		}
		t.Rows = append(t.Rows, []Cell{text(e.Element), text(nearest(e.In, 6)), text(strings.Join(out, "; ")),
			text(nearest(tiny(e.Error), 2))})
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
