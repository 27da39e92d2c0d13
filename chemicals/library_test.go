package chemicals_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/schemas/nearly"
)

func TestFind(t *testing.T) {
	for text, slug := range map[string]string{
		"hydrofluoric acid": "hf", "HF": "hf", "hf": "hf", "Hydrogen Fluoride": "hf", "7664-39-3": "hf",
		"muriatic acid": "hcl", "sodium bicarbonate": "sodium_hydrogencarbonate", "lime": "calcium_hydroxide",
		"slaked lime": "calcium_hydroxide", "calcium_hydroxide": "calcium_hydroxide", "Ca(OH)2": "calcium_hydroxide",
		"CO": "carbon_monoxide", "nh4hf2": "ammonium_bifluoride", "TMAOH": "tmaoh", "tin": "tin", "TiN": "titanium_nitride",
		" ethanol ": "ethanol", "IPA": "isopropanol", "SO4[2-]": "sulfate", "DI water": "water",
	} {
		if s, ok := chemicals.Library().Find(text); !ok || s.Slug != slug {
			t.Errorf("%q is %v, want %s", text, s, slug)
		}
	}
	for _, text := range []string{"", "unobtainium", "7664-39-4"} {
		if s, ok := chemicals.Library().Find(text); ok {
			t.Errorf("%q is %v", text, s)
		}
	}
}

func TestNearest(t *testing.T) {
	for text, name := range map[string]string{
		"hydroflouric acid": "hydrofluoric acid", "lithum fluoride": "lithium fluoride", "sulferic acid": "sulfuric acid",
		"hydrochoric": "hydrochloric acid",
	} {
		if got := chemicals.Library().Nearest(text, 3); len(got) != 3 || !slices.Contains(got, name) {
			t.Errorf("%q is near %v", text, got)
		}
	}
	if got := chemicals.Library().Nearest("x", -1); len(got) != 0 {
		t.Errorf("%v", got)
	}
}

var kinds = []string{"acid", "base", "carbonate", "fluoride_salt", "chloride_salt", "oxidant", "solvent", "intercalant",
	"neutraliser", "water", "reductant", "polymer", "precursor_metal", "other"}

func TestSubstancesAreWellFormed(t *testing.T) {
	slugs := map[string]bool{}
	names := map[string]string{}
	for _, s := range chemicals.Library().All() {
		if slugs[s.Slug] || s.Slug != strings.ToLower(s.Slug) || strings.ContainsAny(s.Slug, " /@:+") {
			t.Errorf("slug %q", s.Slug)
		}
		slugs[s.Slug] = true
		if !slices.Contains(kinds, s.Kind) || !slices.Contains([]string{"s", "l", "g", "aq"}, s.State) {
			t.Errorf("%s: kind %q, state %q", s.Slug, s.Kind, s.State)
		}
		if s.CAS != "" && !checkDigit(s.CAS) {
			t.Errorf("%s: CAS %s has a wrong check digit", s.Slug, s.CAS)
		}
		if s.MetalElectrons != 0 && s.Formula.Count(s.Metal) != 1 {
			t.Errorf("%s: metal %q", s.Slug, s.Metal)
		}
		for _, n := range append([]string{s.Name}, s.Synonyms...) {
			key := strings.ToLower(n)
			if other := names[key]; other != "" && other != s.Slug {
				t.Errorf("%q is both %s and %s", n, other, s.Slug)
			}
			names[key] = s.Slug
		}
		if m := s.Formula.MolarMass(chemicals.Base(), nil); m.Unknown() {
			t.Errorf("%s: %v", s.Slug, m)
		}
	}
}

// checkDigit is the rule of the CAS registry: the last digit is the sum of the
// others, each times its place from the right, modulo 10.
func checkDigit(cas string) bool {
	digits := strings.ReplaceAll(cas, "-", "")
	sum := 0
	for i := range len(digits) - 1 {
		sum += int(digits[i]-'0') * (len(digits) - 1 - i)
	}
	return sum%10 == int(digits[len(digits)-1]-'0')
}

// Acid equivalents follow the charges of the ions: general chemistry.
func TestAcidEquivalents(t *testing.T) {
	for slug, want := range map[string]float64{
		"hf": 1, "hcl": 1, "sulfuric_acid": 2, "nitric_acid": 1, "ammonium_bifluoride": 1, "lithium_fluoride": 0,
		"sodium_fluoride": 0, "potassium_fluoride": 0, "ammonium_fluoride": 0, "ammonium_chloride": 0,
		"sodium_hydroxide": -1, "potassium_hydroxide": -1, "lithium_hydroxide": -1, "tmaoh": -1, "tbaoh": -1,
		"ammonia": -1, "calcium_hydroxide": -2, "calcium_oxide": -2, "calcium_carbonate": -2, "sodium_carbonate": -2,
		"sodium_hydrogencarbonate": -1, "magnesium_hydroxide": -2, "tetrafluoroboric_acid": 1, "water": 0,
	} {
		s, ok := chemicals.Library().Find(slug)
		if !ok || s.Acid != want {
			t.Errorf("%s: %v, want %g", slug, s, want)
		}
	}
}

func TestTables(t *testing.T) {
	st := chemicals.Base()
	for _, table := range st.Tables() {
		for c := range table.Columns {
			for i, x := range table.X {
				if got, ok := table.At(c, x); !ok || !nearly.To(got, table.Y[c][i], 1e-12) {
					t.Errorf("%s: %g at %g, row says %g", table.ID, got, x, table.Y[c][i])
				}
			}
			between(t, table, c)
		}
		_, high := table.Range()
		if v, ok := table.At(0, high*1.01); ok || !math.IsNaN(v) {
			t.Errorf("%s: read beyond its end", table.ID)
		}
	}
}

// between checks that no value between two rows leaves the two rows.
func between(t *testing.T, table *chemicals.Table, c int) {
	t.Helper()
	for i := 1; i < len(table.X); i++ {
		low, high := min(table.Y[c][i-1], table.Y[c][i]), max(table.Y[c][i-1], table.Y[c][i])
		for k := 1; k < 10; k++ {
			x := table.X[i-1] + (table.X[i]-table.X[i-1])*float64(k)/10
			if v, _ := table.At(c, x); !nearly.Between(v, low-1e-9, high+1e-9) {
				t.Errorf("%s: %g at %g leaves %g to %g", table.ID, v, x, low, high)
			}
		}
	}
}

// What is a liquid by itself can be put in by volume: its density is held. Acids are solutions, by their tables.
func TestLiquidsHaveADensity(t *testing.T) {
	for _, s := range chemicals.Library().All() {
		if s.State != "l" || s.Kind == "acid" || s.Slug == "hydrazoic_acid" {
			continue
		}
		if _, held := chemicals.Base().Row(datum.Of("density", s.Formula.Text+"(l)")); !held {
			t.Errorf("%s has no density", s.Name)
		}
	}
}

// By Hess's law a compound burns with less heat than its elements apart, by its enthalpy of formation: none of
// those here, carbides and layered phases, is above 100 kJ per mol of atoms (common practice). Nitrogen gives none.
func TestCompoundsBurnWithLessThanTheirElements(t *testing.T) {
	base := chemicals.Base()
	for _, name := range []string{"TiC", "VC", "NbC", "TaC", "Ti3AlC2", "Ti2AlC", "TiAl3", "V2AlC", "Nb2AlC", "Cr2AlC",
		"Mo2TiAlC2", "Ti3SiC2", "Ti3AlCN", "Nb4AlC3", "Ta4AlC3"} {
		f, err := chemicals.ParseFormula(name)
		if err != nil {
			t.Fatal(err)
		}
		apart, atoms := 0.0, 0.0
		for _, el := range f.Order {
			n := f.Count(el)
			atoms += n
			if el != "N" {
				apart += n * base.Num(datum.Of("burn.powder", el)).V * base.Num(datum.Of("weight", el)).V
			}
		}
		formed := apart - base.Num(datum.Of("burn.powder", name)).V*f.MolarMass(base, nil).V
		if !(formed > 0 && formed < 100*atoms) {
			t.Errorf("%s: its elements give %g kJ/mol more", name, formed)
		}
	}
}
