package limit_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/schemas/nearly"
)

const head = "limits: etchbound/1\ntitle: House rules\nentries:\n"

func entryText(quantity, value, more string) string {
	return "  - id: a\n    quantity: " + quantity + "\n    value: " + value + "\n    document: House rules\n" + more
}

// The expected numbers are definitions of the units: 1 bar is 100 kPa, 1 vol%
// is 10 000 ppm, 1 h is 60 min.
func TestLimitsInCatalogueUnits(t *testing.T) {
	tests := []struct {
		quantity, value string
		want            float64
	}{
		{"heat.adiabatic_rise", "40 K", 40},
		{"heat.temperature_peak", "318.15 K", 45},
		{"gas.closed.pressure", "0.5 bar", 50},
		{"air.breathing_zone", "0.00018 vol%", 1.8},
		{"gas.closed.time_to_10_kpa", "2 h", 120},
		{"wash.cycles", "10", 10},
		{"fluoride.hf_equivalent", "0.2 kg", 200},
		{"fluoride.hf_concentration", "2 M", 2},
		{"neutralise.residual_fluoride", "15 mg/L", 15},
	}
	for _, tt := range tests {
		s, problems, err := limit.Load("l.yaml", strings.NewReader(head+entryText(tt.quantity, tt.value, "")), figure.Units{})
		if err != nil || s == nil {
			t.Errorf("%s %s: %v %v", tt.quantity, tt.value, err, problems)
			continue
		}
		l := s.Limits[0]
		if !nearly.Share(l.Value, tt.want, 1e-12) || l.Origin != limit.Local || len(s.Digest) != 64 {
			t.Errorf("%s %s: got %+v, want %g", tt.quantity, tt.value, l, tt.want)
		}
	}
}

// Every unit of the catalogue can be written in a limits file.
func TestEveryCatalogueUnitIsReadable(t *testing.T) {
	for _, q := range figure.Catalogue() {
		number, _, _ := strings.Cut(q.Unit, " ")
		value := strings.TrimSpace("3 " + strings.TrimPrefix(number, "1"))
		s, problems, _ := limit.Load("l.yaml", strings.NewReader(head+entryText(q.Name, value, "")), figure.Units{})
		if s == nil {
			t.Errorf("%s in %s: %v", q.Name, q.Unit, problems)
		} else if got := s.Limits[0].Value; !nearly.To(got, 3, 1e-12) {
			t.Errorf("%s: %s read as %g", q.Name, value, got)
		}
	}
}

func TestNear(t *testing.T) {
	tests := []struct {
		quantity, value, near string
		want                  float64
	}{
		{"heat.adiabatic_rise", "40 K", "", 0}, // the usual margin
		{"heat.adiabatic_rise", "40 K", "80 %", 0.8},
		{"heat.mtsr", "90 degC", "15 K", 15},
	}
	for _, tt := range tests {
		more := ""
		if tt.near != "" {
			more = "    near: " + tt.near + "\n"
		}
		s, problems, _ := limit.Load("l.yaml", strings.NewReader(head+entryText(tt.quantity, tt.value, more)), figure.Units{})
		if s == nil || s.Limits[0].Near != tt.want {
			t.Errorf("%+v: %+v %v", tt, s, problems)
		}
	}
}

func TestRefusedLimits(t *testing.T) {
	tests := []struct {
		what, text, message string
		line, column        int
	}{
		{"unknown quantity", head + entryText("heat.adiabatic_rice", "40 K", ""), "did you mean heat.adiabatic_rise", 5, 15},
		{"wrong dimension", head + entryText("heat.adiabatic_rise", "40 kPa", ""), "in K", 6, 12},
		{"no unit", head + entryText("heat.adiabatic_rise", "40", ""), "write the unit that is meant: K", 6, 12},
		{"point for a difference", head + entryText("heat.adiabatic_rise", "40 degC", ""), "40 K", 6, 12},
		{"unknown agent", head + entryText("air.saturated", "3 ppm", "    agent: hydrogen floride\n"), "hydrofluoric acid",
			8, 12},
		{"twice", head + entryText("wash.cycles", "3", "") + entryText("wash.cycles", "4", ""), "first in line 4", 8, 9},
		{"share for a temperature", head + entryText("heat.mtsr", "90 degC", "    near: 50 %\n"), "temperature difference",
			8, 11},
		{"margin of nothing", head + entryText("wash.cycles", "3", "    near: 0 %\n"), "nothing", 8, 11},
		{"list under the format key", "limits: etchbound/1\ntitle: x\nlimits:\n  - a\n", "entries", 3, 1},
	}
	for _, tt := range tests {
		s, problems, err := limit.Load("l.yaml", strings.NewReader(tt.text), figure.Units{})
		if err != nil || s != nil || len(problems) == 0 {
			t.Errorf("%s: accepted: %v %v", tt.what, err, problems)
			continue
		}
		found := false
		for _, p := range problems {
			found = found || p.Line == tt.line && p.Column == tt.column && strings.Contains(p.String(), tt.message)
		}
		if !found {
			t.Errorf("%s: want %d:%d %q, got\n%v", tt.what, tt.line, tt.column, tt.message, problems)
		}
	}
}

// More oxygen is the stricter limit, less heat is: of 19.5 vol% and 50 K, which the program
// carries, a looser one of the house is told, and stands beside.
func TestALooserLimitIsTold(t *testing.T) {
	for _, tt := range []struct {
		quantity, value string
		looser          bool
	}{
		{"air.oxygen", "18 vol%", true}, {"air.oxygen", "20.5 vol%", false}, {"air.oxygen", "19.5 vol%", false},
		{"heat.adiabatic_rise", "60 K", true}, {"heat.adiabatic_rise", "40 K", false},
	} {
		s, problems, err := limit.Load("l.yaml", strings.NewReader(head+entryText(tt.quantity, tt.value, "")), figure.Units{})
		if err != nil || s == nil {
			t.Fatal(err, problems)
		}
		if told := len(limit.Base().With(s).Notices); (told == 1) != tt.looser {
			t.Errorf("%s of %s: %d notices, looser %v", tt.quantity, tt.value, told, tt.looser)
		}
	}
}
