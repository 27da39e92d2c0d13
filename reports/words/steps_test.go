package words_test

import (
	"slices"
	"testing"

	"etchbound/hazards/phrase"
	"etchbound/reports/words"
)

// What is the same of several steps is said once of all of them, however its sentence
// names the step; what differs in anything else, or has no sentence for several, is not.
func TestTogether(t *testing.T) {
	of := func(key string, args ...any) phrase.Phrase { return phrase.Of("fact."+key, args...) }
	for _, c := range []struct {
		says []phrase.Phrase
		want []string
	}{
		{nil, []string{}},
		{[]phrase.Phrase{of("sieved", phrase.Step(5)), of("wash_open", phrase.Step(1)), of("sieved", phrase.Step(3))},
			[]string{"Steps 3 and 5 sieve dry powder, which is afloat then and charges itself.",
				"Step 1 washes, and the route says neither how often nor to which pH: what the solid and the waste hold " +
					"after it is not known."}},
		{[]phrase.Phrase{of("hf_formed_water", phrase.Step(2), "x"), of("hf_formed_water", phrase.Step(3), "x"),
			of("hf_formed_water", phrase.Step(4), "x"), of("hf_formed_water", phrase.Step(4), "x"),
			of("hf_formed_water", phrase.Step(11), "step 2")},
			[]string{"HF can form in steps 2 to 4: water, and moist air, free it from x.",
				"HF can form in step 11: water, and moist air, free it from step 2."}},
		{[]phrase.Phrase{of("overfull", phrase.Step(2), 10.0, "jar", 5.0), of("overfull", phrase.Step(3), 10.0, "jar", 5.0)},
			[]string{"Step 2 puts 10 mL into jar, which holds 5 mL.", "Step 3 puts 10 mL into jar, which holds 5 mL."}},
		{[]phrase.Phrase{of("dry"), of("dry")}, []string{"Drying leaves in the solid whatever acid and fluoride its " +
			"liquid held; what of it leaves with the water is not followed."}},
	} {
		if got := words.SayAll(words.Together(c.says)); !slices.Equal(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// What is the same of several things is said once, with all of them in a list; what is said
// with another end is another matter.
func TestAlike(t *testing.T) {
	gas := func(place string, step int, what string) phrase.Phrase {
		return phrase.Of("fact.unfollowed", place, phrase.Step(step), what)
	}
	heat := func(step int, a, b string) phrase.Phrase {
		return phrase.Of("hold.finding.mixing_unknown", phrase.Step(step), a, b, phrase.As("Ask."))
	}
	off := func(what string, litres, grams float64, step int) phrase.Phrase {
		return phrase.Of("fact.toxic_gas", what, litres, grams, phrase.Step(step))
	}
	lost := func(what string, step int) phrase.Phrase {
		return phrase.Of("fact.toxic_gas_unknown", what, phrase.Step(step))
	}
	got := words.SayAll(words.Alike([]phrase.Phrase{gas("jar", 2, "x"), gas("drum", 5, "x"), gas("pot", 3, "y"),
		phrase.Of("fact.dry"), heat(1, "acid", "salt"), heat(4, "water", "salt"), off("ammonia", 1.5, 1, 3),
		off("chlorine", 2, 6, 3), off("chlorine", 2, 6, 4), lost("phosphine", 5), lost("arsine", 5)}))
	want := []string{"How much gas comes off in jar (from step 2 on) and drum (from step 5 on) is not worked out: x.",
		"How much gas comes off in pot from step 3 on is not worked out: y.", words.Say(phrase.Of("fact.dry")),
		"Do not do these yet, of which the heat of mixing is not known: step 1 (acid with salt) and step 4 (water with " +
			"salt). Ask.",
		"Poisonous gas, at 25 °C: ammonia (up to 1.5 L, 1 g) and chlorine (up to 2 L, 6 g), in step 3.",
		"Poisonous gas: chlorine (up to 2 L at 25 °C, 6 g), in step 4.",
		"Poisonous gas: phosphine and arsine, nobody knows how much, in step 5."}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
