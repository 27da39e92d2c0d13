package levers

import (
	_ "embed"
	"math"
	"slices"
	"strconv"
	"sync"

	"etchbound/hazards/figure"
	"etchbound/schemas/columns"
)

//go:embed levers.csv
var table string

// row is one lever.
type row struct {
	name    string
	helps   []string  // quantities
	values  []float64 // factors, or in the unit of the lever
	drops   []string  // keys below measured
	written bool
	etch    bool // the etch itself feels it
	first   bool // taken in the place of the etch before anything is searched
}

var rows = sync.OnceValue(func() []row {
	return columns.Must("scaling/levers/levers.csv", table, func(r columns.Row) row {
		out := row{name: r.Named("lever"), helps: r.List("helps"), drops: r.List("drops"), written: r.Yes("written"),
			etch: r.Yes("etch"), first: r.Yes("first")}
		for _, text := range r.List("values") {
			v, err := strconv.ParseFloat(text, 64)
			if err != nil {
				r.Fault("values", err)
			}
			out.values = append(out.values, v)
		}
		for _, q := range out.helps {
			figure.Row(q)
		}
		return out
	})
})

// Names are those of the levers, the smallest change first.
func Names() []string {
	var out []string
	for _, r := range rows() {
		out = append(out, r.name)
	}
	return out
}

// lever is the row of a name.
func lever(name string) *row {
	all := rows()
	if i := slices.IndexFunc(all, func(r row) bool { return r.name == name }); i >= 0 {
		return &all[i]
	}
	return &row{name: name}
}

// ordinary is the next of the round numbers that people measure out, not below v.
func ordinary(v float64) float64 {
	if !(v > 0) || math.IsInf(v, 0) {
		return v
	}
	ten := math.Pow(10, math.Floor(math.Log10(v)))
	for _, step := range []float64{1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10} {
		if step*ten >= v*(1-1e-9) {
			return step * ten
		}
	}
	return 10 * ten
}

// text is a number as it is written in a file.
func text(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
