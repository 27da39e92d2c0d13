package gas

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// contents reports how full each place is at its fullest:
//
//	content = (liquid + powder)/capacity     [%: mL, mL, mL]
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
//	piled = batches x (liquid + powder)/capacity     [%: 1, mL, mL, mL]
//
// Where nobody says how many batches it takes, that is not known.
func (r *reader) piled(p *route.Place, v, m, c working.Num) {
	if p.Batches == 0 && !r.c.Route.TakesWaste(p) {
		return
	}
	n := working.Absent("N", "1", working.Lacks(working.NotGiven, "places."+p.Key+".batches"))
	if p.Batches > 0 {
		n = working.Given("N", "1", float64(p.Batches), p.At+".batches")
	}
	r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: "vessel.piled", Place: figure.At(p.Key)},
		Value:      r.w.Keep(r.w.Line("f", "%", "100*N*(V_l+V_s)/cap", 100*n.V*(v.V+m.V)/c.V, n, v, m, c)),
		Conditions: phrase.Of("content.piled")})
}
