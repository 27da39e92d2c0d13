package hazards_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/upset"
	"etchbound/reports/words"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// worstOfBoth is the greatest value of a figure over the two steps of a course.
func worstOfBoth(rv *hazards.Review, law string, quantities ...string) float64 {
	out := math.Inf(-1)
	for _, q := range quantities {
		for _, step := range []string{"@2", "@3"} {
			if f := figureOf(rv, q+step+":"+law); f != nil {
				out = math.Max(out, f.Value.V)
			}
		}
	}
	return out
}

// A thing done wrong is the route written that way: each failure against a
// review of the route as it then is.
func TestDoneWrongIsTheRouteWrittenSo(t *testing.T) {
	long.Only(t)
	base := inIce("10 g", "200 mL", "2 W/K")
	rv := followed(t, base)
	ways := map[string]string{
		"all_at_once": strings.Replace(base, "{do: add, in: pot, what: [precursor], over: 10 min, ",
			"{do: charge, in: pot, what: [precursor], ", 1),
		"twice_as_fast":     strings.Replace(base, "over: 10 min", "over: 5 min", 1),
		"double_dose":       inIce("20 g", "200 mL", "2 W/K"),
		"weighed_ten_times": inIce("100 g", "200 mL", "2 W/K"),
	}
	for _, key := range long.Some(sorted(ways), 4, 1) {
		as := review(t, ways[key])
		for _, law := range []string{"instantaneous", "self_accelerating", "early_peak"} {
			f := figureOf(&rv, "heat.temperature_peak@2:"+key+","+law)
			want := worstOfBoth(&as, law, "heat.temperature_peak")
			if key == "all_at_once" && law == "instantaneous" { // bounded by what nothing is lost of
				if f == nil || !(f.Value.V >= want && f.Value.V < want+5) {
					t.Errorf("tipped in at once: %+v, want up to 5 K above %g degC", f, want)
				}
				continue
			}
			if f == nil || !nearly.Share(f.Value.V, want, 1e-9) {
				t.Errorf("%s, %s: %+v, want %g degC", key, law, f, want)
			}
			g := figureOf(&rv, "gas.hydrogen.peak_rate@2:"+key+","+law)
			if want := worstOfBoth(&as, law, "gas.hydrogen.peak_rate.during_addition",
				"gas.hydrogen.peak_rate.after_addition"); g == nil || !nearly.Share(g.Value.V, want, 1e-9) {
				t.Errorf("%s, %s: %+v, want %g L/min", key, law, g, want)
			}
		}
	}
}

// Three times the strength makes the etch three times as fast (first order), so
// the slow law peaks three times as high where the temperature hardly moves.
func TestStrongerAcidIsFaster(t *testing.T) {
	long.Only(t)
	rv := followed(t, strings.Replace(inIce("1 g", "200 mL", "20 W/K"), "time: 4 h", "time: 24 h", 1))
	weak := figureOf(&rv, "gas.hydrogen.peak_rate.after_addition@3:early_peak").Value.V
	f := figureOf(&rv, "gas.hydrogen.peak_rate@2:stronger_acid,early_peak")
	if f == nil || !nearly.To(f.Value.V/weak, 3, 0.05) {
		t.Errorf("%+v against %g L/min, want three times", f, weak)
	}
	strong := followed(t, strings.Replace(inIce("1 g", "200 mL", "20 W/K"), "10 wt%", "49 wt%", 1))
	if f := figureOf(&strong, "heat.temperature_peak@2:stronger_acid"); f != nil {
		t.Errorf("an acid stronger than 49 wt%%: %+v", f)
	}
}

// Acid onto powder, by hand for 10 g in 200 mL of 10 wt% HF: 0.0514 mol take
// 3.9 mol of acid each, 0.200 of 1.034 mol offered; 39.05 kJ in 19.4 % of 825 J/K
// and the solid's 6.6. Base: 39.05 + 1.034 * 68.8 kJ in 832 J/K.
func TestBoundsOfTheWrongOrder(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, inIce("10 g", "200 mL", "2 W/K"))
	heat := figureOf(&rv, "heat.etch.total@2").Value.V
	c := 1000 * heat / figureOf(&rv, "heat.adiabatic_rise@2").Value.V
	acid := figureOf(&rv, "fluoride.hf_equivalent@1").Value.V / 20.0064
	solid := 10 * 0.64 // J/K; the phase has about 0.64 J/g/K
	onto := 2 + 1000*heat/(0.0513861*3.9/acid*(c-solid)+solid)
	if f := figureOf(&rv, "heat.temperature_peak@2:acid_onto_powder"); f == nil || !nearly.Share(f.Value.V, onto, 0.02) {
		t.Errorf("%+v, want %.1f degC", f, onto)
	}
	base := 2 + (heat+acid*68.8)*1000/c
	if f := figureOf(&rv, "heat.temperature_peak@2:base_added"); f == nil || !nearly.Share(f.Value.V, base, 0.01) {
		t.Errorf("%+v, want %.1f degC", f, base)
	}
}

// What is drawn back through a bubbler, by hand: after a hold at 60 degC the pot comes to its ice
// at the end, so that 800 mL of gas with x of vapour shrink to (1 - x) 273.15/T of it, T the
// highest temperature, x = exp(-40.66 kJ/mol/R (1/T - 1/T_b)); in a bath of 60 degC alone it comes
// to the room, 25 degC, and never stays as warm as its bath (common practice).
func TestWhatIsDrawnBackComesToTheColdestBath(t *testing.T) {
	ice := strings.NewReplacer("closure: vented,", "capacity: 1 L, closure: vented, bubbler: 20 mm,", "time: 4 h, "+
		"temperature: 2 degC", "time: 4 h, temperature: 60 degC").Replace(inIce("1 g", "200 mL", "2 W/K"))
	bath := strings.NewReplacer("kind: ice_bath, temperature: 0 degC, ice: 100 kg", "kind: water_bath, temperature: "+
		"60 degC", "temperature: 2 degC", "temperature: 60 degC").Replace(ice)
	for yaml, cold := range map[string]float64{ice: 0, bath: 25} {
		a := hazards.Assess(newCase(t, load(t, yaml)), nil)
		rv := hazards.Review{Figures: a.Figures}
		const kase = ":suck_back,self_accelerating"
		top, boils := figureOf(&rv, "heat.temperature_peak@2"+kase), figureOf(&rv, "heat.boiling_point@2")
		f := figureOf(&rv, "gas.suck_back@2"+kase)
		if a.Err != nil || top == nil || boils == nil || f == nil {
			t.Fatal(a.Err, top, boils, f)
		}
		x := math.Exp(-40660 / 8.314462618 * (1/(top.Value.V+273.15) - 1/(boils.Value.V+273.15)))
		if want := 800 * (1 - (1-x)*(cold+273.15)/(top.Value.V+273.15)); !nearly.Share(f.Value.V, want, 0.02) {
			t.Errorf("cold %g: %v mL, by hand %g from %v degC", cold, f.Value.V, want, top.Value.V)
		}
	}
}

// A pre-wash takes the metal out; left out, the metal comes to the etch.
func TestPrewashSkipped(t *testing.T) {
	long.NotShort(t)
	yaml := strings.Replace(strings.Replace(inIce("10 g", "200 mL", "2 W/K"), pure, "purity: 95 wt%, impurities: "+
		"[{formula: Al, share: 5 wt%}]", 1),
		"steps:\n", "  cup: {kind: beaker, material: PTFE, closure: open}\n  sour: {kind: drum, material: HDPE, "+
			"closure: vented}\nsteps:\n"+
			"  - {do: charge, in: cup, what: [precursor], temperature: 20 degC}\n"+
			"  - {do: prewash, in: cup, into: sour, what: [{substance: hydrochloric acid, strength: 1 mol/L, volume: 500 "+
			"mL}], cycles: 1, retained: 20 mL}\n"+
			"  - {do: charge, in: pot, what: [{substance: water, volume: 1 mL}], temperature: 2 degC}\n", 1)
	yaml = strings.Replace(yaml, "  - {do: charge, in: pot, what: [{substance: water, volume: 1 mL}], temperature: "+
		"2 degC}\n", "", 1)
	yaml = strings.Replace(yaml, "{do: add, in: pot, what: [precursor], over: 10 min, temperature: 2 degC}",
		"{do: transfer, in: cup, into: pot}", 1)
	rv := followed(t, yaml)
	f := figureOf(&rv, "gas.hydrogen.peak_rate@4:prewash_skipped,instantaneous")
	g := figureOf(&rv, "gas.hydrogen.peak_rate.during_addition@4:instantaneous")
	if f == nil || g == nil || !(f.Value.V > 1.1*g.Value.V) {
		t.Errorf("without the pre-wash %+v, with it %+v", f, g)
	}
}

// Every failure of the list can be met, and each is said in words.
func TestEveryFailureIsMet(t *testing.T) {
	long.Only(t)
	met := map[string]bool{}
	for _, text := range bundledTexts(t) {
		rv := followed(t, text)
		for i := range rv.Figures {
			met[rv.Figures[i].Case.Failure] = true
		}
	}
	rv := followed(t, inIce("10 g", "200 mL", "2 W/K"))
	for i := range rv.Figures {
		met[rv.Figures[i].Case.Failure] = true
	}
	for _, key := range upset.Keys() {
		if key != "prewash_skipped" && !met[key] {
			t.Errorf("no bundled route meets %s", key)
		}
	}
}

// A brief case has no searched failure, and says that they are missing.
func TestBriefLeavesFailuresOut(t *testing.T) {
	long.NotShort(t)
	c := newCase(t, load(t, inIce("10 g", "200 mL", "2 W/K")))
	c.Brief = true
	brief := must(t, c)
	for i := range brief.Figures {
		if brief.Figures[i].Searched {
			t.Errorf("a brief review has %s", brief.Figures[i].ID.String())
		}
	}
	if len(brief.Warnings) == 0 || !strings.Contains(strings.Join(words.SayAll(brief.Warnings), " "),
		"left out of a brief review") {
		t.Errorf("nothing says that failures are left out: %q", brief.Warnings)
	}
}

// Every failure says how hot, how much gas, how soon and what keeps it from
// happening (the last is a text that package reports checks): as figures of the
// step, or of a container where what counts is the container.
func TestEveryFailureSaysHowHotHowMuchAndHowSoon(t *testing.T) {
	long.Only(t)
	soon := map[string]string{"lid_closed": "gas.closed.time_to_10_kpa", "hood_fails": "gas.hydrogen.room_time",
		"suck_back": "gas.suck_back", // at once
		"ignition":  "gas.headspace.flammable_from",
		// as it is poured, all at once
		"nitric_for_hydrochloric": "heat.temperature_peak", "sulfuric_for_hydrochloric": "heat.temperature_peak"}
	gas := map[string]string{"nitric_for_hydrochloric": "gas.evolved.bound@%s/nitrosyl_chloride",
		"sulfuric_for_hydrochloric": "gas.evolved.bound@%s/hcl"}
	for name, rv := range bundledReviews(t) {
		met := map[string]bool{}
		for i := range rv.Figures {
			if f := &rv.Figures[i]; f.Case.Failure != "" && f.Of().IsZero() && strings.HasPrefix(f.Quantity, "heat.") {
				met[f.Place.String()+":"+f.Case.Failure] = true
			}
		}
		for at := range met {
			place, key, _ := strings.Cut(at, ":")
			times := "heat.time_to_boil"
			if q, ok := soon[key]; ok {
				times = q
			}
			comes := "gas.hydrogen.peak_rate@" + place
			if id, ok := gas[key]; ok {
				comes = fmt.Sprintf(id, place)
			}
			for _, q := range []string{"heat.temperature_peak@" + place, comes, times + "@" + place} {
				if figureOf(&rv, q+":"+key) == nil {
					t.Errorf("%s: %s of step %s does not say %s", name, key, place, q)
				}
			}
		}
	}
}

// Acid onto powder boils within the time of wetting where it is hot enough, and a
// fire in the gas space warms the liquor by its heat over what the vessel holds:
// 10 g in 200 mL in 1 L, 0.8 L of 29.5 vol% hydrogen burn with 241.8 kJ/mol, and
// 2.3 kJ in 832 J/K are 2.8 K (by hand).
func TestHowSoonTheWrongOrderBoils(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, strings.Replace(inIce("10 g", "200 mL", "2 W/K"), "closure: vented", "capacity: 1 L, "+
		"closure: vented", 1))
	if f := figureOf(&rv, "heat.time_to_boil@2:acid_onto_powder"); f == nil || f.Value.V != 0.5 {
		t.Errorf("%+v, want the half minute of wetting", f)
	}
	a, b := figureOf(&rv, "heat.temperature_peak@2:hood_fails,early_peak"),
		figureOf(&rv, "heat.temperature_peak@2:ignition,early_peak")
	if a == nil || b == nil || !nearly.To(b.Value.V-a.Value.V, 2.8, 0.1) {
		t.Errorf("%+v and with fire %+v, want 2.8 K more", a, b)
	}
}

// The minutes of a step are those of a failure that strikes in it: over all steps
// the least is that of the worst failure of equipment.
func TestMinutesOfEachStep(t *testing.T) {
	long.Only(t)
	for name, rv := range bundledReviews(t) {
		for i := range rv.Courses {
			n := &rv.Courses[i]
			first := figure.Step(n.Stages[0].Step.Number)
			for _, x := range n.Runs {
				least, want := math.Inf(1), math.Inf(1)
				for _, s := range n.Stages {
					f := figureOf(&rv, "heat.time_left@"+figure.Step(s.Step.Number).String()+":"+string(x.Law))
					if f == nil {
						t.Fatalf("%s: step %d has no minutes", name, s.Step.Number)
					}
					least = min(least, f.Value.V)
				}
				for _, key := range upset.Sudden() {
					if f := figureOf(&rv, "heat.time_to_boil@"+first.String()+":"+key+","+string(x.Law)); f != nil {
						want = min(want, f.Value.V)
					}
				}
				if !nearly.Alike(least, want, 0.02) {
					t.Errorf("%s, %s: the steps leave %g min, the failures %g", name, x.Law, least, want)
				}
			}
		}
	}
}

// A stirrer of 5 W keeps a bath of 2 W/K 2.5 K warmer (5/2, by hand), and goes on
// when the cooling fails, but not when the power does.
func TestAStirrerHeats(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, strings.Replace(inIce("1 g", "200 mL", "2 W/K"), "closure: vented,", "closure: vented, "+
		"stirrer_heat: 5 W,", 1))
	x := &rv.Courses[0].Runs[0]
	if end := x.Vessel.End.Temperature - 273.15; !nearly.To(end, 2.5, 0.1) {
		t.Errorf("%g degC at the end of the hold, want 2.5", end)
	}
	cooling, power := figureOf(&rv, "heat.temperature_peak@2:cooling_lost"),
		figureOf(&rv, "heat.temperature_peak@2:power_lost")
	d := math.Cbrt(4 * 200.3e-6 / math.Pi) // m, 200 mL of acid; 5 V/D of wetted area, 5 W/m2/K of still air
	if rise := 5 / (5 * 5 * 200.3e-6 / d); cooling == nil || power == nil || !nearly.Share(cooling.Value.V-power.Value.V,
		rise, 0.1) {
		t.Errorf("cooling lost %+v, power lost %+v, want %g K more", cooling, power, rise)
	}
}
