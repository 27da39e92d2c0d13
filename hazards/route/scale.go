package route

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"

	"etchbound/chemicals"
	"etchbound/schemas/field"
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
	out.Visit(func(s field.Seen) {
		if x, ok := s.Value.(field.Amount); ok && s.At != massPath && grows(s, *x.Of) {
			*x.Of = x.Of.Times(k)
		}
	})
	return out
}

// massPath is where the batch itself stands.
const massPath = "precursor.mass"

// grows reports whether a quantity goes with the batch.
func grows(s field.Seen, q quantity.Value) bool {
	switch s.Scale {
	case field.Grows:
		return true
	case field.GrowsUnlessKept:
		return !s.Kept
	case field.GrowsAsVolume:
		return q.Dim == quantity.Volume
	}
	return false
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

// Takes reports whether any step puts a substance in.
func (r *Route) Takes(s *chemicals.Substance) bool {
	return slices.ContainsFunc(r.Steps, func(x Step) bool {
		return slices.ContainsFunc(x.What, func(m Material) bool { return s.Same(m.Substance) })
	})
}

// Copy shares nothing with the route that a calculation could change.
func (r *Route) Copy() *Route {
	out := *r
	out.Notices = slices.Clone(r.Notices)
	routeKeys.Own(&out)
	return &out
}

// recomputed marks a scaled route, so that a review of it cannot be taken for
// one of the route as written.
func (r *Route) recomputed(from string) {
	sum := sha256.Sum256([]byte(r.Digest + " at " + r.BatchText))
	r.Digest = hex.EncodeToString(sum[:])
	r.Title += " (recomputed from " + from + " to " + r.BatchText + ")"
	r.Notices = append(slices.Clone(r.Notices), "Recomputed from "+from+" to "+r.BatchText+": amounts and the "+
		"capacities of containers are in proportion, times and temperatures as written.")
}
