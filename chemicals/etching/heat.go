package etching

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// Heat is what the etch of a phase releases, kJ/mol, and whether by stand-ins: the datum etch_heat.<phase>, measured
// or added up for it, else by stand-ins, which take the phase apart into what its product
// is made of too:
//
//	M(m)A(a)X(x) = x MX + M + a A     b  (x = m-1)
//	A to its dissolved fluoride, or in base to its hydroxide     q_A
//	M + 2 H2O = MO2 + 2 H2            q_M
//	x MX + MO2 = M(m)X(x)O2           d
//	q = a q_A + q_M - b - d
//
// The carbide or nitride drops out. b and d are of one sign, since a phase lies below what
// it falls apart into and a product that only an etch makes lies above: with both at
// nothing the heat is at its ceiling, which is the high end and decides. Of two metals that
// stay, the one with more heat takes the oxygen in the centre, and the one with less at the
// low end. An etch is never counted as cooling.
//
// Unknown, for want of etch_heat.<phase>, are borides, slabs, ratios other than m = x+1, and
// elements without q_A or q_M. Acid without fluoride has q_A of its own.
func (l *Layered) Heat(st *chemicals.Store, w *working.Sheet, in Medium) (q working.Num, standIns bool) {
	if in == Fluoride || l.Measured(st) {
		if own := st.Num(datum.Of("etch_heat", l.Formula.Text)); !own.Unknown() {
			return own, false
		}
	}
	unknown := working.Absent("q", "kJ/mol", working.LacksDatum(datum.Of("etch_heat", l.Formula.Text)))
	if !l.falls() {
		return unknown, false
	}
	a, m := l.leaving(st, w, string(in)), l.surface(st, w, "surface_heat")
	b, d := st.Num("layer_heat.bond").As("b"), st.Num("layer_heat.above").As("d")
	q = w.Line("q", "kJ/mol", "max(a+q_M-b-d,0)", math.Max(a.V+m.V-b.V-d.V, 0), a, m, b, d)
	if q.Unknown() {
		return unknown, false
	}
	return q.Worse(working.Estimated), true
}

// Measured reports whether the route itself states the heat of its etch, whatever etches: that of
// the data is of fluoride, and so may be that of a site.
func (l *Layered) Measured(st *chemicals.Store) bool {
	return st.ReplacedBy(datum.Of("etch_heat", l.Formula.Text)) == "route"
}

// Medium is what takes the layer away: the kind of data that its q_A are.
type Medium string

// The media of which q_A is held, beside melts.
const (
	Fluoride Medium = "leaving_heat"
	Base     Medium = "leaving_heat.base"
	Acid     Medium = "leaving_heat.acid" // without fluoride
)

// HeatOfMelt is what the etch of a phase by a dry chloride MCl2 releases, kJ/mol at 25 degC:
// the datum etch_heat.melt.<phase>, what the route measured, else stand-ins as in Heat, with
// chlorine for oxygen:
//
//	M(m)A(a)X(x) = x MX + M + a A              b
//	A + z/2 Cl2 to its chloride                q_A
//	M + Cl2 = MCl2                             q_M
//	x MX + MCl2 = M(m)X(x)Cl2                  d
//	chlorine from the salt, (z a + 2)/2 of it  q_S each, its own heat of formation
//	q = a q_A + q_M - b - d - (z a + 2)/2 q_S
//
// It is that of the etch alone: salt that is left over can go on to take the metal that stays.
// Melting and boiling take heat that is not credited. The layer counts as vapour, and at the
// high end as bound in the melt. Of what chlorides are not held it is unknown.
func (l *Layered) HeatOfMelt(st *chemicals.Store, w *working.Sheet, salt string) (q working.Num, standIns bool) {
	if own := st.Num(datum.Of("etch_heat.melt", l.Formula.Text)); !own.Unknown() {
		return own, false
	}
	if l.Measured(st) { // asked first: what is read and not used stands on no line
		if own := st.Num(datum.Of("etch_heat", l.Formula.Text)); !own.Unknown() {
			return own, false
		}
	}
	unknown := working.Absent("q", "kJ/mol", working.Lacks("melt_heat", l.Formula.Text))
	if !l.falls() {
		return unknown, false
	}
	a, m := l.leaving(st, w, "leaving_heat.melt"), l.surface(st, w, "surface_heat.melt")
	b, d := st.Num("layer_heat.bond").As("b"), st.Num("layer_heat.above").As("d")
	z, s := l.Electrons.As("z"), st.Num(datum.Of("enthalpy", salt+"(s)")).As("H_S")
	q = w.Line("q", "kJ/mol", "max(a+q_M-b-d+(z+2)/2*H_S,0)",
		math.Max(a.V+m.V-b.V-d.V+(z.V+2)/2*s.V, 0), a, m, b, d, z, s)
	if q.Unknown() {
		return unknown, false
	}
	return q.Worse(working.Estimated), true
}

// leaving is what the layer of a formula unit releases where it goes.
func (l *Layered) leaving(st *chemicals.Store, w *working.Sheet, kind string) working.Num {
	var of []working.Num
	for _, a := range l.A {
		q, x := st.Num(datum.Of(kind, a.Symbol)).As("q_A"), working.Exact("x", "1", a.Count, a.Symbol+" per formula unit")
		of = append(of, w.Line("a", "kJ/mol", "x*q_A", x.V*q.V, x, q))
	}
	return w.Sum("a", "kJ/mol", of...)
}

// falls reports whether a phase falls apart into carbide or nitride, one metal and A.
func (l *Layered) falls() bool {
	boride := slices.ContainsFunc(l.X, func(p Part) bool { return p.Symbol == "B" })
	return l.Unlisted == "" && !l.Slab && !boride && len(l.A) > 0 && len(l.M) > 0 &&
		math.Abs(count(l.M)-count(l.X)-1) <= loose
}

// surface is what the metal of the product releases as it takes up two oxygen from water, or
// two chlorine.
func (l *Layered) surface(st *chemicals.Store, w *working.Sheet, kind string) working.Num {
	least := st.Num(datum.Of(kind, l.M[0].Symbol)).As("q_M")
	most := least
	for _, m := range l.M[1:] {
		q := st.Num(datum.Of(kind, m.Symbol)).As("q_M")
		switch {
		case q.Unknown() || least.Unknown():
			return working.Absent("q_M", "kJ/mol", append(q.Missing(), least.Missing()...)...)
		case q.V < least.V:
			least = q
		case q.V > most.V:
			most = q
		}
	}
	if least.V == most.V {
		return least
	}
	s, lo, hi := st.Num("surface_heat.share").As("s"), least.As("q_low"), most.As("q_high")
	return w.Line("q_M", "kJ/mol", "q_low+s*(q_high-q_low)", lo.V+s.V*(hi.V-lo.V), lo, s, hi)
}
