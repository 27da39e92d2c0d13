package process

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/evolving"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// Evolved is a poisonous gas that can form in a place.
type Evolved struct {
	Step  int
	Place string
	Gas   *chemicals.Substance // nil where nobody knows which
	N     working.Num          // mol at most
	Moved bool                 // as much of it could form where it came from
}

// usualWords is room for the words that the gases of a usual place ask for.
const usualWords = 24

// leastGas is what is no gas but rounding, mol.
const leastGas = 1e-9

// medium is a place as gases form in it.
type medium struct {
	bath
	q                     *Pool
	melt, current, powder bool
	words                 []answer // that were asked for: many gases ask for the same
}

// answer is whether a word of the table of gases holds.
type answer struct {
	word  string
	holds bool
}

// is reports whether a word of the table of gases holds.
func (m *medium) is(word string) bool {
	for i := range m.words {
		if m.words[i].word == word {
			return m.words[i].holds
		}
	}
	holds := m.looks(word)
	m.words = append(m.words, answer{word, holds})
	return holds
}

func (m *medium) looks(word string) bool {
	switch word {
	case "acid": // a fluoride salt attacks what acid does
		return !m.melt && (m.acid || m.fluoride && !m.base)
	case "base":
		return !m.melt && !m.acid && has(m.q, func(s *chemicals.Substance) bool { return s.Acid < 0 || s.Acid != s.Acid })
	case "fluoride":
		return m.fluoride
	case "melt":
		return m.melt
	case evolving.Current:
		return m.current
	case evolving.Powder:
		return m.powder
	case evolving.Oxidant:
		return has(m.q, oxidises)
	}
	return has(m.q, func(s *chemicals.Substance) bool { return s.MayBe(word) })
}

// oxidises reports an oxidant that takes electrons off chloride, or what may be one.
func oxidises(s *chemicals.Substance) bool {
	return s.Kind == "oxidant" || s.Is("nitrate") || s.MayBe("oxidiser")
}

// held is the medium of what the data hold in a place: a gas that forms in it forms
// whatever the rest is.
func (m *medium) held() *medium {
	out, q := *m, Pool{}
	for _, e := range m.q.Entries {
		if e.Sub == nil || !e.Sub.NotHeld {
			q.Entries = append(q.Entries, e)
		}
	}
	out.q, out.bath, out.words = &q, look(&q), nil
	return &out
}

// evolve says which poisonous gases can form of what is in a place. What was told of it
// before is not told again, and what came from a place where as much could form has moved.
func (k *walker) evolve(p *State, s *route.Step, from string, melts bool) {
	if len(p.Liquid) == 0 {
		return
	}
	q := k.merged(p)
	m := &medium{bath: look(q), q: q, melt: melts, words: make([]answer, 0, usualWords),
		current: s.Verb().Does == route.Conducts && p.Place == s.In, powder: len(p.Solids) > 0}
	t := tells{p: p, s: s, from: from, again: m.stranger != nil && (m.melt || m.current || comes(p, s) || k.melted(p))}
	if m.stranger != nil {
		t.held = m.held()
	}
	if u := m.stranger; u != nil && (m.powder || len(q.Entries) > 1) {
		k.gives(&t, evolving.Gas{}, working.Absent("n", "mol", u.Lacks()))
	}
	for _, g := range evolving.With(m.is) {
		if n := k.most(p, m, s, g); g.Slow == "" {
			k.gives(&t, *g, n)
		} else if so := k.slowly(p, s, from, g, n); !so.None() {
			k.gives(&tells{p: p, s: s, from: from, again: t.again, held: t.held, all: n}, *g, so)
		}
	}
	if m.is("acid") || m.is("base") || m.melt {
		k.ofElements(&t, m)
	}
}

// melted reports whether what a place holds was a melt in the step before that worked in it: a
// liquor gives other gases than the melt did.
func (k *walker) melted(p *State) bool {
	for i := len(k.out.Steps) - 1; i >= 0; i-- {
		if d := &k.out.Steps[i]; d.Place == p.Place {
			return d.Melts
		}
	}
	return false
}

// ofElements are the gases of the elements of a place.
func (k *walker) ofElements(t *tells, m *medium) {
	p, s := t.p, t.s
	there := k.elements(p, m)
	for i, is := range there {
		if !is {
			continue
		}
		element := chemicals.ElementSymbol(i)
		g, listed := evolving.From(element, m.is)
		if t.held != nil { // how much of anything is left beside what is not held, nobody knows: any of them
			for _, h := range evolving.Others(element, m.is) {
				k.gives(t, *h, k.most(p, m, s, h))
			}
		}
		switch {
		case !listed:
			missing := working.Lacks("gas_unlisted", element).In(s.Number)
			k.gives(t, evolving.Gas{Of: element}, working.Absent("n", "mol", missing))
		case g.Sub != nil:
			k.gives(t, *g, k.most(p, m, s, g))
		}
	}
	if m.melt {
		k.drivenOff(t)
	}
}

// elements are those of what is in a place, what is not followed among them.
func (k *walker) elements(p *State, m *medium) (there [chemicals.NumElements]bool) {
	add := func(of *chemicals.Composition) {
		for i, n := range of {
			if n != 0 {
				there[i] = true
			}
		}
	}
	for i := range m.q.Entries {
		add(m.q.Entries[i].Of)
	}
	for i := range p.Solids {
		add(p.Solids[i].Of)
	}
	if m.powder {
		add(&k.unres)
	}
	return there
}

// drivenOff are the chlorides that a melt drove off.
func (k *walker) drivenOff(t *tells) {
	for i := range k.out.Releases {
		x := &k.out.Releases[i]
		if sub, held := chemicals.Library().Find(x.Gas); held && x.Step == t.s.Number && x.Place == t.p.Place &&
			x.Gas != "H2" {
			k.gives(&tells{p: t.p, s: t.s}, evolving.Gas{Sub: sub}, x.N)
		}
	}
}

// most is how much of a gas can form, mol: as far as the first that it takes goes. Where
// one of two is not known the other one bounds it.
func (k *walker) most(p *State, m *medium, s *route.Step, g *evolving.Gas) working.Num {
	var out working.Num
	for i := range g.Takes {
		t := &g.Takes[i]
		a, x := k.amount(p, m, s, t).As("a"), working.Exact("x", "mol/mol", t.Mol, "taken by one mol of gas")
		n := k.w.Line("n", "mol", "a/x", a.V/x.V, a, x)
		switch {
		case i == 0 || out.Unknown():
			out = n
		case !n.Unknown():
			b, c := out.As("b"), n.As("c")
			out = k.w.Line("n", "mol", "min(b,c)", min(b.V, c.V), b, c)
		}
	}
	return out.Worse(working.Bound)
}

// amount is how much of what a gas takes a place holds, mol.
func (k *walker) amount(p *State, m *medium, s *route.Step, t *evolving.Take) working.Num {
	switch {
	case t.Where == evolving.Current:
		i, x, f := k.c.Given("I", "A", s.Current), k.c.Given("t", "s", s.Time), k.st.Num("constant.faraday").As("F")
		return k.w.Line("n_e", "mol", "I*t/F", i.V*x.V/f.V, i, x, f)
	case t.Where == evolving.Oxidant:
		return Total(k.w, m.q, "n_e", takenUp)
	}
	i, _ := chemicals.ElementIndex(t.Element)
	in := []working.Num{Total(k.w, m.q, "n", func(e *Entry) float64 {
		if !counted(e, t.Where) {
			return 0
		}
		return e.Count(i)
	})}
	if t.Where == evolving.Anywhere || t.Where == evolving.Powder {
		in = append(in, k.solids(p, i)...)
	}
	sum := k.w.Sum("n", "mol", in...).As("m")
	return k.w.Line("n", "mol", "max(m,0)", max(sum.V, 0), sum)
}

// takenUp is the electrons that an oxidant takes up, mol/mol; all of them unknown where
// the data do not say.
func takenUp(e *Entry) float64 {
	switch {
	case e.Sub == nil || !oxidises(e.Sub):
		return 0
	case e.Sub.Oxidant > 0:
		return e.Sub.Oxidant
	}
	return math.NaN()
}

// counted reports whether an entry of a liquor is where a gas takes something from.
func counted(e *Entry, where string) bool {
	switch where {
	case evolving.Anywhere, evolving.Liquor:
		return true
	case evolving.Powder:
		return e.Sub == nil
	case evolving.Reducible:
		return e.Sub == nil || e.Sub.MetalElectrons > 0 || e.Sub.NotHeld
	}
	return e.Sub != nil && e.Sub.MayBe(where)
}

// solids are the amounts of an element in the solids of a place, and in what is not
// followed.
func (k *walker) solids(p *State, element int) []working.Num {
	var out []working.Num
	for i := range p.Solids {
		if x := &p.Solids[i]; x.Of[element] != 0 {
			c, n := working.Exact("x", "mol/mol", x.Of[element], "atoms in "+x.Name), x.N.As("n")
			out = append(out, k.w.Line("n", "mol", "x*n", c.V*n.V, c, n))
		}
	}
	if len(p.Solids) > 0 && k.unres[element] != 0 {
		out = append(out, working.Exact("n_u", "mol", k.unres[element], "not followed").Worse(working.Estimated))
	}
	return out
}

// tells is where and when a gas is told of.
type tells struct {
	p     *State
	s     *route.Step
	from  string      // the place that it comes from
	again bool        // with what is not held more may form than was told of before
	all   working.Num // what a gas that comes slowly comes to in the end

	held *medium // of what the data hold there; nil where they hold all of it
}

// only reports whether a gas is there for nothing but what the data do not hold: one
// sentence tells of all of those.
func (t *tells) only(g *evolving.Gas, n working.Num) bool {
	if t.held == nil || g.Sub == nil || !n.Unknown() {
		return false
	}
	return !g.Forms(t.held.is) || g.Of != "" && !t.of(g.Of)
}

// of reports whether an element is in what the data hold of a place.
func (t *tells) of(element string) bool {
	i, _ := chemicals.ElementIndex(element)
	return slices.ContainsFunc(t.held.q.Entries, func(e Entry) bool { return e.Of[i] != 0 }) ||
		slices.ContainsFunc(t.p.Solids, func(x Solid) bool { return x.Of[i] != 0 })
}

// gives notes a gas that can form in a place, and what stops work for it.
func (k *walker) gives(t *tells, g evolving.Gas, n working.Num) {
	if !n.Unknown() && n.V < leastGas {
		return
	}
	p, s := t.p, t.s
	covered := func(place string) bool {
		v, told := k.told[gasAt{place, g.Of, g.Sub}]
		return told && !t.again && (v != v || n.V <= v*(1+1e-9))
	}
	if covered(p.Place) {
		return
	}
	if k.told == nil {
		k.told = map[gasAt]float64{}
	}
	k.told[gasAt{p.Place, g.Of, g.Sub}] = n.V
	x := Evolved{Step: s.Number, Place: p.Place, Gas: g.Sub, N: n, Moved: t.from != "" && covered(t.from)}
	k.out.Evolved = append(k.out.Evolved, x)
	switch {
	case x.Moved || g.Said != "" || t.only(&g, n):
	case g.Sub != nil || g.Of != "":
		k.sayGas(&x, g.Of, t.all)
	default:
		k.sayStrangers(p, s)
	}
}

// sayStrangers says of each thing in a place that the data do not hold, once, that nobody knows
// which gases it gives there.
func (k *walker) sayStrangers(p *State, s *route.Step) {
	for _, sub := range p.Strangers() {
		at := gasAt{place: p.Place, gas: sub}
		if !k.strange[at] {
			if k.strange == nil {
				k.strange = map[gasAt]bool{}
			}
			k.strange[at] = true
			k.fact("toxic_gas", s.Number, phrase.Of("fact.gas_of_unheld", sub.Name, phrase.Step(s.Number)))
		}
	}
}

// gasAt is a gas in a place, or an element of which no gas is listed.
type gasAt struct {
	place, of string
	gas       *chemicals.Substance
}

// sayGas says which gas a step can give, and how much; of one that comes slowly, by the end
// of the step and in the end.
func (k *walker) sayGas(x *Evolved, of string, all working.Num) {
	switch {
	case x.Gas == nil:
		k.fact("toxic_gas", x.Step, phrase.Of("fact.gas_unlisted", phrase.Step(x.Step), of))
	case x.N.Unknown():
		k.fact("toxic_gas", x.Step, phrase.Of("fact.toxic_gas_unknown", x.Gas.Name, phrase.Step(x.Step)))
	case !all.None():
		vm := MolarVolume(k.st, nil)
		k.fact("toxic_gas", x.Step, phrase.Of("fact.toxic_gas_slow", x.Gas.Name, x.N.V*vm.V, all.V*vm.V,
			phrase.Step(x.Step)))
	default:
		vm, M := MolarVolume(k.st, nil), x.Gas.Formula.MolarMass(k.st, nil)
		k.fact("toxic_gas", x.Step, phrase.Of("fact.toxic_gas", x.Gas.Name, x.N.V*vm.V, x.N.V*M.V,
			phrase.Step(x.Step)))
	}
}

// ledOver says of a gas that is led over a place and is not known to be idle there that nobody
// works out what it makes of the contents, nor what leaves with it.
func (k *walker) ledOver(p *State, s *route.Step) {
	if evolving.Idle(s.Gas) {
		return
	}
	n := working.Absent("n", "mol", working.Lacks("gas_led_over", s.Gas).In(s.Number))
	k.out.Evolved = append(k.out.Evolved, Evolved{Step: s.Number, Place: p.Place, N: n})
	k.fact("toxic_gas", s.Number, phrase.Of("fact.gas_led_over", phrase.Step(s.Number), s.Gas))
}

// rinsed is evolve for the liquid of the first cycle of a wash, as it meets what is there.
func (k *walker) rinsed(p *State, s *route.Step, cycle Pool, d *Done) {
	first := p.copy()
	first.Liquid = append(first.Liquid, cycle)
	d.First = &first
	k.evolve(&first, s, "", false)
}
