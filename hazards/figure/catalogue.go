package figure

import (
	_ "embed"
	"sync"

	"etchbound/schemas/columns"
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
	p := parsed{index: map[string]int{}}
	p.rows = columns.Must("hazards/figure/catalogue.csv", catalogueCSV, quantityOf)
	for i := range p.rows {
		p.index[p.rows[i].Name] = i
	}
	return p
})

func quantityOf(r columns.Row) Quantity {
	q := Quantity{Name: r.Named("name"), Label: r.Named("label"), Unit: r.Named("unit"), Digits: r.Count("digits"),
		Bare: r.Choice("bare", "sum", "worst", "only"), Kinked: r.Yes("kinked"), Built: r.Yes("built"),
		Definition: r.Named("definition")}
	if r.Choice("danger", "high", "low") == "low" {
		q.Danger = Low
	}
	return q
}

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
