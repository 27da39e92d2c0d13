package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// parted is powder that is etched, delaminated with base and drawn off into a bottle.
func parted(powder, acid, bottle string) string {
	return head + "precursor: {" + powder + "}\nplaces:\n" +
		"  pot: {kind: bottle, material: PTFE, closure: closed, capacity: 100 mL}\n" +
		"  drum: {kind: drum, material: HDPE, closure: vented, capacity: 5 L}\n" +
		"  store: {kind: bottle, material: HDPE, closure: closed" + bottle + "}\nsteps:\n" + charges(acid) + addsIt +
		"  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 60 mL}], cycles: 8}\n" +
		"  - {do: intercalate, in: pot, what: [{substance: TMAOH, strength: 2 wt%, volume: 10 mL}], time: 2 h, " +
		"temperature: 25 degC}\n" +
		"  - {do: centrifuge, in: pot, into: store, product: liquid}\n" +
		"  - {do: store, in: store, time: 30 d, temperature: 4 degC}\n"
}

// Of an acid that is not held nobody knows whether it etched before the base or in it: each
// figure stands once all the same, and no time that nobody knows is a number in its words.
func TestPartedFromWhatNobodyKnows(t *testing.T) {
	long.NotShort(t)
	rv := review(t, parted("phase: Ti3AlC2, mass: 1 g, "+pure,
		"{substance: an acid, formula: HX, not_held: true, volume: 20 mL}", ""))
	seen := map[figure.ID]bool{}
	for i := range rv.Figures {
		f := &rv.Figures[i]
		if seen[f.ID] {
			t.Errorf("%s twice", f.ID)
		}
		seen[f.ID] = true
		if text := words.Say(f.Conditions); strings.Contains(text, "NaN") {
			t.Errorf("%s: %s", f.ID, text)
		}
	}
}

// Flakes of a phase that no row knows are drawn off like any: whether what is stored gives
// gas is unknown, not nothing. And titanium carbide of the certificate, which stands beside
// flakes, is no powder that base must not come to.
func TestPartedFromPhases(t *testing.T) {
	long.NotShort(t)
	rv := review(t, parted("phase: Ti3TlC2, mass: 1 g, "+pure, hf10, ", capacity: 100 mL"))
	f := figureOf(&rv, "store.pressure@store")
	if f == nil || !f.Value.Unknown() {
		t.Errorf("%+v", f)
	}
	rv = review(t, parted("phase: Ti3AlC2, mass: 1 g, impurities: [{formula: TiC, share: 3 wt%}]", hf10,
		", capacity: 100 mL"))
	if v, there := verdicts(&rv)["order.against@4+wrong_order"]; there && v != withinLimit {
		t.Errorf("carbide beside flakes: %v", v)
	}
}
