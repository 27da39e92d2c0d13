// Package evolving knows which poisonous gases can form in a medium, and what one mol of
// each takes. It must not know any route, nor how much of anything is there.
package evolving

import (
	_ "embed"
	"slices"
	"strconv"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/schemas/columns"
)

// Gas is one that can form.
type Gas struct {
	Of    string               // the element it is made of; "" where its takes say what there has to be
	In    []string             // words of the medium that all have to hold
	Sub   *chemicals.Substance // nil: the element gives none there
	Takes []Take               // at most two
	Said  string               // the fact that stops work for it already
	Slow  datum.ID             // what begins the ids of its law of first order; "" for one that comes at once
}

// Take is what one mol of a gas takes.
type Take struct {
	Element string // symbol, or Electrons
	Where   string // Anywhere, one of the other places, or a class of substances of the liquor
	Mol     float64
}

// Electrons stands for an element where charge is what a gas takes.
const Electrons = "e"

// Where what a gas takes can be.
const (
	Anywhere  = ""
	Powder    = "powder"    // in what came with the powder, dissolved or not
	Liquor    = "liquor"    // in what was dissolved, whatever took some of it
	Reducible = "reducible" // in the chlorides that a melt leaves the metal of
	Current   = "current"   // what flows
	Oxidant   = "oxidant"   // what oxidants of the liquor take up
)

//go:embed gases.csv
var table string

// held are the rows of the table by their element, those with most words first.
var held = sync.OnceValue(func() map[string][]*Gas {
	out := map[string][]*Gas{}
	for _, of := range columns.Must("chemicals/evolving/gases.csv", table, rowOf) {
		for _, g := range of {
			out[g.Of] = append(out[g.Of], g)
		}
	}
	for _, all := range out {
		slices.SortStableFunc(all, func(a, b *Gas) int { return len(b.In) - len(a.In) })
	}
	return out
})

// rowOf reads a row of the table: a gas, or elements that give none.
func rowOf(r columns.Row) []*Gas {
	_ = r.Named("source") + r.Choice("status", "computed", "memory", "read", "two-sources") + r.Text("note")
	g := Gas{In: r.List("in"), Said: r.Text("said"), Slow: datum.ID(r.Text("slow"))}
	for _, text := range r.List("takes") {
		t, err := takeOf(text)
		if err != nil {
			r.Fault("takes", err)
		}
		g.Takes = append(g.Takes, t)
	}
	if name := r.Named("gas"); name != "none" {
		s, there := chemicals.Library().Find(name)
		if !there || len(g.Takes) == 0 || len(g.Takes) > 2 {
			r.Fault("gas", &errGas{name})
		}
		g.Sub = s
	}
	of := r.List("of")
	if of == nil {
		return []*Gas{&g}
	}
	var out []*Gas
	for _, element := range of {
		x := g
		x.Of = element
		out = append(out, &x)
	}
	return out
}

// errGas is a gas that the table cannot hold.
type errGas struct{ name string }

// Error implements error.
func (e *errGas) Error() string {
	return e.name + " is no substance that is held, or says not what it takes: one thing or two"
}

// takeOf reads element@where:mol.
func takeOf(text string) (Take, error) {
	what, mol, _ := strings.Cut(text, ":")
	element, where, _ := strings.Cut(what, "@")
	v, err := strconv.ParseFloat(mol, 64)
	return Take{element, where, v}, err
}

// Is reports whether a word of a medium holds.
type Is func(word string) bool

// From is what an element gives in a medium: the row with most words that hold. It is not
// listed where there is none.
func From(element string, is Is) (g *Gas, listed bool) {
	for _, g := range held()[element] {
		if g.Forms(is) {
			return g, true
		}
	}
	return nil, false
}

// Others are the gases that a medium could make of an element were it not for the one that it
// makes of it first.
func Others(element string, is Is) []*Gas {
	var out []*Gas
	first := true
	for _, g := range held()[element] {
		if !g.Forms(is) {
			continue
		}
		if !first && g.Sub != nil {
			out = append(out, g)
		}
		first = false
	}
	return out
}

// With are the gases that form of nothing but what their takes say.
func With(is Is) []*Gas {
	var out []*Gas
	for _, g := range held()[""] {
		if g.Forms(is) {
			out = append(out, g)
		}
	}
	return out
}

// Forms reports whether a gas forms in a medium.
func (g *Gas) Forms(is Is) bool {
	for _, word := range g.In {
		if !is(word) {
			return false
		}
	}
	return true
}

// Tables is the text of the tables of this package as the program carries them.
func Tables() string { return table + idleCSV }
