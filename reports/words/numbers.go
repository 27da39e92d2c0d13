package words

import (
	_ "embed"
	"fmt"
	"sync"

	"etchbound/schemas/columns"
)

//go:embed numbers.csv
var numberTable string

var numbers = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for _, s := range columns.Must("reports/words/numbers.csv", numberTable, func(r columns.Row) [2]string {
		return [...]string{r.Named("key"), r.Named("text")}
	}) {
		out[s[0]] = s[1]
	}
	return out
})

// Number is what is written of a number beside its digits, with what it takes filled in.
// A key without words is a fault of the program.
func Number(key string, args ...any) string {
	s, ok := numbers()[key]
	if !ok {
		panic("words: nothing written of a number for " + key)
	}
	if len(args) == 0 {
		return s
	}
	return fmt.Sprintf(s, args...)
}
