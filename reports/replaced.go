package reports

import (
	"strconv"
	"strings"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// replacedToJSON writes a datum that was replaced, in the unit of its row.
func replacedToJSON(r *hazards.Review) func(*chemicals.Applied) replacedJSON {
	return func(a *chemicals.Applied) replacedJSON {
		return replacedJSON{ID: a.ID, Value: nine(a.Value), Low: nine(a.Low), High: nine(a.High), Unit: unitOfDatum(r, a),
			Old: nine(a.Old), Source: a.Source, At: a.At, From: a.From}
	}
}

func unitOfDatum(r *hazards.Review, a *chemicals.Applied) string {
	unit, _ := r.Case.Store.UnitOf(a.Override)
	return unit
}

func milderToJSON(m *hazards.Milder) milderJSON {
	out := milderJSON{Finding: m.ID.String(), Was: m.Was.String()}
	if !m.Gone {
		out.Is = m.Is.String()
	}
	return out
}

// Page 1 names so many replaced data and milder verdicts and counts the others.
const namedReplaced, namedMilder = 2, 2

// replacedBlocks are for page 1: which data the writer put in the place of ours, and
// which verdicts that made milder. There are none where nothing was replaced.
func (b *builder) replacedBlocks() []document.Block {
	if len(b.r.Applied) == 0 {
		return nil
	}
	data := counted(len(b.r.Applied), namedReplaced, func(i int) string { return b.replacedText(&b.r.Applied[i]) })
	verdicts := words.Of("replaced.none_milder")
	if len(b.r.Milder) > 0 {
		verdicts = words.Of("replaced.milder", counted(len(b.r.Milder), namedMilder, func(i int) string {
			return b.milderText(&b.r.Milder[i])
		}))
	}
	return []document.Block{document.Paragraph{Text: words.Of("replaced.data", data) + " " + verdicts,
		Tone: document.Warning}}
}

func (b *builder) replacedText(a *chemicals.Applied) string {
	unit := unitOfDatum(b.r, a)
	value := strings.TrimSpace(strconv.FormatFloat(a.Value, 'g', 4, 64) + " " + unit)
	if a.Old != a.Old {
		return words.Of("replaced.new", a.ID, value)
	}
	return words.Of("replaced.datum", a.ID, value, strconv.FormatFloat(a.Old, 'g', 4, 64))
}

func (b *builder) milderText(m *hazards.Milder) string {
	name := m.ID.Figure.String()
	if f, ok := b.byID[m.ID.Figure]; ok {
		name = b.figureName(f)
	}
	was := verdictName(m.Was)
	if m.Gone {
		return words.Of("replaced.gone", plain.Clip(name, nameLength), was)
	}
	return words.Of("replaced.verdict", plain.Clip(name, nameLength), verdictName(m.Is), was)
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
