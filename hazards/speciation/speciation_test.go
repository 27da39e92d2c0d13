package speciation_test

import (
	"strings"
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/hazards/fluoride"
	"etchbound/hazards/speciation"
	"etchbound/schemas/nearly"
)

const (
	etched = "  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 10 mL}], " +
		"temperature: 25 degC}\n  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 25 degC}\n" +
		"  - {do: hold, in: pot, time: 24 h, temperature: 25 degC}\n"
	thinned = etched + "  - {do: dilute, in: pot, what: [{substance: water, volume: 90 mL}], temperature: 25 degC}\n"
	beside  = etched + "  - {do: dilute, in: pot, what: [{substance: water, volume: 90 mL}, " +
		"{substance: dmso, mass: 1 g}], temperature: 25 degC}\n"
)

// read gives the last liquor of the steps in the pot, and the figure of its free fluoride.
func read(t *testing.T, steps string) (speciation.Liquor, figure.Figure, figure.Figure) {
	t.Helper()
	b := bench.Steps(t, steps)
	figures := fluoride.Read(b.Case, nil, b.Walk, nil, nil)
	for i := range figures {
		figures[i].SetRange(figures[i].Value.V, figures[i].Value.V)
	}
	all := speciation.Read(b.Case, nil, &b.Walk, figures)
	last := all[len(all)-1]
	find := func(quantity string) figure.Figure {
		return bench.Find(t, figures, figure.ID{Quantity: quantity, Place: last.Place}.String())
	}
	return last, find("fluoride.free_hf"), find("fluoride.hf_equivalent")
}

// The liquor of a gram of Ti3AlC2 in 10 mL of 10 wt% HF, diluted ten times: published
// equilibria have 37.1 % of its fluoride on aluminium, 3.75 on each, and pH 1.36.
func TestAThinLiquorIsToldByEquilibria(t *testing.T) {
	l, free, all := read(t, thinned)
	if l.Why != "" || !nearly.To(l.PH, 1.36, 0.03) || !nearly.To(l.PerAluminium, 3.75, 0.06) {
		t.Errorf("%+v", l)
	}
	if share := free.Value.V / all.Value.V; !nearly.To(share, 0.629, 0.02) {
		t.Errorf("%.3f of the fluoride is free", share)
	}
	if !(free.Low().V <= free.Value.V) || !(free.High().V >= free.Value.V) || !(free.High().V <= all.High().V) {
		t.Errorf("%g from %g to %g of %g", free.Value.V, free.Low().V, free.High().V, all.High().V)
	}
	if !(l.Molecules < l.Over) || !(l.Molecules > 0.4*l.Over) {
		t.Errorf("%g ppm by molecules, %g by all fluoride", l.Molecules, l.Over)
	}
}

// More lime than dissolves leaves limewater, saturated at pH 12.45 at 25 degC (handbook, from
// memory), 3 g in 0.1 L, of which 2 g are over; dissolved, they would be 0.27 mol/L and pH 13.6.
// Bicarbonate over what the acid takes, 0.05 mol in 0.1 L, is below its own pH, 8.3, under the
// carbon dioxide of 1 atm: 6.35 + 1.47 + log 0.5 = 7.5, where lye of it were at 13.7 (constants
// of carbonic acid: handbook, from memory).
func TestLimeThatIsOverSettlesAndCarbonateStays(t *testing.T) {
	for _, c := range []struct {
		agent     string
		low, high float64
	}{{"calcium hydroxide, mass: 4 g", 12.3, 12.6}, {"sodium hydrogencarbonate, mass: 8.6 g", 6.8, 8.3}} {
		l, _, _ := read(t, thinned+"  - {do: neutralise, in: pot, what: [{substance: "+c.agent+"}], over: 60 min, "+
			"temperature: 25 degC}\n")
		if l.Why != "" || !nearly.Between(l.PH, c.low, c.high) {
			t.Errorf("%s: %+v", c.agent, l)
		}
	}
}

// Where equilibria do not tell, the figure stays as ratios have it and says why.
func TestWhatIsNotToldStaysAndSaysWhy(t *testing.T) {
	for _, c := range []struct {
		steps string
		why   speciation.Why
	}{{etched, speciation.Strong}, {beside, speciation.Beside}} {
		l, free, all := read(t, c.steps)
		if l.Why != c.why || l.PH == l.PH || l.Free == l.Free || l.Molecules == l.Molecules {
			t.Errorf("%+v, want %s", l, c.why)
		}
		if share := free.Value.V / all.Value.V; !nearly.To(share, 0.63, 0.03) {
			t.Errorf("%s: %.3f of the fluoride is free", c.why, share)
		}
		said := free.Conditions
		if !strings.HasSuffix(said.Key+said.More[len(said.More)-1].Key, "speciation."+string(c.why)) {
			t.Errorf("%s: %+v", c.why, said)
		}
	}
}

// A liquor in a fridge is told, its range taking in what the constants give at 5 degC; below
// ice and above 60 degC none is. HF grows stronger as it cools: by 13.3 kJ/mol (handbook) its pKa
// falls by 0.177 from 25 to 4 degC, and the pH of 0.1 mol/kg by half of that, from 2.05 to 1.96; there
// is less HF2-, which takes some of it back.
func TestALiquorInAFridgeIsTold(t *testing.T) {
	at := func(celsius string) speciation.Liquor {
		b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 0.2 wt%, "+
			"volume: 100 mL}], temperature: "+celsius+"}\n")
		return speciation.Read(b.Case, nil, &b.Walk, fluoride.Read(b.Case, nil, b.Walk, nil, nil))[0]
	}
	if l := at("4 degC"); l.Why != "" || !nearly.To(l.PH, 1.965, 0.025) {
		t.Errorf("%+v", l)
	}
	for _, celsius := range []string{"-2 degC", "70 degC"} {
		if l := at(celsius); l.Why != speciation.Hot {
			t.Errorf("%s: %+v", celsius, l)
		}
	}
	_, cold, _ := read(t, strings.Replace(thinned, "temperature: 25 degC}\n", "temperature: 4 degC}\n", -1))
	_, cool, _ := read(t, strings.Replace(thinned, "temperature: 25 degC}\n", "temperature: 5 degC}\n", -1))
	if !(cold.Low().V <= cool.Value.V) || !(cold.High().V >= cool.Value.V) || cold.Value.V == cool.Value.V {
		t.Errorf("%g from %g to %g at 4 degC, %g at 5", cold.Value.V, cold.Low().V, cold.High().V, cool.Value.V)
	}
}
