package book_test

import (
	"io"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/reports/book"
	"etchbound/reports/fixture"
)

// Data are found by the name, the formula and the number of a substance as by their id.
func TestDataAreFound(t *testing.T) {
	st := chemicals.Base()
	for _, query := range []string{"hydrofluoric acid", "HF", "7664-39-3", "vapour.", "VAPOUR."} {
		var b strings.Builder
		if err := book.WriteData(&b, st, query); err != nil || b.Len() < 100 || strings.Contains(b.String(), "NaN") {
			t.Errorf("%s: %v, %d bytes", query, err, b.Len())
		}
	}
}

// What is of a substance is found by what each row is of: its formula in any state, its
// element, its solution, itself (definition).
func TestDataOfASubstance(t *testing.T) {
	for query, want := range map[string][]string{
		"aluminium":         {"weight.Al", "electrons.Al", "heat.impurity.hf.Al", "burn.powder.Al", "cp.Al(s)"},
		"titanium dioxide":  {"density.TiO2(s,anatase)", "enthalpy.TiO2(s)"},
		"hydrofluoric acid": {"vapour.hf", "pka.hf", "cp.hf_aq.slope", "density.HF(l)"},
		"H2O":               {"boiling.water", "water.cp", "enthalpy.H2O(l)"},
	} {
		var b strings.Builder
		if err := book.WriteData(&b, chemicals.Base(), query); err != nil {
			t.Fatal(err)
		}
		for _, id := range want {
			if !strings.Contains(b.String(), "\n"+id+" ") {
				t.Errorf("%s: %s is not found", query, id)
			}
		}
		if strings.Contains(b.String(), "conductivity.aluminium") {
			t.Errorf("%s: a material", query)
		}
	}
}

// What is not found is refused with the nearest that is there.
func TestTheNearestIsOffered(t *testing.T) {
	err := book.WriteData(io.Discard, chemicals.Base(), "vapour.highst")
	if err == nil || !strings.Contains(err.Error(), "vapour.highest") {
		t.Errorf("data: %v", err)
	}
	r := fixture.Review()
	id := r.Figures[0].ID.String()
	if err := book.Explain(io.Discard, r, id); err != nil {
		t.Errorf("%s: %v", id, err)
	}
	for _, wrong := range []string{id[:len(id)-1] + "_", "", "@"} {
		if err := book.Explain(io.Discard, r, wrong); err == nil {
			t.Errorf("%q is explained", wrong)
		}
	}
	if err := book.Explain(io.Discard, r, id+"x"); err == nil || !strings.Contains(err.Error(), id) {
		t.Errorf("a figure: %v, want %s offered", err, id)
	}
}
