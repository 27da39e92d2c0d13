package aqueous

import (
	"math"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/schemas/nearly"
)

// What the tables name as sources is listed.
func TestSourcesAreListed(t *testing.T) {
	for _, key := range Sources() {
		if _, there := chemicals.Base().Source(key); !there {
			t.Errorf("the source %q is not listed", key)
		}
	}
}

// What a reaction makes has the charge of what it is made of.
func TestReactionsBalanceCharge(t *testing.T) {
	k := table()
	for _, e := range k.rows {
		sum := 0.0
		for j, n := range e.of {
			sum += n * k.rows[j].charge
		}
		if !nearly.To(sum, e.charge, 1e-12) {
			t.Errorf("%s has a charge of %g and is made of %g", e.name, e.charge, sum)
		}
	}
	for _, v := range variants() {
		if _, there := k.byName[v.row]; v.row != "" && (!there || math.IsNaN(v.logK)) {
			t.Errorf("%s is a variant of %q, which is no row with a constant", v.name, v.row)
		}
	}
}

// The expression of a constant gives at 25 degC what the row says it is there.
func TestExpressionsAgreeWithTheirConstants(t *testing.T) {
	for _, e := range table().rows {
		if len(e.analytic) > 0 && !nearly.To(e.at(reference)/math.Ln10, e.logK, 0.02) {
			t.Errorf("%s: %g by its expression, %g as it stands", e.name, e.at(reference)/math.Ln10, e.logK)
		}
	}
}

// Water and carbon dioxide, as another program has them at 1 atm.
func TestWaterAndGas(t *testing.T) {
	for _, c := range []struct{ celsius, a, b, density, permittivity, phi, litres float64 }{
		{5, 0.49424, 0.32538, 0.99996, 85.884, 0.99320, 22.669}, {25, 0.51002, 0.32849, 0.99704, 78.384, 0.99447, 24.330},
		{40, 0.52412, 0.33095, 0.99221, 73.168, 0.99524, 25.574}, {60, 0.54590, 0.33446, 0.98319, 66.729, 0.99609, 27.231}} {
		k := c.celsius + kelvin
		a, b := debye(k)
		phi, z := carbonDioxide.at(k, 1)
		if !nearly.To(a, c.a, 2e-5) || !nearly.To(b, c.b, 1e-5) || !nearly.To(density(k), c.density, 2e-5) ||
			!nearly.To(permittivity(k), c.permittivity, 1e-3) || !nearly.To(phi, c.phi, 1e-5) ||
			!nearly.To(z*litreAtm*k, c.litres, 1e-3) {
			t.Errorf("%g degC: %g %g %g %g %g %g", c.celsius, a, b, density(k), permittivity(k), phi, z*litreAtm*k)
		}
	}
}

// A table that is not right says where.
func TestFaultsOfATable(t *testing.T) {
	heads := "kind,name,component,charge,reaction,log_k,delta_h,analytic,activity,ion_size,b,fluoride,source,status,note\n"
	ion := "master,H+,H,1,,,,,wateq,9,0,,own,read,\n"
	for _, c := range []struct{ text, want string }{
		{ion + "species,OH-,,-1,H2O and OH-,-14,,,wateq,3.5,0,,own,read,\n", "is no reaction"},
		{ion + "species,HF,,0,H+ + F- = HF,3,,,neutral,,0.1,,own,read,\n", `"F-" stands in its reaction and in no row`},
		{ion + "species,OH-,,-1,H2O = x OH- + H+,-14,,,wateq,3.5,0,,own,read,\n", "invalid syntax"},
		{ion + "gel,X,,0,,,,,,,,,own,read,\n", `"gel" is not one of`},
	} {
		if _, err := read("constants.csv", heads+c.text); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
}
