package waste

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/neutralising"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
)

// agent is what a liquor is neutralised with: one substance, or several written
// in one step, in the proportion in which they are written.
type agent struct {
	slug   string
	names  []string // what is written, where nothing in it brings base
	parts  []part   // what brings base, or may
	beside []part   // what brings none and binds fluoride
}

// part is one substance of an agent.
type part struct {
	sub    *chemicals.Substance
	brings neutralising.Brings
	n      working.Num // mol as written; nothing of an agent nobody wrote
	mass   working.Num // kg likewise
}

// offered are the agents for waste that nobody wrote one for.
var offered = sync.OnceValue(func() []agent {
	var of []*chemicals.Substance
	for _, s := range chemicals.Library().All() {
		if s.WasteAgent > 0 {
			of = append(of, s)
		}
	}
	slices.SortFunc(of, func(a, b *chemicals.Substance) int { return cmp.Compare(a.WasteAgent, b.WasteAgent) })
	var out []agent
	for _, s := range of {
		out = append(out, agent{slug: s.Slug, parts: []part{{sub: s, brings: neutralising.Of(s)}}})
	}
	return out
})

// written is the agent of a step. Where nothing in it brings base, it has the
// names of what is written and no parts.
func written(l *process.Liquor) agent {
	var g agent
	var used []*chemicals.Substance
	for i := range l.Doses {
		d := &l.Doses[i]
		x := part{d.Sub, neutralising.Of(d.Sub), d.N, d.Mass}
		switch {
		case !(x.brings.Base <= 0):
			g.parts, used = append(g.parts, x), append(used, d.Sub)
		case x.brings.Agent():
			g.beside = append(g.beside, x)
		}
	}
	for i := range l.Doses {
		if d := &l.Doses[i]; used == nil && d.Sub.Kind != "water" {
			g.names, g.slug = append(g.names, d.Sub.Name), joined(g.slug, d.Sub)
		}
	}
	for _, s := range used {
		g.slug = joined(g.slug, s)
	}
	if g.slug == "" && len(l.Doses) > 0 {
		g.names, g.slug = []string{l.Doses[0].Sub.Name}, l.Doses[0].Sub.Slug
	}
	return g
}

// joined is the slug of agents that are written together.
func joined(slug string, more *chemicals.Substance) string {
	if slug == "" {
		return more.Slug
	}
	return figure.Together(slug, more.Slug)
}

// any reports whether a part brings something, or may.
func (g *agent) any(of func(neutralising.Brings) float64) bool {
	return slices.ContainsFunc(g.parts, func(p part) bool { return !(of(p.brings) <= 0) })
}

func carbon(b neutralising.Brings) float64 { return b.Carbon }

// per adds up what the parts count for each mol of base that they bring:
//
//	one part   x/base
//	several    sum of n x over sum of n base
func (r *reader) per(g *agent, symbol, unit, of string, count func(*part) working.Num) working.Num {
	w := r.w
	one := func(p *part) (x, base working.Num) {
		return count(p).As("x"), r.base(p)
	}
	if len(g.parts) == 1 {
		x, b := one(&g.parts[0])
		return w.Line(symbol, unit, "x/b", x.V/b.V, x, b.As("b"))
	}
	xs, bs := make([]working.Num, len(g.parts)), make([]working.Num, len(g.parts))
	for i := range g.parts {
		x, b := one(&g.parts[i])
		n := g.parts[i].n.As("n")
		xs[i] = w.Line("nx", of, "n*x", n.V*x.V, n, x)
		bs[i] = w.Line("nb", "mol", "n*b", n.V*b.V, n, b.As("b"))
	}
	x, b := w.Sum("X", of, xs...), w.Sum("E", "mol", bs...)
	return w.Line(symbol, unit, "X/E", x.V/b.V, x, b)
}

// base is the base equivalents of one mol of a part.
func (r *reader) base(p *part) working.Num {
	if math.IsNaN(p.brings.Base) { // it is not held
		return working.Absent("x", "mol/mol", working.Lacks("base_equivalents", p.sub.Name))
	}
	return working.Exact("x", "mol/mol", p.brings.Base, "base equivalents of "+p.sub.Name)
}

// carbonOf is the carbon dioxide of one mol of a part.
func carbonOf(p *part) working.Num {
	if math.IsNaN(p.brings.Carbon) { // it is not held
		return working.Absent("y", "mol/mol", working.Lacks("carbon_per_mol", p.sub.Name))
	}
	return working.Exact("y", "mol/mol", p.brings.Carbon, "carbon dioxide per mol of "+p.sub.Name)
}

// reaction is the heat released as the agent takes up one mol of an acid, kJ: of
// several parts, each by its share of the base.
func (r *reader) reaction(symbol string, g *agent, a neutralising.Acid) working.Num {
	if len(g.parts) == 1 {
		return r.released(symbol, &g.parts[0], a)
	}
	b := make([]working.Num, len(g.parts))
	for i := range g.parts {
		n, x := g.parts[i].n.As("n"), r.base(&g.parts[i])
		b[i] = r.w.Line("nb", "mol", "n*x", n.V*x.V, n, x)
	}
	all := r.w.Sum("E", "mol", b...)
	terms := make([]working.Num, len(g.parts))
	for i := range g.parts {
		q, e := r.released("q", &g.parts[i], a), b[i].As("e")
		terms[i] = r.w.Line("q", "kJ/mol", "q*e/E", q.V*e.V/all.V, q, e, all)
	}
	return r.w.Sum(symbol, "kJ/mol", terms...)
}

func (r *reader) released(symbol string, p *part, a neutralising.Acid) working.Num {
	terms, balanced := neutralising.Reaction(p.sub, a)
	if !balanced {
		return working.Absent(symbol, "kJ/mol", working.Lacks("heat_of_acid", p.sub.Name))
	}
	return r.hess(symbol, terms)
}

// hess is the heat released, in kJ, by what terms lists, from the enthalpies
// of formation of one data family: reactants minus products.
func (r *reader) hess(symbol string, terms []neutralising.Term) working.Num {
	in := make([]working.Num, len(terms))
	v := 0.0
	var formula strings.Builder
	for i, t := range terms {
		in[i] = r.c.Store.Num(datum.Of("enthalpy", t.Row))
		v -= t.X * in[i].V
		if r.w == nil {
			continue
		}
		in[i] = in[i].As("H_" + strconv.Itoa(i+1))
		formula.WriteString("-(" + strconv.FormatFloat(t.X, 'g', -1, 64) + ")*" + in[i].Symbol)
	}
	return r.w.Line(symbol, "kJ/mol", formula.String(), v, in...)
}
