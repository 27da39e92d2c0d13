package route

import (
	"fmt"
	"slices"
	"strings"

	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

const (
	slack    = 0.5    // K by which a set temperature may miss its coolant
	coldRoom = 293.15 // K that any vessel comes to out of its bath; no room is taken to be colder
	icedMost = 283.15 // K up to which a vessel in an ice bath is taken to be held
	roomText = "20 degC"
)

func (l *loader) cooling(n *schemas.Node) *Cooling {
	if !n.Usable(schemas.Map) {
		return nil
	}
	c := &Cooling{Kind: n.Str("kind"), Temperature: n.Value("temperature"), UA: n.Value("ua"), Ice: n.Value("ice"),
		Bath: n.Value("bath"), Flow: n.Value("flow"), Liquid: n.Value("liquid"), Power: n.Value("power")}
	l.aboveZero(n, "bath", "flow", "liquid", "power")
	switch c.Kind {
	case "none":
		l.uncooled(n)
	case "ice_bath", "water_bath":
		l.unjacketed(n, c.Kind)
	}
	return c
}

// unjacketed refuses what only a jacket has, where a vessel stands in a bath.
func (l *loader) unjacketed(n *schemas.Node, kind string) {
	for _, key := range []string{"flow", "liquid", "power"} {
		if v := n.Value(key); v.Set {
			l.refuseKey(n, key, fmt.Sprintf("%s %s beside kind: %s, through which no chiller sends its liquid", key, v.Text,
				kind), "jacket as the kind, or "+kind+" without "+key, "")
		}
	}
}

// uncooled refuses what only a coolant has, where there is none.
func (l *loader) uncooled(n *schemas.Node) {
	for _, key := range []string{"temperature", "ua", "ice", "bath", "flow", "liquid", "power"} {
		if v := n.Value(key); v.Set {
			l.refuseKey(n, key, fmt.Sprintf("%s %s beside kind: none, where nothing cools", key, v.Text),
				"ice_bath, water_bath or jacket as the kind, or none without "+key, "")
		}
	}
}

// coolant is the temperature of what cools a place, not Set where it is not
// known or nothing does. An ice bath is at 0 degC unless it says otherwise.
func (p *Place) coolant() quantity.Value {
	switch {
	case p == nil || p.Cooling == nil || p.Cooling.Kind == "none":
		return quantity.Value{}
	case p.Cooling.Kind == "ice_bath" && !p.Cooling.Temperature.Set:
		return quantity.Of(0, "degC")
	}
	return p.Cooling.Temperature
}

// cools names what cools a place, for messages.
func (p *Place) cools() string {
	return "the " + strings.ReplaceAll(p.Cooling.Kind, "_", " ") + " of " + p.Key
}

func (r *Route) placeOf(key string) *Place {
	if i := slices.IndexFunc(r.Places, func(p Place) bool { return p.Key == key }); i >= 0 {
		return &r.Places[i]
	}
	return nil
}

// reach holds the temperatures of the steps against the coolants of their places.
func (l *loader) reach(root *schemas.Node, r *Route) {
	f := follower{places: map[string]standing{}}
	iced := map[string][]*Step{}
	for i := range r.Steps {
		s := &r.Steps[i]
		n, p := root.List("steps")[s.Number-1], r.placeOf(s.In)
		f.before(s)
		l.stopped(n, s, p)
		cool := p.coolant()
		if s.Verb().Cooled && f.places[s.In].liquid && s.Temperature.Set && cool.Set {
			l.reachable(n.Get("temperature"), s, p)
			if p.Cooling.Kind == "ice_bath" && s.Temperature.SI > max(icedMost, cool.SI+slack)+1e-9 {
				iced[s.In] = append(iced[s.In], s)
			}
		}
		f.after(s)
	}
	for i := range r.Places {
		l.thawed(root, &r.Places[i], iced[r.Places[i].Key])
	}
}

// reachable refuses a set temperature that is colder than the coolant. A bath
// warmer than the room is there to heat: out of it a vessel comes to the room.
func (l *loader) reachable(n *schemas.Node, s *Step, p *Place) {
	cool := p.coolant()
	least, text := cool.SI, cool.Text
	if least > coldRoom {
		least, text = coldRoom, roomText
	}
	if s.Temperature.SI >= least-slack-1e-9 {
		return
	}
	what := fmt.Sprintf("%s is set in step %d, and %s at %s cannot cool below that", s.Temperature.Text, s.Number,
		p.cools(), cool.Text)
	if cool.SI > coldRoom {
		what = fmt.Sprintf("%s is set in step %d, and neither %s at %s nor a room at %s can cool so far",
			s.Temperature.Text, s.Number, p.cools(), cool.Text, roomText)
	}
	l.refuse(n, what, text+" or more in this step, or a coolant of "+s.Temperature.Text+" or less", "")
}

// thawed notices set temperatures that no vessel keeps while it stands in ice.
func (l *loader) thawed(root *schemas.Node, p *Place, steps []*Step) {
	if len(steps) == 0 {
		return
	}
	var warm []string
	for _, s := range steps {
		warm = append(warm, fmt.Sprintf("%s in step %d", s.Temperature.Text, s.Number))
	}
	l.doubt(root.List("steps")[steps[0].Number-1].Near("temperature"),
		fmt.Sprintf("an ice bath at %s cannot hold %s: the review takes the vessel to stand in another bath at the "+
			"set temperature", p.coolant().Text, strings.Join(warm, " or ")), "")
}

// stopped refuses an addition that would be stopped before it begins. A bath
// warmer than the step is set is not the one the vessel stands in.
func (l *loader) stopped(n *schemas.Node, s *Step, p *Place) {
	if !s.NotAbove.Set {
		return
	}
	cool, set := p.coolant(), s.Temperature
	bathed := cool.Set && !(set.Set && set.SI < cool.SI-slack)
	begin := fmt.Sprintf("the addition of step %d is stopped at %s, ", s.Number, s.NotAbove.Text)
	switch {
	case set.Set && s.NotAbove.SI < set.SI-1e-9:
		l.refuse(n.Near("not_above"), begin+"below the "+set.Text+" that the step sets", set.Text+" or more", "")
	case bathed && s.NotAbove.SI <= cool.SI+1e-9:
		l.refuse(n.Near("not_above"), begin+"and "+p.cools()+" is at "+cool.Text, "more than "+cool.Text, "")
	}
}
