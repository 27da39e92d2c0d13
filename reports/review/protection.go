package review

import (
	_ "embed"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
	tables "etchbound/schemas/columns"
)

//go:embed protection.csv
var protectionCSV string

// protection is one item of one band. Bands of one agent rise from 1.
type protection struct {
	agent                                           string
	band                                            int
	when                                            []clause
	condition, part, item, material, source, status string
}

// clause is one bound of a condition: over it is a measure past value, or at
// it where equal says so.
type clause struct {
	measure string
	equal   bool
	value   float64
}

var protectionRules = sync.OnceValue(func() []protection {
	return tables.Must("reports/review/protection.csv", protectionCSV, func(r tables.Row) protection {
		when, err := clauses(r.Named("condition"))
		if err != nil {
			r.Fault("condition", err)
		}
		return protection{r.Named("agent"), r.Count("band"), when, r.Text("condition"), r.Named("part"), r.Named("item"),
			r.Text("material"), r.Named("source"), r.Named("status")}
	})
})

// clauses reads "hf_strength >= 10 or hf_volume > 1000".
func clauses(condition string) ([]clause, error) {
	var out []clause
	for _, part := range strings.Split(condition, " or ") {
		w := strings.Fields(part)
		if len(w) != 3 || w[1] != ">" && w[1] != ">=" {
			return nil, fmt.Errorf("%q is not a measure, > or >= and a number", part)
		}
		v, err := strconv.ParseFloat(w[2], 64)
		if err != nil {
			return nil, err
		}
		out = append(out, clause{w[0], w[1] == ">=", v})
	}
	return out, nil
}

// meet reports whether one of the clauses holds. What is not known meets every
// clause on it, what the route does not have none.
func (m measures) meet(when []clause) bool {
	for _, c := range when {
		v, there := m[c.measure]
		if there && (math.IsNaN(v) || v > c.value || c.equal && v == c.value) {
			return true
		}
	}
	return false
}

// worn is the rows that count, in the order of the file: of one agent and part
// the last one met.
func (m measures) worn() []protection {
	type wornAt struct{ agent, part string }
	last := map[wornAt]int{}
	all := protectionRules()
	for i := range all {
		if m.meet(all[i].when) {
			last[wornAt{all[i].agent, all[i].part}] = i
		}
	}
	var out []protection
	for i := range all {
		if at, ok := last[wornAt{all[i].agent, all[i].part}]; ok && at == i {
			out = append(out, all[i])
		}
	}
	return out
}

// band is the highest band of an agent that is met, 0 for none.
func (m measures) band(agent string) int {
	out := 0
	for _, r := range protectionRules() {
		if r.agent == agent && m.meet(r.when) {
			out = max(out, r.band)
		}
	}
	return out
}

// agents is the order of the tables; each has the measures its bands rest on.
var agents = [...]struct{ name, first, second string }{
	{"hf", "hf_strength", "hf_volume"}, {"tmaoh", "tmaoh_strength", ""}, {"powder", "powder_mass", ""},
}

// protective is the equipment the bands ask for, one table an agent. It comes
// after every other order of safeguards.
func (b *builder) protective() []document.Block {
	m := b.measures()
	var out []document.Block
	for _, a := range agents {
		if m.band(a.name) > 0 {
			out = append(out, document.Paragraph{Text: m.basis(a.name, a.first, a.second)}, m.wornTable(a.name))
		}
	}
	if len(out) == 0 {
		return nil
	}
	if b.Tags.Has("hf") || b.Tags.Has("tmaoh") {
		out = append(out, document.Paragraph{Text: words.Of("protection.thin"), Tone: document.Warning})
	}
	out = append(out, document.Paragraph{Text: words.Of("protection.time")},
		document.Paragraph{Text: words.Of("protection.outside")})
	if b.Tags.Has("hf") {
		out = append(out, document.Blanks{Labels: []string{words.Of("protection.bottle")}})
	}
	return append(out, document.Blanks{Labels: []string{words.Of("protection.size"), words.Of("protection.respirator")}})
}

func (m measures) wornTable(agent string) document.Table {
	t := document.Table{Caption: words.Of("protection.caption", words.Of("worn."+agent), m.band(agent)),
		Columns: document.OnScreen(document.Columns("protection.part", "protection.item", "protection.material",
			"protection.maker", "col.source", "col.status", "col.in_place"), 4)}
	for _, r := range m.worn() {
		if r.agent != agent {
			continue
		}
		maker := document.Text(words.Of("value.dash"))
		if r.part == "hands" {
			maker = document.Cell{Blank: true}
		}
		t.Rows = append(t.Rows, []document.Cell{document.Text(words.Of("part." + r.part)), document.Text(r.item),
			document.Text(words.OrDash(r.material)), maker,
			document.Text(r.source), document.Text(r.status), document.Text("☐")})
	}
	return t
}

// basis says which band each measure gives by itself; the worse counts.
func (m measures) basis(agent string, names ...string) string {
	var s []string
	for _, n := range names {
		if n != "" {
			alone := measures{n: m[n]}
			s = append(s, words.Of("protection.basis", words.Of("measure."+n), m.words(n), alone.band(agent)))
		}
	}
	return words.Of("protection.counts", words.Of("worn."+agent), strings.Join(s, "; "))
}

// measureUnit is the unit of each measure.
var measureUnit = map[string]string{"hf_strength": "wt%", "hf_volume": "mL", "tmaoh_strength": "wt%",
	"powder_mass": "g"}

// words is a measure in words, rounded up.
func (m measures) words(name string) string {
	v := m[name]
	if math.IsNaN(v) {
		return words.Of("protection.unknown")
	}
	unit := measureUnit[name]
	if unit == "mL" && v >= 1000 {
		v, unit = v/1000, "L"
	}
	return words.Of("protection.at_most", number.With(number.Significant(v, 3, 1), unit))
}

// A measures holds the numbers the rows of protection.csv are judged by: wt%,
// mL and g, each at its dangerous end. NaN is not known; a name that is not
// there means that the route has no such thing.
type measures map[string]float64

func (b *builder) measures() measures {
	m := measures{}
	if b.Tags.Has("hf") {
		m["hf_strength"], m["hf_volume"] = b.StrongestHF(), b.Largest("hf")
	}
	if b.Tags.Has("tmaoh") {
		m["tmaoh_strength"] = b.Poured("tmaoh")
	}
	if b.Tags.Has("powder") || b.Tags.Has("dry") {
		m["powder_mass"] = b.Powder()
	}
	return m
}
