package record

import (
	_ "embed"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"

	"etchbound/hazards/figure"
	tables "etchbound/schemas/columns"
)

// Output is something a command writes for programs: a JSON document, made from
// the Go type that is written, or a CSV, made from its columns.
type Output struct {
	Name    string
	Format  string   // the version of the shape; of a CSV that of the document it belongs to
	Says    string   // what it is, in a few words
	Of      any      // the Go type of a JSON document
	Columns []string // of a CSV
}

const documentNote = "Numbers have nine significant digits; null is unknown. This schema is exactly what this version" +
	" writes; a later version of the same format may add keys and ids, and takes none away."

const rowNote = "One row of a CSV: UTF-8 without a byte-order mark, comma, LF, a header row with the required keys in" +
	" their order, decimal points. An empty cell is null where null is allowed. A text that a spreadsheet would take" +
	" for a formula begins with an apostrophe."

func (o *Output) Schema() Object {
	words, note := WordsOf(o), rowNote
	var s Object
	if o.Of != nil {
		s, note = shapeOf(reflect.TypeOf(o.Of), words, ""), documentNote
		s["properties"].(Object)["format"] = Object{"const": o.Format}
	} else {
		s = rowShape(o.Columns, words)
	}
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	family, edition, _ := strings.Cut(strings.TrimPrefix(o.Format, "etchbound."), "/")
	if o.Of == nil {
		family = o.Name
	}
	s["$id"], s["title"], s["description"] = fmt.Sprintf("etchbound:%s/%s", family, edition), o.Says, note
	return s
}

//go:embed keys.csv
var keyTable string

// KeyWord is what is said of a key of a JSON document or a column of a CSV.
type KeyWord struct {
	Output, key string
	kind        string   // of a column: a key of cellTypes
	values      []string // all it can be; nil where it can be more
	pattern     string
	says        string
}

var keyRows = sync.OnceValue(func() []KeyWord {
	return tables.Must("reports/record/keys.csv", keyTable, func(r tables.Row) KeyWord {
		return KeyWord{Output: r.Named("output"), key: r.Named("key"), kind: r.Text("kind"),
			values: valuesOf(r.List("values")), pattern: r.Text("pattern"), says: r.Text("says")}
	})
})

// EveryDocument is the output of the rows that serve each JSON document.
const EveryDocument = "*"

// keyWords are those of one output by key.
type keyWords map[string]*KeyWord

// WordsOf are the rows of keys.csv of an output, and those of every document.
func WordsOf(o *Output) keyWords {
	out := keyWords{}
	name := o.Name
	if name == "upset" {
		name = "review"
	}
	all := keyRows()
	for i := range all {
		if r := &all[i]; r.Output == name || r.Output == EveryDocument && o.Of != nil {
			out[r.key] = r
		}
	}
	return out
}

// valuesOf are the values of a row, the names of the catalogue for the word
// quantities.
func valuesOf(cell []string) []string {
	if !slices.Equal(cell, []string{"quantities"}) {
		return cell
	}
	var names []string
	for _, q := range figure.Catalogue() {
		names = append(names, q.Name)
	}
	return names
}

// Of is what is said of the key at a path: its own row, or that of the longest
// end of the path that has one.
func (k keyWords) Of(path string) *KeyWord {
	if w := k[path]; w != nil {
		return w
	}
	for rest := "." + path; ; {
		if w := k[rest]; w != nil {
			return w
		}
		at := strings.IndexByte(rest[1:], '.')
		if at < 0 {
			return nil
		}
		rest = rest[1+at:]
	}
}

// add puts the words of a key into its schema.
func (k keyWords) add(s Object, path string) {
	w := k.Of(path)
	if w == nil {
		return
	}
	if w.says != "" {
		s["description"] = w.says
	}
	if w.pattern != "" {
		s["pattern"] = w.pattern
	}
	if w.values == nil {
		return
	}
	values := make([]any, len(w.values))
	for i, v := range w.values {
		values[i] = v
	}
	if _, several := s["type"].([]string); several {
		values = append(values, nil)
	}
	delete(s, "type")
	s["enum"] = values
}
