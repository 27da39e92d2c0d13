package chemicals_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"pgregory.net/rapid"

	"etchbound/schemas/nearly"
)

func TestParseFormula(t *testing.T) {
	cases := []struct {
		text   string
		of     map[string]float64
		order  string
		charge int
	}{
		{"Ti3C2(OH)2", map[string]float64{"Ti": 3, "C": 2, "O": 2, "H": 2}, "Ti C O H", 0},
		{"CaCl2.2H2O", map[string]float64{"Ca": 1, "Cl": 2, "H": 4, "O": 2}, "Ca Cl H O", 0},
		{"CaSO4.0.5H2O", map[string]float64{"Ca": 1, "S": 1, "O": 4.5, "H": 1}, "Ca S O H", 0},
		{"LiOH·H2O", map[string]float64{"Li": 1, "O": 2, "H": 3}, "Li O H", 0},
		{"NH4HF2", map[string]float64{"N": 1, "H": 5, "F": 2}, "N H F", 0},
		{"(NH4)3AlF6", map[string]float64{"N": 3, "H": 12, "Al": 1, "F": 6}, "N H Al F", 0},
		{"Ti1.8Nb0.2AlC", map[string]float64{"Ti": 1.8, "Nb": 0.2, "Al": 1, "C": 1}, "Ti Nb Al C", 0},
		{"Al(OH)4[-]", map[string]float64{"Al": 1, "O": 4, "H": 4}, "Al O H", -1},
		{"SO4[2-]", map[string]float64{"S": 1, "O": 4}, "S O", -2},
		{"Al[3+]", map[string]float64{"Al": 1}, "Al", 3},
		{"F(-)", map[string]float64{"F": 1}, "F", -1},
		{"Co", map[string]float64{"Co": 1}, "Co", 0},
		{"CO", map[string]float64{"C": 1, "O": 1}, "C O", 0},
		{"Cr2TiC2O1.3F0.8", map[string]float64{"Cr": 2, "Ti": 1, "C": 2, "O": 1.3, "F": 0.8}, "Cr Ti C O F", 0},
		{"Ca(B(OH)4)2", map[string]float64{"Ca": 1, "B": 2, "O": 8, "H": 8}, "Ca B O H", 0},
	}
	for _, c := range cases {
		f, err := chemicals.ParseFormula(c.text)
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		total, want := 0.0, 0.0
		for _, n := range f.Of {
			total += n
		}
		for symbol, n := range c.of {
			want += n
			if !nearly.To(f.Count(symbol), n, 1e-12) {
				t.Errorf("%s: %g %s, want %g", c.text, f.Count(symbol), symbol, n)
			}
		}
		if !nearly.To(total, want, 1e-12) || strings.Join(f.Order, " ") != c.order || f.Charge != c.charge {
			t.Errorf("%s: %g atoms in order %v, charge %d", c.text, total, f.Order, f.Charge)
		}
	}
}

func TestParseFormulaRefuses(t *testing.T) {
	cases := []struct {
		text     string
		position int
	}{
		{"", 1}, {"Ti3C2Tx", 6}, {"ti3alc2", 1}, {"Ti3(OH", 4}, {"Ti)", 3}, {"Ti3C2()", 7},
		{"Ti0AlC", 3}, {"Qq", 1}, {"CaCl2.", 7}, {"Al[3+", 3}, {"Al[3+]C", 3}, {"H2O ", 4},
		{"Ti3AlC2!", 8}, {"Ti-Al", 3}, {"Ti20000", 3}, {"LiOH·x", 6}, {"()", 2}, {"[-]", 1},
		{strings.Repeat("(", 40) + "H" + strings.Repeat(")", 40), 9}, {strings.Repeat("H", 200), 121},
	}
	for _, c := range cases {
		_, err := chemicals.ParseFormula(c.text)
		var refusal *chemicals.FormulaError
		if !errors.As(err, &refusal) {
			t.Errorf("%q: taken (%v)", c.text, err)
		} else if refusal.Position != c.position {
			t.Errorf("%q: refused at %d, want %d: %s", c.text, refusal.Position, c.position, refusal.Problem)
		}
	}
}

// Any composition written out is read back as what it was.
func TestParseFormulaRoundTrip(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var want chemicals.Composition
		text := ""
		for range rapid.IntRange(1, 6).Draw(rt, "groups") {
			inner, factor := "", rapid.IntRange(1, 9).Draw(rt, "factor")
			for range rapid.IntRange(1, 3).Draw(rt, "elements") {
				e := rapid.IntRange(0, chemicals.NumElements-1).Draw(rt, "element")
				tenths := rapid.IntRange(1, 99).Draw(rt, "tenths")
				inner += chemicals.ElementSymbol(e) + fmt.Sprint(float64(tenths)/10)
				want[e] += float64(factor) * float64(tenths) / 10
			}
			text += "(" + inner + ")" + fmt.Sprint(factor)
		}
		if len(text) > 120 {
			rt.Skip()
		}
		f, err := chemicals.ParseFormula(text)
		if err != nil {
			rt.Fatal(err)
		}
		for e, n := range want {
			if !nearly.To(f.Of[e], n, 1e-9) {
				rt.Fatalf("%s: %g %s, want %g", text, f.Of[e], chemicals.ElementSymbol(e), n)
			}
		}
	})
}

func FuzzParseFormula(f *testing.F) {
	f.Add("Ti3C2(OH)2")
	f.Add("CaSO4.0.5H2O")
	f.Add("((·[3+]")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := chemicals.ParseFormula(text)
		if err == nil && len(got.Order) == 0 {
			t.Errorf("%q read as nothing", text)
		}
		for e, n := range got.Of {
			if n < 0 || math.IsNaN(n) || math.IsInf(n, 0) {
				t.Errorf("%q: %g %s", text, n, chemicals.ElementSymbol(e))
			}
		}
	})
}

func TestMolarMasses(t *testing.T) {
	for _, row := range published(t, "thermochemistry_molar_masses.csv") {
		f, err := chemicals.ParseFormula(row["formula"])
		if err != nil {
			t.Fatal(err)
		}
		w := working.NewSheet()
		m := f.MolarMass(chemicals.Base(), w)
		if want := number(t, row["g_mol"]); !(math.Abs(m.V-want) <= number(t, row["tolerance"])) {
			t.Errorf("%s: %.4f g/mol, published %.4f (%s)", row["formula"], m.V, want, row["source"])
		}
		if m.Symbol != "M" || m.Line() == 0 || m.Unit != "g/mol" {
			t.Errorf("%s: %v on line %d", row["formula"], m, m.Line())
		}
	}
	w := working.NewSheet()
	f, _ := chemicals.ParseFormula("Ti3AlC2")
	f.MolarMass(chemicals.Base(), w)
	if got := w.Lines[len(w.Lines)-1].Formula; got != "3*Ti+1*Al+2*C" {
		t.Errorf("formula line is %q", got)
	}
}

func TestElements(t *testing.T) {
	for i := range chemicals.NumElements {
		symbol := chemicals.ElementSymbol(i)
		if j, ok := chemicals.ElementIndex(symbol); symbol == "" || !ok || j != i {
			t.Errorf("element %d is %q with index %d", i, symbol, j)
		}
		if chemicals.Base().Num(datum.Of("weight", symbol)).Unknown() {
			t.Errorf("no atomic weight of %s", symbol)
		}
	}
	if chemicals.ElementSymbol(-1) != "" || chemicals.ElementSymbol(chemicals.NumElements) != "" {
		t.Error("symbols outside the table")
	}
	// Groups of the periodic table, IUPAC numbering.
	for symbol, group := range map[string]int{"Ti": 4, "Ta": 5, "Mo": 6, "Mn": 7, "Al": 13, "Si": 14, "P": 15, "S": 16,
		"Cl": 17, "Ar": 18, "Zn": 12, "Y": 3, "Xx": 0} {
		if got := chemicals.Group(symbol); got != group {
			t.Errorf("group of %s is %d, want %d", symbol, got, group)
		}
	}
}
