package air

import (
	_ "embed"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed scrubbing.csv
var scrubbingCSV string

// Scrubbed is what a gas does in a liquor of base.
type Scrubbed struct {
	Base float64 // that a mol of it takes, mol; 0: it goes past
	Film string  // that holds it up: gas where it reacts at once, liquor, or "" where nobody says
	Heat float64 // of a mol, kJ released; not a number where nobody says
}

// Scrubbing is what each gas does in a liquor of base, by agent. Of what is not there it is
// not known.
var Scrubbing = sync.OnceValue(func() map[string]Scrubbed {
	out := map[string]Scrubbed{}
	columns.Must("hazards/air/scrubbing.csv", scrubbingCSV, func(r columns.Row) string {
		r.Named("status")
		r.Text("note")
		name := r.Named("gas")
		out[name] = Scrubbed{r.Stated("base"), r.Choice("film", "gas", "liquor", ""), r.Number("heat")}
		return name
	})
	return out
})

// scrubbers reports, of each scrubber, the base that its liquor holds, what the gas that
// goes through it takes, how much of it that is and how long it lasts, and how much gas
// goes past:
//
//	taken = sum over the steps of base per mol of (vapour and mist over its time, gases, CO2)   [mol]
//	spent = 100 taken/base                                                             [%]
//	lasts = base over the greatest of what a step takes by its time                    [h]
func (r *reader) scrubbers() {
	for i := range r.c.Route.Places {
		if p := &r.c.Route.Places[i]; p.Kind == "scrubber" {
			r.scrubber(p)
		}
	}
}

func (r *reader) scrubber(p *route.Place) {
	base := r.baseIn(p)
	x := r.through(p)
	put := func(quantity string, v working.Num, says string) {
		r.put(quantity, figure.At(p.Key), "", figure.Case{}, v, phrase.Of(says))
	}
	taken, B := x.taken.As("n_t"), base.As("n_B")
	put("air.scrubber.base", base, "air.scrubber_base")
	put("air.scrubber.taken", x.taken, "air.scrubber_taken")
	spent := r.w.Line("f", "%", "100*n_t/n_B", 100*taken.V/B.V, taken, B)
	put("air.scrubber.spent", spent, "air.scrubber_taken")
	f := x.flow.As("F_b")
	lasts := r.w.Line("t", "h", "min(n_B/F_b/3600,8760)", min(B.V/f.V/3600, Longest), B, f)
	put("air.scrubber.lasts", lasts, "air.scrubber_lasts")
	put("air.scrubber.past", x.past, "air.scrubber_past")
}

// Longest is how long the liquor of a scrubber is counted to last at most, h: a year. Air
// spends it too, by its carbon dioxide.
const Longest = 8760.0

// baseIn is the base that the liquor of a place holds at the end, less its acid, mol; not
// known where none is stated.
func (r *reader) baseIn(p *route.Place) working.Num {
	for i := range r.k.Ends {
		s := &r.k.Ends[i]
		if s.Place != p.Key {
			continue
		}
		if more := s.Unsaid(); more != nil {
			return working.Absent("n_B", "mol", more...)
		}
		var terms []working.Num
		for j := range s.Liquid {
			terms = append(terms, process.Total(r.w, &s.Liquid[j], "n_B", func(e *process.Entry) float64 {
				if e.Sub == nil {
					return 0
				}
				return -e.Acid
			}))
		}
		if n := r.w.Sum("n_B", "mol", terms...); n.Unknown() || n.V > 0 {
			return n
		}
	}
	return working.Absent("n_B", "mol", working.Lacks("scrubber_base", p.Key))
}

// throughput is what goes through a scrubber.
type throughput struct {
	taken working.Num // mol of base
	flow  working.Num // mol/s of base, of the step that takes most of it in its time
	past  working.Num // L of gas that it does not take up
}

// through adds up what goes through a scrubber from the places that name it. That of a
// place of which nothing goes is not known: a gas line that nobody states takes nothing.
func (r *reader) through(p *route.Place) throughput {
	named := false
	var taken, past []working.Num
	most := working.Num{}
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		if at := r.place(d.Place); at == nil || at.Scrubber != p.Key {
			continue
		}
		named = true
		n := r.takenIn(d, p)
		taken = append(taken, n)
		past = append(past, r.pastIn(d)...)
		x, t := n.As("n"), r.lasts(&r.c.Route.Steps[d.Number-1]).As("t")
		f := r.w.Line("F_b", "mol/s", "n/t", x.V/t.V, x, t)
		if most.None() || f.Unknown() || !most.Unknown() && f.V > most.V {
			most = f
		}
	}
	if !named {
		lacks := working.Lacks("scrubber_gas", p.Key)
		none := func(symbol, unit string) working.Num { return working.Absent(symbol, unit, lacks) }
		return throughput{none("n_t", "mol"), none("F_b", "mol/s"), none("V", "L")}
	}
	n := r.w.Sum("n", "mol", past...).As("n")
	return throughput{r.w.Sum("n_t", "mol", taken...).Worse(working.Bound), most,
		r.w.Line("V", "L", "n*Vm", n.V*r.vm.V, n, r.vm)}
}

// takenIn is the base that the gas of a step takes, mol.
func (r *reader) takenIn(d *process.Done, p *route.Place) working.Num {
	var terms []working.Num
	time := r.lasts(&r.c.Route.Steps[d.Number-1])
	for _, a := range [...]agent{agents[hf], agents[hcl]} {
		m, there := r.emitted[vapourIn{d.Number, a.slug}]
		if !there {
			continue
		}
		x, t, M := m.As("m"), time.As("t"), r.molar(a.formula).As("M")
		terms = append(terms, r.noMore(d, a.slug, r.w.Line("n", "mol", "m/1000/M*t/60", x.V/1000/M.V*t.V/60, x, M, t)))
	}
	terms = append(terms, r.mistIn(d, time)...)
	r.gasesOf(d, func(slug string, n working.Num) {
		gas, there := Scrubbing()[slug]
		switch per := gas.Base; {
		case !there:
			terms = append(terms, working.Absent("n", "mol", working.Lacks("scrubbed", slug)))
		case per > 0:
			x, b := n.As("n"), working.Exact("b", "mol/mol", per, "base that one of it takes")
			terms = append(terms, r.w.Line("n", "mol", "b*n", b.V*x.V, b, x))
		}
	})
	return r.w.Sum("n", "mol", terms...)
}

// noMore is what leaves a liquor in a step, mol, and no more than all of that acid that any
// liquor of the step holds; where that is not known, as it is.
func (r *reader) noMore(d *process.Done, slug string, n working.Num) working.Num {
	var most working.Num
	for _, s := range [...]*process.State{&d.Before, &d.After, d.First, d.Full, d.Filled} {
		if s == nil || len(s.Liquid) == 0 {
			continue
		}
		l := process.AcidsIn(r.w, s)
		all := r.acidsOf(s, &l)
		at := indexOf(all, slug)
		if at < 0 {
			continue
		}
		switch held := all[at].n; {
		case s.Unsaid() != nil || held.Unknown():
			return n
		case most.None() || held.V > most.V:
			most = held
		}
	}
	if most.None() {
		return n
	}
	x, N := n.As("n"), most.As("N")
	return r.w.Line("n", "mol", "min(n,N)", min(x.V, N.V), x, N)
}

// mistIn is the base that the mist of a step takes in its time, mol, as much as it is acid:
// the drops of all the gas that rises, however fast it does at its fastest.
//
//	n = n_d t f
func (r *reader) mistIn(d *process.Done, time working.Num) []working.Num {
	var out []working.Num
	for _, a := range r.breathable() {
		m, there := r.drops[vapourIn{d.Number, a.slug}]
		sub, held := chemicals.Library().Find(a.slug)
		if !there || !held {
			continue
		}
		x, t, f := m.leaves.As("n_d"), time.As("t"), r.bubbling(d.Number, &m, time).As("f")
		n := r.noMore(d, a.slug, r.w.Line("n", "mol", "n_d*t*f", x.V*t.V*f.V, x, t, f))
		b := working.Exact("b", "mol/mol", sub.Acid, "base that one of it takes")
		out = append(out, r.w.Line("n_b", "mol", "b*n", b.V*n.V, b, n))
	}
	return out
}

// bubbling is the share of the time of a step, s, that all its gas would take at the flow
// that throws up its drops:
//
//	f = min(1, n_g/(F t))
func (r *reader) bubbling(step int, m *droplets, time working.Num) working.Num {
	t, F, g := time.As("t"), m.gas.As("F"), r.risen(step, time).As("n_g")
	return r.w.Line("f", "1", "min(1,n_g/max(F*t,1e-30))", min(1, g.V/max(F.V*t.V, 1e-30)), g, F, t)
}

// risen is the gas that rises in a step within its time, mol: of the powder no more than all
// of it gives, of a current what it makes, and the carbon dioxide.
func (r *reader) risen(step int, time working.Num) working.Num {
	var parts []working.Num
	t := time.As("t")
	if f := r.etching(step); !f.None() {
		var all []working.Num
		for i := range r.courses {
			if r.in(&r.courses[i], step) {
				all = append(all, r.courses[i].Gas)
			}
		}
		f, n := f.As("F"), r.w.Sum("n_H2", "mol", all...)
		parts = append(parts, r.w.Line("n_g", "mol", "min(F*t,n_H2)", min(f.V*t.V, n.V), f, t, n))
	}
	if f := r.byCurrent(step, bothElectrodes); !f.None() {
		f = f.As("F")
		parts = append(parts, r.w.Line("n_g", "mol", "F*t", f.V*t.V, f, t))
	}
	for i := range r.k.Releases {
		if x := &r.k.Releases[i]; x.Step == step && x.Gas == "CO2" {
			parts = append(parts, x.N)
		}
	}
	return r.w.Sum("n_g", "mol", parts...)
}

// pastIn is the gas of a step that no base takes up, mol: hydrogen always.
func (r *reader) pastIn(d *process.Done) []working.Num {
	var out []working.Num
	for i := range r.k.Etches {
		if e := &r.k.Etches[i]; e.Step == d.Number && e.Place == d.Place {
			out = append(out, course.GasOf(e)...)
		}
	}
	for i := range r.k.Releases {
		if x := &r.k.Releases[i]; x.Step == d.Number && x.Place == d.Place && x.Gas == "H2" && x.Cause != "etch" &&
			x.Cause != "impurity" && x.Cause != "metal" {
			out = append(out, x.N)
		}
	}
	r.gasesOf(d, func(slug string, n working.Num) {
		if !(Scrubbing()[slug].Base > 0) {
			out = append(out, n)
		}
	})
	return out
}

// gasesOf shows the poisonous gases and the carbon dioxide of a step in its place, mol at
// most; "" is a gas of which nobody knows what it is.
func (r *reader) gasesOf(d *process.Done, show func(slug string, n working.Num)) {
	for i := range r.k.Evolved {
		x := &r.k.Evolved[i]
		if x.Step != d.Number || x.Place != d.Place {
			continue
		}
		slug := ""
		if x.Gas != nil {
			slug = x.Gas.Slug
		}
		show(slug, x.N)
	}
	for i := range r.k.Releases {
		if x := &r.k.Releases[i]; x.Step == d.Number && x.Place == d.Place && x.Gas == "CO2" {
			show("carbon_dioxide", x.N)
		}
	}
}

// lasts is the time of a step, s: that of its addition and its own, or that of a pour.
func (r *reader) lasts(s *route.Step) working.Num {
	switch over, time := r.c.Given("t_o", "s", s.Over), r.c.Given("t_h", "s", s.Time); {
	case s.Over.Set && s.Time.Set:
		return r.w.Line("t", "s", "t_o+t_h", over.V+time.V, over, time)
	case s.Over.Set:
		return over
	case s.Time.Set:
		return time
	case s.Verb().Cooled && s.Verb().Needs == "nothing":
		return r.c.Store.Num("course.unstated_time")
	}
	return r.c.Store.Num("air.pour")
}
