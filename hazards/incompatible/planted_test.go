package incompatible

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// made is a route of one or two containers: a flask and a waste bottle of which something
// is said, and steps.
func made(t *testing.T, bottle string, steps ...string) map[string]figure.Figure {
	t.Helper()
	text := "route: etchbound/1\ntitle: check\nbasis: {status: invented}\n" +
		"precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}\nplaces:\n" +
		"  flask: {kind: bottle, material: PTFE, lid_material: PTFE, capacity: 1 L, closure: vented}\n" +
		"  waste_bottle: {kind: bottle, lid_material: PTFE, capacity: 2 L, " + bottle + "}\nsteps:\n" +
		strings.Join(steps, "")
	r, problems, err := route.Load("r.yaml", strings.NewReader(text))
	if err != nil || r == nil || len(problems) > 0 {
		t.Fatal(err, problems, text)
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	k, err := process.Go(c, nil)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]figure.Figure{}
	for _, f := range Read(c, nil, &k) {
		out[f.Place.Key()+"/"+f.Agent] = f
	}
	return out
}

// in charges a container, and pour brings the flask to the waste.
func in(place, what string) string {
	return "  - {do: charge, in: " + place + ", what: [{substance: " + what + "}], temperature: 20 degC}\n"
}

const (
	pour    = "  - {do: collect, in: flask, into: waste_bottle}\n"
	fresh   = "material: HDPE, closure: vented, held_before: [empty, new]"
	powder  = "  - {do: add, in: flask, what: precursor, over: 10 min, temperature: 20 degC}\n"
	water   = "water, volume: 100 mL"
	hf      = "hydrofluoric acid, strength: 10 wt%, volume: 50 mL"
	hcl     = "hydrochloric acid, strength: 20 wt%, volume: 50 mL"
	nitric  = "nitric acid, strength: 65 wt%, volume: 50 mL"
	lye     = "sodium hydroxide, strength: 10 wt%, volume: 50 mL"
	salmiac = "ammonium chloride, mass: 5 g"
	alc     = "ethanol, volume: 20 mL"
	soda    = "  - {do: neutralise, in: waste_bottle, what: [{substance: sodium hydrogencarbonate, mass: 60 g}], " +
		"over: 30 min, temperature: 20 degC}\n"
)

// before is a waste bottle of which something earlier is said.
func before(what string) string {
	return "material: HDPE, closure: closed, held_before: [" + what + "]"
}

// Incidents as they are reported of laboratories, and others of the same kind, are found
// with their place and step (public incident notes; own chemistry of the rows).
func TestPlantedIncidentsAreFound(t *testing.T) {
	peroxide := "hydrogen peroxide, strength: 30 wt%, volume: 20 mL"
	for i, c := range []struct {
		bottle string
		steps  []string
		want   string // place/pair
		step   int
	}{
		{before("potassium permanganate, ethanol"), []string{in("flask", hf), pour}, "waste_bottle/oxidant_organic", 0},
		{before("methanol"), []string{in("flask", nitric), pour}, "waste_bottle/nitric_organic", 2},
		{before("isopropanol"), []string{in("flask", hcl), in("flask", nitric), pour}, "waste_bottle/nitric_organic", 3},
		{before("isopropanol"), []string{in("flask", hcl), in("flask", nitric), pour}, "flask/nitric_chloride", 2},
		{before("organic waste"), []string{in("flask", nitric), pour}, "waste_bottle/nitric_organic", 2},
		{before("nitric acid"), []string{in("flask", alc), pour}, "waste_bottle/nitric_organic", 2},
		{before("acid waste"), []string{in("flask", "sodium sulfite, mass: 5 g"), in("flask", water), pour},
			"waste_bottle/sulfite_acid", 3},
		{before("bleach"), []string{in("flask", hcl), pour}, "waste_bottle/hypochlorite_acid", 2},
		{before("bleach"), []string{in("flask", "ammonium fluoride, mass: 5 g"), in("flask", water), pour},
			"waste_bottle/hypochlorite_ammonium", 3},
		{before("aqua regia"), []string{in("flask", "acetone, volume: 20 mL"), pour}, "waste_bottle/ketone_nitric", 2},
		{before("piranha"), []string{in("flask", alc), pour}, "waste_bottle/oxidant_organic", 2},
		{before("sodium azide"), []string{in("flask", hcl), pour}, "waste_bottle/azide_acid", 2},
		{before("potassium cyanide"), []string{in("flask", hf), pour}, "waste_bottle/cyanide_acid", 2},
		{before("sodium carbonate"), []string{in("flask", hf), pour}, "waste_bottle/carbonate_acid", 2},
		{before("ammonium chloride"), []string{in("flask", lye), pour}, "waste_bottle/base_ammonium", 2},
		{before("chlorinated solvent"), []string{in("flask", lye), pour}, "waste_bottle/base_halocarbon", 2},
		{before("etch waste"), []string{in("flask", peroxide), pour}, "waste_bottle/peroxide_powder", 2},
		{before("hf waste"), []string{in("flask", nitric), pour}, "waste_bottle/nitric_hf", 2},
		{before("lithium fluoride"), []string{in("flask", hcl), pour}, "waste_bottle/acid_fluoride_salt", 2},
		{fresh, []string{in("flask", "dmso, volume: 50 mL"), in("flask", hcl), pour}, "flask/dmso_acid", 2},
		{fresh, []string{in("flask", "dmso, volume: 50 mL"), in("flask", hcl), pour}, "waste_bottle/dmso_acid", 3},
		{fresh, []string{in("flask", "acetone, volume: 20 mL"), in("flask", peroxide), pour}, "flask/peroxide_ketone", 2},
		{fresh, []string{in("flask", "calcium carbonate, mass: 5 g"), in("flask", hcl)}, "flask/carbonate_acid", 2},
		{fresh, []string{in("flask", "ammonium persulfate, mass: 5 g"), in("flask", hcl)}, "flask/persulfate_chloride", 2},
		{fresh, []string{in("flask", hf), in("flask", "sulfuric acid, strength: 96 wt%, volume: 20 mL")},
			"flask/sulfuric_hf", 2},
		{fresh, []string{in("flask", hcl), powder, in("flask", nitric)}, "flask/nitric_chloride", 3},
		{fresh, []string{in("flask", peroxide), powder}, "flask/peroxide_powder", 2},
		{fresh, []string{in("flask", "nmp, volume: 50 mL"), in("flask", peroxide)}, "flask/amide_oxidant", 2},
		{fresh, []string{in("waste_bottle", lye), in("flask", hf), powder, pour}, "waste_bottle/base_powder", 4},
		{fresh, []string{in("waste_bottle", salmiac), in("flask", lye), pour}, "waste_bottle/base_ammonium", 3},
		{before("ammonium bifluoride"), []string{in("flask", hcl), pour}, "waste_bottle/acid_bifluoride", 2},
		{fresh, []string{in("waste_bottle", hcl), soda, in("flask", hcl), pour}, "waste_bottle/carbonate_acid", 4},
		{"material: glass, closure: vented, held_before: [new]", []string{in("flask", hf), pour}, "waste_bottle/hf_glass", 2},
		{"material: steel, closure: vented, held_before: [new]", []string{in("flask", hf), pour},
			"waste_bottle/acid_metal_can", 2},
		{"material: aluminium, closure: vented, held_before: [new]", []string{in("flask", lye), pour},
			"waste_bottle/base_aluminium_wall", 2},
		{"material: HDPE, closure: closed, held_before: [new]", []string{in("flask", peroxide), pour},
			"waste_bottle/peroxide_alone", 2},
		{fresh, []string{"  - {do: melt, in: flask, what: [{substance: zinc chloride, mass: 5 g}], time: 1 h, " +
			"temperature: 550 degC}\n", in("flask", water)}, "flask/melt_water", 2},
	} {
		f, there := made(t, c.bottle, c.steps...)[c.want]
		told := slices.ContainsFunc(f.Conditions.Args, func(a any) bool { return a == c.step })
		if !there || f.Value.V != 1 || c.step > 0 && !told {
			t.Errorf("%d: %s in step %d: %v, %v", i, c.want, c.step, f.Value, f.Conditions)
		}
	}
}

// What a step means is named, and nothing is invented (common practice).
func TestWhatAStepMeansIsNoStop(t *testing.T) {
	salt := "lithium fluoride, mass: 1.6 g"
	wash := "  - {do: wash, in: flask, into: waste_bottle, what: [{substance: water, volume: 200 mL}], cycles: 6}\n"
	lime := "  - {do: neutralise, in: waste_bottle, what: [{substance: calcium carbonate, mass: 50 g}]}\n"
	for i, steps := range [][]string{
		{in("flask", salt), in("flask", hcl), powder, wash, lime},
		{in("flask", hf), powder, pour, lime},
		{in("flask", "ammonium bifluoride, mass: 3 g"), in("flask", hcl), powder, pour,
			"  - {do: neutralise, in: waste_bottle, what: [{substance: calcium hydroxide, mass: 50 g}]}\n"},
		{in("flask", "tmaoh, strength: 25 wt%, volume: 20 mL"), powder, wash},
		{in("flask", hf), powder, wash, in("flask", "ammonia, strength: 2 wt%, volume: 20 mL")},
		{"  - {do: melt, in: flask, what: [precursor, {substance: zinc chloride, mass: 5 g}], time: 1 h, " +
			"temperature: 550 degC}\n", "  - {do: cool, in: flask, temperature: 25 degC}\n", in("flask", water)},
	} {
		for id, f := range made(t, fresh, steps...) {
			if f.Value.Unknown() || f.Value.V != 0 {
				t.Errorf("%d: %s is %v: %v", i, id, f.Value, f.Conditions)
			}
		}
	}
}

// Less said is never better: of a container for waste nobody knows what stood in it, and
// what is not held may be anything (definition).
func TestWhatIsNotSaidStaysUnknown(t *testing.T) {
	bare := "material: HDPE, closure: vented"
	for what, steps := range map[string][]string{
		"waste_bottle/" + Before: {in("flask", hf), pour},
		"flask/not_held":         {in("flask", hf), in("flask", "florbide, not_held: true, mass: 1 g")},
	} {
		if f, there := made(t, bare, steps...)[what]; !there || !f.Value.Unknown() {
			t.Errorf("%s: %v, %v", what, there, f.Value)
		}
	}
	if f := made(t, before("something green"), in("flask", hf), pour)["waste_bottle/not_held"]; !f.Value.Unknown() {
		t.Errorf("a word that nobody knows: %v", f.Value)
	}
	if _, there := made(t, before("methanol"), in("flask", nitric), pour)["waste_bottle/"+Before]; there {
		t.Error("it was said what stood in it")
	}
}

// The stock of a site is held against the table by where it stands: together, whatever the
// letters, is one too many; each in a place of its own is none; left out of one, nobody knows
// (lists of incompatible pairs; that acid stands apart from base, solvent and fluoride salt is
// common practice). Of two bottles of one acid the worse counts.
func TestStockStandsAsTheSiteSays(t *testing.T) {
	for _, c := range []struct {
		one, other string
		want       float64 // -1: not known
	}{
		{"nitric acid, strength: 65 wt%", "acetone", -1},
		{"nitric acid, strength: 65 wt%, stands: acids", "acetone, stands: solvents", 0},
		{"nitric acid, strength: 65 wt%, stands: acids", "acetone", -1},
		{"nitric acid, strength: 65 wt%, stands: acids", "acetone, stands: Acids", 1},
		{"hydrochloric acid, strength: 37 wt%, stands: a", "lithium fluoride, stands: a", 1},
		{"hydrochloric acid, strength: 37 wt%, stands: a", "lithium fluoride, stands: b", 0},
		{"hydrochloric acid, strength: 37 wt%, stands: a", "calcium hydroxide, stands: a", 1},
		{"hydrochloric acid, strength: 37 wt%", "isopropanol", -1},
	} {
		again := "  - {substance: " + c.one + ", mass: 1 kg}\n"
		site := "site: etchbound/1\ntitle: check\nstock:\n" + again + again +
			"  - {substance: " + c.other + ", mass: 1 kg}\n"
		s, problems, err := route.LoadSite("s.yaml", strings.NewReader(site))
		if err != nil || s == nil {
			t.Fatal(err, problems)
		}
		figs := stock(s)
		if len(figs) != 1 || figs[0].Value.Unknown() != (c.want < 0) || c.want >= 0 && figs[0].Value.V != c.want {
			t.Errorf("%s and %s: %v", c.one, c.other, fmt.Sprint(figs))
		}
	}
}

// What earlier stood in a container is read whether it is written as a list or one behind the
// other; acetone with nitric acid was read as something that nobody holds.
func TestWhatStoodThereIsReadOneBehindTheOther(t *testing.T) {
	for _, bottle := range []string{before("nitric acid, acetone"), before(`"nitric acid, acetone"`),
		before(`"nitric acid; acetone"`)} {
		f, there := made(t, bottle, in("flask", hf), pour)["waste_bottle/nitric_organic"]
		if !there || f.Value.V != 1 {
			t.Errorf("%s: %v", bottle, f.Value)
		}
	}
}
