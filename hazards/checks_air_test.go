package hazards_test

import (
	"math"
	"testing"

	"etchbound/hazards/spread"
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
