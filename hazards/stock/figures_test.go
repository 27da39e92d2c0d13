package stock_test

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
	"etchbound/schemas/nearly"
)

const pot = `route: etchbound/1
title: bench
basis: {status: invented}
places: {pot: {kind: vessel, closure: open, capacity: 500 mL, material: HDPE}}
steps:
  - {do: charge, in: pot, what: [{substance: HF, strength: 48 wt%, volume: 100 mL}], temperature: 20 degC}
`

// made is the brief review of the pot at a site that keeps something; none where site is empty.
func made(t *testing.T, site string) hazards.Review {
	t.Helper()
	r, problems, err := route.Load("r.yaml", strings.NewReader(pot))
	if err != nil || r == nil {
		t.Fatalf("%v %v", err, problems)
	}
	var s *route.Site
	if site != "" {
		if s, problems, err = route.LoadSite("s.yaml",
			strings.NewReader("site: etchbound/1\ntitle: s\n"+site)); err != nil || s == nil {
			t.Fatalf("%v %v", err, problems)
		}
	}
	c, err := route.NewCase(r, s, nil)
	if err != nil {
		t.Fatal(err)
	}
	c.Brief = true
	out, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// The acid weighs 1.150 kg/L (48 wt%), so that a litre holds 0.552 kg of HF and a run takes
// 0.0552 kg. Thresholds: 45.4 kg held (40 CFR 355), 45.4 kg released (40 CFR 302.4), 453.6 kg
// from 50 wt% on (40 CFR 68.130), which acid of 48 wt% is not.
func TestAStockIsJudgedInEveryReview(t *testing.T) {
	const us = "jurisdiction: us\nstock: [{substance: HF, strength: 48 wt%, volume: "
	at := func(quantity, threshold string) figure.ID {
		return figure.ID{Quantity: quantity, Place: figure.At("7664-39-3"), Agent: threshold}
	}
	for _, row := range []struct {
		site    string
		id      figure.ID
		danger  float64
		verdict figure.Verdict
	}{
		{us + "1 L}]", at("stock.share", "epcra_hf"), 0.552 / 45.4, figure.Within},
		{us + "1 (0.9 to 50) L}]", at("stock.share", "epcra_hf"), 27.6 / 45.4, figure.Near},
		{us + "82 L}]", at("stock.batches", "epcra_hf"), 2, figure.Near},
		{us + "90 L}]", at("stock.share", "epcra_hf"), 49.68 / 45.4, figure.Exceeds},
		{us + "90 L}]", at("stock.release", "cercla_hf"), 49.68 / 45.4, figure.Near},
		{us + "90 L}]", at("stock.share", "rmp_hf"), 0, figure.Within},
	} {
		r := made(t, row.site)
		for i := range r.Findings {
			f := &r.Findings[i]
			if f.Figure != row.id {
				continue
			}
			g := figure.NewSet(r.Figures).Get(row.id)
			if f.Verdict != row.verdict || !nearly.Share(g.Danger().V+1e-9, row.danger+1e-9, 0.005) {
				t.Errorf("%s: %s %g, %s", row.site, row.id, g.Danger().V, f.Verdict)
			}
			row.id = figure.ID{}
		}
		if !row.id.IsZero() {
			t.Errorf("%s: no finding of %s", row.site, row.id)
		}
	}
}

// What nobody says, or no list holds, is unknown and says what settles it.
func TestAStockNobodyStatesIsUnknown(t *testing.T) {
	for _, row := range []struct{ site, place, kind string }{
		{"", "site", "site_with_stock"},
		{"jurisdiction: us\nstock: [{substance: LiF, mass: 1 kg}]", "7664-39-3", "stock_of"},
		{"jurisdiction: de\n", "7664-39-3", "stock_of"},
		{"stock: [{substance: florbide, formula: CsF, not_held: true, mass: 1 kg}]", "x_florbide", "on_a_list"},
		{"stock: [{substance: florbide, formula: CsF, not_held: true, mass: 1 kg}]", "7664-39-3", "stock_of"},
	} {
		r := made(t, row.site)
		found := false
		for i := range r.Findings {
			f := &r.Findings[i]
			g := figure.NewSet(r.Figures).Get(f.Figure)
			found = found || f.Figure.Quantity == "stock.share" && f.Figure.Place.Key() == row.place &&
				f.Verdict == figure.UnknownVerdict && g != nil && g.Value.Missing()[0].Kind == row.kind
		}
		if !found {
			t.Errorf("%q: %s is not unknown for %s", row.site, row.place, row.kind)
		}
	}
}

// What is not held counts toward nobody knows which quantity: the sums of the site that
// it is part of are unknown, in whatever amount and whether the site lists it or not.
func TestASumWithWhatIsNotHeldIsUnknown(t *testing.T) {
	const acid = "jurisdiction: eu\nstock: [{substance: HF, strength: 48 wt%, volume: 1 L}"
	for site, want := range map[string]figure.Verdict{
		acid + "]": figure.Within,
		acid + ", {substance: florbide, formula: CsF, not_held: true, mass: 1 g}]": figure.UnknownVerdict,
	} {
		r := made(t, site)
		found := 0
		for i := range r.Findings {
			if f := &r.Findings[i]; f.Figure.Quantity == "stock.share" && f.Figure.Place == figure.Site {
				found++
				if f.Verdict != want {
					t.Errorf("%s: %s is %s, want %s", site, f.Figure, f.Verdict, want)
				}
			}
		}
		if found < 2 {
			t.Errorf("%s: %d sums", site, found)
		}
	}
}

func TestEveryThresholdIsFoundByItsID(t *testing.T) {
	for _, x := range stock.Thresholds() {
		if y, ok := stock.ThresholdOf(x.ID); !ok || y.Limit != x.Limit {
			t.Errorf("%s: %v", x.ID, y)
		}
	}
	if x, ok := stock.ThresholdOf("seveso_sum_health_upper"); !ok || x.Tier != "upper tier" {
		t.Errorf("%v", x)
	}
	named := map[string]string{} // no two sums of one tier are told by one name
	for _, tier := range []string{"lower", "upper"} {
		for _, of := range []string{"health", "physical", "environment"} {
			x, ok := stock.ThresholdOf("seveso_sum_" + of + "_" + tier)
			if !ok || named[x.Programme+x.Tier] != "" || !strings.Contains(x.Programme, of) {
				t.Errorf("%v, beside %q", x, named[x.Programme+x.Tier])
				continue
			}
			named[x.Programme+x.Tier] = x.ID
		}
	}
}

// What a law names counts by its own quantity, and by that in each sum that its classes are
// of (Directive 2012/18/EU, Annex I part 2 and note 4, memory): 100 t of methanol are 100/500
// = 0.2 and no acute toxic 2 of 50 t; 100 kg of hydrazine 0.1/0.5 = 0.2. With 1 t of HF of
// 10 wt%, 1/5, health is 0.2 + 0.2 + 0.2, and 2 t of permanganate, 2/50, make physical 0.44.
// Flammable liquids of one place count together over 10,000 lb (29 CFR 1910.119, memory):
// 3 t and 5 t are 8/4.5359.
func TestWhatALawNamesCountsByItsOwnQuantity(t *testing.T) {
	const keeps = "\nstock: [{substance: methanol, mass: 100 t}, {substance: hydrazine, mass: 100 kg}, " +
		"{substance: HF, strength: 10 wt%, mass: 1 t}, {substance: potassium permanganate, mass: 2 t}]\n"
	eu := figure.NewSet(made(t, "jurisdiction: eu"+keeps).Figures)
	us := figure.NewSet(made(t, "jurisdiction: us\nstock: [{substance: methanol, mass: 3 t}, "+
		"{substance: acetone, mass: 5 t}, {substance: HF, strength: 10 wt%, mass: 1 kg}]\n").Figures)
	for _, c := range []struct {
		of        *figure.Set
		place, by string
		want      float64
	}{
		{eu, "67-56-1", "seveso_methanol_lower", 0.2}, {eu, "67-56-1", "seveso_h2_lower", -1},
		{eu, "302-01-2", "seveso_hydrazine_lower", 0.2}, {eu, "site", "seveso_sum_health_lower", 0.6},
		{eu, "site", "seveso_sum_physical_lower", 0.44}, {us, "site", "psm_sum_flammable", 8 / 4.5359},
	} {
		at := figure.At(c.place)
		if c.place == "site" {
			at = figure.Site
		}
		g := c.of.Get(figure.ID{Quantity: "stock.share", Place: at, Agent: c.by})
		if (g != nil) != (c.want > 0) || g != nil && !nearly.Share(g.Danger().V, c.want, 1e-3) {
			t.Errorf("%s %s: %v, want %g", c.place, c.by, g, c.want)
		}
	}
}
