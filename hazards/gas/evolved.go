package gas

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// evolved reports, for each step and gas, how much of a poisonous gas can form, as a
// volume and as a mass; what only moved on is part of it already.
func (r *reader) evolved() {
	type at struct {
		step int
		gas  string
	}
	amounts := map[at][]working.Num{}
	var order []*process.Evolved
	for i := range r.k.Evolved {
		x := &r.k.Evolved[i]
		if x.Moved {
			continue
		}
		k := at{x.Step, slugOf(x)}
		if amounts[k] == nil {
			order = append(order, x)
		}
		amounts[k] = append(amounts[k], x.N)
	}
	for _, x := range order {
		k := at{x.Step, slugOf(x)}
		n := r.w.Sum("n", "mol", amounts[k]...).Worse(working.Bound)
		place, cond := figure.Step(x.Step), phrase.Of("gas.evolved")
		r.put("gas.evolved.bound", place, k.gas, figure.Case{}, r.litres(n), cond)
		if x.Gas == nil {
			continue
		}
		y, M := n.As("n"), x.Gas.Formula.MolarMass(r.c.Store, r.w).As("M")
		r.put("gas.evolved.mass", place, k.gas, figure.Case{}, r.w.Line("m", "g", "n*M", y.V*M.V, y, M), cond)
	}
}

// slugOf is the agent of a gas, "" where nobody knows which it is.
func slugOf(x *process.Evolved) string {
	if x.Gas == nil {
		return ""
	}
	return x.Gas.Slug
}

// formed are the poisonous gases that can form in a place in a step, mol.
func (r *reader) formed(step int, key string) []working.Num {
	var out []working.Num
	for i := range r.k.Evolved {
		if x := &r.k.Evolved[i]; x.Step == step && x.Place == key {
			out = append(out, x.N)
		}
	}
	return out
}

// poisons adds the poisonous gases of a place, together where a step has several.
func (r *reader) poisons(out []potential, key string) []potential {
	last := 0
	for i := range r.k.Evolved {
		x := &r.k.Evolved[i]
		if x.Place != key || x.Step == last {
			continue
		}
		last = x.Step
		if s := r.after(x.Step, key); s != nil {
			out = append(out, potential{r.formed(x.Step, key), s, false})
		}
	}
	return out
}
