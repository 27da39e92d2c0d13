package air

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/roots"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// warm reports what leaves the liquor of a step that reacts once its cooling has
// failed, and the temperature from which the hood or the air outside stands no
// more of it.
func (r *reader) warm(run *vessel.Run) {
	d := r.done(run.Plan.Step)
	p, s, place := r.place(d.Place), d.Contents(), figure.Step(d.Number)
	if p == nil || len(s.Liquid) == 0 {
		return
	}
	top := r.top(d)
	over := r.vapours(s, top)
	for i := range over {
		o := &over[i]
		M := r.molar(o.formula).As("M")
		n := r.surges(d, p, s, o, top).As("n")
		cond := phrase.Of("air.warm")
		if n.Unknown() && r.w != nil {
			cond = cond.And(r.already(d, p, s, o.slug))
		}
		r.put("air.warm_emission", place, o.slug, figure.Case{}, r.w.Line("m", "mg/min", "n*M*60000", n.V*M.V*60000, n, M),
			cond)
	}
	if p.Closure != route.Closed {
		r.boiled(d, s)
	}
	if over != nil {
		v, cond := r.hoodLimit(d, p, s, top)
		r.put("air.hood_limit", place, "", figure.Case{}, v, cond)
	}
}

// boiled bounds the acid that goes off with the liquor that the heat left over at boiling
// drives out, of all fluoride as HF and of HCl:
//
//	n_v = max(0, T_w - T_b) C/1000/L,  m = min(N, n_v) M
func (r *reader) boiled(d *process.Done, s *process.State) {
	boils, _ := course.Boiling(r.c, r.w, d)
	if boils.Unknown() {
		return // what is not known to boil is not told as boiling anywhere
	}
	capacity := s.HeatCapacity(r.w)
	if x := r.onto(d.Number); x != nil {
		capacity = x.Capacity
	}
	t, b, c, l := r.topIn(d, capacity).As("T_w"), boils.As("T_b"), capacity.As("C"),
		r.c.Store.Num("water.vaporisation").As("L")
	n := r.w.Line("n_v", "mol", "max(0,T_w-T_b)*C/1000/L", max(0, t.V-b.V)*c.V/1000/l.V, t, b, c, l)
	held := process.AcidsIn(r.w, s)
	for i := range agents {
		a := &agents[i]
		all := map[string]working.Num{"hf": held.Fluoride, "hcl": held.HCl}[a.slug]
		if all.None() || !all.Unknown() && all.V == 0 {
			continue
		}
		N, M := all.As("N"), r.molar(a.formula).As("M")
		r.put("air.boiled_off", figure.Step(d.Number), a.slug, figure.Case{}, r.w.Line("m", "g", "min(N,n_v)*M",
			math.Min(N.V, n.V)*M.V, N, n, M).Worse(working.Bound), phrase.Of("air.acid_boils_off"))
	}
}

// onto is how liquor is poured onto powder in a step; nil where none is.
func (r *reader) onto(step int) *course.Onto {
	for i := range r.courses {
		for j := range r.courses[i].Stages {
			if s := &r.courses[i].Stages[j]; s.Done.Number == step {
				return s.Onto
			}
		}
	}
	return nil
}

// already says what leaves at the highest temperature that vapour is known for.
func (r *reader) already(d *process.Done, p *route.Place, s *process.State, slug string) phrase.Phrase {
	quiet := r.quiet()
	t := r.c.Store.Num("vapour.highest").As("T")
	for _, o := range quiet.vapours(s, t) {
		n := quiet.surges(d, p, s, &o, t)
		if o.slug == slug && !n.Unknown() {
			M := quiet.molar(o.formula)
			return phrase.Of("air.warm_already", t.V, n.V*M.V*60000)
		}
	}
	return phrase.Phrase{}
}

func (r *reader) done(step int) *process.Done {
	for i := range r.k.Steps {
		if r.k.Steps[i].Number == step {
			return &r.k.Steps[i]
		}
	}
	return nil
}

// top is the highest temperature of a step if cooling fails while nothing has
// reacted, degC:
//
//	T + Q/C
func (r *reader) top(d *process.Done) working.Num { return r.topIn(d, d.Contents().HeatCapacity(r.w)) }

// topIn is top of a liquor that takes so many J/K.
func (r *reader) topIn(d *process.Done, capacity working.Num) working.Num {
	var heat []working.Num
	for _, e := range d.Etches {
		heat = append(heat, course.HeatOf(r.w, &r.k.Etches[e]))
	}
	t, q, c := d.Hot.As("T"), r.w.Sum("Q", "kJ", heat...), capacity.As("C")
	return r.w.Line("T_w", "degC", "T+Q*1000/C", t.V+q.V*1000/c.V, t, q, c)
}

// surges is what leaves an open liquor that got warm, mol/s: the more of its
// surface and of what the hydrogen carries.
func (r *reader) surges(d *process.Done, p *route.Place, s *process.State, o *vapour, t working.Num) working.Num {
	n := r.evaporates(o, r.surface(p, s), r.c.Store.Num("air.over_liquor"), t)
	if g := r.hydrogen(d.Number); !g.None() {
		a, b := n.As("a"), r.carried(o, g).As("b")
		n = r.w.Line("n_e", "mol/s", "max(a,b)", math.Max(a.V, b.V), a, b)
	}
	return n
}

// hoodLimit is the temperature at which what leaves the open liquor takes all the air
// of the hood down to its strictest short limit, or has to be scrubbed, degC. Where nothing is exceeded up to the
// highest temperature that vapour is known for, it is that one as long as the
// liquor gets no hotter, and not known if it does.
func (r *reader) hoodLimit(d *process.Done, p *route.Place, s *process.State, top working.Num) (working.Num,
	phrase.Phrase) {
	flow, known, from := r.c.HoodFlow("Q_h"), r.c.Store.Num("vapour.highest"), d.Hot.As("T")
	says := phrase.Of("air.hood_limit_at")
	if flow.Unknown() {
		return working.Absent("T_h", "degC", flow.Missing()...), says
	}
	quiet := r.quiet()
	share := func(celsius float64) float64 {
		t := working.Exact("T", "degC", celsius, "tried")
		most := math.Inf(-1)
		for _, o := range quiet.vapours(s, t) {
			n := quiet.surges(d, p, s, &o, t)
			if x := quiet.taken(&o, n.V, flow.V); math.IsNaN(x) || x > most {
				most = x
			}
			if math.IsNaN(most) {
				break
			}
		}
		return most - 1
	}
	in := []working.Num{flow, from, top, known}
	model := func(v float64) working.Num {
		return r.w.Model("T_h", "degC", "temperature at which what leaves the open liquor takes all the air of the hood "+
			"down to its strictest short limit, or has to be scrubbed", v, in...)
	}
	last := share(known.V)
	switch {
	case math.IsNaN(last) || flow.Unknown() || from.Unknown() || top.Unknown():
		var missing []working.Missing
		for _, o := range r.vapours(s, from) {
			missing = append(missing, o.pressure.Missing()...)
		}
		for _, x := range in {
			missing = append(missing, x.Missing()...)
		}
		if missing == nil {
			missing = []working.Missing{working.Lacks("vapour_warm", "")}
		}
		return working.Absent("T_h", "degC", missing...), says
	case last <= 0 && top.V <= known.V:
		return model(known.V).Worse(working.Bound), phrase.Of("air.hood_limit_above_known")
	case last <= 0:
		return working.Absent("T_h", "degC", working.Lacks("vapour_above_known", "")), says
	case from.V >= known.V || share(from.V) >= 0:
		return model(min(from.V, known.V)), phrase.Of("air.hood_limit_met")
	}
	root, err := roots.Find(share, from.V, known.V, 1e-3)
	if err != nil {
		return working.Absent("T_h", "degC", working.Lacks("root", "")), says
	}
	return model(root.X), says
}

// taken is the greater of two shares: of the air of the hood in m3/h that n mol/s
// need to come to the strictest short limit, and of what may leave unscrubbed.
func (r *reader) taken(o *vapour, n, flow float64) float64 {
	out := math.Inf(-1)
	if math.IsNaN(n) {
		return n
	}
	if l, e := r.strictest(o.slug); e != nil {
		out = n * r.vm.V / 1000 * 3600 * 1e6 / l.V / flow
	}
	for i := range r.c.Limits.Limits {
		if l := &r.c.Limits.Limits[i]; l.Quantity == "air.emission" && l.Agent == o.slug {
			M := r.molar(o.formula)
			out = math.Max(out, n*M.V*60000/l.Value)
		}
	}
	return out
}
