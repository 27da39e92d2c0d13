package scaling_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/meeting"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
	"etchbound/scaling"
	"etchbound/schemas/nearly"
)

const hydrofluoric, hydrochloric = "7664-39-3", "7647-01-0"

// bench is a route that takes 100 mL of hydrofluoric acid of a strength.
func bench(strength string) string {
	return fmt.Sprintf(`route: etchbound/1
title: bench
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, purity: 90 wt%%, impurities: none (certificate)}
places:
  pot: {kind: vessel, closure: open, capacity: 500 mL}
steps:
  - {do: charge, in: pot, what: [{substance: HF, strength: %s, volume: 100 mL}], temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}
  - {do: hold, in: pot, time: 1 h, temperature: 20 degC}
`, strength)
}

// caseAt loads a route of a name, in a site if there is one.
func caseAt(t testing.TB, name, yaml, site string) route.Case {
	t.Helper()
	r, problems, err := route.Load(name, strings.NewReader(yaml))
	if err != nil || r == nil {
		t.Fatalf("%v %v", err, problems)
	}
	var s *route.Site
	if site != "" {
		if s, problems, err = route.LoadSite("site.yaml",
			strings.NewReader("site: etchbound/1\ntitle: s\n"+site)); err != nil || s == nil {
			t.Fatalf("%v %v", err, problems)
		}
	}
	c, err := route.NewCase(r, s, nil)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func holdings(t testing.TB, cases ...route.Case) *scaling.Holdings {
	t.Helper()
	h, err := scaling.Stock(cases, true, 2)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func holding(t testing.TB, h *scaling.Holdings, cas string) *stock.Holding {
	t.Helper()
	for i := range h.Substances {
		if h.Substances[i].CAS == cas {
			return &h.Substances[i]
		}
	}
	t.Fatalf("no %s", cas)
	return nil
}

func share(t testing.TB, s *stock.Holding, id string) stock.Share {
	t.Helper()
	for _, x := range s.Shares {
		if x.Threshold.ID == id {
			return x
		}
	}
	t.Fatalf("%s has no threshold %s", s.CAS, id)
	return stock.Share{}
}

func close(got, want, tolerance float64) bool { return math.Abs(got-want) <= tolerance*math.Abs(want) }

// 100 mL of 48 wt% acid of 1.15 g/mL hold 55.2 g of hydrogen fluoride, 1 g of
// powder of 90 wt% 0.9 g of the layered phase.
func TestMassOfARun(t *testing.T) {
	h := holdings(t, caseAt(t, "a.yaml", bench("48 wt%"), "stock:\n  - {substance: HF, strength: 48 wt%, volume: 1 L}\n"))
	hf := holding(t, h, hydrofluoric)
	if hf.ID().String() != "stock.mass@7664-39-3" || !close(hf.Sum.Mid.V, 0.1*1.15*0.48, 0.005) ||
		!close(hf.Stock.Mid.V, 1.15*0.48, 0.005) {
		t.Errorf("%s: %v a run, %v held", hf.ID(), hf.Sum.Mid, hf.Stock.Mid)
	}
	if !close(hf.Runs.V, 10, 1e-12) || hf.Strongest.V != 0.48 {
		t.Errorf("%v runs, strongest %v", hf.Runs, hf.Strongest)
	}
	p := holding(t, h, "")
	if p.Formula != "Ti3AlC2" || p.ID().String() != "stock.mass@Ti3AlC2" || !close(p.Sum.Mid.V, 0.0009, 1e-12) ||
		!p.Stock.Mid.Unknown() || !p.Runs.Unknown() {
		t.Errorf("%+v", p)
	}
}

// Two routes add up; the largest is the stronger.
func TestRoutesAddUp(t *testing.T) {
	h := holdings(t, caseAt(t, "b.yaml", bench("48 wt%"), ""), caseAt(t, "a.yaml", bench("10 wt%"), ""))
	hf := holding(t, h, hydrofluoric)
	if len(hf.Takes) != 2 || h.Routes[0].Name != "a.yaml" || hf.Largest.Route != 1 {
		t.Fatalf("%+v", hf)
	}
	if a, b := hf.Takes[0].Mid.V, hf.Takes[1].Mid.V; hf.Sum.Mid.V != a+b || !(b > a) || hf.Largest.Mid.V != b {
		t.Errorf("%g and %g: %v, largest %v", a, b, hf.Sum.Mid, hf.Largest.Mid)
	}
}

// A share is not known without a site file, nor while the site file does not
// say how much is kept; the mass is.
func TestShareNeedsASite(t *testing.T) {
	for _, site := range []string{"", "jurisdiction: us\n", "jurisdiction: us\nstock:\n  - {substance: LiF, mass: " +
		"1 kg}\n"} {
		hf := holding(t, holdings(t, caseAt(t, "a.yaml", bench("50 wt%"), site)), hydrofluoric)
		x := share(t, hf, "epcra_hf")
		if !x.Ratio.Unknown() || x.Verdict != figure.UnknownVerdict || len(x.Ratio.Missing()) == 0 || hf.Sum.Mid.Unknown() {
			t.Errorf("%q: %v, %s, %v", site, x.Ratio, x.Verdict, hf.Sum.Mid)
		}
	}
}

// What counts, by 40 CFR 68.130, 29 CFR 1910.119, 40 CFR 355 and Directive
// 2012/18/EU as the table copies them. Masses are volume by 1.15 to 1.16 g/mL.
func TestWhatCounts(t *testing.T) {
	for _, c := range []struct {
		stock, cas, id string
		ratio          float64
		tolerance      float64
		verdict        figure.Verdict
	}{
		{"HF, strength: 49 wt%, volume: 1000 L", hydrofluoric, "rmp_hf", 0, 0, figure.Within},
		{"HF, strength: 50 wt%, volume: 1000 L", hydrofluoric, "rmp_hf", 1000 * 1.157 * 0.5 / 453.6, 0.01, figure.Exceeds},
		{"HF, strength: 50 wt%, volume: 500 L", hydrofluoric, "rmp_hf", 500 * 1.157 * 0.5 / 453.6, 0.01, figure.Near},
		{"HF, strength: 49 wt%, mass: 200 kg", hydrofluoric, "psm_hf", 0, 0, figure.Within},
		{"HF, strength: 49 wt%, mass: 90 kg", hydrofluoric, "epcra_hf", 44.1 / 45.4, 1e-9, figure.Near},
		{"HF, strength: 49 wt%, mass: 93 kg", hydrofluoric, "epcra_hf", 45.57 / 45.4, 1e-9, figure.Exceeds},
		{"HF, strength: 49 wt%, volume: 80 L", hydrofluoric, "epcra_hf", 1, 0.02, figure.Near}, // the reference: about 80 L
		{"HF, strength: 0.5 wt%, mass: 1000 kg", hydrofluoric, "epcra_hf", 0.0552 / 45.4, 0.005, figure.Within},
		{"HF, strength: 5 wt%, mass: 1000 kg", hydrofluoric, "cercla_hf", 50 / 45.4, 1e-9, figure.Near},
		// 40 CFR 302.4 lists ammonium hydroxide by itself, 1,000 lb of NH4OH, 35.046 g/mol for 17.031 of NH3
		{"ammonia, strength: 25 wt%, mass: 1000 kg", "7664-41-7", "cercla_nh4oh", 250 * 35.046 / 17.031 / 453.6, 0.001,
			figure.Near},
		{"HCl, strength: 36 wt%, mass: 1000 kg", hydrochloric, "rmp_hcl", 0, 0, figure.Within},
		{"HCl, strength: 37 wt%, mass: 1000 kg", hydrochloric, "rmp_hcl", 370. / 6804, 1e-9, figure.Within},
		{"HCl, strength: 37 wt%, mass: 1000 kg", hydrochloric, "epcra_hcl", 0, 0, figure.Within},
	} {
		site := "jurisdiction: us\nstock:\n  - {substance: " + c.stock + "}\n"
		x := share(t, holding(t, holdings(t, caseAt(t, "a.yaml", bench("48 wt%"), site)), c.cas), c.id)
		if !close(x.Ratio.V, c.ratio, c.tolerance) || x.Verdict != c.verdict {
			t.Errorf("%s against %s: %v %s, want %g %s", c.stock, c.id, x.Ratio, x.Verdict, c.ratio, c.verdict)
		}
		if c.ratio == 0 && !(x.Left.V > 0) {
			t.Errorf("%s against %s: nothing is left out", c.stock, c.id)
		}
		of := "stock.share@"
		if x.Threshold.Release() {
			of = "stock.release@"
		}
		if want := of + c.cas + "/" + c.id; x.ID.String() != want {
			t.Errorf("%s, want %s", x.ID, want)
		}
	}
}

// Acid counts whole toward a class of mixtures, and from 7 wt% on.
func TestClassCountsWhole(t *testing.T) {
	for _, c := range []struct {
		strength string
		ratio    float64
	}{{"7 wt%", 0.2}, {"6.9 wt%", 0}} {
		// The 100 mL of the route are of the same strength, so the stock decides.
		site := "jurisdiction: de\nstock:\n  - {substance: HF, strength: " + c.strength + ", mass: 1000 kg}\n"
		hf := holding(t, holdings(t, caseAt(t, "a.yaml", bench(c.strength), site)), hydrofluoric)
		if x := share(t, hf, "seveso_h1_hf_lower"); !close(x.Ratio.V, c.ratio, 1e-9) {
			t.Errorf("%s: %v", c.strength, x.Ratio)
		}
	}
}

// The upper end of a stated range decides, and a strength whose range reaches
// the rule counts.
func TestShareIsOnTheDangerousSide(t *testing.T) {
	site := "jurisdiction: us\nstock:\n  - {substance: HF, strength: 48 (46 to 51) wt%, mass: 1000 kg}\n"
	hf := holding(t, holdings(t, caseAt(t, "a.yaml", bench("40 wt%"), site)), hydrofluoric)
	if x := share(t, hf, "rmp_hf"); !close(x.Held.V, 510, 1e-9) || x.Verdict != figure.Exceeds {
		t.Errorf("%v %s", x.Held, x.Verdict)
	}
}

// The thresholds of the jurisdiction count, and all of them without one.
func TestJurisdictionPicks(t *testing.T) {
	for _, c := range []struct {
		where   string
		us, eur bool
	}{{"us", true, false}, {"us_california", true, false}, {"eu", false, true}, {"de", false, true}, {"uk", false, true},
		{"", true, true}} {
		site := "stock:\n  - {substance: HF, strength: 48 wt%, mass: 1 kg}\n"
		if c.where != "" {
			site += "jurisdiction: " + c.where + "\n"
		}
		hf := holding(t, holdings(t, caseAt(t, "a.yaml", bench("48 wt%"), site)), hydrofluoric)
		has := func(id string) bool {
			return slices.ContainsFunc(hf.Shares, func(x stock.Share) bool { return x.Threshold.ID == id })
		}
		if has("rmp_hf") != c.us || has("seveso_h1_hf_lower") != c.eur {
			t.Errorf("%q: %v %v", c.where, has("rmp_hf"), has("seveso_h1_hf_lower"))
		}
	}
}

// On the same day needs add up; else the largest stands.
func TestHoodOnOneDay(t *testing.T) {
	cases := []route.Case{caseAt(t, "a.yaml", bench("30 wt%"), "hood: {flow: 600 (500 to 800) m3/h}\n"),
		caseAt(t, "b.yaml", bench("48 wt%"), "hood: {flow: 600 (500 to 800) m3/h}\n")}
	h := holdings(t, cases...)
	one, err := scaling.Stock(cases, false, 1)
	if err != nil {
		t.Fatal(err)
	}
	a, b := h.Hood.Routes[0].Dilution.V, h.Hood.Routes[1].Dilution.V
	if !(a > 0) || !(b > 0) || h.Hood.Dilution.V != a+b || one.Hood.Dilution.V != max(a, b) {
		t.Errorf("%g and %g: %v, %v", a, b, h.Hood.Dilution, one.Hood.Dilution)
	}
	if h.Hood.Flow.V != 500 || !close(h.Hood.DilutionShare.V, (a+b)/500, 1e-12) {
		t.Errorf("%v of %v", h.Hood.DilutionShare, h.Hood.Flow)
	}
}

// What one route does not tell, the sum does not know, whichever of the two
// ways it is formed.
func TestUnknownNeedStaysUnknown(t *testing.T) {
	odd := strings.Replace(bench("48 wt%"), "phase: Ti3AlC2", "phase: Ti2PbC", 1)
	for _, sameDay := range []bool{true, false} {
		h, err := scaling.Stock([]route.Case{caseAt(t, "a.yaml", bench("48 wt%"), ""), caseAt(t, "b.yaml", odd, "")},
			sameDay, 2)
		if err != nil {
			t.Fatal(err)
		}
		if h.Hood.Routes[0].Dilution.Unknown() || !h.Hood.Dilution.Unknown() || len(h.Hood.Dilution.Missing()) == 0 ||
			!h.Hood.DilutionShare.Unknown() {
			t.Errorf("%v", h.Hood.Dilution)
		}
	}
}

// A limit of the site on what is held stands beside the published ones, and one
// on the share is stricter than the whole.
func TestLocalLimitsCount(t *testing.T) {
	c := caseAt(t, "a.yaml", bench("48 wt%"), "jurisdiction: us\nstock:\n  - {substance: HF, strength: 50 wt%, "+
		"mass: 20 kg}\n")
	if x := share(t, holding(t, holdings(t, c), hydrofluoric), "epcra_hf"); x.Verdict != figure.Within {
		t.Errorf("10 kg of 45.4 kg: %s", x.Verdict)
	}
	c.Limits = c.Limits.With(&limit.Set{Limits: []limit.Limit{
		{Key: limit.Named(limit.Local, "house"), Quantity: "stock.mass", Agent: "hf", Label: "house rule", Value: 8,
			Unit: "kg", Document: "house"},
		{Key: limit.Named(limit.Local, "fifth"), Quantity: "stock.share", Label: "a fifth", Value: 0.2, Unit: "1",
			Document: "house"},
	}})
	hf := holding(t, holdings(t, c), hydrofluoric)
	if x := share(t, hf, "house"); x.Verdict != figure.Exceeds || !close(x.Ratio.V, 10./8, 1e-12) {
		t.Errorf("10 kg of 8 kg: %v %s", x.Ratio, x.Verdict)
	}
	if x := share(t, hf, "epcra_hf"); x.Verdict != figure.Exceeds {
		t.Errorf("10 kg of a fifth of 45.4 kg: %s", x.Verdict)
	}
}

// Every threshold is of a substance of the library, of a known way to count,
// and above zero.
func TestThresholdTable(t *testing.T) {
	seen := map[string]bool{}
	for _, x := range stock.Thresholds() {
		if seen[x.ID] || !(x.Limit > 0) || x.Least < 0 || x.Least > 100 || x.Document == "" || x.Edition == "" ||
			!slices.Contains([]string{"pure", "mixture", "release"}, x.Counts) ||
			!slices.Contains([]string{"read", "two-sources", "memory"}, x.Status) || len(x.Jurisdictions) == 0 {
			t.Errorf("%+v", x)
		}
		seen[x.ID] = true
	}
	if len(seen) < 20 {
		t.Errorf("%d thresholds", len(seen))
	}
}

func BenchmarkStock500(b *testing.B) {
	var cases []route.Case
	for i := range 500 {
		cases = append(cases, caseAt(b, fmt.Sprintf("r%03d.yaml", i), bench("48 wt%"), ""))
	}
	for b.Loop() {
		if _, err := scaling.Stock(cases, true, 2); err != nil {
			b.Fatal(err)
		}
	}
}

// All fluoride as HF, by hand: 51.48 g of LiF x 20.006/25.939 is what a route of
// the demonstration's recipe takes; a litre of 48 wt% acid at 1.150 to 1.160 kg/L
// holds 0.552 to 0.557 kg.
func TestFluorideAsHF(t *testing.T) {
	lif := "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n  pot: {kind: beaker, closure: " +
		"open, capacity: 1 L}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: lithium fluoride, mass: 51.48 g}, {substance: water, volume: " +
		"500 mL}]}\n"
	acid := strings.Replace(lif, "{substance: lithium fluoride, mass: 51.48 g}",
		"{substance: hydrofluoric acid, strength: 48 wt%, volume: 1 L}", 1)
	h, err := scaling.Stock([]route.Case{newCase(t, lif), newCase(t, acid)}, true, 1)
	if err != nil {
		t.Fatal(err)
	}
	x, there := h.AsHF()
	if want := 0.05148*20.006/25.939 + 0.5545; !there || !nearly.To(x.Runs.Mid.V, want, 0.005) {
		t.Errorf("%v %+v, want %g kg", there, x.Runs.Mid, want)
	}
	if !x.Stock.Mid.Unknown() {
		t.Errorf("a stock nobody stated is %g kg", x.Stock.Mid.V)
	}
}

// Two substances that are not held and of which nobody wrote a formula are two, and
// how much of each is its own.
func TestUnheldSubstancesAreNotAddedTogether(t *testing.T) {
	text := strings.Replace(bench("48 wt%"), "steps:\n", "steps:\n"+
		"  - {do: charge, in: pot, what: [{substance: alphite, not_held: true, mass: 1 g}, "+
		"{substance: betite, not_held: true, mass: 2 g}], temperature: 20 degC}\n", 1)
	h := holdings(t, caseAt(t, "a.yaml", text, ""))
	ids := map[string]string{}
	for i := range h.Substances {
		x := &h.Substances[i]
		if was, there := ids[x.ID().String()]; there {
			t.Errorf("%s and %s are both %s", was, x.Name, x.ID())
		}
		ids[x.ID().String()] = x.Name
	}
	for _, name := range []string{"alphite", "betite"} {
		if ids["stock.mass@x_"+name] != name {
			t.Errorf("%s is not told apart: %v", name, ids)
		}
	}
}

// Waste of several routes in a container that they call alike meets: bleach comes to acid and
// gives chlorine, nitric acid to a solvent (lists of incompatible pairs and two incident reports,
// in the rows of the table), acid to what was neutralised with carbonate; a substance that nobody
// holds is not known. Two of a kind do not, nor does what goes into another container, and
// what a route brings together by itself is told in its own review.
func TestWasteOfSeveralRoutesMeets(t *testing.T) {
	leaves := func(into string, what ...string) string {
		yaml := "route: etchbound/1\ntitle: rest\nbasis: {status: invented}\nplaces:\n" +
			"  pot: {kind: beaker, material: HDPE, closure: open, capacity: 1 L}\n" +
			"  " + into + ": {kind: drum, material: HDPE, closure: vented, capacity: 9 L, held_before: empty}\nsteps:\n" +
			"  - {do: charge, in: pot, what: [" + what[0] + "], temperature: 20 degC}\n" +
			"  - {do: collect, in: pot, into: " + into + "}\n"
		if len(what) > 1 {
			yaml += "  - {do: neutralise, in: " + into + ", what: [" + what[1] + "], over: 10 min, temperature: 20 degC}\n"
		}
		return yaml
	}
	const acid, bleach = "{substance: hydrochloric acid, strength: 10 wt%, volume: 50 mL}",
		"{substance: water, volume: 50 mL}, {substance: sodium hypochlorite, mass: 2 g}"
	const nitric, solvent = "{substance: nitric acid, strength: 30 wt%, volume: 50 mL}",
		"{substance: isopropanol, volume: 50 mL}"
	const soda, odd = "{substance: sodium carbonate, mass: 10 g}", "{substance: odd salt, not_held: true, mass: 1 g}"
	for _, row := range []struct {
		name, one, other, pair string // "" where nothing meets
		unknown                bool
	}{
		{"bleach and acid", leaves("drum", acid), leaves("drum", bleach), "hypochlorite_acid", false},
		{"apart", leaves("drum", acid), leaves("can", bleach), "", false},
		{"nitric acid and solvent", leaves("drum", nitric), leaves("drum", solvent), "nitric_organic", false},
		{"acid twice", leaves("drum", acid), leaves("drum", acid), "", false},
		{"acid on what was neutralised", leaves("drum", acid), leaves("drum", acid, soda), "carbonate_acid", false},
		{"neutralised twice", leaves("drum", acid, soda), leaves("drum", acid, soda), "", false},
		{"nobody knows", leaves("drum", acid), leaves("drum", odd), "not_held", true},
	} {
		h := holdings(t, caseAt(t, "a.yaml", row.one, ""), caseAt(t, "b.yaml", row.other, ""))
		if row.pair == "" {
			if len(h.Mixed) > 0 {
				t.Errorf("%s: %+v", row.name, h.Mixed)
			}
			continue
		}
		i := slices.IndexFunc(h.Mixed, func(m meeting.Mixed) bool { return m.ID == row.pair })
		if i < 0 || h.Mixed[i].Unknown != row.unknown || len(h.Mixed[i].One)+len(h.Mixed[i].Other) != 2 {
			t.Errorf("%s: %+v", row.name, h.Mixed)
		}
	}
}
