package course

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// The data of a wall that are of no material.
const (
	wallUnknown datum.ID = "wall.unknown" // of unknown make: heat transfer
	wallThick   datum.ID = "wall.thick"   // of what may be a tank
	wallOther   datum.ID = "wall.other"   // of a material without a wall of its own
	wallBig     datum.ID = "wall.big"     // capacity above which a thick one is taken
)

// stillAir is what still air takes from a vessel per area.
const stillAir datum.ID = "loss.still_air"

// wallOf is the id of the wall that such ware of a material usually has.
func wallOf(slug string) datum.ID { return datum.Of("wall", slug) }

// Unstated are the data of a store that stand for a wall or for the heat of a stirrer which
// nobody states, by id: true where a vessel gets hottest at the high end, that of a thickness.
func Unstated(st *chemicals.Store) map[datum.ID]bool {
	out := map[datum.ID]bool{wallUnknown: false, wallThick: true, wallOther: true, powerUnstated: true}
	materials := st.Materials().Rows()
	for i := range materials {
		if id := wallOf(materials[i].Slug); id != wallUnknown {
			if _, held := st.Row(id); held {
				out[id] = true
			}
		}
	}
	return out
}

// warmer is how far above a bath of ice a step may be set, in K, and still
// stand in it.
const warmer = 10

// cooling says what is around the vessel in a step and how well heat gets
// there:
//
//	nothing that cools   the room, or what heats the vessel to its set point; loss to still air
//	less than still air takes at least   likewise: what takes so little is no bath
//	a stated UA above what its films pass   as much as those pass of the wetted wall
//	while something goes in   the bath as stated, but where it then stands for a time
//	in any other step    the bath brought to the set temperature; ice stays ice
//	a jacket   the liquid in it, which that temperature comes into
//	a jacket of which flow, liquid or the power of its chiller is not stated   the room alone
func (f *finder) cooling(s *Stage) {
	p := f.c.Route.Place(s.Done.Place)
	if p == nil {
		s.Coolant, s.UA = working.Absent("T_c", "degC", working.Lacks("place", s.Done.Place)), working.Absent("UA", "W/K",
			working.Lacks("place", s.Done.Place))
		return
	}
	k := p.Cooling
	if k == nil || k.Kind == "none" {
		if k == nil {
			s.Loose = []working.Missing{working.Lacks(working.NotGiven, p.At+".cooling")}
		}
		f.inAir(s, "course.uncooled")
		return
	}
	s.Bath = true
	if !k.UA.Set { // what wall and films pass is an estimate, and no end of it bounds what comes later
		s.Loose = []working.Missing{working.Lacks(working.NotGiven, p.At+".cooling.ua")}
	}
	if s.Unsaid = unsaid(p); s.Unsaid != nil {
		s.Loose = append(s.Loose, s.Unsaid...)
		f.inAir(s, "course.jacket_unsaid")
		return
	}
	if s.Guessed = k.Kind == "ice_bath" && !k.Temperature.Set; s.Guessed {
		s.Loose = append(s.Loose, working.Lacks(working.NotGiven, p.At+".cooling.temperature"))
	}
	s.Coolant = f.bath(s, p)
	s.Cooled = phrase.Of(coolings[k.Kind])
	var least float64
	if k.UA.Set {
		s.UA = f.stated(s, k.UA)
		least = f.end(f.c.Given("UA", "W/K", k.UA), false)
	} else {
		area, u := f.area(s), working.Num{}
		u, least = f.through(s, p)
		s.UA = f.w.Line("UA", "W/K", "U*A", u.V*area.V, u, area)
	}
	s.Jacket = f.jacket(k, s.Coolant)
	f.orNone(s, s.UA.V*least)
}

// orNone takes a bath for none that passes less than still air takes at least. That is an end
// and itself never moved: no run with more air loses a bath by it. Where only the low end of what
// the wall passes, in W/K, is less, air and room are read all the same, to be moved with it.
func (f *finder) orNone(s *Stage, least float64) {
	area, u := f.area(s), f.c.Store.Num("upset.still_air").As("U_b")
	none := f.w.Line("UA_b", "W/K", "U_b*A", u.V*area.V, u, area)
	if s.Passes(nil).V < none.V {
		s.Bath, s.Iced, s.Jacket = false, false, nil
		f.inAir(s, "course.less_than_air")
		return
	}
	if j := s.Jacket; j != nil {
		least = least * j.least / (least + j.least)
	}
	if s.least = least; f.w != nil && least < none.V {
		f.air(s)
		f.around(s)
	}
}

// end is the low or high end of a datum or of what a writer states with a range, as a share of
// its value; 1 of what has none, and where nothing is traced that could be moved later.
func (f *finder) end(n working.Num, high bool) float64 {
	if f.w == nil {
		return 1
	}
	d, held := f.c.Store.Row(datum.ID(n.Ref()))
	switch {
	case !held || !d.Swings() || d.Value == 0:
		return 1
	case high:
		return d.High / d.Value
	}
	return d.Low / d.Value
}

// stated is what a bath or jacket takes as the route says, and no more than the films on both
// sides of the wetted wall can pass at their best, with no wall between: what was stated of a
// full vessel does not hold for a few drops in it.
//
//	UA = min(ua, A/(1/h_i + 1/h_o))
//
// Where it asks for more than half of that, the line says so though it is kept.
func (f *finder) stated(s *Stage, ua quantity.Value) working.Num {
	given, most := f.c.Given("UA", "W/K", ua), f.c.Store.Num("film.most").As("U_m")
	area := f.area(s)
	x := given.As("ua")
	switch {
	case !(given.V > most.V*area.V/2):
		return given
	case !(given.V > most.V*area.V):
		return f.w.Line("UA", "W/K", "min(ua,U_m*A)", given.V, x, most, area)
	}
	s.Cooled = phrase.Of("course.little_wetted")
	return f.w.Line("UA", "W/K", "min(ua,U_m*A)", min(x.V, most.V*area.V), x, most, area).Worse(working.Bound)
}

// inAir lets a stage lose heat to the still air of the room alone.
func (f *finder) inAir(s *Stage, how string) {
	s.Coolant, s.UA, s.Cooled = f.around(s), f.air(s), phrase.Of(how)
	s.least = s.UA.V * f.end(f.c.Store.Num(stillAir), false)
}

// around is how warm it is about a stage that stands in the room, or is heated there, degC.
func (f *finder) around(s *Stage) working.Num {
	room := f.c.Store.Num("room.temperature").As("T_r")
	return f.w.Line("T_c", "degC", "max(T,T_r)", max(s.Set.V, room.V), s.Set, room)
}

// air is what still air takes from a stage, W/K.
func (f *finder) air(s *Stage) working.Num {
	area, u := f.area(s), f.c.Store.Num(stillAir).As("U")
	return f.w.Line("UA", "W/K", "U*A", u.V*area.V, u, area)
}

func (f *finder) bath(s *Stage, p *route.Place) working.Num {
	k := p.Cooling
	var stated working.Num
	switch {
	case k.Temperature.Set:
		stated = f.c.Given("T_c", "degC", k.Temperature)
	case k.Kind == "ice_bath":
		stated = f.c.Store.Num("bath.ice").As("T_c") // and warmer where nobody stirs it
	default: // colder than the step it lets powder wait, warmer it takes less
		return working.Absent("T_c", "degC", working.Lacks(working.NotGiven, p.At+".cooling.temperature"))
	}
	goesIn := len(s.Step.What) > 0 && (s.Step.Over.Set || !s.Step.Time.Set)
	if goesIn || !(s.Set.V > stated.V) || (k.Kind == "ice_bath" && s.Set.V <= stated.V+warmer) {
		if s.Iced = k.Kind == "ice_bath"; s.Iced && !k.Ice.Set { // little of it is gone before anything reacts
			return working.Absent("T_c", "degC", working.Lacks(working.NotGiven, p.At+".cooling.ice"))
		}
		return stated
	}
	return s.Set.As("T_c")
}

// area is the wetted area of the liquor, as a cylinder as high as it is wide:
// A = 5 V/D with V = pi D^3/4.
func (f *finder) area(s *Stage) working.Num {
	v := s.Done.Contents().Volume(f.w)
	if more := s.Done.Contents().Unsaid(); more != nil {
		v = working.Absent("V", "mL", more...)
	}
	if p := f.c.Route.Place(s.Done.Place); p != nil && p.Capacity.Set && v.V > p.Capacity.In("mL")*
		float64(max(p.Count, 1)) {
		v = working.Absent("V", "mL", working.Lacks("room_for_liquor", p.Key))
	}
	x := v.As("V")
	const pi = 3.141592653589793
	d := f.w.Line("D", "m", "pow(4*V/1e6/3.141592653589793,1/3.0)", math.Pow(4*x.V/1e6/pi, 1/3.0), x)
	return f.w.Line("A", "m2", "5*V/1e6/D", 5*x.V/1e6/d.V, x, d)
}

// through is the overall coefficient of heat transfer from the liquor to the bath, and the
// least that it may be, as a share of it: 1/U = 1/h_i + t/k + 1/h_o. A wall of which anything
// is not known counts as one of unknown make.
func (f *finder) through(s *Stage, p *route.Place) (u working.Num, least float64) {
	st, slug := f.c.Store, f.insulates(p)
	if slug == "" {
		u = st.Num(wallUnknown).As("U")
		return u, f.end(u, false)
	}
	hi := st.Num("film.inside").As("h_i")
	inside := f.end(hi, false)
	if s.Step.Stirred != nil && !*s.Step.Stirred {
		x, still := hi.As("h"), st.Num("film.still").As("f")
		hi = f.w.Line("h_i", "W/m2/K", "h*f", x.V*still.V, x, still)
	}
	t, k, ho := f.thickness(p, slug), st.Num(datum.Of("conductivity", slug)).As("k"), st.Num("film.bath").As("h_o")
	u = f.w.Line("U", "W/m2/K", "1/(1/h_i+t/1000/k+1/h_o)", 1/(1/hi.V+t.V/1000/k.V+1/ho.V), hi, t, k, ho)
	most := 1/hi.V/inside + t.V*f.end(t, true)/1000/(k.V*f.end(k, false)) + 1/ho.V/f.end(ho, false)
	return u, 1 / most / u.V
}

// insulates is the material of a wall that conducts heat least, lining and shell
// alike: the whole wall counts as of it. It is "" where not all of the wall is known.
func (f *finder) insulates(p *route.Place) string {
	wall := f.c.Store.Materials().Read(p.Material)
	if !wall.Known() || wall.Hidden {
		return ""
	}
	least, slug := math.Inf(1), ""
	for _, m := range wall.All() {
		if _, held := f.c.Store.Row(datum.Of("conductivity", m.Slug)); !held {
			return ""
		}
		if k := f.c.Store.Num(datum.Of("conductivity", m.Slug)).V; !(k >= least) {
			least, slug = k, m.Slug
		}
	}
	return slug
}

// thickness of a wall is as stated, or as such ware usually has it. A vessel that may
// be a large one has the wall of a tank.
func (f *finder) thickness(p *route.Place, slug string) working.Num {
	st := f.c.Store
	usual := wallOther
	if _, held := st.Row(wallOf(slug)); held {
		usual = wallOf(slug)
	}
	big := st.Num(wallBig)
	switch {
	case p.Wall.Set:
		return f.c.Given("t", "mm", p.Wall)
	case !(p.Capacity.Set && p.Capacity.In("L") <= big.V):
		return st.Num(wallThick).As("t")
	}
	return st.Num(usual).As("t")
}
