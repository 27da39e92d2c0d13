package words

import (
	_ "embed"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"

	"etchbound/hazards/phrase"
	"etchbound/reports/digits"
	"etchbound/schemas/columns"
)

//go:embed phrases.csv
var phraseTable string

// sentence is the row of a key: what it says of one, and of several where that differs.
type sentence struct{ key, one, many string }

var sentences = sync.OnceValue(func() map[string]sentence {
	out := map[string]sentence{}
	for _, s := range columns.Must("reports/words/phrases.csv", phraseTable, func(r columns.Row) sentence {
		return sentence{r.Named("key"), r.Named("one"), r.Text("many")}
	}) {
		out[s.key] = s
	}
	return out
})

// Phrases are the keys that have sentences.
func Phrases() []string {
	var out []string
	for k := range sentences() {
		out = append(out, k)
	}
	return out
}

// Say is a phrase in words. A key without a sentence is a fault of the program.
func Say(p phrase.Phrase) string {
	var b strings.Builder
	say(&b, p)
	return b.String()
}

// SayAll are some phrases in words.
func SayAll(all []phrase.Phrase) []string {
	out := make([]string, len(all))
	for i, p := range all {
		out[i] = Say(p)
	}
	return out
}

func say(b *strings.Builder, p phrase.Phrase) {
	args := make([]any, len(p.Args))
	for i, a := range p.Args {
		switch x := a.(type) {
		case phrase.Phrase:
			args[i] = Say(x)
		case float64:
			args[i] = spelled(x)
		case phrase.Steps:
			args[i] = numbered(List(Runs(x)))
		case []string:
			args[i] = strings.Join(x, " and ")
		default:
			args[i] = a
		}
	}
	if p.Key != "" {
		fmt.Fprintf(b, formOf(p), args...)
	}
	b.WriteString(p.Text)
	for _, q := range p.More {
		say(b, q)
	}
}

// spelled is a number that prints without an exponent, to as many digits as its verb
// asks for.
type spelled float64

// Format writes a number for the verbs g and f, and minutes as they are read for t.
func (x spelled) Format(s fmt.State, verb rune) {
	most, asked := s.Precision()
	if !asked {
		most = 9
	}
	if verb == 'f' && asked {
		fmt.Fprintf(s, "%.*f", most, float64(x))
		return
	}
	if !digits.Is(float64(x)) {
		fmt.Fprint(s, Of("value.unknown"))
		return
	}
	if verb != 't' {
		fmt.Fprint(s, digits.Significant(float64(x), most, 0))
		return
	}
	switch minutes := float64(x); {
	case minutes >= 2*1440:
		fmt.Fprint(s, digits.Significant(minutes/1440, most, 0), " d")
	case minutes >= 120:
		fmt.Fprint(s, digits.Significant(minutes/60, most, 0), " h")
	default:
		fmt.Fprint(s, digits.Significant(minutes, most, 0), " min")
	}
}

// numbered are the numbers of several steps where the sentence of one has a number.
type numbered string

// Format writes them for any verb.
func (x numbered) Format(s fmt.State, _ rune) { io.WriteString(s, string(x)) }

// formOf is the sentence of a key: of several where the first argument counts more
// than one thing, or where several steps stand in it.
func formOf(p phrase.Phrase) string {
	s, ok := sentences()[p.Key]
	if !ok {
		panic("words: no sentence for " + p.Key)
	}
	n, counts := count(p.Args)
	if s.many != "" && (counts && n != 1 || slices.ContainsFunc(p.Args, several)) {
		return s.many
	}
	return s.one
}

func several(arg any) bool {
	_, is := arg.(phrase.Steps)
	return is
}

func count(args []any) (n int, ok bool) {
	if len(args) == 0 {
		return 0, false
	}
	n, ok = args[0].(int)
	return n, ok
}
