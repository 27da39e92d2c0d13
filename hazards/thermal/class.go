package thermal

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// Class is the criticality class, 1 to 5, by the order of four temperatures in
// one unit: that of the process, the highest if cooling fails, the technical
// limit, and the one from which a decomposition needs a day to its greatest
// rate. Equal temperatures count as the worse class, and so does any order that
// is none of these; NaN in, NaN out.
//
//	1  process < mtsr < limit < td24
//	2  process < mtsr < td24 < limit
//	3  process < limit < mtsr < td24
//	4  process < limit < td24 < mtsr
//	5  process < td24 < mtsr, td24 < limit
func Class(process, mtsr, limit, td24 float64) float64 {
	barrier := working.Above(td24, limit) // boiling comes before decomposition
	first := barrier*(1+2*(1-working.Above(limit, mtsr))+(1-working.Above(td24, mtsr))) + (1-barrier)*
		(2+3*(1-working.Above(td24, mtsr)))
	return max(first, 5*(1-working.Above(limit, process)), 5*(1-working.Above(td24, process)))
}

// Margin is how far the temperatures are from the next worse class, in K: by a
// higher mtsr, or by a lower td24. It is 0 in class 5.
func Margin(class, mtsr, limit, td24 float64) float64 {
	switch class {
	case 1:
		return min(limit-mtsr, td24-limit)
	case 2, 3:
		return td24 - mtsr
	case 4:
		return td24 - limit
	case 5:
		return 0
	}
	return math.NaN()
}

const classFormula = "max(above(D,M)*(1+2*(1-above(M,S))+(1-above(D,S)))+(1-above(D,M))*(2+3*(1-above(D,S)))," +
	"5*(1-above(M,P)),5*(1-above(D,P)))"

// class reports the class of a step, of the highest temperature by any way and
// by each law. Without the four temperatures there is none.
func (r *reader) class(d *process.Done, mtsr, limit working.Num) {
	place := figure.Step(d.Number)
	if !r.c.Route.TD24.Set {
		r.add("heat.criticality_class", place, figure.Case{}, working.Absent("class", "1", working.Lacks("td24", "")),
			phrase.Of("thermal.class_not_assessed"))
		return
	}
	v := r.classOf(d, mtsr, limit)
	r.add("heat.criticality_class", place, figure.Case{}, v, phrase.Of("thermal.class"))
	s, m, td24, c := mtsr.As("S"), limit.As("M"), r.td24(), v.As("K")
	if c.Unknown() {
		r.add("heat.class_margin", place, figure.Case{}, working.Absent("dT", "K", c.Missing()...),
			phrase.Of("thermal.class_margin_unknown"))
		return
	}
	r.add("heat.class_margin", place, figure.Case{},
		r.w.Model("dT", "K", "kelvin to the next worse class", Margin(c.V, s.V, m.V, td24.V), c, s, m, td24),
		phrase.Of("thermal.class_margin"))
	for _, x := range r.at(place).byLaw {
		r.add("heat.criticality_class", place, x.law, r.classOf(d, x.top, limit), phrase.Of("thermal.class_by_law"))
	}
}

func (r *reader) classOf(d *process.Done, mtsr, limit working.Num) working.Num {
	p, s, m, td24 := d.Hot.As("P"), mtsr.As("S"), limit.As("M"), r.td24()
	return r.w.Line("class", "1", classFormula, Class(p.V, s.V, m.V, td24.V), p, s, m, td24)
}

func (r *reader) td24() working.Num { return r.c.Given("D", "degC", r.c.Route.TD24) }
