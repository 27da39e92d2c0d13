package upset

import (
	"errors"
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
	"etchbound/schemas/quantity"
)

// change is a route with one thing done wrong. It is assessed like any other.
type change struct {
	key string
	of  func(c *route.Case, n *course.Course) bool // alters the route of c; false where it cannot happen
	// unsure reports, where of did nothing, that it can happen and nobody says what it is.
	unsure func(c *route.Case, n *course.Course) bool
}

// atOnce is the whole addition tipped in at once.
const atOnce = "all_at_once"

// Tenfold is ten times the powder in the liquor of a tenth of it.
const Tenfold = "weighed_ten_times"

var changed = [...]change{
	{atOnce, func(c *route.Case, n *course.Course) bool {
		return over(c, n, func(q quantity.Value) quantity.Value { return quantity.Value{} })
	}, nil},
	{"twice_as_fast", func(c *route.Case, n *course.Course) bool {
		return over(c, n, func(q quantity.Value) quantity.Value { return plain(c, q).Times(0.5) })
	}, nil},
	{"double_dose", func(c *route.Case, _ *course.Course) bool { return powder(c, 2) }, nil},
	{Tenfold, func(c *route.Case, _ *course.Course) bool { return powder(c, 10) }, nil},
	{"stronger_acid", stronger, unlisted},
	{"prewash_skipped", skipped, nil},
}

// plain is a stated value at what the store holds of it, without its range.
func plain(c *route.Case, q quantity.Value) quantity.Value {
	q = c.Ranged(q)
	q.Low, q.High = math.NaN(), math.NaN()
	return q
}

// over changes the time of every addition of a course that takes some.
func over(c *route.Case, n *course.Course, to func(quantity.Value) quantity.Value) bool {
	found := false
	for i := range n.Stages {
		s := &n.Stages[i]
		if s.Etches == nil || s.AtOnce {
			continue
		}
		x := &c.Route.Steps[s.Step.Number-1]
		if x.Over, found = to(x.Over), true; !x.Over.Set {
			x.Portions, x.PortionTime = 0, quantity.Value{}
		}
	}
	return found
}

// powder multiplies the powder, and leaves everything else as it was weighed.
func powder(c *route.Case, k float64) bool {
	p := c.Route.Precursor
	if p == nil || !p.Mass.Set {
		return false
	}
	p.Mass = plain(c, p.Mass).Times(k)
	for i := range c.Route.Steps {
		for j := range c.Route.Steps[i].What {
			m := &c.Route.Steps[i].What[j]
			if m.Precursor && m.Mass.Set {
				m.Mass = plain(c, m.Mass).Times(k)
			}
			if m.Ratio.Set {
				m.Ratio = plain(c, m.Ratio).Times(1 / k)
			}
		}
	}
	return true
}

// skipped turns every pre-wash into a step that does nothing.
func skipped(c *route.Case, n *course.Course) bool {
	found := false
	for i := range c.Route.Steps {
		if s := &c.Route.Steps[i]; s.Verb().Does == route.Prewashes && s.Number < n.Stages[0].Step.Number {
			*s, found = route.Step{Number: s.Number, Do: "hold", In: s.In, At: s.At}, true
		}
	}
	return found
}

// stronger makes the acid of a course one step stronger: of those that are bought in
// steps, the first of the table of which there is some. The etch goes faster by the
// order it has in the strength; the time it takes is shorter in proportion.
func stronger(c *route.Case, n *course.Course) bool {
	bought := chemicals.Strengths("bought")
	for i := range bought {
		if i > 0 && bought[i].Substance == bought[i-1].Substance {
			continue
		}
		ratio := 1.0
		eachIn(c, n, func(m *route.Material) { ratio = max(ratio, next(c, m, bought[i].Substance)) })
		if ratio > 1 {
			faster(c, ratio)
			return true
		}
	}
	return false
}

// unlisted reports whether a course holds an acid of which nobody says how strong the
// next bottle is: what a stronger one does is not known then.
func unlisted(c *route.Case, n *course.Course) bool {
	found := false
	eachIn(c, n, func(m *route.Material) {
		if m.Substance == nil || !m.Substance.MayBe("acid") || !m.Strength.Set {
			return
		}
		steps := slices.ContainsFunc(chemicals.Strengths("bought"), func(s chemicals.Strength) bool {
			return s.Substance == m.Substance.Slug
		})
		found = found || !steps || m.Strength.Dim != quantity.Molarity && m.Strength.Dim != quantity.MassFraction
	})
	return found
}

// eachIn shows every material that goes into the place of a course up to its end.
func eachIn(c *route.Case, n *course.Course, do func(*route.Material)) {
	for i := range c.Route.Steps {
		s := &c.Route.Steps[i]
		if s.In != n.Stages[0].Done.Place || s.Number > n.Stages[len(n.Stages)-1].Step.Number {
			continue
		}
		for j := range s.What {
			do(&s.What[j])
		}
	}
}

// next makes a material one step stronger if it is the acid asked for, and
// returns by how much: 1 where it is not, or where there is no stronger one.
func next(c *route.Case, m *route.Material, slug string) float64 {
	if m.Substance == nil || m.Substance.Slug != slug || !m.Strength.Set {
		return 1
	}
	was := plain(c, m.Strength)
	for _, s := range chemicals.Strengths("bought") {
		step, unit := s.WT, "wt%"
		switch {
		case s.Substance != slug:
			continue
		case m.Strength.Dim == quantity.Molarity:
			step, unit = s.Molar, "mol/L"
		case m.Strength.Dim != quantity.MassFraction:
			return 1
		}
		if step > was.In(unit)*1.05 { // the same strength by another table is not a step
			ratio := step / was.In(unit)
			m.Strength = was.Times(ratio)
			return ratio
		}
	}
	return 1
}

// faster shortens the time that the etch and the free metal take.
func faster(c *route.Case, ratio float64) {
	if k := c.Route.Curve; k != nil {
		for i := range k.Points {
			k.Points[i].Time = plain(c, k.Points[i].Time).Times(1 / ratio)
		}
	}
	to := map[int]float64{}
	shorten := func(id, order datum.ID) {
		d, ok := c.Store.Row(id)
		m := c.Store.Num(order)
		if v := c.Store.Num(id); ok && !v.Unknown() {
			to[d.Index] = v.V / math.Pow(ratio, m.V)
		}
	}
	shorten("kinetics.hold_share", "upset.acid_order")
	shorten("kinetics.metal_time", "upset.metal_order")
	c.Store = c.Store.With(to)
}

var errUnlisted = errors.New("no stronger acid")

// changes reports the routes with one thing done wrong.
func (r *reader) changes(n *course.Course) {
	for i := range changed {
		c := r.c
		c.Route, c.Brief = c.Route.Copy(), true
		switch x := &changed[i]; {
		case x.of(&c, n):
			figs, courses, err := r.b.Again(c)
			r.wrong(n, x, figs, courses, err)
		case x.unsure != nil && x.unsure(&c, n):
			r.wrong(n, x, nil, nil, errUnlisted)
		}
	}
}

// wrong reports what a changed route gives by every law.
func (r *reader) wrong(n *course.Course, x *change, figs *figure.Set, courses []course.Course, err error) {
	a := again{r: r, n: n, figs: figs, err: err}
	for i := range courses {
		if courses[i].Stages[0].Step.Number == n.Stages[0].Step.Number {
			a.other = &courses[i]
		}
	}
	if place := figure.Step(n.Stages[0].Step.Number); a.other != nil && err == nil {
		l := r.lot(nil, a.other, boilsAt(figs, place))
		r.lots[lotOf{place, x.key}] = r.shown(&l, n.Heat)
	}
	w, how := r.w, says(r.w, x.key)
	if x.key != atOnce { // which a closed form bounds
		a.tell(x.key, string(vessel.Instantaneous), phrase.On(w, "upset.changed", how, phrase.Of("course.as_it_goes_in")),
			[]working.Num{n.Heat, n.Gas})
	}
	for i := range n.Runs {
		y := &n.Runs[i]
		a.tell(x.key, string(y.Law), phrase.On(w, "upset.changed", how, y.Conditions()), y.Inputs)
		a.boil(x.key, y, phrase.On(w, "upset.changed_boils", how, y.Conditions()))
	}
}

// again is a changed route once assessed.
type again struct {
	r     *reader
	n     *course.Course // as it is meant to go
	other *course.Course // as it went; nil where nothing was etched
	figs  *figure.Set
	err   error
}

const model = "assessed again with this done wrong"

// tell reports the highest temperature and the largest flow over the course.
func (a *again) tell(key, law string, cond phrase.Phrase, in []working.Num) {
	place, kase := figure.Step(a.n.Stages[0].Step.Number), figure.If(key).By(law)
	t := a.worst(law, "T_max", "degC", in, "heat.temperature_peak")
	a.r.put("heat.temperature_peak", place, kase, t, phrase.On(a.r.w, "upset.no_vapour", cond))
	f := a.worst(law, "F", "L/min", in, "gas.hydrogen.peak_rate.during_addition", "gas.hydrogen.peak_rate.after_addition")
	a.r.put("gas.hydrogen.peak_rate", place, kase, f, phrase.On(a.r.w, "gas.flow", cond))
}

// worst is the greatest of some figures over the steps of the course; unknown
// where one of them is.
func (a *again) worst(law, symbol, unit string, in []working.Num, quantities ...string) working.Num {
	if a.err != nil {
		return working.Absent(symbol, unit, working.Lacks("run", ""))
	}
	var worst working.Num
	for i := range a.n.Stages {
		for _, q := range quantities {
			f := a.figs.Get(figure.ID{Quantity: q, Place: figure.Step(a.n.Stages[i].Step.Number), Case: figure.By(law)})
			if f == nil {
				continue
			}
			if v := f.Value; worst.None() || v.Unknown() || !worst.Unknown() && v.V > worst.V {
				worst = v
			}
		}
	}
	switch {
	case worst.None():
		return working.Absent(symbol, unit, working.Lacks("etch_of_changed", ""))
	case worst.Unknown():
		return working.Absent(symbol, unit, worst.Missing()...)
	}
	return a.r.w.Model(symbol, unit, model, worst.V, in...).Worse(worst.Status)
}

// boil reports the time to boiling of the changed run.
func (a *again) boil(key string, y *course.Run, cond phrase.Phrase) {
	place, kase := figure.Step(a.n.Stages[0].Step.Number), figure.If(key).By(string(y.Law))
	boils := boilsAt(a.figs, place)
	v := working.Absent("t_b", "min", boils.Missing()...)
	var run *course.Run
	if a.other != nil {
		for i := range a.other.Runs {
			if a.other.Runs[i].Law == y.Law {
				run = &a.other.Runs[i]
			}
		}
	}
	switch {
	case a.err != nil || run == nil:
		v = working.Absent("t_b", "min", working.Lacks("etch_of_changed", ""))
	case run.Missing != nil:
		v = working.Absent("t_b", "min", run.Missing...)
	case !boils.Unknown():
		v = a.r.w.Model("t_b", "min", model, boiling(&run.Vessel, boils.V+kelvin)/60,
			append([]working.Num{a.r.boils(a.n)}, y.Inputs...)...)
	}
	a.r.put("heat.time_to_boil", place, kase, v, cond)
}
