package selection

import (
	"strings"
	"testing"
)

// Pairs that must not meet are one matter, and so is what boils as it is written with what
// boils if cooling fails: each place and each consequence is still said. A hold point that
// says more than its finding keeps its own words.
func TestHoldPointsOfOneMatterAreOne(t *testing.T) {
	finding := func(id, says, here string) Stop {
		return Stop{ID: id, Key: "hold.finding." + id, Says: says, Here: here}
	}
	heated := finding("no_rated_container", "Do not heat it.", "pot")
	heated.Key += "_heated"
	all := []Stop{
		{ID: "pair", Says: "a alone", Part: "a (etch): gas"}, {ID: "pair", Says: "b alone", Part: "b (drum): fire"},
		finding("boiling_as_run", "It boils.", "step 2"), finding("boiling_point", "It could boil.", "steps 2 to 4"),
		heated, finding("no_rated_store", "Do not store it shut.", "jar"),
	}
	got := Texts(Matters(all))
	want := [][]string{{"a (etch): gas", "b (drum): fire"}, {"cooling at work (step 2)", "cooling fails (steps 2 to 4)"},
		{"Do not heat it.", "pot"}, {"Do not store it shut.", "jar"}}
	if len(got) != len(want) {
		t.Fatalf("%d hold points, %d wanted: %q", len(got), len(want), got)
	}
	for i, parts := range want {
		for _, s := range parts {
			if !strings.Contains(got[i], s) {
				t.Errorf("%q does not say %q", got[i], s)
			}
		}
	}
	if one := Texts(Matters(all[:1])); one[0] != "a alone" {
		t.Errorf("one pair alone reads %q", one[0])
	}
	if one := Texts(Matters(all[3:4])); one[0] != "It could boil. Here: steps 2 to 4." {
		t.Errorf("a hold point whose other is not there reads %q", one[0])
	}
}
