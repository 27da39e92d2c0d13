package scaling_test

import (
	"math"
	"strings"
	"sync"
	"testing"

	"etchbound/hazards/route"
	"etchbound/scaling"
	"etchbound/schemas/long"
	"etchbound/schemas/quantity"
)

const reviewed = `route: etchbound/1
title: check
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 2 g, impurities: none (certificate)}
places:
  pot: {kind: vessel, closure: vented, capacity: 500 mL, material: PTFE, vent: 6 mm, cooling: {kind: jacket, ` +
	`temperature: 0 degC, ua: 5 W/K, ` + flows + `}}
steps:
  - {do: charge, in: pot, what: [{substance: HF, strength: 10 wt%, volume: 100 mL}], temperature: 10 degC, ` +
	`attended: true}
  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 10 degC, attended: true}
  - {do: hold, in: pot, time: 24 h, temperature: 10 degC, attended: false}
`

// fired are the rules that a change of the text meets.
func fired(t *testing.T, site *route.Site, from, to string) map[string]bool {
	t.Helper()
	key := met{site, from, to}
	if out, ok := meets.Load(key); ok {
		return out.(map[string]bool)
	}
	a, b := newCase(t, reviewed), newCase(t, strings.Replace(reviewed, from, to, 1))
	a.Brief, b.Brief = true, true
	a.Site, b.Site = site, site
	c, err := scaling.TriggersOf(site).Compare(a, b)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]bool{}
	for _, x := range c.Fired {
		out[x.ID] = true
	}
	if from != to && len(c.Inputs) == 0 {
		t.Errorf("%q to %q: no input differs", from, to)
	}
	meets.Store(key, out)
	return out
}

// met is a change under the rules of a site, and meets the rules that each was found to
// meet. Nobody changes what he gets.
type met struct {
	site     *route.Site
	from, to string
}

var meets sync.Map

// The rules by the rows of their table: a change of 25 % or more (a rule that was
// read), so 2.0 to 2.5 g and not 2.49 g; the others as defined.
func TestTriggers(t *testing.T) {
	long.Only(t)
	type change struct {
		from, to, id string
		fires        bool
	}
	rows := []change{
		{"mass: 2 g", "mass: 2.5 g", "quantity", true}, {"mass: 2 g", "mass: 2.49 g", "quantity", false},
		// one matter once: a band that so much powder crosses is told with its amount
		{"mass: 2 g", "mass: 5 g", "mass_band", false}, {"mass: 2 g", "mass: 5 g", "proportion", false},
		{"mass: 2 g", "mass: 1 g", "proportion", true},
		{"mass: 2 g", "mass: 2.49 g", "proportion", false}, {"volume: 100 mL", "volume: 80 mL", "proportion", true},
		{"volume: 100 mL", "volume: 125 mL", "quantity", true}, {"strength: 10 wt%", "strength: 11 wt%", "strength", true},
		{"strength: 10 wt%", "strength: 10.9 wt%", "strength", false},
		{"volume: 100 mL", "mass: 103 g", "incomparable", true},
		{"closure: vented", "closure: open", "vessel", true},
		{"strength: 10 wt%", "strength: 12 wt%", "corrosive", false},
		{"capacity: 500 mL", "capacity: 600 mL", "vessel", true},
		{"substance: HF, strength: 10 wt%", "substance: HCl, strength: 10 wt%", "reagent", true},
		{"over: 10 min", "over: 8 min", "addition", true}, {"over: 10 min", "over: 9 min", "addition", false},
		{"over: 10 min", "over: 20 min", "addition", false},
		{"time: 24 h, temperature: 10 degC", "time: 24 h, temperature: 15 degC", "temperature", true},
		{"over: 10 min, temperature: 10 degC, attended: true", "over: 10 min, temperature: 10 degC, attended: false",
			"attendance", true},
		{"over: 10 min, temperature: 10 degC, attended: true", "over: 10 min, temperature: 10 degC", "attendance", true},
		{"  - {do: hold, in: pot,", "  - {do: cool, in: pot, temperature: 5 degC}\n  - {do: hold, in: pot,", "procedure",
			true},
		{"ua: 5 W/K", "ua: 0.1 W/K", "verdict", true}, {"vent: 6 mm, ", "", "unknown", true},
		{"strength: 10 wt%", "strength: 50 wt%", "strength_class", true},
		{"time: 24 h,", "time: 240 h,", "procedure", true}, {"time: 24 h,", "time: 25 h,", "procedure", false},
		{"time: 24 h, temperature: 10 degC", "time: 24 h, temperature: 10 degC, gas: argon", "procedure", true},
		{"over: 10 min,", "over: 10 min, not_above: 15 degC,", "incomparable", true},
	}
	for _, row := range long.Some(rows, 10, 3) {
		if got := fired(t, nil, row.from, row.to)[row.id]; got != row.fires {
			t.Errorf("%q to %q: %s fires %v, want %v", row.from, row.to, row.id, got, row.fires)
		}
	}
}

// What is only written otherwise is no change; what is worse fires where nothing had
// a verdict on it; and 100 g still belongs to the band below it (5 to 100 g and more
// than 100 g, as the form that was read has them).
func TestChangesOfWhatWasThere(t *testing.T) {
	long.Only(t)
	powder := func(grams string) string { return strings.Replace(reviewed, "mass: 2 g", "mass: "+grams, 1) }
	sized := strings.Replace(reviewed, "impurities: none", "particle_size: 38 um, impurities: none", 1)
	stopped := func(at string) string {
		return strings.Replace(reviewed, "over: 10 min,", "over: 10 min, not_above: "+at+",", 1)
	}
	breaks := func(at string) string {
		return strings.Replace(reviewed, "places:", "measured: {td24: "+at+"}\nplaces:", 1)
	}
	type change struct {
		name, was, is, id string
		fires             bool
	}
	scrubbed := func(strength string) string {
		return strings.Replace(strings.Replace(reviewed, "places:", "places:\n  trap: {kind: scrubber, material: HDPE, "+
			"capacity: 1 L, closure: vented}", 1), "steps:", "steps:\n  - {do: charge, in: trap, what: [{substance: "+
			"sodium hydroxide, strength: "+strength+", volume: 500 mL}]}", 1)
	}
	uncooled := strings.Replace(reviewed, ", cooling: {kind: jacket, temperature: 0 degC, ua: 5 W/K, "+flows+"}", "", 1)
	rows := []change{
		{"a weaker scrubber", scrubbed("1 mol/L"), scrubbed("0.2 mol/L"), "strength", true},
		{"a scrubber as strong", scrubbed("1 mol/L"), scrubbed("0.95 mol/L"), "strength", false},
		{"no cooling any more", reviewed, uncooled, "vessel", true},
		{"no cooling, one matter", reviewed, uncooled, "incomparable", false},
		{"a charge in two parts", reviewed, strings.Replace(reviewed, "[{substance: HF, strength: 10 wt%, volume: "+
			"100 mL}]", "[{substance: HF, strength: 10 wt%, volume: 60 mL}, {substance: HF, strength: 10 wt%, volume: "+
			"40 mL}]", 1), "", false},
		{"up to 100 g", powder("99 g"), powder("100 g"), "mass_band", false},
		{"above 100 g", powder("100 g"), powder("101 g"), "mass_band", true},
		{"finer powder", sized, strings.Replace(sized, "38 um", "5 um", 1), "reagent", true},
		{"stopped later", stopped("15 degC"), stopped("40 degC"), "temperature", true},
		{"not stopped", stopped("15 degC"), reviewed, "incomparable", true},
		{"decomposes sooner", breaks("250 degC"), breaks("60 degC"), "verdict", true},
		{"decomposes later", breaks("60 degC"), breaks("250 degC"), "verdict", false},
	}
	for _, row := range long.Some(rows, 9, 2) {
		a, b := newCase(t, row.was), newCase(t, row.is)
		a.Brief, b.Brief = true, true
		c, err := scaling.TriggersOf(nil).Compare(a, b)
		if err != nil {
			t.Fatal(err)
		}
		got := row.id == "" && len(c.Fired) > 0
		for _, x := range c.Fired {
			got = got || x.ID == row.id
		}
		if got != row.fires {
			t.Errorf("%s: %s fires %v, want %v: %+v", row.name, row.id, got, row.fires, c.Fired)
		}
	}
}

// A sample that grows with the batch is no change of its own, and one that does not is.
func TestASampleGrowsWithTheBatch(t *testing.T) {
	long.Only(t)
	sampled := func(ml string) string {
		return strings.Replace(strings.Replace(reviewed, "steps:", "  cup: {kind: beaker, closure: open, capacity: "+
			"100 mL}\nsteps:", 1)+
			"  - {do: sample, in: pot, into: cup, part: PART}\n", "PART", ml, 1)
	}
	for _, row := range []struct {
		was, is, batch string
		fires          bool
	}{{"10 mL", "12 mL", "2.4 g", false}, {"10 mL", "12 mL", "2 g", true}, {"10 %", "10 %", "2.4 g", false}} {
		a := newCase(t, sampled(row.was))
		b := newCase(t, strings.NewReplacer("mass: 2 g", "mass: "+row.batch, "volume: 100 mL",
			"volume: "+map[string]string{"2 g": "100 mL", "2.4 g": "120 mL"}[row.batch], "capacity: 500 mL",
			"capacity: "+map[string]string{"2 g": "500 mL", "2.4 g": "600 mL"}[row.batch]).Replace(sampled(row.is)))
		a.Brief, b.Brief = true, true
		c, err := scaling.TriggersOf(nil).Compare(a, b)
		if err != nil {
			t.Fatal(err)
		}
		got := false
		for _, x := range c.Fired {
			got = got || x.ID == "procedure"
		}
		if got != row.fires {
			t.Errorf("%+v: procedure fires %v: %+v", row, got, c.Fired)
		}
	}
}

// The same route twice meets no rule, and a site may set its own ratios.
func TestNothingFiresWhereNothingChanges(t *testing.T) {
	long.Only(t)
	if got := fired(t, nil, "mass: 2 g", "mass: 2 g"); len(got) != 0 {
		t.Errorf("%v", got)
	}
	lax := &route.Site{Triggers: route.Triggers{QuantityRatio: 1.5, StrengthRatio: 2, TimeRatio: 2,
		TemperatureChange: quantity.Of(20, "K", quantity.TemperatureDiff)}}
	if got := fired(t, lax, "mass: 2 g", "mass: 2.9 g"); got["quantity"] {
		t.Error("1.45 times fires a rule of 1.5")
	}
	quiet := &route.Site{Triggers: route.Triggers{QuantityRatio: math.NaN(), StrengthRatio: math.NaN(),
		TimeRatio: math.NaN(), Ignore: []string{"quantity", "proportion"},
		HFStrength: quantity.Of(20, "wt%"), MassBands: []quantity.Value{mass(2.5)}}}
	type change struct {
		site     *route.Site
		from, to string
		id       string
		fires    bool
		why      string
	}
	rows := []change{
		{quiet, "mass: 2 g", "mass: 2.6 g", "mass_band", true, "over a band of the site at 2.5 g"},
		{quiet, "mass: 2 g", "mass: 2.6 g", "quantity", false, "a rule that is ignored"},
		{quiet, "mass: 2 g", "mass: 2.6 g", "proportion", false, "a rule that is ignored"},
		{quiet, "mass: 2 g", "mass: 2.4 g", "mass_band", false, "below the band"},
		{quiet, "strength: 10 wt%", "strength: 21 wt%", "strength_class", true, "over 20 wt%"},
		{lax, "mass: 2 g", "mass: 3 g", "quantity", true, "1.5 times, a rule of 1.5"},
	}
	for _, row := range long.Some(rows, 6, 2) {
		if got := fired(t, row.site, row.from, row.to)[row.id]; got != row.fires {
			t.Errorf("%s: %s fires %v, want %v", row.why, row.id, got, row.fires)
		}
	}
}

// A committee form that was read asks from 1 mol/L on.
func TestCorrosiveFires(t *testing.T) {
	long.NotShort(t)
	weak := strings.Replace(reviewed, "volume: 100 mL}]", "volume: 100 mL}, {substance: HCl, strength: 0.95 mol/L, "+
		"volume: 10 mL}]", 1)
	a, b := newCase(t, weak), newCase(t, strings.Replace(weak, "0.95 mol/L", "1.0 mol/L", 1))
	a.Brief, b.Brief = true, true
	c, err := scaling.TriggersOf(nil).Compare(a, b)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Fired) == 0 || c.Fired[0].ID != "corrosive" {
		t.Errorf("%+v", c.Fired)
	}
}

// Things put together in another order.
func TestOrderFires(t *testing.T) {
	long.NotShort(t)
	two := strings.Replace(reviewed, "volume: 100 mL}]", "volume: 100 mL}, {substance: water, volume: 50 mL}]", 1)
	other := strings.Replace(reviewed, "[{substance: HF, strength: 10 wt%, volume: 100 mL}]",
		"[{substance: water, volume: 50 mL}, {substance: HF, strength: 10 wt%, volume: 100 mL}]", 1)
	a, b := newCase(t, two), newCase(t, other)
	a.Brief, b.Brief = true, true
	c, err := scaling.TriggersOf(nil).Compare(a, b)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Fired) != 1 || c.Fired[0].ID != "order" {
		t.Errorf("%+v", c.Fired)
	}
}
