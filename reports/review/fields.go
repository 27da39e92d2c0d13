package review

import (
	_ "embed"
	"strings"
	"sync"

	"etchbound/reports/document"
	"etchbound/reports/words"
	tables "etchbound/schemas/columns"
)

//go:embed fields.csv
var fieldsCSV string

// Field is one of the questions of a committee, with where the review answers it: the
// key of a section and what is found there. Kind is computed, prefilled or blank.
type Field struct{ Code, Name, Kind, Section, Find string }

// kinds is how a question is answered, in words.
var kinds = map[string]string{"computed": "fields.computed", "prefilled": "fields.prefilled", "blank": "fields.blank"}

// OwnSection is the key of the index. A field that is answered nowhere else is a line to
// write on there.
const OwnSection = "fields"

// Fields are the questions in the order of their codes. The slice is not to be changed.
var Fields = sync.OnceValue(func() []Field {
	return tables.Must("reports/review/fields.csv", fieldsCSV, func(r tables.Row) Field {
		return Field{r.Named("code"), r.Named("name"), r.Choice("kind", "computed", "prefilled", "blank"),
			r.Named("section"), r.Text("find")}
	})
})

// Index is the sheet that says where each question of a committee is answered, in a
// document of these sections. What is answered nowhere is a blank with its code.
func Index(sections []document.Section) document.Section {
	s := document.Begin(OwnSection)
	places := map[string]string{}
	for i := range sections {
		places[sections[i].Key] = strings.TrimSpace(sections[i].Number + " " + sections[i].Title)
	}
	places["page-1"] = words.Of("fields.page_one")
	places[OwnSection] = words.Of("fields.below")
	t := document.Table{Caption: words.Of("fields.caption"), Columns: document.Tight(document.Columns(
		"fields.code", "fields.name", "fields.kind", "fields.place"), 0, 2)}
	var open document.Blanks
	for _, f := range Fields() {
		t.Rows = append(t.Rows, document.Row(f.Code, f.Name, words.Of(kinds[f.Kind]), words.OrDash(places[f.Section])))
		if f.Section == OwnSection {
			open.Labels = append(open.Labels, words.Of("local.field", words.Of("fields.open", f.Name), f.Code))
		}
	}
	s.Blocks = append(s.Blocks, t)
	if len(open.Labels) > 0 {
		s.Blocks = append(s.Blocks, open)
	}
	return s
}
