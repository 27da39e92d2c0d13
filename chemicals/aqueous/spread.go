package aqueous

import (
	_ "embed"
	"math"
	"strconv"
	"strings"
	"sync"

	"etchbound/schemas/columns"
)

//go:embed spread.csv
var spreadText string

// Spread is what other sets of constants make of a solution at 25 degC beside ours. What is
// not told of it is NaN: fluoride where none settles.
type Spread struct {
	Totals        []Amount
	Solid         string // in excess in water; empty where all is dissolved
	PH            Band
	Fluoride      Band       // mg/kg
	OtherPH       [2]float64 // least and most of the other sets
	OtherFluoride [2]float64
	Sets          int
}

// milligrams of fluoride in a mol.
const milligrams = 18998.4

// Spreads are the solutions that other sets were asked for, in the order of the table, with the
// band that the variants give of ours. They are worked out once. A solution of which ours finds
// no equilibrium is left out.
var Spreads = sync.OnceValue(func() []Spread {
	m, err := At(25)
	if err != nil {
		return nil
	}
	var out []Spread
	at := map[string]int{}
	for _, r := range columns.Must("chemicals/aqueous/spread.csv", spreadText, otherOf) {
		i, there := at[r.name]
		if !there {
			s, err := m.spread(&r)
			if err != nil {
				continue
			}
			i = len(out)
			at[r.name], out = i, append(out, s)
		}
		s := &out[i]
		s.Sets++
		s.OtherPH = within(s.OtherPH, r.pH)
		s.OtherFluoride = within(s.OtherFluoride, r.fluoride)
	}
	return out
})

// other is what one set makes of a solution.
type other struct {
	name, solid  string
	totals       []Amount
	pH, fluoride float64
}

func otherOf(r columns.Row) other {
	_ = r.Named("source") + r.Choice("status", "computed", "read") + r.Text("note")
	o := other{name: r.Text("totals") + r.Text("solid"), solid: r.Text("solid"), pH: r.Number("ph"),
		fluoride: r.Number("fluoride")}
	for _, text := range r.List("totals") {
		of, mol, _ := strings.Cut(text, ":")
		v, err := strconv.ParseFloat(mol, 64)
		if err != nil {
			r.Fault("totals", err)
		}
		o.totals = append(o.totals, Amount{of, v})
	}
	return o
}

// spread is ours of a solution.
func (m *Model) spread(o *other) (Spread, error) {
	nan := math.NaN()
	s := Spread{Totals: o.totals, Solid: o.solid, Fluoride: Band{Central: nan, Low: nan, High: nan},
		OtherPH: [2]float64{nan, nan}, OtherFluoride: [2]float64{nan, nan}}
	mix := Mixture{Totals: o.totals}
	if o.solid != "" {
		mix.Solids = []Amount{{Of: o.solid, Mol: 1}}
	}
	var err error
	if s.PH, err = m.Band(mix, (*State).PH); err != nil || o.solid == "" {
		return s, err
	}
	s.Fluoride, err = m.Band(mix, func(x *State) float64 { return x.Fluoride() * milligrams })
	return s, err
}

// within takes a number into a range; what is not known of either is left out.
func within(r [2]float64, v float64) [2]float64 {
	switch {
	case v != v:
		return r
	case r[0] != r[0]:
		return [2]float64{v, v}
	}
	return [2]float64{math.Min(r[0], v), math.Max(r[1], v)}
}
