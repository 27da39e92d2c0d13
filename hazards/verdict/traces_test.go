package verdict_test

import (
	"math"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/verdict"
)

// Two acids of which nothing boils off have nothing to take together; one of which nobody
// knows is kept (definition).
func TestNothingBoiledOffHasNoSum(t *testing.T) {
	place, boils := figure.Step(2), figure.By(figure.Boiling)
	sum := figure.Figure{ID: figure.ID{Quantity: "air.additive", Place: place, Case: boils},
		Value: working.Absent("s", "1", working.Lacks("site_room_flow", ""))}
	sum.SetRange(math.NaN(), math.NaN())
	off := func(agent string, n working.Num) figure.Figure {
		f := figure.Figure{ID: figure.ID{Quantity: "air.boiled_off", Place: place, Agent: agent, Case: boils}, Value: n}
		f.SetRange(n.V, n.V)
		return f
	}
	none, unknown := working.Exact("m", "g", 0, "by hand"), working.Absent("m", "g", working.Lacks("run", ""))
	for _, c := range []struct {
		hf, hcl working.Num
		trace   bool
	}{{none, none, true}, {unknown, none, false}, {none, unknown, false}, {none, working.Exact("m", "g", 1, "by hand"),
		false}} {
		if got := verdict.Traces([]figure.Figure{off("hf", c.hf), off("hcl", c.hcl), sum})(&sum); got != c.trace {
			t.Errorf("%v and %v: %v", c.hf, c.hcl, got)
		}
	}
}
