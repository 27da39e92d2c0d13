package hazards_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// flowing is a jacket through which much flows, and a strong chiller.
const flowing = "flow: 10 L/min, liquid: 1 L, power: 500 W"

// What a jacket is stated to take counts where it is more than still air takes at least: 200 mL
// have 5 V/D = 0.0158 m2, of which 5 W/m2/K are 0.079 W/K by hand, and air takes 8, 0.126 W/K, at
// its best estimate and 5 to 12, so that 0.1 W/K counts wherever it stands. What takes less is no jacket, one
// through which less flows is none, and of one nobody knows what flows through it;
// and the room cools: 0.01 W/K at 0 degC would take less from 60 degC than the air at 25.
func TestAJacketThatTakesLessThanAirIsNone(t *testing.T) {
	long.Only(t)
	jacket := func(cooling string) string {
		return strings.Replace(inIce("10 g", "200 mL", "2 W/K"), "kind: ice_bath, temperature: 0 degC, ice: 100 kg, "+
			"ua: 2 W/K", cooling, 1)
	}
	for _, c := range []struct {
		cooling string
		want    float64 // W/K
		at      float64 // degC
	}{
		{"kind: none", 0.126, 25}, {"kind: jacket, temperature: 0 degC, ua: 0.01 W/K", 0.126, 25},
		{"kind: jacket, temperature: 0 degC, ua: 0.2 W/K, " + flowing, 0.2, 0},
		{"kind: jacket, temperature: 0 degC, ua: 2 W/K", 0.126, 25},
		{"kind: jacket, temperature: 0 degC, ua: 2 W/K, flow: 1 mL/min, liquid: 1 L, power: 500 W", 0.126, 25},
		{"kind: ice_bath, ice: 1 kg, ua: 0.1 W/K", 0.1, 0}, {"kind: ice_bath, ice: 1 kg, ua: 0.07 W/K", 0.126, 25},
	} {
		rv := review(t, jacket(c.cooling))
		s := &rv.Courses[0].Stages[0]
		if !nearly.Share(s.UA.V, c.want, 0.02) || !nearly.To(s.Coolant.V, c.at, 1e-9) {
			t.Errorf("%s: %g W/K to %g degC, by hand %g to %g", c.cooling, s.UA.V, s.Coolant.V, c.want, c.at)
		}
	}
}

// 5 mL wet 5 V/D = 0.001349 m2 of a vessel as wide as they stand high in it, D = 18.53 mm, and
// films of 1000 W/m2/K on both sides pass 500 W/m2/K: 0.6747 W/K by hand of the 30 stated for it
// full. What the films can pass is believed, and the line says so where it is over half of that.
func TestAFewDropsDoNotKeepWhatAFullVesselTakes(t *testing.T) {
	for _, c := range []struct {
		liquid, ua string
		want       float64 // W/K
		says       bool
	}{{"5 mL", "30 W/K", 0.6747, true}, {"5 mL", "0.5 W/K", 0.5, true}, {"200 mL", "2 W/K", 2, false}} {
		r, w := load(t, inIce("0.1 g", c.liquid, c.ua)), working.NewSheet()
		a := hazards.Assess(briefly(t, r), w)
		if says := slices.ContainsFunc(w.Lines, func(l working.Line) bool {
			return l.Formula == "min(ua,U_m*A)"
		}); says != c.says {
			t.Errorf("%s, %s: the line says so: %v", c.liquid, c.ua, says)
		}
		if s := &a.Courses[0].Stages[0]; !nearly.Share(s.UA.V, c.want, 0.01) {
			t.Errorf("%s, %s: %g W/K, by hand %g", c.liquid, c.ua, s.UA.V, c.want)
		}
	}
}

// Saying nothing of what cools a vessel is never milder than saying how little it takes.
func TestCoolingLeftOutIsNeverMilderThanALittle(t *testing.T) {
	long.Only(t)
	kinds := []string{"jacket, temperature: 0 degC, " + flowing, "water_bath, temperature: 1 degC", "ice_bath, ice: 1 kg"}
	for _, kind := range long.Some(kinds, 2, 1) {
		for _, ua := range long.Some([]float64{0.001, 0.05, 0.08, 0.1, 0.12, 0.13, 0.3, 2}, 3, 2) {
			r := load(t, strings.Replace(inIce("10 g", "200 mL", "2 W/K"), "kind: ice_bath, temperature: 0 degC, ice: "+
				"100 kg, ua: 2 W/K",
				fmt.Sprintf("kind: %s, ua: %g W/K", kind, ua), 1))
			bare := r.Copy()
			bare.Places[0].Cooling = nil
			with, without := must(t, briefly(t, r)), must(t, briefly(t, bare))
			after := ranks(&without)
			for id, was := range ranks(&with) {
				if is, there := after[id]; !there || is < was {
					t.Errorf("%s, %g W/K, left out: %s was of rank %d, is of rank %d (there %v)", kind, ua, id, was, is, there)
				}
			}
		}
	}
}

// briefly is the case of a route without its failures.
func briefly(t *testing.T, r *route.Route) route.Case {
	t.Helper()
	c := newCase(t, r)
	c.Brief = true
	return c
}
