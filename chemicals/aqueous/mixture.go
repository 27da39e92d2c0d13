package aqueous

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"etchbound/chemicals"
)

// Amount is so much of something, mol per kg of the water that was there first.
type Amount struct {
	Of  string
	Mol float64
}

// Mixture is what comes together.
//
// Totals are a solution at rest: components (see Components), whose hydrogen follows
// from neutrality. Where Closes names a component, InitialPH is given instead of
// hydrogen, and so much of that component is there that charges balance. Added are
// neutral substances by their formula (Ca(OH)2, NaHCO3, CaCl2.2H2O). Solids may
// settle, and dissolve down to nothing; their Mol is what is there at the start.
//
// Where Reagent is not blank, so much of it is added, or withdrawn, that the pH is FixedPH.
type Mixture struct {
	Totals    []Amount
	Closes    string
	InitialPH float64
	Added     []Amount
	Solids    []Amount
	Gas       Gas
	Reagent   string
	FixedPH   float64
}

// onlySettles reports whether nothing comes to the solution at rest: solids may settle from it.
func (m *Mixture) onlySettles() bool {
	return len(m.Added) == 0 && m.Gas.Kind == None && m.Reagent == "" &&
		!slices.ContainsFunc(m.Solids, func(a Amount) bool { return a.Mol > 0 })
}

// Gas is what carbon dioxide meets. Its zero value is a vessel full to the lid: no gas.
type Gas struct {
	Kind  Boundary
	Value float64
}

// Boundary is how a solution meets a gas.
type Boundary uint8

// The boundaries. Value is the fugacity in atm that air without end holds (Open), the
// pressure in atm at which a gas of pure carbon dioxide appears (Pressure), or the
// litres of a rigid space over each kg of water at the start, empty at first (Space).
const (
	None Boundary = iota
	Open
	Pressure
	Space
)

// Components are the names a mixture may hold: H is not among them, since neutrality
// settles it. C(4) is carbonate, S(6) sulfate, N(5) nitrate, N(-3) ammonia; TiF6, BF4 and
// PF6 are complexes that keep their fluoride, beside those at equilibrium.
func Components() []string {
	k := table()
	out := make([]string, 0, k.masters)
	for _, e := range k.rows[1:k.masters] {
		out = append(out, e.component)
	}
	return out
}

// Solids are the names of the solids that can settle.
func Solids() []string {
	var out []string
	for _, e := range table().rows {
		if e.kind == kindPhase {
			out = append(out, e.name)
		}
	}
	return out
}

// makeup is what a neutral substance brings: masters, H+ among them, and water.
type makeup struct {
	of    []float64
	water float64
}

// made are the masters that the elements of a formula become, in order of preference.
var made = map[string][]string{"C": {"C(4)"}, "S": {"S(6)"}, "N": {"N(-3)", "N(5)"}}

// makeupOf reads a formula. Nitrogen is shared between ammonium and nitrate so that
// charges balance.
func (k *known) makeupOf(text string) (makeup, error) {
	f, err := chemicals.ParseFormula(strings.ReplaceAll(text, ":", "."))
	if err != nil {
		return makeup{}, err
	}
	m := makeup{of: make([]float64, k.masters)}
	for _, symbol := range f.Order {
		if symbol == "H" || symbol == "O" {
			continue
		}
		component := symbol
		if to := made[symbol]; to != nil {
			component = to[0]
		}
		i, there := k.byPart[component]
		if !there {
			return makeup{}, fmt.Errorf("%s: no constants are held for %s; there are %s", text, symbol,
				strings.Join(Components(), ", "))
		}
		m.of[i] += f.Count(symbol)
	}
	m.close(k, f)
	if n := f.Count("N"); n > 0 && math.Abs(m.charge(k)) > 1e-9 {
		// one nitrogen as nitrate for ammonium: charge -2, water -3, H+ +6+... by elements
		ammonium, nitrate := k.byPart["N(-3)"], k.byPart["N(5)"]
		with := makeup{of: slices.Clone(m.of)}
		with.of[ammonium], with.of[nitrate] = with.of[ammonium]-1, with.of[nitrate]+1
		with.close(k, f)
		if slope := with.charge(k) - m.charge(k); slope != 0 {
			x := -m.charge(k) / slope
			m.of[ammonium], m.of[nitrate] = m.of[ammonium]-x, m.of[nitrate]+x
			m.close(k, f)
		}
	}
	if c := m.charge(k); math.Abs(c) > 1e-9 {
		return makeup{}, fmt.Errorf("%s brings a charge of %g when it dissolves: it holds an element in a state "+
			"that no constants are held for", text, c)
	}
	return m, nil
}

// contents are oxygen and hydrogen in one of each master.
var contents = map[string][2]float64{"CO3-2": {3, 0}, "SO4-2": {4, 0}, "H3BO3": {3, 3}, "NO3-": {3, 0},
	"NH4+": {0, 4}, "H4SiO4": {4, 4}, "PO4-3": {4, 0}}

// close settles water by oxygen and H+ by hydrogen.
func (m *makeup) close(k *known, f chemicals.Formula) {
	o, h := f.Count("O"), f.Count("H")
	for i, n := range m.of[1:] {
		c := contents[k.rows[i+1].name]
		o, h = o-n*c[0], h-n*c[1]
	}
	m.water, m.of[0] = o, h-2*o
}

func (m *makeup) charge(k *known) float64 {
	sum := 0.0
	for i, n := range m.of {
		sum += n * k.rows[i].charge
	}
	return sum
}
