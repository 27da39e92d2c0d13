package scaling_test

import (
	"slices"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/stock"
	"etchbound/schemas/nearly"
)

// A store by hand. Of 48 wt% acid 2,400 L weigh 2,760 kg (1.150 kg/L), of 68 wt% nitric
// acid 3,000 L weigh 4,215 kg (1.405 kg/L); with 500 kg of LiF, toxic if swallowed:
// 2760/5000 + 4215/5000 + 500/50000 = 1.405 of the lower tier by the sum rule (Directive
// 2012/18/EU, Annex I, note 4), though each alone is within it.
const bigStore = `jurisdiction: eu
stock:
  - {substance: hydrofluoric acid, strength: 48 wt%, volume: 2400 L, bottle: 200 L}
  - {substance: nitric acid, strength: 68 wt%, volume: 3000 L, bottle: 2.5 L}
  - {substance: lithium fluoride, mass: 500 kg}
`

func TestASiteAddsUpByClass(t *testing.T) {
	h := holdings(t, caseAt(t, "a.yaml", bench("48 wt%"), bigStore))
	sum := func(id string) *stock.Share {
		i := slices.IndexFunc(h.Sums, func(s stock.Share) bool { return s.Threshold.ID == id })
		if i < 0 {
			t.Fatal("no sum", id)
		}
		return &h.Sums[i]
	}
	if x := sum("seveso_sum_health_lower"); x.Verdict != figure.Exceeds || !nearly.Share(x.Ratio.V, 1.405, 0.005) {
		t.Errorf("%g, %s", x.Ratio.V, x.Verdict)
	}
	if x := sum("seveso_sum_health_upper"); x.Verdict != figure.Within || !nearly.Share(x.Ratio.V, 0.351, 0.005) {
		t.Errorf("%g, %s", x.Ratio.V, x.Verdict)
	}
	nitric := holding(t, h, "7697-37-2")
	if x := share(t, nitric, "seveso_h1_lower"); x.Verdict != figure.Near || !nearly.Share(x.Ratio.V, 0.843, 0.005) {
		t.Errorf("nitric acid: %g, %s", x.Ratio.V, x.Verdict)
	}
	if slices.ContainsFunc(nitric.Shares, func(s stock.Share) bool { return s.Threshold.ID == "seveso_h2_lower" }) {
		t.Error("what counts in H1 counts in H2 again")
	}
	if n := holding(t, h, hydrofluoric).Bottles; len(n) != 1 || n[0].Count.V != 12 ||
		!slices.Contains(n[0].Classes, "H310") {
		t.Errorf("bottles %+v", n)
	}
}

// What is released within a day has to be reported; to hold it reaches no limit. The
// 1,325 kg of HF are 29 times the 45.4 kg of 40 CFR 302.4, and 29 times the planning
// quantity, which is of what is held. By hand 45.36 kg leave room for 0.
func TestAReleaseIsNoHolding(t *testing.T) {
	for _, site := range []string{"us", "us_california"} {
		h := holdings(t, caseAt(t, "a.yaml", bench("48 wt%"), "jurisdiction: "+site+bigStore[len("jurisdiction: eu"):]))
		hf := holding(t, h, hydrofluoric)
		if x := share(t, hf, "cercla_hf"); x.Verdict != figure.Near || !nearly.Share(x.Ratio.V, 29.2, 0.005) {
			t.Errorf("%s: release %g, %s", site, x.Ratio.V, x.Verdict)
		}
		if x := share(t, hf, "epcra_312_hf"); x.Verdict != figure.Exceeds || x.Headroom.V != 0 {
			t.Errorf("%s: held %g, %s, room for %g", site, x.Ratio.V, x.Verdict, x.Headroom.V)
		}
		// 4,215 kg of 68 wt% hold 2,866, of 226.8 kg: the lesser of 500 lb and the planning quantity of
		// 1,000 lb (40 CFR 370.10).
		if x := share(t, holding(t, h, "7697-37-2"), "epcra_312_hno3"); !nearly.Share(x.Ratio.V, 12.64, 0.005) {
			t.Errorf("%s: nitric acid %g", site, x.Ratio.V)
		}
		// 500 kg of a solid, of 226.8 kg (500 lb) or of what 55 gal of the lightest liquid weigh,
		// 208.2 L at 0.785 kg/L: the state plan, on top of what holds everywhere.
		salt := holding(t, h, "7789-24-4")
		of := slices.IndexFunc(salt.Shares, func(s stock.Share) bool { return s.Threshold.ID == "california_plan" })
		if (of >= 0) != (site == "us_california") || of >= 0 && !nearly.Share(salt.Shares[of].Ratio.V, 500/163., 0.005) {
			t.Errorf("%s: state plan %+v", site, salt.Shares)
		}
	}
}

// A run takes 55.2 g of HF (100 mL of 48 wt% at 1.150 kg/L); beside 1 L, 0.552 kg, there is
// room for (45.4 - 0.552)/0.0552 = 812 of them.
func TestRoomForRuns(t *testing.T) {
	h := holdings(t, caseAt(t, "a.yaml", bench("48 wt%"),
		"jurisdiction: us\nstock: [{substance: HF, strength: 48 wt%, volume: 1 L}]\n"))
	if x := share(t, holding(t, h, hydrofluoric), "epcra_hf"); !nearly.Share(x.Headroom.V, 812, 0.003) {
		t.Errorf("room for %g", x.Headroom.V)
	}
}

// What nobody has classified counts as the strictest, so that it never makes a sum less.
func TestWhatIsNotClassifiedCountsAsTheStrictest(t *testing.T) {
	known := holdings(t, caseAt(t, "a.yaml", bench("48 wt%"), bigStore))
	other := holdings(t, caseAt(t, "a.yaml", bench("48 wt%"),
		bigStore+"  - {substance: florbide, formula: CsF, not_held: true, mass: 500 kg}\n"))
	for i := range known.Sums {
		a, b := &known.Sums[i], &other.Sums[i]
		if a.ID != b.ID || !(b.Ratio.V > a.Ratio.V) && !b.Ratio.Unknown() {
			t.Errorf("%s: %g, and %g with what nobody knows", a.ID, a.Ratio.V, b.Ratio.V)
		}
	}
}
