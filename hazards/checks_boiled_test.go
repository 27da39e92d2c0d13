package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

// scorched is so many grams of Ti3AlC2 in half a litre of 40 wt% acid, in an open vessel.
func scorched(t *testing.T, grams string) hazards.Review {
	t.Helper()
	return review(t, scorch(grams))
}

func scorch(grams string) string {
	return "route: etchbound/1\ntitle: check\nbasis: {status: invented}\n" +
		"precursor: {phase: Ti3AlC2, mass: " + grams + ", impurities: none (certificate)}\n" +
		"places:\n  pot: {kind: beaker, material: PTFE, capacity: 2 L, closure: open}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 40 wt%, volume: 500 mL}], " +
		"temperature: 25 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 60 min, temperature: 25 degC}\n"
}

// cooledBy is the same in a bath that takes little.
func cooledBy(yaml string) string {
	return strings.Replace(yaml, "closure: open", "closure: open, cooling: {kind: water_bath, temperature: 25 "+
		"degC, ua: 1 W/K}", 1) +
		"  - {do: hold, in: pot, time: 4 h, temperature: 25 degC}\n"
}

// 100 g, 0.514 mol, give 390.5 kJ and 1.54 mol of hydrogen by 3 mol/mol of central product,
// in about 1.86 kJ/K: 210 K above 25 degC. What is above boiling at 111.6 degC evaporates
// 5.6 mol of water, 101 g, 178 L as vapour; in 30 s with 49 L of hydrogen 450 L/min; of
// 565 g that is 0.18, and at most as many moles of HF, 113 g (by hand).
func TestWhatBoilsOffIsInLitresAndPerMinute(t *testing.T) {
	rv := scorched(t, "100 g")
	for _, c := range []struct {
		id          string
		want, share float64
	}{
		{"heat.boiled_off@2", 101, 0.05}, {"heat.boiled_off.volume@2", 178, 0.05}, {"heat.boiled_off.flow@2", 450, 0.06},
		{"heat.boiled_off.share@2", 0.18, 0.05}, {"air.boiled_off@2/hf", 113, 0.05},
	} {
		if f := figureOf(&rv, c.id); f == nil || !nearly.Share(f.Value.V, c.want, c.share) {
			t.Errorf("%s: %+v, want %g", c.id, f, c.want)
		}
	}
	v, g := figureOf(&rv, "heat.boiled_off.volume@2").Value.V, figureOf(&rv, "heat.boiled_off@2").Value.V
	if at := figureOf(&rv, "heat.boiling_point@2").Value.V; !nearly.Share(v, g/18.015*8.314463*(at+273.15)/101.325, 1e-6) {
		t.Errorf("%g L of %g g at %g degC", v, g, at)
	}
	if v := verdicts(&rv)["heat.boiled_off.share@2+boils_dry"]; v != withinLimit {
		t.Errorf("a fifth of the liquor boils off: %v", v)
	}
}

// Acid cannot leave that is not there, and a liquor of which nothing is left is named.
func TestBoilingDryIsNamed(t *testing.T) {
	rv := scorched(t, "500 g")
	if v := verdicts(&rv)["heat.boiled_off.share@2+boils_dry"]; v != exceeds {
		t.Errorf("%+v: %v", figureOf(&rv, "heat.boiled_off.share@2"), v)
	}
	all := figureOf(&rv, "fluoride.hf_equivalent@2").Value.V
	if f := figureOf(&rv, "air.boiled_off@2/hf"); f == nil || !(f.Value.V <= all*(1+1e-9)) {
		t.Errorf("%+v of %g g", f, all)
	}
}

// The 113 g, 5.65 mol, of HF that go off with it in 30 s are 4.6 L/s. In a room of 30 m3
// that changes 180 m3/h, of which three tenths mix, the room holds no more than all of it,
// 138 L in 30 m3, 4610 ppm; at arm's reach with 5 m3/min 0.188*0.02447*60/5 more, 55200 ppm.
// Over eight hours, while the room is swept, 5.65*0.02447*(3600/54 + 60/5)/28800 of it, 378
// ppm; to 2 ppm it takes 8.3 million m3/h (by hand).
func TestAcidThatBoilsOffReachesPeople(t *testing.T) {
	long.Only(t)
	c := newCase(t, load(t, cooledBy(scorch("100 g"))))
	site := *demoSite(t)
	site.Hood, site.Stock = nil, nil
	site.RoomVolume, site.RoomFlow = quantity.Of(30, "m3"), quantity.Of(180, "m3/h")
	c.Site = &site
	rv := must(t, c)
	for _, w := range []struct {
		id   string
		want float64
	}{
		{"air.breathing_zone@2/hf:all_at_once", 59800}, {"air.room_peak@2/hf:all_at_once", 4610},
		{"air.room_peak@2/hf:boiling", 4610}, {"air.boiled_average@2/hf:boiling,over_480_min", 378},
	} {
		f := figureOf(&rv, w.id)
		if f == nil || !nearly.Share(f.Value.V, w.want, 0.06) || !(f.High().V > f.Value.V*1.1) {
			t.Errorf("%s: %v to %v, want %g", w.id, f.Value.V, f.High().V, w.want)
		}
	}
	as := figureOf(&rv, "air.breathing_zone@2/hf:boiling") // slower: the powder goes in within an hour
	if as == nil || !(as.Value.V > 1000) || !(as.Value.V < 59800) {
		t.Errorf("as it is meant: %+v", as)
	}
	worst := as
	if mist := figureOf(&rv, "air.breathing_zone@2/hf:mist"); mist.High().V > as.High().V {
		worst = mist
	}
	if f := figureOf(&rv, "air.breathing_zone@2"); f == nil || !nearly.Share(f.Value.V, worst.Value.V, 1e-9) {
		t.Errorf("the worst of the step: %v %v", f.Value, f.Of())
	}
	v := verdicts(&rv)
	for _, id := range []string{"air.breathing_zone@2/hf:all_at_once+idlh_hf", "air.breathing_zone@2/hf:boiling+idlh_hf",
		"heat.boiled_off.share@2:weighed_ten_times+boils_dry",
		"air.boiled_average@2/hf:boiling,over_480_min+us_acgih_hf_twa"} {
		if v[id] != exceeds {
			t.Errorf("%s: %v", id, v[id])
		}
	}
	if v["heat.boiled_off.share@2:all_at_once+boils_dry"] != withinLimit {
		t.Error("a fifth of it is not all")
	}
}

// What does not boil gives nothing off by boiling, and what is shut holds it (definition).
func TestWhatDoesNotBoilOffIsNotTold(t *testing.T) {
	long.NotShort(t)
	for name, yaml := range map[string]string{"little powder": cooledBy(scorch("1 g")),
		"shut": strings.Replace(scorch("100 g"), "closure: open", "closure: closed", 1)} {
		rv := review(t, yaml)
		for _, f := range rv.Figures {
			if f.Quantity == "air.boiled_off" && f.Case == figure.If("all_at_once") {
				t.Errorf("%s: %v", name, f.ID)
			}
		}
	}
}
