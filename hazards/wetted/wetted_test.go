package wetted_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/wetted"
	"etchbound/schemas/long"
)

// made are the figures of a route of a pot and a drum, by place and part.
func made(t *testing.T, pot, steps string) map[string]figure.Figure {
	t.Helper()
	text := "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n" +
		"  pot: {kind: bottle, capacity: 1 L, " + pot + "}\n" +
		"  drum: {kind: drum, capacity: 10 L, material: HDPE, lid_material: HDPE, closure: vented}\nsteps:\n" + steps
	r, problems, err := route.Load("check.yaml", strings.NewReader(text))
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
	for _, f := range wetted.Read(c, nil, &k) {
		id := f.Place.Key() + "/" + f.Agent
		if _, twice := out[id]; twice {
			t.Errorf("%s stands there twice", id)
		}
		out[id] = f
	}
	return out
}

// in holds a liquor for a time, h, at a temperature, degC; that of 0 is not stated.
func in(what string, hours, degC float64, more string) string {
	charge := "  - {do: charge, in: pot, what: [{substance: " + what + ", volume: 50 mL}]"
	hold := fmt.Sprintf(", temperature: %g degC}\n  - {do: hold, in: pot, time: %g h, temperature: %g degC%s}\n", degC,
		hours,
		degC, more)
	if degC == 0 {
		hold = fmt.Sprintf(", over: %g h}\n", hours)
	}
	return charge + hold + "  - {do: collect, in: pot, into: drum}\n"
}

const (
	pfa    = "material: PFA, lid_material: PFA, closure: vented"
	hf     = "HF, strength: 10 wt%"
	hf48   = "HF, strength: 48 wt%"
	hcl    = "HCl, strength: 20 wt%"
	tmaoh  = "TMAOH, strength: 25 wt%"
	nitric = "nitric acid, strength: 65 wt%"
)

// with is a pot of PFA with a thing in its liquor.
func with(what, of string) string {
	return pfa + ", wetted: [{what: " + what + ", material: " + of + "}]"
}

const (
	stands, looked, attacked = 0.0, 1.0, 2.0
)

// What people use, in what it meets, how hot and how long (rows of the tables of materials
// and their sources; service temperatures of plastics and rubbers).
func TestEachPartIsHeldAgainstWhatItMeets(t *testing.T) {
	for _, c := range []struct {
		pot, liquor string
		hours, degC float64
		part        string
		want        float64
	}{
		{"material: glass, closure: open", hf, 1, 20, "wall", attacked},
		{"material: glass, closure: open", hcl, 1, 20, "wall", stands},
		{"material: glass, closure: open", tmaoh, 1, 80, "wall", looked},
		{pfa, hf, 24, 35, "wall", stands},
		{pfa, hf, 24, 35, "lid", stands},
		{"material: PFA, lid_material: glass, closure: vented", hf, 1, 20, "lid", attacked},
		{"material: PFA, lid_material: aluminium foil, closure: vented", hcl, 1, 20, "lid", attacked},
		{with("sonicator tip", "titanium"), hf, 1, 20, "sonicator_tip", attacked},
		{with("stir bar", "PTFE-coated"), hf, 1, 20, "stir_bar", stands},
		{with("stir bar", "glass-coated"), hf, 1, 20, "stir_bar", attacked},
		{with("thermometer", "glass"), hf, 1, 20, "thermometer", attacked},
		{with("pH electrode", "glass"), hf, 1, 20, "ph_electrode", attacked},
		{with("electrode", "platinum"), hf, 1, 20, "electrode", stands},
		{with("filter membrane", "cellulose nitrate"), hf, 1, 20, "filter_membrane", attacked},
		{with("filter membrane", "PVDF"), hf, 1, 20, "filter_membrane", stands},
		{with("filter membrane", "PVDF"), tmaoh, 1, 20, "filter_membrane", attacked},
		{with("O-ring", "FKM"), tmaoh, 1, 20, "o_ring", attacked},
		{with("O-ring", "FKM"), hf, 1, 20, "o_ring", looked},
		{with("balance pan", "stainless steel"), hf, 1, 20, "balance_pan", attacked},
		{with("glove box window", "PMMA"), hf, 1, 20, "glove_box_window", attacked},
		{with("glove", "nitrile"), hf, 0.5, 20, "glove", looked},
		{with("glove", "nitrile"), hf, 3, 20, "glove", attacked},
		{with("pump head", "PEEK"), hf, 1, 20, "pump_head", attacked},
		{with("fridge shelf", "brass"), hcl, 1, 20, "fridge_shelf", attacked},
		{with("tubing", "silicone"), hcl, 1, 20, "tubing", attacked},
		{with("funnel", "PP"), nitric, 1, 20, "funnel", looked},
		{with("funnel", "PP"), hf48, 1, 20, "funnel", stands},
		{with("funnel", "PP"), hf48, 100, 20, "funnel", looked},
		{with("seal", "EPDM"), tmaoh, 1, 20, "seal", stands},
		{with("seal", "EPDM"), tmaoh, 1, 140, "seal", attacked}, // it is used to 130 degC
		{with("tip", "unobtainium"), hf, 1, 20, "tip", math.NaN()},
	} {
		f, there := made(t, c.pot, in(c.liquor, c.hours, c.degC, ""))["pot/"+c.part]
		if !there || !same(f.Value.V, c.want) || f.Value.Unknown() != math.IsNaN(c.want) {
			t.Errorf("%s of %s in %s: %g, want %g (%v)", c.part, c.pot, c.liquor, f.Value.V, c.want, f.Conditions)
		}
	}
}

func same(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }

// worse is a value in the order of verdicts: what is not known is no better than what
// exceeds.
func worse(v float64) float64 {
	if math.IsNaN(v) {
		return attacked
	}
	return v
}

// Taking away what is said is never better, and of a wall nobody states nothing is known
// (definition of unknown).
func TestLessSaidIsNeverBetter(t *testing.T) {
	long.NotShort(t)
	for _, of := range []string{"PFA", "PP", "HDPE", "polystyrene", "nitrile", "FKM", "glass", "PVDF"} {
		for _, liquor := range []string{hf, hf48, hcl, tmaoh, nitric} {
			pot := with("part", of)
			full := made(t, pot, in(liquor, 2, 30, ""))["pot/part"].Value.V
			for what, less := range map[string]map[string]figure.Figure{
				"temperature": made(t, pot, in(liquor, 2, 0, "")),
				"material":    made(t, pfa+", wetted: [{what: part}]", in(liquor, 2, 30, "")),
				"substance":   made(t, pot, in("florbide, not_held: true", 2, 30, "")),
				"time": made(t, pot, strings.Replace(in(liquor, 2, 30, ""), "do: hold, in: pot, time: 2 h",
					"do: cool, in: pot", 1)),
			} {
				if got, there := less["pot/part"]; !there || worse(got.Value.V) < worse(full) {
					t.Errorf("%s in %s without its %s: %v, %g with it", of, liquor, what, got.Value, full)
				}
			}
		}
	}
	for _, part := range []string{"wall", "lid"} {
		for id, f := range made(t, "closure: vented", in(hf, 2, 30, "")) {
			if id == "pot/"+part && !f.Value.Unknown() {
				t.Errorf("%s that nobody states: %v", id, f.Value)
			}
		}
	}
}

// A liquor meets a place from the step that brings it until it is poured out; what stands
// in a container for waste stands there until it is fetched, and nobody says when.
func TestTheTimeOfContact(t *testing.T) {
	for steps, want := range map[string]struct{ pot, drum string }{
		in(hf, 24, 20, ""): {"material.hours 24", "material.hours_open 0"},
		in(hf, 24, 20, "") + "  - {do: hold, in: drum, time: 5 h, temperature: 20 degC}\n": {
			"material.hours 24", "material.hours_open 5"},
		"  - {do: charge, in: drum, what: [{substance: water, volume: 1 L}], temperature: 20 degC}\n" +
			strings.Replace(in(hf, 2, 20, ""), "do: collect", "do: hold, in: drum, time: 7 h, temperature: 20 degC}\n"+
				"  - {do: collect", 1): {"material.hours 9", "material.hours_open 0"},
	} {
		got := made(t, pfa, steps)
		for place, says := range map[string]string{"pot": want.pot, "drum": want.drum} {
			conditions := got[place+"/wall"].Conditions
			last := conditions.More[len(conditions.More)-1].More[0]
			if told := last.Key + " " + fmt.Sprint(last.Args...); told != says {
				t.Errorf("%s: %q, want %q\n%s", place, told, says, steps)
			}
		}
	}
}

// What a step needs in such a liquor is asked for where nobody names it, once a place, and
// not of water (definition).
func TestWhatAStepNeedsIsAskedFor(t *testing.T) {
	filter := "  - {do: filter, in: pot, into: drum}\n"
	for _, c := range []struct{ pot, steps, part string }{
		{pfa, in(hf, 1, 20, ", stirred: true"), "pot/stir_bar_or_stirrer"},
		{pfa, in(hf, 1, 20, ""), "pot/stir_bar_or_stirrer"}, // it may be
		{pfa, in(hf, 1, 20, ""), "pot/thermometer"},
		{pfa, strings.Replace(in(hf, 1, 20, ""), "  - {do: collect, in: pot, into: drum}\n", filter, 1),
			"pot/filter_membrane"},
		{pfa, "  - {do: charge, in: pot, what: [{substance: LiF, mass: 1 g}, {substance: HCl, strength: 9 mol/L, " +
			"volume: 20 mL}], temperature: 20 degC}\n", "pot/balance_pan_or_weighing_boat"},
		{pfa, "  - {do: charge, in: pot, what: [{substance: florbide, not_held: true, mass: 1 g}, {substance: water, " +
			"volume: 20 mL}], temperature: 20 degC}\n", "pot/balance_pan_or_weighing_boat"},
	} {
		f, there := made(t, c.pot, c.steps)[c.part]
		if !there || !f.Value.Unknown() {
			t.Errorf("%s: %v, %v", c.part, there, f.Value)
		}
		name, _, _ := strings.Cut(strings.TrimPrefix(c.part, "pot/"), "_or_")
		named := c.pot + ", wetted: [{what: " + strings.ReplaceAll(name, "_", " ") + ", material: PTFE}]"
		if f, there := made(t, named, c.steps)[c.part]; there && f.Value.Unknown() {
			t.Errorf("%s is asked for though it is named", c.part)
		}
	}
	if _, there := made(t, pfa, in(hf, 1, 20, ", stirred: false"))["pot/stir_bar_or_stirrer"]; there {
		t.Error("what stirs is asked for where nothing does")
	}
	for id := range made(t, pfa, in("water", 1, 20, ", stirred: true")) {
		t.Errorf("%s of water", id)
	}
}
