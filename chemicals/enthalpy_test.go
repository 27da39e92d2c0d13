package chemicals_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/schemas/nearly"
)

// Reactions by Hess's law from the rows of the store against published or
// independently worked heats. Terms are "-1 HF(aq) +1 H2O(l)".
func TestReactionEnthalpies(t *testing.T) {
	st := chemicals.Base()
	rows := published(t, "thermochemistry_reactions.csv")
	if len(rows) < 40 {
		t.Fatalf("only %d reactions", len(rows))
	}
	for _, row := range rows {
		sum := 0.0
		fields := strings.Fields(row["terms"])
		for i := 0; i+1 < len(fields); i += 2 {
			h := st.Num(datum.Of("enthalpy", fields[i+1]))
			if h.Unknown() {
				t.Errorf("%s: %v", row["case"], h.Missing())
			}
			sum += number(t, fields[i]) * h.V
		}
		got, want := sum*number(t, row["mol"]), number(t, row["kj"])
		if tolerance := number(t, row["tolerance"]); !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%s: %.2f kJ, published %.2f +-%.2f (%s)", row["case"], got, want, tolerance, row["source"])
		}
	}
}

// Every reaction of the check file balances in elements and charge, so that a
// slip in its stoichiometry cannot hide in a tolerance.
func TestReactionsBalance(t *testing.T) {
	charge := regexp.MustCompile(`\((\d?[+-])\)\(`)
	for _, row := range published(t, "thermochemistry_reactions.csv") {
		var sum chemicals.Composition
		electrons := 0.0
		fields := strings.Fields(row["terms"])
		for i := 0; i+1 < len(fields); i += 2 {
			text := charge.ReplaceAllString(fields[i+1], "[$1](")
			f, err := chemicals.ParseFormula(text[:strings.LastIndexByte(text, '(')])
			if err != nil {
				t.Fatalf("%s: %v", row["case"], err)
			}
			n := number(t, fields[i])
			electrons += n * float64(f.Charge)
			for e := range sum {
				sum[e] += n * f.Of[e]
			}
		}
		for e, v := range sum {
			if !nearly.To(v, 0, 1e-12) || !nearly.To(electrons, 0, 1e-12) {
				t.Errorf("%s: %s out by %g, charge by %g", row["case"], chemicals.ElementSymbol(e), v, electrons)
				break
			}
		}
	}
}

// The heats of dissolving in strong acid, and of the impurities, are rows of
// their own; they must be what the enthalpy rows give.
func TestDerivedHeatsFollowFromEnthalpies(t *testing.T) {
	st := chemicals.Base()
	cases := []struct {
		id        datum.ID
		terms     string // products less reactants, as in the check file
		tolerance float64
	}{
		{"dissolution.LiF(s)", "-1 LiF(s) +1 Li(+)(aq) +1 HF(aq)", 0.1},
		{"dissolution.NaF(s)", "-1 NaF(s) +1 Na(+)(aq) +1 HF(aq)", 0.1},
		{"dissolution.KF(s)", "-1 KF(s) +1 K(+)(aq) +1 HF(aq)", 0.1},
		{"dissolution.NH4F(s)", "-1 NH4F(s) +1 NH4(+)(aq) +1 HF(aq)", 0.1},
		{"dissolution.NH4HF2(s)", "-1 NH4HF2(s) +1 NH4(+)(aq) +1 F(-)(aq) +1 HF(aq)", 0.1},
		{"dissolution_acid.NH4HF2(s)", "-1 NH4HF2(s) +1 NH4(+)(aq) +2 HF(aq)", 0.1},
		{"dissolution.NaHF2(s)", "-1 NaHF2(s) +1 Na(+)(aq) +2 HF(aq)", 0.1},
		{"dissolution.KHF2(s)", "-1 KHF2(s) +1 K(+)(aq) +2 HF(aq)", 0.1},
		{"heat.impurity.hf.Al", "-1 Al(s) -3 HF(aq) +1 AlF3(aq)", 0.01},
		{"heat.impurity.hf.TiAl3", "-1 TiAl3(s) -12 HF(aq) +3 AlF3(aq) +1 TiF3(s)", 0.5},
		{"heat.impurity.hf.TiAl", "-1 TiAl(s) -6 HF(aq) +1 AlF3(aq) +1 TiF3(s)", 0.5},
		{"heat.impurity.hf.Ti", "-1 Ti(s) -3 HF(aq) +1 TiF3(s)", 0.6},
		{"heat.impurity.hf.Al4C3", "-1 Al4C3(s) -12 HF(aq) +4 AlF3(aq) +3 CH4(g)", 1},
		{"heat.impurity.acid.Al", "-1 Al(s) +1 Al(3+)(aq)", 0.01},
		{"heat.impurity.base.Al", "-1 Al(s) -1 OH(-)(aq) -3 H2O(l) +1 Al(OH)4(-)(aq)", 0.1},
		// one of the terminations, with its uncertainty
		{"etch_heat.Ti3AlC2", "-1 Ti3AlC2(s) -5 HF(aq) +1 AlF3(aq) +1 Ti3C2F2(s)", 67},
	}
	for _, c := range cases {
		sum := 0.0
		fields := strings.Fields(c.terms)
		for i := 0; i+1 < len(fields); i += 2 {
			n, _ := strconv.ParseFloat(fields[i], 64)
			sum += n * st.Num(datum.Of("enthalpy", fields[i+1])).V
		}
		if got := st.Num(c.id).V; !(math.Abs(got+sum) <= c.tolerance) {
			t.Errorf("%s is %g kJ/mol released, the enthalpies give %.2f", c.id, got, -sum)
		}
	}
}
