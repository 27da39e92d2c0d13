package etching_test

import (
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/etching"
)

// Ratios of M to A to X by hand: M(n+1)AX(n), the families beside it, and what no
// layered phase has.
func TestUnexpectedFormulas(t *testing.T) {
	for _, row := range []struct{ formula, found, expected string }{
		{"Ti3AlC2", "", ""}, {"Ti2AlC", "", ""}, {"V4AlC3", "", ""}, {"Mo4VAlC4", "", ""}, {"Mo2TiAlC2", "", ""},
		{"Ti3AlCN", "", ""}, {"Ti4AlN3", "", ""}, {"Ti1.8Nb0.2AlC", "", ""}, {"Ti3Al1.1C1.8", "", ""},
		{"Ti3Al0.8Sn0.2C2", "", ""}, {"(Ti0.5V0.5)2AlC", "", ""}, {"Mo2Ga2C", "", ""}, {"Zr3Al3C5", "", ""},
		{"MoAlB", "", ""}, {"Cr2AlB2", "", ""}, {"Ti2SC", "", ""},
		{"V2Al2C", "2:2:1", "2:1:1"}, {"Ti3AlC", "3:1:1", "3:1:2"}, {"Ti3Al2C2", "3:2:2", "3:1:2"},
		{"TiAlC", "1:1:1", "2:1:1"}, {"Ti3AlC4", "3:1:4", "3:1:2"}, {"V2Ga2N", "2:2:1", "2:1:1"},
	} {
		f, err := chemicals.ParseFormula(row.formula)
		if err != nil {
			t.Fatal(err)
		}
		l, err := etching.Split(chemicals.Base(), nil, f, nil)
		if err != nil {
			t.Fatal(err)
		}
		if found, expected := l.Unexpected(); found != row.found || expected != row.expected {
			t.Errorf("%s: %q instead of %q, want %q and %q", row.formula, found, expected, row.found, row.expected)
		}
	}
}
