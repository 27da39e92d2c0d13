package aqueous_test

import (
	"fmt"

	"etchbound/chemicals/aqueous"
)

// Hydrofluoric acid is weak: most of it is dissolved as HF.
func ExampleModel_Solve() {
	m, _ := aqueous.At(25)
	s, err := m.Solve(aqueous.Mixture{Totals: []aqueous.Amount{{Of: "F", Mol: 0.5}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	hf, _ := s.Molality("HF")
	fmt.Printf("pH %.2f, %.3f mol/kg of HF\n", s.PH(), hf)
	// Output: pH 1.54, 0.446 mol/kg of HF
}

// A spent liquor limed to a pH: what is added, what settles and what stays.
func ExampleModel_Solve_reagent() {
	m, _ := aqueous.At(25)
	s, err := m.Solve(aqueous.Mixture{
		Totals:  []aqueous.Amount{{Of: "F", Mol: 0.52}, {Of: "Al", Mol: 0.0514}},
		Solids:  []aqueous.Amount{{Of: "Fluorite"}, {Of: "Al(OH)3(a)"}},
		Reagent: "Ca(OH)2", FixedPH: 6,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f mol/kg of lime, %.3f of CaF2 settled, %.2f g/kg of fluoride stays\n",
		s.Reagent(), s.Transfer("Fluorite"), s.Fluoride()*18.998)
	// Output: 0.183 mol/kg of lime, 0.183 of CaF2 settled, 2.92 g/kg of fluoride stays
}

// What is outside of what the model is held for is a band.
func ExampleModel_Band() {
	m, _ := aqueous.At(25)
	b, err := m.Band(aqueous.Mixture{Totals: []aqueous.Amount{{Of: "F", Mol: 5}}}, (*aqueous.State).PH)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("pH %.1f to %.1f: %s\n", b.Low, b.High, b.Outside[0])
	// Output: pH 0.6 to 1.3: 4.68 mol/kg of HF and HF2- is above 0.9
}
