package reports

import (
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/document"
	"etchbound/reports/words"
)

func markOf(v figure.Verdict) document.Mark { return document.Mark(v.String()) }

// verdictCell states a verdict in words.
func verdictCell(v figure.Verdict) document.Cell {
	return document.Cell{Text: words.Of("verdict." + v.String()), Mark: markOf(v)}
}

// margin is the margin of a finding as text; of an open liquor that boils, that it does.
func (b *builder) margin(f *figure.Finding) string {
	if g, ok := b.byID[f.Figure]; ok && f.Margin < 0 {
		if t, ok := b.boilsAt(g); ok && g.High().V >= t {
			return words.Of("margin.boils")
		}
	}
	return b.o.Units.Margin(f)
}

// limitText is a limit on what an agent does, with its unit and name.
func (b *builder) limitText(l *limit.Limit, agent string) string {
	return b.o.Units.Limit(l, agent) + ", " + words.Say(l.Says())
}
