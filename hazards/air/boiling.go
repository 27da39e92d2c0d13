package air

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Breath tells what an acid that boils off a liquor does to the air: near a person, in the
// room while it comes, and to the extract. n mol/s leave, all mol at the most, so that the
// room never holds more than that:
//
//	C_near = s Vm (n/Q + n/B),  C_room = s Vm min(n/Q, all/V_r),  Q_x = n Vm/L
func Breath(c route.Case, w *working.Sheet) func(step int, agent string, n, all working.Num, kase figure.Case,
	says phrase.Phrase) []figure.Figure {
	r := reader{c: c, w: w, vm: process.MolarVolume(c.Store, w), limits: map[string]*limit.Exposure{}}
	return func(step int, agent string, n, all working.Num, kase figure.Case, says phrase.Phrase) []figure.Figure {
		r.out = nil
		r.boiling(figure.ID{Place: figure.Step(step), Agent: agent, Case: kase}, n.As("n"), all.As("N"), says)
		return r.out
	}
}

func (r *reader) boiling(id figure.ID, n, all working.Num, says phrase.Phrase) {
	share, _ := r.leak()
	q, room, s := r.exchange(), r.room(), share.As("s")
	put := func(quantity string, v working.Num, cond phrase.Phrase) {
		r.put(quantity, id.Place, id.Agent, id.Case, v, cond)
	}
	breathed, near := r.near(n)
	put("air.breathing_zone", breathed, phrase.Of(near, says))
	c := r.w.Line("C", "ppm", "1e6*s*n*Vm/1000*3600/Q", 1e6*s.V*n.V*r.vm.V/1000*3600/q.V, s, n, r.vm, q)
	if !room.Unknown() {
		c = r.w.Line("C", "ppm", "1e6*s*Vm/1000*min(n*3600/Q,N/V_r)",
			1e6*s.V*r.vm.V/1000*min(n.V*3600/q.V, all.V/room.V), s, r.vm, n, q, all, room)
	}
	put("air.room_peak", c, phrase.Of("air.boils_in_room", says))
	if l, e := r.strictest(id.Agent); e != nil {
		put("air.exhaust_required", r.w.Line("Q", "m3/h", "n*Vm/1000*3600*1e6/L", n.V*r.vm.V/1000*3600*1e6/l.V, n, r.vm, l),
			phrase.Of("air.to_strictest_limit", e.ID))
	}
}
