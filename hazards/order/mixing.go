package order

import (
	"etchbound/hazards/meeting"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Pair is two that are mixed in a step, the id of what is told of them, and what they do
// where they must not meet.
type Pair struct{ ID, Comes, There, Result string }

// Mixed is the pair that meets in a step, by the first row of the table that fits any
// two of it; false where nothing meets.
func Mixed(r *route.Route, k *process.Walk, step int) (Pair, bool) {
	var met []together
	meetings(r, k, func(s *route.Step, m *together) {
		if s.Number != step || len(m.there.subs) == 0 || len(m.comes.subs) == 0 {
			return
		}
		met = append(met, m.washed())
	})
	all := meeting.Mixtures()
	for i := range all {
		for j := range met {
			if p, fits := met[j].either(&all[i]); fits {
				return p, true
			}
		}
	}
	return Pair{}, false
}

// washed leaves out the acid that is there, or comes, where it meets base and is too
// little to warm the place; base that acid has used up before takes none of what comes.
func (m *together) washed() together {
	out := *m
	bases, _ := m.comes.tag("base")
	lies, _ := m.there.tag("base")
	if m.rise <= process.NoRise {
		out.there.held = out.there.held || bases == yes || lies == yes && !(m.there.acid > 0)
		out.comes.held = out.comes.held || bases == yes && !(m.comes.acid > 0) || lies == yes && !(m.there.acid > 0)
	}
	return out
}

// either is fits, whichever of the two comes.
func (m *together) either(x *meeting.Pair) (Pair, bool) {
	if p, fits := m.fits(x, x.A, x.B); fits {
		return p, true
	}
	return m.fits(x, x.B, x.A)
}

// fits reports whether what comes is of one tag and what is there of another.
func (m *together) fits(x *meeting.Pair, comes, there meeting.Side) (Pair, bool) {
	a, what := m.comes.has(comes)
	b, to := m.there.has(there)
	if of, one := comes.One(); one && anything(of) {
		what = m.comes.leading()
	}
	if of, one := there.One(); one && anything(of) {
		to = m.there.leading()
	}
	return Pair{x.Mixed, what, to, x.Result}, a == yes && b == yes
}

// leading is what names a liquor: what is in it beside water, and beside acid of which
// too little is left.
func (c *contents) leading() string {
	for _, s := range c.subs {
		if s.Solution != "water" && !(c.held && s.Acid > 0) {
			return s.Name
		}
	}
	for _, s := range c.subs {
		if s.Solution == "water" {
			return s.Name
		}
	}
	return ""
}
