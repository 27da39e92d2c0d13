package hazards_test

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/schemas/nearly"
)

// goesTo is the time in min in which a batch of c J/K, that a wall of u W/K parts from a mixed
// jacket of cj J/K through which j W/K flow, goes from one temperature to within a kelvin of
// another, which its coolant has: both balances in steps of a tenth of a second. A chiller takes
// p W at most; none of it is said of what heats.
func goesTo(c, cj, u, j, p, from, to float64) float64 {
	batch, jacket, t := from, from, 0.0
	for !nearly.To(batch, to, 1) && t < 1e6 {
		taken := j * (jacket - to)
		if to < from {
			taken = min(taken, p)
		}
		through := u * (batch - jacket)
		batch, jacket, t = batch-through/c*0.1, jacket+(through-taken)/cj*0.1, t+0.1
	}
	return t / 60
}

// The time to the temperature of a step against both heat balances integrated on their own, with
// a chiller that limits and one that does not: 0.5 %. A jacket of which not all is stated has
// none that is known, and where nothing is warmed or cooled there is nothing to tell.
func TestTimeToHeatAndToCool(t *testing.T) {
	text := func(power string) string {
		cooling := "kind: jacket, temperature: 0 degC, ua: 2 W/K, flow: 3 L/min, liquid: 1 L" + power
		r := strings.Replace(inIce("10 g", "200 mL", "2 W/K"), "kind: ice_bath, temperature: 0 degC, ice: 100 kg, "+
			"ua: 2 W/K", cooling, 1)
		return strings.Replace(r, "time: 4 h, temperature: 2 degC}\n", "time: 4 h, temperature: 40 degC}\n", 1) +
			"  - {do: cool, in: pot, time: 1 h, temperature: 10 degC}\n"
	}
	for power, watts := range map[string]float64{", power: 500 W": 500, ", power: 20 W": 20} {
		a := hazards.Assess(briefly(t, load(t, text(power))), nil)
		rv := hazards.Review{Figures: a.Figures}
		s := &a.Courses[0].Stages[2]
		c, cj, u, j := s.Filled.V, s.Jacket.Holds.V, s.UA.V, s.Jacket.UA.V
		if !nearly.Share(cj, 3700, 1e-9) || !nearly.Share(j, 185, 1e-9) || u != 2 || !(c > 700 && c < 900) {
			t.Fatalf("%g J/K, %g J/K, %g W/K, %g W/K", c, cj, u, j)
		}
		for id, want := range map[string]float64{"heat.jacket.time@3": goesTo(c, cj, u, j, watts, 2, 40),
			"heat.jacket.time@4": goesTo(c, cj, u, j, watts, 40, 10)} {
			if f := figureOf(&rv, id); !nearly.Share(f.Value.V, want, 5e-3) {
				t.Errorf("%s%s: %v, integrated %g min", id, power, f.Value.V, want)
			}
		}
		if f := figureOf(&rv, "heat.jacket.time@2"); f != nil {
			t.Errorf("a step as warm as the one before: %+v", f)
		}
	}
	a := hazards.Assess(briefly(t, load(t, text(""))), nil)
	rv := hazards.Review{Figures: a.Figures}
	if f := figureOf(&rv, "heat.jacket.time@4"); f == nil || !f.Value.Unknown() {
		t.Errorf("a chiller that nobody states: %+v", f)
	}
}

// What the batch puts into its jacket is held against the chiller of the vessel as it is stated, not
// against the shared one alone: where more comes in than leaves, the coolant warms (balance of the
// jacket, common practice). A power or a cooling that nobody states is unknown and no pass.
func TestTheJacketIsHeldToItsOwnChiller(t *testing.T) {
	const id = "heat.jacket.load@2:early_peak"
	of := func(cooling string) (watts float64, verdict string) {
		r := strings.Replace(inIce("10 g", "200 mL", "2 W/K"), ", cooling: {kind: ice_bath, temperature: 0 degC, "+
			"ice: 100 kg, ua: 2 W/K}", cooling, 1)
		c := briefly(t, load(t, r))
		all, err := hazards.Centre(c)
		if err != nil {
			t.Fatal(err)
		}
		for i := range all {
			if all[i].ID().String() == id+"+written_chiller" {
				verdict = all[i].Verdict.String()
			}
		}
		a := hazards.Assess(c, nil)
		if f := figureOf(&hazards.Review{Figures: a.Figures}, id); f != nil {
			watts = f.Value.V
		}
		return watts, verdict
	}
	jacket := func(power string) string {
		return ", cooling: {kind: jacket, temperature: 0 degC, ua: 2 W/K, flow: 3 L/min, liquid: 1 L" + power + "}"
	}
	most, _ := of(jacket(", power: 500 W"))
	if !(most > 0) {
		t.Fatalf("%g W", most)
	}
	for power, want := range map[float64]string{0.5 * most: "exceeds", 1.1 * most: "near", 10 * most: "within"} {
		if _, got := of(jacket(fmt.Sprintf(", power: %.6f W", power))); got != want {
			t.Errorf("%g W of %g W: %s, want %s", power, most, got, want)
		}
	}
	for _, cooling := range []string{jacket(""), ""} {
		if _, got := of(cooling); got != "unknown" {
			t.Errorf("%q: %s", cooling, got)
		}
	}
}
