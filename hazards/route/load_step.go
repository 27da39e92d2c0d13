package route

import (
	"fmt"

	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

func (l *loader) steps(root *schemas.Node, r *Route) []Step {
	var list []Step
	charged := &charge{acid: map[string]strongest{}, hasPowder: root.Wrote("precursor")}
	full := map[string]bool{}
	for i, n := range root.List("steps") {
		if !n.Usable(schemas.Map) {
			continue
		}
		l.known(n.Get("in"), root)
		l.known(n.Get("into"), root)
		l.filled(n, root, full)
		list = append(list, l.step(i+1, n, charged))
	}
	if r.Precursor != nil && charged.powder == nil && len(list) > 0 {
		l.notices = append(l.notices, "the precursor is never put in: no step has the word precursor")
	}
	return list
}

func (l *loader) step(number int, n *schemas.Node, c *charge) Step {
	s := Step{
		Number: number, Do: n.Str("do"), In: n.Str("in"), Into: n.Str("into"), Label: n.Str("label"), Note: n.Str("note"),
		Over: n.Value("over"), Portions: n.Int("portions", 0), PortionTime: n.Value("portion_time"),
		Time: n.Value("time"), Temperature: n.Value("temperature"), NotAbove: n.Value("not_above"),
		Product: n.Str("product"), Form: n.Str("form"),
		Attended: n.Bool("attended"), Stirred: n.Bool("stirred"), Cycles: n.Int("cycles", 0),
		Retained: n.Value("retained"), Part: n.Value("part"), Current: n.Value("current"), Voltage: n.Value("voltage"),
		Power:  n.Value("power"),
		Wetted: wetted(n),
		Water:  n.Str("water"), Gas: n.Str("gas"), GasFlow: n.Value("gas_flow"),
		Cryogen: n.Str("cryogen"), CryogenAmount: n.Value("cryogen_amount"), Keeps: VerbOf(n.Str("do")).Keeps(),
		At: n.Path,
	}
	if ph := n.Get("target_ph"); ph.Usable(schemas.Number) {
		x := ph.Number
		s.TargetPH = &x
	}
	if s.WaterStated = s.Water != ""; s.Do == "wash" && !s.WaterStated {
		s.Water = openAir
	}
	if s.Into != "" && s.Into == s.In {
		l.refuse(n.Near("into"), "into is the same place as in", "another place", "")
	}
	l.portions(n, s)
	l.quenched(n, s)
	s.What = l.materials(n, s, c)
	return s
}

// quenched refuses a step that names both what goes in and where it is poured to, or
// neither, where a verb takes one of the two.
func (l *loader) quenched(n *schemas.Node, s Step) {
	if VerbOf(s.Do).Moving == "" {
		return
	}
	into, what := n.Wrote("into"), n.Wrote("what")
	switch {
	case n.Has("into") && n.Has("what"):
		l.refuse(n.Near("what"), fmt.Sprintf("a %s step with what and into: what goes in, and where it is poured to", s.Do),
			"one of the two", "charge what receives it in a step before")
	case !into && !what:
		l.refuse(n, fmt.Sprintf("a %s step needs the key what or into", s.Do),
			"what: a list of materials that go in, or into: the place in which it is poured on to what stands there", "")
	case into && (s.Portions > 0 || s.NotAbove.Set):
		l.refuse(n, "a liquor poured into another place goes in portions, or is stopped at a temperature",
			"over: the time of pouring, without portions and not_above", "")
	}
}

// filled notices a step on the contents of a place into which nothing has come:
// a transfer was likely forgotten, and an empty place gives no figures.
func (l *loader) filled(n, root *schemas.Node, full map[string]bool) {
	in := n.Get("in")
	works := !n.Wrote("what")
	switch VerbOf(n.Str("do")).Needs {
	case "contents":
		works = true
	case "nothing":
		works = false
	}
	if works && in.Usable(schemas.Text) && root.Get("places").Has(in.Text) && !full[in.Text] {
		l.doubt(in, "nothing has been put into "+in.Text+" before this step", "add the step that brings something "+
			"there, such as {do: transfer, in: ..., into: "+in.Text+"}")
	}
	full[n.Str("in")], full[n.Str("into")] = true, true
}

// portionwise refuses portions of which nobody says over what time they come, and such
// as would still be going in when the next one comes.
func (l *loader) portionwise(n *schemas.Node, s Step) {
	switch each := s.PortionTime; {
	case s.Portions > 0 && !s.Over.Set && !n.Wrote("over"):
		l.refuse(n.Near("portions"), "portions of an addition that does not say how long it takes",
			"over: the time from the first portion to when one more would be due", "")
	case each.Set && s.Portions == 0 && !n.Wrote("portions"):
		l.refuse(n.Near("portion_time"), "the time of a portion in a step without portions",
			"portions: their number", "")
	case each.Set && s.Over.Set && s.Portions > 0 && each.SI*float64(s.Portions) > s.Over.SI*(1+1e-9):
		l.refuse(n.Near("portion_time"), fmt.Sprintf("%d portions of %s each take longer than %s", s.Portions, each.Text,
			s.Over.Text), "at most the time of the addition over the number of portions", "")
	}
}

// portions refuses parts of a whole that are nothing or all of it.
func (l *loader) portions(n *schemas.Node, s Step) {
	l.aboveZero(n, "time", "part", "current", "voltage", "power", "retained", "portion_time")
	l.portionwise(n, s)
	if v := s.Retained; v.Set && v.Dim == quantity.Fraction && v.SI >= 1 {
		l.refuse(n.Near("retained"), fmt.Sprintf("%s stays with the solid, so nothing is washed out", v.Text),
			"more than 0 % and less than 100 %", "")
	}
}
