package labelling_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/classifying"
	"etchbound/hazards"
	"etchbound/hazards/labelling"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
)

func labelsOf(t *testing.T, text string) []labelling.Label {
	t.Helper()
	r, problems, err := route.Load("r.yaml", strings.NewReader(text))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	c.Brief = true
	v, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	return v.Labels
}

func bundled(t *testing.T, name string) []labelling.Label {
	t.Helper()
	b, err := os.ReadFile("../../testdata/routes/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return labelsOf(t, string(b))
}

func codes(l *labelling.Label) string {
	var out []string
	for _, f := range l.Classes {
		if !slices.Contains(out, f.Class.Code) {
			out = append(out, f.Class.Code)
		}
	}
	return strings.Join(out, " ")
}

func liquor(t *testing.T, all []labelling.Label, place string, step int) *labelling.Label {
	t.Helper()
	for i := range all {
		if l := &all[i]; l.Place == place && (slices.Contains(l.Steps, step) || step == 0 && len(l.Steps) == 0) {
			return l
		}
	}
	t.Fatalf("no label of %s in step %d", place, step)
	return nil
}

// Lithium fluoride in hydrochloric acid of 5.06 wt% HF by hand (3.2 g of LiF in 48.8 g):
// oral estimate 100 mg/kg, dermal 100, vapour 10 mg/L, so 3, 2 and 3 (Regulation (EC)
// 1272/2008 Table 3.1.1), and skin corrosion 1B from 1 wt% of HF.
func TestSaltInAcidIsLabelledAsHydrofluoricAcid(t *testing.T) {
	long.NotShort(t)
	all := bundled(t, "demo-lif-hcl-2g")
	l := liquor(t, all, "etch", 1)
	if got, want := codes(l), "H290 H301 H310 H331 H314 H335"; got != want || !l.Hydrofluoric {
		t.Errorf("%s, want %s", got, want)
	}
	if l.Carried == nil || l.Carried.Number != "UN 2922" {
		t.Errorf("carried as %+v", l.Carried)
	}
	if l := liquor(t, all, "tubes", 4); !strings.Contains(codes(l), "H310") {
		t.Errorf("what was poured into the tubes: %s", codes(l))
	}
	i := slices.IndexFunc(all, func(l labelling.Label) bool {
		return l.Substance != nil && l.Substance.Formula.Text == "LiF"
	})
	if i < 0 || all[i].FormsIn != 1 || !strings.Contains(codes(&all[i]), "H301") {
		t.Errorf("the dry salt: %+v", all[i])
	}
	if w := labelling.Worst(all, "etch"); w == nil || w.Signal() != "danger" {
		t.Errorf("the bottle bears %+v", w)
	}
}

const oneLiquor = `route: etchbound/1
title: check
basis: {status: invented}
places:
  one: {kind: bottle, material: HDPE, capacity: 1 L, closure: vented}
steps:
  - {do: charge, in: one, what: [{substance: water, volume: 90 mL}, %s], temperature: 20 degC}
`

// A liquor counts as corrosive by its pH alone: 0.1 mol/L of hydrochloric acid is at pH 1, 0.1 g of
// caustic soda in 90 mL, 0.028 mol/L, at 12.4, 0.05 g of slaked lime, 0.015 mol/L of hydroxide, at 12.2;
// 0.002 mol/L of acid is at 2.7, and 0.37 g of lime, 10 mmol of base, takes 10 mmol of acid.
func TestAnExtremePHIsCorrosive(t *testing.T) {
	const lime = "{substance: calcium hydroxide, mass: 5 g}"
	for _, v := range []struct {
		what    string
		extreme bool
	}{
		{"{substance: hydrochloric acid, strength: 1 mol/L, volume: 10 mL}", true},
		{"{substance: hydrochloric acid, strength: 0.02 mol/L, volume: 10 mL}", false},
		{"{substance: sodium hydroxide, mass: 0.1 g}", true},
		{"{substance: calcium hydroxide, mass: 0.05 g}", true},
		{"{substance: tetramethylammonium hydroxide, strength: 1 wt%, volume: 50 mL}", true},
		{"{substance: sodium hydroxide, mass: 5 mg}", false},
		{"{substance: sodium chloride, mass: 1 g}", false},
		{"{substance: hydrochloric acid, strength: 1 mol/L, volume: 10 mL}, " + lime, true},
		{"{substance: hydrochloric acid, strength: 1 mol/L, volume: 10 mL}, {substance: calcium hydroxide, mass: 0.37 g}",
			false},
	} {
		l := liquor(t, labelsOf(t, strings.Replace(oneLiquor, "%s", v.what, 1)), "one", 1)
		if l.Extreme != v.extreme || v.extreme != strings.Contains(codes(l), "H314") || v.extreme && l.Signal() != "danger" {
			t.Errorf("%s: %v %s", v.what, l.Extreme, codes(l))
		}
	}
}

// What is acid fluoride counts as hydrofluoric acid without another acid; a plain fluoride
// salt in water does not; what has no row is named (common practice).
func TestAcidFluorideNeedsNoAcid(t *testing.T) {
	for _, v := range []struct {
		what         string
		hydrofluoric bool
		code         string
	}{
		{"{substance: ammonium bifluoride, mass: 10 g}", true, "H314"},
		{"{substance: ammonium fluoride, mass: 10 g}", true, "H310"},
		{"{substance: tetrafluoroboric acid, strength: 50 wt%, mass: 10 g}", true, "H310"},
		{"{substance: sodium fluoride, mass: 1 g}", false, "EUH032"},
		{"{substance: sodium chloride, mass: 1 g}", false, ""},
	} {
		l := liquor(t, labelsOf(t, strings.Replace(oneLiquor, "%s", v.what, 1)), "one", 1)
		if l.Hydrofluoric != v.hydrofluoric || !strings.Contains(codes(l), v.code) {
			t.Errorf("%s: %v %s", v.what, l.Hydrofluoric, codes(l))
		}
	}
	odd := "{substance: oddium salt, formula: NaCl, not_held: true, mass: 1 g}"
	l := liquor(t, labelsOf(t, strings.Replace(oneLiquor, "%s", odd, 1)), "one", 1)
	if !slices.Contains(l.NotHeld, "oddium salt") {
		t.Errorf("not held: %v", l.NotHeld)
	}
}

// Tubes that hold 10 wt% HF and later 25 wt% TMAOH bear what either has: only the acid is toxic when
// breathed, only the base damages organs, and both burn.
func TestABottleBearsWhatAnyOfItsLiquorsHas(t *testing.T) {
	of := func(name string, share float64) labelling.Label {
		s, _ := chemicals.Library().Find(name)
		return labelling.Label{Place: "tubes", Classified: classifying.Mixture([]classifying.Part{{Sub: s, Share: share}})}
	}
	got := codes(labelling.Worst([]labelling.Label{of("hf", 10), of("tmaoh", 25)}, "tubes"))
	for _, code := range []string{"H310", "H314", "H330", "H370"} {
		if strings.Count(got, code) != 1 {
			t.Errorf("%s: no %s, or twice", got, code)
		}
	}
}

// What was neutralised is labelled as it was before.
func TestWhatWasNeutralisedIsSaid(t *testing.T) {
	long.NotShort(t)
	if l := liquor(t, bundled(t, "demo-lif-hcl-2g"), "drum", 10); !l.Neutralised || len(l.Classes) == 0 {
		t.Errorf("%+v", l)
	}
}

const driedFlakes = `route: etchbound/1
title: check
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}
places:
  one: {kind: bottle, material: PTFE, capacity: 100 mL, closure: vented}
  drum: {kind: drum, material: HDPE, capacity: 5 L, closure: vented}
  jar: {kind: bottle, material: HDPE, capacity: 50 mL, closure: closed}
steps:
  - {do: charge, in: one, what: [{substance: hydrofluoric acid, strength: 40 wt%, volume: 20 mL}], temperature: 20 degC}
  - {do: add, in: one, what: [precursor], over: 20 min, temperature: 25 degC}
  - {do: wash, in: one, into: drum, what: [{substance: water, volume: 60 mL}], cycles: 6, retained: 5 mL/g}
  - {do: dry, in: one, time: 24 h, temperature: 60 degC}
  - {do: transfer, in: one, into: jar}
`

// Alcohol is gone when flakes are dry (common practice).
const alcohol = "  - {do: exchange, in: one, into: drum, what: [{substance: isopropanol, volume: 60 mL}], cycles: 3}\n"

// Dried flakes are no acid above 60 wt%, packing group I: what is left after six washes, 2.2 g
// of HF times (5/65)^6, is below a microgram beside a gram of flakes (hand calculation).
func TestDriedFlakesAreNoAcid(t *testing.T) {
	for _, text := range []string{driedFlakes, strings.Replace(driedFlakes, "  - {do: dry,", alcohol+"  - {do: dry,", 1)} {
		all := labelsOf(t, text)
		last := strings.Count(text, "do:")
		for step, place := range map[int]string{last - 1: "one", last: "jar"} {
			l := liquor(t, all, place, step)
			if !l.Dried || !l.Hydrofluoric || l.Carried != nil || codes(l) != "" {
				t.Errorf("%s: %+v", place, l)
			}
		}
	}
}

// Dry fluoride that is hot in the air gives hydrogen fluoride with its moisture (pyrohydrolysis,
// common practice), acid or none, with powder and without, by whatever verb: what lies there is
// headed so until a liquid comes, and the salt reads in which step. Cold it is the salt. A
// complex that water takes apart needs neither acid nor heat.
func TestHotFluorideIsHydrofluoric(t *testing.T) {
	head := "route: etchbound/1\ntitle: T\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 1 g}\n" +
		"places: {pot: {kind: crucible, material: alumina, capacity: 1 L, closure: open}}\nsteps:\n" +
		"  - {do: charge, in: pot, temperature: 20 degC, what: [SALT]}\n"
	for _, v := range []struct {
		salt, then string
		hot        bool
		forms      int
	}{
		{"{substance: sodium fluoride, mass: 5 g}", "{do: melt, in: pot, time: 2 h, temperature: 990 degC}", true, 2},
		{"precursor, {substance: lithium fluoride, mass: 5 g}", "{do: hold, in: pot, time: 2 h, temperature: 900 degC}",
			true, 2},
		{"{substance: potassium fluoride, mass: 5 g}", "{do: heat_closed, in: pot, time: 2 h, temperature: 300 degC}",
			true, 2},
		{"{substance: sodium fluoride, mass: 5 g}", "{do: hold, in: pot, time: 2 h, temperature: 25 degC}", false, 0},
		{"{substance: sodium fluoride, mass: 5 g}, {substance: water, volume: 50 mL}",
			"{do: hold, in: pot, time: 2 h, temperature: 25 degC}", false, 0},
		{"{substance: sodium tetrafluoroborate, mass: 5 g}, {substance: water, volume: 50 mL}",
			"{do: hold, in: pot, time: 2 h, temperature: 25 degC}", true, 1},
	} {
		all := labelsOf(t, strings.Replace(head, "SALT", v.salt, 1)+"  - "+v.then+"\n")
		if l := liquor(t, all, "pot", 2); l.Hydrofluoric != v.hot || all[0].FormsIn != v.forms {
			t.Errorf("%s, %s: headed %v, forms in %d", v.salt, v.then, l.Hydrofluoric, all[0].FormsIn)
		}
	}
}

// A salt that lies dry is carried as the solid it is and reads in which step its own fluoride
// meets acid, not in which another does; that of a tin no acid comes to would form it.
func TestADrySaltIsItself(t *testing.T) {
	all := labelsOf(t, "route: etchbound/1\ntitle: T\nbasis: {status: invented}\nplaces:\n"+
		"  pot: {kind: bottle, material: PTFE, capacity: 1 L, closure: open}\n"+
		"  tin: {kind: vial, material: PTFE, capacity: 50 mL, closure: closed}\nsteps:\n"+
		"  - {do: charge, in: tin, what: [{substance: ammonium bifluoride, mass: 5 g}], temperature: 20 degC}\n"+
		"  - {do: charge, in: pot, what: [{substance: zinc fluoride, mass: 5 g}], temperature: 20 degC}\n"+
		"  - {do: charge, in: pot, what: [{substance: hydrochloric acid, strength: 10 wt%, volume: 50 mL}], "+
		"temperature: 20 degC}\n")
	l := liquor(t, all, "tin", 1)
	if l.Carried == nil || l.Carried.Number != "UN 1727" || !l.Hydrofluoric || !l.Dry ||
		strings.Contains(codes(l), "H330") {
		t.Errorf("the tin: %s %+v", codes(l), l.Carried)
	}
	if !all[0].Would || all[0].FormsIn != 0 || all[1].FormsIn != 3 || !liquor(t, all, "pot", 3).Hydrofluoric {
		t.Errorf("bifluoride forms in %d, zinc fluoride in %d", all[0].FormsIn, all[1].FormsIn)
	}
}

// A share worked out from amounts is at a limit that the strength as written is at: base of
// 25 wt% is carried as from 25 wt% on (UN Model Regulations Rev. 22).
func TestAShareAtALimitIsAtIt(t *testing.T) {
	all := labelsOf(t, "route: etchbound/1\ntitle: T\nbasis: {status: invented}\nplaces:\n"+
		"  pot: {kind: bottle, material: PTFE, capacity: 1 L, closure: open}\nsteps:\n"+
		"  - {do: charge, in: pot, what: [{substance: tmaoh, strength: 25 wt%, mass: 100 g}], temperature: 20 degC}\n")
	if l := liquor(t, all, "pot", 1); l.Carried == nil || l.Carried.Number != "UN 3560" {
		t.Errorf("carried as %+v", l.Carried)
	}
}
