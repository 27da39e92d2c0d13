package draft

import (
	_ "embed"
	"slices"
	"sync"

	"etchbound/hazards/meeting"
	tables "etchbound/schemas/columns"
)

//go:embed people.csv
var peopleCSV string

// Duty is what people do with equipment that failed, stood unwatched or is handed on. Card
// is the same in few words; empty: it does not stand on the bench card.
type Duty struct {
	tags                       []string
	Text, Card, Source, Status string
}

var allDuties = sync.OnceValue(func() []Duty {
	return tables.Must("reports/draft/people.csv", peopleCSV, func(r tables.Row) Duty {
		return Duty{r.List("tags"), r.Named("text"), r.Text("card"), r.Named("source"), r.Named("status")}
	})
})

// Duties are those of which the route has every tag, in the order of their table.
func (b *Draft) Duties() []Duty { return dutiesOf(b.Tags) }

func dutiesOf(of meeting.Tags) []Duty {
	return slices.DeleteFunc(slices.Clone(allDuties()), func(d Duty) bool {
		return slices.ContainsFunc(d.tags, func(tag string) bool { return !of.Has(meeting.Tag(tag)) })
	})
}
