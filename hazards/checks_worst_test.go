package hazards_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/hazards"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/vessel"
	"etchbound/schemas/long"
)

// most is the worst that a failure leads to: the highest temperature in degC, the largest
// flow in L/min, and the shortest time to boiling in min.
type most struct{ hot, gas, soon float64 }

// month is how long a failure is followed, min.
const month = 30 * 24 * 60

// scan runs what is left of a course from each of some moments of it, and keeps the worst
// of each kind. It knows nothing of how the review looks for them.
func scan(t testing.TB, x *course.Run, to float64, moments int, boils float64,
	left func(t float64) []vessel.Piece) most {
	t.Helper()
	out := most{soon: month}
	for i := range moments + 1 {
		at := to * (float64(i) / float64(moments))
		s, err := x.Vessel.Path.State(at)
		if err != nil {
			t.Fatal(err)
		}
		p := x.Vessel.Plan
		p.Begin, p.Coarse, p.Tolerance = &s, true, 1e-5
		p.Pieces = append(left(at), vessel.Piece{Until: 60 * month})
		r, err := vessel.Simulate(p)
		if err != nil {
			t.Fatal(err)
		}
		out.hot, out.gas = max(out.hot, r.Peak.Value-273.15), max(out.gas, r.Gas.Value*24.4654*60)
		hot := func(p vessel.Point) float64 { return p.Temperature - 273.15 }
		if b, ok := r.Path.When(hot, boils); ok && r.Peak.Value-273.15 >= boils {
			out.soon = min(out.soon, b/60)
		}
	}
	return out
}

// warming is what is left of the additions of a plan with nothing that cools.
func warming(p *vessel.Plan, t float64) []vessel.Piece {
	var out []vessel.Piece
	last := 0
	for _, x := range vessel.After(p.Pieces, t) {
		x.UA, x.Loss = 0, 0
		out = append(out, x)
		if x.Dose > 0 {
			last = len(out)
		}
	}
	return out[:last]
}

// found holds the failures that a review has of its courses to what a scan finds: within
// 0.3 K, 4 % of the flow, and 2 % and half a minute of the time.
func found(t testing.TB, rv *hazards.Review, name string, moments int) {
	t.Helper()
	for i := range rv.Courses {
		n := &rv.Courses[i]
		for j := range n.Runs {
			x := &n.Runs[j]
			if x.Missing != nil || heated(x) {
				continue
			}
			p, step := &x.Vessel.Plan, n.Stages[0].Step.Number
			boils := unknown
			if f := figureOf(rv, fmt.Sprintf("heat.boiling_point@%d", step)); f != nil {
				boils = f.Value.V
			}
			id := func(failure string) string { return fmt.Sprintf("@%d:%s,%s", step, failure, x.Law) }
			nothing := func(float64) []vessel.Piece { return nil }
			all := scan(t, x, p.Pieces[len(p.Pieces)-1].Until, moments, boils, nothing)
			meets(t, rv, name, id("cooling_lost"), all)
			meets(t, rv, name, id("moved_unfinished"), all)
			never(t, rv, id("cooling_lost"), id("power_lost"))
			to := 0.0
			for _, y := range p.Pieces {
				if y.Dose > 0 {
					to = y.Until
				}
			}
			if figureOf(rv, "heat.temperature_peak"+id("cooling_lost_addition_on")) != nil {
				meets(t, rv, name, id("cooling_lost_addition_on"), scan(t, x, to, moments, boils,
					func(t float64) []vessel.Piece { return warming(p, t) }))
			}
		}
	}
}

func heated(x *course.Run) bool {
	for _, y := range x.Vessel.Plan.Pieces {
		if y.Stirring > 0 {
			return true
		}
	}
	return false
}

// meets holds a failure to what a scan of it found.
func meets(t testing.TB, rv *hazards.Review, name, id string, want most) {
	t.Helper()
	hot, gas, soon := figureOf(rv, "heat.temperature_peak"+id), figureOf(rv, "gas.hydrogen.peak_rate"+id),
		figureOf(rv, "heat.time_to_boil"+id)
	if hot == nil || !(hot.Value.V >= want.hot-0.3) {
		t.Errorf("%s, %s: %g, a scan finds %.2f degC", name, id, hot.Value.V, want.hot)
	}
	if gas == nil || !(gas.Value.V >= 0.96*want.gas) {
		t.Errorf("%s, %s: %g, a scan finds %.4g L/min", name, id, gas.Value.V, want.gas)
	}
	if soon == nil || !soon.Value.Unknown() && !(soon.Value.V <= 1.02*want.soon+0.5) {
		t.Errorf("%s, %s: %g, a scan finds %.4g min", name, id, soon.Value.V, want.soon)
	}
}

// never holds that of two failures of which the same follows the one that can happen
// whenever the other can is no milder.
func never(t testing.TB, rv *hazards.Review, wide, narrow string) {
	t.Helper()
	for _, q := range []string{"heat.temperature_peak", "gas.hydrogen.peak_rate", "heat.time_to_boil"} {
		w, n := figureOf(rv, q+wide), figureOf(rv, q+narrow)
		if n == nil || n.Value.Unknown() {
			continue
		}
		worse := w.Value.V >= n.Value.V
		if figure.Row(q).Danger == figure.Low {
			worse = w.Value.V <= n.Value.V
		}
		if !worse {
			t.Errorf("%s is %g %s, and %s %g", q+wide, w.Value.V, w.Value.Unit, narrow, n.Value.V)
		}
	}
}

// The worst moment is no milder than the worst of a scan through the whole course.
func TestTheWorstMomentIsFound(t *testing.T) {
	long.Only(t)
	texts := map[string]string{"a day": strings.Replace(inIce("10 g", "80 mL", "0.3 W/K"), "time: 4 h", "time: 24 h", 1),
		"an hour": strings.Replace(inIce("10 g", "80 mL", "2 W/K"), "time: 4 h", "time: 1 h", 1),
		"a week":  strings.Replace(inIce("10 g", "80 mL", "2 W/K"), "time: 4 h", "time: 166 h", 1),
		"two holds": strings.Replace(inIce("10 g", "80 mL", "2 W/K"), "time: 4 h, temperature: 2 degC}", "time: 40 h, "+
			"temperature: 2 degC}\n  - {do: hold, in: pot, time: 100 h, temperature: 30 degC, attended: false}", 1),
		"poured on": onto("")}
	if long.Form() {
		for name, text := range bundledTexts(t) {
			texts[name] = text
		}
	}
	moments := 150
	if long.Form() {
		moments = 400
	} else if testing.Short() {
		moments = 40
	}
	for _, name := range long.Some(sorted(texts), 5, 1) {
		rv := followed(t, texts[name])
		found(t, &rv, name, moments)
	}
}

// And on routes drawn at random: batches, additions and holds in baths that cool well and
// badly.
func TestTheWorstMomentOfAnyRouteIsFound(t *testing.T) {
	long.Only(t)
	long.Draws(t, 10)
	rapid.Check(t, func(rt *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(rt, name) }
		cold := number("cold", 0, 25)
		warm, over := cold+number("warmer", 0, 40), number("over", 1, 200)
		yaml := strings.NewReplacer("over: 10 min", fmt.Sprintf("over: %.3g min", over),
			"time: 4 h, temperature: 2 degC}", fmt.Sprintf("time: %.3g h, temperature: %.3g degC}\n  - {do: hold, in: pot, "+
				"time: %.3g h, temperature: %.3g degC}", over/50+number("first", 0, 100), cold, number("then", 0.2, 100), warm),
			"kind: ice_bath, temperature: 0 degC, ice: 100 kg", fmt.Sprintf("kind: water_bath, temperature: %.3g degC", cold),
			"temperature: 2 degC", fmt.Sprintf("temperature: %.3g degC", cold)).Replace(
			inIce(fmt.Sprintf("%.3g g", number("powder", 0.5, 20)), fmt.Sprintf("%.3g mL", number("acid", 50, 300)),
				fmt.Sprintf("%.3g W/K", number("cooling", 0.05, 5))))
		rv := followed(fataler{t, rt, false}, yaml)
		found(t, &rv, yaml, 120)
	})
}
