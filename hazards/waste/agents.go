package waste

import (
	"strconv"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
)

// term is x mol of a species of the enthalpy table.
type term struct {
	x  float64
	id string
}

// agent is a neutraliser: its base equivalents and carbon dioxide per mol, and
// what one mol of HF, of strong acid and of AlF3(aq) gives with it. A product
// counts positive, a reactant negative.
type agent struct {
	slug, formula string
	base          float64
	carbon        float64
	calcium       bool
	usual         bool
	hf, acid, alf []term
}

const (
	hf    = "HF(aq)"
	alf3  = "AlF3(aq)"
	water = "H2O(l)"
	caf2  = "CaF2(s)"
	aloh3 = "Al(OH)3(s)"
	co2   = "CO2(g)"
	na    = "Na(+)(aq)"
	f     = "F(-)(aq)"
	ca    = "Ca(2+)(aq)"
)

var agents = []agent{
	{slug: "calcium_hydroxide", formula: "Ca(OH)2", base: 2, calcium: true, usual: true,
		hf:   []term{{0.5, caf2}, {1, water}, {-1, hf}, {-0.5, "Ca(OH)2(s)"}},
		acid: []term{{0.5, ca}, {1, water}, {-0.5, "Ca(OH)2(s)"}},
		alf:  []term{{1.5, caf2}, {1, aloh3}, {-1, alf3}, {-1.5, "Ca(OH)2(s)"}}},
	{slug: "calcium_carbonate", formula: "CaCO3", base: 2, carbon: 1, calcium: true, usual: true,
		hf:   []term{{0.5, caf2}, {0.5, co2}, {0.5, water}, {-1, hf}, {-0.5, "CaCO3(s)"}},
		acid: []term{{0.5, ca}, {0.5, co2}, {0.5, water}, {-0.5, "CaCO3(s)"}},
		alf:  []term{{1.5, caf2}, {1, aloh3}, {1.5, co2}, {-1, alf3}, {-1.5, "CaCO3(s)"}, {-1.5, water}}},
	{slug: "sodium_hydrogencarbonate", formula: "NaHCO3", base: 1, carbon: 1, usual: true,
		hf:   []term{{1, na}, {1, f}, {1, co2}, {1, water}, {-1, hf}, {-1, "NaHCO3(s)"}},
		acid: []term{{1, na}, {1, co2}, {1, water}, {-1, "NaHCO3(s)"}},
		alf:  []term{{1, aloh3}, {3, na}, {3, f}, {3, co2}, {-1, alf3}, {-3, "NaHCO3(s)"}}},
	{slug: "sodium_hydroxide", formula: "NaOH", base: 1, usual: true,
		hf:   []term{{1, na}, {1, f}, {1, water}, {-1, hf}, {-1, "NaOH(s)"}},
		acid: []term{{1, na}, {1, water}, {-1, "NaOH(s)"}},
		alf:  []term{{1, aloh3}, {3, na}, {3, f}, {-1, alf3}, {-3, "NaOH(s)"}}},
	{slug: "sodium_carbonate", formula: "Na2CO3", base: 2, carbon: 1,
		hf:   []term{{1, na}, {1, f}, {0.5, co2}, {0.5, water}, {-1, hf}, {-0.5, "Na2CO3(s)"}},
		acid: []term{{1, na}, {0.5, co2}, {0.5, water}, {-0.5, "Na2CO3(s)"}},
		alf:  []term{{1, aloh3}, {3, na}, {3, f}, {1.5, co2}, {-1, alf3}, {-1.5, "Na2CO3(s)"}, {-1.5, water}}},
	{slug: "calcium_oxide", formula: "CaO", base: 2, calcium: true,
		hf:   []term{{0.5, caf2}, {0.5, water}, {-1, hf}, {-0.5, "CaO(s)"}},
		acid: []term{{0.5, ca}, {0.5, water}, {-0.5, "CaO(s)"}},
		alf:  []term{{1.5, caf2}, {1, aloh3}, {-1, alf3}, {-1.5, "CaO(s)"}, {-1.5, water}}},
	{slug: "magnesium_hydroxide", formula: "Mg(OH)2", base: 2,
		hf:   []term{{0.5, "MgF2(s)"}, {1, water}, {-1, hf}, {-0.5, "Mg(OH)2(s)"}},
		acid: []term{{0.5, "Mg(2+)(aq)"}, {1, water}, {-0.5, "Mg(OH)2(s)"}},
		alf:  []term{{1.5, "MgF2(s)"}, {1, aloh3}, {-1, alf3}, {-1.5, "Mg(OH)2(s)"}}},
}

func agentOf(s *chemicals.Substance) *agent {
	if s == nil {
		return nil
	}
	for i := range agents {
		if agents[i].formula == s.Formula.Text {
			return &agents[i]
		}
	}
	return nil
}

// hess is the heat released, in kJ, by what terms lists, from the enthalpies
// of formation of one data family: reactants minus products.
func (r *reader) hess(symbol string, terms []term) working.Num {
	in := make([]working.Num, len(terms))
	v := 0.0
	var formula strings.Builder
	for i, t := range terms {
		in[i] = r.c.Store.Num("enthalpy." + t.id)
		v -= t.x * in[i].V
		if r.w == nil {
			continue
		}
		in[i] = in[i].As("H_" + strconv.Itoa(i+1))
		formula.WriteString("-(" + strconv.FormatFloat(t.x, 'g', -1, 64) + ")*" + in[i].Symbol)
	}
	return r.w.Line(symbol, "kJ/mol", formula.String(), v, in...)
}
