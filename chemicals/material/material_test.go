package material_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"etchbound/chemicals/material"
)

func text(t *testing.T) material.Text {
	t.Helper()
	read := func(name string) string {
		b, err := os.ReadFile("../data/" + name + ".csv")
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	return material.Text{Materials: read("materials"), Resistance: read("material_resistance"),
		Words: read("material_words")}
}

func held(t *testing.T) *material.Table {
	t.Helper()
	out, err := material.Parse(text(t))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

var nan = math.NaN()

func at(strength, degC, hours float64) material.Exposure {
	return material.Exposure{Strength: strength, DegC: degC, Hours: hours}
}

// What people write, and what of it stands acid fluoride for half an hour: statements of
// resistance guides and of chemistry at large. A name that is no material of the trade
// is not known, and neither is a material nobody stated.
func TestWhatStandsFluoride(t *testing.T) {
	h := held(t)
	for want, texts := range map[material.Verdict][]string{
		material.Yes: {"PTFE", "polytetrafluoroethylene bottle", "PFA", "HDPE", "HDPE drum", "pp", "polypropylene (PP)",
			"Polypropylene centrifuge tubes",
			"high-density polyethylene", "PTFE-lined steel", "PTFE-lined steel autoclave",
			"stainless steel autoclave with PTFE liner",
			"stainless steel, lined with PFA", "steel shell, PTFE lining", "platinum crucible", "HDPE, 2 mm",
			"HDPE 2mm", "HDPE plastic",
			"fluorinated HDPE", "glassy carbon"},
		material.No: {"glass", "Glass", "borosilicate", "borosilicate glass 3.3", "lab glass", "fused silica", "quartz",
			"soda-lime glass", "porcelain", "enamel",
			"enamelled steel", "glass-lined steel", "alumina", "zirconia", "sapphire", "titanium", "tantalum", "niobium",
			"brass", "bronze", "nylon", "polyamide",
			"PA66", "polycarbonate", "PC", "PMMA", "PET", "PEEK", "aluminium", "aluminum foil", "316", "316L",
			"stainless steel 304", "steel", "silicone", "tin",
			"wood", "paper", "concrete", "tinned copper", "galvanised steel", "glass-filled PTFE", "PTFE with glass fibre",
			"Brandname glass", "titanium alloy", "HDPE and glass", "ceramic", "polyester"},
		material.Limited: {"PVC", "FKM", "EPDM", "C-276", "alloy C-276", "nickel alloy 400", "alloy 600", "nickel",
			"polystyrene", "graphite", "nitrile", "latex", "FFKM", "butyl", "chloroprene"},
		material.Unknown: {"", "  ", "unobtainium", "plastic", "polymer-lined steel", "plastic-coated glass",
			"lined steel", "Brandname", "Brandname-coated steel",
			"HDPE unobtainium blend", "glassine", "ptfelike", "steelwool-free stuff", "metal", "xPTFE", "nickel alloy",
			"bottle"},
	} {
		for _, s := range texts {
			w := h.Read(s)
			if got := h.WallStands(&w, "hf", at(10, 25, 0.5)); got.Verdict != want {
				t.Errorf("%q: %s, want %s (%+v)", s, got.Verdict, want, w)
			}
		}
	}
}

// Other media: the class rows of the resistance charts.
func TestWhatStandsOtherMedia(t *testing.T) {
	h := held(t)
	for _, c := range []struct {
		text, medium  string
		strength, hot float64
		want          material.Verdict
	}{
		{"PVDF", "tmaoh", nan, 25, material.No}, {"PVDF", "solvent", nan, 25, material.No}, {"PVDF", "acid", nan, 25,
			material.Yes},
		{"FKM", "amine", nan, 25, material.No}, {"EPDM", "amine", nan, 25, material.Yes}, {"brass", "amine", nan, 25,
			material.No},
		{"FKM", "strong_base", nan, 25, material.No}, {"PC", "strong_base", nan, 25, material.No}, {"glass",
			"strong_base", nan, 25, material.Limited},
		{"glass", "acid", nan, 25, material.Yes}, {"316", "chloride", nan, 25, material.No}, {"silicone", "acid", nan, 25,
			material.No},
		{"PMMA", "solvent", nan, 25, material.No}, {"tantalum", "acid", nan, 25, material.Yes}, {"tantalum",
			"strong_base", nan, 25, material.No},
		{"aluminium", "strong_base", nan, 25, material.No}, {"unobtainium", "acid", nan, 25, material.Unknown}, {"POM",
			"acid", nan, 25, material.No},
		{"HDPE", "hf", 50, 25, material.Yes}, {"HDPE", "hf", 60, 25, material.Limited}, {"HDPE", "hf", 10, 80,
			material.Limited},
		{"HDPE", "hf", nan, 25, material.Limited}, {"HDPE", "hf", 10, nan, material.Limited}, {"PP", "tmaoh", nan, nan,
			material.Limited},
		{"PTFE", "hf", 49, 180, material.Limited}, {"HDPE", "no such medium", nan, 25, material.Unknown},
	} {
		w := h.Read(c.text)
		if got := h.WallStands(&w, c.medium, at(c.strength, c.hot, nan)); got.Verdict != c.want {
			t.Errorf("%s in %s at %g wt%% and %g degC: %s, want %s", c.text, c.medium, c.strength, c.hot, got.Verdict, c.want)
		}
	}
}

// Not knowing the strength, the temperature or the time never helps.
func TestNotKnowingNeverHelps(t *testing.T) {
	h := held(t)
	for _, m := range h.Rows() {
		for _, medium := range material.Media() {
			for _, x := range exposures() {
				seen := h.Stands(&m, medium, x).Verdict
				for _, less := range []material.Exposure{at(nan, nan, nan), at(nan, x.DegC, x.Hours),
					at(x.Strength, nan, x.Hours), at(x.Strength, x.DegC, nan)} {
					if blind := h.Stands(&m, medium, less).Verdict; seen > blind && seen != material.Unknown {
						t.Errorf("%s in %s: %s at %+v, %s at %+v", m.Slug, medium, seen, x, blind, less)
					}
				}
			}
		}
	}
}

func exposures() []material.Exposure {
	var out []material.Exposure
	for _, strength := range []float64{1, 30, 49, 55, 90} {
		for _, hot := range []float64{0, 50, 90, 170} {
			for _, hours := range []float64{0.1, 2, 100, 10000} {
				out = append(out, at(strength, hot, hours))
			}
		}
	}
	return out
}

// Longer in the liquor is never better (definition), and what stands it for a while is
// told so: gloves of nitrile 1 to 2 h and of latex 4 to 8 h below 40 % HF (hazard page of an
// accident insurance), polystyrene with small damage in 7 to 30 d of strong acid
// (resistance chart of labware).
func TestTheTimeOfContactCounts(t *testing.T) {
	h := held(t)
	for _, c := range []struct {
		text, medium string
		strength     float64
		hours        float64
		want         material.Verdict
	}{
		{"nitrile", "hf", 10, 0.5, material.Limited}, {"nitrile", "hf", 10, 2, material.No},
		{"nitrile", "hf", 10, nan, material.No}, {"latex", "hf", 10, 3, material.Limited},
		{"latex", "hf", 10, 5, material.No}, {"polystyrene", "hf", 10, 100, material.Limited},
		{"polystyrene", "hf", 10, 1000, material.No}, {"polystyrene", "acid", nan, 1000, material.No},
		{"PP", "hf", 48, 10, material.Yes}, {"PP", "hf", 48, 1000, material.Limited},
		{"PP", "hf", 48, nan, material.Limited}, {"PP", "hf", 5, nan, material.Yes},
	} {
		w := h.Read(c.text)
		if got := h.WallStands(&w, c.medium, at(c.strength, 25, c.hours)); got.Verdict != c.want {
			t.Errorf("%s in %s for %g h: %s, want %s", c.text, c.medium, c.hours, got.Verdict, c.want)
		}
	}
	for _, m := range h.Rows() {
		for _, medium := range material.Media() {
			for _, x := range exposures() {
				longer := x
				longer.Hours = 10 * x.Hours
				if a, b := h.Stands(&m, medium, x).Verdict, h.Stands(&m, medium, longer).Verdict; b < a {
					t.Errorf("%s in %s: %s at %+v and %s for longer", m.Slug, medium, a, x, b)
				}
			}
		}
	}
}

// Each row conducts heat in some way, has a source and a known status.
func TestRows(t *testing.T) {
	for _, m := range held(t).Rows() {
		if m.Source == "" || m.Status != "memory" && m.Status != "read" && m.Status != "read / memory" &&
			m.Status != "two-sources" {
			t.Errorf("%s: source %q, status %q", m.Slug, m.Source, m.Status)
		}
		if !math.IsNaN(m.Conductivity) && !(m.Low <= m.Conductivity && m.Conductivity <= m.High) {
			t.Errorf("%s: conductivity %g (%g to %g)", m.Slug, m.Conductivity, m.Low, m.High)
		}
	}
}

// One row more is a material more, and nothing else needs changing.
func TestOneMoreRow(t *testing.T) {
	x := text(t)
	x.Materials += "testium,testium,testium|test metal,metal,none,30,20,40,yes,no,,,,,,,,own,memory\n"
	h, err := material.Parse(x)
	if err != nil {
		t.Fatal(err)
	}
	for s, want := range map[string]material.Verdict{"testium beaker": material.Yes, "test metal": material.Yes,
		"testium-lined steel": material.Yes,
		"testiums":            material.Unknown} {
		if w := h.Read(s); h.WallStands(&w, "hf", at(10, 25, nan)).Verdict != want {
			t.Errorf("%q is not %s", s, want)
		}
	}
	if w := h.Read("testium"); h.WallStands(&w, "acid", at(nan, 25, nan)).Verdict != material.No ||
		h.WallStands(&w, "tmaoh",
			at(nan, 25, nan)).Verdict != material.Unknown {
		t.Error("the columns of the row do not count")
	}
}

func TestFaultsNameTheirPlace(t *testing.T) {
	for _, c := range []struct{ materials, resistance, words, want string }{
		{"a,a,PTFE,metal,none,,,,yes,,,,,,,,,own,memory\n", "", "",
			`, column words: the words "PTFE" are blank or mean two things`},
		{"a,a,b,metal,none,,,,perhaps,,,,,,,,,own,memory\n", "", "", "chemicals/data/materials.csv, row"},
		{"", "no_such,hf,,,,,,,no,,own,memory\n", "", `there is no material "no_such"`},
		{"", "ptfe,brine,,,,,,,no,,own,memory\n", "", "column medium"},
		{"", "", "woolly,coat,no_such,a note,own,assumed\n", `there is no material "no_such"`},
	} {
		x := text(t)
		x.Materials, x.Resistance, x.Words = x.Materials+c.materials, x.Resistance+c.resistance, x.Words+c.words
		if _, err := material.Parse(x); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
}
