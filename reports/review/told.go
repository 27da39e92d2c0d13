package review

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/hazards/meeting"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
	"etchbound/scaling"
	tables "etchbound/schemas/columns"
)

//go:embed reactions.csv
var reactionsCSV string

//go:embed incidents.csv
var incidentsCSV string

//go:embed ways.csv
var waysCSV string

// reaction is a balanced equation of two tags that meet.
type reaction struct {
	pair                           meeting.Pair
	equation, says, source, status string
}

var reactions = sync.OnceValue(func() []reaction {
	return tables.Must("reports/review/reactions.csv", reactionsCSV, func(r tables.Row) reaction {
		pair := meeting.Pair{A: meeting.SideOf(r, "a"), B: meeting.SideOf(r, "b")}
		return reaction{pair, r.Named("equation"), r.Named("says"), r.Named("source"), r.Named("status")}
	})
})

// tagged is a sentence for a route that has a tag.
type tagged struct {
	tag                  meeting.Tag
	text, source, status string
}

func taggedRows(file, text, column string) []tagged {
	return tables.Must(file, text, func(r tables.Row) tagged {
		return tagged{meeting.Tag(r.Named("tag")), r.Named(column), r.Named("source"), r.Named("status")}
	})
}

var incidents = sync.OnceValue(func() []tagged {
	return taggedRows("reports/review/incidents.csv", incidentsCSV, "event")
})

var ways = sync.OnceValue(func() []tagged { return taggedRows("reports/review/ways.csv", waysCSV, "ways") })

// equations is what forms, as equations: the etch by its own numbers, and what pairs that
// meet give.
func (b *builder) equations() document.Block {
	t := document.Table{Caption: words.Of("equations.caption"), Columns: document.OnScreen(document.Columns(
		"equations.equation", "equations.says", "col.met", "col.source", "col.status"), 3)}
	for _, x := range scaling.ReactionsOf(b.Review) {
		if !x.Known {
			t.Rows = append(t.Rows, document.Row(words.Of("equations.unheld", x.Phase), words.Of("value.not_assessed"),
				words.Of("equations.step", x.Step), words.Of("value.dash"), words.Of("value.dash")))
			continue
		}
		n := func(v float64) string { return number.Nearest(v, 3) }
		t.Rows = append(t.Rows, document.Row(words.Of("equations.etch", x.Phase, n(x.Acid), n(x.Water),
			terminations(&x), n(x.Hydrogen)), words.Of("equations.etch_says"),
			words.Of("equations.step", x.Step), words.Of("equations.walk"), words.Of("equations.computed")))
	}
	for _, x := range reactions() {
		if at := b.meet(&x.pair); len(at) > 0 {
			t.Rows = append(t.Rows, document.Row(x.equation, x.says, strings.Join(at, "; "), x.source, x.status))
		}
	}
	if len(t.Rows) == 0 {
		return document.Paragraph{Text: words.Of("equations.none")}
	}
	return t
}

// terminations are what the product bears for each formula unit, without what it has none of.
func terminations(x *scaling.Reaction) string {
	var out []string
	for _, of := range [...]struct {
		name string
		n    float64
	}{{"O", x.Oxygen}, {"F", x.Fluorine}, {"OH", x.Hydroxyl}, {"Cl", x.Chlorine}} {
		if of.n != 0 {
			out = append(out, of.name+" "+number.Nearest(of.n, 3))
		}
	}
	return strings.Join(out, ", ")
}

// past is what is publicly known to have gone wrong with what the route has.
func (b *builder) past() []document.Block {
	t := document.Table{Caption: words.Of("incidents.caption"),
		Columns: document.OnScreen(document.Columns("incidents.event", "col.source", "col.status"), 1)}
	for _, x := range incidents() {
		if b.Tags.Has(x.tag) {
			t.Rows = append(t.Rows, document.Row(x.text, x.source, x.status))
		}
	}
	here := words.Of("local.field", words.Of("incidents.local"), "F40")
	return []document.Block{t, document.Blanks{Labels: []string{here}}}
}

// forms is what each material is like to handle, and how it gets at people.
func (b *builder) forms() document.Block {
	t := document.Table{Caption: words.Of("forms.caption"), Columns: document.OnScreen(document.Columns("col.material",
		"forms.form", "forms.dust", "forms.vapour", "forms.ways", "col.source", "col.status"), 5)}
	seen := map[string]bool{}
	for i := range b.Route().Steps {
		what := b.Route().Steps[i].What
		for j := range what {
			name := b.MaterialName(&what[j])
			if seen[name] {
				continue
			}
			seen[name] = true
			form, dust, vapour := "forms.powder", "forms.dusty", "forms.no_vapour"
			tags := []meeting.Tag{"powder"}
			if s := what[j].Substance; s != nil {
				form, dust, vapour = formOf(s, what[j].Strength.Set && (what[j].Volume.Set || what[j].Mass.Set))
				tags = meeting.TagsOf(s)
			}
			w := wayOf(tags)
			if vapour == "forms.water" {
				w.text = words.Of("forms.water_way")
			}
			t.Rows = append(t.Rows, document.Row(name, words.Of(form), words.Of(dust), words.Of(vapour), w.text, w.source,
				w.status))
		}
	}
	if len(t.Rows) == 0 {
		return document.Paragraph{Text: words.Of("materials.none")}
	}
	return t
}

// formOf is the form, the dustiness and the volatility of a substance as it is poured.
func formOf(s *chemicals.Substance, dissolved bool) (form, dust, vapour string) {
	switch {
	case s.NotHeld:
		return "value.unknown", "value.unknown", "value.unknown"
	case s.Solution == "water":
		return "forms.liquid", "forms.no_dust", "forms.water"
	case s.State == "s" && !dissolved:
		return "forms.solid", "forms.grade", "forms.no_vapour"
	case s.State == "g":
		return "forms.solution", "forms.no_dust", "forms.gives_vapour"
	case s.State == "l" && !dissolved:
		return "forms.liquid", "forms.no_dust", "forms.see_air"
	}
	return "forms.solution", "forms.no_dust", "forms.see_air"
}

// wayOf is the first row whose tag a material bears; that none is held where none is.
func wayOf(tags []meeting.Tag) tagged {
	for _, x := range ways() {
		if slices.Contains(tags, x.tag) {
			return x
		}
	}
	return tagged{"", words.Of("forms.no_way"), words.Of("value.dash"), words.Of("value.dash")}
}

// hood is what the air of a hood is needed for, beside the one of the site.
func (b *builder) hood() []document.Block {
	t := document.Table{Caption: words.Of("hood.caption"), Columns: document.Right(document.Columns("hood.for",
		"hood.need", "hood.flow", "hood.share"), 3)}
	flow := words.Of("hood.none")
	if s := b.Review.Case.Site; s != nil && s.Hood != nil && s.Hood.Flow.Set {
		flow = draft.Amount(s.Hood.Flow)
	}
	for _, n := range scaling.NeedsOf(b.Review) {
		share := words.Of("value.unknown")
		if !n.Share.Unknown() {
			share = number.Percent(n.Share.V, 2, 1)
		}
		row := document.Row(b.FigureName(n.Of), b.ValueAndRange(n.Of), flow, share)
		if !slices.ContainsFunc(t.Rows, func(r []document.Cell) bool {
			return slices.EqualFunc(r, row,
				document.Cell.Says)
		}) {
			t.Rows = append(t.Rows, row)
		}
	}
	out := []document.Block{document.Paragraph{Text: b.hoodReading()}}
	if len(t.Rows) == 0 {
		return append(out, document.Paragraph{Text: words.Of("hood.no_need")})
	}
	return append(out, t)
}

// hoodReading is the last test of the hood as the site file has it.
func (b *builder) hoodReading() string {
	s := b.Review.Case.Site
	if s == nil || s.Hood == nil {
		return words.Of("hood.unread")
	}
	return words.Of("hood.reading", words.OrNotStated(draft.Amount(s.Hood.FaceVelocity)),
		words.OrNotStated(plain.Fold(s.Hood.TestDate)))
}

// substitutes are the quantities another route to the same product is compared by.
var substitutes = [...]string{"fluoride.hf_equivalent", "heat.etch.total", "gas.hydrogen.total", "wash.liquor"}

// less is what a gram of powder costs in hazard, with room for another route.
func (b *builder) less() []document.Block {
	t := document.Table{Caption: words.Of("less.caption"), Columns: document.OnScreen(document.Right(
		document.Columns("col.figure", "less.batch", "less.gram", "less.other", "less.third"), 2), 3, 4)}
	for _, q := range substitutes {
		f, ok := b.Bare(q)
		if !ok {
			continue
		}
		gram := words.Of("value.unknown")
		if x := scaling.PerGram(b.Review, f); !x.Unknown() {
			gram = b.Options.Units.Amount(q, f.Agent, x.V, 1)
		}
		t.Rows = append(t.Rows, []document.Cell{document.Text(b.FigureName(f)), document.Text(b.ValueAndRange(f)),
			document.Text(gram), {Blank: true}, {Blank: true}})
	}
	out := []document.Block{document.Paragraph{Text: words.Of("less.lead")}}
	if len(t.Rows) > 0 {
		out = append(out, t)
	}
	return append(out, document.Blanks{Labels: []string{words.Of("local.field", words.Of("less.why"), "F43")}})
}
