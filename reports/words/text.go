package words

import (
	_ "embed"
	"fmt"
	"maps"
	"sync"

	tables "etchbound/schemas/columns"
)

// Every fixed sentence stands in text.csv, one a row, so that it can be
// translated without touching code. Verbs are those of fmt.

//go:embed text.csv
var textCSV string

var texts = sync.OnceValue(func() map[string]string {
	m := map[string]string{}
	for _, s := range tables.Must("reports/words/text.csv", textCSV, func(r tables.Row) [2]string {
		return [...]string{r.Named("key"), r.Text("text")}
	}) {
		m[s[0]] = s[1]
	}
	return m
})

// Fixed are all fixed sentences by their keys.
func Fixed() map[string]string { return maps.Clone(texts()) }

// Of returns the fixed sentence of a key, with its arguments filled in.
func Of(key string, args ...any) string {
	s, ok := texts()[key]
	if !ok {
		panic("words: no sentence for " + key)
	}
	if len(args) == 0 {
		return s
	}
	return fmt.Sprintf(s, args...)
}

// Has reports whether a sentence exists; used where a key is made from data.
func Has(key string) bool {
	_, ok := texts()[key]
	return ok
}

// OrNone is a text, or that none is given.
func OrNone(s string) string {
	if s == "" {
		return Of("value.none_given")
	}
	return s
}

// OrNotStated is a text, or that it is not stated.
func OrNotStated(s string) string {
	if s == "" {
		return Of("value.not_stated")
	}
	return s
}

// OrDash is a text, or a dash for none.
func OrDash(s string) string {
	if s == "" {
		return Of("value.dash")
	}
	return s
}
