package scaling_test

import (
	"testing"

	"etchbound/hazards/figure"
	"etchbound/scaling"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// flows is a jacket of which nothing is outgrown: much flows through it, and its chiller is
// strong.
const flows = "flow: 1000 L/min, liquid: 1 L, power: 1000 kW"

// A pot that grows along and only may run over, at the least density of the powder (500 mL and
// 2.401 mL at 4.165 g/mL in 502.39 mL, 2.353 to 2.381 at its best), does not end the turns.
func TestAPotThatOnlyMayRunOverEndsNothing(t *testing.T) {
	long.Only(t)
	text := "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 10 g}\n" +
		"places:\n  pot: {kind: vessel, material: PTFE, capacity: 502.39 mL, closure: vented, vent: 6 mm, " +
		"cooling: {kind: jacket, temperature: 5 degC, ua: 2 W/K, " + flows + "}}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 500 mL}], " +
		"temperature: 20 degC}\n  - {do: add, in: pot, what: [precursor], over: 3 h, temperature: 20 degC}\n"
	from, to := mass(1), mass(100)
	g, err := scaling.Grow(newCase(t, text), from, to, scaling.Follow{})
	if err != nil {
		t.Fatal(err)
	}
	already, turns := false, 0
	for i := range g.Crossings {
		x := &g.Crossings[i]
		already = already || x.Figure.Quantity == "vessel.content" && x.Turns == figure.Exceeds && x.Already
		if !x.Already {
			turns++
		}
	}
	if g.Overflows != nil || len(g.Beyond) > 0 || !already || turns == 0 {
		t.Errorf("runs over %+v, %d beyond, exceeded at once %t, %d turns", g.Overflows, len(g.Beyond), already, turns)
	}
}

// A pot of 1 L that is kept is full at twice the batch that fills half of it, and no
// turn is given beyond (by hand: 50 mL of acid a gram and the powder at its least density of 4.165 g/mL,
// 1000/50.240 = 19.904 g fill it). One that grows
// along never runs over.
func TestAKeptVesselRunsOver(t *testing.T) {
	long.Only(t)
	for _, c := range []struct {
		keep string
		at   float64
	}{{"keep: true, ", 19.904}, {"", 0}} {
		text := "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 10 g}\n" +
			"places:\n  pot: {kind: vessel, material: PTFE, capacity: 1 L, " + c.keep + "closure: vented, " +
			"cooling: {kind: jacket, temperature: 5 degC, ua: 2 W/K, " + flows + "}}\nsteps:\n" +
			"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 500 mL}], " +
			"temperature: 20 degC}\n  - {do: add, in: pot, what: [precursor], over: 3 h, temperature: 20 degC}\n" +
			"  - {do: hold, in: pot, time: 24 h, temperature: 20 degC}\n"
		from, to := mass(1), mass(1000)
		g, err := scaling.Grow(newCase(t, text), from, to, scaling.Follow{})
		if err != nil {
			t.Fatal(err)
		}
		if c.at == 0 {
			if g.Overflows != nil || len(g.Beyond) > 0 {
				t.Errorf("a pot that grows along runs over at %+v", g.Overflows)
			}
			continue
		}
		if g.Overflows == nil || !nearly.Share(g.Overflows.Grams, c.at, 1e-3) {
			t.Fatalf("runs over at %+v, want %g g", g.Overflows, c.at)
		}
		if len(g.Beyond) == 0 {
			t.Error("nothing would turn beyond what the pot holds")
		}
		for i := range g.Crossings {
			if x := &g.Crossings[i]; x.Grams > g.Overflows.Grams && !x.Already {
				t.Errorf("%s turns at %g g, beyond what the pot holds", x.Figure, x.Grams)
			}
		}
		if !g.Overflows.Figure.Place.IsZero() && g.Overflows.Turns != figure.Exceeds {
			t.Errorf("what runs over is %v", g.Overflows.Turns)
		}
	}
}
