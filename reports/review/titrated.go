package review

import (
	"math"
	"strconv"
	"strings"

	"etchbound/hazards/treating"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// dosings says how slowly, and in how many portions, what is offered for waste goes in.
func dosings(l *treating.Liquor) []document.Block {
	var says, dark []string
	for i := range l.Ways {
		w := &l.Ways[i]
		if w.Usual() && w.Dosing == nil && len(w.Parts) == 1 {
			dark = append(dark, w.Parts[0].Sub.Name)
		}
		if d := w.Dosing; d != nil && len(w.Parts) == 1 && d.Portions > 1 {
			s := words.Of("treated.dosing", w.Parts[0].Sub.Name, lasting(d.Minutes), d.Portions,
				number.Said(d.Peak, 2, "°C"))
			if w.CarbonDioxide > 0 {
				s += words.Of("treated.dosing_gas", number.Said(d.Gas, 2, "L/min"))
			}
			says = append(says, s)
		}
	}
	var out []document.Block
	if says != nil { // else any of them may go in at once
		out = append(out, document.Paragraph{Text: words.Of("treated.dosings", strings.Join(says,
			words.Of("treated.dosing_next")))})
	}
	if dark != nil {
		out = append(out, document.Paragraph{Text: words.Of("treated.dosing_unknown", strings.Join(dark, ", "))})
	}
	return out
}

// worst is the table of the usual ways at the dangerous end of the data.
func worst(l *treating.Liquor) []document.Block {
	if l.Worst == nil {
		return nil
	}
	var ways []*treating.Way
	for i := range l.Worst.Ways {
		ways = append(ways, &l.Worst.Ways[i])
	}
	t := waysTable(words.Of("treated.caption_worst", of(l)), ways)
	return []document.Block{document.Fold{Summary: t.Caption, Blocks: []document.Block{t}}}
}

// titration is one picture in four parts: pH, dissolved fluoride, temperature and carbon
// dioxide against the dose, at the centre and at the dangerous end.
func titration(l *treating.Liquor) []document.Block {
	var out []document.Block
	for _, part := range []struct {
		id, title, label, unit string
		log                    bool
		y                      func(*treating.Point) float64
	}{{"titrated-ph-", "treated.curve_ph", "treated.ph", "", false, func(p *treating.Point) float64 { return p.PH }},
		{"titrated-f-", "treated.curve_left", "treated.left_axis", "mg/L", true,
			func(p *treating.Point) float64 { return max(p.Left, 0.01) }},
		{"titrated-t-", "treated.curve_warm", "treated.warm_axis", "°C", false,
			func(p *treating.Point) float64 { return p.Temperature }},
		{"titrated-g-", "treated.curve_gas", "treated.gas_axis", "L", false,
			func(p *treating.Point) float64 { return p.Gas }}} {
		c := chart.Chart{ID: part.id + strconv.Itoa(l.Step), Title: words.Of(part.title), Alt: words.Of(part.title),
			X: chart.Axis{Label: words.Of("treated.dose")},
			Y: chart.Axis{Label: words.Of(part.label), Unit: part.unit, Log: part.log}}
		c.Curves, c.Marks = curvesOf(l, "treated.curve_centre", part.y)
		if l.Worst != nil {
			more, _ := curvesOf(l.Worst, "treated.curve_worst", part.y)
			c.Curves = append(c.Curves, more...)
		}
		if len(c.Curves) > 0 {
			out = append(out, drawn(c)...)
		}
	}
	return out
}

// curvesOf are the curves of a liquor that are not nothing throughout, with where the acid
// seems gone while fluoride is not.
func curvesOf(l *treating.Liquor, name string, y func(*treating.Point) float64) ([]chart.Curve, []chart.Mark) {
	var out []chart.Curve
	var marks []chart.Mark
	for i := range l.Curves {
		c := &l.Curves[i]
		v := chart.Curve{Label: words.Of(name, c.Of.Name)}
		something := false
		for j := range c.Points {
			if at := y(&c.Points[j]); !math.IsNaN(at) {
				v.X, v.Y = append(v.X, c.Points[j].Share), append(v.Y, at)
				something = something || at != 0
			}
		}
		if something {
			out = append(out, v)
		}
		if c.Seems == c.Seems && marks == nil {
			marks = []chart.Mark{{X: c.Seems, Label: words.Of("treated.seems_done")}}
		}
	}
	return out, marks
}
