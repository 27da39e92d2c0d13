package gas

import (
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// contents reports how full each place is at its fullest:
//
//	content = liquid/capacity     [%: mL, mL]
func (r *reader) contents() {
	for i := range r.k.Fullest {
		x := &r.k.Fullest[i]
		p := r.c.Route.Place(x.Place)
		if p == nil {
			continue
		}
		room := process.RoomIn(r.c, r.w, r.k, p, &process.State{})
		v, c := x.Volume.As("V_l"), room.Capacity.As("cap")
		r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: "vessel.content", Place: figure.At(p.Key)},
			Value:      r.w.Keep(r.w.Line("f", "%", "100*V_l/cap", 100*v.V/c.V, v, c)),
			Conditions: phrase.Of("content.fullest", x.Step)})
	}
}
