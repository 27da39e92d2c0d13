package reports

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/material"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/doubt"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
	"etchbound/schemas/quantity"
)

const hostileTitle = "<script>alert(1)</script> | **x** \n # not a heading"

const hostileProse = "Etch for the *bench* course.\n\n# A heading of the writer\n\n<img " +
	"src=\"http://example.invalid/a.png\">\n" +
	"![picture](http://example.invalid/b.png) and [a link](javascript:alert(2)) | pipe\n\n- one\n- two " +
	"<b>bold</b>\n\n```\n<script>x</script>\n```\n"

// fixture is a review made by hand: numbers of our own invention, chosen to
// exercise the writers and nothing else.
func fixture() hazards.Review {
	s := working.NewSheet()
	m := working.Given("m", "g", 1, "precursor.mass")
	molar := working.Datum("M", "g/mol", 194.6, working.Known, "weight.sum.Ti3AlC2")
	heat := working.Datum("q", "kJ/mol", 760, working.Estimated, "etch_heat.Ti3AlC2")
	n := s.Line("n", "mol", "m/M", 1/194.6, m, molar)
	q := s.Line("Q", "kJ", "n*q", 760/194.6, n, heat)
	c := s.Table("C", "kJ/K", "heat_capacity.hcl", 0.0618, working.Given("w", "1", 0.283, "steps[0].what[0].strength"))
	rise := s.Line("dT", "K", "Q/C", 760/194.6/0.0618, q, c)
	hf := s.Keep(working.Given("m_HF", "g", 1.2340001, "steps[0].what[1].mass"))
	twice := s.Sum("V", "L", s.Line("V1", "L", "n*24.4654*3", 3*24.4654/194.6, n), s.Line("V2", "L", "n*0", 0, n))
	lost := s.Line("P", "kPa gauge", "V/C_gas", math.NaN(), twice,
		working.Absent("C_gas", "L", working.Lacks(working.NotGiven, "places.waste_bottle.capacity")))
	return hazards.Review{
		Case: fixtureCase(), Sheet: s,
		Figures: []figure.Figure{
			ofRoute(with3(figure.Figure{ID: figure.ID{Quantity: "heat.adiabatic_rise", Place: figure.Step(3)},
				Conditions: phrase.As("all heat stays in the liquor")}, rise, 56.871, 69.304)),
			with3(figure.Figure{ID: figure.ID{Quantity: "heat.adiabatic_rise", Place: figure.Step(3)},
				Conditions: phrase.As("all heat stays in the liquor")}, rise, 56.871, 69.304),
			with3(figure.Figure{ID: figure.ID{Quantity: "heat.mtsr", Place: figure.Step(3), Case: figure.By("accumulated")}},
				rise, 91.87, 104.3),
			with3(figure.Figure{ID: figure.ID{Quantity: "heat.mtsr", Place: figure.Step(3)}}, rise, 91.87, 104.3),
			with3(figure.Figure{ID: figure.ID{Quantity: "heat.boiling_point", Place: figure.Step(3)}},
				working.Datum("T_b", "degC", 103.6, working.Bound, "boil"), 101.6, 105.6),
			with3(figure.Figure{ID: figure.ID{Quantity: "gas.hydrogen.total"}}, twice, 0.3143, 0.4401),
			with3(figure.Figure{ID: figure.ID{Quantity: "gas.closed.pressure", Place: figure.At("waste_bottle")}}, lost,
				math.NaN(), math.NaN()),
			ofRoute(with3(figure.Figure{ID: figure.ID{Quantity: "fluoride.hf_equivalent", Place: figure.Step(1)}}, hf, 1.234,
				1.234)),
			with3(figure.Figure{ID: figure.ID{Quantity: "fluoride.hf_equivalent", Place: figure.Step(1)}}, hf, 1.234, 1.234),
			ofRoute(with3(figure.Figure{ID: figure.ID{Quantity: "fluoride.hf_concentration", Place: figure.Step(1)}},
				working.Given("c", "mol/L", 3.085, "x"), 3.085, 3.085)),
			with3(figure.Figure{ID: figure.ID{Quantity: "fluoride.hf_concentration", Place: figure.Step(1)}},
				working.Given("c", "mol/L", 3.085, "x"), 3.085, 3.085),
			with3(figure.Figure{ID: figure.ID{Quantity: "fluoride.hf_strength", Place: figure.Step(1)}},
				working.Given("w", "wt%", 4.91, "x"), 4.91, 4.91),
			with3(figure.Figure{ID: figure.ID{Quantity: "account.error"}}, working.Given("e", "1", 3.1e-16, "x"), 3.1e-16,
				3.1e-16),
			with3(figure.Figure{ID: figure.ID{Quantity: "neutralise.heat", Place: figure.Waste, Agent: "calcium_hydroxide"}},
				working.Given("Q", "kJ", 12.345678, "x"), 12.1, 13),
		},
		Findings: fixtureFindings(),
		Walk:     fixtureWalk(),
		Runs:     []vessel.Run{{Plan: vessel.Plan{Step: 3, Law: vessel.Accumulated}}},
		Used:     fixtureData(),
		Applied: []chemicals.Applied{{Override: chemicals.Override{ID: "wash.retained", Value: 5, Low: 4, High: 6,
			Unit: "mL/g", Source: "own weighing", At: "data[0]", From: "route"}, Old: 6, OldStatus: "assumed"}},
		Assumptions: []hazards.Assumption{{ID: "impurity", Text: "Impurities are not stated", Value: 0, Unit: "wt%",
			Status: "assumed",
			Moves:  []hazards.Move{{Figure: figure.ID{Quantity: "gas.hydrogen.total"}, From: 0.36, To: 0.44}}}},
		Doubts:  doubt.Counts{Memory: 2, Assumed: 1, Estimated: 3},
		Unknown: fixtureUnknown(),
		NotAssessed: []string{"air.saturated", "air.breathing_zone", "heat.peak_power.during_addition", "store.pressure",
			"dust.mass", "stock.mass", "store.shelf_life"},
		Warnings: []phrase.Phrase{phrase.As("hood not stated")},
		Holds:    fixtureHolds(),
	}
}

func with3(f figure.Figure, v working.Num, low, high float64) figure.Figure {
	f.Value = v
	f.SetRange(low, high)
	return f
}

// ofRoute repeats a figure for the whole route.
func ofRoute(f figure.Figure) figure.Figure { return f.RepeatedAs(figure.ID{Quantity: f.Quantity}) }

// fixtureFindings is more than page 1 has room for, with texts at the length
// that fills it.
func fixtureWalk() process.Walk {
	return process.Walk{
		Facts: []process.Fact{{ID: "hf_formed", Step: 1, Says: phrase.As("HF is formed where LiF meets the acid")}},
		Contacts: []process.Contact{
			{Place: "etch", Part: "wall", Material: "borosilicate glass", Medium: "hf", Step: 1,
				Stand: material.Stand{Verdict: material.No,
					Note:   "fluoride with acid dissolves it; the wall thins and leaks, SiF4 forms",
					Source: "two institutional HF guidance pages", Status: "two-sources"}},
			{Place: "drum", Part: "lid", Medium: "hf", Step: 2, Stand: material.Stand{Verdict: material.Unknown}},
		},
		Account: []process.Balance{
			{Element: "Al", In: 0.00514, Out: map[string]float64{"etch": 0.00504, "waste_bottle": 0.0001, "gas": 1e-18},
				Error: 2e-16},
			{Element: "H", In: 0.4, Out: map[string]float64{"gas": 0.03, "etch": 0.37}, Error: 0},
		},
	}
}

func fixtureData() []chemicals.Datum {
	return []chemicals.Datum{
		{ID: "etch_heat.Ti3AlC2", Symbol: "q", Value: 760, Low: 685, High: 835, Unit: "kJ/mol", Source: "hess",
			Status: "computed", Shape: "normal"},
		{ID: "termination.O", Symbol: "t", Value: 1, Low: 0, High: 2, Unit: "mol/mol", Status: "memory",
			Note: "=cmd|' /C calc'!A0"},
		{ID: "wash.retained", Symbol: "r", Value: 5, Low: math.NaN(), High: math.NaN(), Unit: "mL/g", Status: "assumed",
			OverriddenBy: "route data[0]"},
	}
}

func fixtureFindings() []figure.Finding {
	ref := func(id string, v float64, unit string) limit.Limit {
		return limit.Limit{Key: limit.Named(limit.Review, id), Label: "allowed without rating and relief", Value: v,
			Unit: unit, Document: "Rule of this review",
			Section: "closed containers", Edition: "1", Status: "computed"}
	}
	return []figure.Finding{
		{Figure: figure.ID{Quantity: "gas.closed.pressure", Place: figure.At("waste_bottle")},
			Limit: ref("closed_zero", 0, "kPa gauge"), Verdict: figure.Exceeds, Margin: math.NaN(),
			Needs: []figure.Need{{Quantity: "gas.vent.bore_required", Value: 3.21, Unit: "mm",
				Says: phrase.As("a vent of this bore")}}, Says: phrase.As("closed without a rating | exceeds from the first gas")},
		{Figure: figure.ID{Quantity: "heat.mtsr", Place: figure.Step(3)}, Limit: ref("boiling", 103.6, "degC"),
			Verdict: figure.Near, Margin: 5.42},
		{Figure: figure.ID{Quantity: "heat.mtsr"}, Limit: ref("boiling", 103.6, "degC"), Verdict: figure.Near, Margin: 5.42},
		{Figure: figure.ID{Quantity: "heat.adiabatic_rise", Place: figure.Step(3)}, Limit: ref("rise_50", 50, "K"),
			Verdict: figure.Exceeds, Margin: -0.386},
		{Figure: figure.ID{Quantity: "gas.hydrogen.total"}, Limit: ref("bag", 1, "L"), Verdict: figure.Within, Margin: 0.56},
		{Figure: figure.ID{Quantity: "fluoride.hf_concentration", Place: figure.Step(1)},
			Limit: ref("corrosive_1", 1, "mol/L"), Verdict: figure.Exceeds, Margin: -2.085},
		{Figure: figure.ID{Quantity: "fluoride.hf_strength", Place: figure.Step(1)}, Limit: ref("cap_10", 10, "wt%"),
			Verdict: figure.Near, Margin: 0.509},
		{Figure: figure.ID{Quantity: "neutralise.heat", Place: figure.At("waste"), Agent: "calcium_hydroxide"},
			Limit: ref("heat", math.NaN(), "kJ"), Verdict: figure.UnknownVerdict, Margin: math.NaN()},
		{Figure: figure.ID{Quantity: "account.error"}, Limit: ref("account", 1e-9, "1"), Verdict: figure.Within, Margin: 1},
		{Figure: figure.ID{Quantity: "fluoride.hf_equivalent", Place: figure.Step(1)}, Limit: ref("kit", 5, "g as HF"),
			Verdict: figure.Within, Margin: 0.75},
	}
}

func fixtureHolds() []hazards.Hold {
	long := "Do not start before the extraction of the hood has been measured on the day, is at or above the flow " +
		"written in the site file, and the reading | was checked by a second person who signs for it here."
	var out []hazards.Hold
	for _, id := range []string{"hood", "vent", "gel", "second", "cooling", "waste", "sheet"} {
		out = append(out, hazards.Hold{ID: id, Says: phrase.As(long)})
	}
	return out
}

func fixtureUnknown() []hazards.UnknownItem {
	var out []hazards.UnknownItem
	for _, key := range []string{"etch", "tubes", "waste_bottle", "product", "drum"} {
		out = append(out, hazards.UnknownItem{Missing: working.Lacks("cooling_open", key),
			Figures: []figure.ID{{Quantity: "gas.closed.pressure", Place: figure.At("waste_bottle")}}})
	}
	return out
}

func fixtureCase() route.Case {
	of := quantity.Of
	yes, no := true, false
	ph := 6.0
	find := func(name string) *chemicals.Substance { s, _ := chemicals.Library().Find(name); return s }
	phase, err := chemicals.ParseFormula("Ti3AlC2")
	if err != nil {
		panic(err)
	}
	acid := find("hydrochloric acid")
	return route.Case{
		Store: chemicals.Base(),
		Limits: &limit.Set{Limits: []limit.Limit{{Key: limit.Named(limit.Review, "closed_zero"),
			Quantity: "gas.closed.pressure", Label: "allowed without rating and relief", Value: 0,
			Unit: "kPa gauge", Document: "Rule of this review", Edition: "1", Status: "computed"}},
			Notices: phrase.AsAll([]string{"local limit is less strict | both stand"})},
		Route: &route.Route{
			Name: "x.yaml", Title: hostileTitle, Date: "2026-11-25", Purpose: hostileProse, BatchText: "1 g",
			Digest: "0123456789abcdef0123456789abcdef",
			Basis: route.Basis{Status: "invented", Title: "A course of our own", Note: "Note with a | pipe and " +
				"<i>tags</i>."},
			Precursor: &route.Precursor{Phase: phase, Mass: of(1, "g")},
			Places: []route.Place{
				{Key: "etch", Kind: "beaker", Material: "borosilicate glass", Capacity: of(100, "mL"), Count: 1,
					Closure: route.Open, ClosureStated: true},
				{Key: "tube", Kind: "tube", Material: "polypropylene | natural", Capacity: of(50, "mL"), Count: 4},
				{Key: "waste_bottle", Kind: "bottle", Count: 1, Closure: route.Vented, ClosureStated: true},
			},
			Steps: []route.Step{
				{Number: 1, Do: "mix", In: "etch", What: []route.Material{{Substance: acid, Volume: of(20, "mL"),
					Strength: of(9, "mol/L")},
					{Substance: find("lithium fluoride"), Mass: of(1.6, "g")}}, Temperature: of(25, "degC", quantity.Temperature),
					Attended: &yes, Note: "Watch the | lid.\n<script>alert(3)</script>"},
				{Number: 2, Do: "cool", In: "etch", Temperature: of(5, "degC", quantity.Temperature), Time: of(30, "min")},
				{Number: 3, Do: "add", In: "etch", What: []route.Material{{Precursor: true}}, Over: of(10, "min"),
					Temperature: of(35, "degC", quantity.Temperature), Attended: &yes},
				{Number: 4, Do: "hold", In: "etch", Time: of(24, "h"), Temperature: of(35, "degC", quantity.Temperature),
					Attended: &no},
				{Number: 5, Do: "transfer", In: "etch", Into: "tube"},
				{Number: 6, Do: "wash", In: "tube", Into: "waste_bottle", TargetPH: &ph,
					What: []route.Material{{Substance: find("water"), Volume: of(40, "mL")}}},
			},
		},
	}
}
