package chemicals

import (
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/schemas/nearly"
)

// TestKoppsRuleByHand: table B.10 of Elementary Principles of Chemical Processes gives
// 26 for calcium, 17 for oxygen and 9.6 for hydrogen: Ca(OH)2 is 26 + 2*(17 + 9.6).
func TestKoppsRuleByHand(t *testing.T) {
	st := Base()
	for _, row := range []struct {
		formula string
		want    float64 // J/mol/K by the rule alone
	}{
		{"Ca(OH)2", 26 + 2*(17+9.6)},
		{"Nb2AlC", 3*26 + 7.5},
		{"Ti3SiC2", 3*26 + 16 + 2*7.5},
		{"NaBF4", 26 + 11 + 4*21},
	} {
		f, err := ParseFormula(row.formula)
		if err != nil {
			t.Fatal(err)
		}
		got := f.SolidHeat(st, nil)
		if want := 0.95 * row.want; !nearly.Share(got.V, want, 1e-12) {
			t.Errorf("%s: %v J/mol/K, by hand %v", row.formula, got.V, want)
		}
		if got.Status != working.Estimated {
			t.Errorf("%s counts as %s, it is an estimate", row.formula, got.Status)
		}
	}
	if c := new(Formula).SolidHeat(st, nil); !c.Unknown() {
		t.Errorf("a solid without atoms has %v J/mol/K", c.V)
	}
}

// TestTheRangeOfKoppsRuleHoldsTheHandbook holds every solid of the standard-state table of
// the Handbook of Chemistry and Physics that is held, none of which the estimate uses.
func TestTheRangeOfKoppsRuleHoldsTheHandbook(t *testing.T) {
	st, tried := Base(), 0
	share, _ := st.Row("cp.kopp")
	for _, d := range st.Rows() {
		k := d.ID.Key()
		if !k.Is("cp") || k.Subject != k.Bare()+"(s)" || !strings.HasPrefix(d.Source, "hcp") {
			continue
		}
		f, err := ParseFormula(k.Bare())
		if err != nil {
			t.Fatal(d.ID, err)
		}
		tried++
		rule := f.SolidHeat(st, nil).V / share.Value
		if low, high := share.Low*rule, share.High*rule; !nearly.Between(d.Value, low, high) {
			t.Errorf("%s: %g J/mol/K is outside %g to %g", d.ID, d.Value, low, high)
		}
	}
	if tried < 30 {
		t.Errorf("only %d solids of the handbook were tried", tried)
	}
}
