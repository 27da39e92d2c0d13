package storage

import (
	"math"

	"etchbound/chemicals/working"
)

// lost is the share of the flakes that is gone in a mode of pH.
func (r *reader) lost(s *stage, mode int) working.Num {
	K, o := s.done[mode].As("K"), r.byOxygen(s, mode).As("X_o")
	return r.w.Line("X", "1", "1-exp(-K)*(1-X_o)", 1-math.Exp(-K.V)*(1-o.V), K, o)
}

// byOxygen is the share that oxygen takes: of the air that is shut in, or of all air.
func (r *reader) byOxygen(s *stage, mode int) working.Num {
	K := s.aired[mode].As("K")
	if s.shut && s.inert {
		return working.Exact("X_o", "1", 0, "no oxygen is filled in")
	}
	u := r.w.Line("u", "1", "1-exp(-K)", 1-math.Exp(-K.V), K)
	if !s.shut {
		return u
	}
	most, m := r.suffices(s).As("X_m"), r.c.Store.Num("storage.oxygen_order").As("m_O")
	left := r.w.Model("r", "1", "oxygen left in the gas space, by its order", leftOf(u.V/most.V, m.V), u, most, m)
	return r.w.Line("X_o", "1", "min(X_m*(1-r),1)", min(most.V*(1-left.V), 1), most, left)
}

// leftOf is the share of oxygen left where dr/dz = -r^m from 1.
func leftOf(z, m float64) float64 {
	if math.Abs(1-m) < 1e-6 {
		return math.Exp(-z)
	}
	return math.Pow(max(1-(1-m)*z, 0), 1/(1-m))
}

// suffices is the conversion that the oxygen of the gas space suffices for.
func (r *reader) suffices(s *stage) working.Num {
	st := r.c.Store
	x, P, R, T, n := st.Num("air.oxygen").As("x"), st.Num("gas.pressure").As("P"), st.Num("constant.R").As("R"),
		s.temperature, s.gas.oxygen.As("n")
	g := s.room.Space.As("V_g")
	if g.V < 0 {
		g = working.Exact("V_g", "mL", 0, "no gas space")
	}
	return r.w.Line("X_m", "1", "max(x/100*P*V_g/1000/(R*(T+273.15))/max(n,1e-12),1e-9)",
		max(x.V/100*P.V*g.V/1000/(R.V*(T.V+kelvin))/max(n.V, 1e-12), 1e-9), x, P, g, R, T, n)
}

// life is the time to the loss that ends it, in d, of what the stages before left: water and
// air have taken so much of it; never where it takes ten years.
func (r *reader) life(s *stage, mode int, water, air working.Num) working.Num {
	loss, k, o := r.c.Store.Num("storage.loss").As("x_l"), s.water[mode].As("k_w"), s.air1[mode].As("k_o")
	gone := water.V + air.V
	with := func(n ...working.Num) []working.Num {
		if water.None() {
			return n
		}
		return append(n, water.As("K_w"), air.As("K_o"))
	}
	switch {
	case !s.shut:
		return r.w.Model("t", "d", "time to the loss, of first order in air", toLoss(k.V+o.V, gone, loss.V),
			with(loss, k, o)...)
	case s.inert:
		return r.w.Model("t", "d", "time to the loss, of first order in water", toLoss(k.V, water.V, loss.V),
			with(loss, k)...)
	}
	most := r.suffices(s).As("X_m")
	by := toLoss(k.V+o.V, gone, loss.V)
	slow := toLoss(k.V, water.V, 1-(1-loss.V)/(1-min(most.V, 1-1e-12)))
	return r.w.Model("t", "d", "time to the loss, the oxygen shut in used at once and no faster than all air",
		max(by, slow), with(loss, k, o, most)...)
}
