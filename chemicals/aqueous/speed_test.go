package aqueous_test

import (
	"testing"

	"etchbound/chemicals/aqueous"
)

// everything is a mixture of all components, without solids and with them.
func everything(solids bool) aqueous.Mixture {
	var mix aqueous.Mixture
	for i, of := range aqueous.Components() {
		mix.Totals = append(mix.Totals, aqueous.Amount{Of: of, Mol: 0.002 * float64(1+i%5)})
	}
	if solids {
		for _, of := range aqueous.Solids() {
			mix.Solids = append(mix.Solids, aqueous.Amount{Of: of})
		}
	}
	return mix
}

func benchmark(b *testing.B, mix aqueous.Mixture) {
	m, err := aqueous.At(25)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Solve(mix); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSixComponents(b *testing.B) {
	benchmark(b, aqueous.Mixture{Totals: []aqueous.Amount{{Of: "F", Mol: 0.154}, {Of: "Li", Mol: 0.154},
		{Of: "Cl", Mol: 0.45}, {Of: "Al", Mol: 0.0128}, {Of: "Ca", Mol: 0.05}}})
}

func BenchmarkAllComponents(b *testing.B) { benchmark(b, everything(false)) }

func BenchmarkAllComponentsAndSolids(b *testing.B) { benchmark(b, everything(true)) }

func BenchmarkLiming(b *testing.B) {
	benchmark(b, aqueous.Mixture{Totals: []aqueous.Amount{{Of: "F", Mol: 0.52}, {Of: "Al", Mol: 0.0514}},
		Added: []aqueous.Amount{{Of: "Ca(OH)2", Mol: 0.26}}, Solids: []aqueous.Amount{{Of: "Fluorite"}, {Of: "Al(OH)3(a)"}}})
}

func BenchmarkLimingToPH(b *testing.B) {
	benchmark(b, aqueous.Mixture{Totals: []aqueous.Amount{{Of: "F", Mol: 0.52}, {Of: "Al", Mol: 0.0514}},
		Reagent: "Ca(OH)2", FixedPH: 8, Solids: []aqueous.Amount{{Of: "Fluorite"}, {Of: "Al(OH)3(a)"}}})
}

func BenchmarkTemperature(b *testing.B) {
	for b.Loop() {
		if _, err := aqueous.At(40); err != nil {
			b.Fatal(err)
		}
	}
}
