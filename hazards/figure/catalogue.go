package figure

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"
)

//go:embed catalogue.csv
var catalogueCSV string

// Side is the end of a range at which danger lies.
type Side uint8

// The sides.
const (
	High Side = iota
	Low
)

// Quantity is one row of the catalogue: the only place that holds a label or a
// unit of a figure.
type Quantity struct {
	Name       string
	Label      string
	Unit       string
	Danger     Side
	Bare       string // sum, worst or only: how the bare id is formed
	Digits     int    // significant digits in a report
	Kinked     bool   // quarter points are tried as well when its range is found
	Built      bool   // a model computes it
	Definition string
}

// Catalogue returns every catalogued quantity in the order of the file.
func Catalogue() []Quantity { return catalogue().rows }

// Lookup returns the row of a quantity.
func Lookup(name string) (Quantity, bool) {
	c := catalogue()
	i, ok := c.index[name]
	if !ok {
		return Quantity{}, false
	}
	return c.rows[i], true
}

type parsed struct {
	rows  []Quantity
	index map[string]int
}

var catalogue = sync.OnceValue(func() parsed {
	rows, err := csv.NewReader(strings.NewReader(catalogueCSV)).ReadAll()
	if err != nil {
		panic("figure: catalogue.csv: " + err.Error())
	}
	p := parsed{index: map[string]int{}}
	for _, r := range rows[1:] {
		digits, err := strconv.Atoi(r[5])
		if err != nil {
			panic(fmt.Sprintf("figure: catalogue.csv: %s: digits %q", r[0], r[5]))
		}
		q := Quantity{Name: r[0], Label: r[1], Unit: r[2], Bare: r[4], Digits: digits,
			Kinked: r[6] == "yes", Built: r[7] == "yes", Definition: r[8]}
		if r[3] == "low" {
			q.Danger = Low
		}
		p.index[q.Name] = len(p.rows)
		p.rows = append(p.rows, q)
	}
	return p
})

// Units is the catalogue as a reader of limits files needs it.
type Units struct{}

// Unit returns the unit of a quantity and whether it is catalogued.
func (Units) Unit(quantity string) (string, bool) {
	q, ok := Lookup(quantity)
	return q.Unit, ok
}

// Names lists the catalogued quantities.
func (Units) Names() []string {
	var out []string
	for _, q := range Catalogue() {
		out = append(out, q.Name)
	}
	return out
}
