// Package paced knows how it is told how an addition can be made: ways of adding, when it is
// stopped, and what piles up. It must not know how any of it is worked out.
package paced

import (
	"math"
	"slices"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling/pacing"
)

// builder tells of one addition; boils is where its open liquor boils, degC, beyond which
// nothing is printed: the rest of the heat goes off as vapour. It is endless where nobody
// knows it, and of what is shut or molten.
type builder struct {
	*draft.Draft
	boils float64
}

func builderOf(d *draft.Draft, step int) builder {
	b := builder{d, math.Inf(1)}
	if f, ok := d.At("heat.mtsr", figure.Step(step)); ok {
		if t, ok := d.BoilsAt(f); ok {
			b.boils = t
		}
	}
	return b
}

// Sections tell of each addition; a sentence where there is none.
func Sections(d *draft.Draft, all []pacing.Addition) []document.Section {
	if len(all) == 0 {
		s := document.Begin("pacing")
		s.Blocks = []document.Block{document.Paragraph{Text: words.Of("pace.none"), Tone: document.Warning}}
		return []document.Section{s}
	}
	var out []document.Section
	for i := range all {
		a := &all[i]
		b := builderOf(d, a.Step)
		s := document.Begin("pacing")
		s.Key += "-" + figure.Step(a.Step).String()
		s.Title = words.Of("pace.step", figure.Step(a.Step).String())
		if a.Missing != nil {
			s.Blocks = append(s.Blocks, b.unknown(a)...)
		} else {
			s.Blocks = append(append(b.ways(a), b.stop(a)...), b.piles(a)...)
		}
		out = append(out, s)
	}
	return out
}

// unknown says what is missing of an addition, and what settles it.
func (b builder) unknown(a *pacing.Addition) []document.Block {
	l := document.List{}
	for _, m := range a.Missing {
		text, settles := words.Named(m)
		if item := words.Of("pace.missing", text, settles); !slices.Contains(l.Items, item) {
			l.Items = append(l.Items, item)
		}
	}
	says := "pace.unknown"
	if !slices.ContainsFunc(a.Missing, func(m working.Missing) bool { return m.Kind != "boiling_point" }) {
		says = "pace.unknown_boiling"
	}
	return []document.Block{document.Paragraph{Text: words.Of(says), Tone: document.Warning}, l}
}

func (b builder) degrees(v float64) string {
	if math.IsNaN(v) {
		return words.Of("value.unknown")
	}
	if v >= b.boils {
		return words.Of("pace.boiling", b.Options.Units.Amount("heat.temperature_peak", "", b.boils, 0))
	}
	return b.Options.Units.Amount("heat.temperature_peak", "", v, 0)
}

// drawn is a temperature as a picture has it.
func (b builder) drawn(v float64) float64 { return math.Min(v, b.boils) }

func minutes(s float64) string { return number.Thing{Unit: "min"}.Bound(s/60, 1) }

// ways is the table of ways of adding, and what it comes to.
func (b builder) ways(a *pacing.Addition) []document.Block {
	t := document.Table{Caption: words.Of("pace.ways", words.Of("pace.limit."+string(a.Of), b.degrees(a.Limit))),
		Columns: document.Columns("pace.way", "pace.takes", "pace.stays", "pace.could")}
	for i := range a.Ways {
		w := &a.Ways[i]
		takes := minutes(w.Takes)
		switch {
		case w.In < 1 || math.IsNaN(w.Takes):
			takes = words.Of("pace.not_in", draft.Percent(number.Round9(w.In)))
		case w.Kind == pacing.Written && w.Takes < 60:
			takes = words.Of("pace.at_once")
		}
		t.Rows = append(t.Rows, document.Row(b.name(w), takes, b.hot(w.Stays, a), b.hot(w.Could, a)))
	}
	out := []document.Block{document.Paragraph{Text: b.answer(a)}, t,
		document.Paragraph{Text: words.Of("pace.note"), Tone: document.Note}}
	if a.Open {
		out = slices.Insert(out, 0, document.Block(document.Paragraph{Text: words.Of("pace.open"), Tone: document.Warning}))
	}
	return out
}

// name is a way of adding in words.
func (b builder) name(w *pacing.Way) string {
	key := "pace.kind." + string(w.Kind)
	switch w.Kind {
	case pacing.Portions:
		return words.Of(key, int(w.Of), minutes(w.Takes/w.Of))
	case pacing.Held, pacing.Resumed:
		return words.Of(key, b.degrees(w.Of))
	}
	return words.Of(key)
}

// hot is a temperature with its dangerous end, and whether it stays below the limit.
func (b builder) hot(h pacing.Hot, a *pacing.Addition) string {
	s := b.degrees(h.Best)
	if h.Most > h.Best && h.Best < b.boils {
		s = words.Of("pace.up_to", s, b.degrees(h.Most))
	}
	switch {
	case math.IsNaN(h.Best) || math.IsNaN(h.Most):
		return words.Of("value.unknown")
	case h.Below(a.Limit) && a.Open:
		return words.Of("pace.below_open", s)
	case h.Below(a.Limit):
		return words.Of("pace.below", s)
	case h.Best < a.Limit:
		return words.Of("pace.may", s)
	}
	return words.Of("pace.over", s)
}

// answer is the first sentence: the shortest time, and whether any way stays below the limit
// when cooling is lost.
func (b builder) answer(a *pacing.Addition) string {
	s := words.Of("pace.no_time")
	lost := words.Of("pace.lost_none")
	for i := range a.Ways {
		w := &a.Ways[i]
		if w.Kind == pacing.Constant && w.Stays.Below(a.Limit) {
			s = words.Of("pace.time", minutes(w.Takes), b.degrees(a.Limit))
		}
		if w.In == 1 && w.Takes > 0 && w.Stays.Below(a.Limit) && w.Could.Below(a.Limit) &&
			lost == words.Of("pace.lost_none") {
			lost = words.Of("pace.lost", b.name(w), minutes(w.Takes))
		}
	}
	return words.Of("pace.answer", b.asked(a.Step), s, lost)
}

// additionTimes are the figures that say how long an addition has to take.
var additionTimes = []string{"heat.addition_time.required", "gas.addition_time.vent", "gas.addition_time.hood"}

// asked is the longest time that the review asks for, at its dangerous end: a temperature
// that holds in less is no leave to be quicker.
func (b builder) asked(step int) string {
	var longest *figure.Figure
	var dark []string
	for _, q := range additionTimes {
		f, ok := b.At(q, figure.Step(step))
		switch {
		case !ok || f.Danger().Unknown():
			dark = append(dark, number.LabelOf(q))
		case longest == nil || f.Danger().V > longest.Danger().V:
			longest = f
		}
	}
	var out []string
	if longest != nil {
		out = append(out, words.Of("pace.asks", b.Options.Units.Danger(longest), number.LabelOf(longest.Quantity)))
	}
	if dark != nil {
		out = append(out, words.Of("pace.asks_unknown", strings.Join(dark, "; ")))
	}
	return strings.Join(out, " ")
}

// stop is when the addition is stopped, as lines for a person at the vessel.
func (b builder) stop(a *pacing.Addition) []document.Block {
	if a.Onto {
		return []document.Block{document.Paragraph{Text: words.Of("pace.stop.onto"), Tone: document.Warning}}
	}
	x := &a.Stop
	l := document.List{Items: []string{words.Of("pace.stop.above", b.degrees(x.Above))}}
	if x.NoTime {
		l.Items = append(l.Items, words.Of("pace.stop.no_time", b.degrees(a.Limit)))
	} else {
		l.Items = append(l.Items, words.Of("pace.stop.within", minutes(x.Within), b.degrees(x.Reads), b.degrees(x.Bare),
			b.Options.Units.Amount("gas.hydrogen.peak_rate", "", 60*litres*x.Gas, 0), b.degrees(x.Pile)))
	}
	for _, y := range x.By {
		law := draft.CaseName(figure.By(string(y.Law)))
		key := "pace.stop.blind"
		if y.Sees {
			key = "pace.stop.sees"
		}
		l.Items = append(l.Items, words.Of(key, law, b.degrees(x.Above), minutes(y.At), b.degrees(y.Reads),
			b.degrees(y.Stays), b.degrees(y.Reaches)))
	}
	l.Items = append(l.Items, words.Of("pace.stop.resume", b.degrees(a.Limit)))
	return []document.Block{document.Paragraph{Text: words.Of("pace.stop.lead")}, l}
}

// litres is a mol of gas at 25 degC and 101.325 kPa, L.
const litres = 24.4654

// piles is what has piled up when a share of the dose is in, as a table and a picture.
func (b builder) piles(a *pacing.Addition) []document.Block {
	title := words.Of("pace.piles", figure.Step(a.Step).String())
	if a.Onto {
		title = words.Of("pace.piles_onto", figure.Step(a.Step).String())
	}
	t := document.Table{Caption: title, Columns: document.Columns("pace.share", "pace.none_reacted")}
	none := chart.Curve{Label: words.Of("pace.none_reacted")}
	for _, d := range a.Whole {
		none.X, none.Y = append(none.X, 100*d.Share), append(none.Y, b.drawn(d.Hottest))
	}
	curves := []chart.Curve{none}
	for _, quarter := range []float64{0.25, 0.5, 0.75, 1} {
		t.Rows = append(t.Rows, document.Row(draft.Percent(quarter), b.degrees(a.Nothing(quarter))))
	}
	for _, law := range a.Laws {
		name := draft.CaseName(figure.By(string(law.Law)))
		t.Columns = append(t.Columns, document.Column{Text: name})
		v := chart.Curve{Label: words.Of("pace.could_by", name)}
		next := 0
		for _, p := range law.Points {
			if n := len(v.X); n == 0 || 100*p.Share > v.X[n-1] {
				v.X, v.Y = append(v.X, 100*p.Share), append(v.Y, b.drawn(p.Could))
			}
			if next < len(t.Rows) && p.Share >= 0.25*float64(next+1)-1e-6 {
				t.Rows[next] = append(t.Rows[next], document.Text(words.Of("pace.at", b.degrees(p.Temperature),
					draft.Percent(p.Waiting), b.degrees(p.Could))))
				next++
			}
		}
		for ; next < len(t.Rows); next++ {
			t.Rows[next] = append(t.Rows[next], document.Text(words.Of("value.unknown")))
		}
		curves = append(curves, v)
	}
	c := chart.Chart{ID: "paced-" + figure.Step(a.Step).String(), Title: title, Alt: title, Curves: curves,
		X:     chart.Axis{Label: words.Of("curve.dosed_axis"), Unit: "%"},
		Y:     chart.Axis{Label: number.LabelOf("heat.mtsr"), Unit: "°C"},
		Lines: []chart.Line{{Y: a.Limit, Label: words.Of("pace.limit."+string(a.Of), b.degrees(a.Limit))}}}
	svg, err := c.SVG()
	if err != nil {
		return []document.Block{t}
	}
	return []document.Block{t, document.Picture{SVG: svg, Text: c.Text(), Caption: title}}
}
