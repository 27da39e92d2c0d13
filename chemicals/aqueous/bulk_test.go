package aqueous_test

import (
	"fmt"
	"math"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/neutralising"
)

// formed are enthalpies of formation, kJ/mol, as the cases of bulk neutralising take them
// (recalled): other than those of the store, so that only the balanced reactions are ours.
var formed = map[string]float64{"HF(aq)": -323.15, "F(-)(aq)": -335.35, "Ca(2+)(aq)": -543.0, "Na(+)(aq)": -240.34,
	"OH(-)(aq)": -230.015, "H2O(l)": -285.83, "CO2(g)": -393.51, "CaF2(s)": -1228.0, "Ca(OH)2(s)": -986.1,
	"CaCO3(s)": -1207.5, "CaO(s)": -634.92, "NaHCO3(s)": -950.81, "Na2CO3(s)": -1130.68, "NaOH(s)": -425.6,
	"NaOH(aq)": -240.34 - 230.015, "Mg(OH)2(s)": -924.5, "MgF2(s)": -1124.2}

// weights are those of the same cases, g/mol.
var weights = map[string]float64{"Ca(OH)2": 74.093, "CaCO3": 100.087, "NaHCO3": 84.007, "Na2CO3": 105.988, "HF": 20.006,
	"HCl": 36.461, "CO2": 44.01}

const (
	molarVolume = 24.465 // L/mol at 25 degC and 1 atm
	heatOfWater = 4.184  // J/g/K
	strongHCl   = 1.14   // g/mL of 9 mol/L, which the cases do not give
)

// reagentOf is the substance of a formula, and the way its enthalpy is listed.
func reagentOf(formula string) (*chemicals.Substance, string, error) {
	plain, dissolved := strings.CutSuffix(formula, "(aq)")
	plain = strings.TrimSuffix(plain, "(s)")
	for _, s := range chemicals.Library().All() {
		if s.Formula.Text == plain {
			if dissolved {
				return s, plain + "(aq)", nil
			}
			return s, plain + "(s)", nil
		}
	}
	return nil, "", fmt.Errorf("%s is no substance", formula)
}

// heatOf is the enthalpy of one mol of acid with a reagent, kJ, carbon dioxide and reagent
// in mol beside it.
func heatOf(acid neutralising.Acid, formula string) (heat, carbon, reagent float64, err error) {
	s, row, err := reagentOf(formula)
	if err != nil {
		return 0, 0, 0, err
	}
	terms, balanced := neutralising.Reaction(s, acid)
	if !balanced {
		return 0, 0, 0, fmt.Errorf("%s is not balanced", formula)
	}
	for _, t := range terms {
		name := t.Row
		if name == neutralising.Row(s) {
			name, reagent = row, -t.X
		}
		if name == "CO2(g)" {
			carbon = t.X
		}
		h, there := formed[name]
		if !there {
			return 0, 0, 0, fmt.Errorf("no enthalpy for %s", name)
		}
		heat += t.X * h
	}
	return heat, carbon, reagent, nil
}

// bulk are the figures of a case of bulk neutralising.
func (c *aCase) bulk() ([]result, error) {
	in := map[string]row{}
	for _, r := range c.rows {
		in[r.quantity] = r
	}
	if r, there := in["in.reaction"]; there {
		return reaction(r.value)
	}
	strength := func(of string) float64 { // mol in one litre
		r, there := in["in.liquor."+of]
		switch {
		case !there:
			return 0
		case r.unit == "wt%":
			return 1000 * in["in.liquor.density"].number() * r.number() / 100 / weights[of]
		}
		return r.number()
	}
	litres := in["in.liquor.volume"].number()
	hcl, lif := strength("HCl")*litres, strength("LiF")*litres
	hf := strength("HF")*litres + math.Min(hcl, lif)
	strong := hcl - math.Min(hcl, lif)
	density := 1.0
	if r, there := in["in.liquor.density"]; there {
		density = r.number()
	} else if hcl > 0 {
		density = strongHCl
	}
	water := 1000*litres*density - hcl*weights["HCl"] - strength("HF")*litres*weights["HF"]
	reagent := in["in.reagent"].value
	h1, c1, n1, err := heatOf(neutralising.HF, reagent)
	if err != nil {
		return nil, err
	}
	h2, c2, n2, err := heatOf(neutralising.Strong, reagent)
	if err != nil {
		return nil, err
	}
	heat, carbon := -(hf*h1 + strong*h2), hf*c1+strong*c2
	cool := math.Max(heat, 0) / heatOfWater / 20
	return []result{{"acid HF", "mol", hf}, {"acid H+ (strong)", "mol", strong},
		{"reagent mass", "g", (hf*n1 + strong*n2) * weights[reagent]}, {"CO2", "mol", carbon},
		{"CO2 volume 25 C 1 atm", "L", carbon * molarVolume}, {"CO2 mass", "g", carbon * weights["CO2"]},
		{"heat released", "kJ", heat}, {"adiabatic rise, acid water only", "K", heat / heatOfWater / water * 1000},
		{"adiabatic rise, acid water + 10 kg water", "K", heat / heatOfWater / (water/1000 + 10)},
		{"total water for rise of 20 K", "kg", cool}}, nil
}

// reaction is the enthalpy of "HF + 1/2 CaO".
func reaction(text string) ([]result, error) {
	left, _, _ := strings.Cut(text, " -> ")
	acid, with, _ := strings.Cut(left, " + ")
	with = strings.TrimPrefix(with, "1/2 ")
	of := neutralising.HF
	switch acid {
	case "H+":
		of = neutralising.Strong
	case "F-": // calcium in solution binds it
		return []result{{"delta_H", "kJ", formed["CaF2(s)"]/2 - formed["F(-)(aq)"] - formed["Ca(2+)(aq)"]/2}}, nil
	}
	h, _, _, err := heatOf(of, with)
	return []result{{"delta_H", "kJ", h}}, err
}
