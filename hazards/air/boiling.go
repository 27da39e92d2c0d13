package air

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Breath tells what an acid that boils off a liquor does to the air: near a person, in the
// room while it comes, and to the extract. n mol/s leave, all mol at the most, so that the
// room never holds more than that:
//
//	C_near = min(1, C_room + s Vm n/B),  C_room = s Vm min(n/Q, all/V_r),  Q_x = n Vm/L
//
// Of a step as it is meant also what that is on average over each longer time t_w of a limit,
// over which the room keeps what it got, and of the acids of a step the sum of C/L:
//
//	C_t = s Vm (n/Q + n/B) min(1, all/(n t_w))
func Breath(c route.Case, w *working.Sheet) func(step int, agent string, n, all working.Num, kase figure.Case,
	says phrase.Phrase) []figure.Figure {
	r := reader{c: c, w: w, vm: process.MolarVolume(c.Store, w), limits: map[string]strict{},
		parts: map[int][]working.Num{}}
	return func(step int, agent string, n, all working.Num, kase figure.Case, says phrase.Phrase) []figure.Figure {
		r.out = nil
		r.boiling(figure.ID{Place: figure.Step(step), Agent: agent, Case: kase}, n.As("n"), all.As("N"), says)
		return r.out
	}
}

func (r *reader) boiling(id figure.ID, n, all working.Num, says phrase.Phrase) {
	share, near := r.leak()
	q, room, s := r.exchange(), r.room(), share.As("s")
	put := func(quantity string, v working.Num, cond phrase.Phrase) {
		r.put(quantity, id.Place, id.Agent, id.Case, v, cond)
	}
	c := r.w.Line("C", "ppm", "1e6*s*n*Vm/1000*3600/Q", 1e6*s.V*n.V*r.vm.V/1000*3600/q.V, s, n, r.vm, q)
	if !room.Unknown() {
		c = r.w.Line("C", "ppm", "1e6*s*Vm/1000*min(n*3600/Q,N/V_r)",
			1e6*s.V*r.vm.V/1000*min(n.V*3600/q.V, all.V/room.V), s, r.vm, n, q, all, room)
		near = map[string]string{"air.near_source": "air.near_source_all",
			"air.near_source_past_hood": "air.near_source_past_hood_all"}[near]
	}
	b, behind := r.c.Store.Num("air.near").As("B"), c.As("C_r")
	breathed := r.w.Line("C", "ppm", "min(1e6,C_r+1e6*s*n*Vm/1000*60/B)",
		min(1e6, behind.V+1e6*s.V*n.V*r.vm.V/1000*60/b.V), behind, s, n, r.vm, b)
	put("air.breathing_zone", breathed, phrase.Of(near, says))
	if id.Case == figure.By(figure.Boiling) {
		r.together(id, breathed, n, all, says)
	}
	put("air.room_peak", c, phrase.Of("air.boils_in_room", says))
	if l, e := r.strictest(id.Agent); e != nil {
		put("air.exhaust_required", r.w.Line("Q", "m3/h", "n*Vm/1000*3600*1e6/L", n.V*r.vm.V/1000*3600*1e6/l.V, n, r.vm, l),
			phrase.Of("air.to_strictest_limit", e.ID))
	}
}

// together is what boils off in a step as it is meant, averaged and beside the other acid.
func (r *reader) together(id figure.ID, breathed, n, all working.Num, says phrase.Phrase) {
	step, _ := id.Place.Step()
	steady, _ := r.near(n) // as if it went on until the room has filled
	c, kase := steady.As("C"), id.Case
	for _, window := range r.windows(id.Agent) {
		if window <= short { // over within it: the limit is held against all that comes
			continue
		}
		kase.Over = window
		t := working.Exact("t_w", "min", window, "time the limit is averaged over")
		r.put("air.boiled_average", id.Place, id.Agent, kase, r.w.Line("C_t", "ppm", "C*min(1,N/(n*t_w*60))",
			c.V*gone(all.V, n.V*window*60), c, all, n, t), phrase.Of("air.boils_on_average", says))
	}
	c = breathed.As("C")
	if l, e := r.strictest(id.Agent); e != nil {
		r.parts[step] = append(r.parts[step], r.w.Line("C_L", "1", "C/L", c.V/l.V, c, l))
	}
	if len(r.parts[step]) > 1 {
		r.put("air.additive", id.Place, "", id.Case, r.w.Sum("s", "1", r.parts[step]...), phrase.Of("air.act_alike"))
	}
}

// short is the time, min, within which what boils off is over.
const short = 15

// gone is the share of a time in which something leaves; nothing leaves in none of it.
func gone(all, most float64) float64 {
	if all == 0 {
		return 0
	}
	return min(1, all/most)
}
