package gas

import (
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// contents reports how full each place is at its fullest:
//
//	content = (liquid + solid)/capacity     [%: mL, mL, mL]
func (r *reader) contents() {
	for i := range r.k.Fullest {
		x := &r.k.Fullest[i]
		p := r.c.Route.Place(x.Place)
		if p == nil {
			continue
		}
		room := process.RoomIn(r.c, r.w, r.k, p, &process.State{})
		v, m, c := x.Volume.As("V_l"), x.Solid.As("V_s"), room.Capacity.As("cap")
		r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: "vessel.content", Place: figure.At(p.Key)},
			Value:      r.w.Keep(r.w.Line("f", "%", "100*(V_l+V_s)/cap", 100*(v.V+m.V)/c.V, v, m, c)),
			Conditions: phrase.Of("content.fullest", x.Step)})
		r.piled(p, v, m, c)
	}
}

// piled is how full a container of waste is once it is picked up, by what one batch brings:
//
//	piled = (stood + batches x (liquid + powder - stood))/capacity     [%: mL, 1, mL, mL, mL]
//
// stood being the liquid of other work that was there first. Where nobody says how many
// batches it takes, that is not known.
func (r *reader) piled(p *route.Place, v, m, c working.Num) {
	if p.Batches == 0 && !r.c.Route.TakesWaste(p) {
		return
	}
	n := working.Absent("N", "1", working.Lacks(working.NotGiven, "places."+p.Key+".batches"))
	if p.Batches > 0 {
		n = working.Given("N", "1", float64(p.Batches), p.At+".batches")
	}
	f, says := working.Num{}, "content.piled"
	if x := r.stood(p); x.None() {
		f = r.w.Line("f", "%", "100*N*(V_l+V_s)/cap", 100*n.V*(v.V+m.V)/c.V, n, v, m, c)
	} else {
		says = "content.piled_on"
		f = r.w.Line("f", "%", "100*(V_0+N*(V_l+V_s-V_0))/cap", 100*(x.V+n.V*(v.V+m.V-x.V))/c.V, x, n, v, m, c)
	}
	r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: "vessel.piled", Place: figure.At(p.Key)},
		Value: r.w.Keep(f), Conditions: phrase.Of(says)})
}

// stood is the liquid in mL that steps put into a container of waste before anything came to
// it, where it says that it was not empty: that stands there once, whatever the batches. There
// is none elsewhere.
func (r *reader) stood(p *route.Place) working.Num {
	if len(p.HeldBefore) == 0 || slices.ContainsFunc(p.HeldBefore, meeting.Empty) {
		return working.Num{}
	}
	var last *process.Done
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		s := &r.c.Route.Steps[d.Number-1]
		if s.Into == p.Key || s.In == p.Key && s.Verb().Does != route.Fills {
			break
		}
		if s.In == p.Key {
			last = d
		}
	}
	if last == nil {
		return working.Num{}
	}
	return last.After.Volume(r.w).As("V_0")
}
