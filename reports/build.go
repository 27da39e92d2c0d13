package reports

import (
	"strconv"

	"etchbound/hazards"
	"etchbound/reports/book"
	"etchbound/reports/cards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/failures"
	"etchbound/reports/plain"
	"etchbound/reports/review"
	"etchbound/reports/words"
)

// Build lays out the review document. It never fails: what was not computed
// is said to be not known or not assessed.
func Build(r hazards.Review, o draft.Options) document.Document {
	b := newBuilder(&r, o)
	d := document.Document{Title: b.Title(), Lang: words.Of("lang"), Paper: o.Paper,
		Digest: plain.ShortDigest(b.Route().Digest)}
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
		annexes[i].Page = i < len(annexes)-1 // of the lines nothing is printed but where they are
	}
	body[0].Page = true
	index := review.Index(append(append([]document.Section{}, body...), annexes...))
	index.Number, index.Page = strconv.Itoa(len(body)+1), true
	body = append(body, index)
	d.Sections = append(append(d.Sections, body...), annexes...)
	return d
}
