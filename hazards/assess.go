package hazards

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/fluoride"
	"etchbound/hazards/gas"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/thermal"
	"etchbound/hazards/vessel"
	"etchbound/hazards/wash"
	"etchbound/hazards/waste"
)

// Assess works out one case on its central values. It is a pure function: the
// same case gives the same assessment, and nothing outside the case is read.
// w keeps the working, or nothing if it is nil. Err is set where the route
// cannot be walked at all.
func Assess(c route.Case, w *working.Sheet) Assessment {
	k, err := process.Go(c, w)
	if err != nil {
		return Assessment{Err: err}
	}
	a := Assessment{Walk: k, Warnings: k.Warnings}
	a.Runs = runs(w, &k)
	a.Figures = make([]figure.Figure, 0, 128)
	for _, read := range readers {
		a.Figures = append(a.Figures, read(c, w, k, a.Runs)...)
	}
	a.Figures = append(a.Figures, figure.Figure{Quantity: "account.error", Value: k.Error,
		Conditions: "every element of the route; what is not modelled counts as held"})
	a.Figures = addSums(w, a.Figures)
	return a
}

// readers turn states and runs into figures, one a hazard.
var readers = [...]func(route.Case, *working.Sheet, process.Walk, []vessel.Run) []figure.Figure{
	gas.Read, thermal.Read, fluoride.Read, wash.Read, waste.Read,
}

// runs builds the plan of every step whose vessel still holds the liquor of an
// etch and simulates it by full accumulation; the step in which the powder
// goes in is also run as an instantaneous reaction.
func runs(w *working.Sheet, k *process.Walk) []vessel.Run {
	var out []vessel.Run
	for i := range k.Steps {
		d := &k.Steps[i]
		if len(d.Etches) == 0 {
			continue
		}
		p := plan(w, k, d)
		p.Law = vessel.Accumulated
		if r, err := vessel.Simulate(p, w); err == nil {
			out = append(out, r)
		}
	}
	return out
}

func plan(w *working.Sheet, k *process.Walk, d *process.Done) vessel.Plan {
	var heat, n []working.Num
	for _, e := range d.Etches {
		heat = append(heat, thermal.EtchHeat(w, &k.Etches[e]))
		n = append(n, k.Etches[e].Hydrogen)
	}
	state := &d.After
	if len(state.Liquid) == 0 {
		state = &d.Before
	}
	return vessel.Plan{Step: d.Number, Start: d.Hot, Heat: w.Sum("Q", "kJ", heat...),
		Gas: w.Sum("n_H2", "mol", n...), HeatCapacity: state.HeatCapacity(w)}
}

// addSums adds the bare figure of every quantity whose bare id is the sum of
// its members, in the order of the catalogue.
func addSums(w *working.Sheet, figs []figure.Figure) []figure.Figure {
	for i := range figure.Catalogue() {
		q := &figure.Catalogue()[i]
		if q.Bare != "sum" {
			continue
		}
		var terms []working.Num
		for j := range figs {
			if figs[j].Quantity == q.Name && figs[j].Place != "" && figs[j].Case == "" {
				terms = append(terms, figs[j].Value)
			}
		}
		if terms != nil {
			figs = append(figs, figure.Figure{Quantity: q.Name, Value: w.Sum("sum", q.Unit, terms...), Conditions: "sum over the route"})
		}
	}
	return figs
}
