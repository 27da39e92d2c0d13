package selection

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards/route"
	"etchbound/reports/draft"
	"etchbound/reports/words"
	"etchbound/schemas/quantity"
)

// written is a stated quantity in the unit it was written in.
func written(v quantity.Value) string {
	if !v.Set {
		return ""
	}
	unit := v.Unit()
	s := strconv.FormatFloat(v.In(unit), 'g', 6, 64)
	switch unit {
	case "degC":
		unit = "°C"
	case "1":
		return s
	}
	return s + " " + unit
}

// asked is the decision that is asked, in a sentence.
func (p *reader) asked() string {
	r := p.route()
	if r.Precursor == nil && r.BatchText == "" {
		return say("asked.no_powder", cmp.Or(words.List(substances(r)), say("asked.nothing")), p.wherever(), p.watch(r))
	}
	return say("asked", p.batch(), p.etchant(), p.wherever(), p.watch(r))
}

// substances are all that the steps of a route bring in but water, each once.
func substances(r *route.Route) []string {
	var out []string
	for i := range r.Steps {
		for j := range r.Steps[i].What {
			m := &r.Steps[i].What[j]
			if m.Substance != nil && m.Substance.Kind != "water" && !slices.Contains(out, m.Substance.Name) {
				out = append(out, m.Substance.Name)
			}
		}
	}
	return out
}

// batch is the powder and how much of it.
func (p *reader) batch() string {
	r := p.route()
	if x := r.Precursor; x != nil {
		return say("batch.of", cmp.Or(written(x.Mass), say("batch.unknown")), x.Phase.Text)
	}
	return r.BatchText
}

// etchant is the true name of what the powder meets: fluoride with acid is
// hydrofluoric acid, whatever bottles it came from.
func (p *reader) etchant() string {
	met := p.metByPowder()
	var hf, acids, fluorides, rest []string
	fluorine := false
	for _, m := range met {
		s := m.Substance
		switch {
		case s.Formula.Text == "HF":
			hf, fluorine = append(hf, s.Name), true
		case s.Formula.Count("F") > 0:
			fluorides, fluorine = append(fluorides, s.Name), true
		case s.Acid > 0:
			acids = append(acids, s.Name)
		case s.Kind != "water":
			rest = append(rest, s.Name)
		}
	}
	others := append(append(append([]string{}, fluorides...), acids...), rest...)
	switch {
	case len(met) == 0:
		return say("etchant.none")
	case len(hf) > 0 && len(others) > 0:
		return say("etchant.hf_with", words.List(others))
	case len(hf) > 0:
		return say("etchant.hf")
	case fluorine && p.bare("fluoride.hf_equivalent") != nil:
		return say("etchant.made", words.List(others))
	case len(others) > 0:
		return words.List(others)
	}
	return say("etchant.water")
}

// metByPowder are the materials that stand in the place of the powder when it is in,
// each once.
func (p *reader) metByPowder() []*route.Material {
	r := p.route()
	in := ""
	var out []*route.Material
	for i := range r.Steps {
		s := &r.Steps[i]
		for j := range s.What {
			if s.What[j].Precursor {
				in = s.In
			}
		}
	}
	seen := map[string]bool{}
	for i := range r.Steps {
		s := &r.Steps[i]
		if s.In == in && s.Verb().EndsEtch {
			break
		}
		for j := range s.What {
			if m := &s.What[j]; s.In == in && m.Substance != nil && !seen[m.Substance.Name] {
				seen[m.Substance.Name] = true
				out = append(out, m)
			}
		}
	}
	return out
}

// wherever is the vessel of the powder, and the hood.
func (p *reader) wherever() string {
	r := p.route()
	var out []string
	for i := range r.Steps {
		for j := range r.Steps[i].What {
			powder := r.Precursor == nil || r.Steps[i].What[j].Precursor
			if pl := r.Place(r.Steps[i].In); powder && pl != nil && len(out) == 0 {
				out = append(out, p.container(pl))
			}
		}
	}
	site := p.r.Case.Site
	switch {
	case site == nil:
		out = append(out, say("where.no_site"))
	case site.Hood == nil:
		out = append(out, say("where.no_hood", site.Title))
	case site.Hood.Flow.Set:
		out = append(out, say("where.hood", written(site.Hood.Flow), site.Title))
	default:
		out = append(out, say("where.hood_unknown", site.Title))
	}
	return strings.Join(out, ", ")
}

// container is a place with its size and how it is shut.
func (p *reader) container(pl *route.Place) string {
	size := say("size.unknown")
	if pl.Capacity.Set {
		size = written(pl.Capacity)
	}
	if pl.Count > 1 {
		size = say("size.count", pl.Count, size)
	}
	return say("container", draft.KindAndKey(pl), size, say("closure."+closureOf(pl)))
}

func closureOf(pl *route.Place) string {
	switch {
	case !pl.ClosureStated:
		return "unstated"
	case pl.Closure == route.Open:
		return "open"
	case pl.Closure == route.Vented:
		return "vented"
	}
	return "closed"
}

// watch says how long nobody watches, what is put by told apart; a step of which
// nobody says who is there counts as unwatched.
func (p *reader) watch(r *route.Route) string {
	var alone, stored float64
	var silent []string
	for i := range r.Steps {
		s := &r.Steps[i]
		h := hours(s)
		switch {
		case h == 0 || s.Attended != nil && *s.Attended:
			continue
		case s.Verb().Does == route.Stores:
			stored += h
			continue
		case s.Attended == nil:
			silent = append(silent, strconv.Itoa(s.Number))
		}
		alone += h
	}
	out := say("watch.always")
	if alone > 0 {
		out = say("watch.alone", p.v.Amount(alone*60, "min"))
	}
	switch len(silent) {
	case 0:
	case 1:
		out += say("watch.silent", silent[0])
	default:
		out += say("watch.silent_more", words.List(silent))
	}
	if stored > 0 {
		out += say("watch.stored", p.v.Amount(stored*60, "min"))
	}
	return out
}

func hours(s *route.Step) float64 {
	h := 0.0
	for _, v := range []quantity.Value{s.Over, s.Time} {
		if v.Set {
			h += v.SI / 3600
		}
	}
	return h
}

// within is what else the decision is bound to.
func (p *reader) within() string {
	r := p.route()
	var places []string
	for i := range r.Places {
		places = append(places, p.container(&r.Places[i]))
	}
	hot := say("within.no_temperature")
	best := 0.0
	for i := range r.Steps {
		if s := &r.Steps[i]; s.Temperature.Set && s.Temperature.SI > best {
			best, hot = s.Temperature.SI, say("within.hottest", written(s.Temperature), s.Number)
		}
	}
	return say("within", hot, strings.Join(places, "; "))
}
