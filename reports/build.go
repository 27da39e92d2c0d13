package reports

import (
	"strconv"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// Options is what a review needs to know beyond the review itself.
type Options struct {
	Brief       bool   // page 1 and the table of figures only
	Version     string // of the program
	DataVersion string // of the embedded data
	Platform    string // operating system and architecture
	Paper       document.Paper
	Units       number.Units    // in which pressures and what is in air are written
	Sample      *scaling.Sample // draws of the data; nil where none were made
}

// Build lays out the review document. It never fails: what was not computed
// is said to be not known or not assessed.
func Build(r hazards.Review, o Options) document.Document {
	b := newBuilder(&r, o)
	d := document.Document{Title: b.title(), Lang: words.Of("lang"), Paper: o.Paper,
		Digest: plain.ShortDigest(b.route().Digest)}
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

// builder is one review on its way to a document.
type builder struct {
	r       *hazards.Review
	o       Options
	figs    *figure.Set
	byID    map[figure.ID]*figure.Figure
	missing map[string]bool // quantities no model covers yet
	places  []contents
	tags    tagSet // of the whole route
}

// bare is the figure of a quantity for the whole route.
func (b *builder) bare(quantity string) (*figure.Figure, bool) { return b.at(quantity, figure.Place{}) }

// at is the figure of a quantity at a place, by no case in particular.
func (b *builder) at(quantity string, place figure.Place) (*figure.Figure, bool) {
	f, ok := b.byID[figure.ID{Quantity: quantity, Place: place}]
	return f, ok
}

func newBuilder(r *hazards.Review, o Options) *builder {
	b := &builder{r: r, o: o, figs: figure.NewSet(r.Figures), byID: map[figure.ID]*figure.Figure{},
		missing: map[string]bool{}}
	for i := range r.Figures {
		b.byID[r.Figures[i].ID] = &r.Figures[i]
	}
	for _, q := range r.NotAssessed {
		b.missing[q] = true
	}
	b.places = whatMeets(r.Case.Route)
	b.tags = b.routeTags()
	return b
}

// body is every numbered section, in the order the committee reads them.
func (b *builder) body() []document.Section {
	out := []document.Section{
		b.purpose(), b.steps(), b.materials(), b.chemistry(), b.heat(), b.gas(), b.air(),
		b.skin(), b.solids(), b.storage(), b.waste(), b.scale(), b.upset(), b.safeguards(),
		b.construction(), b.pairs(), b.emergency(), b.local(), b.actions(), b.values(),
	}
	if b.o.Sample != nil {
		out = append(out, b.sampling())
	}
	return append(out, b.signOff())
}

func (b *builder) annexes() []document.Section {
	return []document.Section{b.sheets(), b.stockTable(), b.doorSheet(), b.benchCard(), b.wasteLabel()}
}

func (b *builder) figuresOnly() document.Section {
	s := document.Begin("figures")
	s.Blocks = append(s.Blocks, b.figureTable(func(*figure.Figure) bool { return true })...)
	s.Blocks = append(s.Blocks, b.notAssessed()...)
	return s
}

// titleLength is the longest title page 1 has room for; the purpose section
// repeats a longer one whole.
const titleLength = 100

func (b *builder) title() string { return plain.Clip(plain.Fold(b.route().Title), titleLength) }
