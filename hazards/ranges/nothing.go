package ranges

import (
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/vessel"
)

// likeness is the corner of a figure that is nothing at the centre: gas of powder that an
// etch leaves, where the best estimate is that it leaves none. A datum that says how much
// gas what is left gives moves nothing there, and would stay central in its corner. It
// stands at the end that moves the same quantity toward danger where that is most. It is
// false where the figure is something, or no such datum is found.
func (r *ranger) likeness(i int) (key, bool) {
	j := r.likest(i)
	if j == i {
		return "", false
	}
	b, from, moves, found := []byte(r.corner(i, true)), r.base[j].Value.V, false, false
	for v := range r.vars {
		if b[v] != centre || r.stirs(v, i) {
			moves = true
			continue
		}
		best := 1e-12 * from
		for e, end := range ends {
			if end == 1 || end == 3 {
				continue
			}
			if move := r.lots.at(&r.swings[v*len(ends)+e], j) - from; move > best {
				best, b[v], found = move, end, true
			}
		}
	}
	return key(b), moves && found
}

// likest is the figure of the quantity of figure i that is most at the centre, of those
// made with it; i itself where that is something, or no other is.
func (r *ranger) likest(i int) int {
	at, most := i, 0.0
	if r.base[i].Value.V != 0 || !dangerUp(&r.base[i]) {
		return i
	}
	for j := range r.base {
		f := &r.base[j]
		if f.Quantity == r.base[i].Quantity && r.lots.part[j] == r.lots.part[i] && !f.Case.Hot() &&
			f.Value.V > most {
			at, most = j, f.Value.V
		}
	}
	return at
}

// ofSubstances are the kinds of what is missing because of what a substance is: no datum of
// it, that it is not held, or the heat of what it meets.
var ofSubstances = []string{working.NoDatum, working.NotHeld, "heat_of_mixing", "acid_meets_base"}

// unlike reports whether a datum is missing, or what a substance is, of what a figure that
// is nothing at the centre may be like: nobody can say then how much it comes to.
func (r *ranger) unlike(i int) bool {
	if r.base[i].Value.V != 0 || !dangerUp(&r.base[i]) {
		return false
	}
	return slices.ContainsFunc(r.base, func(f figure.Figure) bool {
		return f.Quantity == r.base[i].Quantity && !f.Case.Hot() && slices.ContainsFunc(f.Value.Missing(),
			func(m working.Missing) bool { return slices.Contains(ofSubstances, m.Kind) })
	})
}

// others are the corners of a figure toward danger beside its own.
func (r *ranger) others(rivals *rival, i int) []key {
	var out []key
	if k, there := rivals.corner(i); there {
		out = append(out, k)
	}
	if k, there := r.likeness(i); there {
		out = append(out, k)
	}
	return append(out, r.hottest(i)...)
}

// runs reports whether a figure goes with how a run goes, as it is meant, and is most where
// danger lies up: a flow and what stands on it, or what boils off and is nothing at the
// centre. Data that are far from heating a run up one by one can do so together, and then
// none of them alone shows it.
func (r *ranger) runs(i int) bool {
	switch f := &r.base[i]; {
	case f.Case.Supposed() || f.Place.IsZero():
		return false
	case f.Case == figure.By(figure.Boiling):
		return f.Value.V == 0
	case f.Case.Branch == "mist" || f.Quantity == "air.mist":
		return true
	default:
		return law(f.Case) && f.Quantity != "heat.temperature_peak"
	}
}

// law reports whether a case is that of a law of the reaction that is integrated.
func law(c figure.Case) bool {
	switch vessel.Law(c.Branch) {
	case vessel.FirstOrder, vessel.Contracting, vessel.SelfAccelerating, vessel.Measured:
		return c == figure.By(c.Branch)
	}
	return false
}

// hottest are the corners in which the liquor of the step of a figure is hottest, by the law
// of the figure or by any; what does not heat it stands where the figure itself has it.
func (r *ranger) hottest(i int) []key {
	var out []key
	own := r.corner(i, true)
	for _, j := range r.peaks(i) {
		k := []byte(r.corner(j, true))
		for v := range k {
			if k[v] == centre {
				k[v] = own[v]
			}
		}
		out = append(out, key(k))
	}
	return out
}

// peaks are the highest temperatures that a figure that goes with a run goes with: of its
// step, by its law or by any; none of another figure.
func (r *ranger) peaks(i int) []int {
	if !r.runs(i) {
		return nil
	}
	var out []int
	for j := range r.base {
		f := &r.base[j]
		if f.Quantity == "heat.temperature_peak" && f.Place == r.base[i].Place && f.Case.Failure == "" &&
			(!law(r.base[i].Case) || f.Case == r.base[i].Case) {
			out = append(out, j)
		}
	}
	return out
}
