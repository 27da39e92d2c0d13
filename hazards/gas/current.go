package gas

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// currents reports the hydrogen of every cell in time. A current makes it evenly; the metal
// among the powder dissolves while it is wetted:
//
//	F = (m/t + n/t_w) Vm    [L/min; m mol by the charge, n mol of metal]
//
// Where the electrons of the powder are more than the charge brings, what makes the rest is
// not the current, and how fast that comes nobody knows.
func (r *reader) currents() {
	for i := range r.k.Etches {
		e := &r.k.Etches[i]
		d := r.done(e.Step)
		if e.Family != process.Current || d == nil {
			continue
		}
		s := &course.Stage{Step: &r.c.Route.Steps[e.Step-1], Done: d}
		liquid := &course.Course{Liquid: d.Contents().Volume(r.w)}
		r.flow("gas.hydrogen.peak_rate.after_addition", liquid, s, figure.By(figure.Current), r.byCurrent(e, s),
			phrase.On(r.w, "gas.flow", phrase.Of("gas.by_current")))
	}
}

func (r *reader) byCurrent(e *process.Etch, s *course.Stage) working.Num {
	i, f := r.c.Given("I", "A", s.Step.Current), r.c.Store.Num("constant.faraday").As("F")
	even := r.w.Line("F_n", "mol/s", "I/(2*F)", i.V/(2*f.V), i, f)
	n, t := e.Hydrogen.As("n"), r.c.Given("t", "s", s.Step.Time)
	if n.Unknown() || t.Unknown() || n.V > even.V*t.V*(1+1e-9) {
		lacks := append(append(n.Missing(), t.Missing()...), working.Lacks("run", ""))
		return working.Absent("F", "L/min", lacks...)
	}
	var metal []working.Num
	for j := range e.Dissolved {
		metal = append(metal, e.Dissolved[j].Hydrogen)
	}
	if metal == nil {
		return r.w.Line("F", "L/min", "F_n*Vm*60", even.V*r.vm.V*60, even, r.vm)
	}
	m, wets := r.w.Sum("n", "mol", metal...), r.c.Store.Num("kinetics.wetting").As("t_w")
	return r.w.Line("F", "L/min", "(F_n+n/t_w)*Vm*60", (even.V+m.V/wets.V)*r.vm.V*60, even, m, wets, r.vm).
		Worse(working.Bound)
}
