package process

import (
	"fmt"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/route"
)

// Room is what a place holds and what is left in it, in mL, at the temperature
// at which it was filled. Space may be negative; it is unknown where the
// capacity, or what came in, is. Solid is Powder and what was charged as a solid.
type Room struct{ Capacity, Liquid, Powder, Solid, Space working.Num }

// RoomIn is the room of a place with the contents s:
//
//	space = capacity - liquid - solid     [mL]
func RoomIn(c route.Case, w *working.Sheet, k *Walk, p *route.Place, s *State) Room {
	cap := c.Given("cap", "mL", p.Capacity)
	if p.Count > 1 {
		x := working.Exact("x", "1", float64(p.Count), fmt.Sprintf("%d equal containers", p.Count))
		cap = w.Line("cap", "mL", "x*c", x.V*cap.V, x, cap.As("c"))
	}
	r := Room{Capacity: cap, Liquid: s.Volume(w).As("V_l"), Powder: powderVolume(c, w, k, s)}
	r.Solid = withSalts(w, s, r.Powder).As("V_s")
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
	id := datum.Of("density", k.Layered.Formula.Text)
	if _, held := c.Store.Row(id); !held {
		id = "density.layered"
	}
	return c.Store.Num(id).As("rho")
}

// solidVolume is that of the powder of a place and of what came into its liquor as a solid, mL:
//
//	V_s = m/rho + V_d
func solidVolume(c route.Case, w *working.Sheet, k *Walk, s *State) working.Num {
	return withSalts(w, s, powderVolume(c, w, k, s))
}

func withSalts(w *working.Sheet, s *State, powder working.Num) working.Num {
	var salts working.Num
	for i := range s.Liquid {
		salts = plus(w, salts, s.Liquid[i].Grains(w))
	}
	if salts.None() {
		return powder
	}
	return plus(w, powder, salts).As("V_s")
}

func powderVolume(c route.Case, w *working.Sheet, k *Walk, s *State) working.Num {
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
