package handling

import (
	"math"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// lump is wet cake in one container of a place in a step.
type lump struct {
	step                     int
	share, critical, warming working.Num
	boiling                  working.Num // rise to where its water boils
	temperature              working.Num
}

// cake tells of the worst lump of cake of a place, whatever the step.
func (r *reader) cake(p *route.Place) {
	var worst lump
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		if d.Place != p.Key {
			continue
		}
		for _, s := range [...]*process.State{&d.Before, &d.After} {
			if r.etches(d, s) {
				continue
			}
			x, is := r.lump(p, d, s)
			if is && (worst.step == 0 || x.share.Unknown() || !worst.share.Unknown() && x.share.V > worst.share.V) {
				worst = x
			}
		}
	}
	if worst.step == 0 {
		return
	}
	at, says := figure.At(p.Key), phrase.Phrase{}
	if r.w != nil {
		says = phrase.Of("handling.cake", worst.step, figure.Round(worst.temperature.V, 3))
	}
	r.put("cake.warming", at, "", worst.warming, says)
	r.put("cake.boiling", at, "", worst.boiling, says)
	r.put("cake.critical", at, "", worst.critical, says)
	r.put("cake.share", at, "", worst.share, says)
}

// etches reports whether a state of a step is still that of an etch, and no cake. Before
// an etch begins there can be some; what nobody knows to be washed, or to be etched at all,
// may be cake in every place but that of the first etch.
func (r *reader) etches(d *process.Done, s *process.State) bool {
	doubted := !s.Doubted().IsZero() && len(r.k.Etches) > 0 && r.k.Etches[0].Place != d.Place
	return s.Unsaid() == nil && !doubted && slices.ContainsFunc(d.Etches, func(i int) bool {
		e := &r.k.Etches[i]
		return e.Family != process.Unheld && (s != &d.Before || e.Step < d.Number)
	})
}

// lump works out the cake of a state; there is none where flakes are too thin in it, or
// were dry before. It is
// unknown where nobody can say whether the powder has become flakes.
func (r *reader) lump(p *route.Place, d *process.Done, s *process.State) (lump, bool) {
	if s.Dried() && d.Before.Dried() { // while it dries it is cake
		return lump{}, false
	}
	s = r.carried(s)
	m, l := r.flakes(s), r.liquid(s)
	least := r.num("cake.least", "x")
	if x := s.Doubted(); !x.IsZero() && m.V == 0 {
		rest := r.solids(s, process.Unetched, process.Residual, process.Based)
		none := working.Absent("y", "1", x)
		return lump{step: d.Number, share: none, critical: none, warming: none, boiling: none,
				temperature: r.set(d)},
			len(s.Liquid) > 0 && !(100*rest.V < least.V*(rest.V+l.V))
	}
	if m.V == 0 || len(s.Liquid) == 0 || 100*m.V < least.V*(m.V+l.V) {
		return lump{}, false
	}
	room := process.RoomIn(r.c, r.w, r.k, p, s)
	V, S := room.Liquid.As("V_l"), room.Powder.As("V_s") // salt makes it denser
	c := r.w.Line("c", "g/mL", "m/(V_l+V_s)", m.V/(V.V+S.V), m, V, S)
	rho := r.w.Line("rho", "g/mL", "(m+m_l)/(V_l+V_s)", (m.V+l.V)/(V.V+S.V), m, l, V, S)
	T := r.set(d)
	x := lump{step: d.Number, temperature: T}
	k, q := r.rate(T), r.ofFlakes("cake.heat", "q")
	C := s.HeatCapacity(r.w).As("C")
	x.warming = r.w.Line("y", "K", "m*q*1000*k/24/C", m.V*q.V*1000*k.V/24/C.V, m, q, k, C)
	boils := r.num("boiling.water", "T_w")
	x.boiling = r.w.Line("y", "K", "max(T_w-T,0)", max(boils.V-T.V, 0), boils, T)
	E, R, delta, lambda := r.num("storage.activation", "E"), r.num("constant.R", "R"), r.num("cake.delta", "delta"),
		r.num("cake.conductivity", "lambda")
	size := r.w.Line("r", "m", "pow(delta*lambda*R*pow(T+273.15,2)/(E*1000*c*q*pow(10,9)*k/86400),0.5)",
		math.Pow(delta.V*lambda.V*R.V*math.Pow(T.V+kelvin, 2)/(E.V*1000*c.V*q.V*math.Pow(10, 9)*k.V/86400), 0.5),
		delta, lambda, R, T, E, c, q, k)
	x.critical = r.w.Line("m_c", "kg", "rho*1000*2*3.141592653589793*pow(r,3)",
		rho.V*1000*2*3.141592653589793*math.Pow(size.V, 3), rho, size)
	all := r.shared(p, r.w.Line("m_w", "g", "m+m_l", m.V+l.V, m, l))
	M, most := all.As("m_w"), x.critical.As("m_c")
	x.share = r.w.Line("y", "1", "m_w/1000/m_c", M.V/1000/most.V, M, most)
	return x, true
}

// rate is that of flakes which lie wet, 1/d.
func (r *reader) rate(T working.Num) working.Num {
	E, R := r.num("storage.activation", "E"), r.num("constant.R", "R")
	a := r.w.Line("a", "1", "exp(-E*1000/R*(1/(T+273.15)-1/298.15))",
		math.Exp(-E.V*1000/R.V*(1/(T.V+kelvin)-1/298.15)), E, R, T)
	kw, ko, s := r.num("storage.water", "k_W"), r.num("storage.oxygen", "k_O"), r.num("cake.air", "s")
	x, q := r.ofFlakes("storage.family", "f_x"), r.num("storage.quality", "f_q")
	return r.w.Line("k", "1/d", "(k_W+k_O*s)*a*f_x*f_q", (kw.V+ko.V*s.V)*a.V*x.V*q.V, kw, ko, s, a, x, q)
}
