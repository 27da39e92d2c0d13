package route_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas"
)

const bundled = "../../testdata/routes"

// routeFiles are the bundled files that hold a route.
func routeFiles(t *testing.T) []string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(bundled, "*.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	var routes []string
	for _, n := range names {
		switch filepath.Base(n) {
		case "site-demo.yaml", "limits-demo.yaml":
		default:
			routes = append(routes, n)
		}
	}
	if len(routes) < 9 {
		t.Fatalf("only %d routes in %s", len(routes), bundled)
	}
	return routes
}

// warmerThanIce is what is rightly told of a bundled route whose one bath serves
// an addition in ice and a hold in the warm.
var warmerThanIce = map[string]string{
	"hf-hcl-1g.yaml": "an ice bath at 0 degC cannot hold 35 degC in step 4",
}

func load(t *testing.T, name string) *route.Route {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r, problems, err := route.Load(filepath.Base(name), f)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range problems {
		if told := warmerThanIce[filepath.Base(name)]; p.Severity != schemas.Notice || told == "" ||
			!strings.Contains(p.What, told) {
			t.Errorf("%v", p)
		}
	}
	return r
}

func TestBundledRoutesLoad(t *testing.T) {
	for _, name := range routeFiles(t) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			r := load(t, name)
			if r == nil {
				t.Fatal("no route")
			}
			sourced := r.Basis.Title != "" && r.Basis.Publisher != "" && r.Basis.Year != "" && r.Basis.DOI != "" &&
				r.Basis.Section != ""
			if r.Basis.Status != "invented" && !sourced {
				t.Errorf("basis %+v does not name its source", r.Basis)
			}
			if r.Basis.Note == "" {
				t.Error("the basis does not say what was filled in")
			}
		})
	}
}

func TestDemoSiteLoads(t *testing.T) {
	f, err := os.Open(filepath.Join(bundled, "site-demo.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	s, problems, err := route.LoadSite("site-demo.yaml", f)
	if err != nil || s == nil {
		t.Fatalf("site %v, error %v", s, err)
	}
	for _, p := range problems {
		t.Errorf("%v", p)
	}
}

func TestDemoLimitsLoad(t *testing.T) {
	f, err := os.Open(filepath.Join(bundled, "limits-demo.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	l, problems, err := limit.LoadFile("limits-demo.yaml", f)
	if err != nil || l == nil {
		t.Fatalf("limits %v, error %v", l, err)
	}
	for _, p := range problems {
		t.Errorf("%v", p)
	}
}

// Papers state these recipes as a mole ratio of salt to powder. The masses in the
// files have to give it back, to the rounding of the masses.
func TestBundledMoleRatios(t *testing.T) {
	const ti3alc2 = 0.194605 // kg/mol, from the 2021 abridged atomic masses
	tests := []struct {
		file, substance  string
		molar            float64 // kg/mol of the salt
		ratio, tolerance float64 // mol salt per mol Ti3AlC2
	}{
		{"lif-hcl-2g-read.yaml", "lithium_fluoride", 0.025938, 5, 0.005},     // read: Materials 14, 2021, section 2.1
		{"demo-lif-hcl-2g.yaml", "lithium_fluoride", 0.025938, 12, 0.005},    // memory: Chemistry of Materials 29, 2017
		{"zinc-chloride-melt-1g.yaml", "zinc_chloride", 0.136286, 6, 0.005},  // memory: J. Am. Chem. Soc. 141, 2019
		{"bifluoride-1g.yaml", "ammonium_bifluoride", 0.057043, 3.89, 0.005}, // memory: 20 mL of 1 mol/L to 5.139 mmol
	}
	for _, tt := range tests {
		r := load(t, filepath.Join(bundled, tt.file))
		for _, s := range r.Steps {
			for _, m := range s.What {
				if m.Substance == nil || m.Substance.Slug != tt.substance {
					continue
				}
				got := (m.Mass.SI / tt.molar) / (r.Precursor.Mass.SI / ti3alc2)
				if d := got/tt.ratio - 1; d > tt.tolerance || d < -tt.tolerance {
					t.Errorf("%s: %.4g mol/mol, published %g", tt.file, got, tt.ratio)
				}
			}
		}
	}
}
