package reports

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/words"
)

// Mark is the verdict a cell states; empty for none.
type Mark string

// The marks, one a verdict.
const (
	NoMark      Mark = ""
	MarkWithin  Mark = "within"
	MarkNear    Mark = "near"
	MarkUnknown Mark = "unknown"
	MarkExceeds Mark = "exceeds"
)

// Symbol tells the marks apart without colour. None of them is a tick: no
// verdict gives leave to start.
func (m Mark) Symbol() string {
	switch m {
	case MarkWithin:
		return "○"
	case MarkNear:
		return "◐"
	case MarkUnknown:
		return "?"
	case MarkExceeds:
		return "▲"
	}
	return ""
}

func markOf(v figure.Verdict) Mark { return Mark(v.String()) }

// verdictCell states a verdict in words.
func verdictCell(v figure.Verdict) Cell {
	return Cell{Text: say("verdict." + v.String()), Mark: markOf(v)}
}

// marginText is what is left of a limit: kelvin for a temperature, a share of
// the limit for everything else.
func marginText(f *figure.Finding, quantity string) string {
	m := f.Margin
	switch {
	case math.IsNaN(m):
		return say("value.unknown")
	case math.IsInf(m, 0) || f.Limit.Value == 0:
		return say("margin.zero_limit")
	case unitOf(quantity) == "degC" && m >= 0:
		return say("margin.kelvin_left", significant(m, 3, -1))
	case unitOf(quantity) == "degC":
		return say("margin.kelvin_over", significant(-m, 3, 1))
	case m >= 0:
		return say("margin.left", significant(100*m, 2, -1))
	case m < -timesFrom:
		return say("margin.times", significant(1-m, 2, 1))
	}
	return say("margin.over", significant(-100*m, 2, 1))
}

// timesFrom is the share over a limit from which it is said how many times it is.
const timesFrom = 2

// margin is the margin of a finding as text; of an open liquor that boils, that it does.
func (b *builder) margin(f *figure.Finding) string {
	if g, ok := b.byID[f.Figure]; ok && f.Margin < 0 {
		if t, ok := b.boilsAt(g); ok && g.High().V >= t {
			return say("margin.boils")
		}
	}
	return marginText(f, f.Figure.Quantity)
}

// limitDigits is enough for a tabled limit and no more than a computed one is
// worth.
const limitDigits = 4

// limitText is a limit with its unit and name.
func limitText(l *limit.Limit) string {
	v := say("value.unknown")
	if !math.IsNaN(l.Value) {
		v = measure(l.Value, limitDigits, l.Unit)
	}
	return v + ", " + words.Say(l.Says())
}
