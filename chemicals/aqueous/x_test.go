package aqueous

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
)

func TestX(t *testing.T) {
	m, _ := At(25)
	r := rand.New(rand.NewSource(1))
	comps := Components()
	solids := Solids()
	n := 20000
	kinds := map[string]int{}
	steps, worst := 0, 0
	hist := map[int]int{}
	for q := 0; q < n; q++ {
		var mix Mixture
		top := 1.0
		if r.Intn(3) == 0 {
			top = -1
		}
		for _, c := range comps {
			if r.Intn(3) == 0 {
				mix.Totals = append(mix.Totals, Amount{c, math.Pow(10, -12+r.Float64()*(12+top))})
			}
		}
		mode := r.Intn(4)
		if mode >= 1 {
			for _, s := range solids {
				if r.Intn(3) == 0 {
					a := 0.0
					if r.Intn(4) == 0 {
						a = math.Pow(10, -6+6*r.Float64())
					}
					mix.Solids = append(mix.Solids, Amount{s, a})
				}
			}
		}
		if mode == 2 {
			mix.Gas = Gas{Boundary(r.Intn(4)), []float64{1e-3, 1, 0.3}[r.Intn(3)]}
		}
		if mode == 3 && fixedToo {
			mix.Reagent = []string{"NaOH", "HCl", "Ca(OH)2", "HF", "KOH"}[r.Intn(5)]
			mix.FixedPH = 1 + 12*r.Float64()
		}
		s, err := m.Solve(mix)
		if err != nil {
			k := fmt.Sprint(mode, " ", err.Error()[:40], top, "\n")
			if kinds[k]++; kinds[k] < 5 && mode == 3 && top < 0 {
				fmt.Printf("%s %+v\n", err, mix)
			}
			continue
		}
		kinds[fmt.Sprint(mode, " ok")]++
		steps += s.w.steps
		hist[s.w.steps/5]++
		worst = max(worst, s.w.steps)
	}
	fmt.Println(kinds, float64(steps)/float64(n), worst, hist)
}

const fixedToo = true
