package course

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/vessel"
)

// Ice is the ice bath that a vessel stands in, and the air of the room on it.
type Ice struct {
	Stated bool        // how much ice there is
	Mass   working.Num // kg of ice
	Water  working.Num // kg of water with it at the start
	Begins working.Num // K that this water is above melting ice at the start
	Air    Exchange    // with the air of the room
	Warmer working.Num // K that the air of the room is above melting ice

	fusion, specific working.Num
}

// ice is the ice bath of a stage; nil where it stands in none. The area of the bath
// is that of a cylinder as high as it is wide, wall and one end, A = 5 V/D. Water of
// which no temperature is stated comes at that of the room and spends ice first; a
// bath of which no volume is stated is a small one to be warmed and may be a large
// one to take up heat from the air.
func (f *finder) ice(s *Stage) *Ice {
	at := f.c.Route.Place(s.Done.Place)
	if at == nil || at.Cooling == nil || at.Cooling.Kind != "ice_bath" {
		return nil
	}
	k, st := at.Cooling, f.c.Store
	b := &Ice{Stated: k.Ice.Set, Mass: f.c.Given("m_ice", "kg", k.Ice), fusion: st.Num("ice.fusion").As("h_f"),
		specific: st.Num("water.heat_capacity").As("c_w")}
	b.Air.Coolant = st.Num("room.temperature").As("T_r")
	b.Water = working.Exact("m_w", "kg", 0, "no water is stated beside the ice")
	volume := st.Num("bath.unstated").As("V")
	if k.Bath.Set {
		volume = f.c.Given("V", "L", k.Bath)
		rho := st.Num("water.density").As("rho")
		b.Water = f.w.Line("m_w", "kg", "V*rho", volume.V*rho.V, volume, rho)
		if b.Stated {
			x, m := volume, b.Mass
			volume = f.w.Line("V", "L", "V_w+m_ice/rho", x.V+m.V/rho.V, x.As("V_w"), m, rho)
		}
	}
	b.Begins = working.Exact("dT_0", "K", 0, "the bath is stated to be cold before")
	melts := st.Num("ice.temperature").As("T_i")
	b.Warmer = f.w.Line("dT_r", "K", "T_r-T_i", b.Air.Coolant.V-melts.V, b.Air.Coolant, melts)
	if !k.Temperature.Set {
		b.Begins = b.Warmer.As("dT_0")
	}
	d := f.w.Line("D", "m", "pow(4*V/1000/3.141592653589793,1/3.0)", math.Cbrt(4*volume.V/1000/math.Pi), volume)
	u := st.Num("loss.still_air").As("U")
	b.Air.UA = f.w.Line("G", "W/K", "U*5*V/1000/D", u.V*5*volume.V/1000/d.V, u, volume, d)
	return b
}

// plan is the bath in SI.
func (b *Ice) plan() vessel.Ice {
	c := 1000 * b.specific.V
	return vessel.Ice{Melting: 1000*b.fusion.V*b.Mass.V - c*b.Water.V*b.Begins.V, Bath: c * (b.Mass.V + b.Water.V),
		Room: b.Air.UA.V, Air: b.Air.Coolant.V + kelvin}
}

func (b *Ice) inputs() []working.Num {
	return []working.Num{b.Mass, b.Water, b.Begins, b.Air.UA, b.Air.Coolant}
}

// Spent is the ice that the air of the room and the water of the bath melt within a
// time in s, kg:
//
//	m = (G dT_r t/1000 + c m_w dT_0)/h_f
func (b *Ice) Spent(w *working.Sheet, time working.Num) working.Num {
	t, g, d := time.As("t"), b.Air.UA, b.Warmer
	return w.Line("m_r", "kg", "(G*dT_r*t/1000+c_w*m_w*dT_0)/h_f",
		(g.V*d.V*t.V/1000+b.specific.V*b.Water.V*b.Begins.V)/b.fusion.V, g, d, t, b.specific, b.Water, b.Begins, b.fusion)
}

// InIce is the time that a course stands in its ice bath from a stage on, until the
// next in which an etch begins, s.
func (n *Course) InIce(w *working.Sheet, stage int) working.Num {
	var times []working.Num
	for i := stage; i < len(n.Stages) && (i == stage || n.Stages[i].Etches == nil); i++ {
		s := &n.Stages[i]
		if !s.Iced {
			continue
		}
		if s.Etches != nil {
			times = append(times, s.Over)
		}
		times = append(times, s.Hold)
	}
	return w.Sum("t", "s", times...)
}
