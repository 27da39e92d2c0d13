package review

import (
	_ "embed"
	"sync"

	"etchbound/reports/document"
	"etchbound/reports/words"
	tables "etchbound/schemas/columns"
)

//go:embed fields.csv
var fieldsCSV string

// Field is one of the questions of a committee, with where the review answers it: the
// key of a section and what is found there, and of another with a part of it. Kind is computed,
// prefilled or blank.
type Field struct{ Code, Name, Kind, Section, Find, Also string }

// kinds is how a question is answered, in words.
var kinds = map[string]string{"computed": "fields.computed", "prefilled": "fields.prefilled", "blank": "fields.blank"}

// OwnSection is the key of the index. A field that is answered nowhere else is a line to
// write on there.
const OwnSection = "fields"

// Fields are the questions in the order of their codes. The slice is not to be changed.
var Fields = sync.OnceValue(func() []Field {
	return tables.Must("reports/review/fields.csv", fieldsCSV, func(r tables.Row) Field {
		return Field{r.Named("code"), r.Named("name"), r.Choice("kind", "computed", "prefilled", "blank"),
			r.Named("section"), r.Text("find"), r.Text("also")}
	})
})

// Index is the sheet that says where each question of a committee is answered, in a
// document of these sections. What is answered nowhere is a blank with its code.
func Index(sections []document.Section) document.Section {
	s := document.Begin(OwnSection)
	places := map[string]document.Cell{OwnSection: document.Text(words.Of("fields.below")),
		"page-1": {Links: []document.Link{{Text: words.Of("fields.page_one"), To: "page-1"}}}}
	for i := range sections {
		places[sections[i].Key] = document.Cell{
			Links: []document.Link{{Text: sections[i].Number, To: sections[i].Key, Sheet: true}}}
	}
	t := indexHead()
	var open document.Blanks
	var cells [][]document.Cell
	for _, f := range Fields() {
		at, there := places[f.Section]
		if !there {
			at = document.Text(words.Of("value.dash"))
		}
		if more := places[f.Also]; there && len(more.Links) > 0 {
			to := more.Links[0]
			to.Sheet = false // there is room for the sheet of one
			at.Links = append(at.Links[:len(at.Links):len(at.Links)], to)
		}
		cells = append(cells, append(document.Row(f.Code, f.Name, words.Of(kinds[f.Kind])), at))
		if f.Section == OwnSection {
			open.Labels = append(open.Labels, words.Of("local.field", words.Of("fields.open", f.Name), f.Code))
		}
	}
	high := (len(cells) + beside - 1) / beside
	for i := range high {
		row := cells[i]
		for at := i + high; at < len(cells); at += high {
			row = append(row, cells[at]...)
		}
		t.Rows = append(t.Rows, row)
	}
	s.Blocks = append(s.Blocks, t)
	if len(open.Labels) > 0 {
		s.Blocks = append(s.Blocks, open)
	}
	return s
}

// beside is how many columns of questions stand side by side, so that all are on one sheet.
const beside = 3

func indexHead() document.Table {
	t := document.Table{Caption: words.Of("fields.caption")}
	for range beside {
		t.Columns = append(t.Columns, document.OnScreen(document.Columns("fields.code", "fields.name", "fields.kind",
			"fields.place"), 2)...)
	}
	return t
}
