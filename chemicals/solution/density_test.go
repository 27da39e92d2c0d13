package solution_test

import (
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

// Tetrafluoroboric acid of 50 wt% weighs about 1.38 g/mL (trade tables, from memory):
// 10 mL hold 0.0786 mol at 87.81 g/mol.
func TestDensityOfTetrafluoroboricAcid(t *testing.T) {
	c := solution.Charged(chemicals.Base(), nil, substance(t, "tetrafluoroboric acid"),
		strength(quantity.MassFraction, 0.50), given("V", "mL", 10), working.Num{})
	if !nearly.Share(c.Mass.V, 13.8, 0.001) || !nearly.Share(c.Solute.V, 0.0786, 0.002) {
		t.Errorf("10 mL weigh %g g and hold %g mol", c.Mass.V, c.Solute.V)
	}
}

// A density that nobody holds runs over all that is physical of a liquid with water:
// from methanol, 0.79, to strong hydriodic acid, 1.70.
func TestUnknownDensityIsWide(t *testing.T) {
	d, ok := chemicals.Base().Row("density.solution.default")
	if !ok || !(d.Low <= 0.79) || !(d.High >= 1.70) {
		t.Errorf("%g to %g g/mL", d.Low, d.High)
	}
}
