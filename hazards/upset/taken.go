package upset

import (
	"slices"

	"etchbound/chemicals"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// bottle takes the bottle of another strong acid for the one that is written: as much
// of it, as strong as it is sold. The etch goes faster with what acid it has more.
func bottle(slug string) func(*route.Case, *course.Course) bool {
	return func(c *route.Case, n *course.Course) bool {
		s, ratio, found := sold(slug), 1.0, false
		eachIn(c, n, func(m *route.Material) {
			if !takenFor(m, slug) {
				return
			}
			if k, ok := swapped(c, m, s); ok {
				ratio, found = max(ratio, k), true
			}
		})
		if found && ratio > 1 {
			faster(c, ratio)
		}
		return found
	}
}

// untold reports whether a course holds a strong acid that could be another, but of
// which the strength is told in a way that says nothing of a bottle.
func untold(slug string) func(*route.Case, *course.Course) bool {
	return func(c *route.Case, n *course.Course) bool {
		found := false
		eachIn(c, n, func(m *route.Material) { found = found || takenFor(m, slug) })
		return found
	}
}

// sold is an acid in the bottle in which it can be taken for another.
func sold(slug string) chemicals.Strength {
	taken := chemicals.Strengths("taken")
	return taken[slices.IndexFunc(taken, func(s chemicals.Strength) bool { return s.Substance == slug })]
}

// takenFor reports whether another acid can be taken for a material: a strong acid that
// is not that one.
func takenFor(m *route.Material, slug string) bool {
	if m.Substance == nil || m.Substance.Slug == slug {
		return false
	}
	is := func(s chemicals.Strength) bool { return s.Substance == m.Substance.Slug }
	return slices.ContainsFunc(chemicals.Strengths("strong"), is) || slices.ContainsFunc(chemicals.Strengths("taken"), is)
}

// swapped makes a material another acid, and returns how many times the acid it then
// has; false where its strength is neither in mol/L nor a share of the mass.
func swapped(c *route.Case, m *route.Material, to chemicals.Strength) (ratio float64, ok bool) {
	s, held := chemicals.Library().Find(to.Substance)
	was := plain(c, m.Strength)
	step, unit, acid := to.Molar, "mol/L", s.Acid/m.Substance.Acid
	switch {
	case !held || !m.Strength.Set:
		return 1, false
	case m.Strength.Dim == quantity.MassFraction:
		mass := func(x *chemicals.Substance) float64 { return x.Formula.MolarMass(c.Store, nil).V }
		step, unit, acid = to.WT, "wt%", acid*mass(m.Substance)/mass(s)
	case m.Strength.Dim != quantity.Molarity:
		return 1, false
	}
	by := step / was.In(unit)
	m.Substance, m.Strength = s, was.Times(by)
	return by * acid, true
}

// poisons is what can form of each poisonous gas of a changed route that the route as
// it is meant does not make.
func (a *again) poisons() []phrase.Phrase {
	if a.r.w == nil || a.figs == nil {
		return nil
	}
	var out []phrase.Phrase
	for i := range a.n.Stages {
		place := figure.Step(a.n.Stages[i].Step.Number)
		for f := range a.figs.At("gas.evolved.bound", place) {
			gas, held := chemicals.Library().Find(f.Agent)
			if held && !f.Value.Unknown() && a.r.b.Gas.Get(f.ID) == nil {
				out = append(out, phrase.Of("upset.evolves", f.Value.V, gas.Name))
			}
		}
	}
	return out
}
