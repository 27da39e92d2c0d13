package reports

import (
	"strconv"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// Build lays out the review document. It never fails: what was not computed
// is said to be not known or not assessed.
func Build(r hazards.Review, o draft.Options) document.Document {
	b := newBuilder(&r, o)
	d := document.Document{Title: b.Title(), Lang: words.Of("lang"), Paper: o.Paper,
		Digest: plain.ShortDigest(b.Route().Digest)}
	d.Sections = append(d.Sections, b.pageOne())
	if o.Brief {
		d.Sections = append(d.Sections, b.figuresOnly())
		return d
	}
	body := b.body()
	for i := range body {
		body[i].Number = strconv.Itoa(i + 1)
	}
	annexes := b.annexes()
	for i := range annexes {
		annexes[i].Number = string(rune('A' + i))
		annexes[i].Page = true
	}
	body[0].Page = true
	d.Sections = append(append(d.Sections, body...), annexes...)
	return d
}

// body is every numbered section, in the order the committee reads them.
func (b *builder) body() []document.Section {
	out := []document.Section{
		b.purpose(), b.steps(), b.materials(), b.chemistry(), b.heat(), b.gas(), b.air(),
		b.skin(), b.solids(), b.storage(), b.waste(), b.scale(), b.upset(), b.safeguards(),
		b.construction(), b.pairs(), b.emergency(), b.local(), b.actions(), b.values(),
	}
	if b.Options.Sample != nil {
		out = append(out, b.sampling())
	}
	return append(out, b.signOff())
}

func (b *builder) annexes() []document.Section {
	return []document.Section{b.sheets(), b.stockTable(), b.doorSheet(), b.benchCard(), b.wasteLabel()}
}

func (b *builder) figuresOnly() document.Section {
	s := document.Begin("figures")
	s.Blocks = append(s.Blocks, b.FigureTable(func(*figure.Figure) bool { return true })...)
	s.Blocks = append(s.Blocks, b.NotAssessed()...)
	return s
}
