package cards

import (
	"math"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/treating"
	"etchbound/reports/draft"
)

// 0.1 mol of HF in 1 L with 10 g of lime: 0.05 mol of CaF2 are 3.90 g, 0.39 wt%; of the lime
// 3.70 g are needed (74.09 g/mol, by hand) and 6.30 g are over, 10.2 g of solids or 1.01 wt%.
// Of fluoride that is all held in a complex, cold, none of it is used. Salt cake that dissolves
// has none over.
func TestALabelCountsLimeThatIsOver(t *testing.T) {
	at := func(held float64, binds bool) string {
		l := &treating.Liquor{Base: 0.1, Held: held, Water: 1, Written: &treating.Written{AcidLeft: 0.1 - 2*10/74.09}}
		return solids(l, &treating.Way{Parts: []treating.Part{{Grams: 3.7045}}, SludgeDry: 3.9, Binds: binds})
	}
	for _, row := range []struct{ got, want string }{{at(0, true), "0.39 wt% solids"}, {at(0, true), "up to 1.1 wt%"},
		{at(0.1, true), "up to 1.4 wt%"}, {at(0, false), "unused agent comes on top"}} {
		if !strings.Contains(row.got, row.want) {
			t.Errorf("%q, want %q", row.got, row.want)
		}
	}
}

// The label of a container of product says when it was made and by when it is opened: after
// the earliest time to 10 kPa, and at once where powder that the etch left makes it.
func TestLabelOfProductSaysOpenBy(t *testing.T) {
	for earliest, want := range map[float64]string{3: "(3 d after", 0: "do not shut it"} {
		of := figure.Figure{ID: figure.ID{Quantity: "store.time_to_10_kpa", Place: figure.At("product"),
			Case: figure.By("methane")}, Value: working.Exact("t", "d", 9, "of the test")}
		of.SetRange(earliest, 20)
		b := &builder{Draft: &draft.Draft{Set: figure.NewSet([]figure.Figure{of})}}
		lines := strings.Join(b.stored("product"), "\n")
		if !strings.Contains(lines, want) || !strings.Contains(lines, "Made on") {
			t.Errorf("%g d: %q, want %q", earliest, lines, want)
		}
	}
	if b := (&builder{Draft: &draft.Draft{Set: figure.NewSet(nil)}}); b.stored("etch") != nil {
		t.Error("a container without product says when to open it")
	}
}

// What several agents have treated is told by what has settled at equilibrium.
func TestALabelOfSeveralAgentsNamesSolids(t *testing.T) {
	pair := &treating.Written{Subs: make([]*chemicals.Substance, 2)}
	b := &builder{Draft: &draft.Draft{Review: &hazards.Review{
		Treated:    []treating.Liquor{{Step: 3, Place: "drum", Written: pair}},
		Containers: []treating.Container{{Place: "drum", Moments: []treating.Moment{{Share: 0.031}}}}}}}
	if lines := strings.Join(b.treated("drum"), "\n"); !strings.Contains(lines, "3.1 wt% solids") ||
		!strings.Contains(lines, "96.9 wt%") {
		t.Error(lines)
	}
	b.Review.Containers[0].Moments[0].Share, b.Review.Containers[0].Moments[0].Litres = math.NaN(), math.NaN()
	if lines := strings.Join(b.gathered("drum"), "\n"); !strings.Contains(lines, "is not known: look at the level") {
		t.Error(lines)
	}
	if lines := strings.Join(b.treated("drum"), "\n"); !strings.Contains(lines, "not known") {
		t.Error(lines)
	}
}

// A container of a melt that gives off chlorine says so, once, and one beside it does not.
func TestALabelNamesWhatPoisons(t *testing.T) {
	chlorine, _ := chemicals.Library().Find("chlorine")
	b := &builder{Draft: &draft.Draft{Review: &hazards.Review{Walk: process.Walk{Evolved: []process.Evolved{
		{Step: 2, Place: "boat", Gas: chlorine}, {Step: 3, Place: "boat", Gas: chlorine}, {Step: 3, Place: "jar"},
		{Step: 4, Place: "cell"}, {Step: 4, Place: "cell", Gas: chlorine}}}}}}
	for place, want := range map[string]string{"boat": "chlorine", "jar": "a gas that nobody names", "drum": "",
		"cell": "chlorine, a gas that nobody names"} {
		if got := strings.Join(b.Poisons(place), ", "); got != want {
			t.Errorf("%s gives off %q, want %q", place, got, want)
		}
	}
}

// The label of treated waste has the pH of equilibrium from the end where it is low to that where
// it is high, and none where one of them is not known.
func TestALabelHasThePHOfWhatIsTreated(t *testing.T) {
	at := func(quantity string, value float64) figure.Figure {
		f := figure.Figure{ID: figure.ID{Quantity: quantity, Place: figure.Step(3)},
			Value: working.Exact("pH", "1", value, "tried")}
		f.SetRange(value, value)
		return f
	}
	for most, want := range map[float64]string{12.4: "12.4", math.NaN(): ""} {
		r := hazards.Review{Treated: []treating.Liquor{{Step: 3, Place: "drum"}},
			Figures: []figure.Figure{at("neutralise.ph", 12.4), at("neutralise.ph_most", most)}}
		b := &builder{Draft: draft.New(&r, draft.Options{})}
		if got := b.treatedPH("drum"); got != want {
			t.Errorf("%g at most: %q, want %q", most, got, want)
		}
	}
}
