package waste_test

import (
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/waste"
	"etchbound/schemas/nearly"
)

// A litre of 48 wt% HF holds 27.6 mol, which take 1,022 g of calcium hydroxide or
// 1,381 g of carbonate: three times that on a floor, 3.07 and 4.14 kg. At 7.5 wt% of
// lime of 2.2 g/mL in water of 0.997 that is 1.39 L and 37.9 L: 39.4 L of slurry. What
// is poured off into a drum does not make the spill smaller, nor does diluting it.
func TestNeutraliserForTheLargestSpill(t *testing.T) {
	const bottle = "{substance: hydrofluoric acid, strength: 48 wt%, volume: 1 L}"
	for name, steps := range map[string]string{
		"in its bottle": does("charge", bottle),
		"poured off":    does("charge", bottle) + "  - {do: transfer, in: pot, into: jar}\n",
		"diluted":       does("charge", bottle) + does("dilute", "{substance: water, volume: 2 L}"),
		"in parts":      does("charge", bottle) + "  - {do: transfer, in: pot, into: jar, part: 50 %}\n",
	} {
		figs := figuresOf(t, bench1+steps)
		for id, want := range map[string]float64{"spill.neutraliser@spill/calcium_hydroxide": 3.067,
			"spill.neutraliser@spill/calcium_carbonate": 4.142, "spill.slurry@spill/calcium_hydroxide": 39.3} {
			got := 0.0
			for i := range figs {
				if figs[i].ID.String() == id {
					got = figs[i].Value.V
				}
			}
			if !nearly.Share(got, want, 0.003) {
				t.Errorf("%s: %s is %g, want %g", name, id, got, want)
			}
		}
	}
}

// What brings no fluoride out of solution is not put on acid fluoride, and a route
// without acid has nothing to put it on.
func TestWhatIsNotPutOnASpill(t *testing.T) {
	for i, f := range figuresOf(t, bench1+does("charge", strong)) {
		if f.Place == figure.Spill && f.Agent != "calcium_hydroxide" && f.Agent != "calcium_carbonate" {
			t.Errorf("figure %d: %v", i, f.ID)
		}
	}
	for _, f := range figuresOf(t, bench1+does("charge", thin)) {
		if f.Place == figure.Spill {
			t.Errorf("%v of water", f.ID)
		}
	}
}

// Where nobody knows what a liquor holds, nobody knows what a spill of it takes.
func TestAnUnknownLiquorIsTheWorstToSpill(t *testing.T) {
	c, ok := caseOf(t, bench1+does("charge", strong)+
		does("charge", "{substance: mystery salt, not_held: true, mass: 1 g}"))
	if !ok {
		t.Fatal("refused")
	}
	k, err := process.Go(c, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range waste.Read(c, nil, k, nil, nil) {
		if f.Quantity == "spill.neutraliser" && !f.Value.Unknown() {
			t.Errorf("%v = %v", f.ID, f.Value)
		}
	}
}
