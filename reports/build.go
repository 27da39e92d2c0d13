package reports

import (
	"strconv"

	"etchbound/hazards"
	"etchbound/reports/book"
	"etchbound/reports/cards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/failures"
	"etchbound/reports/review"
	"etchbound/reports/words"
)

// Build lays out the review document. It never fails: what was not computed
// is said to be not known or not assessed.
func Build(r hazards.Review, o draft.Options) document.Document {
	b := newBuilder(&r, o)
	d := document.Document{Title: b.Title(), Lang: words.Of("lang"), Paper: o.Paper,
		Control: b.ControlLine()}
	d.Sections = append(d.Sections, b.pageOne())
	if o.Brief {
		d.Sections = append(d.Sections, review.Figures(b.Draft))
		return d
	}
	body := review.Sections(b.Draft, failures.Section(b.Draft))
	for i := range body {
		body[i].Number = strconv.Itoa(i + 1)
	}
	annexes := append(cards.Sections(b.Draft), book.Section(b.Draft))
	for i := range annexes {
		annexes[i].Number = string(rune('A' + i))
		annexes[i].Page, annexes[i].Screen = i < len(annexes)-1, i == len(annexes)-1 // the lines are not printed
	}
	index := review.Index(append(append([]document.Section{}, body...), annexes...))
	index.Number = strconv.Itoa(len(body) + 1)
	body = append(body, index)
	d.Sections = append(append(d.Sections, body...), annexes...)
	return d
}
