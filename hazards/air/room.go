package air

import (
	"math"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/spread"
)

func (r *reader) in(n *course.Course, step int) bool {
	for i := range n.Stages {
		if n.Stages[i].Step.Number == step {
			return true
		}
	}
	return false
}

// exchange is what the room changes of its air, m3/h, as far as it mixes; not
// known where no site says.
func (r *reader) exchange() working.Num {
	switch {
	case !r.flow.None():
	case r.c.Site == nil || !r.c.Site.RoomFlow.Set:
		r.flow = working.Absent("Q", "m3/h", working.Lacks("site_room_flow", ""))
	default:
		q, m := r.c.Given("Q_r", "m3/h", r.c.Site.RoomFlow), r.c.Store.Num("air.mixing").As("f_m")
		r.flow = r.w.Line("Q", "m3/h", "Q_r*f_m", q.V*m.V, q, m)
	}
	return r.flow
}

// room is the air of the room, m3.
func (r *reader) room() working.Num {
	if r.volume.None() {
		r.volume = r.c.RoomVolume("V_r")
	}
	return r.volume
}

// leak is the share of an emission that reaches the room past the hood: its
// rated containment, at worst a hundred times that. A hood without a test date,
// a face velocity and a rating earns no credit. near is the key of what is said of it.
func (r *reader) leak() (share working.Num, near string) {
	s := r.c.Site
	if s == nil || s.Hood == nil || s.Hood.TestDate == "" || !s.Hood.FaceVelocity.Set || !s.Hood.Containment.Set {
		return working.Exact("s", "1", 1, "no hood with a test date, a face velocity and a rating"),
			"air.near_source"
	}
	c, f := r.c.Given("c", "1", s.Hood.Containment), r.c.Store.Num("air.hood").As("f_h")
	return r.w.Line("s", "1", "min(1,c*f_h)", min(1, c.V*f.V), c, f),
		"air.near_source_past_hood"
}

// exposure reports what a person near the source breathes in the end, and the
// extract that an open source would need:
//
//	C = s n Vm (1/Q + 1/B)
func (r *reader) exposure(in vapourIn, o *vapour, n working.Num, how string) {
	share, near := r.leak()
	place := figure.Step(in.step)
	b, q, x := r.c.Store.Num("air.near").As("B"), r.exchange(), n.As("n")
	v := r.w.Line("C", "ppm", "1e6*s*n*Vm/1000*(3600/Q+60/B)", 1e6*share.V*x.V*r.vm.V/1000*(3600/q.V+60/b.V), share, x,
		r.vm, q, b)
	r.breathed[in] = v
	r.put("air.breathing_zone", place, o.slug, figure.Case{}, v, phrase.Of(near, phrase.Of(how)))
	r.reaches(place, o, r.w.Line("G", "m3/s", "s*n*Vm/1000", share.V*x.V*r.vm.V/1000, share, x, r.vm))
	l, e := r.strictest(o.slug)
	if e == nil {
		return
	}
	need := r.w.Line("Q", "m3/h", "n*Vm/1000*3600*1e6/L", x.V*r.vm.V/1000*3600*1e6/l.V, x, r.vm, l)
	r.put("air.exhaust_required", place, o.slug, figure.Case{}, need,
		phrase.Of("air.to_strictest_limit", e.ID))
	if o.burns != nil { // it acts otherwise than acid
		return
	}
	part := r.w.Line("C_L", "1", "C/L", v.V/l.V, v.As("C"), l)
	r.parts[in.step] = append(r.parts[in.step], part)
}

// strictest is the lowest limit of an agent that holds for 15 minutes or at any
// moment at the site; none where there is none.
func (r *reader) strictest(slug string) (working.Num, *limit.Exposure) {
	out, known := r.limits[slug]
	if !known {
		if e := r.lowest(slug); e != nil {
			out = strict{working.Exact("L", "ppm", e.Value, e.Document+": "+e.Label), e}
		}
		r.limits[slug] = out
	}
	return out.value, out.of
}

// strict is a limit as the sheet has it; the zero strict is none.
type strict struct {
	value working.Num // ppm
	of    *limit.Exposure
}

func (r *reader) lowest(slug string) *limit.Exposure {
	var out *limit.Exposure
	take := func(e *limit.Exposure) {
		if e.Average <= 15 && (out == nil || e.Value < out.Value) {
			out = e
		}
	}
	all := limit.ExposureAt(slug, r.c.Jurisdiction())
	for i := range all {
		if e := &all[i]; e.Kind == limit.Work || e.Kind == limit.Advisory {
			take(e)
		}
	}
	for i := range r.c.Limits.Limits {
		if l := &r.c.Limits.Limits[i]; l.Origin == limit.Local && l.Quantity == "air.breathing_zone" &&
			(l.Agent == "" || l.Agent == slug) {
			take(&limit.Exposure{ID: l.ID, Agent: slug, Label: l.Label, Value: l.Value, Average: l.Average,
				Document: l.Document})
		}
	}
	return out
}

// additive reports what vapours that act alike take of their limits together.
func (r *reader) additive(step int) {
	if len(r.parts[step]) < 2 {
		return
	}
	v := r.w.Sum("s", "1", r.parts[step]...)
	r.put("air.additive", figure.Step(step), "", figure.Case{}, v,
		phrase.Of("air.act_alike"))
}

// reaches reports how soon a person near the source breathes a limit: the near
// field over time, with the room filling behind it.
func (r *reader) reaches(place figure.Place, o *vapour, gas working.Num) {
	limits := []struct {
		quantity string
		value    working.Num
	}{{"air.time_to_short_limit", working.Num{}}, {"air.time_to_idlh", working.Num{}}}
	limits[0].value, _ = r.strictest(o.slug)
	limits[1].value, _ = r.escape(o.slug)
	b, q, near := r.c.Store.Num("air.near").As("B"), r.exchange(), r.c.Store.Num("air.near_volume").As("V_n")
	room := r.room()
	for _, l := range limits {
		if l.value.None() {
			continue
		}
		in := []working.Num{gas, q, b, near, room, l.value}
		var t working.Num
		if missing := lacks(in); missing != nil {
			t = working.Absent("t", "min", missing...)
		} else {
			s := spread.Room{Volume: room.V, Flow: q.V / 3600}.NearReaches(gas.V, b.V/60, near.V, l.value.V*1e-6)
			t = r.w.Model("t", "min", "near field and room, both well mixed", min(s/60, aDay), in...)
		}
		r.put(l.quantity, place, o.slug, figure.Case{}, t, r.upTo(l.value.V))
	}
}

// upTo says up to which concentration a time lasts.
func (r *reader) upTo(ppm float64) phrase.Phrase {
	says, said := r.until[ppm]
	if !said {
		says = phrase.Of("air.until_ppm", ppm)
		r.until[ppm] = says
	}
	return says
}

// lacks is what is missing in any of some numbers, sorted and each once.
func lacks(in []working.Num) []working.Missing {
	var out []working.Missing
	for i := range in {
		if in[i].Unknown() {
			out = append(out, in[i].Missing()...)
		}
	}
	return working.Joined(out)
}

// spilt is the liquor that would be worst to spill of an agent.
type spilt struct {
	vapour
	volume, celsius working.Num
	holds           working.Num // mol of it in a bottle; none where nobody asks
	step            int
}

// keep remembers the liquor of which a spill gives off most: volume and pressure
// together say so.
func (r *reader) keep(d *process.Done, s *process.State, o *vapour) {
	v := s.Volume(r.w)
	x := spilt{vapour: *o, volume: v, celsius: d.Hot, step: d.Number}
	if r.worst == nil {
		r.worst = map[string]spilt{}
	}
	if w, there := r.worst[o.slug]; !there || x.worse(&w) {
		r.worst[o.slug] = x
	}
}

// worse reports whether a spill gives off more than another; what is not known
// gives off more than anything, and of two such the larger counts. Of what is dry nothing
// runs out, whatever its vapour.
func (x *spilt) worse(than *spilt) bool {
	a, b := x.evaporating(), than.evaporating()
	switch {
	case math.IsNaN(a) && math.IsNaN(b):
		return math.IsNaN(x.volume.V) || x.volume.V > than.volume.V
	case math.IsNaN(a) || math.IsNaN(b):
		return math.IsNaN(a)
	}
	return a > b
}

// evaporating is what stands for how much a spill gives off: volume times pressure, mL kPa.
func (x *spilt) evaporating() float64 {
	if x.volume.V == 0 {
		return 0
	}
	return x.volume.V * x.pressure.V
}

// spill reports the room after the largest liquor of the route runs out on the
// floor outside a hood:
//
//	A = V/h,  C = n Vm/Q,  t = -V_r/Q ln(1 - C_x Q/(n Vm))
func (r *reader) spill() {
	for _, a := range slices.Concat(agents[:], r.solventsOf()) {
		if x, ok := r.worst[a.slug]; ok {
			r.spilt(&x)
		}
	}
	r.burnsUnknown(figure.Spill)
}

// burnsUnknown reports of a place that nothing is known there of what may burn and of which
// nobody says what it is made of.
func (r *reader) burnsUnknown(place figure.Place) {
	for _, sub := range r.light {
		none := working.Absent("C", "ppm", working.Lacks("flammable", sub.Name))
		r.put("air.room_peak", place, sub.Slug, figure.Case{}, none, phrase.Of("air.burns_unknown"))
		r.put("air.room_flammable", place, sub.Slug, figure.Case{}, none, phrase.Of("air.burns_unknown"))
	}
}

func (r *reader) spilt(x *spilt) {
	r.pool(x, figure.Spill, phrase.Of("air.runs_out_on_floor", x.step))
}

// pool reports the room after a liquor runs out on its floor. A bottle that breaks gives
// off no more than it holds.
func (r *reader) pool(x *spilt, place figure.Place, cond phrase.Phrase) {
	st := r.c.Store
	v, h := x.volume.As("V"), st.Num("spill.depth").As("h")
	area := r.w.Line("A", "m2", "V/1e6/(h/1000)", v.V/1e6/(h.V/1000), v, h)
	none := working.Exact("L", "m", 0, "a pool on the floor")
	n := r.evaporates(&x.vapour, surface{area, none}, st.Num("air.room"), x.celsius).As("n")
	q := r.exchange()
	r.put("air.spill_area", place, x.slug, figure.Case{}, area, phrase.Of("air.film_on_floor"))
	p, atm := x.pressure.As("p"), st.Num("gas.pressure").As("P")
	c := r.w.Line("C", "ppm", "min(1e6*n*Vm/1000*3600/Q,p/P*1e6)", min(1e6*n.V*r.vm.V/1000*3600/q.V, p.V/atm.V*1e6), n,
		r.vm, q, p, atm)
	runsOut := !x.holds.None()
	if runsOut {
		c = r.untilEmpty(x, c, n, q)
	}
	r.put("air.room_peak", place, x.slug, figure.Case{}, c, phrase.Of("air.well_mixed", cond))
	if runsOut && x.burns == nil { // of solvents no emergency level is held
		r.put("air.room_peak", place, x.slug, figure.Over(firstMinutes), r.roomMean(x, c, q),
			phrase.Of("air.well_mixed_on_average", cond))
	}
	if x.burns != nil {
		r.lightIn(x, place, c, cond)
	}
	r.idlh(x, place, n, q, cond)
}

// firstMinutes is the time of the emergency level at which a room is left.
const firstMinutes = 10

// untilEmpty is the concentration when the bottle has given off all it holds, of a room
// of which the volume is known; in the end, of another.
//
//	C = C_s (1 - exp(-Q N/(n V_r)))
func (r *reader) untilEmpty(x *spilt, c, n, q working.Num) working.Num {
	vol, all, s := r.room(), x.holds.As("N"), c.As("C_s")
	if vol.Unknown() || all.Unknown() || c.Unknown() {
		return c
	}
	return r.w.Line("C", "ppm", "C_s*(1-exp(-Q/3600*N/max(n,1e-30)/V_r))",
		s.V*(1-math.Exp(-q.V/3600*all.V/max(n.V, 1e-30)/vol.V)), s, q, all, n, vol)
}

// roomMean bounds the mean over the first minutes: the peak, and all the bottle holds in
// the air that passes in that time.
func (r *reader) roomMean(x *spilt, c, q working.Num) working.Num {
	t, all, most := working.Exact("t_w", "min", firstMinutes, "time the emergency level is told for"), x.holds.As("N"),
		c.As("C")
	return r.w.Line("C_t", "ppm", "min(C,1e6*N*Vm/1000/(Q/60*t_w))", min(most.V, 1e6*all.V*r.vm.V/1000/(q.V/60*t.V)),
		most, all, r.vm, q, t).Worse(working.Bound)
}

// idlh is the time until the room is at the concentration immediately dangerous
// to life or health; a day where a bottle is empty before.
func (r *reader) idlh(x *spilt, place figure.Place, n, q working.Num, cond phrase.Phrase) {
	idlh, found := r.escape(x.slug)
	if !found {
		return
	}
	vol := r.room()
	t := working.Absent("t", "min", working.Joined(n.Missing(), q.Missing(), vol.Missing())...)
	if !n.Unknown() && !q.Unknown() && !vol.Unknown() && !idlh.Unknown() {
		room := spread.Room{Volume: vol.V, Flow: q.V / 3600}
		minutes, in := min(room.Reaches(n.V*r.vm.V/1000, idlh.V*1e-6)/60, aDay), []working.Num{n, r.vm, q, vol, idlh}
		if !x.holds.None() {
			in = append(in, x.holds.As("N"))
			if minutes*60*n.V > x.holds.V {
				minutes = aDay
			}
		}
		t = r.w.Model("t", "min", "well mixed room", minutes, in...)
	}
	r.put("air.time_to_idlh", place, x.slug, figure.Case{}, t,
		phrase.Of("air.well_mixed_until", cond))
}

// escape is the concentration immediately dangerous to life or health.
func (r *reader) escape(slug string) (working.Num, bool) {
	e, known := r.escapes[slug]
	if !known {
		all := limit.ExposureAt(slug, "")
		for i := range all {
			if all[i].Kind == limit.Escape {
				e = &all[i]
			}
		}
		r.escapes[slug] = e
	}
	if e == nil {
		return working.Num{}, false
	}
	return working.Exact("C_x", "ppm", e.Value, e.Document), true
}

// aDay in min is as long as a room is followed.
const aDay = 1440
