package reports

import (
	"strconv"
	"strings"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/words"
)

// Page 1 names so many replaced data and milder verdicts and counts the others.
const namedReplaced, namedMilder = 2, 2

// replacedBlocks are for page 1: which data the writer put in the place of ours, and
// which verdicts that made milder. There are none where nothing was replaced.
func (b *builder) replacedBlocks() []document.Block {
	if len(b.Review.Applied) == 0 {
		return nil
	}
	data := counted(len(b.Review.Applied), namedReplaced,
		func(i int) string { return b.replacedText(&b.Review.Applied[i]) })
	verdicts := words.Of("replaced.none_milder")
	if len(b.Review.Milder) > 0 {
		verdicts = words.Of("replaced.milder", counted(len(b.Review.Milder), namedMilder, func(i int) string {
			return b.milderText(&b.Review.Milder[i])
		}))
	}
	return []document.Block{document.Paragraph{Text: words.Of("replaced.data", data) + " " + verdicts,
		Tone: document.Warning}}
}

func (b *builder) replacedText(a *chemicals.Applied) string {
	unit := draft.UnitOfDatum(b.Review, a)
	value := strings.TrimSpace(strconv.FormatFloat(a.Value, 'g', 4, 64) + " " + unit)
	if a.Old != a.Old {
		return words.Of("replaced.new", a.ID, value)
	}
	return words.Of("replaced.datum", a.ID, value, strconv.FormatFloat(a.Old, 'g', 4, 64))
}

func (b *builder) milderText(m *hazards.Milder) string {
	name := m.ID.Figure.String()
	if f, ok := b.ByID[m.ID.Figure]; ok {
		name = b.FigureName(f)
	}
	was := draft.VerdictName(m.Was)
	if m.Gone {
		return words.Of("replaced.gone", name, was)
	}
	return words.Of("replaced.verdict", name, draft.VerdictName(m.Is), was)
}

// counted joins the first of so many texts and counts the others.
func counted(n, most int, text func(int) string) string {
	var parts []string
	for i := range min(n, most) {
		parts = append(parts, text(i))
	}
	out := strings.Join(parts, "; ")
	if n > most {
		out += words.Of("replaced.more", strconv.Itoa(n-most))
	}
	return out
}
