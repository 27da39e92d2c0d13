package gas

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/etching"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Read gives the gas figures of a walk.
func Read(c route.Case, w *working.Sheet, k process.Walk, _ []vessel.Run, courses []course.Course) []figure.Figure {
	r := reader{out: make([]figure.Figure, 0, usual), c: c, w: w, k: &k, vm: process.MolarVolume(c.Store, w),
		spaces: map[string]working.Num{}}
	r.hydrogen()
	r.hydrides()
	r.evolved()
	r.closed(courses)
	for i := range courses {
		r.flows(&courses[i])
	}
	r.currents()
	for i := range r.flowing {
		x := &r.flowing[i]
		r.dilution(x)
		r.vent(x)
		r.swell(x)
	}
	for i := range courses {
		r.additions(&courses[i])
		r.headspace(&courses[i])
	}
	r.closing(courses)
	r.still(courses)
	r.contents()
	return r.out
}

// usual is room for the figures of a usual route.
const usual = 72

type reader struct {
	c   route.Case
	w   *working.Sheet
	k   *process.Walk
	vm  working.Num
	out []figure.Figure

	flowing []flowing
	spaces  map[string]working.Num // mL of gas of each place with a closed pressure
	shut    []shut
	waiting []waits // places with what can still give gas
	open    []shut  // places that stand open: a lid put on while powder reacts is a failure, and no pressure of theirs
}

func (r *reader) put(quantity string, place figure.Place, agent string, kase figure.Case, v working.Num,
	conditions phrase.Phrase) {
	id := figure.ID{Quantity: quantity, Place: place, Agent: agent, Case: kase}
	r.out = append(r.out, figure.Figure{ID: id, Value: r.w.Keep(v), Conditions: conditions})
}

// litres is n mol of gas at 25 degC and 101.325 kPa.
func (r *reader) litres(n working.Num) working.Num {
	x := n.As("n")
	return r.w.Line("V", "L", "n*Vm", x.V*r.vm.V, x, r.vm)
}

// hydrogen reports, for each step that gives any, all of it, the part from
// impurities, and what would come if everything dissolved.
func (r *reader) hydrogen() {
	for i := range r.c.Route.Steps {
		n := r.c.Route.Steps[i].Number
		total, impurities, bound := r.step(n)
		place := figure.Step(n)
		if left := r.released(n, "residual"); left != nil {
			r.put("gas.hydrogen.total", place, "", figure.By(figure.Residual), r.litres(r.w.Sum("n_H2", "mol", left...)),
				phrase.Of("gas.residual"))
		}
		if total != nil {
			r.put("gas.hydrogen.total", place, "", figure.Case{}, r.litres(r.w.Sum("n_H2", "mol", total...)),
				phrase.Of("gas.total"))
		}
		if impurities != nil {
			r.put("gas.hydrogen.impurities", place, "", figure.Case{}, r.litres(r.w.Sum("n_H2", "mol", impurities...)),
				phrase.Of("gas.impurities"))
		}
		if bound != nil {
			r.put("gas.hydrogen.dissolution_bound", place, "", figure.Case{}, r.litres(r.w.Sum("n_H2", "mol", bound...)),
				phrase.Of("gas.dissolved"))
		}
	}
}

func (r *reader) step(n int) (total, impurities, bound []working.Num) {
	for i := range r.k.Etches {
		e := &r.k.Etches[i]
		if e.Step != n {
			continue
		}
		var own []working.Num
		if !e.Hydrogen.None() && (e.Family != process.Molten || e.Hydrogen.Unknown()) {
			own = append(own, e.Hydrogen)
		}
		for j := range e.Dissolved {
			own = append(own, e.Dissolved[j].Hydrogen)
			if !e.Dissolved[j].Metal {
				impurities = append(impurities, e.Dissolved[j].Hydrogen)
			}
		}
		total = append(total, own...)
		if e.Family == process.FluorideAcid && !e.N.None() {
			bound = append(bound, r.dissolution(e))
		}
		if e.Family == process.Unheld {
			bound = append(bound, e.Hydrogen)
		}
	}
	return total, impurities, bound
}

// released lists the hydrogen of a step by its cause.
func (r *reader) released(step int, cause string) []working.Num {
	var out []working.Num
	for _, g := range r.k.Releases {
		if g.Step == step && g.Gas == "H2" && g.Cause == cause {
			out = append(out, g.N)
		}
	}
	return out
}

// dissolution is the hydrogen if the whole powder dissolves, capped by half
// the acid equivalents but never less than an etch with all sites oxygen gives,
// since that takes hydrogen from water too.
func (r *reader) dissolution(e *process.Etch) working.Num {
	l := r.k.Layered
	if l.Unlisted != "" {
		return working.Absent("n_H2", "mol", working.LacksDatum(datum.Of("electrons", l.Unlisted)))
	}
	h, n := l.Dissolved(r.c.Store, r.w).As("h"), e.N.As("n")
	phase := r.w.Line("n_H2", "mol", "n*h", n.V*h.V, n, h)
	all := r.w.Sum("n_all", "mol", append([]working.Num{phase}, r.foreignDissolved(e)...)...)
	el, h2 := l.Electrons.As("e"), e.Hydrogen.As("m")
	top := r.w.Line("n_top", "mol", "max(n*(e/2+2),m)", max(n.V*(el.V/2+2), h2.V), n, el, h2)
	etch := r.w.Sum("n_etch", "mol", append([]working.Num{top}, foreign(e)...)...)
	a := e.AcidBefore.As("A")
	return r.w.Line("n_H2", "mol", "max(min(n_all,A/2),n_etch)", max(min(all.V, a.V/2), etch.V), all, a,
		etch).Worse(working.Bound)
}

func foreign(e *process.Etch) []working.Num {
	var out []working.Num
	for i := range e.Dissolved {
		out = append(out, e.Dissolved[i].Hydrogen)
	}
	return out
}

// foreignDissolved is the hydrogen of every impurity that meets the etchant if
// all of its metal dissolves; never less than what it gives anyway.
func (r *reader) foreignDissolved(e *process.Etch) []working.Num {
	var out []working.Num
	put := func(f chemicals.Formula, n, least working.Num) {
		h, m := etching.Dissolved(r.c.Store, r.w, f).As("h"), n.As("n")
		if h.Unknown() {
			out = append(out, least)
			return
		}
		l := least.As("l")
		out = append(out, r.w.Line("n_H2", "mol", "max(n*h,l)", max(m.V*h.V, l.V), m, h, l))
	}
	for i := range e.Dissolved {
		d := &e.Dissolved[i]
		put(d.Formula, d.N, d.Hydrogen)
	}
	none := working.Exact("l", "mol", 0, "it gives none in the etch")
	for i := range r.k.Steps {
		if d := &r.k.Steps[i]; d.Number == e.Step {
			for j := range d.After.Solids {
				if x := &d.After.Solids[j]; x.Kind == process.Impurity {
					if f, err := chemicals.ParseFormula(x.Formula); err == nil {
						put(f, x.N, none)
					}
				}
			}
		}
	}
	return out
}

// gases names the toxic hydrides by their slug.
var gases = map[string]string{"PH3": "phosphine", "AsH3": "arsine", "SbH3": "stibine", "H2S": "hydrogen_sulfide",
	"H2Se": "hydrogen_selenide", "H2Te": "hydrogen_telluride"}

// hydrides bounds the toxic gas of every element that could leave as one: all
// of it does.
func (r *reader) hydrides() {
	for i := range r.k.Etches {
		e := &r.k.Etches[i]
		amounts := map[string][]working.Num{}
		if l := r.k.Layered; l != nil && !e.N.None() {
			for _, a := range l.A {
				r.hydride(amounts, a.Symbol, a.Count, e.N)
			}
		}
		for j := range e.Dissolved {
			d := &e.Dissolved[j]
			for _, el := range d.Formula.Order {
				x, _ := chemicals.ElementIndex(el)
				r.hydride(amounts, el, d.Formula.Of[x], d.N)
			}
		}
		for _, h := range []string{"PH3", "AsH3", "SbH3", "H2S", "H2Se", "H2Te"} {
			if n := amounts[h]; n != nil {
				v := r.litres(r.w.Sum("n", "mol", n...)).Worse(working.Bound)
				r.put("gas.hydride.bound", figure.Step(e.Step), gases[h], figure.Case{}, v,
					phrase.On(r.w, "gas.hydride", h))
			}
		}
		if l := r.k.Layered; l != nil && l.Unlisted != "" && l.Hydride == "" && !e.N.None() {
			r.put("gas.hydride.bound", figure.Step(e.Step), "", figure.Case{},
				working.Absent("V", "L", working.LacksDatum(datum.Of("electrons", l.Unlisted))),
				phrase.On(r.w, "gas.unlisted", l.Unlisted))
		}
	}
}

func (r *reader) hydride(into map[string][]working.Num, el string, count float64, n working.Num) {
	h := etching.Hydride(el)
	if h == "" {
		return
	}
	x, m := working.Exact("x", "mol/mol", count, el+" per formula unit"), n.As("n")
	into[h] = append(into[h], r.w.Line("n_"+h, "mol", "x*n", x.V*m.V, x, m))
}

// closed is the pressure of each place that holds powder with liquor, if it is
// shut; a vented place carries it as the case closed, and one that stands open has none. Of all that
// happens in a place the worst counts, and unknown is worse than any number.
func (r *reader) closed(courses []course.Course) {
	for i := range r.c.Route.Places {
		p := &r.c.Route.Places[i]
		var worst, gas working.Num
		var held *process.State
		can := r.potentials(p.Key)
		for _, x := range can {
			n := r.w.Sum("n", "mol", x.gas...)
			v := r.pressure(p, x.state, n)
			if worst.None() || v.Unknown() || (!worst.Unknown() && v.V > worst.V) {
				worst, gas, held = v, n, x.state
			}
		}
		u := r.unfollowed(p, worst)
		r.takes(p, can, r.unfollowed(p, working.Num{}))
		hot := r.heatedClosed(p)
		if u != nil {
			worst, gas = working.Absent("p", "kPa gauge", u...), working.Absent("n", "mol", u...)
			held = r.unworked(p, hot, held)
		}
		if hot != 0 && held == nil {
			gas, held = working.Exact("n", "mol", 0, "nothing in it gives gas"), r.done(hot).Contents()
		}
		w := r.warmest(p, hot, courses)
		if w == nil && p.Closure == route.Closed && worst.Unknown() {
			w = r.doubted(p)
		}
		if w == nil && p.Closure != route.Open {
			w = r.unbegun(held, courses)
		}
		if w != nil && held != nil {
			r.warm(p, w, held, gas, hot != 0)
		}
		if worst.None() {
			continue
		}
		if p.Closure == route.Open && hot == 0 {
			r.open = append(r.open, shut{p.Key, figure.Case{State: figure.Closed}})
			continue
		}
		kase, cond := figure.Case{}, phrase.Of("gas.closed")
		switch {
		case hot != 0:
			kase.State, cond = figure.Cold, phrase.On(r.w, "gas.closed_cold", hot)
		case p.Closure != route.Closed:
			kase.State, cond = figure.Closed, phrase.Of("gas.closed_if_shut")
		case !p.ClosureStated:
			cond = phrase.Of("gas.closed_unstated")
		}
		r.pressed(p, kase, worst, cond)
	}
}

// unworked is a place of which the gas is not worked out: as the step finds it that heats it
// closed, else as it is fullest.
func (r *reader) unworked(p *route.Place, hot int, held *process.State) *process.State {
	key := p.Key
	if d := r.done(hot); hot != 0 && d != nil {
		return d.Contents()
	}
	if held == nil {
		held = r.last(key)
	}
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		for _, s := range [...]*process.State{d.Contents(), d.Full, d.Filled} {
			if s == nil || s.Place != key {
				continue
			}
			if held == nil || !math.IsNaN(r.fills(p, held)) && !(r.fills(p, s) <= r.fills(p, held)) {
				held = s // not known before any number
			}
		}
	}
	return held
}

// fills is the liquid and solid of a place, mL.
func (r *reader) fills(p *route.Place, s *process.State) float64 {
	room := process.RoomIn(r.c, nil, r.k, p, s)
	return room.Liquid.V + room.Solid.V
}

// shut is a place with a closed pressure, by the case it is of.
type shut struct {
	key  string
	kase figure.Case
}

// pressed reports the pressure of a place if it is shut.
func (r *reader) pressed(p *route.Place, kase figure.Case, v working.Num, cond phrase.Phrase) {
	r.shut = append(r.shut, shut{p.Key, kase})
	r.put("gas.closed.pressure", figure.At(p.Key), "", kase, v, cond)
}

// heatedClosed is the number of the step that heats a place closed, or 0: one
// that says so, or any that sets a closed place hot.
func (r *reader) heatedClosed(p *route.Place) int {
	for i := range r.c.Route.Steps {
		s := &r.c.Route.Steps[i]
		if s.In == p.Key && (s.Verb().Does == route.Shuts || p.Closure == route.Closed && s.Temperature.Set &&
			s.Temperature.In("degC") > hotClosed) {
			return s.Number
		}
	}
	return 0
}

// hotClosed is the temperature in degC above which vapour counts in a closed
// container beside its gas.
const hotClosed = 60

// potential is gas that can still come in a place, and the place as it then is.
type potential struct {
	gas   []working.Num
	state *process.State
	burns bool // as far as it is known
}

func (r *reader) potentials(key string) []potential {
	var out []potential
	for i := range r.k.Etches {
		if e := &r.k.Etches[i]; e.Place == key && e.Family != process.Molten {
			if s := r.after(e.Step, key); s != nil {
				out = append(out, potential{append(r.etchGas(e), r.formed(e.Step, key)...), s, true})
			}
		}
	}
	for _, g := range r.k.Releases {
		if g.Place == key && (g.Cause == "carbonate" || g.Cause == process.NotHeld) {
			if s := r.after(g.Step, key); s != nil {
				out = append(out, potential{[]working.Num{g.N}, s, g.Cause != "carbonate"})
			}
		}
	}
	out = r.poisons(out, key)
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		out = r.left(out, &d.After, key)
		if d.Full != nil {
			out = r.left(out, d.Full, key)
		}
	}
	for i := range r.k.Ends {
		out = r.left(out, &r.k.Ends[i], key)
	}
	if n, s := r.k.MostOxygen(r.w, key); s != nil { // which comes beside whatever else does
		for i := range out {
			out[i].gas = append(out[i].gas, n)
		}
		out = append(out, potential{[]working.Num{n.Worse(working.Bound)}, s, false})
	}
	return out
}

// after is a place as a step left it, or as it spun where that step parts liquid in it.
func (r *reader) after(step int, key string) *process.State {
	for i := range r.k.Steps {
		switch d := &r.k.Steps[i]; {
		case d.Number != step || d.After.Place != key:
		case d.Full != nil:
			return d.Full
		default:
			return &d.After
		}
	}
	return r.last(key)
}

// last is a place as the route leaves it.
func (r *reader) last(key string) *process.State {
	i := slices.IndexFunc(r.k.Ends, func(e process.State) bool { return e.Place == key })
	if i < 0 {
		return nil
	}
	return &r.k.Ends[i]
}

// unfollowed is what has to be known to say what gas comes off in a place, beside what is
// counted; nothing where all of it is. Where it may be the wall that gives some, what is
// counted is enough to say that a container without a rating may not be shut.
func (r *reader) unfollowed(p *route.Place, counted working.Num) []working.Missing {
	enough := counted.V > 0 && !(p.Rating.Set && p.Relief.Set)
	var out []working.Missing
	for i := range r.k.Unfollowed {
		if u := &r.k.Unfollowed[i]; u.Place == p.Key && !(u.Wall && enough) {
			out = append(out, u.Lacks)
		}
	}
	return out
}

// etchGas is all the gas of an etch: hydrogen of the phase and the impurities,
// methane of a carbide and the oxygen a current makes.
func (r *reader) etchGas(e *process.Etch) []working.Num {
	out := foreign(e)
	if !e.Hydrogen.None() {
		out = append(out, e.Hydrogen)
	}
	for _, g := range r.k.Releases {
		if g.Step == e.Step && g.Place == e.Place && (g.Gas == "CH4" || g.Gas == "O2") {
			out = append(out, g.N)
		}
	}
	return out
}

// left adds the gas of powder that the etch left, where a place holds some
// with liquid.
func (r *reader) left(out []potential, s *process.State, key string) []potential {
	if s.Place != key || len(s.Liquid) == 0 {
		return out
	}
	for _, n := range process.Left(r.w, r.k, s) {
		out = append(out, potential{[]working.Num{n}, s, true})
	}
	return out
}

// pressure is that of n mol in the gas space, above the air it was filled with:
//
//	gas space = capacity - liquid - powder     [mL]
//	p = n R T / gas space                      [kPa: mol, J/mol/K, K, L]
//
// Of a container of waste gas, liquid and powder are those of all its batches.
func (r *reader) pressure(p *route.Place, s *process.State, n working.Num) working.Num {
	if unsaid := s.Unsaid(); unsaid != nil {
		return working.Absent("p", "kPa gauge", unsaid...)
	}
	st, room := r.c.Store, process.RoomIn(r.c, r.w, r.k, p, s)
	space := room.Space
	if N := r.pressing(p); N.Unknown() || N.V > 1 {
		cap, l, m, one := room.Capacity, room.Liquid, room.Solid, n.As("n_1")
		n = r.w.Line("n", "mol", "N*n_1", N.V*one.V, N, one)
		space = r.w.Line("V_g", "mL", "cap-N*(V_l+V_s)", cap.V-N.V*(l.V+m.V), cap, N, l, m)
	}
	if w, ok := r.spaces[p.Key]; !ok || space.Unknown() || space.V < w.V {
		r.spaces[p.Key] = space
	}
	if space.V <= 0 {
		return working.Absent("p", "kPa gauge", working.Lacks("no_gas_space", p.Key))
	}
	R, T := st.Num("constant.R").As("R"), st.Num("gas.temperature").As("T")
	return r.w.Line("p", "kPa gauge", "n*R*T/V_g*1000", n.V*R.V*T.V/space.V*1000, n, R, T, space)
}
