package scrubbing

import (
	"maps"
	"math"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/absorbing"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
	"etchbound/scaling/ends"
)

func sorted[T any](m map[string]T) []string { return slices.Sorted(maps.Keys(m)) }

// Line is the way from the vessel on: its bore for gas, and what it would have to be if
// liquor comes with the gas.
type Line struct {
	Bore     ends.Two // mm, for the gas
	Stated   float64  // mm; not a number where none is stated
	Velocity ends.Two // mm/s of gas through the surface
	Room     ends.Two // mL that swell and foam take
	Space    float64  // mL over the liquor
	Liquor   ends.Two // mm, if nothing but liquor leaves as fast as gas comes
	Failing  ends.Two // mm, the same at the flow if something fails
	Tenfold  ends.Two // mm, the same with ten times the powder
}

// TwoPhase is whether liquor leaves with the gas.
type TwoPhase string

// The answers.
const (
	Leaves  TwoPhase = "leaves"
	May     TwoPhase = "may" // at the dangerous end alone
	Stays   TwoPhase = "stays"
	Unknown TwoPhase = "unknown"
)

// Together is the gas velocity from which liquor counts as leaving with the gas, mm/s.
const Together = 50.0

// TwoPhase is whether liquor leaves with the gas, by the velocity of the gas and by the room
// over the liquor.
func (l *Line) TwoPhase() TwoPhase {
	over := func(j, room float64) bool { return j >= Together || room > l.Space }
	switch {
	case !(l.Velocity.Best >= 0 && l.Room.Best >= 0 && l.Space >= 0):
		return Unknown
	case over(l.Velocity.Best, l.Room.Best):
		return Leaves
	case !l.Velocity.Known() || !l.Room.Known():
		return Unknown
	case over(l.Velocity.Most, l.Room.Most):
		return May
	}
	return Stays
}

// line is the way from the vessel on. The bore for liquor bounds any mixture: what swells out
// is no more than the gas that takes its place, and none is heavier than liquor alone.
func (b *builder) line(n *course.Course) {
	l := &b.Line
	l.Stated, l.Space = math.NaN(), math.NaN()
	if b.Place.VentBore.Set {
		l.Stated = b.r.Case.Given("d", "mm", b.Place.VentBore).V
	}
	l.Bore = b.worst("gas.vent.bore_required")
	l.Velocity, l.Room = b.worst("gas.superficial_velocity"), b.worst("gas.free_volume.required")
	if n != nil && !n.Space.Unknown() {
		l.Space = n.Space.V
	}
	bores := b.bores()
	l.Liquor = bores(b.Gas)
	l.Failing, l.Tenfold = bores(b.Failing.Plus(b.Purge)), bores(b.Tenfold.Plus(b.Purge))
}

// bores is the bore in mm that flows of liquor in L/min take, each end with the line, the
// liquor and the margins of that end. Of a melt nobody says how it flows.
func (b *builder) bores() func(ends.Two) ends.Two {
	st := b.r.Case.Store
	var o [2]vessel.Outlet
	cd, rho, mu := b.datum("vent.discharge", low), b.datum("swell.density", high), b.datum("vent.liquor_viscosity", high)
	long, head := b.length(), ends.Same(0)
	if b.Place.Bubbler.Set {
		head = b.stated(b.Place.Bubbler, "m").By(st.Num("water.density").V * vessel.Gravity * 1000)
	}
	if slices.ContainsFunc(b.Steps, func(n int) bool { return b.r.Case.Route.Steps[n-1].Verb().Does == route.Melts }) {
		b.lacks("flow_of_melt", b.Place.Key)
		mu = ends.Unknown()
	}
	o[0] = vessel.Outlet{Discharge: cd.Best, Density: rho.Best, Viscosity: mu.Best, Line: long.Best, Head: head.Best}
	o[1] = vessel.Outlet{Discharge: cd.Most, Density: rho.Most, Viscosity: mu.Most, Line: long.Most, Head: head.Most}
	margin, most := st.Num("vent.margin").V/60000, 1000*st.Num("vent.back_pressure").V // both are chosen
	bore := func(o vessel.Outlet, flow float64) float64 {
		if math.IsNaN(o.Discharge + o.Density + o.Viscosity + o.Line + o.Head + flow) {
			return math.NaN()
		}
		return 1000 * o.Bore(margin*flow, most)
	}
	return func(flow ends.Two) ends.Two {
		return ends.Two{Best: bore(o[0], flow.Best), Most: bore(o[1], flow.Most)}
	}
}

// length is that of the line behind a vent, m.
func (b *builder) length() ends.Two {
	if b.Place.VentLine.Set {
		return b.stated(b.Place.VentLine, "m")
	}
	return b.datum("vent.line_unstated", high)
}

func (b *builder) worst(quantity string) ends.Two {
	x, there := b.most(quantity, b.Steps, meant)
	if !there {
		b.lacks("no_such_figure", quantity)
		return ends.Unknown()
	}
	return x
}

// Back is the liquor that is drawn back.
type Back struct {
	Cools    ends.Two // mL, when the vessel cools and its vapour condenses
	Dissolve ends.Two // mL, when the acid in its gas space dissolves
	Whole    ends.Two // mL: gas space and line, which is the most that can come
	Trap     ends.Two // mL that a trap has to hold
	Sweep    ends.Two // L of inert gas until no mixture can burn
}

// Oxygen in air, and the share below which no mixture with hydrogen burns, three fifths of
// the limit of 5 vol% in nitrogen, memory.
const (
	oxygen = 0.209
	inert  = 0.03
)

// back is what is drawn back. The gas space is at most the whole vessel, empty.
func (b *builder) back() {
	x, c := &b.Back, b.r.Case
	space := ends.Pair(b.Line.Space, math.NaN())
	if b.Place.Capacity.Set && !b.Place.Several() {
		space.Most = c.Given("V", "mL", b.Place.Capacity).V * float64(max(b.Place.Count, 1))
	} else {
		b.lacks(working.NotGiven, b.Place.At+".capacity")
	}
	x.Whole = space.Plus(b.tube())
	x.Cools = x.Whole // where nothing else is known of it
	if drawn, there := b.most("gas.suck_back", b.Steps, every); there && drawn.Known() {
		x.Cools = drawn
	}
	share := b.Dissolves
	for i := range b.Acids {
		share = share.Plus(b.Acids[i].Share)
	}
	x.Dissolve = ends.Pair(absorbing.Dissolved(x.Whole.Best, share.Best), absorbing.Dissolved(x.Whole.Most, share.Most))
	x.Trap = x.Cools.Plus(x.Dissolve)
	x.Trap = ends.Pair(math.Min(x.Trap.Best, x.Whole.Best), math.Min(x.Trap.Most, x.Whole.Most))
	x.Sweep = space.By(absorbing.Sweeps(oxygen, inert) / 1000)
}

// tube is what the line holds, mL: of the bore that is stated, or needed.
func (b *builder) tube() ends.Two {
	d := b.Line.Bore
	if b.Place.VentBore.Set {
		d = b.stated(b.Place.VentBore, "mm")
	}
	long := b.length()
	return ends.Two{Best: math.Pi / 4 * d.Best * d.Best * long.Best, Most: math.Pi / 4 * d.Most * d.Most * long.Most}
}

// Condenser is what would condense the vapour of a liquor that boils if cooling fails. It
// takes no hydrogen away, and over acid it is no barrier.
type Condenser struct {
	Steam ends.Two // L/min
	Duty  ends.Two // W
	Area  ends.Two // m2
	Cold  float64
}

// passes is what a small condenser of plastic or glass passes, W/(m2 K), memory.
const passes = 200.0

func (b *builder) condenser() {
	x := &b.Condenser
	there := false
	plain := func(id figure.ID) bool { return id.Case.IsZero() }
	if x.Steam, there = b.most("heat.boiled_off.flow", b.Steps, plain); !there {
		x.Steam = ends.Same(0)
		if courseIn(b.r, b.Place.Key) != nil {
			x.Steam = ends.Unknown()
			b.lacks("no_such_figure", "heat.boiled_off.flow")
		}
	}
	x.Duty = x.Steam.By(1000 * b.r.Case.Store.Num("water.vaporisation").V / litres / 60)
	boils, cold := math.Inf(1), math.NaN()
	for _, n := range b.Steps { // the lowest
		for f := range b.figs.At("heat.boiling_point", figure.Step(n)) {
			boils = math.Min(boils, b.of(f).Most)
		}
	}
	if s := b.r.Case.Site; s != nil && s.CoolingPoint.Set {
		cold = b.r.Case.Given("T", "degC", s.CoolingPoint).V
	} else if x.Steam.Most != 0 {
		b.lacks("coolant", "")
	}
	x.Cold = cold
	x.Area = x.Duty.Each(func(w float64) float64 {
		if w == 0 {
			return 0
		}
		return absorbing.Condenser(w, boils, cold, passes)
	})
}
