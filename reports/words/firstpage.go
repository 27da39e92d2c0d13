package words

import (
	_ "embed"
	"fmt"
	"sync"

	"etchbound/schemas/columns"
)

//go:embed firstpage.csv
var firstPageTable string

var firstPage = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for _, s := range columns.Must("reports/words/firstpage.csv", firstPageTable, func(r columns.Row) [2]string {
		return [...]string{r.Named("key"), r.Named("text")}
	}) {
		out[s[0]] = s[1]
	}
	return out
})

// FirstPage is a sentence of page 1 by its key, with what stands in it. A key without a
// sentence is a fault of the program.
func FirstPage(key string, args ...any) string {
	s, ok := firstPage()[key]
	if !ok {
		panic("words: no sentence of page 1 for " + key)
	}
	return fmt.Sprintf(s, args...)
}

// FirstPageKeys are the keys of the sentences of page 1.
func FirstPageKeys() []string {
	var out []string
	for k := range firstPage() {
		out = append(out, k)
	}
	return out
}

// HasFirstPage reports whether page 1 has a sentence of a key.
func HasFirstPage(key string) bool { _, ok := firstPage()[key]; return ok }
