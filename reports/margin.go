package reports

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

func markOf(v figure.Verdict) document.Mark { return document.Mark(v.String()) }

// verdictCell states a verdict in words.
func verdictCell(v figure.Verdict) document.Cell {
	return document.Cell{Text: words.Of("verdict." + v.String()), Mark: markOf(v)}
}

// marginText is what is left of a limit: kelvin for a temperature, a share of
// the limit for everything else.
func marginText(f *figure.Finding, quantity string) string {
	m := f.Margin
	switch {
	case math.IsNaN(m):
		return words.Of("value.unknown")
	case math.IsInf(m, 0) || f.Limit.Value == 0:
		return words.Of("margin.zero_limit")
	case number.UnitOf(quantity) == "degC" && m >= 0:
		return words.Of("margin.kelvin_left", number.Significant(m, 3, -1))
	case number.UnitOf(quantity) == "degC":
		return words.Of("margin.kelvin_over", number.Significant(-m, 3, 1))
	case m >= 0:
		return words.Of("margin.left", number.Significant(100*m, 2, -1))
	case m < -timesFrom:
		return words.Of("margin.times", number.Significant(1-m, 2, 1))
	}
	return words.Of("margin.over", number.Significant(-100*m, 2, 1))
}

// timesFrom is the share over a limit from which it is said how many times it is.
const timesFrom = 2

// margin is the margin of a finding as text; of an open liquor that boils, that it does.
func (b *builder) margin(f *figure.Finding) string {
	if g, ok := b.byID[f.Figure]; ok && f.Margin < 0 {
		if t, ok := b.boilsAt(g); ok && g.High().V >= t {
			return words.Of("margin.boils")
		}
	}
	return marginText(f, f.Figure.Quantity)
}

// limitDigits is enough for a tabled limit and no more than a computed one is
// worth.
const limitDigits = 4

// limitText is a limit with its unit and name.
func limitText(l *limit.Limit) string {
	v := words.Of("value.unknown")
	if !math.IsNaN(l.Value) {
		v = number.Measure(l.Value, limitDigits, l.Unit)
	}
	return v + ", " + words.Say(l.Says())
}
