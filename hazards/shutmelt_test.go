package hazards_test

import (
	"testing"

	"etchbound/hazards/figure"
	"etchbound/schemas/nearly"
)

// By hand: gas and air of a shut melt at 750 degC are those at 25 degC times 1023.15/298.15, both counted from
// nothing: (p + 101.325)*3.4317 - 101.325, p what it comes to once cold. How much more the vapour of the salt
// makes stays unknown.
func TestAShutMeltIsToldAtItsLeast(t *testing.T) {
	rv := reviewed(t, head+`precursor: {phase: Ti3SiC2, mass: 2 g, `+pure+`}
places: {pot: {kind: autoclave, material: alumina, capacity: 60 mL, closure: closed}}
steps:
  - {do: charge, in: pot, what: [precursor, {substance: copper(II) chloride, mass: 4.2 g}], gas: argon}
  - {do: melt, in: pot, temperature: 750 degC, time: 12 h}
  - {do: cool, in: pot, temperature: 20 degC, time: 3 h}
`, true)
	least, hot, cold := figureOf(&rv, "gas.closed.least@pot"), figureOf(&rv, "gas.closed.pressure@pot:heated"),
		figureOf(&rv, "gas.closed.pressure@pot:cold")
	if least == nil || hot == nil || cold == nil || !hot.Value.Unknown() {
		t.Fatalf("at its least %v, hot %v, cold %v", least, hot, cold)
	}
	if want := (cold.Value.V+101.325)*1023.15/298.15 - 101.325; !nearly.Share(least.Value.V, want, 1e-4) {
		t.Errorf("at its least %g kPa, want %g", least.Value.V, want)
	}
	if v := verdicts(&rv)["gas.closed.pressure@pot:heated+no_rated_container"]; v != figure.UnknownVerdict &&
		v != figure.Exceeds {
		t.Errorf("hot: %v", v)
	}
}
