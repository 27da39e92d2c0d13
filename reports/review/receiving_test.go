package review

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/words"
)

// stocked is a review at a site that keeps a stock.
func stocked(t *testing.T, stock string) *builder {
	t.Helper()
	site, problems, err := route.LoadSite("s.yaml", strings.NewReader("site: etchbound/1\ntitle: check\n"+stock))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	r := hazards.Review{Case: route.Case{Route: &route.Route{}, Site: site}}
	return from(draft.New(&r, draft.Options{}))
}

// The tray below the bottles holds 110 % of the largest in litres, by hand: 1.1 x 2.5 L; a
// liquid of which no volume is stated, and a site that is not given, leave it unknown.
func TestTrayBelowTheLargestBottle(t *testing.T) {
	const hf = "{substance: hydrofluoric acid, strength: 48 wt%, "
	const hcl = "{substance: hydrochloric acid, strength: 37 wt%, "
	for stock, want := range map[string]string{
		"stock: [" + hf + "volume: 5 L, bottle: 2500 mL}, " + hcl + "volume: 1 L}]": "at least 2.75 L",
		"stock: [" + hcl + "volume: 10 L}]":                                         "at least 11 L",
		"stock: [" + hf + "mass: 5 kg}]":                                            "not known, since no volume is stated",
		"stock: [{substance: lithium fluoride, mass: 500 g}]":                       words.Of("receiving.tray_none"),
		"jurisdiction: eu": words.Of("receiving.tray_no_site"),
	} {
		p, ok := stocked(t, stock).bottleTray().(document.Paragraph)
		if !ok || !strings.Contains(p.Text, want) {
			t.Errorf("%s\n%q does not say %q", stock, p.Text, want)
		}
	}
}
