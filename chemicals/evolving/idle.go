package evolving

import (
	_ "embed"
	"strings"
	"sync"

	"etchbound/schemas/columns"
)

//go:embed idle.csv
var idleCSV string

var idle = sync.OnceValue(func() map[string]bool {
	out := map[string]bool{}
	for _, word := range columns.Must("chemicals/evolving/idle.csv", idleCSV, func(r columns.Row) string {
		_, _, _ = r.Named("is"), r.Named("source"), r.Named("status")
		return r.Named("word")
	}) {
		out[word] = true
	}
	return out
})

// Idle reports whether a gas that is led over something is known to take part in nothing
// there, by all the words of its name.
func Idle(gas string) bool {
	for _, word := range strings.Fields(strings.ToLower(gas)) {
		if !idle()[strings.Trim(word, ",;()")] {
			return false
		}
	}
	return true
}
