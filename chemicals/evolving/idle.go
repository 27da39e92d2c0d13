package evolving

import (
	_ "embed"
	"strings"
	"sync"

	"etchbound/schemas/columns"
)

//go:embed idle.csv
var idleCSV string

// idleWord is a word in the name of a gas that takes part in nothing.
type idleWord struct {
	gas bool // it names a gas, or none; else it says how one comes
	hot bool // fine metal does not burn in it, however hot
}

var idle = sync.OnceValue(func() map[string]idleWord {
	out := map[string]idleWord{}
	columns.Must("chemicals/evolving/idle.csv", idleCSV, func(r columns.Row) string {
		_, _, _ = r.Named("is"), r.Named("source"), r.Named("status")
		hot := r.Choice("hot", "", "yes", "no")
		out[r.Named("word")] = idleWord{gas: hot != "", hot: hot == "yes"}
		return r.Named("word")
	})
	return out
})

// wordsOf are the words of the name of a gas; ok is false where one of them is not held.
func wordsOf(gas string) (all []idleWord, ok bool) {
	for _, word := range strings.Fields(strings.ToLower(gas)) {
		w, held := idle()[strings.Trim(word, ",;()")]
		if !held {
			return nil, false
		}
		all = append(all, w)
	}
	return all, true
}

// Idle reports whether a gas that is led over something is known to take part in nothing
// there, by all the words of its name.
func Idle(gas string) bool {
	_, ok := wordsOf(gas)
	return ok
}

// IdleHot reports whether fine metal is known not to burn in a gas, however hot it gets: by
// each word of its name that names one. Where none does, nobody knows.
func IdleHot(gas string) bool {
	all, ok := wordsOf(gas)
	named := false
	for _, w := range all {
		ok = ok && (w.hot || !w.gas)
		named = named || w.gas
	}
	return ok && named
}
