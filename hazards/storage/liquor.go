package storage

import (
	"math"
	"slices"
	"strconv"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/process"
)

// medium is what the liquid makes of the rate: water, brine, or a solvent that is dry. A solvent
// with more water in it counts as water, which is the faster, and so does brine beside an
// additive that counts: nobody has seen what the two do together. What is dry goes by its form,
// which is not credited with liquid about. A trace that a wash left of what is held, and is no
// oxidant, does not count.
func (r *reader) medium(s *stage) working.Num {
	wet, water, mass := false, 0.0, 0.0
	traces := r.traces(s)
	var solvent *chemicals.Substance
	for i := range s.d.After.Liquid {
		q := &s.d.After.Liquid[i]
		wet = wet || q.Wet()
		mass += process.PartOf(nil, q, q.Mass).V
		for j := range q.Entries {
			e := &q.Entries[j]
			switch x := e.Sub; {
			case x == nil:
			case x.Kind == "water":
				water += process.PartOf(nil, q, e.N).V * x.Formula.MolarMass(r.c.Store, nil).V
			case x.NotHeld || !harmless(x) && !r.held(x) && !traces[x.Slug] && !(s.form == "encased" && x.Kind == "polymer"):
				return working.Absent("f_m", "1", working.Lacks("storage_medium", x.Name).In(s.d.Number))
			case x.Kind == "solvent":
				solvent = x
			}
		}
	}
	dry := r.c.Store.Num("storage.dry_water").V
	switch {
	case !wet:
		return r.c.Store.Num(forms[s.form].medium)
	case solvent != nil && 100*water <= dry*mass:
		return r.c.Store.Num(datum.Of("storage.medium", solvent.Slug))
	case s.brine && s.with == "":
		return r.c.Store.Num("storage.medium.brine")
	}
	return working.Exact("f_m", "1", 1, "in water")
}

// traces are the substances of which there is less in what is stored than acts on the rate.
func (r *reader) traces(s *stage) map[string]bool {
	all, of := 0.0, map[string]float64{}
	for i := range s.d.After.Liquid {
		q := &s.d.After.Liquid[i]
		all += process.PartOf(nil, q, q.Mass).V
		for j := range q.Entries {
			if e := &q.Entries[j]; e.Sub != nil && !e.Sub.NotHeld && !e.Sub.Is("oxidant") {
				of[e.Sub.Slug] += process.PartOf(nil, q, e.N).V * e.Sub.Formula.MolarMass(r.c.Store, nil).V
			}
		}
	}
	out, least := map[string]bool{}, r.c.Store.Num("storage.trace").V
	for slug, m := range of {
		out[slug] = 100*m <= least*all
	}
	return out
}

// forms are what dry flakes can lie in: their datum, and what is said of them.
var forms = map[string]struct {
	medium    datum.ID
	says, wet string
}{
	"":        {"storage.medium.dried", "store.powder", ""},
	"powder":  {"storage.medium.dried", "store.powder", ""},
	"film":    {"storage.medium.film", "store.film", "store.no_film"},
	"encased": {"storage.medium.encased", "store.encased", "store.not_encased"},
}

// briny reports whether there is so much of a salt in the water that it counts as brine.
func (r *reader) briny(s *process.State) bool {
	water, salts := 0.0, map[*chemicals.Substance]float64{}
	for i := range s.Liquid {
		q := &s.Liquid[i]
		for j := range q.Entries {
			e := &q.Entries[j]
			if e.Sub == nil {
				continue
			}
			m := process.PartOf(nil, q, e.N).V * e.Sub.Formula.MolarMass(r.c.Store, nil).V
			if e.Sub.Kind == "water" {
				water += m
			} else if e.Sub.Kind == "chloride_salt" {
				salts[e.Sub] += m
			}
		}
	}
	for x, m := range salts {
		id := datum.Of("storage.brine", x.Slug)
		if _, ok := r.c.Store.Row(id); ok && 100*m >= r.c.Store.Num(id).V*water*(1-1e-9) {
			return true
		}
	}
	return false
}

// liquidOf tells whether there is water in what is stored, and a solvent.
func liquidOf(s *process.State) (wet, solvent bool) {
	for i := range s.Liquid {
		q := &s.Liquid[i]
		wet = wet || q.Wet()
		for j := range q.Entries {
			x := q.Entries[j].Sub
			solvent = solvent || x != nil && x.Kind == "solvent"
		}
	}
	return wet, solvent
}

// harmless reports whether a substance acts on flakes by its pH alone.
func harmless(x *chemicals.Substance) bool {
	switch x.Kind {
	case "acid", "base", "fluoride_salt", "chloride_salt", "carbonate", "neutraliser":
		return true
	}
	return false
}

// held reports whether the data say what a solvent or an additive does to the rate.
func (r *reader) held(x *chemicals.Substance) bool {
	_, medium := r.c.Store.Row(datum.Of("storage.medium", x.Slug))
	_, additive := r.c.Store.Row(datum.Of("storage.additive", x.Slug))
	return medium || additive
}

// additive is what the rate is divided by: the best that there is the dose of. Nothing
// where there is none. The stage is told its name, or that of one there is too little of.
func (r *reader) additive(s *stage) working.Num {
	var best working.Num
	v := s.d.After.Volume(nil).V
	amounts := map[string]float64{}
	for i := range s.d.After.Liquid {
		q := &s.d.After.Liquid[i]
		for j := range q.Entries {
			if e := &q.Entries[j]; e.Sub != nil {
				amounts[e.Sub.Slug] += process.PartOf(nil, q, e.N).V
			}
		}
	}
	for i := range s.d.After.Liquid {
		for _, e := range s.d.After.Liquid[i].Entries {
			if e.Sub == nil {
				continue
			}
			id := datum.Of("storage.additive", e.Sub.Slug)
			if _, ok := r.c.Store.Row(id); !ok {
				continue
			}
			dose, x := r.c.Store.Num(datum.Of("storage.dose", e.Sub.Slug)).V, r.c.Store.Num(id)
			switch {
			case !(amounts[e.Sub.Slug]*1e6/v >= dose*(1-1e-9)):
				s.tooLittle = e.Sub.Name
			case best.None() || x.V > best.V:
				best, s.with = x, e.Sub.Name
			}
		}
	}
	return best
}

// acidity finds the pH of what is stored. Acid with carbon in it whose pKa are not held counts as
// strong: it is no lower than that.
func (r *reader) acidity(s *stage) {
	st := r.c.Store
	var acid, fluoride []working.Num
	for i := range s.d.After.Liquid {
		q := &s.d.After.Liquid[i]
		if u := q.Stranger(); u != nil {
			s.ph = working.Absent("pH", "1", u.Lacks())
			return
		}
		s.organic = slices.ContainsFunc(q.Entries, r.organic) || s.organic
		r.weak(s, q)
		acid = append(acid, process.Total(r.w, q, "n_acid", (*process.Entry).Free))
		fluoride = append(fluoride, process.Element(r.w, q, "F"))
	}
	if !s.wet {
		return
	}
	s.acid, s.fluoride = r.w.Sum("n_acid", "mol", acid...), r.w.Sum("n_F", "mol", fluoride...)
	a, f, v := s.acid, s.fluoride, s.d.After.Volume(r.w).As("V")
	pk, pw := st.Num("pka.hf").As("pK_a"), st.Num("pkw").As("pK_w")
	s.ph = r.w.Model("pH", "1", "charge balance of strong acid, HF and water in what is stored",
		process.PH(a.V/v.V*1000, f.V/v.V*1000, pk.V, pw.V, s.keeping(v)...), append(s.kept(), a, f, v, pk, pw)...)
	if s.organic {
		s.ph = s.ph.Worse(working.Bound)
	}
}

// organic reports whether an entry is an acid with carbon in it, which are weak, whose pKa are
// not held.
func (r *reader) organic(e process.Entry) bool {
	if e.Sub == nil || e.Sub.Kind != "acid" || e.Sub.Formula.Count("C") == 0 || !(e.N.V > 0) {
		return false
	}
	_, held := r.c.Store.Row(pKa(e.Sub, 1))
	return !held
}

// pKa is the id of the pKa of a substance, the strongest first, or of the acid it is a salt of.
func pKa(x *chemicals.Substance, i int) datum.ID {
	return datum.Of("pka", x.Slug).Field(strconv.Itoa(i))
}

// weakly is an acid or a salt of one that keeps protons by the pH, mol of it.
type weakly struct {
	n   working.Num
	pKa []working.Num
}

// weak adds what a pool has of such substances.
func (r *reader) weak(s *stage, q *process.Pool) {
	for i := range q.Entries {
		e := &q.Entries[i]
		if e.Sub == nil {
			continue
		}
		x := weakly{}
		for j := 1; ; j++ {
			if _, held := r.c.Store.Row(pKa(e.Sub, j)); !held {
				break
			}
			x.pKa = append(x.pKa, r.c.Store.Num(pKa(e.Sub, j)))
		}
		if x.pKa != nil {
			x.n = process.PartOf(r.w, q, e.N)
			s.weakly = append(s.weakly, x)
		}
	}
}

// keeping is what keeps protons in v mL.
func (s *stage) keeping(v working.Num) []process.Weak {
	var out []process.Weak
	for _, x := range s.weakly {
		w := process.Weak{Amount: x.n.V / v.V * 1000}
		for _, k := range x.pKa {
			w.PKa = append(w.PKa, k.V)
		}
		out = append(out, w)
	}
	return out
}

// kept are its amounts and pKa, for a line of working.
func (s *stage) kept() []working.Num {
	var out []working.Num
	for _, x := range s.weakly {
		out = append(append(out, x.n), x.pKa...)
	}
	return out
}

// byPH is what pH and an additive make of the rate in a mode.
func (r *reader) byPH(s *stage, mode int, additive working.Num) working.Num {
	switch {
	case !additive.None():
		x := additive.As("S")
		return r.w.Line("f_pH", "1", "1/S", 1/x.V, x)
	case s.ph.None():
		return working.Exact("f_pH", "1", 1, "no liquid to have a pH")
	}
	t, ok := r.c.Store.Table("storage.ph")
	if !ok {
		return working.Absent("f_pH", "1", working.LacksDatum("storage.ph"))
	}
	low, high := t.Range()
	y := math.NaN()
	if x := s.ph.V; x == x {
		y, _ = t.Linear(mode, min(max(x, low), high))
	}
	l, reach := r.w.Table("y", "1", "storage.ph", y, s.ph), r.c.Store.Num("storage.ph_reach").As("r_pH")
	return r.w.Line("f_pH", "1", "pow(10,r_pH*y)", math.Pow(10, reach.V*l.V), reach, l)
}
