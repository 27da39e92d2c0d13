package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/reports/words"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

const (
	orderPowder = "  - {do: charge, in: pot, what: [precursor], temperature: 20 degC}\n"
	orderAcid   = "  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}], " +
		"temperature: 20 degC}\n"
	orderPour = "  - {do: add, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}], " +
		"over: 20 min, temperature: 20 degC}\n"
	orderHold = "  - {do: hold, in: pot, time: 24 h, temperature: 25 degC}\n"
	orderBase = "  - {do: intercalate, in: pot, what: [{substance: tetramethylammonium hydroxide, strength: 25 wt%, " +
		"volume: 10 mL}], temperature: 25 degC}\n"
	orderSoda = "  - {do: mix, in: pot, what: [{substance: sodium hydroxide, strength: 10 wt%, volume: 10 mL}], " +
		"temperature: 25 degC}\n"
	orderWash = "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 50 mL}], cycles: 6}\n"
)

// Every order that a chemist would stop, and the like of it in the right order.
func TestWhatComesInTheWrongOrder(t *testing.T) {
	long.Only(t)
	for _, c := range []struct {
		name, steps, id string // the finding; "" where there is none but those within
		says            []string
	}{
		{"powder, then acid", orderPowder + orderPour + orderHold, "order.against@2",
			[]string{"tep 2", "hydrofluoric acid", "Ti3AlC2"}},
		{"powder listed before its acid", strings.Replace(orderAcid, "what: [", "what: [precursor, ", 1) + orderHold,
			"order.against@1", []string{"tep 1"}},
		{"acid, then powder", bench.Etch + orderHold, "", nil},
		{"the hold before the powder", orderAcid + orderHold + addsIt, "order.against@2",
			[]string{"tep 2", "hydrofluoric acid", "step 3"}},
		{"salt dissolves before the powder", orderAcid + strings.Replace(orderHold, "24 h", "10 min", 1) + addsIt +
			orderHold, "", nil},
		{"base into the etch liquor", bench.Etch + orderHold + orderBase, "order.against@4",
			[]string{"tep 4", "tetramethylammonium hydroxide", "hydrofluoric acid"}},
		{"base into what a decant leaves", bench.Etch + orderHold + "  - {do: decant, in: pot, into: drum}\n" + orderSoda,
			"order.against@5", []string{"tep 5", "sodium hydroxide", "hydrofluoric acid"}},
		{"base once it is washed", bench.Etch + orderHold + orderWash + orderBase, "", nil},
		{"base liquor into acid waste", bench.Etch + orderHold + "  - {do: decant, in: pot, into: drum}\n" +
			orderWash + orderSoda + "  - {do: decant, in: pot, into: drum}\n", "order.against@7",
			[]string{"tep 7", "sodium hydroxide", "drum"}},
		{"as a step that neutralises", bench.Etch + orderHold +
			"  - {do: neutralise, in: pot, what: [{substance: calcium hydroxide, mass: 10 g}], temperature: 25 degC}\n",
			"", nil},
	} {
		rv := review(t, bench.Head+c.steps)
		var found []string
		for i := range rv.Findings {
			f := &rv.Findings[i]
			if f.Figure.Quantity != "order.against" || f.Verdict == figure.Within {
				continue
			}
			found = append(found, f.Figure.String())
			if f.Verdict != figure.Exceeds {
				t.Errorf("%s: %v", c.name, f.Verdict)
			}
			for _, want := range c.says {
				if said := words.Say(f.Says); !strings.Contains(said, want) || !stopsWork(&rv, said) {
					t.Errorf("%s: %q, want %q in it and in a hold point", c.name, said, want)
				}
			}
		}
		if strings.Join(found, " ") != c.id {
			t.Errorf("%s: found %q, want %q", c.name, found, c.id)
		}
	}
}

// stopsWork reports whether some hold point says a text.
func stopsWork(rv *hazards.Review, text string) bool {
	for _, h := range rv.Holds {
		if strings.Contains(words.Say(h.Says), text) {
			return true
		}
	}
	return false
}

// The hold point on mixing is that of the pair that meets.
func TestWhatIsMixedIsToldOfThePair(t *testing.T) {
	long.NotShort(t)
	mixed := func(what string) string {
		return "  - {do: mix, in: pot, what: [{substance: " + what + "}], temperature: 20 degC}\n"
	}
	const water = "  - {do: charge, in: pot, what: [{substance: water, volume: 10 mL}], temperature: 20 degC}\n"
	for _, c := range []struct{ name, steps, want, never string }{
		{"alcohol into HF", orderAcid + mixed("ethanol, volume: 20 mL"),
			"mixing ethanol with hydrofluoric acid is not known. Acid in small portions into the cold alcohol", "Dense acid"},
		{"base into HF", orderAcid + mixed("sodium hydroxide, strength: 30 wt%, volume: 20 mL"),
			"mixing sodium hydroxide with hydrofluoric acid is not known. Wash the HF out first", "Dense acid"},
		{"nitric acid into alcohol", "  - {do: charge, in: pot, what: [{substance: ethanol, volume: 20 mL}], temperature: " +
			"20 degC}\n" + mixed("nitric acid, strength: 60 wt%, volume: 20 mL"), "never mixed", "small portions"},
		{"vitriol into water", water + mixed("sulfuric acid, strength: 96 wt%, volume: 30 mL"),
			"mixing sulfuric acid with water alone could boil it. Dense acid into water", "not known"},
		{"what is not held", orderAcid + mixed("zorblium syrup, not_held: true, volume: 5 mL"),
			"mixing zorblium syrup with hydrofluoric acid is not known. Nobody knows", "Dense acid"},
	} {
		rv := review(t, bench.Head+c.steps+addsIt)
		if !stopsWork(&rv, c.want) || stopsWork(&rv, c.never) {
			var all []string
			for _, h := range rv.Holds {
				all = append(all, words.Say(h.Says))
			}
			t.Errorf("%s: %q, want %q and never %q", c.name, all, c.want, c.never)
		}
	}
}

// 55.1 g of 96 wt% sulfuric acid (1.836 g/mL) into 10 g of water: 0.539 mol go from 0.23
// to 1.26 mol of water each. By Q = 74.7 n/(n + 1.798) kJ/mol (Thomsen) that is 22.4
// kJ/mol, 12.1 kJ in 65 g of 81 wt% acid of 1.8 J/g/K: 103 K. The water came first.
func TestAcidIntoWaterHasItsRise(t *testing.T) {
	rv := review(t, bench.Head+"  - {do: charge, in: pot, what: [{substance: water, volume: 10 mL}], temperature: "+
		"20 degC}\n"+
		"  - {do: mix, in: pot, what: [{substance: sulfuric acid, strength: 96 wt%, volume: 30 mL}], temperature: 20 degC}\n"+
		addsIt)
	if f := figureOf(&rv, "heat.mix.rise@2"); f == nil || !nearly.Share(f.Value.V, 103, 0.1) {
		t.Errorf("rise %v, want 103 K", f)
	}
}

// A wash of which nobody says how often it is done, nor how far, stops the work.
func TestAWashWithoutEndIsAHoldPoint(t *testing.T) {
	long.NotShort(t)
	open := strings.Replace(orderWash, ", cycles: 6", "", 1)
	for steps, want := range map[string]bool{open: true, orderWash: false,
		strings.Replace(open, "}]", "}], target_ph: 4", 1): false} {
		rv := review(t, bench.Head+bench.Etch+orderHold+steps)
		if got := stopsWork(&rv, "neither how often nor to which pH"); got != want {
			t.Errorf("%s: a hold point %v, want %v", steps, got, want)
		}
	}
}
