package process

import (
	"math"

	"etchbound/chemicals/evolving"
	"etchbound/chemicals/working"
	"etchbound/hazards/route"
)

// unsaid is how long a step lasts that does not say so, s: as long as a failure is followed.
const unsaid = 30 * 86400

// slowly is as much of n mol of a gas as has come by the end of a step, of first order:
//
//	n (1 - exp(-sum k t))    k = k_90 exp(-E/R (1/T - 1/363.15))
//
// over the steps that what gives it has stood in since it went in. A step that sets no time
// counts thirty days, and one that sets no temperature has that of a room. There is none of
// a step that only moves it on.
func (k *walker) slowly(p *State, s *route.Step, from string, g *evolving.Gas, n working.Num) working.Num {
	at, of := gasAt{place: p.Place, gas: g.Sub}, gasAt{place: from, gas: g.Sub}
	if k.aged == nil {
		k.aged = map[gasAt]working.Num{}
	}
	was := k.aged[at]
	switch v := s.Verb(); {
	case from != "":
		if x := k.aged[of]; was.None() || !(x.V <= was.V) { // what is not known is the worse
			was = x
		}
	case v.Passive || v.Does == route.Moves || v.Does == route.Parts: // as long as it takes to pour
	default:
		y := k.aging(p, s, g)
		if was = y; !k.aged[at].None() {
			was = k.w.Sum("y", "1", k.aged[at], y)
		}
	}
	k.aged[at] = was
	if was.None() {
		return was
	}
	y, all := was.As("y"), n.As("n")
	return k.w.Line("n", "mol", "n*(1-exp(-y))", all.V*(1-math.Exp(-y.V)), all, y).Worse(working.Bound)
}

// aging is k t of a law of first order over a step.
func (k *walker) aging(p *State, s *route.Step, g *evolving.Gas) working.Num {
	T := p.Set.As("T")
	if T.None() || T.Unknown() {
		T = k.st.Num("handling.room").As("T")
	}
	t := working.Exact("t", "s", unsaid, "no time is stated")
	if s.Time.Set {
		t = k.c.Given("t", "s", s.Time)
	}
	if o := k.c.Given("t_o", "s", s.Over); s.Over.Set && s.Time.Set {
		t = k.w.Line("t", "s", "t+t_o", t.V+o.V, t, o)
	} else if s.Over.Set {
		t = o.As("t")
	}
	c, E := k.st.Num(g.Slow.Field("rate")).As("k_90"), k.st.Num(g.Slow.Field("activation")).As("E")
	R := k.st.Num("constant.R").As("R")
	return k.w.Line("y", "1", "k_90*t*exp(-E*1000/R*(1/(T+273.15)-1/363.15))",
		c.V*t.V*math.Exp(-E.V*1000/R.V*(1/(T.V+273.15)-1/363.15)), c, t, E, R, T)
}
