package aqueous

import (
	"fmt"
	"math"
	"sync"
)

// Model is what is known at one temperature. It does not change and may be shared.
type Model struct {
	known   *known
	kelvin  float64
	a, b    float64   // of the activity model
	ln      []float64 // of the constants: of one of each row, made of masters and water
	species []int     // rows that are dissolved, masters first
	ions    []ion     // of each row, what its activity coefficient takes
	carbon  int       // row of carbon dioxide as a gas
	ammonia int       // row of ammonia as a gas
	davies  bool      // for every ion
	casts   casts
	desks   sync.Pool // of *desk: room to search in, no matter who had it before
}

// At is the model at a temperature in degC, from Coldest to Hottest. The constants were
// measured near 25 degC: those without an enthalpy stay as they are there.
func At(celsius float64) (*Model, error) {
	return with(table(), celsius, variant{})
}

// with is the model of a variant.
func with(k *known, celsius float64, v variant) (*Model, error) {
	if !(celsius >= Coldest && celsius <= Hottest) {
		return nil, fmt.Errorf("equilibria in water are held from %d to %d degC, not at %g", Coldest, Hottest, celsius)
	}
	m := &Model{known: k, kelvin: celsius + kelvin, ln: make([]float64, len(k.rows)), davies: v.davies}
	m.desks.New = func() any { return new(desk) }
	m.a, m.b = debye(m.kelvin)
	m.ions = make([]ion, len(k.rows))
	own := make([]float64, len(k.rows))
	for i := range k.rows {
		e := &k.rows[i]
		m.ions[i] = m.ionOf(e)
		own[i] = e.at(m.kelvin)
		if e.name == v.row {
			own[i] += math.Ln10 * (v.logK - e.logK)
		}
	}
	for i, e := range k.rows {
		for _, p := range e.parts {
			m.ln[i] += p.times * own[p.row]
		}
		if (e.kind == kindMaster || e.kind == kindSpecies) && (!e.doubted || e.name == v.row) {
			m.species = append(m.species, i)
		}
	}
	m.carbon, m.ammonia = k.byName["CO2(g)"], k.byName["NH3(g)"]
	return m, nil
}

// Celsius is the temperature, degC.
func (m *Model) Celsius() float64 { return m.kelvin - kelvin }

// strongest ionic strength, mol/kg, that enters an activity coefficient while a solution
// is looked for; none is answered near it.
const strongest = 25

// ion is what the activity coefficient of a species takes, in natural logarithms.
type ion struct {
	square float64 // of the charge
	limit  float64 // -A z^2
	size   float64 // B a; 1 in the model of one parameter
	linear float64 // of the ionic strength
}

// ionOf is that of a row.
func (m *Model) ionOf(e *entry) ion {
	z := e.charge * e.charge
	out := ion{square: z, limit: -math.Ln10 * m.a * z, size: m.b * e.size, linear: math.Ln10 * e.b}
	if e.form == davies || m.davies && z != 0 {
		out.size, out.linear = 1, 0.3*math.Ln10*m.a*z
	}
	return out
}

// activity gives the natural logarithm of the activity coefficient, and how it moves with
// the logarithm of the ionic strength i; root is the square root of i.
func (x *ion) activity(i, root float64) (ln, slope float64) {
	b := x.linear * i
	if x.square == 0 {
		return b, b
	}
	d := 1 / (1 + x.size*root)
	c := x.limit * root * d
	return c + b, 0.5*c*d + b
}

// Species are the names of what can be dissolved.
func Species() []string {
	var out []string
	for _, e := range table().rows {
		if !e.doubted && (e.kind == kindMaster || e.kind == kindSpecies) {
			out = append(out, e.name)
		}
	}
	return out
}

// Content is the charge of one of a species, a solid or a gas, and the components that it
// holds, "H" the H+ among them; false for a name that is none.
func Content(name string) (charge float64, of map[string]float64, there bool) {
	k := table()
	i, there := k.byName[name]
	if !there {
		return math.NaN(), nil, false
	}
	of = map[string]float64{}
	for j, n := range k.rows[i].of {
		if n != 0 {
			of[k.rows[j].component] = n
		}
	}
	return k.rows[i].charge, of, true
}
