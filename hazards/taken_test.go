package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/words"
	"etchbound/schemas/nearly"
)

// sour is an etch in salt and a strong acid.
func sour(acid string) string {
	return etches("phase: Ti3AlC2, mass: 2 g, "+pure, "{substance: lithium fluoride, mass: 3.2 g}",
		"{substance: "+acid+", volume: 40 mL}") + "  - {do: hold, in: pot, time: 24 h, temperature: 35 degC}\n"
}

// The bottle of another strong acid, as strong as it is sold, is the route written so:
// heat and gas of sulfuric acid are held, those of nitric acid are not, which counts.
func TestTheBottleOfAnotherAcid(t *testing.T) {
	rv := followed(t, sour("hydrochloric acid, strength: 9 mol/L"))
	written := followed(t, sour("sulfuric acid, strength: 18 mol/L"))
	for taken, of := range map[string]string{"heat.temperature_peak@2": "heat.temperature_peak@2",
		"gas.hydrogen.peak_rate@2": "gas.hydrogen.peak_rate.during_addition@2"} {
		id := taken + ":sulfuric_acid_taken,instantaneous"
		f, g := figureOf(&rv, id), figureOf(&written, of+":instantaneous")
		if f == nil || g == nil || !nearly.Share(f.Value.V, g.Value.V, 1e-9) {
			t.Errorf("%s: %+v, written so %+v", id, f, g)
		}
	}
	f := figureOf(&rv, "gas.hydrogen.peak_rate@2:nitric_acid_taken,instantaneous")
	if f == nil || !f.Value.Unknown() || !strings.Contains(words.Say(f.Conditions), "14.9 L of nitrogen dioxide") {
		t.Errorf("nitric acid taken: %+v", f) // 40 mL of 15.2 mol/L, 24.47 L/mol
	}
	if v := verdicts(&rv)["heat.temperature_peak@2:nitric_acid_taken+boiling_if_it_fails"]; v != figure.UnknownVerdict {
		t.Errorf("what nobody holds of it counts as %v", v)
	}
}

// Whichever strong acid a route takes can be another; what is the same is not, nor what
// is no strong acid; a strength that names no bottle leaves it unknown.
func TestWhichAcidIsTakenForWhich(t *testing.T) {
	const nitric, sulfuric = "heat.temperature_peak@2:nitric_acid_taken", "heat.temperature_peak@2:sulfuric_acid_taken"
	for _, row := range []struct {
		acid             string
		nitric, sulfuric bool // there
	}{
		{"hydrochloric acid, strength: 20 wt%", true, true},
		{"hydrochloric acid, strength: 6 mol/kg", true, true},
		{"sulfuric acid, strength: 5 mol/L", true, false},
		{"nitric acid, strength: 5 mol/L", false, true},
		{"hydrofluoric acid, strength: 10 wt%", false, false},
	} {
		rv := followed(t, sour(row.acid))
		n, s := figureOf(&rv, nitric), figureOf(&rv, sulfuric)
		if (n != nil) != row.nitric || (s != nil) != row.sulfuric {
			t.Errorf("%s: nitric acid %v, sulfuric acid %v", row.acid, n, s)
		}
		if strings.Contains(row.acid, "mol/kg") && !(s != nil && s.Value.Unknown()) {
			t.Errorf("%s: %+v", row.acid, s)
		}
	}
}
