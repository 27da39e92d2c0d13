package assess

import (
	"sync"

	"etchbound/chemicals/working"
	"etchbound/hazards/air"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/fluoride"
	"etchbound/hazards/gas"
	"etchbound/hazards/handling"
	"etchbound/hazards/order"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/storage"
	"etchbound/hazards/thermal"
	"etchbound/hazards/upset"
	"etchbound/hazards/vessel"
	"etchbound/hazards/wash"
	"etchbound/hazards/waste"
)

// Part is one of the lots in which the figures of an assessment come, one after
// the other.
type Part int

// The parts: those of the readers first.
const (
	Gas Part = iota
	Thermal
	Fluoride
	Air
	Wash
	Waste
	Order
	Storage
	Handling
	Upset
	Account
	Sums
	Parts // how many there are
)

// reader turns states and runs into the figures of one hazard.
type reader struct {
	read func(route.Case, *working.Sheet, process.Walk, []vessel.Run, []course.Course) []figure.Figure
	runs bool // it looks at the courses and their runs; else it is given none
	// at is read as far as some places; nil where a part of it is no quicker than all.
	at func(route.Case, *working.Sheet, process.Walk, []vessel.Run, []course.Course, figure.Asked) []figure.Figure
}

// readers turn states and runs into figures, one a hazard.
var readers = [...]reader{
	Gas:      {read: gas.Read, runs: true},
	Thermal:  {read: thermal.Read, runs: true},
	Fluoride: {read: fluoride.Read},
	Air:      {read: air.Read, runs: true, at: air.ReadAt},
	Wash:     {read: wash.Read},
	Waste:    {read: waste.Read},
	Order:    {read: order.Read},
	Storage:  {read: storage.Read},
	Handling: {read: handling.Read},
}

// of are the figures of a reader.
func (r *reader) of(c route.Case, w *working.Sheet, k *walked, courses []course.Course) []figure.Figure {
	if !r.runs {
		return r.read(c, w, k.walk, nil, nil)
	}
	return r.read(c, w, k.walk, k.runs(), courses)
}

// some are the figures of a reader as far as some places.
func (r *reader) some(c route.Case, k *walked, courses []course.Course, asked figure.Asked) []figure.Figure {
	if r.at == nil || asked == figure.Everywhere {
		return r.of(c, nil, k, courses)
	}
	return r.at(c, nil, k.walk, k.runs(), courses, asked)
}

// walked is what the first stage gives: the walk, and its runs by full accumulation,
// which are integrated where the first reader looks at them.
type walked struct {
	walk process.Walk
	runs func() []vessel.Run
	err  error
}

// walk is the first stage: it walks a case.
func walk(c route.Case, w *working.Sheet, met process.Meetings) *walked {
	k, err := met.Go(c, w)
	if err != nil {
		return &walked{err: err}
	}
	return &walked{walk: k, runs: sync.OnceValue(func() []vessel.Run { return runs(&k) })}
}

// account is the figure of the account of a walk.
func (k *walked) account() []figure.Figure {
	return []figure.Figure{{ID: figure.ID{Quantity: "account.error"}, Value: k.walk.Error,
		Conditions: phrase.Of("account.error")}}
}

// failures are the figures of what can go wrong. They stand on the walk, the
// courses and the figures of gas and heat.
func failures(c route.Case, w *working.Sheet, k *walked, n []course.Course, known *course.Known,
	gas, heat []figure.Figure) []figure.Figure {
	return upset.Read(c, w, upset.Base{Walk: &k.walk, Courses: n, Gas: figure.NewSet(gas), Heat: figure.NewSet(heat),
		Again:  func(c route.Case) (*figure.Set, []course.Course, error) { return again(c, known) },
		Breath: air.Breath(c, w)})
}

// again assesses a route that went wrong: the same walk and the same runs, read
// for what a failure is told by, which is heat and gas.
func again(c route.Case, known *course.Known) (*figure.Set, []course.Course, error) {
	k := walk(c, nil, process.Met(c.Route))
	if k.err != nil {
		return nil, nil, k.err
	}
	courses := course.Find(c, nil, &k.walk, known)
	figs := gas.Read(c, nil, k.walk, k.runs(), courses)
	return figure.NewSet(append(figs, thermal.Read(c, nil, k.walk, k.runs(), courses)...)), courses, nil
}

// runs builds the plan of every step whose vessel still holds the liquor of an
// etch and runs it by full accumulation: nothing has reacted yet.
func runs(k *process.Walk) []vessel.Run {
	var out []vessel.Run
	for i := range k.Steps {
		d := &k.Steps[i]
		if len(d.Etches) == 0 {
			continue
		}
		if r, err := vessel.Simulate(plan(k, d)); err == nil {
			out = append(out, r)
		}
	}
	return out
}

// plan is the vessel of a step in SI: the layered phase as the slow solid, what
// else reacts as the fast one.
func plan(k *process.Walk, d *process.Done) vessel.Plan {
	p := vessel.Plan{Step: d.Number, Law: vessel.Accumulated, Start: d.Hot.V + kelvin}
	p.Slow, p.Fast = course.Solids(k, d.Etches)
	s := d.Contents()
	p.Slow.Capacity = s.SolidCapacity(nil).V
	p.Liquor.Capacity = s.HeatCapacity(nil).V - p.Slow.Capacity
	return p
}

const kelvin = 273.15

// sums are the bare figures of every quantity whose bare id is the sum of its
// members, in the order of the catalogue.
func sums(w *working.Sheet, parts *[Parts][]figure.Figure) []figure.Figure {
	of := map[string][]working.Num{}
	for p := range parts {
		if !terms().Has(Part(p)) {
			continue
		}
		for i := range parts[p] {
			if f := &parts[p][i]; !f.Place.IsZero() && f.Case.IsZero() && summed(f.Quantity) {
				of[f.Quantity] = append(of[f.Quantity], f.Value)
			}
		}
	}
	var out []figure.Figure
	for i := range figure.Catalogue() {
		q := &figure.Catalogue()[i]
		if t := of[q.Name]; t != nil {
			sum := w.Sum("sum", q.Unit, t...)
			out = append(out, figure.Figure{ID: figure.ID{Quantity: q.Name}, Value: sum, Conditions: phrase.Of("sum")})
		}
	}
	return out
}

// terms is the set of parts that may give a term of a sum.
var terms = sync.OnceValue(func() Set {
	var out Set
	for _, q := range figure.Catalogue() {
		if q.Built && q.Bare == "sum" {
			out |= GivenBy(q.Name) &^ Of(Sums)
		}
	}
	return out
})

// summed reports whether the bare figure of a quantity is the sum of its members.
func summed(quantity string) bool {
	q, _ := figure.Lookup(quantity)
	return q.Bare == "sum"
}
