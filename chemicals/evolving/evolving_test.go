package evolving_test

import (
	"slices"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/evolving"
)

// in makes a medium of the words that hold in it.
func in(words ...string) evolving.Is {
	return func(word string) bool { return slices.Contains(words, word) }
}

// The row with most words that hold is the one that stands.
func TestTheMediumSaysWhichGas(t *testing.T) {
	for _, c := range []struct {
		element, gas string
		words        []string
	}{
		{"Si", "silicon_tetrafluoride", []string{"acid", "fluoride"}},
		{"Si", "silane", []string{"acid"}},
		{"Si", "", []string{"base", "fluoride"}},
		{"Si", "silicon_tetrachloride", []string{"melt"}},
		{"Al", "", []string{"acid", "fluoride"}},
		{"Al", "aluminium_chloride", []string{"melt"}},
		{"Ti", "titanium_tetrachloride", []string{"melt"}},
		{"As", "arsine", []string{"acid", "fluoride"}},
		{"N", "ammonia", []string{"base"}},
		{"N", "", []string{"acid"}},
	} {
		g, listed := evolving.From(c.element, in(c.words...))
		if !listed || (g.Sub == nil) != (c.gas == "") || g.Sub != nil && g.Sub.Slug != c.gas {
			t.Errorf("%s in %v: %+v, want %q", c.element, c.words, g, c.gas)
		}
	}
	if g, listed := evolving.From("As", in("melt", "acid")); !listed || g.Sub == nil {
		t.Errorf("arsenic in a melt: %+v", g)
	}
	if _, listed := evolving.From("Tl", in("melt")); listed {
		t.Error("thallium in a melt is listed: what it gives there is not known")
	}
}

// Every element of the table of elements has a row in acid and in base, so that what a
// liquor gives is never unlisted by an oversight; in a melt what is not listed is unknown.
func TestEveryElementIsListedInAcidAndBase(t *testing.T) {
	for i := range chemicals.NumElements {
		el := chemicals.ElementSymbol(i)
		for _, medium := range []string{"acid", "base"} {
			if _, listed := evolving.From(el, in(medium)); !listed && el != "" && !slices.Contains(unlisted, el) {
				t.Errorf("%s has no row in %s", el, medium)
			}
		}
	}
}

// unlisted are the elements of which no gas is known for certain not to come.
var unlisted = []string{"Ru"}

// Gases that need no element are found by the classes of what is there.
func TestClassesSayWhichGas(t *testing.T) {
	for _, c := range []struct {
		gas   string
		words []string
	}{
		{"chlorine", []string{"current", "chloride"}},
		{"chlorine", []string{"oxidant", "acid", "chloride"}},
		{"nitrogen_dioxide", []string{"acid", "nitrate", "powder"}},
		{"nitrosyl_chloride", []string{"acid", "nitrate", "chloride"}},
		{"hcl", []string{"acid", "sulfuric", "chloride"}},
		{"ammonia", []string{"base", "ammonium"}},
		{"hydrogen_cyanide", []string{"acid", "cyanide_sulfide"}},
		{"sulfur_dioxide", []string{"acid", "sulfite"}},
	} {
		if !slices.ContainsFunc(evolving.With(in(c.words...)), func(g *evolving.Gas) bool { return g.Sub.Slug == c.gas }) {
			t.Errorf("%v give no %s", c.words, c.gas)
		}
	}
	if all := evolving.With(in("acid", "fluoride", "powder")); len(all) > 0 {
		t.Errorf("plain hydrofluoric acid gives %s", all[0].Sub.Name)
	}
}

// A gas that is led over something is idle by its name alone; what is not listed is not.
func TestAGasNobodyListsIsNotIdle(t *testing.T) {
	for gas, want := range map[string]bool{"": true, "argon": true, "dry Argon": true, "N2": true, "none": true,
		"hydrogen chloride": false, "chlorine": false, "5 % hydrogen in argon": false, "ammonia": false, "oxygen": false} {
		if evolving.Idle(gas) != want {
			t.Errorf("%q: idle %v", gas, !want)
		}
	}
}

// Fine metal burns in nitrogen and in what nobody names; common practice: argon, helium or
// vacuum over hot titanium.
func TestWhatHotMetalDoesNotBurnIn(t *testing.T) {
	for gas, want := range map[string]bool{"argon": true, "Flowing argon, dry": true, "vacuum": true, "nitrogen": false,
		"argon air": false, "dry": false, "": false, "argon hydrogen": false, "forming gas": false} {
		if evolving.IdleHot(gas) != want {
			t.Errorf("%q: %v", gas, !want)
		}
	}
}
