package hazards_test

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/hazards/route"
	"etchbound/schemas/long"
	"etchbound/schemas/quantity"
)

// fewer are the facts of the walls of a route that can be left out.
var fewer = map[string]func(*route.Place){
	"capacity": func(p *route.Place) { p.Capacity = quantity.Value{} },
	"wall":     func(p *route.Place) { p.Wall = quantity.Value{} },
	"material": func(p *route.Place) { p.Material = "" },
	"all three": func(p *route.Place) {
		p.Capacity, p.Wall, p.Material = quantity.Value{}, quantity.Value{}, ""
	},
}

// leftOut holds that no verdict gets better where a fact of its walls is left out.
func leftOut(t *testing.T, name string, r *route.Route) {
	t.Helper()
	brief := func(r *route.Route) route.Case {
		c := newCase(t, r)
		c.Brief = true
		return c
	}
	full := must(t, brief(r))
	before := ranks(&full)
	for _, what := range long.Some(sorted(fewer), len(fewer), 1) {
		less := r.Copy()
		for i := range less.Places {
			fewer[what](&less.Places[i])
		}
		bare := must(t, brief(less))
		after := ranks(&bare)
		for id, was := range before {
			is, there := after[id]
			if !there {
				is, there = after[strings.TrimSuffix(id, ":closed")]
			}
			if !there || is < was {
				t.Errorf("%s without %s: %s was of rank %d, is of rank %d (there %v)", name, what, id, was, is, there)
			}
		}
	}
}

// In a bath the wall decides what heat gets out, so what nobody says of it counts at
// its dangerous end: thin and thick walls, of a bottle and of 6 L, of what conducts
// and of what nobody knows.
func TestAWallLeftOutNeverHelps(t *testing.T) {
	long.Only(t)
	type walled struct {
		material     string
		litres, wall float64 // 0: not stated
	}
	for _, x := range long.Some([]walled{
		{"PTFE", 6, 0}, {"PTFE", 6, 20}, {"PTFE", 2, 10}, {"polypropylene", 6, 0}, {"polypropylene", 2, 10}, {"316", 6, 3},
		{"PTFE-lined steel", 6, 10}, {"unobtainium", 6, 0},
	}, 4, 1) {
		r := load(t, inIce("60 g", "1.2 L", "2 W/K"))
		p := &r.Places[0]
		p.Cooling.UA, p.Material, p.Capacity = quantity.Value{}, x.material, quantity.Of(x.litres, "L")
		if x.wall > 0 {
			p.Wall = quantity.Of(x.wall, "mm")
		}
		leftOut(t, fmt.Sprintf("%s of %g L, wall %g mm", x.material, x.litres, x.wall), r)
	}
}

// The same in the routes of the examples that stand in a bath or jacket.
func TestAWallOfTheExamplesLeftOutNeverHelps(t *testing.T) {
	long.Only(t)
	routes, inBath := bundled(t), []string(nil)
	for _, name := range sorted(routes) {
		r, cooled := routes[name], false
		for i := range r.Places {
			cooled = cooled || r.Places[i].Cooling != nil && r.Places[i].Cooling.Kind != "none"
			r.Places[i].Wall = quantity.Of(8, "mm")
		}
		if cooled {
			inBath = append(inBath, name)
		}
	}
	for _, name := range long.Some(inBath, 1, 1) {
		leftOut(t, name, routes[name])
	}
}
