package figure_test

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
)

// The ids of a review as they stand in its JSON.
func TestTextOfIDs(t *testing.T) {
	for _, c := range []struct {
		id   figure.ID
		text string
	}{
		{figure.ID{Quantity: "gas.hydrogen.total"}, "gas.hydrogen.total"},
		{figure.ID{Quantity: "heat.adiabatic_rise", Place: figure.Step(2)}, "heat.adiabatic_rise@2"},
		{figure.ID{Quantity: "neutralise.heat", Place: figure.Waste, Agent: "calcium_hydroxide"},
			"neutralise.heat@waste/calcium_hydroxide"},
		{figure.ID{Quantity: "gas.closed.pressure", Place: figure.At("tubes"), Case: figure.Case{State: figure.Closed}},
			"gas.closed.pressure@tubes:closed"},
		{figure.ID{Quantity: "gas.closed.time_to_10_kpa", Place: figure.At("etch"),
			Case: figure.Case{State: figure.Closed, Branch: "early_peak"}}, "gas.closed.time_to_10_kpa@etch:closed,early_peak"},
		{figure.ID{Quantity: "heat.temperature_peak", Place: figure.Step(2),
			Case: figure.If("cooling_lost").By("early_peak")},
			"heat.temperature_peak@2:cooling_lost,early_peak"},
		{figure.ID{Quantity: "gas.closed.pressure", Place: figure.At("vial"),
			Case: figure.Case{State: figure.Heated, Failure: "moved_unfinished"}},
			"gas.closed.pressure@vial:heated,moved_unfinished"},
		{figure.ID{Quantity: "air.time_average", Agent: "hf", Case: figure.Over(15)}, "air.time_average/hf:over_15_min"},
		{figure.ID{Quantity: "gas.hydrogen.total", Place: figure.Step(6), Case: figure.By(figure.Residual)},
			"gas.hydrogen.total@6:residual"},
	} {
		if got := c.id.String(); got != c.text {
			t.Errorf("%+v is written %s, want %s", c.id, got, c.text)
		}
		if got, err := figure.Parse(c.text); err != nil || got != c.id {
			t.Errorf("%s is read as %+v (%v), want %+v", c.text, got, err, c.id)
		}
	}
}

func TestTextThatIsNoID(t *testing.T) {
	for _, text := range []string{"", "@2", "heat.adiabatic_rice@2", "heat.adiabatic_rise@", "heat.mtsr@2:",
		"heat.mtsr@2/", "2"} {
		if id, err := figure.Parse(text); !errors.Is(err, figure.ErrNoID) {
			t.Errorf("%q is read as %+v (%v)", text, id, err)
		}
	}
}

// What is written is read as what it was, for any id.
func TestIDsSurviveTheirText(t *testing.T) {
	quantities := figure.Catalogue()
	rapid.Check(t, func(t *rapid.T) {
		id := figure.ID{Quantity: quantities[rapid.IntRange(0, len(quantities)-1).Draw(t, "quantity")].Name,
			Agent: rapid.SampledFrom([]string{"", "hf", "hf_and_hcl"}).Draw(t, "agent"),
			Place: rapid.SampledFrom([]figure.Place{{}, figure.Step(1), figure.Step(200), figure.At("etch"),
				figure.Waste, figure.Stack}).Draw(t, "place"),
			Case: figure.Case{
				State: rapid.SampledFrom([]figure.State{figure.AsWritten, figure.Closed, figure.Heated, figure.Cold}).Draw(t,
					"state"),
				Failure: rapid.SampledFrom([]string{"", "cooling_lost", "ignition"}).Draw(t, "failure"),
				Branch:  rapid.SampledFrom([]string{"", "early_peak", "measured", figure.Residual}).Draw(t, "branch"),
				Over:    rapid.SampledFrom([]float64{0, 15, 480, 0.5}).Draw(t, "over"),
			}}
		if got, err := figure.Parse(id.String()); err != nil || got != id {
			t.Fatalf("%s is read as %+v (%v), was %+v", id, got, err, id)
		}
	})
}

// A limits file may call its own limit what the program calls one of its own: the two
// findings are told apart, in code and in text.
func TestALocalLimitIsItsOwn(t *testing.T) {
	id := figure.ID{Quantity: "heat.mtsr", Place: figure.Step(2)}
	ours := figure.FindingID{Figure: id, Limit: limit.Named(limit.Review, "boiling_point")}
	local := figure.FindingID{Figure: id, Limit: limit.Named(limit.Local, "boiling_point")}
	if ours == local || ours.String() != "heat.mtsr@2+boiling_point" ||
		local.String() != "heat.mtsr@2+local:boiling_point" {
		t.Errorf("%s and %s", ours, local)
	}
}
