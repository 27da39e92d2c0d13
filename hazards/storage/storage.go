package storage

import (
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Read gives the figures of every place in which product is stored.
func Read(c route.Case, w *working.Sheet, k process.Walk, _ []vessel.Run, _ []course.Course) []figure.Figure {
	r := reader{c: c, w: w, k: &k}
	for i := range c.Route.Places {
		r.place(&c.Route.Places[i])
	}
	return r.out
}

type reader struct {
	c   route.Case
	w   *working.Sheet
	k   *process.Walk
	out []figure.Figure
}

func (r *reader) put(quantity string, p *route.Place, kase figure.Case, v working.Num, cond phrase.Phrase) {
	r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: quantity, Place: figure.At(p.Key), Case: kase},
		Value: r.w.Keep(v), Conditions: cond})
}

// How many modes of pH there are, how many ways the carbon goes, and which of these is the
// outer bound.
const modes, ways, outer = 2, process.Ways, 2

var (
	modeNames = [modes]string{"ph_mode_1", "ph_mode_2"}
	modeSays  = [modes]string{"store.ph_mode_1", "store.ph_mode_2"}
	wayNames  = [ways]string{"carbon_kept", "methane", figure.OuterBound}
	waySays   = [ways]string{"store.carbon_kept", "store.methane", "store.carbon_dioxide"}
)

// kept is what a place came to by the end of a stage, at its worst so far.
type kept struct {
	pressure, soon [ways]working.Num
	quarter        [ways]working.Num
	lost, life     [modes]working.Num
	freed, acid    working.Num // fluoride given off, and the pH by then
	ammonia        working.Num
	ice            working.Num
}

// place reports a place, if product is stored in it.
func (r *reader) place(p *route.Place) {
	var all kept
	var past stage
	var doses []dosed
	stages := 0
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		if d.Place != p.Key || r.c.Route.Steps[i].Verb().Does != route.Stores {
			continue
		}
		if !d.After.CarriesFlakes() {
			if m := d.After.Doubted(); !m.IsZero() && len(d.After.Liquid) > 0 {
				all, stages = unknown(m), stages+1
			}
			continue
		}
		past = r.stage(p, d, &r.c.Route.Steps[i], &past)
		r.worst(&all, p, &past)
		stages++
		r.antioxidants(&doses, &past)
	}
	if stages == 0 {
		r.standing(p)
		return
	}
	says := r.says(&past)
	for m, name := range modeNames {
		r.put("store.conversion", p, figure.By(name), all.lost[m], phrase.On(r.w, modeSays[m], says))
		r.put("store.shelf_life", p, figure.By(name), all.life[m], phrase.On(r.w, "store.life", says))
	}
	for i := range doses {
		r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: "store.antioxidant", Place: figure.At(p.Key),
			Agent: doses[i].of.Slug}, Value: r.w.Keep(doses[i].mass), Conditions: phrase.Of("store.antioxidant")})
	}
	for i, name := range wayNames[:r.shut()] {
		r.put("store.time_to_quarter", p, figure.By(name), all.quarter[i], phrase.On[any](r.w, "store.quarter"))
	}
	r.aged(p, &all)
	if p.Closure == route.Open {
		return
	}
	kase := figure.Case{}
	if p.Closure == route.Vented {
		kase.State = figure.Closed
	}
	for i, name := range wayNames {
		r.put("store.pressure", p, kase.By(name), all.pressure[i], phrase.On(r.w, waySays[i], says))
		if i < outer {
			r.put("store.time_to_10_kpa", p, kase.By(name), all.soon[i], phrase.On(r.w, "store.soon", past.later[i]))
		}
	}
}

// carried is a step with all the flakes in what it stores that its liquid may carry, where
// nobody says whether it does: the most there can be.
func (r *reader) carried(d *process.Done) (all *process.Done, unsaid bool) {
	made, may := r.k.MayHold(&d.After)
	if !may {
		return d, false
	}
	x := *d
	x.After.Solids = append(slices.Clip(x.After.Solids), made...)
	return &x, true
}

// Widen lets the gas of what may carry no flakes at all be none, and that of what stands shut for
// nobody knows how long: what is told of it is what there is at most.
func Widen(c route.Case, k *process.Walk, figures []figure.Figure) {
	for i := range figures {
		f := &figures[i]
		if f.Quantity != "store.pressure" && f.Quantity != "store.time_to_10_kpa" || f.Value.Unknown() ||
			!mayCarry(c, k, f.Place) && stores(c, k, f.Place) {
			continue
		}
		f.Value = f.Value.Worse(working.Bound)
		if f.Quantity == "store.pressure" {
			f.SetRange(min(f.Low().V, 0), f.High().V)
		} else {
			f.SetRange(f.Low().V, never)
		}
	}
}

// mayCarry reports whether nobody says of what is stored in a place that it carries flakes.
func mayCarry(c route.Case, k *process.Walk, at figure.Place) bool {
	for i := range k.Steps {
		d := &k.Steps[i]
		if figure.At(d.Place) == at && c.Route.Steps[i].Verb().Does == route.Stores {
			if _, may := k.MayHold(&d.After); may {
				return true
			}
		}
	}
	return false
}

// stores reports whether a step stores what is in a place.
func stores(c route.Case, k *process.Walk, at figure.Place) bool {
	for i := range k.Steps {
		if figure.At(k.Steps[i].Place) == at && c.Route.Steps[i].Verb().Does == route.Stores {
			return true
		}
	}
	return false
}

// unknown is a place of which nobody can say whether there is product in it.
func unknown(m working.Missing) kept {
	all := kept{freed: working.Absent("m", "g", m), acid: working.Absent("pH", "1", m)}
	for i := range ways {
		all.pressure[i], all.soon[i] = working.Absent("p", "kPa gauge", m), working.Absent("t", "min", m)
		all.quarter[i] = working.Absent("t", "d", m)
	}
	for i := range modes {
		all.lost[i], all.life[i] = working.Absent("x", "1", m), working.Absent("t", "d", m)
	}
	return all
}

// worst keeps the worst of what a place comes to by the end of a stage.
func (r *reader) worst(all *kept, p *route.Place, s *stage) {
	for m := range modes {
		keep(&all.lost[m], s.lost[m], 1)
		all.life[m] = s.life[m]
	}
	for i := range r.shut() {
		keep(&all.quarter[i], r.quarter(s, i), -1)
	}
	r.ages(all, s)
	if p.Closure == route.Open {
		return
	}
	for i := range ways {
		pressure, soon := r.pressure(p, s, i)
		keep(&all.pressure[i], pressure, 1)
		keep(&all.soon[i], soon, -1)
	}
}

// keep takes the worse of two, by the side of danger; unknown is worse than any number.
func keep(of *working.Num, v working.Num, side float64) {
	if of.None() || v.Unknown() || !of.Unknown() && v.V*side > of.V*side {
		*of = v
	}
}

// product are the flakes of a stage.
func product(s *process.State) []*process.Solid {
	var out []*process.Solid
	for i := range s.Solids {
		if s.Solids[i].Kind == process.Product {
			out = append(out, &s.Solids[i])
		}
	}
	return out
}

// unsaid is what has to be known to say what is stored at all.
func unsaid(d *process.Done) []working.Missing {
	out := slices.Clone(d.After.Unsaid())
	if len(product(&d.After)) == 0 {
		out = append(out, working.Lacks("carries_flakes", "").In(d.Number))
	}
	return out
}
