package failures

import (
	_ "embed"
	"sync"

	"etchbound/hazards/meeting"
	"etchbound/reports/document"
	"etchbound/reports/words"
	"etchbound/schemas/columns"
)

//go:embed unfollowed.csv
var unfollowedCSV string

// unfollowedRow is what can fail where no vessel is followed in time.
type unfollowedRow struct {
	tag                                      meeting.Tag
	fails, happens, prevents, source, status string
}

var unfollowedRows = sync.OnceValue(func() []unfollowedRow {
	return columns.Must("reports/failures/unfollowed.csv", unfollowedCSV, func(r columns.Row) unfollowedRow {
		return unfollowedRow{meeting.Tag(r.Named("tag")), r.Named("fails"), r.Named("happens"), r.Named("prevents"),
			r.Named("source"), r.Named("status")}
	})
})

// unfollowed is told of a route of which no vessel is followed: what can fail all the same, and
// a line for what people do then.
func (b *builder) unfollowed() []document.Block {
	t := document.Table{Caption: words.Of("unfollowed.caption"), Columns: document.OnScreen(document.Columns(
		"unfollowed.fails", "unfollowed.happens", "upset.prevent", "col.source", "col.status"), 3)}
	for _, r := range unfollowedRows() {
		if b.Tags.Has(r.tag) {
			t.Rows = append(t.Rows, document.Row(r.fails, r.happens, r.prevents, r.source, r.status))
		}
	}
	return []document.Block{t, document.Blanks{Labels: []string{
		words.Of("local.field", words.Of("unfollowed.asked"), "F39")}}}
}
