package scaling_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/route"
	"etchbound/scaling"
	"etchbound/schemas/long"
)

// What a committee expects of a change to a reviewed route: whether it goes back to review,
// by which rules and by no more than three (common practice: an improvement is noted, what
// is only named or written otherwise is not seen, and one matter is said once).
func TestWhatACommitteeExpects(t *testing.T) {
	long.Only(t)
	const hold = "  - {do: hold, in: pot, time: 24 h,"
	rows := []struct {
		name, from, to string
		rules          []string // all that may fire; the first has to
	}{
		{"another title", "title: check", "title: checked", nil},
		{"the same volume in another unit", "volume: 100 mL", "volume: 0.1 L", nil},
		{"the same strength in another unit", "strength: 10 wt%", "strength: 5.175 mol/L", nil},
		{"a stronger acid in another unit", "strength: 10 wt%", "strength: 5.8 mol/L", []string{"strength", "verdict"}},
		{"another name of the vessel", "pot", "kettle", nil},
		{"another name and half the vent", "pot:", "kettle:", []string{"vessel", "verdict"}},
		{"a short hold before the long one", hold, "  - {do: hold, in: pot, time: 5 min, temperature: 10 degC}\n" + hold,
			[]string{"procedure"}},
		{"a wider vent", "vent: 6 mm", "vent: 10 mm", nil},
		{"a narrower vent", "vent: 6 mm", "vent: 4 mm", []string{"vessel", "verdict"}},
		{"a better jacket", "ua: 5 W/K", "ua: 6 W/K", nil},
		{"a weaker jacket", "ua: 5 W/K", "ua: 4 W/K", []string{"vessel", "verdict"}},
		{"a lid on it", "closure: vented, capacity: 500 mL, material: PTFE, vent: 6 mm",
			"closure: closed, capacity: 500 mL, material: PTFE", []string{"vessel", "unknown", "verdict"}},
		{"ten times the powder alone", "mass: 2 g", "mass: 20 g", []string{"quantity", "verdict", "unknown"}},
		{"somebody there", "attended: false", "attended: true", nil},
		{"nobody there", "over: 10 min, temperature: 10 degC, attended: true",
			"over: 10 min, temperature: 10 degC, attended: false", []string{"attendance"}},
		{"slower", "over: 10 min", "over: 12 min", nil},
		{"glass for PTFE", "material: PTFE", "material: borosilicate glass", []string{"vessel", "verdict", "unknown"}},
		{"a measured heat that is less", "places:", "measured: {etch_heat: 600 kJ/mol}\nplaces:",
			[]string{"replaced", "verdict"}},
		{"a measured heat that changes little", "places:", "measured: {etch_heat: 715 kJ/mol}\nplaces:", nil},
	}
	for _, row := range long.Some(rows, 9, 3) {
		to := strings.ReplaceAll(reviewed, row.from, row.to)
		if strings.HasPrefix(row.name, "another name and") {
			to = strings.Replace(strings.ReplaceAll(reviewed, "pot", "kettle"), "vent: 6 mm", "vent: 3 mm", 1)
		}
		got := rulesOf(t, nil, to)
		for _, id := range got {
			if !slices.Contains(row.rules, id) {
				t.Errorf("%s: %s is met, of %v", row.name, id, got)
			}
		}
		if len(row.rules) > 0 && !slices.Contains(got, row.rules[0]) || len(got) > 3 {
			t.Errorf("%s: met are %v, want %v", row.name, got, row.rules)
		}
	}
}

// What is better or next to nothing is noted, and a step that comes between takes nothing away
// of what was known of those behind it (common practice): less liquor that stays with the solid,
// a way out of what was shut, a little more powder, of which next to no fluoride stays in the
// last liquor.
func TestAnImprovementIsNoted(t *testing.T) {
	long.Only(t)
	const tubes = "  tubes: {kind: tube, count: 4, material: polypropylene, capacity: 50 mL, closure: closed}\n" +
		"  drum: {kind: drum, material: HDPE, capacity: 20 L, closure: vented}\nsteps:"
	washed := strings.Replace(reviewed, "steps:", tubes, 1) + "  - {do: transfer, in: pot, into: tubes}\n" +
		"  - {do: centrifuge, in: tubes, into: drum, retained: 2 mL/g}\n" +
		"  - {do: wash, in: tubes, into: drum, cycles: 8, what: [{substance: water, volume: 100 mL}]}\n"
	const hold = "  - {do: hold, in: pot, time: 24 h,"
	for _, row := range []struct {
		name, from, to string
		rules          []string
	}{
		{"less stays", "retained: 2 mL/g", "retained: 1.5 mL/g", nil},
		{"more stays", "retained: 2 mL/g", "retained: 4 mL/g", []string{"procedure"}},
		{"a way out", "50 mL, closure: closed", "50 mL, closure: vented, vent: 2 mm", nil},
		{"a little more", "mass: 2 g", "mass: 2.1 g", nil},
		{"a hold between", hold, "  - {do: hold, in: pot, time: 5 min, temperature: 10 degC}\n" + hold,
			[]string{"procedure"}},
	} {
		got := rulesBetween(t, nil, washed, strings.Replace(washed, row.from, row.to, 1))
		if !slices.Equal(got, row.rules) {
			t.Errorf("%s: met are %v, want %v", row.name, got, row.rules)
		}
	}
}

// rulesOf are the rules that a change of the reviewed route meets, each once.
func rulesOf(t *testing.T, site *route.Site, proposed string) []string {
	t.Helper()
	return rulesBetween(t, site, reviewed, proposed)
}

func rulesBetween(t *testing.T, site *route.Site, was, is string) []string {
	t.Helper()
	a, b := newCase(t, was), newCase(t, is)
	a.Brief, b.Brief = true, true
	c, err := scaling.TriggersOf(site).Compare(a, b)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for i := range c.Fired {
		if len(c.Fired[i].Met) == 0 || slices.Contains(out, c.Fired[i].ID) {
			t.Errorf("%s is met by nothing, or twice", c.Fired[i].ID)
		}
		out = append(out, c.Fired[i].ID)
	}
	return out
}

// Many small changes of which none meets a rule of its own: powder and acid by a fifth more,
// the addition in 8.1 min where it took 10, by 4 K warmer. Heat comes at 1.2*10/8.1 = 1.48
// times the rate.
func TestManySmallChanges(t *testing.T) {
	long.NotShort(t)
	to := strings.NewReplacer("mass: 2 g", "mass: 2.4 g", "volume: 100 mL", "volume: 120 mL", "over: 10 min",
		"over: 8.1 min",
		"temperature: 10 degC", "temperature: 14 degC", "capacity: 500 mL", "capacity: 600 mL").Replace(reviewed)
	if got := rulesOf(t, nil, to); !slices.Contains(got, "creep") && !slices.Contains(got, "verdict") {
		t.Errorf("nothing is said of it: %v", got)
	}
	if got := rulesOf(t, nil, strings.Replace(reviewed, "over: 10 min", "over: 9.5 min", 1)); len(got) > 0 {
		t.Errorf("half a minute alone meets %v", got)
	}
}
