package process

import (
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// retained is the liquid that stays with the solid, in mL, and whether the
// writer stated it. added is the liquid of one wash cycle, for a share of the
// filled tube.
func (k *walker) retained(p *State, s *route.Step, volume, added working.Num) working.Num {
	r := s.Retained
	switch {
	case r.Set && r.Dim == quantity.Volume:
		return k.c.Given("R", "mL", r)
	case r.Set && r.Dim == quantity.VolumePerMass:
		x, m := k.c.Given("x", "mL/g", r), k.cake(p)
		return k.w.Line("R", "mL", "x*m", x.V*m.V, x, m)
	case r.Set && !added.None():
		f, w := k.c.Given("f", "1", r), added.As("W")
		return k.w.Line("R", "mL", "f/(1-f)*W", f.V/(1-f.V)*w.V, f, w)
	case r.Set:
		f, v := k.c.Given("f", "1", r), volume.As("V")
		return k.w.Line("R", "mL", "f*V", f.V*v.V, f, v)
	case len(p.Solids) == 0:
		return working.Exact("R", "mL", 0, "no solid to hold liquid back")
	}
	x, m := k.st.Num("wash.retained.acid").As("x"), k.cake(p)
	return k.w.Line("R", "mL", "x*m", x.V*m.V, x, m)
}

// cake is the mass of powder the solids of a place came from, in g.
func (k *walker) cake(p *State) working.Num {
	var all []working.Num
	for i := range p.Solids {
		if s := &p.Solids[i]; s.Kind != Impurity && !s.Mass.None() {
			all = append(all, s.Mass)
		}
	}
	switch len(all) {
	case 0:
		return working.Exact("m", "g", 0, "no powder in this place")
	case 1:
		return all[0].As("m")
	}
	return k.w.Sum("m", "g", all...)
}

// separate parts liquid from solid: what the solid does not hold goes on.
func (k *walker) separate(p *State, s *route.Step) {
	q := k.merged(p)
	r := k.retained(p, s, q.Volume, working.Num{})
	k.decant(p, s, r)
	k.flakes(p, k.places[s.Into], s)
	p.Etches = nil
}

// flakes follows the product where solid and liquid are parted: with the liquid all of it
// goes on, as a bound, and what stays may still hold some. Where nobody says which of the
// two carries it, the liquid may.
func (k *walker) flakes(p, to *State, s *route.Step) {
	if to == nil {
		return
	}
	made := p.made()
	switch {
	case s.Product == "solids":
	case s.Product == "liquid" && len(made) > 0:
		come := make([]Solid, 0, len(made))
		for _, i := range made {
			come = append(come, p.Solids[i])
		}
		k.heap(to, come)
		p.Solids = slices.DeleteFunc(slices.Clone(p.Solids), func(x Solid) bool { return x.mayBeMade() })
		p.MayCarry = s.Number
	case len(made) > 0 || p.MayCarry > 0 || !doubted(p).IsZero():
		to.MayCarry = s.Number
	}
}

// made are the solids of a place that are product, or may be: powder of which nobody says
// what an etch left.
func (s *State) made() []int {
	var at []int
	for i := range s.Solids {
		if s.Solids[i].mayBeMade() {
			at = append(at, i)
		}
	}
	return at
}

func (x *Solid) mayBeMade() bool {
	return x.Kind == Product || (x.Kind == Residual || x.Kind == Based) && x.N.Unknown()
}

// decant leaves r mL of the liquid of p where it is and sends the rest to the
// place the step names. That a powder of which nobody says what it retains can hold all
// there is does not say that nothing goes on, where nothing was parted before: how much does
// is not known then.
func (k *walker) decant(p *State, s *route.Step, r working.Num) {
	q := k.merged(p)
	R, V := r.As("R"), q.Volume.As("V")
	stay := k.w.Line("f", "1", "min(R/max(V,1e-9),1)", min(R.V/max(V.V, 1e-9), 1), R, V)
	go1 := k.w.Line("g", "1", "1-f", 1-stay.V, stay)
	if s.Verb().Does == route.Parts && !s.Retained.Set && stay.V >= 1 && !q.Drained && len(p.Solids) > 0 {
		missing := working.Lacks(working.NotGiven, s.At+".retained")
		go1 = working.Absent("g", "1", missing)
		k.decanted = append(k.decanted, missing) // what it is poured to is not in the account either
	}
	whole := *q
	kept, gone := whole, whole
	kept.Share, kept.Whole, kept.Drained = stay, false, true
	gone.Share, gone.Whole, gone.Drained = go1, false, false
	p.Liquid = []Pool{kept}
	k.send(s.Into, gone)
}

func (k *walker) send(place string, q Pool) {
	if to, ok := k.places[place]; ok {
		to.Liquid = append(to.Liquid, q)
	}
}

// move takes a part of everything in a place, or all of it, to another.
func (k *walker) move(p *State, s *route.Step) {
	to := k.places[s.Into]
	if to == nil {
		return
	}
	set := hotter(to, p)
	if !s.Part.Set {
		to.Liquid = append(to.Liquid, p.Liquid...)
		k.heap(to, p.Solids)
		to.Set, to.Etches, to.MayCarry = set, joined(to.Etches, p.Etches), max(to.MayCarry, p.MayCarry)
		*p = State{Place: p.Place, Set: p.Set}
		return
	}
	q := *k.merged(p)
	f := k.part(s, &q)
	stay := k.w.Line("f", "1", "1-g", 1-f.V, f.As("g"))
	kept, gone := q, q
	kept.Share, kept.Whole, gone.Share, gone.Whole = stay, false, f.As("f"), false
	p.Liquid = []Pool{kept}
	to.Liquid = append(to.Liquid, gone)
	k.partSolids(p, to, f, stay)
	to.Set, to.Etches, to.MayCarry = set, joined(to.Etches, p.Etches), max(to.MayCarry, p.MayCarry)
}

func (k *walker) part(s *route.Step, q *Pool) working.Num {
	if s.Part.Dim == quantity.Volume {
		x, v := k.c.Given("x", "mL", s.Part), q.Volume.As("V")
		return k.w.Line("g", "1", "min(x/max(V,1e-9),1)", min(x.V/max(v.V, 1e-9), 1), x, v)
	}
	return k.c.Given("g", "1", s.Part)
}

func (k *walker) partSolids(p, to *State, f, stay working.Num) {
	share := func(n, by working.Num) working.Num {
		x, y := n.As("x"), by.As("y")
		return k.w.Line(n.Symbol, n.Unit, "x*y", x.V*y.V, x, y)
	}
	var gone []Solid
	for i := range p.Solids {
		a, b := p.Solids[i], p.Solids[i]
		a.N, b.N = share(a.N, stay), share(b.N, f)
		a.HeatCapacity, b.HeatCapacity = share(a.HeatCapacity, stay), share(b.HeatCapacity, f)
		if !a.Mass.None() {
			a.Mass, b.Mass = share(a.Mass, stay), share(b.Mass, f)
		}
		p.Solids[i] = a
		gone = append(gone, b)
	}
	k.heap(to, gone)
}

// hotter is the temperature of what is in a place when more comes: the higher
// of the two, and unknown if one is.
func hotter(to, p *State) working.Num {
	empty := len(to.Liquid) == 0 && len(to.Solids) == 0
	if empty || to.Set.None() || !p.Set.None() && !(p.Set.V <= to.Set.V) && !to.Set.Unknown() {
		return p.Set
	}
	return to.Set
}

// joined are the etches whose liquor meets in a place, each once: what parts and
// meets again is of the same etch.
func joined(there, come []int) []int {
	out := slices.Clone(there)
	for _, e := range come {
		if !slices.Contains(out, e) {
			out = append(out, e)
		}
	}
	return out
}

// heap puts solids into a place; parts of the same solid become one again.
func (k *walker) heap(to *State, come []Solid) {
	for _, x := range come {
		i := slices.IndexFunc(to.Solids, func(y Solid) bool {
			return y.Kind == x.Kind && y.Name == x.Name && y.Formula == x.Formula && y.Unstated == x.Unstated && *y.Of == *x.Of
		})
		if i < 0 {
			to.Solids = append(to.Solids, x)
			continue
		}
		y := &to.Solids[i]
		y.N = k.w.Sum(y.N.Symbol, "mol", y.N, x.N)
		y.HeatCapacity = k.w.Sum("C", "J/K", y.HeatCapacity, x.HeatCapacity)
		if !y.Mass.None() && !x.Mass.None() {
			y.Mass = k.w.Sum("m", "g", y.Mass, x.Mass)
		}
	}
}

// dry drives the water off. Acid and salt that the liquid held are left with
// the solid: what part of them goes with the water is not known.
func (k *walker) dry(p *State) {
	q := k.merged(p)
	kept := q.Entries[:0:0]
	for _, e := range q.Entries {
		if e.Sub == nil || e.Sub.Solution != "water" || !(e.N.V > 0) {
			kept = append(kept, e)
			continue
		}
		for el := range e.Of {
			if e.Of[el] != 0 {
				k.lost[el] += e.Of[el] * e.N.V
			}
		}
		M := e.Sub.Formula.MolarMass(k.st, k.w).As("M")
		m, n := q.Mass.As("m"), e.N.As("n")
		q.Mass = k.w.Line("m", "g", "max(m-n*M,0)", max(m.V-n.V*M.V, 0), m, n, M)
	}
	q.Entries = kept // gone for good: drying again takes nothing more
	q.HeatCapacity = working.Exact("C", "J/K", 0, "dried: what salt is left adds nothing").Worse(working.Bound)
	q.Uncounted = uncounted{}
	q.Volume = working.Exact("V", "mL", 0, "dried")
	if k.out.Layered != nil {
		k.fact("dry", 0, phrase.Of("fact.dry"))
	}
}
