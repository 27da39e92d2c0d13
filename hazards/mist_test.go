package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/verdict"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

// lead is a cell of two amperes for an hour in a litre of 18 wt% sulfuric acid.
const lead = head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\n" +
	"places: {pot: {kind: vessel, material: PTFE, capacity: 2 L, closure: open}}\nsteps:\n" +
	"  - {do: charge, in: pot, what: [{substance: sulfuric acid, strength: 18 wt%, volume: 1 L}, precursor], " +
	"temperature: 20 degC}\n  - {do: electrolyse, in: pot, current: 2 A, time: 1 h, temperature: 20 degC}\n"

// Two amperes give 0.0373 mol of hydrogen an hour and half as much oxygen, 22.8 mL/min. At
// 0.1 mL of liquor a litre of gas that is 0.00228 mL/min of 0.203 g of sulfuric acid a mL:
// 0.46 mg/min (by hand; an ampere-hour of hard chromium plating throws up 7.8 mg of chromium of 130 g/L, 0.06 mL, with
// 0.6 L of gas).
func TestBubblesThrowUpAcid(t *testing.T) {
	site := *demoSite(t)
	site.Hood, site.Stock = nil, nil
	site.RoomVolume, site.RoomFlow = quantity.Of(30, "m3"), quantity.Of(180, "m3/h")
	for _, c := range []struct {
		acid, agent string
		want        float64 // mg/min
	}{
		{"sulfuric acid, strength: 18 wt%", "sulfuric_acid", 0.463},
		{"phosphoric acid, strength: 18 wt%", "phosphoric_acid", 0.45},
		{"hydrochloric acid, strength: 10 wt%", "hcl", 0.239},
	} {
		k := newCase(t, load(t, strings.Replace(lead, "sulfuric acid, strength: 18 wt%", c.acid, 1)))
		k.Site = &site
		figs := byID(hazards.Assess(k, nil).Figures)
		f := figs["air.mist@2/"+c.agent]
		if !nearly.Share(f.Value.V, c.want, 0.04) {
			t.Errorf("%s: %v, want %g mg/min", c.agent, f.Value, c.want)
			continue
		}
		mol := f.Value.V / 60000 / map[string]float64{"sulfuric_acid": 98.079, "phosphoric_acid": 97.994,
			"hcl": 36.461}[c.agent]
		ppm := 1e6 * mol * 24.4654e-3 * (3600/(180*0.3) + 60./5)
		if g := figs["air.breathing_zone@2/"+c.agent+":mist"]; g == nil || !nearly.Share(g.Value.V, ppm, 1e-3) {
			t.Errorf("%s: %v, want %g ppm", c.agent, g, ppm)
		}
		for id, f := range figs { // a current gives its gas evenly, for an hour
			if by := f.Case.Over; by > 0 && f.Place == figure.Step(2) && f.Agent == c.agent &&
				f.Case.Branch == figure.Mist && !nearly.Share(f.Value.V, ppm*min(1, 60/by), 1e-3) {
				t.Errorf("%s: %v, want %g ppm", id, f.Value, ppm*min(1, 60/by))
			}
		}
	}
}

// Drops come no longer than gas does: over eight hours they are at their most for as long as all
// the gas of the powder would take at its largest flow, and not for all of a long hold.
func TestDropsComeNoLongerThanGas(t *testing.T) {
	k := newCase(t, load(t, head+"precursor: {phase: Ti3AlC2, mass: 1 g, "+pure+`}
places: {pot: {kind: beaker, material: PTFE, capacity: 250 mL, closure: open}}
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 20 wt%, volume: 50 mL}], temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 5 min, temperature: 20 degC}
  - {do: hold, in: pot, time: 40 h, temperature: 20 degC}
`))
	k.Site = demoSite(t)
	figs := byID(hazards.Assess(k, nil).Figures)
	at, mean := figs["air.breathing_zone@3/hf:mist"], figs["air.breathing_zone@3/hf:mist,over_480_min"]
	all, flow := figs["gas.hydrogen.total"], 0.0
	for _, law := range []string{"self_accelerating", "early_peak"} {
		flow = max(flow, figs["gas.hydrogen.peak_rate.after_addition@3:"+law].Value.V)
	}
	minutes := all.Value.V / flow // L over L/min
	if want := at.Value.V * min(1, minutes/480); !nearly.Share(mean.Value.V, want, 1e-6) {
		t.Errorf("%v ppm, by hand %g for %g min of 480", mean.Value, want, minutes)
	}
}

// Droplets of sulfuric acid are held against its limits and stop work; without gas, or shut,
// there are none.
func TestMistOfSulfuricAcidStopsWork(t *testing.T) {
	long.NotShort(t)
	site := *demoSite(t)
	site.Hood = nil
	for yaml, want := range map[string]bool{lead: true,
		strings.Replace(lead, "closure: open", "closure: closed", 1):          false,
		bottle("{substance: sulfuric acid, strength: 18 wt%, volume: 10 mL}"): false} {
		c := newCase(t, load(t, yaml))
		c.Site = &site
		rv := must(t, c)
		stops := false
		for _, h := range rv.Holds {
			stops = stops || h.ID == "acid_mist"
		}
		exceeds := verdicts(&rv)["air.breathing_zone@2/sulfuric_acid:mist,over_480_min+eu_sulfuric_acid_twa"] == exceeds
		if stops != want || exceeds != want {
			t.Errorf("a hold point %v, over its limit %v, want %v: %s", stops, exceeds, want, yaml)
		}
	}
}

// A probe throws up drops that nobody counts: what it throws is unknown with what settles it
// and stops work in that step, in acid and in an organic base; a closed vessel, a bath or
// water throws none (common practice: probes are run in a box whose air is drawn off).
func TestAProbeThrowsUpDrops(t *testing.T) {
	site := *demoSite(t)
	site.Hood = nil
	const acid, base = "sulfuric acid, strength: 18 wt%", "TMAOH, strength: 5 wt%"
	for _, c := range []struct {
		in, step, closure string
		mist, stops       bool
	}{
		{acid, "power: 50 W", "open", true, true}, {acid, "power: 50 W", "closed", false, false},
		{acid, "wetted: [{what: sonicator tip, material: titanium}]", "vented", true, true},
		{acid, "power: 50 W, wetted: [{what: sonicator bath, material: PTFE}]", "open", false, false},
		{base, "power: 50 W", "open", false, true}, {"water", "power: 50 W", "open", false, false},
	} {
		text := strings.NewReplacer("sulfuric acid, strength: 18 wt%", c.in, ", precursor]", "]", "closure: open",
			"closure: "+c.closure, "electrolyse, in: pot, current: 2 A", "sonicate, in: pot, "+c.step).Replace(lead)
		k := newCase(t, load(t, text))
		k.Site = &site
		a := hazards.Assess(k, nil)
		f := byID(a.Figures)["air.mist@2/sulfuric_acid"]
		if (f != nil) != c.mist || f != nil && (!f.Value.Unknown() || len(f.Value.Missing()) == 0) {
			t.Errorf("%+v: drops %+v", c, f)
		}
		stops := slices.ContainsFunc(verdict.Holds(k.Route, &a.Walk, nil, nil), func(h verdict.Hold) bool {
			return h.ID == "acid_mist" && slices.Equal(h.Places, []figure.Place{figure.Step(2)})
		})
		if stops != c.stops {
			t.Errorf("%+v: stops %v", c, stops)
		}
	}
}

// A person breathes vapour and mist of the same acid together, in what they come to on
// average and in what acts alike; and a scrubber takes up the drops: 0.463 mg/min of sulfuric
// acid for an hour are 0.283 mmol, of two bases each.
func TestMistCountsBesideVapour(t *testing.T) {
	site := *demoSite(t)
	site.Hood, site.Stock = nil, nil
	k := newCase(t, load(t, strings.Replace(lead, "sulfuric acid, strength: 18 wt%", "hydrofluoric acid, "+
		"strength: 10 wt%", 1)))
	k.Site = &site
	figs := byID(hazards.Assess(k, nil).Figures)
	vapour, mist := figs["air.breathing_zone@2/hf"], figs["air.breathing_zone@2/hf:mist"]
	mean, alike := figs["air.time_average/hf:over_15_min"], figs["air.additive@2"]
	if vapour == nil || mist == nil || mean == nil || alike == nil {
		t.Fatal(vapour, mist, mean, alike)
	}
	if want := vapour.Value.V + mist.Value.V; !nearly.Share(mean.Value.V, want, 1e-6) {
		t.Errorf("over 15 min %v, want %g ppm", mean.Value, want)
	}
	// 2 ppm is the ceiling of hydrogen fluoride that holds beside the limit over 15 minutes.
	if want := (vapour.Value.V + mist.Value.V) / 2; !nearly.Share(alike.Value.V, want, 1e-6) {
		t.Errorf("%v of the limits, want %g", alike.Value, want)
	}
	trap := strings.Replace(strings.Replace(lead, "closure: open}", "closure: vented, scrubber: trap}, "+
		"trap: {kind: scrubber, material: HDPE, capacity: 500 mL, closure: vented}", 1), "steps:\n", "steps:\n"+trapped, 1)
	figs = byID(hazards.Assess(newCase(t, load(t, trap)), nil).Figures)
	if f := figs["air.scrubber.taken@trap"]; f == nil || !nearly.Share(f.Value.V, 2*0.463*60/98.079/1000, 0.04) {
		t.Errorf("the scrubber takes %+v", f)
	}
}
