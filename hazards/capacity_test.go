package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/schemas/long"
)

// Most of what is charged is a solution of which no heat capacity is tabled: how warm it
// gets is an estimate with a range, wide to the dangerous side, and what else nobody knows
// of it stays unknown.
func TestASolutionWithoutATableIsEstimated(t *testing.T) {
	long.NotShort(t)
	for _, acid := range []string{"tetrafluoroboric acid, strength: 50 wt%", "hexafluorosilicic acid, strength: 35 wt%",
		"phosphoric acid, strength: 50 wt%", "acetic acid, strength: 50 wt%"} {
		rv := review(t, etches("phase: Ti3AlC2, mass: 1 g, "+pure, "{substance: "+acid+", volume: 20 mL}",
			"{substance: hydrofluoric acid, strength: 10 wt%, volume: 2 mL}"))
		name, _, _ := strings.Cut(acid, ",")
		for _, id := range []string{"heat.adiabatic_rise@2", "heat.mtsr@2"} {
			f := figureOf(&rv, id)
			if f == nil || f.Value.Unknown() || f.Value.Status.String() != "estimated" {
				t.Errorf("%s: %s is %v", name, id, f)
				continue
			}
			if low, rise, high := f.Low().V, f.Value.V, f.High().V; !(low < 0.92*rise && 1.2*rise < high) {
				t.Errorf("%s: %s is %g from %g to %g", name, id, rise, low, high)
			}
		}
		for _, id := range []string{"heat.mix.total@1", "heat.mix.rise@1"} {
			if f := figureOf(&rv, id); f == nil || !f.Value.Unknown() {
				t.Errorf("%s: %s is %v", name, id, f)
			}
		}
	}
}

// What is not held has no heat capacity, however little of it there is: every finding on
// how warm it gets stays, as unknown, and what settles it is said.
func TestASubstanceThatIsNotHeldHasNoHeatCapacity(t *testing.T) {
	rv := review(t, etches("phase: Ti3AlC2, mass: 1 g, "+pure, hf10,
		"{substance: acid of the shelf, formula: H3PO3, not_held: true, strength: 50 wt%, volume: 20 mL}"))
	for _, id := range []string{"heat.adiabatic_rise@2", "heat.mtsr@2", "heat.mix.total@1", "heat.mix.rise@1"} {
		if f := figureOf(&rv, id); f == nil || !f.Value.Unknown() {
			t.Errorf("%s is %v", id, f)
		}
	}
	if v := verdicts(&rv)["heat.mtsr@2+boiling_point"]; v != figure.UnknownVerdict {
		t.Errorf("boiling is %s", v)
	}
}

// A dried place has no heat capacity at all: what warms it is unknown.
func TestSolidsAloneWithoutAHeatCapacityAreUnknown(t *testing.T) {
	rv := review(t, head+"precursor: {phase: Ti3SiC2, mass: 1 g, "+pure+"}\n"+places+"steps:\n"+
		"  - {do: charge, in: pot, what: [precursor, {substance: oxalic acid, mass: 3 g}]}\n")
	for i := range rv.Figures {
		if f := &rv.Figures[i]; strings.HasPrefix(f.Quantity, "heat.") && strings.Contains(f.Quantity, "rise") &&
			!f.Value.Unknown() {
			t.Errorf("%s is %v", f.ID, f.Value)
		}
	}
}
