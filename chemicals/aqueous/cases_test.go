package aqueous_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"etchbound/chemicals/aqueous"
	"etchbound/schemas/columns"
)

// row is one row of a file of cases: an input, a rule or a result of a case.
type row struct {
	id, group, description, database, quantity, value, unit, status, validity string
}

func (r row) number() float64 {
	v, err := strconv.ParseFloat(r.value, 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// aCase is the rows of one case in the order of the file.
type aCase struct {
	id, gate, set string
	tolerance     float64 // of the pH
	rows          []row
	celsius       float64
	mix           aqueous.Mixture
	problem       error
}

func readCases(name, text string) ([]*aCase, error) {
	rows, err := columns.Read(name, text, func(r columns.Row) row {
		return row{r.Named("case_id"), r.Text("group"), r.Text("description"), r.Text("database"),
			r.Named("quantity"), r.Text("value"), r.Text("unit"), r.Text("status"), r.Text("validity")}
	})
	if err != nil {
		return nil, err
	}
	var out []*aCase
	at := map[string]*aCase{}
	for _, r := range rows {
		c := at[r.id]
		if c == nil {
			c = &aCase{id: r.id, tolerance: 0.005, celsius: 25}
			at[r.id] = c
			out = append(out, c)
		}
		c.rows = append(c.rows, r)
		c.take(r)
	}
	return out, nil
}

// take reads one input or rule.
func (c *aCase) take(r row) {
	what, of, _ := strings.Cut(strings.TrimPrefix(r.quantity, "in."), ".")
	amount := aqueous.Amount{Of: of, Mol: r.number()}
	m := &c.mix
	switch {
	case r.quantity == "gate":
		c.gate = r.value
	case r.quantity == "tolerance.pH":
		c.tolerance = r.number()
	case !strings.HasPrefix(r.quantity, "in."):
	case what == "constants_set":
		c.set = r.value
	case what == "temperature_C":
		c.celsius = r.number()
	case what == "total":
		m.Totals = append(m.Totals, amount)
	case what == "added":
		m.Added = append(m.Added, amount)
	case what == "phase":
		m.Solids = append(m.Solids, amount)
	case what == "charge_balance_on" && r.value != "pH":
		m.Closes = r.value
	case what == "initial_pH":
		m.InitialPH = r.number()
	case what == "fixed_pH":
		m.FixedPH = r.number()
	case what == "fixed_pH_reagent":
		m.Reagent = r.value
	case what == "gas":
		c.gas(r.value)
	}
}

// gas reads what carbon dioxide meets.
func (c *aCase) gas(text string) {
	kind, value, _ := strings.Cut(text, ":")
	g := &c.mix.Gas
	var err error
	switch {
	case kind == "none":
	case kind == "open_air":
		g.Kind = aqueous.Open
		g.Value, err = strconv.ParseFloat(value, 64)
		g.Value = math.Pow(10, g.Value)
	case kind == "fixed_pressure_1atm" && value == "CO2":
		*g = aqueous.Gas{Kind: aqueous.Pressure, Value: 1}
	case strings.HasPrefix(kind, "fixed_volume_L=") && value == "CO2":
		g.Kind = aqueous.Space
		g.Value, err = strconv.ParseFloat(strings.TrimPrefix(kind, "fixed_volume_L="), 64)
	default:
		err = fmt.Errorf("the gas %q is not known", text)
	}
	c.problem = err
}

// runs reports whether the case is one of equilibrium.
func (c *aCase) runs() bool { return !strings.HasPrefix(c.set, "formation enthalpies") }

// result is one figure of an equilibrium by the name that the files of cases give it.
type result struct {
	quantity, unit string
	value          float64
}

const fluorine = 18.9984 // g/mol

var settled = []struct {
	name, solid string
	mass        float64 // g/mol
}{{"CaF2 precipitated", "Fluorite", 78.0768}, {"Al(OH)3 precipitated", "Al(OH)3(a)", 78.0055},
	{"Na3AlF6 precipitated", "Cryolite", 209.9413}}

// results are all figures of an equilibrium.
func (c *aCase) results(s *aqueous.State) []result {
	out := []result{{"pH", "1", s.PH()}, {"ionic_strength", "mol/kgw", s.IonicStrength()}}
	add := func(quantity, unit string, v float64) { out = append(out, result{quantity, unit, v}) }
	for _, name := range aqueous.Components() {
		if v, _ := s.Total(name); v > 0 {
			add("total "+name, "mol/kgw", v)
			if name == "F" {
				add("total F as mass", "mg/kgw", v*fluorine*1000)
			}
		}
	}
	for _, name := range aqueous.Species() {
		if v, _ := s.Molality(name); v > 0 {
			add("m("+name+")", "mol/kgw", v)
		}
	}
	for _, a := range c.mix.Solids {
		add("transfer "+a.Of, "mol into phase", s.Transfer(a.Of))
		add("SI("+a.Of+")", "1", s.Saturation(a.Of))
		for _, g := range settled {
			if g.solid == a.Of {
				add(g.name, "g per kg initial water", g.mass*s.Transfer(a.Of))
			}
		}
	}
	mol, litres := s.Gas()
	switch c.mix.Gas.Kind {
	case aqueous.Open:
		add("transfer CO2(g)", "mol into phase", s.Air())
	case aqueous.Pressure, aqueous.Space:
		add("gas CO2(g)", "mol", mol)
		add("gas volume 25 C", "L (real-gas, 1 atm)", litres)
		if c.celsius != 25 { // a file may name it by the temperature it has
			add(fmt.Sprintf("gas volume %g C", c.celsius), "L (real-gas, 1 atm)", litres)
		}
		add("gas pressure", "atm", s.Pressure())
	}
	if c.mix.Reagent != "" {
		add("reagent used", "mol per kgw of initial solution", s.Reagent())
	}
	if f := s.Fugacity(); f > 0 {
		add("SI(CO2(g))", "1", math.Log10(f))
	}
	return out
}

// near is the tolerance of a figure as the cases state it, with the rounding of what is
// stored on top. NaN says that the figure is not compared.
func (c *aCase) near(r row) float64 {
	want := r.number()
	round := 0.5 * math.Pow(10, float64(exponent(r.value)))
	switch {
	case r.quantity == "pH" && c.mix.Reagent == "" && want < 0.5, math.Abs(want) < 1e-12 && r.quantity != "pH" &&
		!strings.HasPrefix(r.quantity, "SI("):
		return math.NaN()
	case r.quantity == "pH":
		return c.tolerance
	case strings.HasPrefix(r.quantity, "SI("):
		return 0.01
	}
	return 0.005*math.Abs(want) + round
}

// exponent is that of the last digit of a number as written.
func exponent(text string) int {
	mantissa, power, _ := strings.Cut(strings.ToLower(text), "e")
	n, _ := strconv.Atoi(power)
	if _, behind, point := strings.Cut(mantissa, "."); point {
		return n - len(behind)
	}
	return n
}
