package air

import (
	"math"
	"slices"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// gases reports what gas without a smell does to the air: oxygen left in the
// room, in the hood and in a cabinet, hydrogen in each, and carbon dioxide that
// lies on the floor.
func (r *reader) gases() {
	hydrogen := r.hydrogens()
	room := enclosure{figure.Room, r.c.RoomVolume("V"), "room.least", true}
	r.enclosed(&room, r.all(), hydrogen, phrase.Of("air.all_gas_in_room"))
	if !r.c.NoCabinet() {
		cabinet := enclosure{figure.Cabinet, r.c.CabinetVolume("V"), "cabinet.least", false}
		r.enclosed(&cabinet, r.all(), hydrogen, phrase.Of("air.all_gas_in_cabinet"))
	}
	r.hood()
	r.floor()
}

// hydrogens are the amounts of hydrogen that the route gives off, mol: all that each etch can
// give, of which what a step releases is a part, and that of what dissolves beside it.
func (r *reader) hydrogens() []working.Num {
	var out []working.Num
	for i := range r.k.Etches {
		e := &r.k.Etches[i]
		if !e.Hydrogen.None() && (e.Family != process.Molten || e.Hydrogen.Unknown()) {
			out = append(out, e.Hydrogen)
		}
		for j := range e.Dissolved {
			out = append(out, e.Dissolved[j].Hydrogen)
		}
	}
	return out
}

// all are the amounts of every gas that the route gives off, mol.
func (r *reader) all() []working.Num {
	out := r.hydrogens()
	for i := range r.k.Releases {
		if x := &r.k.Releases[i]; x.Gas != "H2" {
			out = append(out, x.N)
		}
	}
	return out
}

// enclosure is some air that gas comes into.
type enclosure struct {
	place  figure.Place
	volume working.Num // m3; unknown where no site says
	least  datum.ID    // of the least that a bench has
	purged bool        // inert gas of steps and of the site comes into it
}

// enclosed reports oxygen and hydrogen in some air that gas comes into and that
// as much leaves:
//
//	x = x0 exp(-v/V),  y = 1 - exp(-v/V)
func (r *reader) enclosed(e *enclosure, gas, hydrogen []working.Num, cond phrase.Phrase) {
	litres := func(n []working.Num) working.Num {
		x := r.w.Sum("n", "mol", n...).As("n")
		return r.w.Line("v", "L", "n*Vm", x.V*r.vm.V, x, r.vm)
	}
	var parts []working.Num
	if gas != nil {
		parts = append(parts, litres(gas))
	}
	own := parts
	if e.purged {
		parts = append(slices.Clip(own), r.purges(asStated)...)
	}
	if parts != nil {
		x0 := r.c.Store.Num("air.oxygen").As("x_0")
		left := func(parts []working.Num, V working.Num) working.Num {
			v := r.w.Sum("v", "L", parts...).As("v")
			return r.w.Line("x", "vol%", "x_0*exp(-v/1000/V)", x0.V*math.Exp(-v.V/1000/V.V), x0, v, V)
		}
		r.put("air.oxygen", e.place, "", figure.Case{}, left(parts, e.volume), cond)
		r.atWorst(func() working.Num {
			if e.purged {
				own = append(slices.Clip(own), r.purges(atWorst)...)
			}
			return left(own, r.c.AtWorst(e.volume, e.least))
		})
	}
	if hydrogen != nil {
		v := litres(hydrogen).As("v")
		share := func(V working.Num) working.Num {
			return r.w.Line("y", "vol%", "100*(1-exp(-v/1000/V))", 100*(1-math.Exp(-v.V/1000/V.V)), v, V)
		}
		r.put("air.hydrogen_share", e.place, "", figure.Case{}, share(e.volume), cond)
		r.atWorst(func() working.Num { return share(r.c.AtWorst(e.volume, e.least)) })
	}
}

// atWorst sets what the last figure comes to at worst, where it is not known.
func (r *reader) atWorst(worst func() working.Num) {
	if f := &r.out[len(r.out)-1]; f.Value.Unknown() {
		f.Worst = r.w.Keep(worst())
	}
}

// stating says what counts where nobody states how much gas comes: unknown, or as much as a
// bench has. What a site that nobody describes keeps is not there at worst.
type stating bool

const (
	asStated stating = false
	atWorst  stating = true
)

// purges are the volumes of inert gas that steps let flow, that the cylinder and the vessel
// of liquid nitrogen of the room hold, and that what something cold boils off comes to, L.
func (r *reader) purges(how stating) []working.Num {
	var out []working.Num
	for i := range r.c.Route.Steps {
		s := &r.c.Route.Steps[i]
		f, purged := r.purge(s)
		if !purged || !inert(s) {
			continue
		}
		time := s.Time
		if !time.Set {
			time = s.Over
		}
		t := r.c.Given("t", "min", time)
		if how == atWorst {
			f, t = r.c.AtWorst(f, purgeMost), r.c.AtWorst(t, "purge.longest")
		}
		f = f.As("F_p")
		out = append(out, r.w.Line("v", "L", "F_p*t", f.V*t.V, f, t))
	}
	for _, kept := range [...]func(stating) (working.Num, bool){r.bottled, r.dewar} {
		if v, there := kept(how); there {
			out = append(out, v)
		}
	}
	for _, v := range r.chill {
		if how == atWorst && v.Unknown() {
			v = r.nitrogen(r.c.Store.Num(dewarMost).As("V"))
		}
		out = append(out, v)
	}
	return out
}

// Data of what a bench has where nobody states it.
const (
	hoodLeast datum.ID = "hood.least" // flow of a hood
	purgeMost datum.ID = "purge.most" // flow of inert gas
)

// hood reports oxygen and hydrogen in all the air of the hood while the step that
// gives most gas gives it. What is at the mouth of the vessel is another matter.
//
//	y = F/(Q + F)
func (r *reader) hood() {
	q := r.c.HoodFlow("Q_h")
	most := r.largestGas(asStated)
	if most.None() {
		return
	}
	x0 := r.c.Store.Num("air.oxygen").As("x_0")
	left := func(f, q working.Num) working.Num {
		f = f.As("F")
		return r.w.Line("x", "vol%", "x_0*(1-F*0.06/(Q_h+F*0.06))", x0.V*(1-f.V*0.06/(q.V+f.V*0.06)), x0, f, q)
	}
	r.put("air.oxygen", figure.Hood, "", figure.Case{}, left(most, q), phrase.Of("air.oxygen_in_hood"))
	r.atWorst(func() working.Num { return left(r.largestGas(atWorst), r.c.AtWorst(q, hoodLeast)) })
	if h := r.largestHydrogen(); !h.None() {
		g := h.As("F")
		share := func(q working.Num) working.Num {
			return r.w.Line("y", "vol%", "100*F*0.06/(Q_h+F*0.06)", 100*g.V*0.06/(q.V+g.V*0.06), g, q)
		}
		r.put("air.hydrogen_share", figure.Hood, "", figure.Case{}, share(q), phrase.Of("air.hydrogen_in_hood"))
		r.atWorst(func() working.Num { return share(r.c.AtWorst(q, hoodLeast)) })
	}
}

// largestGas is the largest flow of hydrogen with inert gas over the steps, L/min; nothing where
// there is none.
func (r *reader) largestGas(how stating) working.Num {
	var most working.Num
	for i := range r.c.Route.Steps {
		s := &r.c.Route.Steps[i]
		var parts []working.Num
		if g := r.hydrogen(s.Number); !g.None() {
			n := g.As("n")
			parts = append(parts, r.w.Line("F", "L/min", "n*Vm*60", n.V*r.vm.V*60, n, r.vm))
		}
		if f, purged := r.purge(s); purged && inert(s) {
			if how == atWorst {
				f = r.c.AtWorst(f, purgeMost)
			}
			parts = append(parts, f)
		}
		if parts == nil {
			continue
		}
		f := r.w.Sum("F", "L/min", parts...)
		if most.None() || f.Unknown() || !most.Unknown() && f.V > most.V {
			most = f
		}
	}
	return most
}

// largestHydrogen is the largest flow of hydrogen over the steps, L/min.
func (r *reader) largestHydrogen() working.Num {
	var most working.Num
	for i := range r.c.Route.Steps {
		g := r.hydrogen(r.c.Route.Steps[i].Number)
		if g.None() {
			continue
		}
		n := g.As("n")
		f := r.w.Line("F", "L/min", "n*Vm*60", n.V*r.vm.V*60, n, r.vm)
		if most.None() || f.Unknown() || !most.Unknown() && f.V > most.V {
			most = f
		}
	}
	return most
}

// floor reports carbon dioxide that lies on the floor of the room, unmixed but
// for the layer it lies in, which changes as much of its air as the room does of all:
//
//	y   = 1 - (1 - y_1)(1 - y_2)...                           over the steps
//	y_i = G/(G + q) (1 - exp(-(G + q) t/V_l)),  G = s n Vm/t, q = Q h_l/h_r, V_l = V h_l/h_r
//
// What a hood takes counts as far as it is rated and tested: s is the share past it. What
// comes at once, or into a room whose exchange nobody states, is exchanged with nothing; that
// of dry ice comes at once, outside the hood.
func (r *reader) floor() {
	var parts []working.Num
	exchanged := false
	past, near := r.leak()
	share, layer, height := past.As("s"), r.c.Store.Num("air.floor_layer").As("h_l"),
		r.c.Store.Num("room.height").As("h_r")
	room := r.c.RoomVolume("V")
	volume := r.w.Line("V_l", "m3", "V*h_l/h_r", room.V*layer.V/height.V, room, layer, height)
	for i := range r.k.Releases {
		x := &r.k.Releases[i]
		if x.Gas != "CO2" {
			continue
		}
		n := x.N.As("n")
		v := r.w.Line("v", "m3", "s*n*Vm/1000", share.V*n.V*r.vm.V/1000, share, n, r.vm)
		s := &r.c.Route.Steps[x.Step-1]
		if t := r.c.Given("t", "s", s.Over); s.Over.Set && t.V > 0 && r.c.Site != nil && r.c.Site.RoomFlow.Set {
			parts, exchanged = append(parts, r.flushed(v, t, volume, layer, height)), true
			continue
		}
		parts = append(parts, r.w.Line("y", "1", "1-exp(-v/V_l)", 1-math.Exp(-v.V/volume.V), v, volume))
	}
	for i := range r.c.Route.Steps {
		s := &r.c.Route.Steps[i]
		n, cold := r.iced(s)
		if !cold {
			continue
		}
		n = n.As("n")
		v := r.w.Line("v", "m3", "n*Vm/1000", n.V*r.vm.V/1000, n, r.vm)
		parts = append(parts, r.w.Line("y", "1", "1-exp(-v/V_l)", 1-math.Exp(-v.V/volume.V), v, volume))
	}
	if parts == nil {
		return
	}
	free := working.Exact("f", "1", 1, "of the layer is air")
	for _, y := range parts {
		y = y.As("y")
		free = r.w.Line("f", "1", "f*(1-y)", free.V*(1-y.V), free, y)
	}
	cond := r.onFloor(near)
	if exchanged {
		cond = cond.And(phrase.Of("air.floor_exchanged"))
	}
	y := r.w.Line("y", "ppm", "1e6*(1-f)", 1e6*(1-free.V), free)
	r.put("air.floor", figure.Room, "carbon_dioxide", figure.Case{}, y, cond)
}

// flushed is the share of gas in the layer on the floor once a volume of it has come in a
// time.
func (r *reader) flushed(v, t, volume, layer, height working.Num) working.Num {
	room := r.exchange()
	g := r.w.Line("G", "m3/s", "v/t", v.V/t.V, v, t)
	q := r.w.Line("q", "m3/s", "Q/3600*h_l/h_r", room.V/3600*layer.V/height.V, room, layer, height)
	return r.w.Line("y", "1", "G/(G+q)*(1-exp(-(G+q)*t/V_l))",
		g.V/(g.V+q.V)*(1-math.Exp(-(g.V+q.V)*t.V/volume.V)), g, q, t, volume)
}

// onFloor says of the layer whether a hood takes most of it, with the date of its test.
func (r *reader) onFloor(near string) phrase.Phrase {
	if near == "air.near_source" {
		return phrase.Of("air.layer_on_floor")
	}
	return phrase.Of("air.layer_on_floor_past_hood", r.c.Site.Hood.TestDate)
}
