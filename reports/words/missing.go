package words

import (
	"cmp"
	_ "embed"
	"slices"
	"strconv"
	"strings"
	"sync"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed missing.csv
var missingTable string

// asked is the row of a kind of missing thing: its name, what it is, and what settles
// it. A row with a subject is of it, of the data whose ids begin with it, or of the
// keys of a file that end with it, and goes before the row of its kind alone. A blank
// text is the name itself.
type asked struct {
	kind, of, name, text, settles string
}

var kinds = sync.OnceValue(func() map[string][]asked {
	out := map[string][]asked{}
	for _, r := range columns.Must("reports/words/missing.csv", missingTable, func(r columns.Row) asked {
		return asked{r.Named("kind"), r.Text("of"), r.Named("name"), cmp.Or(r.Text("text"), r.Text("name")),
			r.Named("settles")}
	}) {
		out[r.kind] = append(out[r.kind], r)
	}
	return out
})

// Kinds are the kinds of missing things that have words.
func Kinds() []string {
	var out []string
	for k := range kinds() {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// rowOf is the row of a missing thing. A kind without one is a fault of the program.
func rowOf(m working.Missing) *asked {
	var best *asked
	for i := range kinds()[m.Kind] {
		r := &kinds()[m.Kind][i]
		if (r.of == "" || m.Subject.Of(r.of)) && (best == nil || len(r.of) > len(best.of)) {
			best = r
		}
	}
	if best == nil {
		panic("words: nothing says what is missing as " + m.Kind)
	}
	return best
}

// Name is what is missing, in a few words with its object.
func Name(m working.Missing) string { return with(rowOf(m).name, m) }

// Names are the names of missing things, in order.
func Names(all []working.Missing) []string {
	out := make([]string, len(all))
	for i, m := range all {
		out[i] = Name(m)
	}
	slices.Sort(out)
	return out
}

// Ask says what is missing, and what settles it.
func Ask(m working.Missing) (text, settles string) {
	r := rowOf(m)
	if q, ok := figure.Lookup(m.Subject.String()); ok && q.Label != "" { // what has no number at one end of its range
		m.Subject = working.Subject(strings.ToLower(q.Label[:1]) + q.Label[1:])
	}
	return with(r.text, m), with(r.settles, m)
}

// NamesSubject reports whether the words for what is missing name what it is of.
func NamesSubject(m working.Missing) bool { return strings.Contains(rowOf(m).text, "{subject}") }

// Named is Ask with the name of the thing behind what it says, unless that names it
// already.
func Named(m working.Missing) (text, settles string) {
	r, name := rowOf(m), Name(m)
	text, settles = Ask(m)
	if strings.ContainsAny(r.text, "{}") || strings.Contains(text, name) || len(name) > longest {
		return text, settles
	}
	return text + " [" + name + "]", settles
}

// longest is the longest name that stands behind what is asked for: a longer one is a
// sentence of its own.
const longest = 40

// with puts what a thing is of into its words. A path in a file is told as people say
// it.
func with(s string, m working.Missing) string {
	subject := m.Subject.String()
	if m.Kind == working.NotGiven || m.Kind == "ratio_to_powder" {
		subject = route.Told(subject)
	}
	s = strings.ReplaceAll(s, "{subject}", subject)
	return strings.TrimSpace(strings.ReplaceAll(s, "{step}", strconv.Itoa(m.Step)))
}
