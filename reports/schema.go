package reports

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"

	"etchbound/hazards/figure"
	tables "etchbound/schemas/columns"
)

// output is something a command writes for programs: a JSON document, made from
// the Go type that is written, or a CSV, made from its columns.
type output struct {
	name    string
	format  string   // the version of the shape; of a CSV that of the document it belongs to
	says    string   // what it is, in a few words
	of      any      // the Go type of a JSON document
	columns []string // of a CSV
}

// outputs are all of them, in the order they are told.
var outputs = []output{
	{name: "review", format: Format, says: "Hazard review of one etching route", of: reviewJSON{}},
	{name: "upset", format: Format, says: "What happens when something fails, as a review of nothing else",
		of: reviewJSON{}},
	{name: "scale", format: GrowthFormat, says: "One route from a small batch to a large one", of: growthJSON{}},
	{name: "change", format: ChangeFormat, says: "What a proposed route changes of a reviewed one", of: changeJSON{}},
	{name: "compare", format: CompareFormat, says: "Several routes side by side", of: compareJSON{}},
	{name: "stock", format: StockFormat, says: "What a site holds and its routes take", of: stockJSON{}},
	{name: "upset.csv", format: Format, says: "What happens when something fails, a figure a row",
		columns: figureColumns},
	{name: "scale.csv", format: GrowthFormat, says: "The batches at which findings turn, one a row",
		columns: crossingColumns},
	{name: "change.csv", format: ChangeFormat, says: "What a change meets, states and moves, one a row",
		columns: changeColumns},
	{name: "compare.csv", format: CompareFormat, says: "Several routes side by side, a value a row",
		columns: cellColumns},
	{name: "stock.csv", format: StockFormat, says: "An inventory, a bottle or a substance a row",
		columns: inventoryColumns},
}

// Outputs are the names of what Schema has a schema of.
func Outputs() []string {
	names := make([]string, len(outputs))
	for i := range outputs {
		names[i] = outputs[i].name
	}
	return names
}

// Schema is the JSON Schema (draft 2020-12) of an output of that name, of a CSV
// that of one row; false where there is none.
func Schema(name string) ([]byte, bool, error) {
	at := slices.IndexFunc(outputs, func(o output) bool { return o.name == name })
	if at < 0 {
		return nil, false, nil
	}
	b, err := json.MarshalIndent(outputs[at].schema(), "", " ")
	return append(b, '\n'), true, err
}

const documentNote = "Numbers have nine significant digits; null is unknown. This schema is exactly what this version" +
	" writes; a later version of the same format may add keys and ids, and takes none away."

const rowNote = "One row of a CSV: UTF-8 without a byte-order mark, comma, LF, a header row with the required keys in" +
	" their order, decimal points. An empty cell is null where null is allowed. A text that a spreadsheet would take" +
	" for a formula begins with an apostrophe."

func (o *output) schema() object {
	words, note := wordsOf(o), rowNote
	var s object
	if o.of != nil {
		s, note = shapeOf(reflect.TypeOf(o.of), words, ""), documentNote
		s["properties"].(object)["format"] = object{"const": o.format}
	} else {
		s = rowShape(o.columns, words)
	}
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	family, edition, _ := strings.Cut(strings.TrimPrefix(o.format, "etchbound."), "/")
	if o.of == nil {
		family = o.name
	}
	s["$id"], s["title"], s["description"] = fmt.Sprintf("etchbound:%s/%s", family, edition), o.says, note
	return s
}

//go:embed keys.csv
var keyTable string

// keyWord is what is said of a key of a JSON document or a column of a CSV.
type keyWord struct {
	output, key string
	kind        string   // of a column: a key of cellTypes
	values      []string // all it can be; nil where it can be more
	pattern     string
	says        string
}

var keyRows = sync.OnceValue(func() []keyWord {
	return tables.Must("reports/keys.csv", keyTable, func(r tables.Row) keyWord {
		return keyWord{output: r.Named("output"), key: r.Named("key"), kind: r.Text("kind"),
			values: valuesOf(r.List("values")), pattern: r.Text("pattern"), says: r.Text("says")}
	})
})

// everyDocument is the output of the rows that serve each JSON document.
const everyDocument = "*"

// keyWords are those of one output by key.
type keyWords map[string]*keyWord

// wordsOf are the rows of keys.csv of an output, and those of every document.
func wordsOf(o *output) keyWords {
	out := keyWords{}
	name := o.name
	if name == "upset" {
		name = "review"
	}
	all := keyRows()
	for i := range all {
		if r := &all[i]; r.output == name || r.output == everyDocument && o.of != nil {
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

// of is what is said of the key at a path: its own row, or that of the longest
// end of the path that has one.
func (k keyWords) of(path string) *keyWord {
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
func (k keyWords) add(s object, path string) {
	w := k.of(path)
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
