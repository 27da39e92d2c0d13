package handling

import (
	"slices"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

const kelvin = 273.15

// Read gives the figures of every step and place of a route.
func Read(c route.Case, w *working.Sheet, k process.Walk, _ []vessel.Run, _ []course.Course) []figure.Figure {
	r := reader{c: c, w: w, k: &k}
	for i := range k.Steps {
		d, s := &k.Steps[i], &c.Route.Steps[i]
		r.dust(d, s)
		r.before(d, s)
		r.oven(d, s)
		r.sonicated(d, s)
		r.spun(d, s)
		r.intercalated(d, s)
		r.quickened(d, s)
		r.fumes(d, s)
	}
	for i := range c.Route.Places {
		r.cake(&c.Route.Places[i])
		r.oxygen(&c.Route.Places[i])
	}
	return r.out
}

type reader struct {
	c   route.Case
	w   *working.Sheet
	k   *process.Walk
	out []figure.Figure
}

func (r *reader) put(quantity string, at figure.Place, agent string, v working.Num, says phrase.Phrase) {
	r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: quantity, Place: at, Agent: agent},
		Value: r.w.Keep(v), Conditions: says})
}

// num is a datum.
func (r *reader) num(id datum.ID, symbol string) working.Num { return r.c.Store.Num(id).As(symbol) }

// ofFlakes is a datum of flakes of this kind.
func (r *reader) ofFlakes(kind, symbol string) working.Num {
	if r.k.Layered == nil {
		return working.Absent(symbol, "", working.Lacks("storage_phase", ""))
	}
	return r.num(r.k.ByFamily(r.c.Store, kind), symbol)
}

// shared is one of the equal containers of a place, of what they hold together.
func (r *reader) shared(p *route.Place, v working.Num) working.Num {
	if p == nil || p.Count < 2 {
		return v
	}
	n := working.Exact("x", "1", float64(p.Count), "equal containers")
	return r.w.Line(v.Symbol, v.Unit, "m/x", v.V/n.V, v.As("m"), n)
}

// set is the temperature of a place in a step, degC; where nobody ever set one, that of a
// room.
func (r *reader) set(d *process.Done) working.Num {
	if t := d.Hot; !t.None() && !t.Unknown() {
		return t.As("T")
	}
	if t := d.After.Set; !t.None() && !t.Unknown() {
		return t.As("T")
	}
	return r.num("handling.room", "T")
}

// flakes is the mass of what was etched, as powder: the flakes are no heavier by more
// than a twentieth. Where nobody says which of two streams carries them, all count.
func (r *reader) flakes(s *process.State) working.Num { return r.solids(s, process.Product) }

func (r *reader) solids(s *process.State, kinds ...process.SolidKind) working.Num {
	var terms []working.Num
	for i := range s.Solids {
		if x := &s.Solids[i]; slices.Contains(kinds, x.Kind) && !x.Mass.None() {
			terms = append(terms, x.Mass)
		}
	}
	return r.w.Sum("m", "g", terms...)
}

// carried is a state with all the flakes that may be in it, where nobody says which of two
// streams carries them.
func (r *reader) carried(s *process.State) *process.State {
	made, may := r.k.MayHold(s)
	if len(made) == 0 && s.MayCarry > 0 {
		made = r.unfollowed(s.MayCarry)
		may = len(made) > 0
	}
	if !may {
		return s
	}
	x := *s
	x.Solids = slices.Clone(s.Solids)
	for _, m := range made {
		m.N, m.Mass, m.HeatCapacity = m.N.Worse(working.Bound), m.Mass.Worse(working.Bound),
			m.HeatCapacity.Worse(working.Bound)
		x.Solids = append(x.Solids, m)
	}
	return &x
}

// unfollowed are the solids that stood in the place of a step before it and of which nobody
// knows what an etch left.
func (r *reader) unfollowed(step int) []process.Solid {
	var out []process.Solid
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		for j := range d.Before.Solids {
			if x := &d.Before.Solids[j]; d.Number == step && x.Kind == process.Residual && x.N.Unknown() {
				out = append(out, *x)
			}
		}
	}
	return out
}

// liquid is the mass of the liquid of a place, g.
func (r *reader) liquid(s *process.State) working.Num {
	if more := s.Unsaid(); more != nil {
		return working.Absent("m_l", "g", more...)
	}
	var terms []working.Num
	for i := range s.Liquid {
		terms = append(terms, process.PartOf(r.w, &s.Liquid[i], s.Liquid[i].Mass))
	}
	return r.w.Sum("m_l", "g", terms...)
}
