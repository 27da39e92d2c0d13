package hazards_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"etchbound/hazards/spread"
	"etchbound/schemas/quantity"
)

// The lines of an open surface say what the law of the package that was held
// against worked cases says: 10 wt% HF in an open beaker of 1 L, at the pressure
// the review itself has.
func TestEmissionIsTheLawOfEvaporation(t *testing.T) {
	rv := review(t, "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n  pot: {kind: beaker, material: PTFE, capacity: 1 L, closure: open}\nsteps:\n"+
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 200 mL}], temperature: 25 degC}\n"+
		"  - {do: hold, in: pot, time: 1 h, temperature: 25 degC}\n")
	ppm := figureOf(&rv, "air.saturated@2/hf").Value.V
	wide := math.Cbrt(4 * 1e-3 / math.Pi) // m, as high as it is wide
	area := math.Pi / 4 * wide * wide
	l := spread.Leaving{Area: area, Velocity: 0.5, Molar: 20.0064, Pressure: ppm * 0.101325, Kelvin: 298.15, Diffuses: 2.3e-5, Board: wide - 200e-6/area}
	p := l.Pressure // the lines let what leaves carry more with it at any pressure
	l.Pressure = -spread.Atmosphere * math.Log(1-p/spread.Atmosphere)
	want := l.Most() * l.Molar * 60e3
	if got := figureOf(&rv, "air.emission@2/hf").Value.V; math.Abs(got-want) > 1e-3*want {
		t.Errorf("%g mg/min, the law says %g", got, want)
	}
}

// At the temperature the hood stands, the air that the vapour asks for is that of
// the hood, or a scrubber is asked for: the same acid written at that temperature.
func TestTheHoodIsExceededWhereItSays(t *testing.T) {
	for _, strength := range []string{"49 wt%", "40 wt%"} {
		yaml := strings.Replace(strings.Replace(inIce("100 g", "2 L", "200 W/K"), "10 wt%", strength, 1), "closure: vented", "capacity: 3 L, closure: open", 1)
		site := *demoSite(t)
		hood := *site.Hood
		hood.Flow = quantity.Of(300, "m3/h")
		site.Hood = &hood
		c := newCase(t, load(t, yaml))
		c.Site = &site
		rv := must(t, c)
		f := figureOf(&rv, "air.hood_limit@2")
		if f == nil || !(f.Value.V > 2 && f.Value.V < 60) {
			t.Fatalf("%s: %+v, want a temperature between the step and the end of the data", strength, f)
		}
		c.Route = load(t, strings.ReplaceAll(yaml, "temperature: 2 degC", fmt.Sprintf("temperature: %.6f degC", f.Value.V)))
		hot := must(t, c)
		air, left := figureOf(&hot, "air.exhaust_required@2/hf").Value.V, figureOf(&hot, "air.emission@2/hf").Value.V
		if share := math.Max(air/300, left/250); math.Abs(share-1) > 2e-3 {
			t.Errorf("%s at %g degC: %g m3/h and %g mg/min, want 300 or 250", strength, f.Value.V, air, left)
		}
		if v := verdicts(&rv)["heat.mtsr@2+hood_limit"]; v != exceeds {
			t.Errorf("%s: what the hood stands of it is %v", strength, v)
		}
	}
	rv := review(t, inIce("10 g", "200 mL", "2 W/K")) // no site
	if f := figureOf(&rv, "air.hood_limit@2"); f == nil || !f.Value.Unknown() {
		t.Errorf("without a site %+v, want unknown", f)
	}
}
