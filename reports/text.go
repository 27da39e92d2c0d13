package reports

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"
	"sync"
)

// Every fixed sentence stands in text.csv, one a row, so that it can be
// translated without touching code. Verbs are those of fmt.

//go:embed text.csv
var textCSV string

var sentences = sync.OnceValue(func() map[string]string {
	m := map[string]string{}
	for _, r := range rows("text.csv", textCSV) {
		m[r[0]] = r[1]
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

// rows reads an embedded table and drops its head. A fault in it is ours.
func rows(name, data string) [][]string {
	r := csv.NewReader(strings.NewReader(data))
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		panic("reports: " + name + ": " + err.Error())
	}
	return all[1:]
}
