package hazards_test

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// A batch brings 1 L to a container of 5 L: 20 %, so that two fill 40 % and three 60 %, where
// half is the most of what may still give gas (two waste pages) and three quarters of what
// does not. Whose batches nobody states, in a drum or in a bottle that takes waste, is unknown.
func TestWasteOfSeveralBatches(t *testing.T) {
	long.NotShort(t)
	for _, row := range []struct {
		kind, batches string
		fill          float64
		verdict       figure.Verdict
	}{
		{"drum", ", batches: 2, held_before: [acid waste]", 50, figure.Near},
		{"drum", ", batches: 3, held_before: [acid waste]", 70, figure.Exceeds},
		{"drum", ", batches: 1", 20, figure.Within},
		{"bottle", ", batches: 2", 40, figure.Within},
		{"drum", ", batches: 3", 60, figure.Exceeds},
		{"drum", "", 0, figure.UnknownVerdict},
		{"bottle", "", 0, figure.UnknownVerdict},
	} {
		r := load(t, fmt.Sprintf(`route: etchbound/1
title: waste
basis: {status: invented}
places:
  pot: {kind: beaker, closure: open, capacity: 2 L, material: HDPE}
  can: {kind: %s, closure: vented, capacity: 5 L, material: HDPE%s}
steps:
%s  - {do: charge, in: pot, what: [{substance: HF, strength: 5 wt%%, volume: 1 L}], temperature: 20 degC}
  - {do: collect, in: pot, into: can}
`, row.kind, row.batches, stood(row.batches)))
		c := newCase(t, r)
		c.Brief = true
		got := must(t, c)
		id, judged := figure.ID{Quantity: "vessel.piled", Place: figure.At("can")}, false
		for i := range got.Findings {
			f := &got.Findings[i]
			if f.Figure != id {
				continue
			}
			judged = true
			x := figure.NewSet(got.Figures).Get(id).High().V
			if f.Verdict != row.verdict || row.fill > 0 && !nearly.Share(x, row.fill, 0.01) {
				t.Errorf("%s%s: %g %%, %s, want %g, %s", row.kind, row.batches, x, f.Verdict, row.fill, row.verdict)
			}
		}
		if !judged {
			t.Errorf("%s%s: not judged", row.kind, row.batches)
		}
	}
}

// Ten washes of 100 mL fill a can of 5 L with the liquor and 1 L: how often it is washed has to
// be known to say how full it gets, and the first decant alone is no answer (by hand).
func TestWashesOfWhichNobodySaysHowMany(t *testing.T) {
	text := head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\nplaces:\n  pot: {kind: beaker, closure: open, " +
		"capacity: 1 L, material: HDPE}\n  can: {kind: drum, closure: vented, capacity: 5 L, material: HDPE, batches: 1}\n" +
		"steps:\n  - {do: charge, in: pot, what: [{substance: HF, strength: 10 wt%, volume: 100 mL}, precursor], " +
		"temperature: 20 degC}\n  - {do: wash, in: pot, into: can, what: [{substance: water, volume: 100 mL}]CYCLES}\n"
	for cycles, known := range map[string]bool{", cycles: 10": true, "": false, ", target_ph: 6, water: open_air": false} {
		c := newCase(t, load(t, strings.Replace(text, "CYCLES", cycles, 1)))
		c.Brief = true
		figs := byID(hazards.Assess(c, nil).Figures)
		for _, id := range []string{"vessel.content@can", "vessel.piled@can"} {
			if f := figs[id]; f == nil || f.Value.Unknown() == known || known && !nearly.Between(f.Value.V, 20, 23) {
				t.Errorf("%q: %s is %+v", cycles, id, f)
			}
		}
		if f := figs["vessel.content@pot"]; f == nil || f.Value.Unknown() {
			t.Errorf("%q: the pot is filled again each time: %+v", cycles, f)
		}
	}
}

// stood is half a litre of another route in a can that says what it held: there once.
func stood(says string) string {
	if !strings.Contains(says, "held_before") {
		return ""
	}
	return "  - {do: charge, in: can, what: [{substance: HF, strength: 5 wt%, volume: 500 mL}], temperature: 20 degC}\n"
}

// The flakes of 5 g (0.02569 mol), all etched and without oxygen on them, Ti3C2F1.8(OH)0.2, take
// up 5.8 water each to become oxide and give (0.2 + 11.6 - 1.8)/2 = 5.0 mol of hydrogen: 3.143 L a
// batch at 25 degC. Twenty of them bring 62.9 L, more than a quarter of the lower flammable limit
// of 5 m3 (50 L); fifteen bring 47.1 L, and four 12.6 L. Their liquor takes the room of the gas
// with it. Without the batches it is not known (by hand).
func TestGasOfSeveralBatchesOfWaste(t *testing.T) {
	long.Only(t)
	for _, row := range []struct {
		batches, cabinet string
		litres           float64
		verdict          figure.Verdict
	}{
		{", batches: 20", "room: {cabinet: 5 m3}", 62.9, figure.Exceeds},
		{", batches: 60", "room: {cabinet: 5 m3}", 188.6, figure.Exceeds}, // over the rim: no gas space, and no time
		{", batches: 15", "room: {cabinet: 5 m3}", 47.1, figure.Near},
		{", batches: 4", "room: {cabinet: 5 m3}", 12.57, figure.Within},
		{", batches: 20", "room: {cabinet: 0 L}", 62.9, figure.Within}, // there is no cabinet
		{", batches: 20", "", 62.9, figure.UnknownVerdict},             // nobody says
		{"", "room: {cabinet: 5 m3}", 0, figure.UnknownVerdict},
	} {
		r := load(t, fmt.Sprintf(`route: etchbound/1
title: waste
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 5 g, impurities: none (certificate)}
places:
  etch: {kind: bottle, material: PTFE, capacity: 500 mL, closure: vented}
  can: {kind: drum, closure: vented, capacity: 5 L, material: HDPE%s}
steps:
  - {do: charge, in: etch, what: [{substance: HF, strength: 20 wt%%, volume: 100 mL}], temperature: 20 degC}
  - {do: add, in: etch, what: precursor, over: 30 min, temperature: 25 degC}
  - {do: hold, in: etch, time: 2 h, temperature: 25 degC}
  - {do: collect, in: etch, into: can}
`, row.batches))
		site, problems, err := route.LoadSite("s.yaml", strings.NewReader("site: etchbound/1\ntitle: shed\n"+row.cabinet))
		if err != nil || site == nil {
			t.Fatalf("%v %v", err, problems)
		}
		c, err := route.NewCase(r, site, nil)
		if err != nil {
			t.Fatal(err)
		}
		c.Brief = true
		got := must(t, c)
		x := figure.NewSet(got.Figures).Get(figure.ID{Quantity: "gas.to_come", Place: figure.At("can")})
		if row.litres > 0 && !nearly.Share(x.High().V, row.litres, 0.01) || row.litres == 0 && !x.Danger().Unknown() {
			t.Errorf("%+v: up to %g L", row, x.High().V)
		}
		notLessThanNothing(t, &got, row.batches)
		verdict := figure.Within
		for i := range got.Findings {
			if f := &got.Findings[i]; f.Figure.Quantity == "gas.cabinet_share" && f.Figure.Place == figure.At("can") {
				verdict = f.Verdict
			}
		}
		if verdict != row.verdict {
			t.Errorf("%+v: %s", row, verdict)
		}
	}
}
