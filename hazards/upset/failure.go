package upset

import (
	"math"
	"slices"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/vessel"
)

// failure is a vessel that goes on with other inputs from a moment on.
type failure struct {
	key string
	as  string // what follows, where other failures share it
	// needs is what a course needs for it to happen at all; nil: nothing.
	needs func(*course.Course) bool
	// when it can happen, s from the start of the course; false where it cannot.
	when func(*course.Course, *vessel.Plan) (from, to float64, ok bool)
	// then is what follows, in time counted from the failure.
	then func(p *vessel.Plan, t float64, s *setting) []vessel.Piece
	// uncooled says that nothing is lost: what a stirrer puts in is then counted up
	// to the rise at which still air would take it.
	uncooled bool
	stirs    bool       // a stirrer goes on: what follows is shared only where none heats
	heaps    bool       // powder lies as a heap and is wetted all at once
	mistake  bool       // something done wrong at the start rather than something that breaks
	uses     []datum.ID // rows of data it rests on
}

// setting is what the failures take from the data, in SI.
type setting struct {
	room, heater float64 // K
	still        float64 // share of the heat transfer that is left without stirring
	stop         float64 // s that a stirrer stands at least
	air          float64 // W/K that the vessel loses to still air; 0: not known
}

func (r *reader) setting() setting {
	st := r.c.Store
	return setting{room: st.Num("room.temperature").V + kelvin, heater: st.Num("upset.heater").V + kelvin,
		still: st.Num("film.still").V, stop: 60 * st.Num("upset.stirrer_stands").V}
}

// failures are looked for in time, in the order in which they are reported.
var failures = [...]failure{
	{key: "cooling_lost", as: "left_alone", stirs: true, uncooled: true, when: anyTime,
		then: func(p *vessel.Plan, t float64, _ *setting) []vessel.Piece { return stirred(p, t) }},
	{key: "cooling_lost_addition_on", uncooled: true, needs: slowly, when: adding,
		then: func(p *vessel.Plan, t float64, _ *setting) []vessel.Piece {
			return altered(dosing(rest(p, t)), func(x *vessel.Piece) { x.UA, x.Loss = 0, 0 })
		}},
	{key: "power_lost", as: "left_alone", when: alone,
		then: func(*vessel.Plan, float64, *setting) []vessel.Piece { return nil }},
	{key: "moved_unfinished", as: "left_alone", mistake: true, when: anyTime,
		then: func(*vessel.Plan, float64, *setting) []vessel.Piece { return nil }},
	{key: "stirrer_stops", heaps: true, needs: slowly, when: adding,
		uses: []datum.ID{"film.still", "upset.stirrer_stands"},
		then: standing},
	{key: "delayed_start", heaps: true, mistake: true, needs: first, when: fromStart,
		then: func(p *vessel.Plan, t float64, _ *setting) []vessel.Piece { return settled(rest(p, t), 0, 1) }},
	{key: "bath_wrong", mistake: true, needs: cooled, when: anyTime, uses: []datum.ID{"room.temperature"},
		then: func(p *vessel.Plan, t float64, s *setting) []vessel.Piece {
			return altered(rest(p, t), func(x *vessel.Piece) { x.Coolant, x.Iced = math.Max(x.Coolant, s.room), false })
		}},
	{key: "heater_on", needs: heated, when: anyTime, uses: []datum.ID{"upset.heater", "room.temperature"},
		then: func(p *vessel.Plan, t float64, s *setting) []vessel.Piece {
			on := false
			return altered(rest(p, t), func(x *vessel.Piece) {
				if on = on || x.Coolant > s.room; on {
					x.Coolant, x.Iced = math.Max(x.Coolant, s.heater), false
				}
			})
		}},
}

// follows names what follows from a failure of a plan.
func (f *failure) follows(p *vessel.Plan) string {
	if f.as == "" || f.stirs && heats(p) {
		return f.key
	}
	return f.as
}

// rest is what a plan has left after t, counted from there.
func rest(p *vessel.Plan, t float64) []vessel.Piece {
	out := vessel.After(p.Pieces, t)
	for i := range out {
		out[i].Step = 0
	}
	return out
}

// stirred is a vessel to which nothing happens but that it is stirred as it was
// at t; no piece where that gives no heat.
func stirred(p *vessel.Plan, t float64) []vessel.Piece {
	at := p.Pieces[len(p.Pieces)-1]
	if left := rest(p, t); left != nil {
		at = left[0]
	}
	if at.Stirring == 0 {
		return nil
	}
	return []vessel.Piece{{Until: followed, Stirring: at.Stirring}}
}

// limited ends the heat of stirring after a time.
func limited(pieces []vessel.Piece, idle float64) []vessel.Piece {
	var out []vessel.Piece
	at := 0.0
	for _, x := range pieces {
		if x.Stirring > 0 && x.Until > idle {
			if idle > at {
				y := x
				y.Until = idle
				out = append(out, y)
				x.Lift, x.Added = false, 0
			}
			x.Stirring = 0
		}
		at = x.Until
		out = append(out, x)
	}
	return out
}

// heats reports whether a stirrer heats in any piece of a plan.
func heats(p *vessel.Plan) bool {
	return slices.ContainsFunc(p.Pieces, func(x vessel.Piece) bool { return x.Stirring > 0 })
}

func altered(pieces []vessel.Piece, by func(*vessel.Piece)) []vessel.Piece {
	for i := range pieces {
		by(&pieces[i])
	}
	return pieces
}

// dosing is the part of some pieces up to the end of the last addition.
func dosing(pieces []vessel.Piece) []vessel.Piece {
	for i := len(pieces); i > 0; i-- {
		if pieces[i-1].Dose > 0 {
			return pieces[:i]
		}
	}
	return nil
}

// standing is a stirrer that stops until the end of the addition, and for some
// minutes at least.
func standing(p *vessel.Plan, t float64, s *setting) []vessel.Piece {
	return settled(rest(p, t), s.stop, s.still)
}

// settled lets what goes in lie as a heap until the addition is over, or for a
// time s where that comes later, with only a share of the heat transfer; then
// all of it is stirred up at once.
func settled(pieces []vessel.Piece, least, share float64) []vessel.Piece {
	end := 0.0
	if d := dosing(pieces); d != nil {
		end = d[len(d)-1].Until
	}
	end = math.Max(end, least)
	var out []vessel.Piece
	for i, x := range pieces {
		from := 0.0
		if i > 0 {
			from = pieces[i-1].Until
		}
		if from < end {
			y := x
			y.Until, y.Settled, y.Stirring = math.Min(x.Until, end), true, 0
			y.UA *= share
			out = append(out, y)
			x.Added = 0
		}
		if x.Until > end {
			x.Lift = from <= end
			out = append(out, x)
		}
	}
	return out
}

// The times in which a failure can happen.

func anyTime(_ *course.Course, p *vessel.Plan) (from, to float64, ok bool) {
	return 0, p.Pieces[len(p.Pieces)-1].Until, true
}

func fromStart(*course.Course, *vessel.Plan) (from, to float64, ok bool) { return 0, 0, true }

// adding is up to the end of the last addition that takes time.
func adding(_ *course.Course, p *vessel.Plan) (from, to float64, ok bool) {
	if d := dosing(p.Pieces); d != nil {
		return 0, d[len(d)-1].Until, true
	}
	return 0, 0, false
}

// alone is from the beginning to the end of what nobody attends. A hold of
// which the route does not say that somebody is there counts.
func alone(n *course.Course, p *vessel.Plan) (from, to float64, ok bool) {
	at := 0.0
	for _, x := range p.Pieces {
		s := stageOf(n, x.Step)
		if s != nil && x.Dose == 0 && (s.Step.Attended == nil || !*s.Step.Attended) {
			if !ok {
				from, ok = at, true
			}
			to = x.Until
		}
		at = x.Until
	}
	return from, to, ok
}

func stageOf(n *course.Course, piece int) *course.Stage {
	for i := range n.Stages {
		if n.Stages[i].Step.Number == piece/2 {
			return &n.Stages[i]
		}
	}
	return nil
}

// What a course needs for a failure.

// slowly reports whether an addition takes time.
func slowly(n *course.Course) bool {
	return slices.ContainsFunc(n.Stages, func(s course.Stage) bool { return s.Etches != nil && !s.AtOnce })
}

// tipped reports whether something goes in all at once as it is meant.
func tipped(n *course.Course) bool {
	return slices.ContainsFunc(n.Stages, func(s course.Stage) bool { return s.Tipped() })
}

// first reports whether the first addition takes time.
func first(n *course.Course) bool { return !n.Stages[0].AtOnce }

// cooled reports whether a bath colder than the usual room cools.
func cooled(n *course.Course) bool {
	return bath(n, func(s *course.Stage) bool { return s.Bath && s.Coolant.V < usualRoom })
}

// heated reports whether a step is set above the usual room.
func heated(n *course.Course) bool {
	return bath(n, func(s *course.Stage) bool { return s.Set.V > usualRoom || s.Bath && s.Coolant.V > usualRoom })
}

// usualRoom parts what cools from what heats, degC: the warm end of a room, so
// that the range of its temperature does not make a failure come and go.
const usualRoom = 30

func bath(n *course.Course, is func(*course.Stage) bool) bool {
	for i := range n.Stages {
		if s := &n.Stages[i]; !s.Coolant.Unknown() && is(s) {
			return true
		}
	}
	return false
}

// inputs are the rows a failure rests on, as a line has them.
func (r *reader) inputs(x *course.Run, f *failure) []working.Num {
	out := append([]working.Num(nil), x.Inputs...)
	for _, id := range f.uses {
		out = append(out, r.c.Store.Num(id))
	}
	return out
}
