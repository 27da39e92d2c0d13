package scrubbing

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/absorbing"
	"etchbound/hazards/air"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/upset"
	"etchbound/scaling/ends"
)

// Train is the way out of the gas of one place.
type Train struct {
	Place     *route.Place
	Steps     []int
	Hydrogen  ends.Two // L/min at most, as it is meant to go
	Failing   ends.Two // L/min if something fails, as the powder was weighed
	Tenfold   ends.Two // L/min with ten times the powder
	Purge     ends.Two // L/min of gas that is led through
	Gas       ends.Two // L/min of all of it, as it is meant to go
	Acids     []Acid
	Dissolves ends.Two // share of a gas that no base takes up, ammonia, and that water does
	Mist      bool     // drops go with the gas
	Scrubber  Scrubber
	Line      Line
	Back      Back
	Condenser Condenser
	Missing   []working.Missing
}

// Acid is a gas that a liquor of base takes up.
type Acid struct {
	Slug  string
	Flow  ends.Two // mg/min
	Share ends.Two // of the gas, 1
	To    float64  // share that it is brought to: its strictest short limit
	Units ends.Two // of transfer; not a number where its film of liquor holds it up too
}

// Molar volume of a gas at 25 degC and 101.325 kPa, L/mol, and kelvin at 0 degC.
const (
	litres = 24.4654
	kelvin = 273.15
)

// Of are the ways out of the gas of each place of a review from which any comes.
func Of(r *hazards.Review) ([]Train, error) {
	figs := figure.NewSet(r.Figures)
	behind, err := scrubbed(r)
	if err != nil {
		return nil, err
	}
	var out []Train
	for i := range r.Case.Route.Places {
		p := &r.Case.Route.Places[i]
		t := Train{Place: p, Steps: stepsIn(&r.Walk, p.Key)}
		if p.Kind == "scrubber" || !gives(r, figs, &t) {
			continue
		}
		b := builder{reader{figs: figs}, r, &t}
		if p.Closure == route.Closed { // what it gives off once a way out is there
			b.figs = figure.NewSet(behind)
			b.acids()
			b.figs = figs
		} else {
			b.acids()
		}
		b.gas()
		b.scrubber(figure.NewSet(behind), p)
		b.line(courseIn(r, p.Key))
		b.back()
		b.condenser()
		t.Missing = b.missing
		out = append(out, t)
	}
	return out, nil
}

func stepsIn(k *process.Walk, place string) []int {
	var out []int
	for i := range k.Steps {
		if k.Steps[i].Place == place {
			out = append(out, k.Steps[i].Number)
		}
	}
	return out
}

// courseIn is the course that begins in a place; nil where none does.
func courseIn(r *hazards.Review, place string) *course.Course {
	for i := range r.Courses {
		if r.Courses[i].Stages[0].Done.Place == place {
			return &r.Courses[i]
		}
	}
	return nil
}

// gives reports whether gas of its own comes from a place, whether any is led through it, or
// whether a way out is stated: what only steams is for the hood.
func gives(r *hazards.Review, figs *figure.Set, t *Train) bool {
	if t.Place.Scrubber != "" || t.Place.Bubbler.Set {
		return true
	}
	for _, quantity := range [...]string{"gas.hydrogen.peak_rate.during_addition",
		"gas.hydrogen.peak_rate.after_addition"} {
		for _, n := range t.Steps {
			for range figs.At(quantity, figure.Step(n)) {
				return true
			}
		}
	}
	purged := func(n int) bool {
		s := &r.Case.Route.Steps[n-1]
		return s.GasFlow.Set || s.Gas != "" && s.Gas != "air"
	}
	return slices.ContainsFunc(t.Steps, purged) ||
		slices.ContainsFunc(r.Walk.Evolved, func(x process.Evolved) bool { return x.Place == t.Place.Key }) ||
		slices.ContainsFunc(r.Walk.Releases, func(x process.Release) bool { return x.Place == t.Place.Key })
}

// builder fills a train.
type builder struct {
	reader
	r *hazards.Review
	*Train
}

func meant(id figure.ID) bool { return id.Case.Failure == "" }

// gas is how much of it comes, as it is meant to go and if something fails. Hydrogen or
// carbon dioxide of which no flow is known leaves the flow unknown.
func (b *builder) gas() {
	b.Hydrogen = ends.Same(0)
	var seen [2]bool
	for i, quantity := range [...]string{"gas.hydrogen.peak_rate.during_addition",
		"gas.hydrogen.peak_rate.after_addition"} {
		var x ends.Two
		if x, seen[i] = b.most(quantity, b.Steps, meant); seen[i] {
			b.Hydrogen = b.Hydrogen.Worse(x)
		}
	}
	b.failing(seen[0] || seen[1])
	other := ends.Same(0)
	for i := range b.Acids {
		a := &b.Acids[i]
		other = other.Plus(a.Flow.By(litres / 1000 / b.molar(a.Slug)))
	}
	for i := range b.r.Walk.Releases {
		x := &b.r.Walk.Releases[i]
		if x.Place != b.Place.Key {
			continue
		}
		if x.Gas == "H2" && (seen[0] || seen[1]) && (x.Cause == "etch" || x.Cause == "impurity" || x.Cause == "metal") {
			continue // it is in the flows
		}
		other = other.Plus(b.released(x))
	}
	b.Purge = b.purge()
	b.Gas = b.Hydrogen.Plus(other).Plus(b.Purge)
	_, b.Mist = b.most("air.mist", b.Steps, every)
}

// failing is the flow of hydrogen if something fails: as the powder was weighed, and with ten
// times of it, which is no usual failure and would hide all others.
func (b *builder) failing(flows bool) {
	b.Failing, b.Tenfold = b.Hydrogen, b.Hydrogen
	x, there := b.most("gas.hydrogen.peak_rate", b.Steps, func(id figure.ID) bool {
		return id.Case.Failure != upset.Tenfold
	})
	if there {
		b.Failing = b.Failing.Worse(x)
	}
	y, tenfold := b.most("gas.hydrogen.peak_rate", b.Steps, every)
	if tenfold {
		b.Tenfold = b.Tenfold.Worse(y)
	}
	if !there && !tenfold && !flows {
		b.lacks("flow_of_gas", b.Place.Key)
		b.Failing, b.Tenfold = ends.Unknown(), ends.Unknown()
	}
}

// others reports whether a gas that is not hydrogen forms in a place.
func (b *builder) others() bool {
	return slices.ContainsFunc(b.r.Walk.Evolved, func(x process.Evolved) bool { return x.Place == b.Place.Key }) ||
		slices.ContainsFunc(b.r.Walk.Releases, func(x process.Release) bool {
			return x.Place == b.Place.Key && x.Gas != "H2"
		})
}

// released is the flow of a gas set free in a step whose time is stated: the most by the
// range of its volume, where there is one.
func (b *builder) released(x *process.Release) ends.Two {
	s := &b.r.Case.Route.Steps[x.Step-1]
	over := b.r.Case.Given("t", "min", s.Over)
	if !s.Over.Set || !(over.V > 0) || x.N.Unknown() {
		b.lacks("flow_of_gas", b.Place.Key)
		return ends.Unknown()
	}
	if x.Gas == "CO2" {
		if v, there := b.most("neutralise.carbon_dioxide", []int{x.Step}, every); there {
			return v.By(1 / over.V)
		}
	}
	b.lacks("flow_of_gas", b.Place.Key)
	return ends.Pair(x.N.V*litres/over.V, math.NaN())
}

// purge is the greatest flow of gas that is led through, L/min.
func (b *builder) purge() ends.Two {
	out := ends.Same(0)
	for _, n := range b.Steps {
		s := &b.r.Case.Route.Steps[n-1]
		switch {
		case s.GasFlow.Set:
			out = out.Worse(b.stated(s.GasFlow, "L/min"))
		case s.Gas != "" && s.Gas != "air":
			b.lacks(working.NotGiven, s.At+".gas_flow")
			out = ends.Unknown()
		}
	}
	return out
}

// acids are what a base takes up of the gas, and how many units of transfer each needs. One
// of which no saturated vapour is known may be all of the gas.
func (b *builder) acids() {
	for _, n := range b.Steps {
		for f := range b.figs.At("air.emission", figure.Step(n)) {
			if f.Agent == "" || !f.Case.IsZero() {
				continue
			}
			i := slices.IndexFunc(b.Acids, func(a Acid) bool { return a.Slug == f.Agent })
			if i < 0 {
				if x, held := air.Scrubbing()[f.Agent]; held && x.Base == 0 { // it goes past, and may dissolve
					b.Dissolves = b.Dissolves.Worse(b.saturated(n, f.Agent))
					continue
				}
				i = len(b.Acids)
				b.Acids = append(b.Acids, Acid{Slug: f.Agent, To: b.limit(f.Agent)})
			}
			a := &b.Acids[i]
			a.Flow = a.Flow.Worse(b.of(f))
			share := b.saturated(n, f.Agent)
			a.Share = a.Share.Worse(share)
		}
	}
	for i := range b.Acids {
		a := &b.Acids[i]
		a.Units = a.Share.Each(func(y float64) float64 {
			if y == 0 {
				return 0
			}
			return absorbing.Units(y, a.To)
		})
		if air.Scrubbing()[a.Slug].Film != "gas" {
			b.lacks("film", a.Slug)
			a.Units = ends.Unknown()
		}
	}
}

// saturated is the share of a vapour in the gas over a liquor: all of the gas where it forms
// as one, and that of the worst other step of the place where the step has none.
func (b *builder) saturated(step int, agent string) ends.Two {
	forms := func(x process.Evolved) bool {
		return x.Step == step && x.Place == b.Place.Key && x.Gas != nil && x.Gas.Slug == agent
	}
	if slices.ContainsFunc(b.r.Walk.Evolved, forms) {
		return ends.Same(1)
	}
	of := func(id figure.ID) bool { return id.Agent == agent && id.Case.IsZero() }
	x, there := b.most("air.saturated", []int{step}, of)
	if !there {
		x, there = b.most("air.saturated", b.Steps, of)
	}
	if !there {
		b.lacks("no_such_figure", "air.saturated")
		return ends.Unknown()
	}
	return x.By(1e-6)
}

// limit is the strictest limit on what people breathe of an agent, as a share.
func (b *builder) limit(agent string) float64 {
	least := math.NaN()
	for i := range b.r.Findings {
		f := &b.r.Findings[i]
		if f.Figure.Quantity == "air.breathing_zone" && f.Figure.Agent == agent && f.Limit.Unit == "ppm" &&
			f.Limit.Value > 0 && !(f.Limit.Value >= least) {
			least = f.Limit.Value
		}
	}
	if math.IsNaN(least) {
		b.lacks("short_limit", agent)
	}
	return least * 1e-6
}

// molar is the molar mass of a substance, g/mol.
func (b *builder) molar(slug string) float64 {
	s, held := chemicals.Library().Find(slug)
	if !held {
		return math.NaN()
	}
	return s.Formula.MolarMass(b.r.Case.Store, nil).V
}
