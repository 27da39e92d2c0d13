package air

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Read gives the figures of the air over every step that holds a volatile acid
// or ammonia, of the largest spill, and of the oxygen in the room.
func Read(c route.Case, w *working.Sheet, k process.Walk, runs []vessel.Run, courses []course.Course) []figure.Figure {
	return ReadAt(c, w, k, runs, courses, figure.Everywhere)
}

// ReadAt is Read as far as some places: those of others may be left out.
func ReadAt(c route.Case, w *working.Sheet, k process.Walk, runs []vessel.Run, courses []course.Course,
	asked figure.Asked) []figure.Figure {
	room := usualFigures
	if !asked.Has(figure.Place{}) {
		room = usualAtSteps
	}
	r := reader{out: make([]figure.Figure, 0, room), c: c, w: w, k: &k, courses: courses,
		vm: process.MolarVolume(c.Store, w), parts: map[int][]working.Num{}, limits: map[string]strict{},
		escapes: map[string]*limit.Exposure{}, masses: map[string]working.Num{}, until: map[float64]phrase.Phrase{},
		brief: map[vapourIn]working.Num{}, breathed: map[vapourIn]working.Num{},
		emitted: map[vapourIn]working.Num{}, drops: map[vapourIn]droplets{}, found: map[mixture][]vapour{}}
	if !asked.Has(figure.Place{}) { // what is no step stands on all of them
		r.asked = asked
	}
	r.steps(runs)
	if r.asked != figure.Everywhere {
		return r.out
	}
	r.averages()
	r.spill()
	r.delivery()
	r.scrubbers()
	r.stack()
	r.gases()
	return r.out
}

// steps reports the air of the steps that are asked for.
func (r *reader) steps(runs []vessel.Run) {
	for i := range r.k.Steps {
		if d := &r.k.Steps[i]; r.asks(d.Number) {
			r.step(d)
		}
	}
	for i := range runs {
		if p := &runs[i].Plan; p.Law == vessel.Accumulated && r.asks(p.Step) {
			r.warm(&runs[i])
		}
	}
	r.evolved()
	r.fire()
	r.mist()
	r.cold()
	for i := range r.k.Steps {
		r.additive(r.k.Steps[i].Number)
	}
}

// asks reports whether the air of a step is asked for.
func (r *reader) asks(step int) bool { return r.asked.Has(figure.Step(step)) }

// usualFigures is room for those of a usual route, and usualAtSteps for those of some of
// its steps.
const usualFigures, usualAtSteps = 192, 48

type reader struct {
	c       route.Case
	w       *working.Sheet
	k       *process.Walk
	courses []course.Course
	asked   figure.Asked
	vm      working.Num
	worst   map[string]spilt      // by agent
	parts   map[int][]working.Num // of their limits, by step
	out     []figure.Figure

	limits   map[string]strict          // the strictest short one, by agent
	escapes  map[string]*limit.Exposure // immediately dangerous, by agent
	masses   map[string]working.Num     // molar, by formula
	until    map[float64]phrase.Phrase  // conditions of a time, by the concentration it lasts to
	brief    map[vapourIn]working.Num   // of what leaves within the time of a pour, the share that goes on after it
	breathed map[vapourIn]working.Num   // near the source, ppm
	emitted  map[vapourIn]working.Num   // mg/min
	drops    map[vapourIn]droplets      // mist
	found    map[mixture][]vapour       // where no sheet is kept
	formed   []agent                    // the poisonous gases and the solvents of the steps
	light    []*chemicals.Substance     // liquids of which nothing says how heavy a vapour is
	chill    []working.Num              // gas of what is poured to cool, L
	surfaces map[lying]surface          // where no sheet is kept
	etched   map[int]working.Num        // mol/s of gas, by step, where no sheet is kept

	flow, volume working.Num // exchange of the room and its air, once they were asked for
}

// molar is the molar mass of a formula, worked out once.
func (r *reader) molar(formula string) working.Num {
	m, there := r.masses[formula]
	if !there {
		m = process.MolarMass(r.c.Store, r.w, formula)
		r.masses[formula] = m
	}
	return m
}

// quiet is a reader for values that are tried and not shown.
func (r *reader) quiet() *reader {
	if r.w == nil {
		return r
	}
	q := *r
	q.w, q.masses = nil, map[string]working.Num{}
	return &q
}

func (r *reader) put(quantity string, place figure.Place, agent string, kase figure.Case, v working.Num,
	conditions phrase.Phrase) {
	id := figure.ID{Quantity: quantity, Place: place, Agent: agent, Case: kase}
	r.out = append(r.out, figure.Figure{ID: id, Value: r.w.Keep(v), Conditions: conditions})
}

// agent is a vapour that people breathe.
type agent struct {
	slug     string
	formula  string
	element  string               // without which no liquor gives it off
	solution string               // the model of the solution it stands over
	moves    datum.ID             // row of its diffusivity
	acid     bool                 // it acts where the other acids do
	burns    *chemicals.Substance // the liquid whose vapour it is, if that can burn
}

var agents = [...]agent{hf: {"hf", "HF", "F", "hf", "air.diffusivity.hf", true, nil},
	hcl:     {"hcl", "HCl", "Cl", "hcl", "air.diffusivity.hcl", true, nil},
	ammonia: {"ammonia", "NH3", "N", "nh3", "air.diffusivity.nh3", false, nil}}

// The positions of the agents.
const (
	hf = iota
	hcl
	ammonia
)

// vapour is one over a liquor.
type vapour struct {
	agent
	pressure working.Num // kPa
	total    working.Num // kPa of all vapours
	holds    string      // key of what the pressure holds for
}

// liquor is one that a step leaves or finds or pours to, with a vapour over it.
type liquor struct {
	over  *vapour
	in    *process.State
	place *route.Place
	hot   working.Num // degC
	is    moment
	open  bool // the step opens it
}

// moment tells the liquors of a step apart.
type moment uint8

const (
	left   moment = iota // stands there after the step
	before               // stood there before it
	filled               // where it is poured to
	moments
)

// step reports the air of one step: what is over its liquor, what leaves it, and
// what reaches a person. A step that opens a vessel opens what stood there before, and
// one that pours opens what it pours to.
func (r *reader) step(d *process.Done) {
	p := r.place(d.Place)
	s := d.Contents()
	if p == nil {
		return
	}
	verb := r.c.Route.Steps[d.Number-1].Verb()
	var all []liquor
	see := func(in *process.State, at *route.Place, hot working.Num, is moment, open bool) {
		if at == nil || len(in.Liquid) == 0 {
			return
		}
		over := slices.Concat(r.vapours(in, hot.As("T")), r.solvents(in, d.Number, hot.As("T")))
		for i := range over {
			all = append(all, liquor{&over[i], in, at, hot, is, open})
		}
	}
	see(s, p, d.Hot, left, verb.Opens)
	if verb.Opens && !(s == &d.Before && hotter(d.Hot, s.Set).V == d.Hot.V) { // else it is the same
		see(&d.Before, p, hotter(d.Hot, d.Before.Set), before, true)
	}
	if q := d.Quenched; q != nil { // what is poured, as strong and as warm as it was
		see(&q.From, r.place(q.From.Place), hotter(d.Hot, q.From.Set), before, true)
	}
	if b := d.Behind; b != nil {
		see(b.Contents(), r.place(b.Place), b.Hot, left, verb.Opens)
	}
	if d.Filled != nil {
		see(d.Filled, r.place(d.Filled.Place), hotter(d.Hot, d.Filled.Set), filled, true)
	}
	for _, slug := range inOrder(all) {
		var of []liquor
		for i := range all {
			if all[i].over.slug == slug {
				of = append(of, all[i])
			}
		}
		if first := &of[0]; first.is == left || d.Filled != nil && first.in == d.Filled {
			x, atm := first.over.pressure.As("p"), r.c.Store.Num("gas.pressure").As("P")
			r.put("air.saturated", figure.Step(d.Number), slug, figure.Case{},
				r.w.Line("x", "ppm", "p/P*1e6", x.V/atm.V*1e6, x, atm), phrase.Of(first.over.holds))
		}
		r.leaving(d, of)
		if of[0].over.burns != nil {
			r.formed = append(r.formed, of[0].over.agent)
		}
		for i := range of {
			if of[i].is == left || of[i].in == d.Filled {
				r.keep(d, of[i].in, of[i].over)
			}
		}
	}
}

// inOrder are the agents of some liquors, each once: those that water gives off first.
func inOrder(all []liquor) []string {
	var out []string
	for _, a := range agents {
		if slices.ContainsFunc(all, func(l liquor) bool { return l.over.slug == a.slug }) {
			out = append(out, a.slug)
		}
	}
	for i := range all {
		if slug := all[i].over.slug; !slices.Contains(out, slug) {
			out = append(out, slug)
		}
	}
	return out
}

// hotter is the higher of two temperatures, the first where the other is nowhere
// stated. What comes at a temperature nobody stated can be hotter than what is there.
func hotter(t, other working.Num) working.Num {
	if t.Unknown() || other.None() || other.Unknown() || other.V <= t.V {
		return t
	}
	return other
}

func (r *reader) place(key string) *route.Place {
	for i := range r.c.Route.Places {
		if p := &r.c.Route.Places[i]; p.Key == key {
			return p
		}
	}
	return nil
}

// vapours are those over a liquor at a temperature in degC. What base has
// neutralised gives ammonia, if it can, and no acid.
func (r *reader) vapours(s *process.State, t working.Num) []vapour {
	l := process.AcidsIn(r.w, s)
	if more := s.Unsaid(); more != nil {
		return r.unsaid(&l, more)
	}
	if r.w != nil { // every line is wanted
		return r.stands(&l, t)
	}
	k := mixture{l.HF.V, l.HCl.V, l.Water.V, l.Salt.V, l.Bifluoride.V, l.Fluoride.V, l.Ammonia.V, t.V, l.Other, l.Neutral,
		l.Unsure, l.Salted, l.Fluorine, l.Chloride, !l.Ammonia.None()}
	out, there := r.found[k]
	if !there {
		out = r.stands(&l, t)
		r.found[k] = out
	}
	return out
}

// mixture is what the vapours over a liquor depend on. A number that is not known is
// like no other.
type mixture struct {
	hf, hcl, water, salt, half, fluoride, ammonia, celsius float64
	other                                                  string
	neutral, unsure, salted, fluorine, chloride, ammoniac  bool
}

// stands are the vapours over what a liquor holds.
func (r *reader) stands(l *process.Acids, t working.Num) []vapour {
	var out []vapour
	add := func(a agent, p working.Num, holds string) {
		out = append(out, vapour{agent: a, pressure: p, holds: holds})
	}
	if !l.Ammonia.None() {
		p, holds := r.ammonia(l, t)
		add(agents[ammonia], p, holds)
	}
	if l.Fluorine && !l.Neutral {
		p, holds := r.hf(l, t)
		add(agents[hf], p, holds)
	}
	if l.Chloride && !l.Neutral {
		p, holds := r.hcl(l, t)
		add(agents[hcl], p, holds)
	}
	if out == nil {
		return nil
	}
	water := solution.Saturation(t.V + kelvin)
	total := r.w.Model("p_w", "kPa", "saturation pressure of water", water, t)
	terms := []working.Num{total}
	for i := range out {
		terms = append(terms, out[i].pressure)
	}
	sum := r.w.Sum("p_t", "kPa", terms...)
	for i := range out {
		out[i].total = sum
	}
	return out
}

const kelvin = 273.15

// unsaid are the vapours of a place that received nobody knows what.
func (r *reader) unsaid(l *process.Acids, more []working.Missing) []vapour {
	var out []vapour
	for i, there := range [...]bool{l.Fluorine, l.Chloride, l.Ammoniac} {
		if there {
			p := working.Absent("p", "kPa", more...)
			out = append(out, vapour{agent: agents[i], pressure: p, total: p, holds: "air.received_unknown"})
		}
	}
	return out
}

// hf is the pressure of HF over a liquor, as it was charged, and the key of what it
// holds for:
//
//	hydrofluoric acid alone        its table
//	with hydrochloric acid         the dilute law, salted out
//	a fluoride salt without it     all fluoride as hydrofluoric acid: a bound
func (r *reader) hf(l *process.Acids, t working.Num) (working.Num, string) {
	st := r.c.Store
	if l.Other != "" {
		return working.Absent("p", "kPa", working.Lacks("hf_over", l.Other)),
			"air.no_vapour_data"
	}
	if l.Chloride {
		m := r.molal(l.Fluoride, l.Water)
		if l.Salted { // as far as the acid turns the salt into HF
			f := r.w.Line("n_HF", "mol", "min(n_F,n_HF+n_HCl)", min(l.Fluoride.V, l.HF.V+l.HCl.V), l.Fluoride, l.HF, l.HCl)
			m = r.molal(f, l.Water)
		}
		return solution.OverStrongAcid(st, r.w, m, r.strength("HCl", l.HCl, l.Water), t), "air.hf_over_hydrochloric"
	}
	w := r.strength("HF", l.Fluoride, l.Water)
	if !l.Bifluoride.None() && l.HF.V == 0 && !l.Salted {
		return r.halfFree(l, t), "air.hf_of_bifluoride"
	}
	if l.Salted || !l.Bifluoride.None() {
		return solution.Vapour(st, r.w, "hf", w, t).Worse(working.Bound), "air.hf_of_salt"
	}
	return solution.Vapour(st, r.w, "hf", w, t), "air.as_charged"
}

// halfFree is the pressure of HF over a bifluoride in water, kPa: HF and F- of as
// much come of it, and most of them stay together,
//
//	x + K x^2 = m,  p = h (x + z (m - x)) exp(-b (1/T - 1/298.15 K))
func (r *reader) halfFree(l *process.Acids, t working.Num) working.Num {
	st := r.c.Store
	m, k, z := r.molal(l.Bifluoride, l.Water).As("m"), st.Num("vapour.bifluoride").As("K"),
		st.Num("vapour.bifluoride_share").As("z")
	x := r.w.Line("x", "mol/kg", "(sqrt(1+4*K*m)-1)/(2*K)", (math.Sqrt(1+4*k.V*m.V)-1)/(2*k.V), k, m)
	free := r.w.Line("m", "mol/kg", "x+z*(m-x)", x.V+z.V*(m.V-x.V), x, z, m)
	return solution.OverStrongAcid(st, r.w, free, working.Exact("w", "1", 0, "no strong acid salts it out"), t)
}

// hcl is the pressure of HCl over a liquor, as it was charged, and the key of what it
// holds for.
func (r *reader) hcl(l *process.Acids, t working.Num) (working.Num, string) {
	if l.Other != "" {
		return working.Absent("p", "kPa", working.Lacks("hcl_over", l.Other)),
			"air.no_vapour_data"
	}
	if !l.Bifluoride.None() {
		return r.overHCl(l.HCl, l.Fluoride, l.Water, t).Worse(working.Bound), "air.hcl_beside_bifluoride"
	}
	if !l.Salted && l.Fluorine {
		return r.overHCl(l.HCl, l.Fluoride, l.Water, t), "air.hcl_beside_hf"
	}
	if !l.Salted {
		return r.overHCl(l.HCl, l.HF, l.Water, t), "air.as_charged"
	}
	left := r.w.Line("n_f", "mol", "max(n_HCl-n_s,0)", max(l.HCl.V-l.Salt.V, 0), l.HCl, l.Salt)
	a, b := left.As("a"), l.HCl.As("b")
	ratio := r.w.Line("r", "1", "a/b", a.V/b.V, a, b)
	return solution.OverSalt(r.c.Store, r.w, r.overHCl(left, l.HF, l.Water, t), r.overHCl(l.HCl, l.HF, l.Water, t), ratio),
		"air.hcl_beside_salt"
}

// overHCl is the pressure of HCl over n mol of it in some water, with so much HF
// beside it.
func (r *reader) overHCl(n, hf, water, t working.Num) working.Num {
	alone := r.strength("HCl", n, water)
	if hf.V == 0 {
		return solution.Vapour(r.c.Store, r.w, "hcl", alone, t)
	}
	f, y := hf.As("n_f"), water.As("n_w")
	M, Mw := r.molar("HF").As("M"), r.molar("H2O").As("M_w")
	more := r.w.Line("n_w", "mol", "n_w+n_f*M/M_w", y.V+f.V*M.V/Mw.V, y, f, M, Mw)
	less := r.w.Line("n_w", "mol", "n_w*n_w/(n_w+n_f)", y.V*y.V/(y.V+f.V), y, f)
	return solution.BesideHF(r.c.Store, r.w, alone, r.strength("HCl", n, more), r.strength("HCl", n, less), t)
}

// ammonia is the pressure over a liquor of what base has set free: all ammonium as ammonia
// where it has made the liquor alkaline.
func (r *reader) ammonia(l *process.Acids, t working.Num) (working.Num, string) {
	holds := "air.all_ammonia"
	if !l.Neutral && !l.Unsure {
		holds = "air.some_ammonia"
	}
	return solution.Ammonia(r.c.Store, r.w, r.molal(l.Ammonia, l.Water), t), holds
}

// strength is the mass fraction of n mol of an acid in its water alone.
func (r *reader) strength(formula string, n, water working.Num) working.Num {
	M, Mw := r.molar(formula), r.molar("H2O").As("M_w")
	x, y := n.As("n"), water.As("n_w")
	return r.w.Line("w", "1", "n*M/(n*M+n_w*M_w)", x.V*M.V/(x.V*M.V+y.V*Mw.V), x, M, y, Mw)
}

// molal is n mol in some water, mol/kg.
func (r *reader) molal(n, water working.Num) working.Num {
	Mw := r.molar("H2O").As("M_w")
	x, y := n.As("n"), water.As("n_w")
	if y.V == 0 && !y.Unknown() {
		return working.Absent("m", "mol/kg", working.Lacks("vapour_of_dried", ""))
	}
	return r.w.Line("m", "mol/kg", "n/(n_w*M_w/1000)", x.V/(y.V*Mw.V/1000), x, y, Mw)
}
