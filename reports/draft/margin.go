package draft

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/document"
	"etchbound/reports/words"
)

func markOf(v figure.Verdict) document.Mark { return document.Mark(v.String()) }

// VerdictCell states a verdict in words.
func VerdictCell(v figure.Verdict) document.Cell {
	return document.Cell{Text: words.Of("verdict." + v.String()), Mark: markOf(v)}
}

// Margin is the margin of a finding as text; of an open liquor that boils, that it does.
func (b *Draft) Margin(f *figure.Finding) string {
	if g, ok := b.ByID[f.Figure]; ok && f.Margin < 0 {
		if t, ok := b.BoilsAt(g); ok && g.High().V >= t {
			return words.Of("margin.boils")
		}
	}
	return b.Options.Units.Margin(f)
}

// LimitText is a limit on what a figure says, with its unit and name; by its name alone
// where it counts what must not be at all.
func (b *Draft) LimitText(l *limit.Limit, of figure.ID) string {
	if l.Value == 0 && l.Unit == "1" {
		return words.Say(l.Says())
	}
	return b.Boiling(l, of, b.Options.Units.LimitBeside(l, of.Agent, b.DangerOf(of))) + ", " + words.Say(l.Says())
}

// DangerOf is the end of a figure at which danger lies; NaN where there is none.
func (b *Draft) DangerOf(id figure.ID) float64 {
	if f := b.ByID[id]; f != nil {
		return f.Danger().V
	}
	return math.NaN()
}

// Boiling is how a limit is told; of the boiling point, that it is that of an open liquor
// where it is held against a closed one.
func (b *Draft) Boiling(l *limit.Limit, of figure.ID, told string) string {
	if l.Role != limit.Boils {
		return told
	}
	return b.IfOpen(b.memberPlace(of), told)
}

func VerdictName(v figure.Verdict) string { return words.Of("verdict." + v.String()) }
