package process

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/flammable"
	"etchbound/chemicals/working"
)

// Entry is an amount of something dissolved in, or taken out of, a liquor.
type Entry struct {
	Name string
	Of   *chemicals.Composition // mol of each element per mol
	Sub  *chemicals.Substance   // nil for what a reaction added or took
	N    working.Num            // mol; negative where a reaction took it
	Acid float64                // acid equivalents per mol, dissolved metal counted as a neutral salt
	Base float64                // base that takes it to neutral, metals down to their hydroxides and ammonium to ammonia

	Poured bool // it came as a liquid, and no model gives its heat of mixing
	Dry    bool // it came as a solid and has met no liquid since
}

// Free is the acid of an entry per mol with dissolved metal still counted as
// acid and ammonium not: what the pH of a wash sees.
func (e *Entry) Free() float64 {
	if e.Sub == nil {
		return e.Base
	}
	return e.Base - e.Sub.Ammonium
}

// Pool is the liquid of one place as it was mixed; Share of it is still there.
type Pool struct {
	Entries      []Entry
	Volume       working.Num // mL of liquid as charged; solids add none
	Salts        working.Num // mL of what came into it as a solid, in grains: it takes no more once it is dissolved
	Mass         working.Num // g, dissolved salt included
	HeatCapacity working.Num // J/K, low end, of the solutions and salts as charged, as far as it is held
	Uncounted    uncounted   // what of the liquid it leaves out
	Share        working.Num
	Whole        bool              // Share is exactly one
	Drained      bool              // it is what the solid held when the rest was parted off
	Unfollowed   bool              // a reaction that is not modelled may have dissolved metal into it
	More         []working.Missing // what has to be known to say how much more came into it
}

// uncounted is the liquid of a pool whose heat capacity is not held: g of it,
// central, and what each lacks.
type uncounted struct {
	grams   float64
	missing []working.Missing
}

func (u uncounted) times(x float64) uncounted { return uncounted{u.grams * x, u.missing} }

func (u uncounted) and(o uncounted) uncounted {
	out := uncounted{u.grams + o.grams, u.missing}
	for _, m := range o.missing {
		if !slices.Contains(out.missing, m) {
			out.missing = append(slices.Clip(out.missing), m)
		}
	}
	return out
}

// Kept is the central share of a pool that is still there.
func (q *Pool) Kept() float64 {
	if q.Whole {
		return 1
	}
	return q.Share.V
}

// DriesOff reports whether a substance is a solvent that is gone when what it wetted has been
// dried. An acid, a base and a solvent that boils high stay in part.
func DriesOff(s *chemicals.Substance) bool {
	if s == nil || s.Kind != "solvent" {
		return false
	}
	l := flammable.Of(s)
	return l != nil && l.Dries
}

// Dried reports whether solids of a place have been dried: what was dissolved is still there
// with them, and no liquid; what dries off is not looked at.
func (s *State) Dried() bool {
	if len(s.Liquid) == 0 || len(s.Solids) == 0 {
		return false
	}
	return !slices.ContainsFunc(s.Liquid, func(q Pool) bool {
		return q.More != nil || q.Volume.None() || q.Volume.Unknown() || q.Volume.V != 0 ||
			slices.ContainsFunc(q.Entries, func(e Entry) bool {
				return e.Sub != nil && !DriesOff(e.Sub) && (e.Sub.NotHeld || e.Sub.State == "l")
			})
	})
}

// State is the contents of a place.
type State struct {
	Place       string
	Liquid      []Pool
	Solids      []Solid
	Set         working.Num // degC last set here
	Etches      []int       // etches whose liquor is still whole here
	Neutralised bool
	Fumes       bool // dry fluoride in it has been as hot as boiling water: moist air makes HF of it
	MayCarry    int  // step that parted it, of which nobody says whether it carries product; 0: none
}

// Solid is one solid of a place.
type Solid struct {
	Name         string
	Kind         SolidKind
	Of           *chemicals.Composition
	N            working.Num // mol
	Mass         working.Num // g as charged
	HeatCapacity working.Num // J/K
	Formula      string
	Unstated     bool
	Lacks        working.Missing // what has to be known to say whether it has reacted at all
}

// SolidKind tells what a solid can still do.
type SolidKind uint8

// The kinds of solid.
const (
	Inert    SolidKind = iota
	Unetched           // the layered phase before the etch
	Impurity           // metal or carbide of the powder
	Residual           // powder that the etch left
	Based              // powder that the etch left, once base has met it
	Product            // the nanosheets
	Metal              // zinc or copper left by a melt
)

// copy keeps what a place holds now: a later step adds to the entries in place.
func (s *State) copy() State {
	c := *s
	c.Liquid = append([]Pool(nil), s.Liquid...)
	for i := range c.Liquid {
		c.Liquid[i].Entries = slices.Clone(c.Liquid[i].Entries)
	}
	c.Solids = append([]Solid(nil), s.Solids...)
	c.Etches = append([]int(nil), s.Etches...)
	return c
}

// Unsaid lists what has to be known to say what a place received.
func (s *State) Unsaid() []working.Missing {
	var out []working.Missing
	for i := range s.Liquid {
		out = append(out, s.Liquid[i].More...)
	}
	return out
}

var one = working.Exact("share", "1", 1, "all of it")

// merged makes the liquid of a place one whole pool and returns it.
func (k *walker) merged(p *State) *Pool {
	if len(p.Liquid) == 1 && p.Liquid[0].Whole {
		return &p.Liquid[0]
	}
	volumes, masses := make([]working.Num, 0, usualTerms), make([]working.Num, 0, usualTerms)
	heats := make([]working.Num, 0, usualTerms)
	var salts working.Num
	entries := 0
	for i := range p.Liquid {
		entries += len(p.Liquid[i].Entries)
	}
	all := make([]Entry, 0, entries)
	unfollowed, drained := false, len(p.Liquid) > 0
	var more []working.Missing
	var left uncounted
	for i := range p.Liquid {
		q := &p.Liquid[i]
		drained = drained && q.Drained
		left = left.and(q.Uncounted.times(q.Kept()))
		unfollowed = unfollowed || q.Unfollowed
		more = append(more, q.More...)
		volumes = append(volumes, k.Part(q, q.Volume))
		masses = append(masses, k.Part(q, q.Mass))
		salts = plus(k.w, salts, q.Grains(k.w))
		heats = append(heats, k.Part(q, q.HeatCapacity))
		for _, e := range q.Entries {
			e.N = k.Part(q, e.N)
			all = append(all, e)
		}
	}
	all = k.addUp(all)
	p.Liquid = []Pool{{Entries: all, Volume: k.w.Sum("V", "mL", volumes...), Salts: salts,
		Mass: k.w.Sum("m", "g", masses...), HeatCapacity: k.w.Sum("C", "J/K", heats...), Uncounted: left,
		Share: one, Whole: true, Drained: drained, Unfollowed: unfollowed, More: more}}
	return &p.Liquid[0]
}

// addUp makes one entry of those that are of the same in every respect, so that what
// is poured together again and again does not grow without end.
func (k *walker) addUp(all []Entry) []Entry {
	out := all[:0]
	var terms map[int][]working.Num // of those that there are several of
	for i := range all {
		at := alike(out, &all[i])
		if at < 0 {
			out = append(out, all[i])
			continue
		}
		if terms == nil {
			terms = map[int][]working.Num{}
		}
		if terms[at] == nil {
			terms[at] = append(terms[at], out[at].N)
		}
		terms[at] = append(terms[at], all[i].N)
	}
	for at := range out {
		if t := terms[at]; t != nil {
			out[at].N = k.w.Sum(out[at].N.Symbol, "mol", t...)
		}
	}
	return out
}

// alike is the first entry that is of the same as another in every respect but the
// amount; -1 where there is none.
func alike(in []Entry, e *Entry) int {
	for i := range in {
		if in[i].Name != e.Name || *in[i].Of != *e.Of {
			continue
		}
		x, y := in[i], *e
		x.N, x.Of, y.N, y.Of = working.Num{}, nil, working.Num{}, nil
		if x == y {
			return i
		}
	}
	return -1
}

// Part is the share of n that is still in the pool q.
func (k *walker) Part(q *Pool, n working.Num) working.Num { return PartOf(k.w, q, n) }

// PartOf is the share of n, an amount of the whole pool q, that is still there.
func PartOf(w *working.Sheet, q *Pool, n working.Num) working.Num {
	if q.Whole {
		return n
	}
	x, f := n.As("x"), q.Share.As("f")
	return w.Line(n.Symbol, n.Unit, "x*f", x.V*f.V, x, f)
}

// usualTerms is room for the terms of most sums. A size that stands fixed keeps
// them off the heap.
const usualTerms = 12

// Total adds up what each entry of the pool counts per mol, in mol.
func Total(w *working.Sheet, q *Pool, symbol string, per func(*Entry) float64) working.Num {
	terms := make([]working.Num, 0, usualTerms)
	for i := range q.Entries {
		e := &q.Entries[i]
		x := per(e)
		switch {
		case x == 0:
			continue
		case x == 1:
			terms = append(terms, e.N)
		case math.IsNaN(x):
			terms = append(terms, working.Absent("n", "mol", e.lacks()))
		default:
			n, c := e.N.As("n"), working.Exact("x", "mol/mol", x, symbol+" per mol of "+e.Name)
			terms = append(terms, w.Line("n", "mol", "x*n", x*n.V, c, n))
		}
	}
	return PartOf(w, q, w.Sum(symbol, "mol", terms...))
}

// Element counts an element in a pool, in mol.
func Element(w *working.Sheet, q *Pool, symbol string) working.Num {
	i, ok := chemicals.ElementIndex(symbol)
	if !ok {
		return working.Absent("n_"+symbol, "mol", working.Lacks("element", symbol))
	}
	return Total(w, q, "n_"+symbol, func(e *Entry) float64 { return e.Count(i) })
}

// Count is the mol of an element per mol of an entry; NaN where nobody knows what
// it is made of.
func (e *Entry) Count(element int) float64 {
	if e.Sub != nil && e.Sub.NotHeld {
		return e.Sub.Count(chemicals.ElementSymbol(element))
	}
	return e.Of[element]
}

// lacks is what has to be known to count an entry.
func (e *Entry) lacks() working.Missing {
	if e.Sub != nil && e.Sub.NotHeld {
		return e.Sub.Lacks()
	}
	return working.Lacks("amount_of", e.Name)
}

// value is the central amount of the pool by a count per mol, untraced: for
// deciding what can react, never for a figure.
func value(q *Pool, per func(*Entry) float64) float64 {
	v := 0.0
	for i := range q.Entries {
		if x := per(&q.Entries[i]); x != 0 {
			v += x * q.Entries[i].N.V
		}
	}
	return v
}

// has reports whether any charged entry of the pool is of the kind asked for,
// whatever its amount: an unknown amount is still there.
func has(q *Pool, is func(*chemicals.Substance) bool) bool {
	for i := range q.Entries {
		if s := q.Entries[i].Sub; s != nil && is(s) {
			return true
		}
	}
	return false
}

func pick(solids []Solid, kind SolidKind) []int {
	var at []int
	for i := range solids {
		if solids[i].Kind == kind {
			at = append(at, i)
		}
	}
	return at
}
