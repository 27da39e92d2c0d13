// Package measures knows how it is told what is measured first. It must not know how any of
// it is worked out.
package measures

import (
	"math"
	"slices"
	"strings"

	"etchbound/hazards/ranges"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling/measuring"
)

// most is how many experiments are told of a figure: what is left then cuts little.
const most = 4

// Sections tell which experiments cut most, what each cuts, and how each is made.
func Sections(d *draft.Draft, all []measuring.Figure) []document.Section {
	first, how := document.Begin("measure"), document.Begin("experiments")
	t := document.Table{Caption: words.Of("measure.caption"), Columns: document.Columns("col.figure", "measure.best",
		"measure.experiment", "measure.alone", "measure.left", "measure.cut")}
	var unknown document.List
	var pictures []document.Block
	sum, keys := map[string]float64{}, map[string][]string{}
	for i := range all {
		f := &all[i]
		name := number.LabelOf(f.ID.Quantity)
		for _, m := range f.Missing {
			text, settles := words.Ask(m)
			if item := words.Of("measure.unknown", name, text, settles); !slices.Contains(unknown.Items, item) {
				unknown.Items = append(unknown.Items, item)
			}
		}
		for k := range f.By {
			b := &f.By[k]
			if k < most {
				t.Rows = append(t.Rows, row(d, f, b, k == 0))
			}
			if c := f.Cut(b); c > 0 {
				sum[b.Experiment] += c
			}
			for _, key := range b.Keys {
				if !slices.Contains(keys[b.Experiment], key) {
					keys[b.Experiment] = append(keys[b.Experiment], key)
				}
			}
		}
		pictures = append(pictures, tornado(f, name)...)
	}
	order := document.List{Ordered: true}
	names := measuring.Experiments()
	slices.SortStableFunc(names, func(a, b string) int { return int(math.Copysign(1, sum[b]-sum[a])) })
	for _, e := range names {
		if keys[e] != nil {
			order.Items = append(order.Items, words.Of("measure.how", words.Of("measure.name."+e), words.Of("measure.by."+e),
				strings.Join(keys[e], ", ")))
		}
	}
	if len(t.Rows) > 0 {
		first.Blocks = append(first.Blocks, document.Paragraph{Text: words.Of("measure.lead")}, t)
		first.Blocks = append(append(first.Blocks, past(d, all)...), unexplained(d, all)...)
		first.Blocks = append(first.Blocks, pictures...)
		how.Blocks = append(how.Blocks, order)
	} else {
		first.Blocks = append(first.Blocks, document.Paragraph{Text: words.Of("measure.none")})
	}
	if len(unknown.Items) > 0 {
		first.Blocks = append(first.Blocks, document.Paragraph{Text: words.Of("measure.unknowns"), Tone: document.Warning},
			unknown)
	}
	how.Blocks = append(how.Blocks, document.Paragraph{Text: words.Of("measure.note"), Tone: document.Note})
	return []document.Section{first, how}
}

// past says of which figures more was seen than their dangerous end.
func past(d *draft.Draft, all []measuring.Figure) []document.Block {
	var of []string
	for i := range all {
		if f := &all[i]; !math.IsNaN(f.Beyond) {
			of = append(of, words.Of("measure.beyond_one", number.LabelOf(f.ID.Quantity), amount(d, f, f.Beyond),
				amount(d, f, f.End)))
		}
	}
	if of == nil {
		return nil
	}
	return []document.Block{document.Paragraph{Text: words.Of("measure.beyond", strings.Join(of, "; ")),
		Tone: document.Warning}}
}

// unexplained says of a powder whose impurities are stated why an analysis of it cuts all the same:
// what its purity and they leave of it counts at worst as free metal.
func unexplained(d *draft.Draft, all []measuring.Figure) []document.Block {
	p := d.Review.Case.Route.Precursor
	open := slices.ContainsFunc(all, func(f measuring.Figure) bool {
		return slices.ContainsFunc(f.By, func(b measuring.By) bool {
			return slices.ContainsFunc(b.Data, func(s ranges.Stood) bool { return s.ID == "impurity.unstated" })
		})
	})
	if !open || p == nil || !p.Stated || !p.Purity.Set {
		return nil
	}
	left := 1 - p.Purity.SI
	for i := range p.Impurities {
		left -= p.Impurities[i].Share.SI
	}
	return []document.Block{document.Paragraph{Tone: document.Note, Text: words.Of("measure.unexplained",
		number.Nearest(100*p.Purity.SI, 4), number.Nearest(100*left, 3))}}
}

// amount is a value of a figure in its unit.
func amount(d *draft.Draft, f *measuring.Figure, v float64) string {
	if math.IsNaN(v) {
		return words.Of("value.unknown")
	}
	return d.Options.Units.Amount(f.ID.Quantity, f.ID.Agent, v, 0)
}

// row is one experiment for a figure; its name stands in the first alone.
func row(d *draft.Draft, f *measuring.Figure, b *measuring.By, first bool) []document.Cell {
	name, both := "", ""
	if first {
		name = number.LabelOf(f.ID.Quantity)
		both = words.Of("measure.range", amount(d, f, f.Best), amount(d, f, f.End))
	}
	cut := words.Of("value.unknown")
	if c := f.Cut(b); !math.IsNaN(c) {
		cut = number.Nearest(100*c, 2) + " %"
	}
	return document.Row(name, both, words.Of("measure.name."+b.Experiment), amount(d, f, b.Alone),
		amount(d, f, b.Left), cut)
}

// tornado draws how far what each experiment settles moves a figure alone.
func tornado(f *measuring.Figure, name string) []document.Block {
	title := words.Of("measure.tornado", name)
	c := chart.Bars{ID: "tornado-" + f.ID.Quantity, Title: title, Alt: title,
		X:     chart.Axis{Label: name, Unit: number.UnitText(number.UnitOf(f.ID.Quantity))},
		Kinds: []string{words.Of("measure.alone")}, Lines: []chart.Line{{Y: f.Best, Label: words.Of("measure.line")}}}
	for i := range f.By[:min(len(f.By), most)] {
		b := &f.By[i]
		if math.IsNaN(b.Alone) {
			continue
		}
		c.Rows = append(c.Rows, chart.Row{Label: words.Of("measure.name." + b.Experiment),
			Text: number.Nearest(b.Alone, 3), Parts: []chart.Part{{From: min(f.Best, b.Alone), To: max(f.Best, b.Alone),
				Mark: math.NaN()}}})
	}
	if len(c.Rows) < 2 {
		return nil
	}
	svg, err := c.SVG()
	if err != nil {
		return nil
	}
	return []document.Block{document.Picture{SVG: svg, Text: c.Text(), Caption: title}}
}
