package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/nearly"
)

// A gram of Ti3AlC2, 5.139 mmol, gives 0.377 L of hydrogen (3 mol each) when it is etched, and its
// flakes, Ti3C2O(OH)0.1F0.9, take up 4.9 water and give (0.1 + 9.8 - 0.9)/2 = 4.5 mol each, 0.566 L,
// while they stand in the waste (by hand; 24.465 L/mol). A quarter of the lower flammable limit of
// 50 L is 0.5 L: the flakes are over it, which stops work, and the etch is not, at 100 (1 -
// exp(-0.377/50)) = 0.751 vol%. In 2 m3 neither is.
func TestGasThatGathersStopsWork(t *testing.T) {
	for _, row := range []struct {
		cabinet string
		share   float64 // of a quarter of the limit, of the waste
		stops   bool
	}{{"50 L", 1.131, true}, {"2 m3", 0.0283, false}} {
		c := newCase(t, load(t, `route: etchbound/1
title: waste
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}
places:
  etch: {kind: bottle, material: PTFE, capacity: 250 mL, closure: vented, cooling: {kind: none}}
  can: {kind: drum, closure: vented, capacity: 5 L, material: HDPE, batches: 1, held_before: "empty, new"}
steps:
  - {do: charge, in: etch, what: [{substance: HF, strength: 20 wt%, volume: 20 mL}], temperature: 20 degC}
  - {do: add, in: etch, what: precursor, over: 30 min, temperature: 20 degC}
  - {do: hold, in: etch, time: 2 h, temperature: 20 degC}
  - {do: collect, in: etch, into: can}
`))
		site, problems, err := route.LoadSite("s.yaml", strings.NewReader(
			"site: etchbound/1\ntitle: shed\nroom: {volume: 50 m3, cabinet: "+row.cabinet+"}\n"))
		if err != nil || site == nil {
			t.Fatal(err, problems)
		}
		c.Site, c.Brief = site, true
		rv := must(t, c)
		figs := figure.NewSet(rv.Figures)
		can := figs.Get(figure.ID{Quantity: "gas.to_come", Place: figure.At("can")})
		if !nearly.Share(can.Value.V, 0.566, 0.002) {
			t.Errorf("%s: %g L can come of the waste", row.cabinet, can.Value.V)
		}
		x := figs.Get(figure.ID{Quantity: "gas.cabinet_share", Place: figure.At("can")})
		if !nearly.Share(x.Value.V, row.share, 0.003) {
			t.Errorf("%s: %g of a quarter", row.cabinet, x.Value.V)
		}
		y := figs.Get(figure.ID{Quantity: "air.hydrogen_share", Place: figure.Cabinet})
		if row.stops && !nearly.To(y.Value.V, 0.751, 0.002) {
			t.Errorf("%s: %g vol%% of the etch", row.cabinet, y.Value.V)
		}
		i := slices.IndexFunc(rv.Holds, func(h hazards.Hold) bool { return h.ID == "hydrogen_quarter" })
		if i >= 0 != row.stops || row.stops && !slices.Contains(rv.Holds[i].Places, figure.At("can")) {
			t.Errorf("%s: hold points %v", row.cabinet, rv.Holds)
		}
	}
}
