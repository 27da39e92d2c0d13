package route_test

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"math"
	"strings"
	"testing"
	"testing/iotest"
	"unicode/utf8"

	"etchbound/chemicals/datum"
	"etchbound/hazards/route"
	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

// here marks the expected place of a problem in a test file; it is taken out
// before the file is read.
const here = "\u00b6"

func spot(text string) (clean string, line, column int) {
	before, after, _ := strings.Cut(text, here)
	line = 1 + strings.Count(before, "\n")
	column = 1 + utf8.RuneCountInString(before[strings.LastIndexByte(before, '\n')+1:])
	return before + after, line, column
}

const top = "route: etchbound/1\ntitle: T\nbasis: {status: invented}\n"

const powder = "precursor: {phase: Ti3AlC2, mass: 1 g}\n"

const etch = "places: {etch: {kind: bottle}, drum: {kind: drum}}\n"

// put is a file with one step that puts materials into the etch bottle.
func put(materials string) string {
	return top + powder + etch + "steps:\n  - do: charge\n    in: etch\n    what:\n" + materials
}

const cool = "steps:\n  - {do: cool, in: etch, temperature: 20 degC}\n"

var refused = []struct{ name, text, message string }{
	// places
	{"place not declared", top + etch + "steps:\n  - {do: cool, in: " + here + "ecth, temperature: 20 degC}\n",
		"did you mean etch"},
	{"no places", here + top + "steps:\n  - {do: cool, in: etch, temperature: 20 degC}\n  - {do: cool, in: tubes, " +
		"temperature: 20 degC}\n", "add places: {etch: {"},
	{"no place in places", top + "places: " + here + "{}\nsteps:\n  - {do: cool, in: etch, temperature: 20 degC}\n",
		"places is empty"},
	{"place with a capital, used in small letters",
		top + "places: {etch: {kind: bottle}, " + here + "Tubes: {kind: tube}}\nsteps:\n  - {do: transfer, in: etch, " +
			"into: tubes}\n", "write it as tubes"},
	{"place with a blank, used with an underscore",
		top + "places: {etch: {kind: bottle}, " + here + "my tubes: {kind: tube}}\nsteps:\n  - {do: transfer, in: " +
			"etch, into: my_tubes}\n", "write it as my_tubes"},
	{"closure misspelt beside a vent", top + "places: {etch: {kind: bottle, closure: " + here + "vent, vent: 3 mm}}\n" +
		cool, "did you mean vented"},
	{"waste as a place", top + etch + "steps:\n  - {do: transfer, in: etch, into: " + here + "waste}\n", "kind: drum"},
	{"into itself", top + etch + "steps:\n  - {do: transfer, in: etch, into: " + here + "etch}\n", "same place"},
	{"relief above rating", top + "places:\n  etch: {kind: autoclave, rating: 400 kPa, relief: " + here + "5 bar}\n" +
		cool, "at or below the rating"},
	{"a wall thicker than any", top + "places:\n  etch: {kind: bottle, capacity: 1 L, wall: " + here +
		"12 mm, cooling: {kind: ice_bath}}\n" + cool, "cooling: ua, in W/K"},
	{"a tank thicker than any", top + "places:\n  etch: {kind: vessel, wall: " + here + "30 mm, cooling: {kind: " +
		"ice_bath}}\n" + cool, "a wall of 25 mm at most"},
	{"capacity of nothing", top + "places:\n  etch: {kind: bottle, capacity: " + here + "0 mL}\n" + cool,
		"more than zero"},
	{"closed with a vent", top + "places:\n  etch: {kind: bottle, closure: closed, vent: " + here + "3 mm}\n" + cool,
		"closure: vented"},

	// precursor
	{"word without its block", top + etch + "steps:\n  - {do: charge, in: etch, what: " + here + "precursor}\n",
		"add precursor"},
	{"put in twice", top + powder + etch + "steps:\n  - {do: charge, in: etch, what: precursor}\n  - {do: charge, " +
		"in: etch, what: [" + here + "precursor]}\n", "first in line 7"},
	{"mass of nothing", top + "precursor: {phase: Ti3AlC2, mass: " + here + "0 g}\n" + etch + cool, "more than zero"},
	{"no formula", top + "precursor: {phase: " + here + "powder, mass: 1 g}\n" + etch + cool, "no formula"},
	{"formula in small letters", top + "precursor: {phase: " + here + "ti3alc2, mass: 1 g}\n" + etch + cool,
		"did you mean Ti3AlC2?"},
	{"precursor put into a hold", top + powder + etch + "steps:\n  - {do: charge, in: etch, what: precursor}\n  - " +
		"{do: hold, in: etch, time: 1 h, temperature: 20 degC, " + here + "what: [precursor]}\n",
		"a hold step takes no what"},
	{"not layered", top + "precursor: {phase: " + here + "NaCl, mass: 1 g}\n" + etch + cool, "not a layered precursor"},
	{"not layered as far as the formula tells", top + "precursor: {phase: " + here + "Ca2AlC, mass: 1 g}\n" + etch +
		cool, "name them after layers"},
	{"zero for a mass that has to be there", top + "precursor: {phase: Ti3AlC2, mass: " + here + "0 g}\n" + etch + cool,
		"hint: the mass has to be stated"},
	{"zero for a size that may be left out", top + "precursor: {phase: Ti3AlC2, mass: 1 g, particle_size: " + here +
		"0 um}\n" + etch + cool, "hint: leave the key out"},
	{"zero at one end of a range", top + "precursor: {phase: Ti3AlC2, mass: " + here + "1 (0 to 2) g}\n" + etch + cool,
		"may be zero by its range"},
	{"layers of another phase", top + "precursor: {phase: Ti3AlC2, mass: 1 g, layers: [" + here + "Si]}\n" + etch + cool,
		"Ti, Al, C"},
	{"more than all of it", top + "precursor: {phase: Ti3AlC2, mass: 1 g, purity: 96 wt%, " + here +
		"impurities: [{formula: TiC, share: 5 wt%}]}\n" + etch + cool, "101 wt%"},
	{"impurity twice", top + "precursor: {phase: Ti3AlC2, mass: 1 g, impurities: [{formula: TiC, share: 1 wt%}, " +
		"{formula: " + here + "CTi, share: 1 wt%}]}\n" + etch + cool, "twice"},
	{"phase as impurity", top + "precursor: {phase: Ti3AlC2, mass: 1 g, impurities: [{formula: " + here +
		"Ti3AlC2, share: 1 wt%}]}\n" + etch + cool, "its share is the purity"},
	{"source of nothing", top + "precursor: {phase: Ti3AlC2, mass: 1 g, " + here + "impurities_source: lot}\n" + etch +
		cool, "none (source)"},
	{"measured without precursor", top + here + "measured: {hydrogen: 3 mol/mol}\n" + etch + cool, "without a precursor"},

	// materials
	{"unknown substance", put("      - {substance: " + here + "hydrofloric acid, strength: 48 wt%, volume: 1 mL}\n"),
		"hydrofluoric acid"},
	{"two ways", put("      - {substance: water, mass: 1 g, " + here + "volume: 1 mL}\n"), "more than one way"},
	{"no way", put("      - " + here + "{substance: water}\n"), "is not said"},
	{"acid without strength", put("      - " + here + "{substance: HF, volume: 1 mL}\n"), "without its strength"},
	{"base solution without strength", put("      - " + here + "{substance: TMAOH, mass: 1 g}\n"), "without its strength"},
	{"peroxide without strength", put("      - " + here + "{substance: H2O2, volume: 1 mL}\n"), "without its strength"},
	{"acid without amount", put("      - " + here + "{substance: HCl, strength: 9 mol/L}\n"), "is not said"},
	{"strength of water", put("      - {substance: water, " + here + "strength: 50 wt%, volume: 1 mL}\n"),
		"takes no strength"},
	{"strength of pellets", put("      - {substance: NaOH, " + here + "strength: 50 wt%, mass: 1 g}\n"), "solid"},
	{"volume of a solid", put("      - {substance: LiF, " + here + "volume: 1 mL}\n"), "a volume of solid"},
	{"salt by wt% alone", put("      - " + here + "{substance: KF, strength: 5 wt%}\n"), "is not said"},
	{"nothing of it", put("      - {substance: water, volume: " + here + "0 mL}\n"), "more than zero"},
	{"ratio without powder", top + etch + "steps:\n  - {do: charge, in: etch, what: [{substance: LiF, ratio: " + here +
		"12 mol/mol}]}\n", "ratio to the precursor"},

	// strengths
	{"HF above 70 wt%", put("      - {substance: HF, strength: " + here + "71 wt%, volume: 1 mL}\n"), "specialist"},
	{"HF above 70 wt% as a molarity", put("      - {substance: HF, strength: " + here + "45 mol/L, volume: 1 mL}\n"),
		"specialist"},
	{"HF above 70 wt%, told as a molarity", put("      - {substance: HF, strength: " + here + "45 mol/L, volume: " +
		"1 mL}\n"), "about 43.0 mol/L"},
	{"HF above 70 wt%, told as a molality", put("      - {substance: HF, strength: " + here + "117 mol/kg, volume: " +
		"1 mL}\n"), "about 117 mol/kg"},
	{"HF above 70 wt% as a molality", put("      - {substance: HF, strength: " + here + "117 mol/kg, volume: 1 mL}\n"),
		"specialist"},
	{"anhydrous", put("      - {substance: " + here + "anhydrous hydrogen fluoride, mass: 1 g}\n"), "specialist"},
	{"HCl that does not exist", put("      - {substance: HCl, strength: " + here + "46 wt%, volume: 1 mL}\n"),
		"does not exist"},
	{"H2SO4 that does not exist", put("      - {substance: H2SO4, strength: " + here + "99 wt%, volume: 1 mL}\n"),
		"does not exist"},
	{"NaOH that does not exist", put("      - {substance: NaOH, strength: " + here + "76 wt%, volume: 1 mL}\n"),
		"does not exist"},
	{"NaOH told per litre of water", put("      - {substance: NaOH, strength: " + here + "35 mol/L, volume: 1 mL}\n"),
		"by mass and the water by volume"},
	{"LiF as a ratio", put("      - {substance: LiF, strength: " + here + "12 mol/L}\n"), "ratio: 12 mol/mol"},
	{"NaF as a ratio", put("      - {substance: NaF, strength: " + here + "5 M}\n"), "ratio: 5 mol/mol"},
	{"LiF above its acid", put("      - {substance: HCl, strength: 2 mol/L, volume: 10 mL}\n      - {substance: " +
		"LiF, strength: " + here + "3 mol/L}\n"), "more than the acid beside it"},
	{"LiF above the acid of the step before", top + etch + "steps:\n  - {do: charge, in: etch, what: [{substance: " +
		"HCl, strength: 5 wt%, volume: 1 mL}]}\n  - {do: mix, in: etch, what: [{substance: LiF, strength: " + here +
		"2 mol/L}]}\n", "5 wt%"},

	// one fault, told once
	// the sign every calorimeter writes: -720 kJ/mol would cool the liquor
	{"heat with the sign of an enthalpy", top + powder + etch + "measured: {etch_heat: " + here + "-720 kJ/mol}\n" + cool,
		"heat released is written positive here"},
	{"density of another unit", top + powder + etch + "measured: {density: " + here + "0.42 g/mL}\n" + cool,
		"2 to 20 g/mL"},
	{"low end below the band", top + powder + etch + cool + "data:\n  - {id: kinetics.activation, value: 60, low: " +
		here +
		"-5, high: 70, source: s}\n", "10 to 200 kJ/mol"},
	{"precursor under another name", top + here + "max_phase: {phase: Ti3AlC2, mass: 1 g}\n" + etch +
		"steps:\n  - {do: charge, in: etch, what: precursor}\nmeasured: {hydrogen: 3 mol/mol}\ndata:\n  - {id: " +
		"cp.Ti3AlC2(s), value: 110, source: s}\n", "did you mean precursor?"},
	{"strength under another name", put("      - {substance: HCl, " + here + "conc: 9 mol/L, volume: 1 mL}\n"),
		"did you mean strength?"},
	{"mass under another name", put("      - {substance: LiF, " + here + "weight: 3 g}\n"), "did you mean mass?"},
	{"impurities under another name", top + "precursor: {phase: Ti3AlC2, mass: 1 g, " + here + "impurity: [], " +
		"impurities_source: s}\n" + etch + cool, "did you mean impurities?"},
	{"layers under another name", top + "precursor: {phase: Ca2AlC, mass: 1 g, " + here + "layer: [Al]}\n" + etch + cool,
		"did you mean layers?"},
	{"low under another name", top + etch + cool + "data:\n  - {id: weight.Ti, value: 47, " + here +
		"lo: 46, high: 48, source: s}\n", "did you mean low?"},
	{"one for a letter in a formula", top + "precursor: {phase: " + here + "Ti3A1C2, mass: 1 g}\n" + etch + cool,
		"did you mean Ti3AlC2?"},

	// steps
	{"all of it retained", top + etch + "steps:\n  - {do: wash, in: etch, into: drum, what: [{substance: water, " +
		"volume: 1 L}], retained: " + here + "100 %}\n", "less than 100 %"},
	{"hold for no time", top + etch + "steps:\n  - {do: hold, in: etch, time: " + here + "0 h, temperature: 20 degC}\n",
		"more than zero"},
	{"no day of the calendar", top + "date: " + here + "2026-02-30\n" + etch + cool, "no day of the calendar"},

	// data
	{"datum nobody knows", top + etch + cool + "data:\n  - {id: " + here + "weight.Xx, value: 3, source: s}\n",
		"weight.Xx"},
	{"datum in another unit", top + etch + cool + "data:\n  - {id: weight.Ti, value: " + here + "3 kPa, source: s}\n",
		"g/mol"},
	{"datum outside its range", top + etch + cool + "data:\n  - {id: " + here + "weight.Ti, value: 47, low: 48, " +
		"high: 49, source: s}\n", "outside"},
	{"one end of a range", top + etch + cool + "data:\n  - " + here + "{id: weight.Ti, value: 47, low: 46, source: s}\n",
		"both low and high"},
	{"datum of another phase", top + powder + etch + cool + "data:\n  - {id: " + here + "etch_heat.Ti2AlC, value: " +
		"700 kJ/mol, source: s}\n", "etch_heat.Ti3AlC2"},
	{"datum of a phase one letter off", top + powder + etch + cool + "data:\n  - {id: " + here +
		"etch_heat.Ti3AlC3, value: 700 kJ/mol, source: s}\n", "did you mean etch_heat.Ti3AlC2?"},
	{"density of a phase one letter off", top + powder + etch + cool + "data:\n  - {id: " + here +
		"density.Ti3AlC3, value: 4 g/mL, source: s}\n", "did you mean density.Ti3AlC2?"},
	{"datum of a phase in a route without one", top + etch + cool + "data:\n  - {id: " + here +
		"etch_heat.Ti3AlC2, value: 700 kJ/mol, source: s}\n", "would change nothing"},
	{"electrons of an element that is not there", top + powder + etch + cool + "data:\n  - {id: " + here +
		"electrons.Bi, value: 3, source: s}\n", "did you mean electrons.Al?"},
	{"gas of an impurity that is not there", top + powder + etch + cool + "data:\n  - {id: " + here +
		"hydrogen.impurity.Mg, value: 1, source: s}\n", "holds: Ti3AlC2"},
	{"heat of a substance that is not put in", put("      - {substance: NaF, mass: 1 g}\n") + "data:\n  - {id: " +
		here + "dissolution.KCl(s), value: 1, source: s}\n", "would change nothing"},
	{"termination of something", top + powder + etch + cool + "data:\n  - {id: " + here + "termination.oxigen, " +
		"value: 1, source: s}\n", "did you mean termination.oxygen?"},
	{"datum twice", top + etch + cool + "data:\n  - {id: weight.Ti, value: 47, source: s}\n  - {id: " + here +
		"weight.Ti, value: 48, source: s}\n", "given twice"},
	{"measured and datum", top + powder + etch + cool + "measured: {hydrogen: 3 mol/mol}\ndata:\n  - {id: " +
		here + "etch_hydrogen.Ti3AlC2, value: 3, source: s}\n", "given twice"},
}

func TestRefused(t *testing.T) {
	for _, tt := range allRefused() {
		t.Run(tt.name, func(t *testing.T) {
			text, line, column := spot(tt.text)
			r, problems, err := route.Load("f.yaml", strings.NewReader(text))
			if err != nil || r != nil {
				t.Fatalf("accepted: %+v %v\n%s", r, err, text)
			}
			if problems[0].Accepted == "" && problems[0].Hint == "" {
				t.Errorf("neither what is accepted nor what to try: %v", problems[0])
			}
			if len(problems) != 1 {
				t.Errorf("%d problems for one fault", len(problems))
			}
			p := problems[0]
			if p.Line != line || p.Column != column || !strings.Contains(p.String(), tt.message) {
				t.Errorf("want %d:%d %q, got\n%v", line, column, tt.message, problems)
			}
		})
	}
}

func loaded(t *testing.T, text string) *route.Route {
	t.Helper()
	r, problems, err := route.Load("f.yaml", strings.NewReader(text))
	if err != nil || r == nil {
		t.Fatalf("%v\n%v", err, problems)
	}
	return r
}

func TestAccepted(t *testing.T) {
	for name, text := range map[string]string{
		"LiF at the molarity of its acid": put("      - {substance: HCl, strength: 3 mol/L, volume: 10 mL}\n" +
			"      - {substance: LiF, strength: 3 mol/L}\n"),
		"KF at 5 mol/L": put("      - {substance: HCl, strength: 6 mol/L, volume: 10 mL}\n" +
			"      - {substance: KF, strength: 5 mol/L}\n"),
		"KOH as a solution": put("      - {substance: KOH, strength: 20 wt%, volume: 10 mL}\n"),
		"HF at 70 wt%":      put("      - {substance: HF, strength: 70 wt%, volume: 10 mL}\n"),
		"by CAS number":     put("      - {substance: 7664-39-3, strength: 48 wt%, mass: 10 g}\n"),
		"heat of a foreign phase": top + "precursor: {phase: Ti3AlC2, mass: 1 g, impurities: [{formula: Ti2GaC, share: " +
			"1 wt%}]}\n" + etch + "steps:\n  - {do: charge, in: etch, what: precursor}\ndata:\n  - {id: etch_heat.Ti2GaC, " +
			"value: 500, source: s}\n",
		"data that no table has": strings.Replace(put("      - precursor\n      - {substance: NaF, mass: 1 g}\n"),
			"Ti3AlC2", "Ti2ZnC", 1) +
			"data:\n  - {id: etch_heat.Ti2ZnC, value: 500, source: s}\n  - {id: electrons.Zn, value: 2, source: s}\n" +
			"  - {id: cp.NaF(s), value: 47, source: s}\n",
		"ratio":            put("      - {substance: LiF, ratio: 12 mol/mol}\n"),
		"relief at rating": top + "places: {etch: {kind: autoclave, rating: 5 bar, relief: 500 kPa}}\n" + cool,
	} {
		if _, problems, _ := route.Load("f.yaml", strings.NewReader(text)); len(problems) > 0 {
			t.Errorf("%s: %v", name, problems)
		}
	}
}

const whole = top + `date: 2026-11-25
purpose: A film.
precursor:
  phase: Ti3AlC2
  mass: 2 (1.9 to 2.1) g
  purity: 96 wt%
  impurities: [{formula: TiC, share: 3 wt%}, {formula: Al, share: 1 wt%}]
  impurities_source: lot 7
  particle_size: 38 um
places:
  etch: {kind: bottle, capacity: 250 mL, closure: vented, vent: 3 mm, cooling: {kind: ice_bath, temperature: 0 ` +
	`degC, ua: 0.5 W/K, ice: 1 kg}}
  tubes: {kind: tube, capacity: 50 mL, count: 4}
  drum: {kind: drum, capacity: 5 L, closure: open, keep: true}
steps:
  - do: charge
    in: etch
    what:
      - {substance: hydrochloric acid, strength: 9 mol/L, volume: 40 mL}
      - {substance: lithium fluoride, ratio: 12 mol/mol}
    attended: true
  - {do: add, in: etch, what: precursor, over: 10 min, temperature: 20 degC, stirred: false}
  - {do: sample, in: etch, into: tubes, part: 1 mL}
  - {do: transfer, in: etch, into: tubes, part: 50 %}
  - {do: wash, in: tubes, into: drum, what: [{substance: water, volume: 80 mL}], cycles: 7, retained: 5 mL, ` +
	`target_ph: 6}
  - {do: wash, in: tubes, into: drum, what: [{substance: ethanol, mass: 8 g}], retained: 5 mL/g, water: co2_free}
measured:
  etch_heat: 720 (650 to 790) kJ/mol
  conversion: 97 %
  density: 4.2 g/mL
  source: own runs
data:
  - {id: weight.Ti, value: 47.9 g/mol, low: 47.8, high: 48, source: a test}
`

func TestTypedRoute(t *testing.T) {
	r := loaded(t, whole)
	sum := sha256.Sum256([]byte(whole))
	if r.Digest != hex.EncodeToString(sum[:]) || r.Date != "2026-11-25" || r.BatchText != "2 (1.9 to 2.1) g" {
		t.Errorf("%q %q %q", r.Digest, r.Date, r.BatchText)
	}
	p := r.Precursor
	if p.Phase.Text != "Ti3AlC2" || len(p.Impurities) != 2 || !p.Stated || p.Source != "lot 7" ||
		p.Mass.At != "precursor.mass" {
		t.Errorf("%+v", p)
	}
	etch, tubes, drum := r.Places[0], r.Places[1], r.Places[2]
	if etch.Closure != route.Vented || etch.Count != 1 || etch.VentBore.SI != 0.003 || etch.Cooling.UA.SI != 0.5 {
		t.Errorf("%+v", etch)
	}
	if tubes.Closure != route.Closed || tubes.ClosureStated || tubes.Count != 4 {
		t.Errorf("an unstated closure has to count as closed: %+v", tubes)
	}
	if drum.Closure != route.Open || !drum.Keep {
		t.Errorf("%+v", drum)
	}
	s := r.Steps
	if s[0].What[0].Substance.Slug != "hcl" || s[0].What[0].Strength.Dim != quantity.Molarity || !*s[0].Attended ||
		s[0].Stirred != nil {
		t.Errorf("%+v", s[0])
	}
	if !s[1].What[0].Precursor || s[1].Over.SI != 600 || *s[1].Stirred || s[1].Over.At != route.At(2, "over") {
		t.Errorf("%+v", s[1])
	}
	if s[4].Cycles != 7 || *s[4].TargetPH != 6 || s[4].Water != "open_air" || s[4].Keeps != "solids" ||
		s[5].Water != "co2_free" || s[5].TargetPH != nil {
		t.Errorf("%+v\n%+v", s[4], s[5])
	}
	want := map[datum.ID][3]float64{"etch_heat.Ti3AlC2": {720, 650, 790}, "etch_conversion.Ti3AlC2": {0.97,
		math.NaN(), math.NaN()},
		"density.Ti3AlC2": {4.2, math.NaN(), math.NaN()}, "weight.Ti": {47.9, 47.8, 48}}
	if len(r.Overrides()) != len(want) {
		t.Fatalf("%+v", r.Overrides())
	}
	for _, o := range r.Overrides() {
		w := want[o.ID]
		if o.Value != w[0] || !like(o.Low, w[1]) || !like(o.High, w[2]) || o.Source == "" || o.From != "route" {
			t.Errorf("%+v, want %v", o, w)
		}
	}
}

func like(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }

func TestImpuritiesNone(t *testing.T) {
	r := loaded(t, top+"precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (supplier certificate)}\n"+etch+cool)
	if p := r.Precursor; !p.Stated || p.Source != "supplier certificate" || len(p.Impurities) != 0 {
		t.Errorf("%+v", p)
	}
	r = loaded(t, top+powder+etch+cool)
	if r.Precursor.Stated {
		t.Error("impurities nobody stated count as stated")
	}
	if len(r.Notices) != 1 || !strings.Contains(r.Notices[0], "never put in") {
		t.Errorf("%q", r.Notices)
	}
}

func TestScaled(t *testing.T) {
	r := loaded(t, whole)
	s := r.Scaled(quantity.Of(0.1, "kg")) // 50 times
	type pair struct{ got, want string }
	for _, p := range []pair{
		{s.Precursor.Mass.Text, "0.1 (0.095 to 0.105) kg"}, {s.BatchText, "0.1 (0.095 to 0.105) kg"},
		{s.Places[0].Capacity.Text, "12500 mL"}, {s.Places[0].Cooling.Ice.Text, "50 kg"},
		{s.Places[0].Cooling.UA.Text, "0.5 W/K"},
		{s.Places[0].VentBore.Text, "3 mm"}, {s.Places[2].Capacity.Text, "5 L"},
		{s.Steps[0].What[0].Volume.Text, "2000 mL"}, {s.Steps[0].What[0].Strength.Text, "9 mol/L"},
		{s.Steps[0].What[1].Ratio.Text, "12 mol/mol"},
		{s.Steps[1].Over.Text, "10 min"}, {s.Steps[1].Temperature.Text, "20 degC"},
		{s.Steps[2].Part.Text, "50 mL"}, {s.Steps[3].Part.Text, "50 %"},
		{s.Steps[4].Retained.Text, "250 mL"}, {s.Steps[5].Retained.Text, "5 mL/g"}, {s.Steps[5].What[0].Mass.Text, "400 g"},
	} {
		if p.got != p.want {
			t.Errorf("got %q, want %q", p.got, p.want)
		}
	}
	if got := s.Steps[0].What[0].Volume; got.In("L") != 2 || got.At != r.Steps[0].What[0].Volume.At {
		t.Errorf("%+v", got)
	}
}

// A route at its own batch is itself, and nothing of a copy reaches the first.
func TestScaledIsACopy(t *testing.T) {
	r, again := loaded(t, whole), loaded(t, whole)
	same := r.Scaled(r.Precursor.Mass)
	if same.Steps[0].What[0].Volume.Text != "40 mL" || same.Precursor.Mass != r.Precursor.Mass {
		t.Errorf("%+v %+v", same.Precursor.Mass, same.Steps[0].What[0])
	}
	big := r.Scaled(quantity.Of(10, "kg"))
	big.Places[0].Cooling.Kind = "none"
	*big.Steps[0].Attended = false
	*big.Steps[4].TargetPH = 1
	big.Precursor.Impurities[0].Share.SI = 9
	big.Steps[0].What[0].Mass.SI = 9
	back := big.Scaled(quantity.Of(2, "g"))
	if back.Steps[0].What[0].Volume.In("mL") != 40 {
		t.Errorf("there and back: %v mL", back.Steps[0].What[0].Volume.In("mL"))
	}
	if r.Places[0].Cooling.Kind != again.Places[0].Cooling.Kind || !*r.Steps[0].Attended || *r.Steps[4].TargetPH != 6 ||
		r.Precursor.Impurities[0].Share.SI != 0.03 || r.Steps[0].What[0].Mass.SI != 0 {
		t.Error("changing a scaled route changed the first")
	}
}

func TestLoadSite(t *testing.T) {
	text := `site: etchbound/1
title: S
jurisdiction: eu
hood: {flow: 800 m3/h, face_velocity: 0.5 m/s, tested: 2026-05-01, containment: 0.1 %}
room: {volume: 100 m3, flow: 600 m3/h}
cooling: {power: 500 W, temperature: 5 degC}
stock:
  - {substance: hydrofluoric acid, strength: 48 wt%, volume: 1 L}
  - {substance: lithium fluoride, mass: 500 g}
triggers: {quantity_ratio: 1.25}
data:
  - {id: weight.Ti, value: 47.9, source: a test}
`
	s, problems, err := route.LoadSite("s.yaml", strings.NewReader(text))
	if err != nil || s == nil {
		t.Fatalf("%v\n%v", err, problems)
	}
	if s.Hood.Flow.In("m3/h") != 800 || s.Hood.Containment.SI != 0.001 || s.RoomVolume.SI != 100 ||
		s.CoolingPower.SI != 500 ||
		len(s.Stock) != 2 || s.Stock[0].Substance.Slug != "hf" || s.Triggers.QuantityRatio != 1.25 ||
		!math.IsNaN(s.Triggers.TimeRatio) ||
		len(s.Data) != 1 || s.Data[0].From != "site" || len(s.Digest) != 64 {
		t.Errorf("%+v", s)
	}
	for text, message := range map[string]string{
		"site: etchbound/1\ntitle: S\nstock: [{substance: HF, volume: 1 L}]\n":             "without its strength",
		"site: etchbound/1\ntitle: S\nstock: [{substance: LiF, mass: 1 g, volume: 1 L}]\n": "in one way",
		"site: etchbound/1\ntitle: S\nstock: [{substance: unobtainium, mass: 1 g}]\n": "another chemical is another " +
			"chemistry",
		"site: etchbound/1\ntitle: S\ndata: [{id: termination.oxigen, value: 1, source: s}]\n": "did you mean " +
			"termination.oxygen?",
		"site: etchbound/1\ntitle: S\ndata: [{id: density.powder, value: 1, source: s}]\n":  "would change nothing",
		"site: etchbound/1\ntitle: S\nhood: {tested: 2026-13-01}\n":                         "calendar",
		"site: etchbound/1\ntitle: S\ntriggers: {quantity_ratio: 1}\n":                      "more than 1",
		"site: etchbound/1\ntitle: S\njurisdiction: usa\n":                                  "did you mean us?",
		"route: etchbound/1\ntitle: S\nbasis: {status: read}\nsteps: [{do: cool, in: a}]\n": "a route file",
	} {
		s, problems, _ := route.LoadSite("s.yaml", strings.NewReader(text))
		if s != nil || len(problems) != 1 || !strings.Contains(problems[0].String(), message) {
			t.Errorf("want %q, got %v", message, problems)
		}
	}
}

// A site may hold data for powders of routes it does not know, and is told so.
func TestSiteDataBesideTheTables(t *testing.T) {
	s, problems, err := route.LoadSite("s.yaml", strings.NewReader("site: etchbound/1\ntitle: S\ndata:\n"+
		"  - {id: etch_heat.Ti3AlC3, value: 700, source: a test}\n"))
	if err != nil || s == nil || len(s.Data) != 1 || len(s.Notices) != 1 || len(problems) != 1 {
		t.Fatalf("%+v %v %v", s, problems, err)
	}
	if p := problems[0]; p.Severity != schemas.Notice || p.Line != 4 || p.Column != 10 ||
		!strings.Contains(p.String(), "only in routes that hold Ti3AlC3") || !strings.Contains(p.Hint, "etch_heat.Ti3AlC2") {
		t.Errorf("%v", p)
	}
}

func TestNoticeOfAnEmptyPlace(t *testing.T) {
	wash := "  - {do: wash, in: %s, into: drum, what: [{substance: water, volume: 1 L}]}\n"
	begin := top + powder + etch + "steps:\n  - {do: heat, in: etch, temperature: 20 degC}\n  - {do: charge, in: " +
		"etch, what: [precursor]}\n"
	begin = strings.Replace(begin, "etch: {kind: bottle}", "etch: {kind: bottle}, tube: {kind: tube}", 1)
	for text, want := range map[string]int{
		begin + strings.ReplaceAll(wash, "%s", here+"tube"):                                           1,
		begin + strings.ReplaceAll(wash, "%s", "etch") + "  - {do: collect, in: drum, into: tube}\n":  0,
		begin + "  - {do: hold, in: " + here + "drum, time: 1 h, temperature: 20 degC}\n":             1,
		begin + "  - {do: transfer, in: etch, into: tube}\n" + strings.ReplaceAll(wash, "%s", "tube"): 0,
	} {
		clean, line, column := spot(text)
		r, problems, err := route.Load("f.yaml", strings.NewReader(clean))
		if err != nil || r == nil || len(problems) != want || len(r.Notices) != want {
			t.Errorf("%s: %v, %v", clean, problems, err)
			continue
		}
		if want == 1 && (problems[0].Line != line || problems[0].Column != column ||
			!strings.Contains(problems[0].What, "nothing has been put into")) {
			t.Errorf("want %d:%d, got %v", line, column, problems)
		}
	}
}

func TestReadingFails(t *testing.T) {
	broken := errors.New("disk")
	r, _, err := route.Load("f.yaml", io.MultiReader(strings.NewReader(top), iotest.ErrReader(broken)))
	if r != nil || !errors.Is(err, broken) {
		t.Errorf("%v %v", r, err)
	}
}

func FuzzLoad(f *testing.F) {
	for _, tt := range allRefused() {
		text, _, _ := spot(tt.text)
		f.Add(text)
	}
	f.Add(whole)
	f.Add(fitted)
	f.Fuzz(func(t *testing.T, text string) {
		r, problems, err := route.Load("f.yaml", strings.NewReader(text))
		if err != nil || (r == nil) != schemas.Refused(problems) {
			t.Fatalf("%q: %v %v %v", text, r, problems, err)
		}
		if r != nil {
			r.Scaled(quantity.Of(1, "kg"))
		}
	})
}

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if r, _, _ := route.Load("f.yaml", strings.NewReader(whole)); r == nil {
			b.Fatal("refused")
		}
	}
}

func BenchmarkScaled(b *testing.B) {
	r, _, _ := route.Load("f.yaml", strings.NewReader(whole))
	batch := quantity.Of(50, "g")
	for b.Loop() {
		r.Scaled(batch)
	}
}
