package holdings_test

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/holdings"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// A mass that nobody knows is an empty cell and no zero, and is named as missing.
func TestAMassThatIsNotKnownIsEmpty(t *testing.T) {
	known := stock.Mass{Mid: working.Exact("m", "kg", 0.25, "tried")}
	not := stock.Mass{Mid: working.Absent("m", "kg", working.Lacks("vapour_warm", ""))}
	h := scaling.Holdings{Substances: []stock.Holding{{Name: "=water", CAS: "7732-18-5", State: "l", Stock: not,
		Largest: stock.Take{Mass: known}, Sum: stock.Take{Mass: known}}}}
	var b strings.Builder
	if err := holdings.CSV(&b, &h); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(b.String())).ReadAll()
	if err != nil || len(rows) != 2 {
		t.Fatal(rows, err)
	}
	cell := func(name string) string { return rows[1][slices.Index(rows[0], name)] }
	if cell("pure_mass_of_stock_kg") != "" || cell("missing") == "" || cell("computed_need_largest_run_kg") != "0.25" {
		t.Errorf("%q", rows[1])
	}
	if name := cell("chemical_name"); strings.HasPrefix(name, "=") || !strings.Contains(name, "water") {
		t.Errorf("the name begins a formula: %q", name)
	}
}

// A quantity of a release is no threshold of what is held (40 CFR 302.6: released within 24 h): the
// nearest is another one, though less of that is there, and it is the nearest only by itself.
func TestAReleaseIsNotTheNearest(t *testing.T) {
	of := func(id string, share float64) stock.Share {
		for _, x := range stock.Thresholds() {
			if x.ID == id {
				return stock.Share{Threshold: &x, Ratio: working.Exact("x", "1", share, "tried")}
			}
		}
		t.Fatalf("no threshold %s", id)
		return stock.Share{}
	}
	for want, shares := range map[string][]stock.Share{
		"rmp_hf":      {of("cercla_naoh", 1.5), of("rmp_hf", 0.15)},
		"epcra_hf":    {of("rmp_hf", 0.15), of("cercla_hf", 2), of("epcra_hf", 0.3)},
		"cercla_naoh": {of("cercla_naoh", 1.5)},
	} {
		h := scaling.Holdings{Substances: []stock.Holding{{Name: "base", Shares: shares}}}
		var b strings.Builder
		if err := holdings.CSV(&b, &h); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(strings.NewReader(b.String())).ReadAll()
		if err != nil || rows[1][slices.Index(rows[0], "nearest_threshold")] != want {
			t.Errorf("%v, %v: want %s", err, rows, want)
		}
	}
}

// A stock held against no site, or one of no jurisdiction, says so as a warning.
func TestAStockSaysWhatItIsHeldAgainst(t *testing.T) {
	for _, c := range []struct {
		site *route.Site
		want string
	}{{nil, "stock.no_site"}, {&route.Site{}, "stock.no_jurisdiction"}, {&route.Site{Jurisdiction: "EU"}, ""}} {
		warned := ""
		for _, b := range holdings.Build(&scaling.Holdings{Site: c.site}, draft.Options{}).Sections[0].Blocks {
			if p, ok := b.(document.Paragraph); ok && p.Tone == document.Warning {
				warned += p.Text
			}
		}
		if c.want == "" && warned != "" || c.want != "" && warned != words.Of(c.want) {
			t.Errorf("site %v: %q, want %q", c.site, warned, c.want)
		}
	}
}

// Another route or site gives another digest.
func TestADigestStandsForAllFiles(t *testing.T) {
	seen := map[string]bool{}
	one, other := route.Site{Digest: "one"}, route.Site{}
	other.Digest = "another"
	for _, h := range []scaling.Holdings{{}, {Site: &one}, {Site: &other}} {
		d := holdings.Build(&h, draft.Options{}).Control
		if d == "" || seen[d] {
			t.Errorf("digest %q of %+v", d, h)
		}
		seen[d] = true
	}
}

// A stock list that was held against limits of the house names them.
func TestAStockNamesItsLimits(t *testing.T) {
	h := scaling.Holdings{Limits: &limit.Set{Digest: strings.Repeat("12", 32)}}
	if got := holdings.Build(&h, draft.Options{}).Control; !strings.Contains(got, "limits 12121212") {
		t.Errorf("%q", got)
	}
}
