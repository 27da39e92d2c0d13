package route

import "slices"

// TakesWaste reports whether a place is a container of waste: a drum, what a step sends its
// waste to, or what one treats it in.
func (r *Route) TakesWaste(p *Place) bool {
	return p.Kind == "drum" || slices.ContainsFunc(r.Steps, func(s Step) bool {
		v := s.Verb()
		return v.Waste == "yes" && s.Into == p.Key && s.Product != "liquid" || v.Waste == "here" && s.In == p.Key
	})
}
