package campaign_test

import (
	"math"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/scaling/campaign"
	"etchbound/scaling/ends"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

const small = `route: etchbound/1
title: one gram
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}
places:
  etch: {kind: vessel, material: PTFE, lid_material: PTFE, capacity: 100 mL, closure: vented, vent: 6 mm,
    cooling: {kind: ice_bath, ice: 1 kg}}
  drum: {kind: drum, material: HDPE, capacity: 200 mL, closure: vented, vent: 6 mm, batches: 4}
steps:
  - do: charge
    in: etch
    what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}]
    temperature: 5 degC
    over: 30 min
    attended: true
  - {do: add, in: etch, what: [precursor], over: 30 min, temperature: 5 degC, attended: true}
  - {do: hold, in: etch, time: 20 h, temperature: 20 degC, attended: false}
  - {do: decant, in: etch, into: drum, time: 1 h, attended: true}
`

func reviewed(t *testing.T) hazards.Review {
	t.Helper()
	c := bench.CaseOf(t, small)
	c.Brief = true
	r, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func asked() campaign.Asked { return campaign.Asked{Batches: 12, Hours: 40, Weeks: 40, Kept: 2} }

// flow is what a batch takes or leaves of a kind.
func flow(c *campaign.Campaign, key, name string) ends.Two {
	for i := range c.Flows {
		if f := &c.Flows[i]; f.Key == key && (name == "" || f.Name == name) {
			return f.Batch
		}
	}
	return ends.Two{Best: math.NaN(), Most: math.NaN()}
}

// By hand: the vessel is taken for 22 h, 168/22 = 7.6 times a week, and people for 2 h, 20
// times; 20 mL of 10 wt% acid (20.7 g) hold 2.07 g of HF; all 20 mL at most come to a drum of
// which 150 mL are filled; 12 g are two batches of 6 g, each with six times the fluoride.
func TestACampaignByHand(t *testing.T) {
	r := reviewed(t)
	a := asked()
	a.Sizes = []quantity.Value{quantity.Of(6, "g", quantity.Mass)}
	c, err := campaign.Of(&r, a)
	if err != nil {
		t.Fatal(err)
	}
	if c.AtMost != 7 || c.Week != 7 || !c.Fits || c.Unknown != nil || c.Occupied[c.Busiest].Place != "etch" {
		t.Errorf("%g a week, counted by %g, fits %v, without a time %v", c.AtMost, c.Week, c.Fits, c.Unknown)
	}
	if !nearly.Share(c.People.Best, 2, 1e-12) || c.ByPeople != (ends.Two{Best: 20, Most: 20}) {
		t.Errorf("people: %v h, %v batches", c.People, c.ByPeople)
	}
	if hf := flow(&c, "reagent", "hydrofluoric acid"); !nearly.Share(hf.Best, 2.07e-3, 0.01) {
		t.Errorf("%v kg of hydrofluoric acid", hf)
	}
	d := &c.Filled[0]
	if !(d.Litres.Most > 0.015 && d.Litres.Most <= 0.021) || !(d.Holds == 0.15 || d.Holds == 0.1) {
		t.Errorf("drum: %+v", d)
	}
	if n := d.Containers(12).Most; n != 3 { // four batches each, though 12 x 21 mL are not two drums full
		t.Errorf("%g drums", n)
	}
	if d.Batches = 0; d.Containers(12).Most != math.Ceil(12*d.Litres.Most/d.Holds) {
		t.Errorf("%g drums of which nobody says how many batches they take", d.Containers(12).Most)
	}
	one, six := &c.Sizes[0], &c.Sizes[1]
	if one.Batches != 12 || six.Batches != 2 || !nearly.Share(six.HF.Most, 6*one.HF.Most, 1e-6) ||
		!nearly.Share(six.Hours.Best, 4, 1e-9) || six.Handlings*6 != one.Handlings {
		t.Errorf("sizes: %+v, %+v", one, six)
	}
	unplanned(t, &r)
}

// What is planned over the bound does not fit; a step without a time leaves a bound and is
// named; steps of which nobody says that they are watched are the dangerous end of people's
// hours; and without any time no week is known, nor what it takes.
func unplanned(t *testing.T, r *hazards.Review) {
	t.Helper()
	with := func(change func(x *hazards.Review, a *campaign.Asked)) campaign.Campaign {
		x, a := *r, asked()
		x.Case.Route = r.Case.Route.Copy()
		x.Case.Route.Precursor = nil // no other sizes
		change(&x, &a)
		c, err := campaign.Of(&x, a)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	if c := with(func(_ *hazards.Review, a *campaign.Asked) { a.PerWeek = 8 }); c.Fits || c.Week != 8 {
		t.Errorf("eight a week fit: %v, counted by %g", c.Fits, c.Week)
	}
	c := with(func(x *hazards.Review, _ *campaign.Asked) {
		x.Case.Route.Steps[3].Time = quantity.Value{}
		x.Case.Route.Steps[2].Attended = nil
	})
	if len(c.Unknown) != 1 || c.Unknown[0] != 4 || !c.Occupied[0].Unknown || !(c.AtMost == 8) || !(c.People.Most > 20) {
		t.Errorf("a time left out: without one %v, %g a week, people %v", c.Unknown, c.AtMost, c.People)
	}
	c = with(func(x *hazards.Review, _ *campaign.Asked) {
		for i := range x.Case.Route.Steps {
			x.Case.Route.Steps[i].Time, x.Case.Route.Steps[i].Over = quantity.Value{}, quantity.Value{}
		}
	})
	if !math.IsNaN(c.AtMost) || !math.IsNaN(c.Week) || len(c.Unknown) != 4 {
		t.Errorf("no time at all: %g a week, %v", c.AtMost, c.Unknown)
	}
	for i := range c.Needed {
		if x := &c.Needed[i]; x.Threshold != nil && !math.IsNaN(x.Share.Most) {
			t.Errorf("no time at all: %s is %v of its threshold", x.Name, x.Share)
		}
	}
	c = with(func(x *hazards.Review, _ *campaign.Asked) { x.Figures = x.Figures[:0:0] })
	if d := c.Filled[0]; !math.IsNaN(d.Litres.Most) || d.Missing == nil {
		t.Errorf("a drum of which nothing is known: %+v", d)
	}
	c = with(func(x *hazards.Review, _ *campaign.Asked) { x.Findings = []figure.Finding{} })
	if d := c.Filled[0]; d.Holds != 0.1 {
		t.Errorf("a drum that nobody judged is filled to %g L", d.Holds)
	}
}
