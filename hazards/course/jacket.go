package course

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Jacket is what flows around a vessel in a jacket: the exchange of the liquid in it with the
// coolant that comes in, whose conductance is that of the flow.
type Jacket struct {
	Exchange
	Holds working.Num // J/K of the liquid in it
	Power working.Num // W that its chiller takes at the temperature of the coolant

	least float64 // W/K, the low end of what flows through
}

// unsaid is what a jacket needs and nobody states; nil of what is none. A coolant that stays
// as cold as it is whatever goes into it would be a guess, and not on the side of danger: the
// room alone counts then, as where nothing is said of any cooling.
func unsaid(p *route.Place) []working.Missing {
	if p.Cooling.Kind != "jacket" {
		return nil
	}
	var out []working.Missing
	for _, x := range [...]struct {
		key string
		set bool
	}{{"flow", p.Cooling.Flow.Set}, {"liquid", p.Cooling.Liquid.Set}, {"power", p.Cooling.Power.Set}} {
		if !x.set {
			out = append(out, working.Lacks(working.NotGiven, p.At+".cooling."+x.key))
		}
	}
	return out
}

// jacket is what flows through a jacket, its coolant coming in at a temperature in degC; nil
// where the vessel stands in none.
//
//	J = F c, C_j = V c
func (f *finder) jacket(k *route.Cooling, coolant working.Num) *Jacket {
	if k.Kind != "jacket" {
		return nil
	}
	flow, v := f.c.Given("F", "L/min", k.Flow), f.c.Given("V_j", "L", k.Liquid)
	c := f.c.Store.Num("jacket.coolant").As("c_j")
	j := f.w.Line("J", "W/K", "F/60*c_j*1000", flow.V/60*c.V*1000, flow, c)
	return &Jacket{Exchange: Exchange{coolant, j}, Holds: f.w.Line("C_j", "J/K", "V_j*c_j*1000", v.V*c.V*1000, v, c),
		Power: f.c.Given("P_c", "W", k.Power), least: j.V * f.end(flow, false) * f.end(c, false)}
}

// plan is the jacket in SI, around a vessel that starts at a temperature in K.
func (j *Jacket) plan(start float64) vessel.Jacket {
	return vessel.Jacket{Capacity: j.Holds.V, Flow: j.UA.V, Power: j.Power.V,
		Begins: math.Max(start, j.Coolant.V+kelvin)}
}

// Passes is what cools a stage once the liquid in its jacket has warmed to what it carries
// off, W/K; what gets through the wall where there is no jacket.
func (s *Stage) Passes(w *working.Sheet) working.Num {
	if s.Jacket == nil {
		return s.UA
	}
	return s.Jacket.behind(w, s.UA)
}

// jackets sets the jacket of a plan: that of the place in which its course begins. A course
// that goes on in another jacket is not followed.
func (f *finder) jackets(n *Course, p *vessel.Plan, out *Run) {
	first := &n.Stages[0]
	for i := range n.Stages {
		if s := &n.Stages[i]; s.Jacket != nil && s.Done.Place != first.Done.Place {
			out.Missing = append(out.Missing, working.Lacks("second_jacket", s.Done.Place))
		}
	}
	if j := first.Jacket; j != nil {
		p.Jacket = j.plan(p.Start)
		out.Inputs = append(out.Inputs, j.UA, j.Holds, j.Power)
	}
}

// Hottest is the highest temperature of a stage with a jacket, degC, where heat goes in evenly
// while its powder does, p W of it, and nothing else; false where that is not known. Liquor
// that is poured on to powder adds to what is there.
func (s *Stage) Hottest(p float64) (float64, bool) {
	x := vessel.Piece{Until: s.Over.V, Dose: 1, UA: s.UA.V, Coolant: s.Coolant.V + kelvin, Jacketed: true,
		PourAt: s.Set.V + kelvin}
	plan := vessel.Plan{Law: vessel.FirstOrder, Tolerance: tolerance, Start: s.Set.V + kelvin, Ready: 1,
		Slow:   vessel.Solid{Amount: 1, Kinetics: vessel.Kinetics{Reference: kelvin}},
		Liquor: vessel.Liquor{Capacity: s.Filled.V}}
	plan.Jacket = s.Jacket.plan(plan.Start)
	if s.Onto != nil {
		plan.Liquor.Capacity, x.Until = s.Onto.There.V, s.Onto.Feeding.V
		x.Pour = (s.Onto.Capacity.V - s.Onto.There.V) / x.Until
		plan.Pieces = []vessel.Piece{x}
	} else {
		plan.Pieces = portions(s, x, 0)
	}
	for i := range plan.Pieces {
		if y := &plan.Pieces[i]; y.Dose > 0 {
			y.Stirring, y.Dose = p, 0
		}
	}
	if !(p >= 0 && s.UA.V >= 0 && s.Coolant.V == s.Coolant.V) {
		return 0, false
	}
	r, err := vessel.Simulate(plan)
	return r.Peak.Value - kelvin, err == nil
}
