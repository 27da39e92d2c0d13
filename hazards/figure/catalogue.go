package figure

import (
	"cmp"
	_ "embed"
	"slices"
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

// Family is what a quantity is about: one hazard, or one thing that is done.
type Family string

// Quantity is one row of the catalogue: the only place that holds a label or a
// unit of a figure.
type Quantity struct {
	Name   string
	Family Family
	Label  string
	Unit   string
	Danger Side
	Bare   string // sum, worst or only: how the bare id is formed
	Digits int    // significant digits in a report
	Kinked bool   // quarter points are tried as well when its range is found
	Built  bool   // a model computes it
	// Beside: it is shown beside another that carries the verdict. HasLimit: all the same
	// it is a limit, is held against what the route or the site says, or says what has to
	// be had.
	Beside, HasLimit bool
	// StandsOn are the quantities of the same place that its limits are made of, or that
	// may be judged in its place.
	StandsOn []string
	// DrivenBy is the quantity whose swings say which way this one goes, "" for its own:
	// a bore stands at its least until the flow is large, a time at a day until the room
	// is in danger.
	DrivenBy string
	Headline int // its place among what people ask for first, from 1; 0: none
	// Never is the value of a time that says that it is not reached while it is looked
	// for, in the unit; 0: there is no such value.
	Never      int
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

// Row is the row of a quantity, shared and not to be changed; an empty one where it is
// not catalogued.
func Row(name string) *Quantity {
	c := catalogue()
	if i, ok := c.index[name]; ok {
		return &c.rows[i]
	}
	return &Quantity{}
}

// Headlines are the quantities that people ask for first, in that order.
func Headlines() []string { return catalogue().headlines }

type parsed struct {
	rows      []Quantity
	index     map[string]int
	headlines []string
}

var catalogue = sync.OnceValue(func() parsed {
	p := parsed{index: map[string]int{}}
	p.rows = columns.Must("hazards/figure/catalogue.csv", catalogueCSV, quantityOf)
	var first []*Quantity
	for i := range p.rows {
		p.index[p.rows[i].Name] = i
		if p.rows[i].Headline > 0 {
			first = append(first, &p.rows[i])
		}
	}
	slices.SortFunc(first, func(a, b *Quantity) int { return cmp.Compare(a.Headline, b.Headline) })
	for _, q := range first {
		p.headlines = append(p.headlines, q.Name)
	}
	return p
})

func quantityOf(r columns.Row) Quantity {
	q := Quantity{Name: r.Named("name"), Family: Family(r.Named("family")), Label: r.Named("label"),
		Unit: r.Named("unit"), Digits: r.Count("digits"),
		Bare: r.Choice("bare", "sum", "worst", "only"), Kinked: r.Yes("kinked"), Built: r.Yes("built"),
		Beside: r.Yes("beside"), HasLimit: r.Yes("has_limit"), StandsOn: r.List("stands_on"), DrivenBy: r.Text("driven_by"),
		Headline: r.Count("headline"), Never: r.Count("never"), Definition: r.Named("definition")}
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

// Low reports whether danger lies below a limit of a quantity.
func (Units) Low(quantity string) bool {
	q, _ := Lookup(quantity)
	return q.Danger == Low
}

// Names lists the catalogued quantities.
func (Units) Names() []string {
	var out []string
	for _, q := range Catalogue() {
		out = append(out, q.Name)
	}
	return out
}

// Tables is the text of the tables of this package as the program carries them.
func Tables() string { return catalogueCSV }
