package selection

import (
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
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

// A heat of mixing that is not known of three steps is one hold point that names all three, and
// another advice is another.
func TestHoldPointsOfOneKindAreOne(t *testing.T) {
	hold := func(step int, a, b, advice string) hazards.Hold {
		return hazards.Hold{ID: "mixing_to_boiling", Places: []figure.Place{figure.Step(step)},
			Says: phrase.Of("hold.finding.mixing_unknown", phrase.Step(step), a, b, phrase.As(advice))}
	}
	r := &hazards.Review{Case: route.Case{Route: &route.Route{}}, Holds: []hazards.Hold{hold(1, "acid", "salt", "Ask."),
		hold(2, "base", "water", "Cool."), hold(5, "water", "salt", "Ask.")}}
	got := Texts(Stops(draft.New(r, draft.Options{})))
	want := []string{"step 1 (acid with salt) and step 5 (water with salt). Ask.", "base with water is not known. Cool."}
	if len(got) != 2 || !strings.Contains(got[0], want[0]) || !strings.HasSuffix(got[1], want[1]) ||
		strings.Contains(got[0], "Here") {
		t.Errorf("%q", got)
	}
}

// How much hydrofluoric acid is known stands on page 1 with where nobody knows how much there is.
func TestWhatIsKnownOfTheAcidIsSaid(t *testing.T) {
	q, _ := figure.Lookup("fluoride.hf_equivalent")
	of := func(n int, v working.Num) figure.Figure {
		f := figure.Figure{ID: step(q.Name, n, ""), Value: v}
		f.SetRange(v.V, v.V)
		return f
	}
	dark := of(5, working.Absent("m", q.Unit, working.Lacks("not_held", "a test")))
	worst := dark // of all the route
	worst.Place = figure.Place{}
	for want, figs := range map[string][]figure.Figure{
		"up to 8 g as HF, dry in step 1, all fluoride counted": {of(1, working.Exact("m", q.Unit, 8, "as written")), dark,
			worst},
		"how much is not known (step 5)": {dark, worst},
	} {
		d := draft.New(&hazards.Review{Case: route.Case{Route: &route.Route{}}, Figures: figs}, draft.Options{})
		got := (&reader{r: d.Review, v: voice{d}, figs: d.Set}).hf()
		if !strings.Contains(got, want) || !strings.Contains(got, "step 5") || strings.Contains(got, "up to not") {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
