package route

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"

	"etchbound/schemas/quantity"
)

// Scaled is the route for another mass of precursor, as a deep copy: powder,
// materials, volumes that are taken or stay behind, ice, the water of baths, the
// heat of stirrers and the capacities of the places grow in proportion; times, temperatures,
// strengths, ratios, lengths and what was measured stay as written, and so do
// the capacity and the bath of a place with keep. Where mass has no
// range of its own, that of the powder as written grows with it. A route
// without a precursor has no batch and comes back as a plain copy.
func (r *Route) Scaled(mass quantity.Value) *Route {
	out := r.Copy()
	if r.Precursor == nil || !r.Precursor.Mass.Set || !mass.Set || r.Precursor.Mass.SI == 0 {
		return out
	}
	k := mass.SI / r.Precursor.Mass.SI
	out.Precursor.Mass = batch(r.Precursor.Mass, mass, k)
	out.BatchText = out.Precursor.Mass.Text
	if k == 1 {
		return out
	}
	out.recomputed(r.Precursor.Mass.Text)
	for i := range out.Places {
		out.Places[i].scale(k)
	}
	for i := range out.Steps {
		out.Steps[i].scale(k)
	}
	return out
}

// batch is the new mass in the place of the old one.
func batch(old, mass quantity.Value, k float64) quantity.Value {
	mass.At = old.At
	if mass.HasRange() || !old.HasRange() {
		if mass.Text == "" {
			mass.Text = mass.Format(old.Unit(), 0)
		}
		return mass
	}
	mass.Low, mass.High = old.Low*k, old.High*k
	return mass.Times(1) // for its text
}

func (p *Place) scale(k float64) {
	if !p.Keep {
		p.Capacity = p.Capacity.Times(k)
	}
	p.StirrerHeat = p.StirrerHeat.Times(k)
	if p.Cooling != nil {
		p.Cooling.Ice = p.Cooling.Ice.Times(k)
	}
	if p.Cooling != nil && !p.Keep {
		p.Cooling.Bath = p.Cooling.Bath.Times(k)
	}
}

func (s *Step) scale(k float64) {
	for i := range s.What {
		m := &s.What[i]
		m.Mass, m.Volume, m.Amount = m.Mass.Times(k), m.Volume.Times(k), m.Amount.Times(k)
	}
	s.Retained = volumeTimes(s.Retained, k)
	s.Part = volumeTimes(s.Part, k)
}

// volumeTimes leaves shares and volumes per mass as they are.
func volumeTimes(v quantity.Value, k float64) quantity.Value {
	if v.Set && v.Dim == quantity.Volume {
		return v.Times(k)
	}
	return v
}

// Copy shares nothing with the route that a calculation could change.
func (r *Route) Copy() *Route {
	out := *r
	if r.Precursor != nil {
		p := *r.Precursor
		p.Layers, p.Impurities = slices.Clone(p.Layers), slices.Clone(p.Impurities)
		p.Phase.Order = slices.Clone(p.Phase.Order)
		out.Precursor = &p
	}
	if r.Curve != nil {
		c := *r.Curve
		c.Points = slices.Clone(c.Points)
		out.Curve = &c
	}
	out.Places, out.Steps = slices.Clone(r.Places), slices.Clone(r.Steps)
	out.Data, out.Notices = slices.Clone(r.Data), slices.Clone(r.Notices)
	for i := range out.Places {
		if c := out.Places[i].Cooling; c != nil {
			copied := *c
			out.Places[i].Cooling = &copied
		}
	}
	for i := range out.Steps {
		s := &out.Steps[i]
		s.What = slices.Clone(s.What)
		s.Attended, s.Stirred, s.TargetPH = clone(s.Attended), clone(s.Stirred), clone(s.TargetPH)
	}
	return &out
}

func clone[T any](p *T) *T {
	if p == nil {
		return nil
	}
	v := *p
	return &v
}

// recomputed marks a scaled route, so that a review of it cannot be taken for
// one of the route as written.
func (r *Route) recomputed(from string) {
	sum := sha256.Sum256([]byte(r.Digest + " at " + r.BatchText))
	r.Digest = hex.EncodeToString(sum[:])
	r.Title += " (recomputed from " + from + " to " + r.BatchText + ")"
	r.Notices = append(slices.Clone(r.Notices), "Recomputed from "+from+" to "+r.BatchText+": amounts and the capacities of containers are in proportion, times and temperatures as written.")
}
