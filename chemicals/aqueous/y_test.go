package aqueous

import (
	"fmt"
	"math"
	"math/rand"
	"os"
	"testing"
)

func TestZ(t *testing.T) {
	m, _ := At(25)
	comps := []string{"F", "Al", "Ca", "Mg", "Li", "Na", "K", "N(-3)", "Cl", "S(6)", "C(4)", "B", "Si"}
	solids := []string{"Fluorite", "Al(OH)3(a)", "Portlandite", "Calcite", "LiF_s", "Cryolite", "Sellaite", "Gypsum", "Gibbsite", "SiO2(a)"}
	_ = os.Stdout
	for _, b := range []beginning{{4, 1e-9}, {1, 1}, {3, 1e-5}, {2, 1e-7}, {6, 1e-3}, {2, 1e-3}, {2, 1e-5}, {3, 1e-3}, {3, 1e-4}, {3, 1e-6}, {5, 1e-5}} {
		beginnings = [...]beginning{b, b, b, b, b}
		r := rand.New(rand.NewSource(3))
		ok, steps := 0, 0
		okf, stepsf := 0, 0
		for q := 0; q < 3000; q++ {
			var mix Mixture
			for _, c := range comps {
				if r.Intn(3) == 0 {
					mix.Totals = append(mix.Totals, Amount{c, math.Pow(10, -4+r.Float64()*4)})
				}
			}
			for _, s := range solids {
				if r.Intn(2) == 0 {
					mix.Solids = append(mix.Solids, Amount{s, 0})
				}
			}
			if q%2 == 0 {
				mix.Added = []Amount{{[]string{"Ca(OH)2", "NaHCO3", "NaOH", "CaCl2", "HF", "HCl"}[r.Intn(6)], []float64{0.1, 0.25, 0.5}[r.Intn(3)]}}
			}
			if q%3 == 0 {
				mix.Gas = Gas{Boundary(r.Intn(3)), []float64{4e-4, 4e-4, 1}[0]}
				if mix.Gas.Kind == Pressure {
					mix.Gas.Value = 1
				}
			}
			s, err := m.Solve(mix)
			if err == nil {
				ok++
				steps += s.w.steps
			}
			// simple ones: F .5 etc
			mix = Mixture{Totals: []Amount{{"F", 0.5}, {"Al", []float64{0, 0.05, 0.0514, 0.125}[r.Intn(4)]}}, Added: []Amount{{[]string{"Ca(OH)2", "CaCO3", "NaHCO3"}[r.Intn(3)], []float64{0.1, 0.2, 0.25, 0.25001, 0.2249, 0.275, 0.5}[r.Intn(7)]}}, Solids: []Amount{{"Fluorite", 0}, {"Al(OH)3(a)", 0}, {"Calcite", 0}, {"Portlandite", 0}}, Gas: []Gas{{}, {Pressure, 1}, {Open, 4e-4}}[r.Intn(3)]}
			s, err = m.Solve(mix)
			if err == nil {
				okf++
				stepsf += s.w.steps
			}
		}
		fmt.Println(b, ok, float64(steps)/float64(ok), okf, float64(stepsf)/float64(okf))
	}
}
