package doubt_test

import (
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards/doubt"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// A limit without a figure is not silent, and neither is an agent without a limit.
func TestWhatNoLimitIsHeldAgainstIsTold(t *testing.T) {
	var r route.Route
	for _, name := range []string{"HCl", "sulfuric acid", "sodium fluoride", "TMAOH", "water", "sodium chloride",
		"isopropanol"} {
		s, held := chemicals.Library().Find(name)
		if !held {
			t.Fatal(name)
		}
		r.Steps = append(r.Steps, route.Step{What: []route.Material{{Substance: s}}})
	}
	figs := []figure.Figure{{ID: figure.ID{Quantity: "air.breathing_zone", Agent: "hcl"}},
		{ID: figure.ID{Quantity: "air.flammable_share", Agent: "isopropanol"}}} // which says what burns alone
	got := map[string]string{}
	walk := process.Walk{Releases: []process.Release{{Gas: "H2"}, {Gas: "H2S"}, {Gas: "SiCl4"}}}
	for _, u := range doubt.Unjudged(&r, figs, &walk) {
		got[u.Subject.String()] = u.Kind
	}
	want := map[string]string{"sulfuric acid": "air_unjudged", "fluoride": "air_unjudged",
		"hydrogen sulfide": "air_unjudged", "silicon tetrachloride": "air_unjudged", "2-propanol": "air_unjudged",
		"tetramethylammonium hydroxide": "no_limit_held"}
	if len(got) != len(want) {
		t.Errorf("told %v, want %v", got, want)
	}
	for name, kind := range want {
		if got[name] != kind {
			t.Errorf("%s: %q, want %q", name, got[name], kind)
		}
	}
}
