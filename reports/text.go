package reports

import (
	_ "embed"
	"fmt"
	"sync"

	tables "etchbound/schemas/columns"
)

// Every fixed sentence stands in text.csv, one a row, so that it can be
// translated without touching code. Verbs are those of fmt.

//go:embed text.csv
var textCSV string

var sentences = sync.OnceValue(func() map[string]string {
	m := map[string]string{}
	for _, s := range tables.Must("reports/text.csv", textCSV, func(r tables.Row) [2]string {
		return [...]string{r.Named("key"), r.Text("text")}
	}) {
		m[s[0]] = s[1]
	}
	return m
})

// say returns the fixed sentence of a key, with its arguments filled in.
func say(key string, args ...any) string {
	s, ok := sentences()[key]
	if !ok {
		panic("reports: no sentence for " + key)
	}
	if len(args) == 0 {
		return s
	}
	return fmt.Sprintf(s, args...)
}

// said reports whether a sentence exists; used where a key is made from data.
func said(key string) bool {
	_, ok := sentences()[key]
	return ok
}
