package aid

import (
	_ "embed"
	"slices"
	"sync"

	"etchbound/hazards/meeting"
	"etchbound/reports/document"
	"etchbound/reports/words"
	tables "etchbound/schemas/columns"
)

//go:embed fire.csv
var fireCSV string

// fireRow is what burns where a route holds one of some tags, and what goes on it.
type fireRow struct {
	Tags                                   []meeting.Tag
	Burns, Use, Never, Why, Source, Status string
}

// FireRows is the table of what burns and what goes on it, read once.
var FireRows = sync.OnceValue(func() []fireRow {
	return tables.Must("reports/aid/fire.csv", fireCSV, func(r tables.Row) fireRow {
		return fireRow{meeting.Listed(r.List("tag")), r.Named("burns"), r.Named("use"), r.Named("never"), r.Named("why"),
			r.Named("source"), r.Named("status")}
	})
})

// FireTable is what is put on what burns of a route; nothing where none of it is held.
func (b *Aid) FireTable() []document.Block {
	t := document.Table{Caption: words.Of("fire.caption"), Columns: document.OnScreen(document.Columns("fire.burns",
		"fire.use", "fire.never", "fire.why", "col.source", "col.status"), 3, 4)}
	for _, r := range FireRows() {
		if slices.ContainsFunc(r.Tags, b.Tags.Has) {
			t.Rows = append(t.Rows, document.Row(r.Burns, r.Use, r.Never, r.Why, r.Source, r.Status))
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{t}
}
