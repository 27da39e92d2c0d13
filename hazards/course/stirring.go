package course

import (
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// powerUnstated is what a stirrer may put into a liquor of which nobody states it.
const powerUnstated datum.ID = "stirrer.power"

// warmsLittle is by how much a stirrer at its hardest may warm what it stirs without being
// counted, K: half of what the temperature of a room may differ by (room.temperature).
const warmsLittle = 7.5

// stirring sets the heat of the stirrer in a stage, W; it has no symbol where the step says that
// nobody stirs. Where nobody states it, there is none by best estimate and at most that of a
// stirrer at a bench:
//
//	P_s = p V
//
// and what a later step does is not known where the course can run away. It is left out, and the
// stage says so, where even that warms the liquor by no more than warmsLittle: its stirrer gives a
// fifth of it or less, and what moves with it is small beside what other data do.
func (f *finder) stirring(s *Stage) {
	p := f.c.Route.Place(s.Done.Place)
	if p == nil || s.Step.Stirred != nil && !*s.Step.Stirred {
		return
	}
	if p.StirrerHeat.Set {
		s.Stirring = f.c.Given("P_s", "W", p.StirrerHeat)
		return
	}
	if s.Unheated = f.w != nil && f.stirsLittle(s); s.Unheated {
		return
	}
	v, x := s.Done.Contents().Volume(f.w).As("V"), f.c.Store.Num(powerUnstated).As("p")
	s.Stirring = f.w.Line("P_s", "W", "p*V/1000", x.V*v.V/1000, x, v)
	s.Loose = append(s.Loose, working.Lacks(working.NotGiven, p.At+".stirrer_heat"))
}

// stirsLittle reports whether a stirrer at a bench warms a stage by no more than may be left out,
// where least is lost of what it puts in: p V/UA. A run that is not traced need not ask: what
// the traced one leaves out stands at its centre in it, which is none.
func (f *finder) stirsLittle(s *Stage) bool {
	d, held := f.c.Store.Row(powerUnstated)
	return held && d.Value == 0 && d.High*s.Done.Contents().Volume(nil).V/1000 <= warmsLittle*s.least
}

// still sets what a course that a stirrer heats loses to still air at its first stage.
func (f *finder) still(n *Course) {
	for i := range n.Stages {
		if !n.Stages[i].Stirring.None() {
			area, u := f.area(&n.Stages[0]), f.c.Store.Num("upset.still_air").As("U")
			n.Still = f.w.Line("UA", "W/K", "U*A", u.V*area.V, u, area)
			return
		}
	}
}
