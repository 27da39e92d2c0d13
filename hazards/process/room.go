package process

import (
	"fmt"

	"etchbound/chemicals/working"
	"etchbound/hazards/route"
)

// Room is what a place holds and what is left in it, in mL, at the temperature
// at which it was filled. Space may be negative; it is unknown where the
// capacity, or what came in, is.
type Room struct{ Capacity, Liquid, Solid, Space working.Num }

// RoomIn is the room of a place with the contents s:
//
//	space = capacity - liquid - powder     [mL]
func RoomIn(c route.Case, w *working.Sheet, k *Walk, p *route.Place, s *State) Room {
	cap := c.Given("cap", "mL", p.Capacity)
	if p.Count > 1 {
		x := working.Exact("x", "1", float64(p.Count), fmt.Sprintf("%d equal containers", p.Count))
		cap = w.Line("cap", "mL", "x*c", x.V*cap.V, x, cap.As("c"))
	}
	r := Room{Capacity: cap, Liquid: s.Volume(w).As("V_l"), Solid: solidVolume(c, w, k, s).As("V_s")}
	if more := s.Unsaid(); more != nil {
		r.Space = working.Absent("V_g", "mL", more...)
		return r
	}
	r.Space = w.Line("V_g", "mL", "cap-V_l-V_s", cap.V-r.Liquid.V-r.Solid.V, cap, r.Liquid, r.Solid)
	return r
}

// layeredDensity is that of the layered phase; of one that is not held that of any, since what
// it takes of a container is little beside what liquid does.
func layeredDensity(c route.Case, k *Walk) working.Num {
	id := "density." + k.Layered.Formula.Text
	if _, held := c.Store.Row(id); !held {
		id = "density.layered"
	}
	return c.Store.Num(id).As("rho")
}

func solidVolume(c route.Case, w *working.Sheet, k *Walk, s *State) working.Num {
	for i := range s.Solids {
		x := &s.Solids[i]
		// the last: powder whose reaction is not followed
		if x.Kind == Unetched || x.Kind == Product || x.Kind == Residual && !x.Mass.None() {
			m, d := x.Mass.As("m"), layeredDensity(c, k)
			return w.Line("V_s", "mL", "m/rho", m.V/d.V, m, d)
		}
	}
	return working.Exact("V_s", "mL", 0, "no powder")
}
