package draft

import (
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

// LimitText is a limit on what an agent does, with its unit and name; by its name alone
// where it counts what must not be at all.
func (b *Draft) LimitText(l *limit.Limit, agent string) string {
	if l.Value == 0 && l.Unit == "1" {
		return words.Say(l.Says())
	}
	return b.Options.Units.Limit(l, agent) + ", " + words.Say(l.Says())
}

func VerdictName(v figure.Verdict) string { return words.Of("verdict." + v.String()) }
