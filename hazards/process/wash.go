package process

import (
	"math"
	"slices"
	"strconv"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// Wash is one washing step by dilution.
type Wash struct {
	Step      int
	Place     string
	Into      string
	Acid      working.Num // mol/L of acid equivalents in the liquid the first cycle meets
	Fluoride  working.Num // mol/L of fluorine in it
	Retained  working.Num // mL that stays with the solid
	Added     working.Num // mL a cycle adds
	Kept      working.Num // retained / (retained + added)
	Needed    working.Num // cycles to the target; unknown if dilution cannot get there
	Written   int         // cycles the route states, 0 if it leaves them open
	Done      working.Num // cycles walked
	PH        working.Num // after the cycles walked
	Target    float64     // NaN if the route has none
	Aims      bool        // the verb can be told of one
	OpenAir   bool
	Decant0   working.Num // mL of etch liquor decanted first
	Fluorine  working.Num // mol of fluorine in all decants of the step
	WaterOnly bool
	Unheld    bool // a substance that is not held washes
	Liquor    Pool // the liquid the first decant meets
	Liquid    Pool // of one cycle
	Swells    bool // the solid holds more liquid once it is washed
}

// CyclesOpen is the kind of what is missing where a wash says how far it goes and not how often.
const CyclesOpen = "cycles_to_ph"

// maxCycles is where a search for enough cycles gives up.
const maxCycles = 200

// wash decants what the solid does not hold (cycle 0), then adds and decants
// the liquid of one cycle as often as the route says, or the target needs.
func (k *walker) wash(p *State, s *route.Step, d *Done) {
	if s.Verb().Does == route.Prewashes {
		k.prewash(p, s, d)
		return
	}
	before := k.poolsAt(s.Into)
	cycle := &State{Place: p.Place}
	only := Done{}
	k.put(cycle, &route.Step{Number: s.Number, Do: s.Do, In: s.In, What: s.What, At: s.At}, &only)
	c := k.merged(cycle)
	x := Wash{Step: s.Number, Place: p.Place, Into: s.Into, Added: c.Volume.As("W"), Written: s.Cycles,
		Target: math.NaN(), Aims: s.Verb().Aims, OpenAir: s.Water != "co2_free"}
	if s.TargetPH != nil {
		x.Target = *s.TargetPH
	}
	x.WaterOnly = len(c.Entries) == 1 && c.Entries[0].Sub != nil && c.Entries[0].Sub.Solution == "water"
	q := k.merged(p)
	x.Retained = k.retained(p, s, q.Volume, c.Volume)
	x.Liquor, x.Liquid, x.Swells = *q, *c, !s.Retained.Set && len(p.Solids) > 0
	x.Liquor.Entries, x.Liquid.Entries = slices.Clone(q.Entries), slices.Clone(c.Entries)
	k.concentrations(q, &x)
	R, V, W := x.Retained.As("R"), q.Volume.As("V"), x.Added
	x.Decant0 = k.w.Line("V_0", "mL", "max(V-R,0)", max(V.V-R.V, 0), V, R)
	filled := k.w.Line("V", "mL", "R+W", R.V+W.V, R, W)
	d.Full = k.fuller(p, q, c, R, filled)
	d.Parted = k.firstDecant(s, func() { k.decant(p, s, x.Retained) })
	if at := k.c.Route.Place(p.Place); at != nil {
		k.filled(at, p, filled, s)
	}
	x.Kept = k.w.Line("f", "1", "R/(R+W)", R.V/(R.V+W.V), R, W)
	k.count(&x, x.Swells)
	if u := c.Stranger(); u != nil {
		x.Unheld, x.PH = true, working.Absent("pH", "1", u.Lacks())
	}
	x.without(solvent(c))
	if len(p.Solids) == 0 && !s.Retained.Set {
		left := working.Lacks("liquid_that_stays", p.Place).In(s.Number)
		x.Needed, x.PH = working.Absent("N", "1", left), working.Absent("pH", "1", left)
	}
	if air := k.st.Num("ph.water_in_air"); x.OpenAir && x.WaterOnly && x.Target > air.V {
		k.warn(phrase.Of("warn.step_water_that_has", s.Number, air.V, x.Target))
	}
	k.rinsed(p, s, *c, d)
	k.cycled(p, c, only.Mixed, &x, d)
	k.rinse(p, s, &x, *c)
	if !x.WaterOnly { // an acid, alkaline or carbonate liquid acts on what is there
		k.carbonate(p, s)
		k.react(p, s, reaction{})
	}
	x.Fluorine = k.gained(s.Into, before)
	if x.Done.Unknown() {
		x.Fluorine = working.Absent("n_F", "mol", x.Done.Missing()...)
	}
	k.out.Washes = append(k.out.Washes, x)
	p.Etches = nil
}

// cycled notes what the first cycle of a wash mixes with the liquor that stayed, which is the
// most any cycle does: where acid, base or a salt comes with it, the liquor is an acid that
// gives much heat with water, or what is there lies dry.
func (k *walker) cycled(p *State, c *Pool, came *Mixing, x *Wash, d *Done) {
	dense := slices.ContainsFunc(x.Liquor.Entries, func(e Entry) bool {
		return e.Sub != nil && (e.Sub.Is("dense_acid") || e.Sub.NotHeld) // it may be one
	})
	strong := slices.ContainsFunc(c.Entries, func(e Entry) bool { return e.Acid != 0 })
	if came == nil || len(p.Liquid) == 0 || !(dense || strong || len(came.Salts) > 0 || !p.wet()) {
		return
	}
	there, all := p.copy(), p.copy()
	all.Liquid = append(all.Liquid, *c)
	all.Liquid[len(all.Liquid)-1].Entries = slices.Clone(c.Entries)
	a := k.merged(&there)
	acid0, base0 := sides(a)
	q := k.merged(&all)
	salts := slices.Clone(came.Salts)
	if !a.Wet() { // what was dry, a melt that has set too, dissolves in the first cycle
		for i := range a.Entries {
			if e := &a.Entries[i]; !e.Dry && e.Sub != nil && e.Sub.State == "s" {
				salts = append(salts, *e)
			}
		}
	}
	mix := &Mixing{Fed: true, Before: append(k.portions(a), came.Before...), After: k.portions(q), Salts: salts,
		AcidBefore: Total(k.w, q, "n_acid", func(e *Entry) float64 { return max(e.Acid, 0) })}
	mix.Diluted = len(mix.After) > 0
	k.wetted(q, mix)
	mix.Met = met(q, acid0, base0)
	if !sameLiquids(a, c) {
		mix.Strange, mix.StrangeMol = strange(q)
	}
	mix.There = &all
	d.Mixed = mix
}

// firstDecant is what the first decant of a wash mixes with what stands where it goes: the liquor
// itself, before any washing thinned it. Later decants give less, and what acid and base do is told
// of all of them; nil where neither is strong acid, or nothing stands there.
func (k *walker) firstDecant(s *route.Step, decant func()) *Mixing {
	to := k.places[s.Into]
	if to == nil || len(to.Liquid) == 0 || !to.wet() {
		decant()
		return nil
	}
	there := to.copy()
	decant()
	all := to.copy()
	come := State{Place: to.Place, Liquid: all.Liquid[len(there.Liquid):]}
	if come.Volume(nil).V == 0 || !strongAcid(&there) && !strongAcid(&come) {
		return nil
	}
	all.Liquid = slices.Clone(all.Liquid)
	a, b, q := k.merged(&there), k.merged(&come), k.merged(&all)
	mix := k.poured(a, b, q, s)
	mix.There = &all
	return mix
}

// strongAcid reports whether a liquor of a place gives heat with water that counts: more than a
// mole of acid in a litre, or nobody knows.
func strongAcid(s *State) bool {
	acid, volume := 0.0, 0.0
	for i := range s.Liquid {
		q := &s.Liquid[i]
		volume += q.Volume.V * q.Kept()
		for j := range q.Entries {
			acid += max(q.Entries[j].Acid*q.Entries[j].N.V, 0) * q.Kept()
		}
	}
	return !(acid*1000 <= volume) // mol, mL
}

// without takes pH and cycles from a wash with a solvent: acid in it has no pH, and dilution
// with it none to reach.
func (x *Wash) without(v *chemicals.Substance) {
	if v == nil {
		return
	}
	none := working.Lacks("solvent_ph", v.Name).In(x.Step)
	x.Unheld, x.Needed, x.PH = true, working.Absent("N", "1", none), working.Absent("pH", "1", none)
	if x.Written == 0 {
		x.Done = working.Absent("N", "1", none)
	}
}

// solvent is a substance of a washing liquid that is no water; nil where there is none.
func solvent(q *Pool) *chemicals.Substance {
	for i := range q.Entries {
		if s := q.Entries[i].Sub; s != nil && s.Kind == "solvent" {
			return s
		}
	}
	return nil
}

// prewash puts in, lets it react and parts once.
func (k *walker) prewash(p *State, s *route.Step, d *Done) {
	k.put(p, s, d)
	if d.Mixed != nil {
		there := p.copy()
		d.Mixed.There = &there
	}
	begins := p.copy()
	d.First = &begins
	k.react(p, s, reaction{})
	first, full := k.merged(p), p.copy()
	d.Full = &full
	k.decant(p, s, k.retained(p, s, first.Volume, working.Num{}))
	p.Etches = nil
}

// fuller is a place filled for a cycle of washing, or as it was with the liquor q where
// that is more.
func (k *walker) fuller(p *State, q, cycle *Pool, retained, filled working.Num) *State {
	s := p.copy()
	if q.Volume.V >= filled.V {
		return &s
	}
	V, R := q.Volume.As("V"), retained.As("R")
	stay := k.w.Line("f", "1", "min(R/max(V,1e-30),1)", min(R.V/max(V.V, 1e-30), 1), R, V)
	both := func(x, y working.Num) working.Num {
		a, b := x.As("a"), y.As("b")
		return k.w.Line(x.Symbol, x.Unit, "f*a+b", stay.V*a.V+b.V, stay, a, b)
	}
	s.Liquid = []Pool{{Volume: filled, Salts: cycle.Salts, Mass: both(q.Mass, cycle.Mass),
		HeatCapacity: both(q.HeatCapacity, cycle.HeatCapacity),
		Uncounted:    q.Uncounted.times(stay.V).and(cycle.Uncounted), Share: one, Whole: true, More: q.More}}
	return &s
}

// concentrations are those of the liquid before the first cycle, as acid
// equivalents with dissolved metal still counted as acid: metals are ignored
// in the pH, and said to be.
func (k *walker) concentrations(q *Pool, x *Wash) {
	v := q.Volume.As("V")
	if v.V == 0 { // dry: what the solid holds dissolves in the liquid that stays with it
		v = x.Retained.As("V")
	}
	per := func(symbol string, n working.Num) working.Num {
		y := n.As("n")
		return k.w.Line(symbol, "mol/L", "n/V*1000", y.V/v.V*1000, y, v)
	}
	x.Acid = per("c_acid", Total(k.w, q, "n_acid", (*Entry).Free))
	x.Fluoride = per("c_F", Element(k.w, q, "F"))
}

// count finds the cycles the target needs and the pH after those walked.
func (k *walker) count(x *Wash, swells bool) {
	pk, pw := k.st.Num("pka.hf"), k.st.Num("pkw")
	air := k.st.Num("ph.water_in_air")
	loose := k.st.Num("wash.retained.swollen").V / k.st.Num("wash.retained.acid").V
	c := acidity{acid: x.Acid.V, fluoride: x.Fluoride.V, ka: math.Pow(10, -pk.V), kw: math.Pow(10, -pw.V)}
	run := func(n int, until float64) (int, float64) { // cycles until the target, or n; what is left of the first liquid
		left := 1.0
		for i := 0; ; i++ {
			if i == n || c.times(left).reaches(until) {
				return i, left
			}
			r := x.Retained.V
			if swells && c.times(left).reaches(4) {
				r *= loose
			}
			left *= r / (r + x.Added.V)
		}
	}
	in := []working.Num{x.Acid, x.Fluoride, x.Kept, pk, pw}
	if x.OpenAir {
		in = append(in, air)
	}
	if swells {
		in = append(in, k.st.Num("wash.retained.swollen"))
	}
	known, need := slices.Clip(in), math.NaN() // what the pH after the written cycles rests on, target or not
	if all := c.acid + c.fluoride + c.ka + c.kw + x.Kept.V; x.Target == x.Target && x.WaterOnly && all == all &&
		(!x.OpenAir || x.Target <= air.V) {
		if n, left := run(maxCycles, x.Target); c.times(left).reaches(x.Target) {
			need = float64(n)
		}
	}
	switch {
	case need == need:
	case x.Target != x.Target && x.Written == 0:
		k.fact("wash_open", x.Step, phrase.Of("fact.wash_open", phrase.Step(x.Step)))
		in = append(in, working.Absent("N", "1", working.Lacks(working.NotGiven, route.At(x.Step, "cycles"))))
	case x.Target == x.Target:
		in = append(in, working.Absent("N", "1", working.Lacks(CyclesOpen,
			strconv.FormatFloat(x.Target, 'g', -1, 64)).In(x.Step)))
	}
	x.Needed = k.w.Model("N", "1", "dilution, cycle by cycle, until the pH of the retained liquid reaches the target",
		need, in...)
	switch {
	case x.Written > 0:
		x.Done = working.Given("N", "1", float64(x.Written), route.At(x.Step, "cycles"))
	default:
		x.Done = x.Needed.As("N")
	}
	ph := math.NaN()
	if n := x.Done.V; n == n && x.WaterOnly {
		_, left := run(int(n), math.Inf(1))
		ph = PH(x.Acid.V*left, x.Fluoride.V*left, pk.V, pw.V)
		if x.OpenAir {
			ph = min(ph, air.V)
		}
	}
	x.PH = k.w.Model("pH", "1", "charge balance of strong acid, HF and water after the last cycle", ph,
		append(known, x.Done)...)
}

// acidity is a liquor as its pH sees it: mol/L of acid equivalents, of which
// fluoride mol/L are HF and F-, the rest strong acid or, where negative, alkali.
type acidity struct {
	acid, fluoride, ka, kw float64
	weak                   []Weak
}

// Weak is an acid, or its salt, that keeps protons by the pH: mol/L of it, whose acid equivalents
// count as those of strong acid, and its pKa, the strongest first.
type Weak struct {
	Amount float64
	PKa    []float64
}

// keeps is how many protons a mol of it keeps at h mol/L of H+.
func (x Weak) keeps(h float64) float64 {
	term, all, kept := 1.0, 1.0, 0.0
	for i := range x.PKa {
		term *= h * math.Pow(10, x.PKa[len(x.PKa)-1-i])
		all, kept = all+term, kept+float64(i+1)*term
	}
	return kept / all
}

func (a acidity) times(x float64) acidity {
	a.acid, a.fluoride = a.acid*x, a.fluoride*x
	return a
}

// excess is the charge balance at h mol/L of H+; it grows with h and is zero
// at the h of the liquor:
//
//	h + (fluoride - acid) + what weak acids keep = fluoride Ka/(Ka + h) + Kw/h
func (a acidity) excess(h float64) float64 {
	x := h + (a.fluoride - a.acid) - a.fluoride*a.ka/(a.ka+h) - a.kw/h
	for _, w := range a.weak {
		x += w.Amount * w.keeps(h)
	}
	return x
}

// reaches reports whether the pH of the liquor is ph or more.
func (a acidity) reaches(ph float64) bool { return a.excess(math.Pow(10, -ph)) >= 0 }

// PH is that of a liquor with acid mol/L of acid equivalents and fluoride
// mol/L of fluorine, and of weak acids, as an ideal solution: activities are left out, so below
// pH 0.5 and above 0.1 mol/L it is a rough figure. NaN if an input is.
func PH(acid, fluoride, pka, pkw float64, weak ...Weak) float64 {
	a := acidity{acid: acid, fluoride: fluoride, ka: math.Pow(10, -pka), kw: math.Pow(10, -pkw), weak: weak}
	if x := a.excess(1); x != x {
		return math.NaN()
	}
	lo, hi := -2.0, 16.0
	for hi-lo > 1e-9 {
		if mid := (lo + hi) / 2; a.reaches(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// rinse does the walked cycles at once: f^n of the old liquid stays, and of the
// liquid of n cycles just what fills the retained volume.
func (k *walker) rinse(p *State, s *route.Step, x *Wash, cycle Pool) {
	old := p.Liquid[0]
	f, n := x.Kept.As("f"), x.Done.As("N")
	if n.Unknown() || n.V == 0 { // no cycle, or nobody knows how many: nothing is rinsed away
		if n.Unknown() && !x.WaterOnly { // it reacts, at least once
			p.Liquid = append(p.Liquid, cycle)
			kept := k.merged(p)
			kept.More = append(slices.Clone(kept.More), n.Missing()...)
			k.out.Open = append(k.out.Open, n.Missing()...)
		} else {
			for _, e := range cycle.Entries {
				k.account(e.Of, -e.N.V)
			}
		}
		if n.Unknown() {
			kept := k.merged(p)
			kept.doubt()
			kept.Volume = kept.Volume.Worse(working.Bound)
			if to := k.places[s.Into]; to != nil { // the solid keeps all of it, and what received it may hold all of it too
				q := k.merged(to)
				q.More = append(slices.Clone(q.More), n.Missing()...)
				k.often[s.Into] = append(k.often[s.Into], n.Missing()...)
			}
		}
		return
	}
	left := k.w.Line("l", "1", "pow(f,N)", math.Pow(f.V, n.V), f, n)
	gone := k.w.Line("g", "1", "1-l", 1-left.V, left)
	share := old.Share.As("s")
	stay := k.w.Line("f", "1", "s*l", share.V*left.V, share, left)
	away := k.w.Line("f", "1", "s*g", share.V*gone.V, share, gone)
	a, b := old, old
	a.Share, a.Whole, b.Share, b.Whole = stay, false, away, false
	a.Drained, b.Drained = true, false

	total := k.times(cycle, n)
	R, W := x.Retained.As("R"), x.Added.As("W")
	keep := k.w.Line("f", "1", "min(R*g/(N*W),1)", min(R.V*gone.V/(n.V*W.V), 1), R, gone, n, W)
	if R.V == 0 {
		keep = working.Exact("f", "1", 0, "nothing is retained")
	}
	leave := k.w.Line("f", "1", "1-k", 1-keep.V, keep.As("k"))
	c, d := total, total
	c.Share, c.Whole, d.Share, d.Whole = keep, false, leave, false
	c.Drained = true
	p.Liquid = []Pool{a, c}
	k.send(s.Into, b)
	k.send(s.Into, d)
}

// times is the pool of n equal cycles; the one cycle already in the account is
// topped up to n.
func (k *walker) times(q Pool, n working.Num) Pool {
	N := n.As("N")
	scale := func(x working.Num) working.Num {
		y := x.As("x")
		return k.w.Line(x.Symbol, x.Unit, "N*x", N.V*y.V, N, y)
	}
	entries := make([]Entry, len(q.Entries))
	for i, e := range q.Entries {
		k.account(e.Of, e.N.V*(N.V-1))
		e.N = scale(e.N)
		entries[i] = e
	}
	q.Entries = entries
	q.Volume, q.Mass, q.HeatCapacity = scale(q.Volume), scale(q.Mass), scale(q.HeatCapacity)
	if !q.Salts.None() {
		q.Salts = scale(q.Salts)
	}
	q.Uncounted = q.Uncounted.times(N.V)
	return q
}

func (k *walker) poolsAt(place string) int {
	if to, ok := k.places[place]; ok {
		return len(to.Liquid)
	}
	return 0
}

// gained is the fluorine of what a place received since it had n pools.
func (k *walker) gained(place string, n int) working.Num {
	to, ok := k.places[place]
	if !ok {
		return working.Absent("n_F", "mol", working.Lacks("decants", ""))
	}
	var terms []working.Num
	for i := n; i < len(to.Liquid); i++ {
		terms = append(terms, Element(k.w, &to.Liquid[i], "F"))
	}
	return k.w.Sum("n_F", "mol", terms...)
}
