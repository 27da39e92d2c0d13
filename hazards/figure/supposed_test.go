package figure

import "testing"

// What a table says is supposed is a quantity of the catalogue or one of the surroundings, and
// what is done as written is none of it: the definitions of the catalogue (hand-checked).
func TestWhatIsSupposedIsCatalogued(t *testing.T) {
	for q := range supposed().quantities {
		if _, there := Lookup(q); !there {
			t.Errorf("%s is not catalogued", q)
		}
	}
	for p := range supposed().places {
		if p != Spill && p != Delivery && p != Yard {
			t.Errorf("%s is no place where something gets out", p)
		}
	}
	for id, want := range map[ID]bool{{Quantity: "heat.mtsr", Place: Step(2)}: true,
		{Quantity: "air.room_peak", Place: Spill}: true, {Quantity: "heat.temperature_peak", Place: Step(2)}: false,
		{Quantity: "heat.temperature_peak", Case: If("cooling_lost")}: true,
		{Quantity: "air.room_peak", Place: Room}:                      false} {
		if id.Supposed() != want {
			t.Errorf("%s: %t", id, !want)
		}
	}
}
