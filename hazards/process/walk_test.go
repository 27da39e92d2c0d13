package process_test

import (
	"math"
	"slices"
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/process"
	"etchbound/schemas/nearly"
)

// 1.6 g of lithium fluoride, 25.939 g/mol, in 20 mL of 9 mol/L acid: 0.061683 mol of
// lithium and fluorine and 0.18 mol of chlorine, half of which half the liquor takes
// along (by hand). Every element that goes in is found again.
func TestHalfOfTheLiquorTakesHalfOfAll(t *testing.T) {
	b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: hydrochloric acid, strength: 9 mol/L, "+
		"volume: 20 mL},"+
		" {substance: lithium fluoride, mass: 1.6 g}], temperature: 20 degC}\n",
		"  - {do: transfer, in: pot, into: drum, part: 50 %}\n")
	want := map[string]float64{"Li": 0.061683, "F": 0.061683, "Cl": 0.18}
	seen := 0
	for _, x := range b.Walk.Account {
		if !(x.Error <= 1e-12) {
			t.Errorf("%s: %g mol in, %v out", x.Element, x.In, x.Out)
		}
		n, ok := want[x.Element]
		if !ok {
			continue
		}
		seen++
		if !nearly.Share(x.In, n, 1e-4) || !nearly.Share(x.Out["drum"], n/2, 1e-4) || !nearly.Share(x.Out["pot"], n/2, 1e-4) {
			t.Errorf("%s: %g mol in, %v out, want %g in and half in each", x.Element, x.In, x.Out, n)
		}
	}
	if seen != len(want) {
		t.Errorf("%d of %d elements in the account", seen, len(want))
	}
}

// What is left of a gram of Ti3AlC2 after the etch: no aluminium in the solid, and
// 3.0/194.605 mol of hydrogen gone as gas, twice as many atoms.
func TestWhatAnEtchGivesOff(t *testing.T) {
	b := bench.Steps(t, bench.Etch)
	if len(b.Walk.Etches) != 1 {
		t.Fatalf("%d etches", len(b.Walk.Etches))
	}
	for _, x := range b.Walk.Account {
		switch x.Element {
		case "H":
			if got := x.Out["gas"]; !nearly.Share(got, 2*3.0/194.605, 1e-5) {
				t.Errorf("%g mol of hydrogen atoms go as gas", got)
			}
		case "Al", "Ti":
			if n := map[string]float64{"Al": 1, "Ti": 3}[x.Element] / 194.605; !nearly.Share(x.In, n, 1e-5) {
				t.Errorf("%g mol of %s, want %g", x.In, x.Element, n)
			}
		}
	}
}

func TestWalkTellsWhereHFForms(t *testing.T) {
	salt := "{substance: lithium fluoride, mass: 1.6 g}"
	for _, row := range []struct {
		name, what string
		forms      bool
	}{
		{"a fluoride salt in acid", "{substance: hydrochloric acid, strength: 9 mol/L, volume: 20 mL}, " + salt, true},
		{"a fluoride salt in water", "{substance: water, volume: 20 mL}, " + salt, false},
		{"acid without fluoride", "{substance: hydrochloric acid, strength: 9 mol/L, volume: 20 mL}", false},
		{"a complex that water takes apart", "{substance: water, volume: 20 mL}, " +
			"{substance: sodium tetrafluoroborate, mass: 2 g}", true},
	} {
		b := bench.Steps(t, "  - {do: charge, in: pot, what: ["+row.what+"], temperature: 20 degC}\n")
		if got := forms(b.Walk.Facts); got != row.forms {
			t.Errorf("%s: HF forms %v in %+v", row.name, got, b.Walk.Facts)
		}
	}
}

func forms(facts []process.Fact) bool {
	for _, f := range facts {
		if f.ID == "hf_formed" {
			return true
		}
	}
	return false
}

// A pot that the liquor alone overfills is said to be too full where nobody knows how much
// room the powder takes too.
func TestTooFullWhateverThePowderTakes(t *testing.T) {
	b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, "+
		"volume: 300 mL}, precursor], temperature: 20 degC}\n")
	nobody := map[int]float64{}
	for i, d := range b.Case.Store.Rows() {
		if d.ID == "density.Ti3AlC2" || d.ID == "density.layered" {
			nobody[i] = math.NaN()
		}
	}
	b.Case.Store = b.Case.Store.With(nobody)
	k, err := process.Go(b.Case, nil)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(k.Facts, func(f process.Fact) bool { return f.ID == "overfull" }) {
		t.Error("300 mL in a pot of 250 mL are not said to be too much")
	}
}

// What nobody knows how much of it stands where is no error of the account: it is not known
// whether it closes.
func TestWhatIsNotKnownIsNoErrorOfTheAccount(t *testing.T) {
	b := bench.Steps(t, bench.Etch, "  - {do: charge, in: pot, what: [{substance: glimmerol, formula: C6H14O3, not_held: "+
		"true, mass: 3 g}]}\n", "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 50 mL}], cycles: 3, "+
		"retained: 5 mL/g}\n")
	if e := b.Walk.Error; !e.Unknown() || len(e.Missing()) == 0 {
		t.Errorf("the account is out by %g, lacking %v", e.V, e.Missing())
	}
}
