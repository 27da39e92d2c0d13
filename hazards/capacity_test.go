package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/words"
)

// Most of what is charged is a solution without a heat capacity: nothing can be
// said of how warm it gets, and every finding on it stays, as unknown.
func TestASolutionWithoutAHeatCapacityIsUnknown(t *testing.T) {
	for _, acid := range []string{"tetrafluoroboric acid, strength: 50 wt%", "hexafluorosilicic acid, strength: 35 wt%",
		"phosphoric acid, strength: 50 wt%", "acetic acid, strength: 50 wt%"} {
		rv := review(t, etches("phase: Ti3AlC2, mass: 1 g, "+pure, "{substance: "+acid+", volume: 20 mL}",
			"{substance: hydrofluoric acid, strength: 10 wt%, volume: 2 mL}"))
		name, _, _ := strings.Cut(acid, ",")
		for _, id := range []string{"heat.adiabatic_rise@2", "heat.mtsr@2", "heat.mix.total@1", "heat.mix.rise@1"} {
			f := figureOf(&rv, id)
			if f == nil || !f.Value.Unknown() {
				t.Errorf("%s: %s is %v", name, id, f)
			}
		}
		said := false
		for _, u := range rv.Unknown {
			text, settles := words.Ask(u.Missing)
			said = said || strings.Contains(text, "heat capacity of "+name) && strings.Contains(settles, "handbook")
		}
		if !said {
			t.Errorf("%s: nothing settles its heat capacity: %v", name, rv.Unknown)
		}
		if v := verdicts(&rv)["heat.mtsr@2+boiling_point"]; v != figure.UnknownVerdict {
			t.Errorf("%s: %s", name, v)
		}
	}
}

// A trace of such a solution is left out, and makes a bound.
func TestATraceWithoutAHeatCapacityIsABound(t *testing.T) {
	rv := review(t, etches("phase: Ti3AlC2, mass: 1 g, "+pure, hf10, "{substance: water, volume: 90 mL}",
		"{substance: acetic acid, strength: 50 wt%, volume: 0.5 mL}"))
	if f := figureOf(&rv, "heat.adiabatic_rise@2"); f == nil || f.Value.Unknown() || f.Value.Status.String() != "bound" {
		t.Errorf("%v", f)
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
