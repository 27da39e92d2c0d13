package chemicals_test

import (
	"slices"
	"testing"

	"etchbound/chemicals"
)

// A slip of the pen is told, another chemical never: sodium tetrafluoroborate was
// answered with sodium fluoride, tetraethylammonium hydroxide with the tetramethyl one.
func TestAnotherChemicalIsNoSlip(t *testing.T) {
	lib := chemicals.Library()
	for text, want := range map[string]string{
		"lithium flouride": "lithium fluoride", "hydrochlorik acid": "hydrochloric acid", "sodum chloride": "sodium chloride",
		"hydroflouric acid": "hydrofluoric acid", "potassium hydroxid": "potassium hydroxide", "watter": "water",
	} {
		if got := lib.Misspelt(text, 2); !slices.Contains(got, want) {
			t.Errorf("%q is near %v, want %s", text, got, want)
		}
	}
	for _, text := range []string{"sodium tetrafluoroaluminate", "sodium hexafluoroborate",
		"tetrapentylammonium hydroxide",
		"sodium chlorate", "sodium chlorite", "sodium nitrite", "ethanal", "methanal", "1-propanol", "iron(II) fluoride",
		"nitrous acid", "sulfurous acid", "NaN3", "RbBF4", "CaF", "KClO4", "TMAF", "tmaf", "ammonium chlorate",
		"potassium fluorate", "isopropanal", "potassium azide"} {
		if got := lib.Misspelt(text, 2); len(got) > 0 {
			t.Errorf("%q is answered with %v, which is another chemical", text, got)
		}
	}
}

// What the substances added last bring, by their formulas: BF4- gives four HF and
// three more acid with water (BF4- + 3 H2O = B(OH)3 + 4 HF - H+), PF6- six HF and
// phosphoric acid, a metaphosphate its phosphate, a citrate of ammonium its ammonium.
func TestSubstancesForm(t *testing.T) {
	for _, row := range []struct {
		name           string
		hf, acid, ammo float64
		formula        string
	}{
		{"sodium tetrafluoroborate", 4, 3, 0, "NaBF4"}, {"KBF4", 4, 3, 0, "KBF4"}, {"NH4BF4", 4, 3, 1, "NH4BF4"},
		{"LiPF6", 6, 8, 0, "LiPF6"}, {"NH4PF6", 6, 8, 1, "NH4PF6"}, {"Na2SiF6", 6, 4, 0, "Na2SiF6"},
		{"TEAOH", 0, 0, 0, "C8H21NO"}, {"HBr", 0, 0, 0, "HBr"}, {"MnCl2", 0, 0, 0, "MnCl2"},
		{"thiourea", 0, 0, 0, "CH4N2S"}, {"sodium citrate", 0, 0, 0, "Na3C6H5O7"},
		{"ammonium citrate", 0, 0, 3, "(NH4)3C6H5O7"}, {"polyphosphate", 0, 2, 0, "NaPO3"},
	} {
		s, held := chemicals.Library().Find(row.name)
		if !held || s.HydrolysisHF != row.hf || s.HydrolysisAcid != row.acid || s.Ammonium != row.ammo ||
			s.Formula.Text != row.formula {
			t.Errorf("%s: held %t, %+v", row.name, held, s)
		}
	}
}
