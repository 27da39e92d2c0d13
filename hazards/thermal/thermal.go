// Package thermal knows heat: what the etch and the mixing release, how warm
// the liquor gets if all of it stays there, and where it boils. It must not
// move material, and it must not know gas or fluoride limits.
package thermal

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Read gives the heat figures of a walk and its runs.
func Read(c route.Case, w *working.Sheet, k process.Walk, runs []vessel.Run) []figure.Figure {
	r := reader{c: c, w: w, k: &k}
	for i := range k.Etches {
		r.etch(&k.Etches[i])
	}
	for i := range runs {
		if runs[i].Plan.Law == vessel.Accumulated {
			r.accumulated(&runs[i])
		}
	}
	for i := range k.Steps {
		r.mix(&k.Steps[i])
	}
	return r.out
}

type reader struct {
	c   route.Case
	w   *working.Sheet
	k   *process.Walk
	out []figure.Figure
}

func (r *reader) put(quantity, place string, v working.Num, conditions string) {
	r.out = append(r.out, figure.Figure{Quantity: quantity, Place: place, Value: r.w.Keep(v), Conditions: conditions})
}

// EtchHeat is the heat of one etch with its impurities, in kJ.
func EtchHeat(w *working.Sheet, e *process.Etch) working.Num {
	terms := make([]working.Num, 0, len(e.Dissolved)+1)
	if e.Heat.Symbol != "" {
		terms = append(terms, e.Heat)
	}
	for i := range e.Dissolved {
		terms = append(terms, e.Dissolved[i].Heat)
	}
	return w.Sum("Q", "kJ", terms...)
}

func (r *reader) etch(e *process.Etch) {
	place := figure.Step(e.Step)
	q, m := EtchHeat(r.w, e), e.Powder.As("m")
	r.put("heat.etch.total", place, q, "whole powder with its impurities, counted from dissolved HF")
	r.put("heat.etch.per_gram", place, r.w.Line("q", "kJ/g", "Q/m", q.V/m.V, q, m), "over the mass of powder")
	if e.Family == process.FluorideAcid && e.N.Symbol != "" {
		r.put("heat.etch.dissolution_bound", place, r.dissolution(e), "every metal in solution, carbon left as solid, no more than the acid offered allows")
	}
}

func (r *reader) accumulated(run *vessel.Run) {
	place := figure.Step(run.Plan.Step)
	r.put("heat.adiabatic_rise", place, run.Rise, "all the heat of the powder stays in the liquor as it is in this step")
	r.put("heat.mtsr", place, run.Peak, "nothing has reacted when cooling fails; gas and vapour apart")
	for i := range r.k.Steps {
		if d := &r.k.Steps[i]; d.Number == run.Plan.Step {
			v, cond := r.boiling(d)
			r.put("heat.boiling_point", place, v, cond)
		}
	}
}
