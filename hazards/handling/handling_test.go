package handling_test

import (
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/hazards/handling"
	"etchbound/schemas/nearly"
)

const (
	wash = "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 100 mL}], cycles: 6, " +
		"temperature: 20 degC}\n"
	filter = "  - {do: filter, in: pot, into: drum, product: solids}\n"
)

func read(t *testing.T, steps ...string) []figure.Figure {
	t.Helper()
	b := bench.Steps(t, append([]string{bench.Etch}, steps...)...)
	return handling.Read(b.Case, nil, b.Walk, nil, nil)
}

// What is worked out by hand: of powder and flakes, of a sonicator, an oven and a base.
func TestFiguresOfHandling(t *testing.T) {
	all := read(t, wash, "  - {do: redisperse, in: pot, what: [{substance: water, volume: 45 mL}]}\n",
		"  - {do: sonicate, in: pot, time: 10 min, temperature: 20 degC, power: 100 W}\n", filter,
		"  - {do: dry, in: pot, time: 12 h, temperature: 60 degC}\n")
	for id, want := range map[string]float64{
		"dust.mass@2":           1,
		"dust.heat@2":           20.7, // per gram, enthalpies of formation
		"dust.explosible_air@2": 25,   // 1 g at 40 g/m3
		"dust.heat@7":           11.9,
		"dry.margin@7":          190,
		"sonicate.heating@5":    28.6, // 100 W in 50 mL of water: 29 K/min
		"sonicate.minutes@5":    0.35,
	} {
		if v := bench.Find(t, all, id).Value.V; !nearly.Share(v, want, 0.03) {
			t.Errorf("%s = %g, want %g", id, v, want)
		}
	}
}

// Rats: 28.7 mg/kg through the skin; 70 kg comes to 2.0 g, which is 8 mL of 25 wt%.
func TestBaseIsRankedByTheSkin(t *testing.T) {
	all := read(t, wash, "  - {do: intercalate, in: pot, what: [{substance: tetramethylammonium hydroxide, "+
		"strength: 25 wt%, "+
		"volume: 8 mL}], time: 1 h, temperature: 25 degC}\n")
	if v := bench.Find(t, all, "skin.lethal@4/tmaoh").Value.V; !nearly.Share(v, 1, 0.03) {
		t.Errorf("8 mL of 25 wt%% = %g, want 1", v)
	}
}

// Of other bases of the kind no dose is held: gram for gram as the worst that is known, so that 10 mL of 40 wt%
// with 4 g in it come to 2.0 (common practice: handled as tetramethylammonium hydroxide).
func TestBasesWithoutADoseRankAsTheWorst(t *testing.T) {
	for _, name := range []string{"tetrabutylammonium hydroxide", "tetrapropylammonium hydroxide"} {
		all := read(t, wash, "  - {do: intercalate, in: pot, what: [{substance: "+name+
			", strength: 40 wt%, volume: 10 mL}], time: 1 h, temperature: 25 degC}\n")
		for i := range all {
			if f := &all[i]; f.Quantity == "skin.lethal" && !nearly.Share(f.Value.V, 4/2.009, 0.05) {
				t.Errorf("%s = %g, want 2.0", f.ID, f.Value.V)
			}
		}
	}
}

// Hydrazine: 91 mg/kg through the skin of rabbits (memory), 142 of its hydrate; 70 kg comes to 9.9 g.
// Butylamine: 626 mg/kg (memory), 43.8 g. What parts the layers and has no row is not below these.
func TestAminesAreRankedByTheSkin(t *testing.T) {
	for what, id := range map[string]string{"hydrazine monohydrate, mass: 9.94 g": "hydrazine_monohydrate",
		"butan-1-amine, mass: 43.8 g": "butylamine"} {
		all := read(t, wash, "  - {do: intercalate, in: pot, what: [{substance: "+what+"}], time: 1 h, "+
			"temperature: 25 degC}\n")
		if v := bench.Find(t, all, "skin.lethal@4/"+id).Value.V; !nearly.Share(v, 1, 0.01) {
			t.Errorf("%s = %g, want 1", what, v)
		}
	}
}

// Cake is looked at as it lies, and warms itself away in a smaller lump where it is warm.
func TestWarmCakeIsWorse(t *testing.T) {
	cold := bench.Find(t, read(t, wash, filter), "cake.critical@pot").Value.V
	warm := bench.Find(t, read(t, wash, filter, "  - {do: dry, in: pot, time: 12 h, temperature: 60 degC}\n"),
		"cake.critical@pot").Value.V
	if !(cold > 0.5 && cold < 200) || !(warm < cold/10) {
		t.Errorf("lump that warms itself away: %g kg cold, %g kg at 60 degC", cold, warm)
	}
}

// Cake at 60 degC boils after 40 K: water boils at 100 degC.
func TestCakeBoils(t *testing.T) {
	all := read(t, wash, filter, "  - {do: dry, in: pot, time: 12 h, temperature: 60 degC}\n")
	if v := bench.Find(t, all, "cake.boiling@pot").Value.V; !nearly.Share(v, 40, 1e-9) {
		t.Errorf("it boils after %g K, want 40", v)
	}
}

// What is not stated or not held stays, as unknown with what settles it.
func TestWhatIsNotHeldStays(t *testing.T) {
	all := read(t, wash, "  - {do: intercalate, in: pot, what: [{substance: a new base, "+
		"not_held: true, volume: 1 mL}], time: 1 h, "+
		"temperature: 25 degC}\n", "  - {do: sonicate, in: pot, time: 10 min, temperature: 20 degC}\n")
	for _, id := range []string{"skin.lethal@4/x_a_new_base", "sonicate.heating@5", "sonicate.minutes@5"} {
		if f := bench.Find(t, all, id); !f.Value.Unknown() || len(f.Value.Missing()) == 0 {
			t.Errorf("%s = %v, want unknown with what settles it", id, f.Value)
		}
	}
}

// Cake stays where something that is not held makes it unknown whether the powder is etched,
// or comes to flakes that were washed before.
func TestCakeOfWhatIsNotHeldStays(t *testing.T) {
	const brings = "what: [{substance: strange, not_held: true, volume: 5 mL}], temperature: 25 degC"
	move := "  - {do: transfer, in: pot, into: drum}\n"
	bench.Find(t, read(t, wash, move, "  - {do: intercalate, in: drum, "+brings+", time: 1 h}\n"), "cake.share@drum")
	f := bench.Find(t, read(t, "  - {do: mix, in: pot, "+brings+"}\n", wash, move), "cake.share@drum")
	if !f.Value.Unknown() || len(f.Value.Missing()) == 0 {
		t.Errorf("%v, want unknown with what settles it", f.Value)
	}
}
