package hazards_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// oneOf is a substance of a class, as a material of a step; of powder, one that is no
// powder of a route.
func oneOf(t *testing.T, class string, not string) (slug, material string) {
	t.Helper()
	class = strings.TrimPrefix(class, "loose_")
	class, alone := strings.CutSuffix(class, "+decomposes") // as it is sold it gives gas by itself
	if class == "water" {
		return "water", "{substance: water, volume: 50 mL}"
	}
	if class == "dry_ice" { // a gas that is put in as a solid
		return "carbon_dioxide", "{substance: dry ice, mass: 2 g}"
	}
	for _, s := range chemicals.Library().All() {
		if !s.Is(class) || s.Slug == not || s.State == "aq" || s.State == "g" && s.Solution == "" {
			continue
		}
		amount := "mass: 2 g"
		switch {
		case s.State != "s" && (s.Solution != "" || s.Kind == "acid" || s.Kind == "oxidant"):
			amount = "strength: 10 wt%, volume: 50 mL"
			if alone {
				amount = "strength: 68 wt%, volume: 50 mL"
			}
		case s.State == "l":
			amount = "amount: 0.2 mol"
		}
		return s.Slug, fmt.Sprintf("{substance: %q, %s}", s.Name, amount)
	}
	name, there := unheldOf[class]
	if !there {
		t.Fatalf("no substance of the class %s", class)
	}
	return name, fmt.Sprintf("{substance: %q, mass: 2 g, not_held: true}", name)
}

// unheldOf are names of substances of the classes of which none is held.
var unheldOf = map[string]string{"perchloric": "perchloric acid", "azide": "sodium azide",
	"cyanide_sulfide": "sodium sulfide", "halocarbon": "chloroform", "nitrite": "sodium nitrite",
	"hydride": "sodium hydride", "drying_oxide": "phosphorus pentoxide", "perchlorate": "silver perchlorate",
	"water_metal": "sodium metal"}

// shutIn is a bottle of a material into which two things go, one after the other.
func shutIn(wall, closure string, first, second string) string {
	return head + "places: {pot: {kind: bottle, material: " + wall + ", lid_material: PTFE, capacity: 1 L" + closure +
		"}}\nsteps:\n" + charges(first) + charges(second)
}

// Whatever pair gives gas that nobody works out, the pressure of the bottle it is shut in
// is unknown and exceeds, and work stops. Stated as vented it has no finding, but is not
// to be shut. Each of the two alone is told by no pair of two.
func TestWhatNobodyFollowsIsNotToBeShut(t *testing.T) {
	long.Only(t)
	const id = "gas.closed.pressure@pot"
	for _, p := range meeting.Pairs() {
		if _, wall := p.Wall(); wall || p.Gas != meeting.UnknownGas || p.A.Is("not_held") || p.A.Is("molten") ||
			p.A.Done() {
			continue // what a verb does stands in no bottle
		}
		t.Run(p.ID, func(t *testing.T) {
			slug, a := oneOf(t, p.A.String(), "")
			b := "{substance: water, volume: 50 mL}"
			switch {
			case strings.Contains(p.A.String(), "+"):
				b = a // weaker it keeps
			case !p.B.Same(p.A):
				_, b = oneOf(t, p.B.String(), slug)
			}
			for _, both := range [][2]string{{a, b}, {b, a}} {
				rv := reviewed(t, shutIn("PTFE", ", closure: closed", both[0], both[1]), true)
				f := figureOf(&rv, id)
				if f == nil || !f.Value.Unknown() || verdicts(&rv)[id+"+no_rated_container"] != figure.Exceeds {
					t.Errorf("%v: %v", both, f)
				}
				if len(rv.Holds) == 0 || rv.Holds[0].ID != "unfollowed" {
					t.Errorf("%v: hold points %v", both, rv.Holds)
				}
			}
			rv := reviewed(t, shutIn("PTFE", ", closure: open", a, b), true)
			if f := figureOf(&rv, id); f != nil && f.Of().Case.State != figure.Closed { // what it would be if shut
				t.Errorf("open: %v", f)
			}
		})
	}
}

// A wall that what it holds dissolves gives gas, and one that nobody stated may. One that
// is stated and stands gives none.
func TestAWallMayGiveGas(t *testing.T) {
	long.NotShort(t)
	const id = "gas.closed.pressure@pot"
	const hf = "{substance: hydrofluoric acid, strength: 5 wt%, volume: 50 mL}"
	const lye = "{substance: sodium hydroxide, strength: 2 mol/L, volume: 50 mL}"
	for _, c := range []struct {
		wall, what string
		gives      bool
	}{
		{"steel", hf, true}, {"stainless steel", hf, true}, {"glass", hf, true}, {"aluminium", lye, true},
		{`""`, hf, true}, {"zorblium", hf, true}, {"HDPE", hf, false}, {"PTFE", lye, false}, {"platinum", hf, false},
	} {
		rv := reviewed(t, shutIn(c.wall, "", c.what, "{substance: water, volume: 5 mL}"), true)
		f := figureOf(&rv, id)
		if gives := f != nil && f.Value.Unknown(); gives != c.gives {
			t.Errorf("%s with %s: %v", c.wall, c.what, f)
		}
		if c.gives && verdicts(&rv)[id+"+no_rated_container"] != figure.Exceeds {
			t.Errorf("%s with %s: no finding", c.wall, c.what)
		}
	}
}

// What is heated closed is never told to be kept vented.
func TestHeatedClosedIsNotToldToBeVented(t *testing.T) {
	hot := func(what string) string {
		return head + "places: {pot: {kind: autoclave, material: PTFE, lid_material: PTFE, capacity: 100 mL}}\nsteps:\n" +
			charges(what) + "  - {do: heat_closed, in: pot, time: 5 h, temperature: 140 degC, attended: true}\n"
	}
	for name, what := range map[string]string{
		"followed": hf10,
		"not followed": hf10 + ", {substance: ethanol, volume: 5 mL}, {substance: hydrogen peroxide, " +
			"strength: 30 wt%, volume: 5 mL}",
	} {
		rv := reviewed(t, hot(what), true)
		var ids []string
		for _, h := range rv.Holds {
			ids = append(ids, h.ID)
			if says := strings.ToLower(words.Say(h.Says)); strings.Contains(says, "keep it vented") ||
				strings.Contains(says, "open to a vent") {
				t.Errorf("%s: %s", name, says)
			}
		}
		if !slices.Contains(ids, "no_rated_container") || !slices.Contains(ids, "heated_closed") {
			t.Errorf("%s: hold points %v", name, ids)
		}
		for i := range rv.Findings {
			for _, n := range rv.Findings[i].Needs {
				if strings.Contains(words.Say(n.Says), "open to a vent") {
					t.Errorf("%s: %s", name, words.Say(n.Says))
				}
			}
		}
	}
}

// What stands open has no pressure, whatever is moved into it and whenever; a lid that is
// put on where powder reacts is a failure of its own.
func TestWhatStandsOpenHasNoPressure(t *testing.T) {
	long.Only(t)
	pressures := func(text string) (n int) {
		rv := followed(t, text)
		for i := range rv.Figures {
			if f := &rv.Figures[i]; f.Quantity == "gas.closed.pressure" && f.Place == figure.At("tubes") {
				n++
			}
		}
		return n
	}
	shut := spun("4")
	if n := pressures(shut); n < 2 {
		t.Errorf("%d pressures of tubes that are shut, as planned and moved unfinished", n)
	}
	if n := pressures(strings.Replace(shut, "closure: closed", "closure: open", 1)); n != 0 {
		t.Errorf("%d pressures of what stands open", n)
	}
	rv := followed(t, strings.Replace(strings.Replace(shut, "closure: vented, capacity: 250",
		"closure: open, capacity: 250", 1), "  - {do: transfer",
		"  - {do: hold, in: pot, time: 2 h, temperature: 20 degC}\n  - {do: transfer", 1))
	if f := figureOf(&rv, "gas.closed.time_to_10_kpa@2:lid_closed"); f == nil || f.Value.Unknown() {
		t.Errorf("a lid put on an open vessel: %v", f)
	}
}
