package route_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/route"
	"etchbound/schemas"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

// bath is a file with an etch bottle in a bath, acid in it, and further steps.
func bath(cooling, steps string) string {
	return top + powder + "places: {etch: {kind: bottle, cooling: {" + cooling + "}}, drum: {kind: drum}}\n" +
		"steps:\n  - {do: charge, in: etch, what: [{substance: HCl, strength: 9 mol/L, volume: 40 mL}]}\n" + steps
}

// etched is a file in which powder is added over 20 min at 35 degC, with what is
// measured and further steps.
func etched(measured, steps string) string {
	return top + powder + etch + "measured: {" + measured + "}\n" +
		"steps:\n  - {do: charge, in: etch, what: [{substance: HF, strength: 20 wt%, volume: 40 mL}]}\n" +
		"  - {do: add, in: etch, what: precursor, over: 20 min, temperature: 35 degC}\n" + steps
}

// points is a measured curve at 35 degC.
func points(list string) string { return "curve: {temperature: 35 degC, points: [" + list + "]}" }

const (
	iced   = "kind: ice_bath"
	water  = "kind: water_bath, temperature: 20 degC"
	warm   = "kind: water_bath, temperature: 60 degC"
	day    = "  - {do: hold, in: etch, time: 24 h, temperature: 35 degC}\n"
	slow   = "{time: 2 h, conversion: 12 %}, {time: 24 h, conversion: 60 %}"
	filter = "  - {do: filter, in: etch, into: drum}\n"
)

var refusedTogether = []struct{ name, text, message string }{
	// gas goes through a scrubber
	{"scrubber that is a drum", top + powder + "places: {etch: {kind: bottle, closure: vented, scrubber: " + here +
		"drum}, drum: {kind: drum}}\n" + cool, "goes to drum, a drum"},
	{"scrubber nobody declared", top + powder + "places: {etch: {kind: bottle, closure: vented, scrubber: " + here +
		"trap}}\n" + cool, "the place trap is not declared"},
	{"scrubber behind an open place", top + powder + "places: {etch: {kind: bottle, closure: open, scrubber: " + here +
		"trap}, trap: {kind: scrubber}}\n" + cool, "goes to the room and not to trap"},
	{"scrubber behind a closed place", top + powder + "places: {etch: {kind: bottle, closure: closed, scrubber: " + here +
		"trap}, trap: {kind: scrubber}}\n" + cool, "a closed place with a scrubber"},
	// a quench goes in, or is poured out
	{"quench with what and into", bath(water, "  - {do: quench, in: etch, into: drum, what: "+here+"[{substance: water, "+
		"volume: 1 L}]}\n"), "a quench step with what and into"},
	{"quench with into and what misspelt", bath(water, "  - {do: quench, in: etch, into: drum, "+here+"waht: "+
		"[{substance: water, volume: 1 L}]}\n"), "did you mean what?"},
	{"quench of nothing", bath(water, "  - "+here+"{do: quench, in: etch}\n"), "needs the key what or into"},
	{"quench poured in portions", bath(water, "  - "+here+"{do: quench, in: etch, into: drum, over: 10 min, "+
		"portions: 2}\n"),
		"over: the time of pouring, without portions"},
	// cooling that is none
	{"UA without cooling", bath("kind: none, "+here+"ua: 2 W/K", ""), "ua 2 W/K beside kind: none, where nothing cools\n"},
	{"temperature without cooling", bath("kind: none, "+here+"temperature: 5 degC", ""),
		"temperature 5 degC beside kind: none"},
	{"ice without cooling", bath("kind: none, "+here+"ice: 1 kg", ""), "none without ice"},
	{"bath without cooling", bath("kind: none, "+here+"bath: 2 L", ""), "bath 2 L"},
	{"bath of nothing", bath(water+", bath: "+here+"0 L", ""), "the bath is zero"},

	// lengths of a place
	{"wall of nothing", top + "places: {etch: {kind: bottle, wall: " + here + "0 mm}}\n" + cool, "the wall is zero"},
	{"bubbler of nothing", top + "places: {etch: {kind: bottle, bubbler: " + here + "0 mm}}\n" + cool,
		"the bubbler is zero"},
	{"closed with a vent line", top + "places: {etch: {kind: bottle, closure: closed, vent_line: " + here + "1 m}}\n" +
		cool, "a closed place with a vent line"},
	{"closed with a bubbler", top + "places: {etch: {kind: bottle, closure: closed, bubbler: " + here + "20 mm}}\n" +
		cool, "closure: vented, or no bubbler"},

	// colder than the coolant
	{"hold colder than its bath", bath(water, "  - {do: hold, in: etch, time: 1 h, temperature: "+here+"5 degC}\n"),
		"5 degC is set in step 2, and the water bath of etch at 20 degC cannot cool below that\n"},
	{"hold just colder than its bath", bath(water, "  - {do: hold, in: etch, time: 1 h, temperature: "+here+
		"19.4 degC}\n"), "accepted: 20 degC or more in this step, or a coolant of 19.4 degC or less"},
	{"below ice", bath(iced, "  - {do: cool, in: etch, temperature: "+here+"-5 degC}\n"),
		"-5 degC is set in step 2, and the ice bath of etch at 0 degC cannot"},
	{"charge colder than its jacket", bath("kind: jacket, temperature: 15 degC", "  - {do: charge, in: etch, what: "+
		"[{substance: water, volume: 1 mL}], temperature: "+here+"10 degC}\n"), "the jacket of etch at 15 degC"},
	{"quench colder than its bath", bath(water, "  - {do: quench, in: etch, what: [{substance: water, volume: 1 "+
		"L}], temperature: "+here+"2 degC}\n"), "2 degC is set in step 2"},
	{"colder than a room, in a warm bath", bath(warm, "  - {do: hold, in: etch, time: 1 h, temperature: "+here+
		"5 degC}\n"), "neither the water bath of etch at 60 degC nor a room at 20 degC can cool so far"},

	// stopped before it begins
	{"stopped at its bath", bath(water, "  - {do: add, in: etch, what: precursor, over: 5 min, temperature: 20 "+
		"degC, not_above: "+here+"20 degC}\n"), "the addition of step 2 is stopped at 20 degC, and the water bath of " +
		"etch is at 20 degC\n"},
	{"stopped below ice", bath(iced, "  - {do: mix, in: etch, what: [{substance: water, volume: 1 mL}], not_above: "+
		here+"-2 degC}\n"), "accepted: more than 0 degC"},
	{"stopped below what is set", bath(water, "  - {do: add, in: etch, what: precursor, over: 5 min, temperature: "+
		"25 degC, not_above: "+here+"22 degC}\n"), "is stopped at 22 degC, below the 25 degC that the step sets"},
	{"stopped below what is set, without a bath", bath("kind: none", "  - {do: add, in: etch, what: precursor, "+
		"over: 5 min, temperature: 25 degC, not_above: "+here+"22 degC}\n"), "accepted: 25 degC or more"},
	{"stopped below a warm bath", bath(warm, "  - {do: mix, in: etch, what: [{substance: water, volume: 1 mL}], "+
		"not_above: "+here+"40 degC}\n"), "stopped at 40 degC, and the water bath of etch is at 60 degC"},

	// hold and addition
	{"hold shorter than the addition", etched(nothing, "  - {do: hold, in: etch, time: "+here+"5 min, temperature: "+
		"35 degC}\n"+filter), "the hold of step 3 lasts 5 min, less than the addition of step 2, which takes 20 min\n"},
	{"what a hold counts", etched(nothing, "  - {do: hold, in: etch, time: "+here+"5 min, temperature: 35 degC}\n"),
		"20 min or more: the hold counts the time after the last powder is in"},
	{"heating shorter than the addition", etched(nothing,
		"  - {do: heat, in: etch, time: "+here+"24 s, temperature: 35 degC}\n"), "the heating of step 3 lasts 24 s"},
	{"holds that are too short together", etched(nothing,
		"  - {do: hold, in: etch, time: "+here+"5 min, temperature: 35 degC}\n  - {do: hold, in: etch, time: 10 min, "+
			"temperature: 35 degC}\n"+filter+day), "in all, 15 min pass in the liquor after the addition"},
	{"hold shorter than the addition of the acid", top + powder + etch + "steps:\n  - {do: charge, in: etch, what: " +
		"[precursor, {substance: water, volume: 1 mL}]}\n" +
		"  - {do: add, in: etch, what: [{substance: HF, strength: 20 wt%, volume: 40 mL}], over: 1 h, temperature: 20 " +
		"degC}\n  - {do: hold, in: etch, time: " + here + "30 min, temperature: 20 degC}\n",
		"less than the addition of step 2, which takes 1 h"},

	// curve
	{"times that fall", etched(points("{time: 4 h, conversion: 12 %}, {time: "+here+"2 h, conversion: 60 %}"), day),
		"the time is 2 h, not above the 4 h of the point before"},
	{"times that stand", etched(points("{time: 4 h, conversion: 12 %}, {time: "+here+"4 h, conversion: 60 %}"), day),
		"accepted: more than 4 h"},
	{"conversions that fall", etched(points("{time: 2 h, conversion: 60 %}, {time: 4 h, conversion: "+here+"12 %}"),
		day), "the conversion is 12 %, not above the 60 % of the point before"},
	{"nothing converted", etched(points("{time: 2 h, conversion: "+here+"0 %}, {time: 4 h, conversion: 12 %}"), day),
		"leave the start out"},
	{"start of a curve", etched(points("{time: "+here+"0 h, conversion: 0 %}, {time: 4 h, conversion: 12 %}"), day),
		"the time is 0 h"},
	{"more than all converted", etched(points("{time: 2 h, conversion: 60 %}, {time: 4 h, conversion: "+here+"101 %}"),
		day), "100 %"},
	{"curve of one point", etched("curve: {temperature: 35 degC, points: "+here+"[{time: 24 h, conversion: 97 %}]}",
		day), "points"},
	{"curve at absolute zero", etched("curve: {temperature: "+here+"0 K, points: ["+slow+"]}", day),
		"the temperature is zero"},
	{"curve without a precursor", top + etch + here + "measured: {" + points(slow) + "}\n" + cool, "without a precursor"},
	{"law nobody knows", etched("kinetics: "+here+"autocatalytic", day), "did you mean self_accelerating?"},

	// curve and hold: 24 h and 20 min at 35 degC are 1/3 h beyond the last point,
	// where 48 % in 22 h of the 64 % left half-way, 3.41 % an hour, take 0.45 % more
	{"conversion above the curve", etched(points(slow)+", conversion: "+here+"97 %", day),
		"a conversion of 97 % is stated, and by the curve 60.5 % of the powder is etched in 24.3 h in the liquor, " +
			"which counts as 24.3 h at 35 degC (60 kJ/mol)\n"},
	{"what agrees with the curve", etched(points(slow)+", conversion: "+here+"97 %", day),
		"accepted: at most 70.5 %, or a curve, times and temperatures that reach 87 %"},
	{"range above the curve", etched(points(slow)+", conversion: "+here+"97 (80 to 99) %", day),
		"a conversion of at least 80 % is stated"},
	// exp(-60000/8.314462618*(1/298.15-1/308.15)) = 0.4559 of 24 h and 20 min at 35
	// degC: 11.28 h, and 12 + 48 (11.28 - 2)/22 = 32.2 %
	{"colder than the curve", etched(points(slow)+", conversion: "+here+"97 %", "  - {do: hold, in: etch, time: 24 "+
		"h, temperature: 25 degC}\n"+filter+day), "by the curve 32.2 % of the powder is etched in 24.3 h in the " +
		"liquor, which counts as 11.3 h at 35 degC"},
	{"conversion among the data", etched(points(slow), day) + "data:\n  - {id: etch_conversion.Ti3AlC2, value: " + here +
		"0.97, source: s}\n", "a conversion of 97 % is stated"},
}

// nothing is measured but a law.
const nothing = "kinetics: first_order"

// allRefused are the files that are refused, of whatever kind.
func allRefused() []struct{ name, text, message string } {
	return slices.Concat(refused, refusedTogether)
}

// What stands together, or just does.
func TestAgreement(t *testing.T) {
	for name, text := range map[string]string{
		"as cold as its bath":  bath(water, "  - {do: hold, in: etch, time: 1 h, temperature: 19.5 degC}\n"),
		"warmer than its bath": bath(water, "  - {do: hold, in: etch, time: 1 h, temperature: 60 degC}\n"),
		"as warm as ice holds": bath(iced, "  - {do: hold, in: etch, time: 1 h, temperature: 10 degC}\n"),
		"cold by salt and ice": bath("kind: ice_bath, temperature: -10 degC", "  - {do: hold, in: etch, time: "+
			"1 h, temperature: -10 degC}\n"),
		"room beside a warm bath": bath(warm, "  - {do: add, in: etch, what: precursor, over: 5 min, temperature: "+
			"20 degC, not_above: 30 degC}\n"),
		"bath that is not known": bath("kind: jacket, ua: 3 W/K", "  - {do: hold, in: etch, time: 1 h, "+
			"temperature: 5 degC}\n"),
		"no cooling":        bath("kind: none", "  - {do: hold, in: etch, time: 1 h, temperature: 5 degC}\n"),
		"store in the cold": bath(water, "  - {do: store, in: etch, time: 1 d, temperature: 4 degC}\n"),
		"empty, in the cold": strings.Replace(bath(water, "  - {do: cool, in: etch, temperature: 4 degC}\n"),
			"[{substance: HCl, strength: 9 mol/L, volume: 40 mL}]", "precursor", 1),
		"stopped above both": bath(water, "  - {do: add, in: etch, what: precursor, over: 5 min, "+
			"temperature: 25 degC, not_above: 25 degC}\n"),
		"hold as long as the adding": etched(nothing, "  - {do: hold, in: etch, time: 20 min, temperature: 35 degC}\n"),
		"heating up to a long hold":  etched(nothing, "  - {do: heat, in: etch, time: 10 min, temperature: 45 degC}\n"+day),
		"hold after the filter": etched(nothing, filter+"  - {do: hold, in: etch, time: 5 min, temperature: 35 "+
			"degC}\n"),
		"hold in another place": etched(nothing, "  - {do: charge, in: drum, what: [{substance: water, volume: "+
			"1 L}]}\n  - {do: hold, in: drum, time: 5 min, temperature: 35 degC}\n"),
		"ten points above the curve": etched(points(slow)+", conversion: 70.4 %", day),
		"curve that is complete": etched(points("{time: 2 h, conversion: 40 %}, {time: 24 h, conversion: 100 %}")+
			", conversion: 97 %", day),
		"curve below 100 % by nature": etched(points("{time: 2 h, conversion: 40 %}, {time: 20 h, conversion: 91 %}"), day),
		"curve of a warmer hold": etched(points(slow)+", conversion: 97 %", "  - {do: hold, in: etch, time: 48 "+
			"h, temperature: 55 degC}\n"),
		"pre-wash before the etch": top + powder + etch + "measured: {" + points("{time: 2 h, conversion: 40 %}, "+
			"{time: 24 h, conversion: 97 %}") + ", conversion: 97 %}\n" +
			"steps:\n  - {do: charge, in: etch, what: [{substance: HCl, strength: 1 mol/L, volume: 40 mL}]}\n  - {do: " +
			"add, in: etch, what: precursor, over: 20 min, temperature: 20 degC}\n" +
			"  - {do: hold, in: etch, time: 5 min, temperature: 20 degC}\n  - {do: prewash, in: etch, into: drum, what: " +
			"[{substance: water, volume: 1 L}]}\n" +
			"  - {do: add, in: etch, what: [{substance: HF, strength: 20 wt%, volume: 40 mL}], over: 1 h, temperature: " +
			"35 degC}\n" + day,
	} {
		if r, problems, err := route.Load("f.yaml", strings.NewReader(text)); err != nil || r == nil || len(problems) > 0 {
			t.Errorf("%s: %v %v", name, err, problems)
		}
	}
}

// What is told and refuses nothing.
func TestNoticesOfAgreement(t *testing.T) {
	for _, tt := range []struct{ name, text, message string }{
		{"hold warmer than ice", bath("kind: ice_bath, temperature: 0 degC", "  - {do: add, in: etch, what: "+
			"precursor, over: 5 min, temperature: 10 degC}\n  - {do: hold, in: etch, time: 1 h, temperature: "+here+
			"35 degC}\n"),
			"an ice bath at 0 degC cannot hold 35 degC in step 3: the review takes the vessel to stand in another bath " +
				"at the set temperature"},
		{"two holds warmer than ice", bath(iced, "  - {do: add, in: etch, what: precursor, over: 5 min, temperature: "+here+
			"35 degC}\n  - {do: hold, in: etch, time: 1 h, temperature: 40 degC}\n"), "cannot hold 35 degC in step 2 or " +
			"40 degC in step 3:"},
		{"short hold before a long one", etched(nothing, "  - {do: hold, in: etch, time: "+here+"5 min, temperature: "+
			"35 degC}\n"+day), "lasts 5 min, less than the addition of step 2, which takes 20 min; in all, 24.1 h pass"},
		{"low curve and nothing stated", etched("curve: "+here+"{temperature: 35 degC, points: ["+slow+"]}", day),
			"by the curve 60.5 % of the powder is etched in 24.3 h in the liquor, which counts as 24.3 h at 35 degC (60 " +
				"kJ/mol): less than 90 %, and no conversion is stated"},
		{"time without a temperature", top + powder + etch + "measured: {curve: " + here + "{temperature: 35 degC, " +
			"points: [" + slow + "]}}\nsteps:\n" +
			"  - {do: charge, in: etch, what: [precursor, {substance: HF, strength: 20 wt%, volume: 40 mL}], over: 5 " +
			"min}\n" + day, "step 1 lasts 5 min at no stated temperature"},
	} {
		text, line, column := spot(tt.text)
		r, problems, err := route.Load("f.yaml", strings.NewReader(text))
		if err != nil || r == nil || len(problems) != 1 || len(r.Notices) != 1 {
			t.Errorf("%s: %v, %v", tt.name, err, problems)
			continue
		}
		if p := problems[0]; p.Severity != schemas.Notice || p.Line != line || p.Column != column ||
			!strings.Contains(p.What, tt.message) {
			t.Errorf("%s: want %d:%d %q, got\n%v", tt.name, line, column, tt.message, p)
		}
	}
}

const fitted = top + powder + `places:
  etch: {kind: vessel, capacity: 1 L, wall: 2 mm, lid_material: polypropylene, stirrer_heat: 5 W, vent: 6 mm, ` +
	`vent_line: 1.5 m, bubbler: 20 mm, cooling: {kind: ice_bath, bath: 2 L, ice: 1 kg}}
  kept: {kind: vessel, capacity: 1 L, keep: true, cooling: {kind: water_bath, bath: 3 L}}
steps:
  - {do: charge, in: etch, what: [{substance: HF, strength: 20 wt%, volume: 40 mL}]}
  - {do: add, in: etch, what: precursor, over: 20 min, temperature: 5 degC, not_above: 12 degC}
measured:
  curve: {temperature: 35 degC, points: [{time: 2 h, conversion: 12 (10 to 14) %}, {time: 24 h, conversion: 97 %}]}
  kinetics: self_accelerating
  td24: 85 degC
  conversion: 10 %
`

// The fields are typed, replace no datum, and what is no amount stays as it is in
// another batch.
func TestFittedAndMeasured(t *testing.T) {
	r := loaded(t, fitted)
	if len(r.Overrides()) != 1 || r.Overrides()[0].ID != "etch_conversion.Ti3AlC2" {
		t.Errorf("%+v", r.Overrides())
	}
	if c := r.Curve; c == nil || c.At != "measured.curve" || c.Temperature.SI != 308.15 || len(c.Points) != 2 ||
		c.Points[0].Time.SI != 7200 || c.Points[0].Conversion.High != 0.14 || c.Points[1].Conversion.SI != 0.97 ||
		c.Points[1].Time.At != "measured.curve.points[1].time" {
		t.Errorf("%+v", c)
	}
	s := r.Scaled(quantity.Of(10, "g"))
	for _, x := range []*route.Route{r, s} {
		p := x.Places[0]
		for _, q := range []struct {
			got  quantity.Value
			want float64
			at   string
		}{
			{p.Wall, 0.002, "places.etch.wall"}, {p.VentLine, 1.5, "places.etch.vent_line"}, {p.Bubbler, 0.02,
				"places.etch.bubbler"},
			{x.Steps[1].NotAbove, 285.15, route.At(2, "not_above")}, {x.TD24, 358.15, "measured.td24"},
			{x.Curve.Points[0].Time, 7200, "measured.curve.points[0].time"},
		} {
			if q.got.SI != q.want || !q.got.Set || q.got.At != q.at {
				t.Errorf("%+v, want %v at %s", q.got, q.want, q.at)
			}
		}
		if x.Kinetics != "self_accelerating" {
			t.Errorf("kinetics %q", x.Kinetics)
		}
	}
	if a, b := r.Places[0].StirrerHeat, s.Places[0].StirrerHeat; a.SI != 5 || a.At != "places.etch.stirrer_heat" ||
		!nearly.To(b.SI/a.SI, s.Precursor.Mass.SI/r.Precursor.Mass.SI, 1e-12) || r.Places[0].LidMaterial != "polypropylene" {
		t.Errorf("stirrers of %+v and %+v, lid of %q", a, b, r.Places[0].LidMaterial)
	}
	if a, b := s.Places[0].Cooling.Bath, s.Places[1].Cooling.Bath; a.Text != "20 L" || b.Text != "3 L" {
		t.Errorf("baths of %q and %q, want ten times the first and the second kept", a.Text, b.Text)
	}
	s.Curve.Points[0].Time.SI = 1
	if r.Curve.Points[0].Time.SI != 7200 {
		t.Error("changing the curve of a scaled route changed the first")
	}
	if r := loaded(t, whole); r.Curve != nil || r.Kinetics != "" || r.TD24.Set || r.Places[0].Wall.Set ||
		r.Steps[1].NotAbove.Set || r.Places[0].Cooling.Bath.Set {
		t.Errorf("what was left out is there: %+v", r)
	}
}
