package air

import (
	"maps"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// averages reports, where more than one step gives off a vapour, what a person
// beside all of them breathes on average over each time that a limit is averaged
// over: the worst such time of the steps one after the other. A step of its own is
// held to more the shorter it is; the steps together are not.
func (r *reader) averages() {
	parts := map[float64][]working.Num{}
	for _, a := range r.breathable() {
		steps, sources := r.spans(a.slug)
		if sources < 2 {
			continue
		}
		for _, window := range r.windows(a.slug) {
			v := r.average(steps, window)
			if l, there := r.averaged(a.slug, window); there && a.acid {
				c := v.As("C")
				parts[window] = append(parts[window], r.w.Line("C_L", "1", "C/L", c.V/l.V, c, l))
			}
			r.put("air.time_average", figure.Place{}, a.slug, figure.Over(window), v,
				phrase.Of("air.worst_of_steps"))
		}
	}
	for _, window := range slices.Sorted(maps.Keys(parts)) {
		if len(parts[window]) > 1 {
			r.put("air.additive", figure.Room, "", figure.Over(window), r.w.Sum("s", "1", parts[window]...),
				phrase.Of("air.averages_act_alike"))
		}
	}
}

// breathable are the vapours and the gases that steps form, each once.
func (r *reader) breathable() []agent {
	out := agents[:]
	for _, a := range r.formed {
		if !slices.ContainsFunc(out, func(b agent) bool { return a.slug == b.slug }) {
			out = append(slices.Clip(out), a)
		}
	}
	return out
}

// spans are the steps one after the other as far as a vapour and its mist are concerned,
// and how many times they give it off.
func (r *reader) spans(slug string) (steps []span, sources int) {
	for i := range r.c.Route.Steps {
		in := vapourIn{r.c.Route.Steps[i].Number, slug}
		if _, gives := r.breathed[in]; gives {
			sources++
		}
		if _, gives := r.drops[in]; gives {
			sources++
		}
	}
	if sources < 2 {
		return nil, sources
	}
	for i := range r.c.Route.Steps {
		s := &r.c.Route.Steps[i]
		in := vapourIn{s.Number, slug}
		x := span{breathed: r.breathed[in], time: r.c.Lasts(r.w, s)}
		if f, brief := r.brief[in]; brief && !x.breathed.None() {
			c := x.breathed.As("C")
			steps = append(steps, span{c, r.pours(s)})
			x.breathed = r.w.Line("C", "ppm", "C*f", c.V*f.V, c, f)
		}
		if m, there := r.drops[in]; there {
			sprayed, still := r.sprays(s, &m, x)
			steps = append(steps, sprayed, still)
			continue
		}
		steps = append(steps, x)
	}
	return steps, sources
}

// sprays parts a step in two: drops at their most for as long as all its gas would take at
// its largest flow, and the rest without. Whatever its gas does over time, no mean over any
// time is above that of the two one after the other:
//
//	t_m = t min(1, n_g/(F t))     [min: mol, mol/s, s]
func (r *reader) sprays(s *route.Step, m *droplets, x span) (with, without span) {
	with, without = x, x
	if x.breathed.None() {
		with.breathed = m.breathed
	} else {
		with.breathed = r.w.Sum("C", "ppm", x.breathed, m.breathed)
	}
	t, f := x.time.As("t"), r.bubbling(s.Number, m, r.lasts(s)).As("f")
	if f.Unknown() || t.Unknown() {
		without.time = working.Exact("t", "min", 0, "drops all the time")
		return with, without
	}
	with.time = r.w.Line("t_m", "min", "t*f", t.V*f.V, t, f)
	without.time = r.w.Line("t_r", "min", "t*(1-f)", t.V*(1-f.V), t, f)
	return with, without
}

// averaged is the strictest limit of an agent that is averaged over a time in min.
func (r *reader) averaged(slug string, minutes float64) (working.Num, bool) {
	all := limit.Strictest(slug, r.c.Jurisdiction())
	for i := range all {
		if e := &all[i]; e.Average == minutes {
			return working.Exact("L", "ppm", e.Value, e.Document+": "+e.Label), true
		}
	}
	return working.Num{}, false
}

// pours is how long the pours of a step take together, min: one, or one a cycle.
func (r *reader) pours(s *route.Step) working.Num {
	t := r.c.Store.Num("air.pour").As("t_p")
	n := working.Exact("n", "1", float64(max(s.Cycles, 1)), "pours of the step")
	for i := range r.k.Washes {
		if x := &r.k.Washes[i]; x.Step == s.Number && s.Cycles == 0 {
			n = x.Needed.As("n")
		}
	}
	return r.w.Line("t", "min", "n*t_p/60", n.V*t.V/60, n, t)
}

// windows are the times in min over which the limits of an agent are averaged.
func (r *reader) windows(slug string) []float64 {
	var out []float64
	take := func(minutes float64) {
		if minutes > 0 && !slices.Contains(out, minutes) {
			out = append(out, minutes)
		}
	}
	for _, e := range limit.Strictest(slug, r.c.Jurisdiction()) {
		take(e.Average)
	}
	for i := range r.c.Limits.Limits {
		if l := &r.c.Limits.Limits[i]; l.Origin == limit.Local && l.Quantity == "air.breathing_zone" &&
			(l.Agent == "" || l.Agent == slug) {
			take(l.Average)
		}
	}
	slices.Sort(out)
	return out
}

// span is a step: what is breathed in it, ppm, nothing where it gives none off,
// and how long it lasts, min.
type span struct{ breathed, time working.Num }

// average is the greatest mean over a window in min.
func (r *reader) average(steps []span, window float64) working.Num {
	w := working.Exact("t_w", "min", window, "time the limit is averaged over")
	in := []working.Num{w}
	var lasts, ppm []float64
	for _, s := range steps {
		there := !s.breathed.None()
		if there {
			in = append(in, s.breathed.As("C"))
		}
		t := s.time.V
		switch {
		case !s.time.Unknown():
			in = append(in, s.time)
		case there:
			t = window
		default:
			t = 0
		}
		lasts, ppm = append(lasts, t), append(ppm, s.breathed.V)
	}
	if missing := lacks(in); missing != nil {
		return working.Absent("C_t", "ppm", missing...)
	}
	return r.w.Model("C_t", "ppm", "greatest mean over such a time of the steps one after the other",
		mean(lasts, ppm, window), in...)
}

// mean is the greatest mean over a window of what stands at a value for a time
// each, one after the other. It begins with one of them or ends with one.
func mean(lasts, values []float64, window float64) float64 {
	end := make([]float64, len(lasts)+1) // of each, and what has come together by then
	sum := make([]float64, len(lasts)+1)
	for i := range lasts {
		end[i+1], sum[i+1] = end[i]+lasts[i], sum[i]+lasts[i]*values[i]
	}
	until := func(t float64) float64 {
		for i := range lasts {
			if t <= end[i+1] {
				return sum[i] + max(t-end[i], 0)*values[i]
			}
		}
		return sum[len(lasts)]
	}
	most := 0.0
	for _, t := range end {
		most = max(most, until(t+window)-until(t), until(t)-until(t-window))
	}
	return most / window
}
