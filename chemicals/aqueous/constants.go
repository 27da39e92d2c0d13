package aqueous

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"etchbound/schemas/columns"
)

//go:embed constants.csv
var constants string

// kinds of a row of the constants.
const (
	kindMaster  = "master"
	kindSpecies = "species"
	kindPhase   = "phase"
	kindGas     = "gas"
)

// form is how the activity coefficient of a species follows from the ionic strength.
type form uint8

const (
	neutral form = iota
	wateq
	davies
)

var forms = map[string]form{"": neutral, "neutral": neutral, "wateq": wateq, "davies": davies}

// entry is one row: a master, a species, a solid or a gas. Its reaction stands on
// masters and water alone: others have been put in.
type entry struct {
	kind, name, component string
	charge                float64
	of                    []float64 // masters in one of it
	water                 float64   // water in one of it
	parts                 []part    // constants that add up to its own
	logK, heat            float64
	analytic              []float64
	form                  form
	size, b               float64
	fluoride              float64
	doubted               bool   // counts in a variant only
	present               uint32 // masters it is made of, one bit each
}

// part is a share of the constant of another row.
type part struct {
	row   int
	times float64
}

// known are the rows of the table, masters first.
type known struct {
	rows    []entry
	masters int
	byName  map[string]int
	byPart  map[string]int // masters by their component
}

// table is read once; nothing of it changes afterwards.
var table = sync.OnceValue(func() *known {
	k, err := read("chemicals/aqueous/constants.csv", constants)
	if err != nil {
		panic(err)
	}
	return k
})

// read makes the table of rows out of the text of a file.
func read(name, text string) (*known, error) {
	k := &known{byName: map[string]int{}, byPart: map[string]int{}}
	var equations []string
	rows, err := columns.Read(name, text, func(r columns.Row) entry { return rowOf(r, &equations) })
	if err != nil {
		return nil, err
	}
	kept := make([]string, 0, len(rows))
	for _, want := range []bool{true, false} {
		for i, e := range rows {
			if (e.kind == kindMaster) == want {
				k.rows, kept = append(k.rows, e), append(kept, equations[i])
				k.masters += len(e.component) / max(1, len(e.component))
			}
		}
	}
	for i := range k.rows {
		if err := k.resolve(i, kept[i]); err != nil {
			return nil, fmt.Errorf("%s: %s: %w", name, k.rows[i].name, err)
		}
	}
	return k, nil
}

// Sources are the keys of the sources that the tables of this package name, in order.
func Sources() []string {
	var out []string
	for name, text := range map[string]string{"constants.csv": constants, "variants.csv": variantsText,
		"kept.csv": keptText, "spread.csv": spreadText} {
		t, err := columns.Open("chemicals/aqueous/"+name, text)
		if err != nil {
			panic(err)
		}
		for _, r := range t.Rows() {
			out = append(out, strings.Fields(r.Text("source"))...)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func rowOf(r columns.Row, equations *[]string) entry {
	_ = r.Named("source") + r.Choice("status", "two-sources", "read", "computed", "memory", "assumed")
	e := entry{doubted: strings.HasPrefix(r.Text("note"), "doubted"),
		kind: r.Choice("kind", kindMaster, kindSpecies, kindPhase, kindGas), name: r.Named("name"),
		component: r.Text("component"), charge: r.Stated("charge"), heat: orZero(r.Number("delta_h")),
		form: forms[r.Choice("activity", "", "neutral", "wateq", "davies")], size: orZero(r.Number("ion_size")),
		b: orZero(r.Number("b")), fluoride: orZero(r.Number("fluoride")), logK: orZero(r.Number("log_k"))}
	for _, text := range r.List("analytic") {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			r.Fault("analytic", err)
		}
		e.analytic = append(e.analytic, v)
	}
	*equations = append(*equations, r.Text("reaction"))
	return e
}

func orZero(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// resolve writes a row on masters and water.
func (k *known) resolve(i int, equation string) error {
	e := &k.rows[i]
	e.of = make([]float64, k.masters)
	k.byName[e.name] = i
	if e.kind == kindMaster {
		e.of[i], e.present = 1, 1<<i
		k.byPart[e.component] = i
		return nil
	}
	terms, err := termsOf(equation)
	if err != nil {
		return err
	}
	self := 0 // a solid or a gas stands first
	if e.kind == kindSpecies {
		for self = range terms {
			if terms[self].name == e.name {
				break
			}
		}
	}
	own := terms[self].times
	e.parts = []part{{i, 1 / own}}
	if e.kind != kindSpecies {
		own, e.parts[0].times = -own, 1/own // what it dissolves into, times its own count
	}
	for n, t := range terms {
		if n == self {
			continue
		}
		if err := k.add(e, t, -t.times/own); err != nil {
			return err
		}
	}
	for j, n := range e.of {
		if n != 0 {
			e.present |= 1 << j
		}
	}
	return nil
}

// add puts what one term holds into a row.
func (k *known) add(e *entry, t term, times float64) error {
	if e.kind != kindSpecies {
		times = -times
	}
	if t.name == "H2O" {
		e.water += times
		return nil
	}
	i, there := k.byName[t.name]
	if !there {
		return fmt.Errorf("%q stands in its reaction and in no row above it", t.name)
	}
	o := &k.rows[i]
	for j := range e.of {
		e.of[j] += times * o.of[j]
	}
	e.water += times * o.water
	for _, p := range o.parts {
		e.parts = append(e.parts, part{p.row, times * p.times})
	}
	return nil
}

// term is a name with its count in a reaction, products positive.
type term struct {
	name  string
	times float64
}

// termsOf reads "Al+3 + 4 F- = AlF4-".
func termsOf(equation string) ([]term, error) {
	left, right, two := strings.Cut(equation, " = ")
	if !two {
		return nil, fmt.Errorf("%q is no reaction: it needs a left and a right side", equation)
	}
	var out []term
	for side, text := range []string{left, right} {
		sign := float64(2*side - 1)
		for _, t := range strings.Split(text, " + ") {
			count, name, counted := strings.Cut(strings.TrimSpace(t), " ")
			n := 1.0
			if counted {
				v, err := strconv.ParseFloat(count, 64)
				if err != nil {
					return nil, fmt.Errorf("%q: %w", t, err)
				}
				n = v
			} else {
				name = count
			}
			out = append(out, term{name, sign * n})
		}
	}
	return out, nil
}

const (
	gasConstant = 8.3147e-3 // kJ/mol/K, as the source of the constants takes it
	reference   = 298.15    // K
)

// at is the natural logarithm of the constant of the row's own reaction at t kelvin.
func (e *entry) at(t float64) float64 {
	if len(e.analytic) == 0 {
		return e.logK*math.Ln10 - e.heat/gasConstant*(1/t-1/reference)
	}
	sum := 0.0
	for i, of := range [...]float64{1, t, 1 / t, math.Log10(t), 1 / (t * t), t * t} {
		if i < len(e.analytic) {
			sum += e.analytic[i] * of
		}
	}
	return sum * math.Ln10
}

// Tables is the text of the tables of this package as the program carries them.
func Tables() string { return constants + variantsText + keptText }
