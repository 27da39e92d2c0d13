package air

import (
	"math"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// surface is a liquid surface as the sheet has it.
type surface struct {
	area  working.Num // m2
	board working.Num // m down from the rim; zero where none is known
}

const pi = 3.141592653589793

// surface of a liquor in a place: the vessel as a cylinder as high as it is wide,
// a tray as deep as trays are. How wide a vessel is that states no capacity, or that
// does not hold its liquor, nobody knows, nor how many tubes share one.
func (r *reader) surface(p *route.Place, s *process.State) surface {
	if r.w != nil { // every line is wanted
		return r.surfaceOf(p, s)
	}
	x, there := r.surfaces[lying{p, s}]
	if !there {
		if x = r.surfaceOf(p, s); r.surfaces == nil {
			r.surfaces = map[lying]surface{}
		}
		r.surfaces[lying{p, s}] = x
	}
	return x
}

// lying is a liquor in a place.
type lying struct {
	in *route.Place
	of *process.State
}

func (r *reader) surfaceOf(p *route.Place, s *process.State) surface {
	v := s.Volume(r.w).As("V")
	cap := working.Absent("V", "mL", working.Lacks(working.NotGiven, p.At+".capacity"))
	switch {
	case p.Several():
		cap = working.Absent("V", "mL", working.Lacks(working.NotGiven, p.At+".count"))
	case p.Capacity.Set:
		cap = r.c.Given("V_c", "mL", p.Capacity).As("V")
		if v.V > cap.V*float64(max(p.Count, 1))*(1+1e-9) {
			cap = working.Absent("V", "mL", working.Lacks("room_for_liquor", p.Key))
		}
	}
	var a, h working.Num
	if p.Kind == "tray" {
		deep := r.c.Store.Num("air.tray").As("h_t")
		h = r.w.Line("h", "m", "h_t/1000", deep.V/1000, deep)
		a = r.w.Line("A", "m2", "V/1e6/h", cap.V/1e6/h.V, cap, h)
	} else {
		a = r.cylinder(cap)
		h = r.w.Line("h", "m", "pow(4*V/1e6/3.141592653589793,1/3.0)", math.Pow(4*cap.V/1e6/pi, 1/3.0), cap)
	}
	liquid := v.As("V_l")
	board := r.w.Line("L", "m", "max(h-V_l/1e6/A,0)", max(h.V-liquid.V/1e6/a.V, 0), h, liquid, a)
	if p.Count > 1 { // of each, filled alike
		x := working.Exact("x", "1", float64(p.Count), "equal containers")
		board = r.w.Line("L", "m", "max(h-V_l/x/1e6/A,0)", max(h.V-liquid.V/x.V/1e6/a.V, 0), h, liquid, x, a)
		a = r.w.Line("A", "m2", "x*a", x.V*a.V, x, a.As("a"))
	}
	return surface{a, board}
}

// cylinder is the end of a cylinder of a volume in mL that is as high as it is
// wide, m2.
func (r *reader) cylinder(v working.Num) working.Num {
	d := r.w.Line("D", "m", "pow(4*V/1e6/3.141592653589793,1/3.0)", math.Pow(4*v.V/1e6/pi, 1/3.0), v)
	return r.w.Line("A", "m2", "3.141592653589793*D*D/4", pi*d.V*d.V/4, d)
}

// evaporates is what leaves a surface, mol/s, by the law that gives more:
//
//	k1 = 0.01757 U^0.78 M^(-1/3)               guidance for offsite consequences
//	k2 = 0.00479 U^0.78 d^(-0.11) Sc^(-0.67)   ponds and a wind tunnel
//	p' = -P ln(1 - p/P)                        what leaves carries more with it
//	n  = f A p'/(R T)/(1/max(k1,k2) + L/D)
func (r *reader) evaporates(o *vapour, x surface, air, celsius working.Num) working.Num {
	st := r.c.Store
	u, m, d, f := air.As("U"), r.molar(o.formula).As("M"), st.Num(o.moves).As("D"), st.Num("air.evaporation").As("f")
	a, l, R, P, p, t := x.area.As("A"), x.board.As("L"), st.Num("constant.R").As("R"), st.Num("gas.pressure").As("P"),
		o.pressure.As("p"), celsius.As("T")
	k1 := r.w.Line("k_1", "m/s", "0.01757*pow(U,0.78)*pow(M,-1/3.0)", 0.01757*math.Pow(u.V, 0.78)*math.Pow(m.V, -1/3.0),
		u, m)
	k2 := r.w.Line("k_2", "m/s", "0.00479*pow(U,0.78)*pow(sqrt(4*A/3.141592653589793),-0.11)*pow(1.56e-5/D,-0.67)",
		0.00479*math.Pow(u.V, 0.78)*math.Pow(math.Sqrt(4*a.V/pi), -0.11)*math.Pow(1.56e-5/d.V, -0.67), u, a, d)
	drive := r.w.Line("p_d", "kPa", "-P*log10(1-p/P)*2.302585092994046", -P.V*math.Log10(1-p.V/P.V)*2.302585092994046, P,
		p)
	return r.w.Line("n_e", "mol/s", "f*A*p_d*1000/(R*(T+273.15))/(1/max(k_1,k_2)+L/D)",
		f.V*a.V*drive.V*1000/(R.V*(t.V+kelvin))/(1/math.Max(k1.V, k2.V)+l.V/d.V), f, a, drive, R, t, k1, k2, l, d)
}

// The ways a vapour leaves the liquors of a step: keys of what is said of them.
var (
	evaporating = [moments]string{"air.open_surface", "air.open_surface_before", "air.open_surface_filled"}
	pouring     = [moments]string{"air.pouring", "air.pouring_before", "air.pouring_filled"}
	breaking    = [moments]string{"air.tube_breaks", "air.tube_breaks_before", "air.tube_breaks_filled"}
)

// carrier is a gas that leaves a vessel and what is said of the vapour it takes along:
// keys for it alone, and for it and the open surface together.
type carrier struct{ alone, both string }

var (
	byHydrogen = carrier{"air.carried_by_hydrogen", "air.carried_by_hydrogen_and_open"}
	byPurge    = carrier{"air.carried_by_purge", "air.carried_by_purge_and_open"}
	byBoth     = carrier{"air.carried_by_gases", "air.carried_by_gases_and_open"}
)

// leaving reports what leaves the liquors of a step as one vapour, and what of it
// reaches a person: the surface where a vessel stands open, what hydrogen and a purge
// carry along, and the air that a pour drives out.
func (r *reader) leaving(d *process.Done, all []liquor) {
	verb := r.c.Route.Steps[d.Number-1].Verb()
	any := all[0].over
	place, M := figure.Step(d.Number), r.molar(any.formula).As("M")
	var n, steady working.Num
	how, brief := "", false
	worse := func(v, than working.Num) bool {
		return than.None() || v.Unknown() || !than.Unknown() && v.V > than.V
	}
	take := func(v working.Num, way string) { // as long as the step lasts
		if worse(v, steady) {
			steady = v
		}
		if worse(v, n) {
			n, how, brief = v, way, false
		}
	}
	once := func(v working.Num, way string) { // within the time of a pour
		if worse(v, n) {
			n, how, brief = v, way, true
		}
	}
	for i := range all {
		x := &all[i]
		r.steadily(d.Number, x, take)
		if verb.Pours {
			once(r.poured(x.in, x.over), pouring[x.is])
		}
		if x.in != d.Filled && (verb.Spins == "yes" || verb.Spins == "tube" && x.place.Kind == "tube") {
			once(r.broken(x.over), breaking[x.is])
		}
	}
	if n.None() {
		return
	}
	x := n.As("n")
	in, m := vapourIn{d.Number, any.slug}, r.w.Line("m", "mg/min", "n*M*60000", x.V*M.V*60000, x, M)
	r.emitted[in] = m
	r.put("air.emission", place, any.slug, figure.Case{}, m, phrase.Of(how))
	r.exposure(in, any, n, how)
	if brief {
		goes := working.Exact("f", "1", 0, "nothing goes on leaving after the pour")
		if !steady.None() {
			y := steady.As("y")
			goes = r.w.Line("f", "1", "y/n", y.V/x.V, y, x)
		}
		r.brief[in] = goes
	}
}

// steadily takes what leaves one liquor as long as a step lasts: from its surface where
// the vessel stands open, and with the gas that comes out of it. What nobody stated is
// shut for pressure and open for vapour, and then both ways count together: the end of
// a range follows what moves its centre, and would miss the way that is less there.
func (r *reader) steadily(step int, x *liquor, take func(v working.Num, way string)) {
	stated := x.place.ClosureStated
	var both []working.Num
	if x.place.Closure == route.Open || !stated || x.open {
		v := r.evaporates(x.over, r.surface(x.place, x.in), r.c.Store.Num("air.over_liquor"), x.hot.As("T"))
		take(v, evaporating[x.is])
		both = append(both, v)
	}
	if x.is != left || x.place.Closure == route.Closed && stated {
		return
	}
	g, by := r.blown(step)
	if x.place.Closure == route.Vented {
		r.vented(x, g, take)
		return
	}
	if g.None() {
		return
	}
	v := r.carried(x.over, g)
	take(v, by.alone)
	if both = append(both, v); len(both) > 1 && !stated {
		take(r.w.Sum("n_e", "mol/s", both...), by.both)
	}
}

// vented takes what leaves a vented vessel: what the gas that comes out of it carries, and
// what goes through its vent beside that by diffusion.
func (r *reader) vented(x *liquor, gas working.Num, take func(v working.Num, way string)) {
	d := r.diffuses(x.over, x.place, x.hot.As("T"))
	if gas.None() {
		take(d, "air.through_vent")
		return
	}
	take(r.w.Sum("n_e", "mol/s", r.carried(x.over, gas), d), "air.through_vent_with_gas")
}

// diffuses is the vapour that goes through a vent by diffusion, mol/s: its bore and line,
// with what a hole of that bore resists by itself at its two ends:
//
//	n = A D p'/(R T)/(L + pi d/4),  A = pi d2/4
func (r *reader) diffuses(o *vapour, p *route.Place, celsius working.Num) working.Num {
	st := r.c.Store
	var bore, line working.Num
	if bore = r.c.Given("d", "mm", p.VentBore); !p.VentBore.Set {
		bore = st.Num("vent.bore_unstated").As("d")
	}
	if line = r.c.Given("L", "m", p.VentLine); !p.VentLine.Set {
		line = st.Num("vent.line_unstated").As("L")
	}
	m, R, P, q, t := st.Num(o.moves).As("D"), st.Num("constant.R").As("R"), st.Num("gas.pressure").As("P"),
		o.pressure.As("p"), celsius.As("T")
	x := working.Exact("x", "1", float64(max(p.Count, 1)), "equal containers")
	drive := r.w.Line("p_d", "kPa", "-P*log10(1-p/P)*2.302585092994046", -P.V*math.Log10(1-q.V/P.V)*2.302585092994046, P,
		q)
	d := bore.V / 1000
	return r.w.Line("n_d", "mol/s", "x*3.141592653589793*d*d/4e6*D*p_d*1000/(R*(T+273.15))/(L+3.141592653589793*d/4000)",
		x.V*pi*d*d/4*m.V*drive.V*1000/(R.V*(t.V+kelvin))/(line.V+pi*d/4), x, bore, m, drive, R, t, line)
}

// vapourIn is a vapour in a step.
type vapourIn struct {
	step int
	slug string
}

// blown is the gas that leaves a vessel in a step, mol/s, with what it is: hydrogen
// at its largest flow, and the purge.
func (r *reader) blown(step int) (working.Num, carrier) {
	g, flow, purged := r.rising(step, bothElectrodes), working.Num{}, false
	for i := range r.c.Route.Steps {
		if s := &r.c.Route.Steps[i]; s.Number == step {
			flow, purged = r.purge(s)
		}
	}
	switch {
	case !purged:
		return g, byHydrogen
	case g.None():
		return r.w.Line("F_n", "mol/s", "F/60/Vm", flow.V/60/r.vm.V, flow, r.vm), byPurge
	}
	n := g.As("n")
	return r.w.Line("F_n", "mol/s", "n+F/60/Vm", n.V+flow.V/60/r.vm.V, n, flow, r.vm),
		byBoth
}

// inert reports whether the gas of a step takes the place of air: any that is not
// air itself, or none.
func inert(s *route.Step) bool {
	words := strings.Fields(strings.ToLower(s.Gas))
	return len(words) == 0 || words[len(words)-1] != "air" && words[0] != "none"
}

// purge is the flow of gas that a step leads over its contents, L/min; not known
// where it names the gas and no flow, unless the place is shut.
func (r *reader) purge(s *route.Step) (working.Num, bool) {
	switch p := r.place(s.In); {
	case s.GasFlow.Set:
		return r.c.Given("F", "L/min", s.GasFlow), true
	case s.Gas == "" || !inert(s) || p != nil && p.Closure == route.Closed && p.ClosureStated:
		return working.Num{}, false
	}
	return working.Absent("F", "L/min", working.Lacks(working.NotGiven, s.At+".gas_flow")), true
}

// hydrogen is the largest flow of hydrogen in a step, mol/s; nothing where it gives none.
func (r *reader) hydrogen(step int) working.Num { return r.rising(step, 1) }

// rising is the gas that rises in a step, mol/s: that of the powder by the worst of its laws,
// and what a current makes beside it, times what comes with the hydrogen at the other
// electrode; nothing where there is none.
func (r *reader) rising(step int, times float64) working.Num {
	switch etched, current := r.etching(step), r.byCurrent(step, times); {
	case current.None():
		return etched
	case etched.None():
		return current
	default:
		return r.w.Sum("F_n", "mol/s", etched, current)
	}
}

// bothElectrodes is the gas of a cell over its hydrogen: half as much oxygen at the other.
const bothElectrodes = 1.5

// etching is the gas of the powder in a step, mol/s, by the worst of its laws.
func (r *reader) etching(step int) working.Num {
	if r.w != nil { // every line is wanted
		return r.etchingBy(step)
	}
	n, there := r.etched[step]
	if !there {
		if n = r.etchingBy(step); r.etched == nil {
			r.etched = map[int]working.Num{}
		}
		r.etched[step] = n
	}
	return n
}

func (r *reader) etchingBy(step int) working.Num {
	var worst working.Num
	for i := range r.courses {
		n := &r.courses[i]
		for j := range n.Runs {
			x := &n.Runs[j]
			during, after := x.Window(step)
			lacks := x.Lacks(step)
			v := working.Absent("F_n", "mol/s", lacks...)
			if lacks == nil {
				if during.Step == 0 && after.Step == 0 {
					continue
				}
				v = r.w.Model("F_n", "mol/s", x.Balance(), max(during.Gas.Value, after.Gas.Value), x.Inputs...)
			} else if !r.in(n, step) {
				continue
			}
			if worst.None() || v.Unknown() || !worst.Unknown() && v.V > worst.V {
				worst = v
			}
		}
	}
	return worst
}

// byCurrent is the hydrogen that a current gives in a step, mol/s, as evenly as it
// flows, times what comes with it; nothing in another step.
func (r *reader) byCurrent(step int, times float64) working.Num {
	s := &r.c.Route.Steps[step-1]
	if s.Verb().Does != route.Conducts {
		return working.Num{}
	}
	for i := range r.k.Etches {
		if e := &r.k.Etches[i]; e.Step == step {
			n, t, x := e.Hydrogen.As("n"), r.c.Given("t", "s", s.Time),
				working.Exact("x", "1", times, "gas of both electrodes over the hydrogen")
			return r.w.Line("F_n", "mol/s", "x*n/t", x.V*n.V/t.V, x, n, t)
		}
	}
	return working.Num{}
}

// carried is what a gas takes along when it leaves saturated:
//
//	n = F p/(P - p_t)
func (r *reader) carried(o *vapour, gas working.Num) working.Num {
	f, p, t, P := gas.As("F_n"), o.pressure.As("p"), o.total.As("p_t"), r.c.Store.Num("gas.pressure").As("P")
	if t.V >= P.V {
		return working.Absent("n_e", "mol/s", working.Lacks("carried_off", ""))
	}
	return r.w.Line("n_e", "mol/s", "F_n*p/(P-p_t)", f.V*p.V/(P.V-t.V), f, p, P, t)
}

// broken is the vapour in the air of a centrifuge in which a tube has broken, let
// out within the time of a pour.
func (r *reader) broken(o *vapour) working.Num {
	st := r.c.Store
	v, t, p := st.Num("air.chamber").As("V"), st.Num("air.pour").As("t"), o.pressure.As("p")
	R, T := st.Num("constant.R").As("R"), st.Num("gas.temperature").As("T")
	return r.w.Line("n_e", "mol/s", "V/1000/t*p*1000/(R*T)", v.V/1000/t.V*p.V*1000/(R.V*T.V), v, t, p, R, T)
}

// poured is the vapour in the air that the whole liquor drives out of what it is
// poured into, within the time of a pour:
//
//	n = V/t p/(R T)       at 25 degC
func (r *reader) poured(s *process.State, o *vapour) working.Num {
	st := r.c.Store
	v, t, p := s.Volume(r.w).As("V"), st.Num("air.pour").As("t"), o.pressure.As("p")
	R, T := st.Num("constant.R").As("R"), st.Num("gas.temperature").As("T")
	return r.w.Line("n_e", "mol/s", "V/1e6/t*p*1000/(R*T)", v.V/1e6/t.V*p.V*1000/(R.V*T.V), v, t, p, R, T)
}
