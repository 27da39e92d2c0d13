package process

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/route"
)

// put adds the materials of a step: liquids first, then what is dissolved in
// them, then the powder.
func (k *walker) put(p *State, s *route.Step, d *Done) {
	if len(s.What) == 0 {
		return
	}
	q := k.merged(p)
	mix := &Mixing{Before: k.portions(q)}
	acid0, base0 := sides(q)
	watery := len(mix.Before) == 0 && q.Wet()
	liquids := 0
	if len(q.Entries) > 0 {
		liquids = 1
	}
	for pass := range 3 {
		for i := range s.What {
			m := &s.What[i]
			if passOf(m) == pass {
				k.one(p, q, m, s, mix)
			}
		}
	}
	k.wetted(q, mix)
	mix.AcidBefore = Total(k.w, q, "n_acid", func(e *Entry) float64 { return max(e.Acid, 0) })
	mix.After = k.portions(q)
	mix.Diluted = (mix.Diluted || watery && len(mix.Before) > 0) && len(mix.After) > 0
	if liquids += fed(s); liquids > 1 {
		mix.Strange, mix.StrangeMol = strange(q)
	}
	mix.Met = met(q, acid0, base0)
	k.carbonate(p, s)
	k.sayAmmonia(q, s)
	d.Mixed = mix
	k.sayHF(q, s)
}

// fed counts the liquids that a step puts in.
func fed(s *route.Step) int {
	n := 0
	for i := range s.What {
		if m := &s.What[i]; !m.Precursor && (!isSolid(m) || m.Strength.Set && m.Mass.Set) {
			n++
		}
	}
	return n
}

// strange is what in a liquor came as a liquid whose heat of mixing with others
// no model gives, the most of it, with all such mol.
func strange(q *Pool) (name string, mol float64) {
	most := 0.0
	for i := range q.Entries {
		e := &q.Entries[i]
		if !e.Poured {
			continue
		}
		n := e.N.V * q.Kept()
		if mol += n; name == "" || !(n <= most) {
			name, most = e.Name, n
		}
	}
	return name, mol
}

// sameLiquids reports whether each of two liquors has the liquids without such a model that the
// other has.
func sameLiquids(a, b *Pool) bool {
	in := func(x, of *Pool) bool {
		return !slices.ContainsFunc(x.Entries, func(e Entry) bool {
			return e.Poured && !slices.ContainsFunc(of.Entries, func(o Entry) bool { return o.Poured && o.Sub == e.Sub })
		})
	}
	return in(a, b) && in(b, a)
}

// passOf orders the materials of a step: 0 liquids, 1 dissolved solids whose
// amount needs the liquid, 2 the powder.
func passOf(m *route.Material) int {
	switch {
	case m.Precursor:
		return 2
	case m.Strength.Set && !m.Volume.Set && !m.Mass.Set, isSolid(m):
		return 1
	}
	return 0
}

func isSolid(m *route.Material) bool { return m.Substance.State == "s" && !m.Volume.Set }

// ice is water that comes as a solid: it counts as the water that it melts to.
func ice(m *route.Material) bool {
	return isSolid(m) && m.Substance.Solution == "water" && !m.Ratio.Set && !m.Strength.Set
}

func (k *walker) one(p *State, q *Pool, m *route.Material, s *route.Step, mix *Mixing) {
	switch {
	case m.Precursor:
		k.powder(p)
	case m.Substance.NotHeld:
		k.unheld(q, m, s, mix)
	case ice(m), isSolid(m) && m.Strength.Set && m.Mass.Set:
		k.liquid(q, m, s, mix) // ice, or so many grams of a solution of it
	case isSolid(m):
		k.dissolve(q, m, s, mix)
	default:
		k.liquid(q, m, s, mix)
	}
}

// liquid charges a solution or a pure liquid.
func (k *walker) liquid(q *Pool, m *route.Material, s *route.Step, mix *Mixing) {
	var v, g working.Num
	switch {
	case m.Volume.Set:
		v = k.c.Given("V", "mL", m.Volume)
	case m.Mass.Set:
		g = k.c.Given("m", "g", m.Mass)
	default: // an amount of a pure liquid, or of the solute
		n, M := k.c.Given("n", "mol", m.Amount), m.Substance.Formula.MolarMass(k.st, k.w).As("M")
		g = k.w.Line("m", "g", "n*M", n.V*M.V, n, M)
		if m.Strength.Set && m.Strength.Dim == massFraction {
			f := k.c.Given("w", "1", m.Strength)
			g = k.w.Line("m", "g", "n*M/w", n.V*M.V/f.V, n, M, f)
		}
	}
	ch := solution.Charged(k.st, k.w, m.Substance, k.c.Ranged(m.Strength), v, g)
	mix.Fed = true
	mix.Came = append(mix.Came, Came{m, ch.Water})
	k.sayStrong(m.Substance, ch.Fraction, s.Number)
	switch water, _ := chemicals.Library().Find("water"); {
	case m.Substance.Solution == "water":
		k.enter(q, m.Substance, ch.Water)
	case m.Strength.Set:
		k.enter(q, m.Substance, ch.Solute)
		k.enter(q, water, ch.Water)
	default:
		k.enter(q, m.Substance, ch.Solute)
	}
	if m.Substance.Solution == "" {
		q.poured(m.Substance)
	}
	q.Volume = k.w.Sum("V", "mL", q.Volume.As("V"), ch.Volume)
	q.Mass = k.w.Sum("m", "g", q.Mass.As("m"), ch.Mass)
	c := ch.HeatCapacity
	if c.Unknown() {
		q.Uncounted = q.Uncounted.and(uncounted{ch.Mass.V, c.Missing()})
		c = working.Exact("C", "J/K", 0, "no heat capacity of "+m.Substance.Name+": left out").Worse(working.Bound)
	}
	q.HeatCapacity = k.w.Sum("C", "J/K", q.HeatCapacity.As("C"), c)
	if m.Substance.Solution == "water" {
		mix.Diluted = true
	}
	if modelled(m.Substance) {
		mix.Before = append(mix.Before, Portion{m.Substance.Solution, m.Substance, ch.Solute, ch.Water})
	}
}

// poured notes that a substance came as a liquid.
func (q *Pool) poured(s *chemicals.Substance) {
	for i := range q.Entries {
		if q.Entries[i].Sub == s {
			q.Entries[i].Poured = true
		}
	}
}

func modelled(s *chemicals.Substance) bool { return s.Solution != "" && s.Solution != "water" }

// enter adds an amount of a substance to a pool and to the account.
func (k *walker) enter(q *Pool, sub *chemicals.Substance, n working.Num) {
	for i := range q.Entries {
		if q.Entries[i].Sub == sub {
			q.Entries[i].N = k.w.Sum("n_"+ident(sub.Slug), "mol", q.Entries[i].N, n)
			k.account(&sub.Formula.Of, n.V)
			return
		}
	}
	q.Entries = append(q.Entries, entryOf(sub, n))
	k.account(&sub.Formula.Of, n.V)
}

// entryOf is an amount of a substance as it dissolves.
func entryOf(sub *chemicals.Substance, n working.Num) Entry {
	return Entry{Name: sub.Name, Of: &sub.Formula.Of, Sub: sub, N: n.As("n_" + ident(sub.Slug)), Acid: sub.Acid,
		Base: sub.Neutral()}
}

func ident(slug string) string {
	b := []byte(slug)
	for i, c := range b {
		if c != '_' && (c < 'a' || c > 'z') && (c < 'A' || c > 'Z') && (c < '0' || c > '9') {
			b[i] = '_'
		}
	}
	return string(b)
}

func (k *walker) account(of *chemicals.Composition, n float64) {
	if math.IsNaN(n) {
		return // of nobody knows how much, which the account says
	}
	for i := range of {
		if of[i] != 0 {
			k.in[i] += of[i] * n
			k.gross[i] += math.Abs(of[i] * n)
		}
	}
}

// dissolve charges a solid that goes, or will go, into the liquid. It counts
// as dissolved whether it is yet or not; it adds no volume of liquid.
func (k *walker) dissolve(q *Pool, m *route.Material, s *route.Step, mix *Mixing) {
	M := m.Substance.Formula.MolarMass(k.st, k.w).As("M")
	var n, g working.Num
	switch {
	case m.Mass.Set:
		g = k.c.Given("m", "g", m.Mass)
		n = k.w.Line("n", "mol", "m/M", g.V/M.V, g, M)
	case m.Amount.Set:
		n = k.c.Given("n", "mol", m.Amount)
	case m.Ratio.Set:
		n = k.byRatio(m)
	default:
		c, v := k.c.Given("c", "mol/L", m.Strength), q.Volume.As("V")
		n = k.w.Line("n", "mol", "c*V/1000", c.V*v.V/1000, c, v)
	}
	if g.None() {
		g = k.w.Line("m", "g", "n*M", n.As("n").V*M.V, n.As("n"), M)
	}
	k.enter(q, m.Substance, n)
	mix.Fed = true
	if m.Substance.Solution == "water" { // ice
		mix.Came = append(mix.Came, Came{m, n})
	}
	mix.Salts = append(mix.Salts, Entry{Name: m.Substance.Name, Sub: m.Substance, N: n, Acid: m.Substance.Acid})
	q.Mass = k.w.Sum("m", "g", q.Mass.As("m"), g)
	q.Salts = plus(k.w, q.Salts, k.grains(&m.Substance.Formula, g))
	q.HeatCapacity = k.w.Sum("C", "J/K", q.HeatCapacity.As("C"), k.solidHeat(&m.Substance.Formula, n))
	k.sayRatio(m, n, g, q)
}

// grains is the volume of g grams of a solid without its pores, mL: dissolved it takes no more.
func (k *walker) grains(f *chemicals.Formula, g working.Num) working.Num {
	id := datum.Of("density", f.Text+"(s)")
	if _, held := k.st.Row(id); !held {
		id = "density.solid"
	}
	m, d := g.As("m"), k.st.Num(id).As("rho_d")
	return k.w.Line("V_d", "mL", "m/rho_d", m.V/d.V, m, d).Worse(working.Estimated)
}

func (k *walker) byRatio(m *route.Material) working.Num {
	if k.out.Powder == nil {
		return working.Absent("n", "mol", working.Lacks("ratio_to_powder", m.At))
	}
	r, n := k.c.Given("r", "mol/mol", m.Ratio), k.out.Powder.N.As("n")
	return k.w.Line("n", "mol", "r*n", r.V*n.V, r, n)
}

// solidHeat is the heat capacity of n mol of a solid: of its row, or else by its atoms.
// One that has neither adds nothing, which makes the rise a bound and not unknown.
func (k *walker) solidHeat(f *chemicals.Formula, n working.Num) working.Num {
	cp := k.st.Num(datum.Of("cp", f.Text+"(s)")).As("cp")
	if cp.Unknown() {
		cp = f.SolidHeat(k.st, k.w)
	}
	if cp.Unknown() {
		return working.Exact("C", "J/K", 0, "no heat capacity of "+f.Text+": it adds nothing").Worse(working.Bound)
	}
	x := n.As("n")
	return k.w.Line("C", "J/K", "n*cp", x.V*cp.V, x, cp)
}

func (k *walker) portions(q *Pool) []Portion { return q.Portions(k.w) }

// Portions lists every modelled solute of the pool in all of its water, as they were
// charged: one for each solution, however often it was added.
func (q *Pool) Portions(w *working.Sheet) []Portion {
	solutes := map[string][]working.Num{}
	var out []Portion
	var water []working.Num
	for i := range q.Entries {
		switch s := q.Entries[i].Sub; {
		case s == nil:
		case s.Solution == "water":
			water = append(water, q.Entries[i].N)
		case modelled(s):
			if solutes[s.Solution] == nil {
				out = append(out, Portion{Model: s.Solution, Sub: s})
			}
			solutes[s.Solution] = append(solutes[s.Solution], q.Entries[i].N)
		}
	}
	if len(out) == 0 {
		return nil
	}
	h2o := w.Sum("n_w", "mol", water...)
	for i := range out {
		n := solutes[out[i].Model]
		out[i].Acid, out[i].Water = w.Sum(n[0].Symbol, "mol", n...), h2o
	}
	return out
}

// Mixes reports whether a step dissolves or dilutes anything: a salt goes in,
// or a solution meets another or water.
func (m *Mixing) Mixes() bool {
	return m.Fed && (len(m.Salts) > 0 || len(m.Before) > 1 || m.Diluted || m.Strange != "")
}

// sides is the acid and the base a liquid has seen, mol, as charged.
func sides(q *Pool) (acid, base float64) {
	for i := range q.Entries {
		if x := q.Entries[i].Acid * q.Entries[i].N.V; q.Entries[i].Sub != nil && x < 0 {
			base -= x
		} else {
			acid += x
		}
	}
	return acid, base
}

// met is the acid that meets base now, where acid0 and base0 had met before.
func met(q *Pool, acid0, base0 float64) float64 {
	acid, base := sides(q)
	return min(acid, base) - min(acid0, base0)
}
