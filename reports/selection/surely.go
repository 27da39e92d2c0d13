package selection

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"etchbound/hazards/figure"
)

// surely says how much of the range of a figure has the verdict of a finding. A bound, a
// bracket of laws and what is not known have no best estimate: of them it is never said
// that they may.
func (p *reader) surely(f *figure.Finding) string {
	if f.Verdict != figure.Exceeds || p.judgedBy(f) == nil {
		return ""
	}
	switch f.Surely {
	case figure.WholeRange:
		return say("surely.range")
	case figure.BestEstimate:
		return say("surely.best")
	case figure.DangerousEnd:
		return say("surely.end")
	}
	return say("surely.none")
}

// judgedBy is the figure that a finding was judged by, nil where it has no number at the
// end where danger lies.
func (p *reader) judgedBy(f *figure.Finding) *figure.Figure {
	g := p.figs.Get(f.Figure)
	if o := p.figs.Get(f.Of); o != nil {
		g = o
	}
	if g == nil || g.Danger().Unknown() {
		return nil
	}
	return g
}

// narrow says, of a verdict that the range decides, what is expected, where that is not
// said yet, and what would narrow the range.
func (p *reader) narrow(f *figure.Finding, said string) string {
	g := p.judgedBy(f)
	if g == nil || f.Verdict != figure.Exceeds {
		return ""
	}
	switch f.Surely {
	case figure.DangerousEnd:
		expected := ""
		if best := p.v.ValueText(g); !tells(said, best) {
			expected = say("surely.expected", best)
		}
		return joinedBy("; ", expected, p.narrowedBy(g))
	case figure.BestEstimate:
		return p.narrowedBy(g)
	}
	return ""
}

// tells reports whether a number stands in a text by itself, and not as the end of a longer
// one.
func tells(text, number string) bool {
	for {
		before, after, found := strings.Cut(text, number)
		if !found {
			return false
		}
		if end, _ := utf8.DecodeLastRuneInString(before); !unicode.IsDigit(end) && !strings.ContainsRune(".,-−", end) {
			return true
		}
		text = after
	}
}

// narrowedBy names the assumption that moves a figure most.
func (p *reader) narrowedBy(f *figure.Figure) string {
	best, most := -1, 0.0
	for i := range p.r.Assumptions {
		for _, m := range p.r.Assumptions[i].Moves {
			if m.Figure == f.ID && math.Abs(m.To-m.From) > most {
				best, most = i, math.Abs(m.To-m.From)
			}
		}
	}
	if best < 0 {
		return ""
	}
	what := p.r.Assumptions[best].Named
	if what == "" {
		what = say("surely.measured")
	}
	return say("surely.narrowed", what)
}
