package hazards_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// inIce is m g of powder in 20 mL/g of 10 wt% HF, added over 10 min in ice.
func inIce(mass, volume, ua string) string {
	return "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: " + mass +
		", " + pure + "}\n" +
		"places:\n  pot: {kind: vessel, material: PTFE, closure: vented, cooling: {kind: ice_bath, temperature: 0 degC, " +
		"ice: 100 kg, ua: " + ua + "}}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: " + volume +
		"}], temperature: 2 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 2 degC}\n" +
		"  - {do: hold, in: pot, time: 4 h, temperature: 2 degC}\n"
}

// Both bounds of an unknown rate are shown. Reacting as it goes in, 10 K above
// the coolant take n q/(UA dT): 33 min (29 to 36) and 163 min (147 to 179) on
// 760 (685 to 835) kJ/mol, by hand. By the slow laws over 90 % is unreacted
// when the dose ends: in the reference integrations (their first-order case)
// 92 % is.
func TestBothBoundsOfTheAddition(t *testing.T) {
	long.Only(t)
	for _, c := range []struct {
		mass, volume, ua string
		low, mid, high   float64
	}{{"10 g", "200 mL", "2 W/K", 29.3, 32.5, 35.8}, {"1 kg", "20 L", "40 W/K", 146.7, 162.7, 178.8}} {
		rv := followed(t, inIce(c.mass, c.volume, c.ua))
		f := figureOf(&rv, "heat.addition_time.required@2")
		if f == nil || !nearly.To(f.Value.V, c.mid, 0.1) || !nearly.To(f.Low().V, c.low, 0.1) ||
			!nearly.To(f.High().V, c.high, 0.1) {
			t.Fatalf("%s: addition time required %+v, want %g (%g to %g) min", c.mass, f, c.mid, c.low, c.high)
		}
		if v := verdicts(&rv)["heat.addition_time.required@2+written_over"]; v != exceeds {
			t.Errorf("%s: ten minutes are %v", c.mass, v)
		}
		for _, law := range []string{"self_accelerating", "early_peak"} {
			f := figureOf(&rv, "heat.accumulation@2:"+law)
			if f == nil || !(f.Value.V > 0.9 && f.Value.V < 1) {
				t.Errorf("%s: unreacted by the %s law %+v, want over 0.9", c.mass, law, f)
			}
		}
	}
}

// The highest temperature of instantaneous reaction against the closed form of
// one vessel with a constant heat input: T = Tc + P/UA + (T0 - Tc - P/UA) exp(-UA t/C).
func TestInstantaneousPeakTemperature(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, inIce("10 g", "200 mL", "2 W/K"))
	rise := figureOf(&rv, "heat.adiabatic_rise@2").Value.V
	heat := figureOf(&rv, "heat.etch.total@2").Value.V
	c, p := 1000*heat/rise, heat*1000/600
	want := p/2 + (2-p/2)*math.Exp(-2*600/c)
	if f := figureOf(&rv, "heat.temperature_peak@2:instantaneous"); f == nil || !nearly.To(f.Value.V, want, 1e-9) {
		t.Errorf("%+v, want %g degC", f, want)
	}
}

// All of the hydrogen over the time of the addition: 3.772 L in 10 min, and 99
// times as much air for 1 vol%.
func TestInstantaneousFlow(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, inIce("10 g", "200 mL", "2 W/K"))
	q := figureOf(&rv, "gas.hydrogen.peak_rate.during_addition@2:instantaneous").Value.V
	if !nearly.To(q, 0.37715, 1e-4) {
		t.Errorf("%g L/min, want 0.3772", q)
	}
	if air := figureOf(&rv, "gas.hydrogen.dilution_air@2:instantaneous").Value.V; !nearly.To(air, q*99*0.06, 1e-9) {
		t.Errorf("%g m3/h of air, want 99 times the hydrogen", air)
	}
}

// Without a hold nobody knows how fast the etch is; the bound of instantaneous
// reaction still stands.
func TestNoHoldNoRate(t *testing.T) {
	long.NotShort(t)
	yaml := inIce("10 g", "200 mL", "2 W/K")
	rv := followed(t, yaml[:strings.Index(yaml, "  - {do: hold")])
	if f := figureOf(&rv, "heat.accumulation@2:self_accelerating"); f == nil || !f.Value.Unknown() {
		t.Errorf("unreacted share without a hold: %+v", f)
	}
	if f := figureOf(&rv, "heat.peak_power.during_addition@2:instantaneous"); f == nil || f.Value.Unknown() {
		t.Errorf("bound without a hold: %+v", f)
	}
}

// A measured curve takes the place of the two laws.
func TestMeasuredCurveReplacesTheLaws(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, inIce("10 g", "200 mL", "2 W/K")+
		"measured:\n  curve: {temperature: 2 degC, points: [{time: 1 h, conversion: 10 %}, {time: 3 h, conversion: 90 %}]}\n")
	if f := figureOf(&rv, "heat.accumulation@2:self_accelerating"); f != nil {
		t.Errorf("a law beside the curve: %+v", f)
	}
	if f := figureOf(&rv, "heat.accumulation@2:measured"); f == nil || !(f.Value.V > 0.98 && f.Value.V < 1) {
		t.Errorf("unreacted by the curve: %+v", f) // 10 % an hour: on average five minutes old
	}
}

// Ice that is too little lets the bath warm, and the ice asked for says so.
func TestLittleIce(t *testing.T) {
	long.Only(t)
	with := func(ice string) string {
		return strings.Replace(inIce("10 g", "200 mL", "2 W/K"), "ice: 100 kg", "ice: "+ice, 1)
	}
	little, much := followed(t, with("20 g")), followed(t, with("1 kg"))
	id := "heat.temperature_peak@3:early_peak"
	if a, b := figureOf(&little, id), figureOf(&much, id); !(a.Value.V > b.Value.V+1) {
		t.Errorf("20 g of ice: %v degC, 1 kg: %v", a.Value.V, b.Value.V)
	}
	if v := verdicts(&little)["heat.ice@2+written_ice"]; v != exceeds {
		t.Errorf("20 g of ice for 39 kJ is %v", v)
	}
}

// Cooling lost when most heat waits: with nothing lost the liquor ends where
// the balance at that moment says it must, at the set temperature and the rise
// of what waits (energy balance); boiling is reached if that is above it, and
// later the slower the stated etch is.
func TestCoolingLost(t *testing.T) {
	long.Only(t)
	weak := followed(t, inIce("10 g", "200 mL", "2 W/K"))
	top := figureOf(&weak, "heat.temperature_peak@2:cooling_lost,early_peak")
	mtsr := figureOf(&weak, "heat.mtsr@2")
	// The bath is 2 K below the set temperature and up to 5 % has reacted by then.
	if least := mtsr.Value.V - 2 - 0.05*figureOf(&weak, "heat.adiabatic_rise@2").Value.V; top == nil ||
		!(top.Value.V > least && top.Value.V < mtsr.Value.V) {
		t.Errorf("highest temperature %+v, all that waits gives %v", top, mtsr)
	}
	if f := figureOf(&weak, "heat.time_to_boil@2:cooling_lost,early_peak"); f == nil || f.Value.V != 43200 {
		t.Errorf("49 degC at most, and it boils after %+v", f)
	}
	strong := inIce("10 g", "50 mL", "2 W/K")
	quick, slow := followed(t, strong), followed(t, strings.Replace(strong, "time: 4 h", "time: 40 h", 1))
	for _, law := range []string{"self_accelerating", "early_peak"} {
		id := "heat.time_to_boil@2:cooling_lost," + law
		a, b := figureOf(&quick, id), figureOf(&slow, id)
		if !(a.Value.V > 0 && a.Value.V < b.Value.V && a.Value.V < 1440) {
			t.Errorf("%s: boils after %v min on a hold of 4 h, %v on one of 40", law, a.Value.V, b.Value.V)
		}
		if v := verdicts(&quick)["heat.temperature_peak@2:cooling_lost+boiling_if_it_fails"]; v != exceeds {
			t.Errorf("%s: boiling once cooling is lost is %v", law, v)
		}
	}
}

// The assumed time of free metal moves what stands on it.
func TestTheTimeOfMetalMovesTheFlow(t *testing.T) {
	long.NotShort(t)
	yaml := strings.Replace(inIce("10 g", "200 mL", "2 W/K"), pure, "impurities: [{formula: Al, share: 3 wt%}]", 1)
	rv := followed(t, yaml)
	for _, a := range rv.Assumptions {
		if a.ID == "kinetics.metal_time" {
			for _, m := range a.Moves {
				if m.Figure.String() == "gas.hydrogen.peak_rate.during_addition@2:early_peak" && m.From > m.To {
					return // quicker metal, more gas
				}
			}
			t.Fatalf("it moves %+v", a.Moves)
		}
	}
	t.Fatal("the time of free metal is not among the assumptions")
}
