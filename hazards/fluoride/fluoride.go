package fluoride

import (
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Read gives the fluoride figures of a walk: for each step the liquor it
// leaves, and for each place that received something since, what it holds at the end.
func Read(c route.Case, w *working.Sheet, k process.Walk, _ []vessel.Run, _ []course.Course) []figure.Figure {
	r := reader{out: make([]figure.Figure, 0, usual), c: c, w: w, k: &k}
	r.hf, r.f = process.MolarMass(c.Store, w, "HF").As("M_HF"), process.MolarMass(c.Store, w, "F").As("M_F")
	last := map[string]bool{} // places whose last state is that after a step in them
	for i := range k.Steps {
		d := &k.Steps[i]
		s := &c.Route.Steps[d.Number-1]
		last[d.Place] = true
		if s.Into != "" { // also where what it poured to is what the step tells of
			last[s.Into] = false
		}
		r.state(figure.Step(d.Number), &d.After, r.etched(d.Number), len(d.Etches) > 0)
	}
	for i := range k.Ends {
		if s := &k.Ends[i]; !last[s.Place] {
			r.state(figure.At(s.Place), s, true, false)
		}
	}
	return r.out
}

// usual is room for the figures of a usual route.
const usual = 40

type reader struct {
	c     route.Case
	w     *working.Sheet
	k     *process.Walk
	hf, f working.Num
	out   []figure.Figure
}

func (r *reader) put(quantity string, place figure.Place, v working.Num, conditions phrase.Phrase) {
	r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: quantity, Place: place}, Value: r.w.Keep(v),
		Conditions: conditions})
}

// etched reports whether any powder has met etchant by the step.
func (r *reader) etched(step int) bool {
	return slices.ContainsFunc(r.k.Etches, func(e process.Etch) bool { return e.Step <= step })
}

// state reports the fluoride of one place at one time, if it holds any. What
// the product has taken up is not credited while it lies in the etch liquor.
func (r *reader) state(place figure.Place, s *process.State, etched, whole bool) {
	var fluor, volume, mass []working.Num
	for i := range s.Liquid {
		q := &s.Liquid[i]
		if holds(q) {
			fluor = append(fluor, process.Element(r.w, q, "F"))
		}
		volume, mass = append(volume, process.PartOf(r.w, q, q.Volume)), append(mass, process.PartOf(r.w, q, q.Mass))
	}
	if fluor == nil {
		return
	}
	n := r.w.Sum("n_F", "mol", fluor...)
	if whole {
		n = r.w.Sum("n_F", "mol", append([]working.Num{n}, process.TakenUp(r.w, s)...)...)
	}
	v, m := r.w.Sum("V", "mL", volume...), r.w.Sum("m", "g", mass...)
	if s.Unsaid() != nil {
		r.atMost(place, etched)
		return
	}
	r.put("fluoride.total", place, r.w.Line("m_F", "g as F", "n_F*M_F", n.V*r.f.V, n, r.f), phrase.Of("fluoride.whole"))
	g := r.w.Line("m_HF", "g as HF", "n_F*M_HF", n.V*r.hf.V, n, r.hf)
	r.put("fluoride.hf_equivalent", place, g, phrase.Of("fluoride.as_hf", r.short(s, n)))
	if wet(s) { // a dried solid has no liquor to be strong
		r.put("fluoride.hf_concentration", place, r.w.Line("c_HF", "mol/L", "n_F/max(V,1e-9)*1000", n.V/max(v.V, 1e-9)*1000,
			n, v), phrase.Of("fluoride.over_volume"))
		r.put("fluoride.hf_strength", place, r.w.Line("w_HF", "wt%", "m_HF/max(m,1e-9)*100", g.V/max(m.V, 1e-9)*100, g, m),
			phrase.Of("fluoride.over_mass"))
	}
	if etched {
		r.free(place, s, n)
	}
}

// atMost bounds the fluoride of a place that received nobody knows how much: no
// more than the whole route brings, and no stronger than any liquor before it,
// since mixing does not concentrate.
func (r *reader) atMost(place figure.Place, etched bool) {
	n := working.Absent("n_F", "mol", working.Lacks("fluorine_of_route", ""))
	if r.k.Open != nil {
		n = working.Absent("n_F", "mol", r.k.Open...)
	}
	for _, b := range r.k.Account {
		if b.Element == "F" && b.In == b.In && r.k.Open == nil {
			n = working.Exact("n_F", "mol", b.In, "all fluorine that went into the route").Worse(working.Bound)
		}
	}
	g := r.w.Line("m_HF", "g as HF", "n_F*M_HF", n.V*r.hf.V, n, r.hf)
	r.put("fluoride.total", place, r.w.Line("m_F", "g as F", "n_F*M_F", n.V*r.f.V, n, r.f),
		phrase.Of("fluoride.at_most_route"))
	r.put("fluoride.hf_equivalent", place, g, phrase.Of("fluoride.at_most_route"))
	if etched {
		r.put("fluoride.free_hf", place, g, phrase.Of("fluoride.at_most_route"))
	}
	r.put("fluoride.hf_concentration", place, r.strongest("fluoride.hf_concentration", "c_HF", "mol/L"),
		phrase.Of("fluoride.at_most_strongest"))
	r.put("fluoride.hf_strength", place, r.strongest("fluoride.hf_strength", "w_HF", "wt%"),
		phrase.Of("fluoride.at_most_strongest"))
}

// strongest is the greatest figure of a quantity so far; unknown if one is.
func (r *reader) strongest(quantity, symbol, unit string) working.Num {
	if r.k.Open != nil { // what it was washed with may be stronger
		return working.Absent(symbol, unit, r.k.Open...)
	}
	out := working.Absent(symbol, unit, working.Lacks("strengths_before", ""))
	for i := range r.out {
		v := r.out[i].Value
		if r.out[i].Quantity != quantity {
			continue
		}
		if v.Unknown() {
			return v
		}
		if out.Unknown() || v.V > out.V {
			out = v
		}
	}
	return out.Worse(working.Bound)
}

// wet reports whether any liquid was mixed in a place and not dried off.
func wet(s *process.State) bool {
	return slices.ContainsFunc(s.Liquid, func(q process.Pool) bool { return q.Volume.V != 0 })
}

// holds reports whether fluorine went into a pool, however little of it is left:
// a figure must not come and go as the data move.
func holds(q *process.Pool) bool {
	i, _ := chemicals.ElementIndex("F")
	return slices.ContainsFunc(q.Entries, func(e process.Entry) bool { return e.Count(i) != 0 })
}

// short says how much HF the acid at hand can form, where that is less than
// all of the fluorine.
func (r *reader) short(s *process.State, n working.Num) phrase.Phrase {
	acid := 0.0
	for i := range s.Liquid {
		acid += process.Total(nil, &s.Liquid[i], "n_acid", (*process.Entry).Free).V
	}
	if acid >= n.V || acid != acid {
		return phrase.Phrase{}
	}
	return phrase.Of("fluoride.acid_short", figure.Round(max(acid, 0)*r.hf.V, 3))
}

// free is the fluoride that is not bound to aluminium, HF2- and F- included.
// Other dissolved metals have no table: unknown.
func (r *reader) free(place figure.Place, s *process.State, n working.Num) {
	var al []working.Num
	for i := range s.Liquid {
		q := &s.Liquid[i]
		if x := q.Stranger(); x != nil {
			r.put("fluoride.free_hf", place, working.Absent("m_HF", "g as HF", x.Lacks()),
				phrase.Of("fluoride.unheld_binds", x.Name))
			return
		}
		for j := range q.Entries {
			for el, x := range q.Entries[j].Of {
				sym := chemicals.ElementSymbol(el)
				if x == 0 || !metal(sym) || q.Entries[j].N.V == 0 {
					continue
				}
				if sym != "Al" {
					r.put("fluoride.free_hf", place, working.Absent("m_HF", "g as HF", working.Lacks("complexes", sym)),
						phrase.Of("fluoride.no_complexes"))
					return
				}
			}
		}
		al = append(al, process.Element(r.w, q, "Al"))
	}
	a := r.w.Sum("n_Al", "mol", al...)
	if a.V == 0 && !a.Unknown() {
		return
	}
	y := r.perAluminium(s, n, a)
	v := r.w.Line("m_HF", "g as HF", "max(n_F-y*n_Al,0)*M_HF", max(n.V-y.V*a.V, 0)*r.hf.V, n, y, a, r.hf)
	r.put("fluoride.free_hf", place, v.Worse(working.Estimated), phrase.Of("fluoride.estimate"))
}

// metal reports whether an element can hold fluoride back in solution.
func metal(sym string) bool {
	switch sym {
	case "H", "O", "F", "Cl", "S", "N", "C", "Li", "Na", "K", "Ca", "P", "Br", "I":
		return false
	}
	return true
}

// perAluminium is the fluoride bound per aluminium: in a liquor of HF alone by
// the ratio of fluorine to aluminium, with other acid or salt one range.
func (r *reader) perAluminium(s *process.State, n, a working.Num) working.Num {
	st := r.c.Store
	for i := range s.Liquid {
		for j := range s.Liquid[i].Entries {
			e := &s.Liquid[i].Entries[j]
			if e.Sub != nil && e.Sub.Solution != "hf" && e.Sub.Solution != "water" {
				return st.Num("complex.fluoride_per_aluminium").As("y")
			}
		}
	}
	points := [...]struct {
		ratio float64
		id    datum.ID
	}{{3, "complex.ratio_3"}, {4, "complex.ratio_4"}, {5, "complex.ratio_5"}, {10, "complex.ratio_10"},
		{20, "complex.ratio_20"}}
	x := n.V / a.V
	lo := points[0]
	if x <= lo.ratio {
		return st.Num(lo.id).As("y")
	}
	for _, hi := range points[1:] {
		if x <= hi.ratio {
			p, q := st.Num(lo.id), st.Num(hi.id)
			t := (x - lo.ratio) / (hi.ratio - lo.ratio)
			return r.w.Table("y", "mol/mol",
				"fluoride bound per aluminium against F:Al, linear between "+string(lo.id)+" and "+string(hi.id),
				p.V+t*(q.V-p.V), p, q, n, a)
		}
		lo = hi
	}
	return st.Num(lo.id).As("y")
}
