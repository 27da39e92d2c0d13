package route

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// stepList pairs steps that do the same in the same places, in their order.
var stepList = field.ListOf[Step]{
	Name: func(_ int, s *Step) string { return s.Words() }, Pairs: SameSteps,
	One: "step", Tell: (*Step).Words, Part: WhichStep,
}

// SameSteps pairs the steps of two routes by their places in the lists, -1 where
// there is none. Steps that do the same in the same places can be a pair; of several, those
// are that are alike in what goes in, in time, temperature and name as well.
func SameSteps(a, b []Step) [][2]int { return field.InOrder(a, b, likeness) }

// many is the mark of a pair of steps, more than what they are alike in can add to it.
const many = 16

func likeness(x, y *Step) int {
	if x.Do != y.Do || x.In != y.In || x.Into != y.Into {
		return 0
	}
	mark := many
	for _, same := range [...]bool{field.Equal(x.Time, y.Time), field.Equal(x.Over, y.Over),
		field.Equal(x.Temperature, y.Temperature), x.Label != "" && x.Label == y.Label, sameNames(x, y)} {
		if same {
			mark++
		}
	}
	return mark
}

// sameNames reports whether the same things go in, however much of each.
func sameNames(x, y *Step) bool {
	for _, pair := range SameMaterials(x, y) {
		if pair[0] == nil || pair[1] == nil {
			return false
		}
	}
	return true
}

// Numbers gives, for the numbers of the steps of a route, those that the same steps have in
// another; a step that the other has not is left out.
func Numbers(a, b *Route) map[int]int {
	out := map[int]int{}
	for _, p := range SameSteps(a.Steps, b.Steps) {
		if p[0] >= 0 && p[1] >= 0 {
			out[a.Steps[p[0]].Number] = b.Steps[p[1]].Number
		}
	}
	return out
}

// Renamed gives the containers of a route that another has under another key: of those that
// only one of the two has, a pair of one kind in which mostly the same is done in one order.
func Renamed(a, b *Route) map[string]string {
	out, taken := map[string]string{}, map[string]bool{}
	for i := range a.Places {
		p, best, most := &a.Places[i], "", 0
		for j := range b.Places {
			q := &b.Places[j]
			if b.Place(p.Key) != nil || a.Place(q.Key) != nil || taken[q.Key] || p.Kind != q.Kind {
				continue
			}
			if same := shared(a.use(p.Key), b.use(q.Key)); same > most {
				best, most = q.Key, same
			}
		}
		if most > 0 {
			out[p.Key], taken[best] = best, true
		}
	}
	return out
}

// shared is how much of two lists is the same in one order; 0 where it is not over half of
// the longer.
func shared(a, b []string) int {
	n := 0
	for _, p := range field.InOrder(a, b, func(x, y *string) int {
		if *x == *y {
			return 1
		}
		return 0
	}) {
		if p[0] >= 0 && p[1] >= 0 {
			n++
		}
	}
	if 2*n <= max(len(a), len(b)) {
		return 0
	}
	return n
}

// use is what is done in a container and into it, in order.
func (r *Route) use(key string) []string {
	var out []string
	for i := range r.Steps {
		s := &r.Steps[i]
		if s.In == key {
			out = append(out, s.Do)
		}
		if s.Into == key {
			out = append(out, "into: "+s.Do)
		}
	}
	return out
}

// WithKeys is a copy of the route in which containers have other keys.
func (r *Route) WithKeys(other map[string]string) *Route {
	out := r.Copy()
	rename := func(key *string) {
		if is, found := other[*key]; found {
			*key = is
		}
	}
	for i := range out.Places {
		p := &out.Places[i]
		was := "places." + p.Key
		rename(&p.Key)
		rename(&p.Scrubber)
		if p.At == was { // what is missing is told by where it would stand
			p.At = "places." + p.Key
		}
	}
	for i := range out.Steps {
		rename(&out.Steps[i].In)
		rename(&out.Steps[i].Into)
	}
	return out
}

// WhichStep names a step by its number in two routes, of which one may not have it.
func WhichStep(a, b *Step) string {
	switch {
	case b == nil:
		return "step " + strconv.Itoa(a.Number) + " of the reviewed route"
	case a == nil || a.Number == b.Number:
		return "step " + strconv.Itoa(b.Number)
	}
	return fmt.Sprintf("step %d (was %d)", b.Number, a.Number)
}

// Words says what a step does, and where.
func (s *Step) Words() string {
	out := s.Do + " in " + s.In
	if s.Into != "" {
		out += " into " + s.Into
	}
	return out
}

// materialList pairs what goes in by its name.
var materialList = field.ListOf[Material]{Name: func(_ int, m *Material) string { return m.Name() }, Add: addedUp,
	Order: true}

// SameMaterials pairs what goes into two steps by its name, nil where there is none.
// What is the same in all but how much of it is written at once is added up before.
func SameMaterials(one, other *Step) [][2]*Material {
	a, b := addedUp(one.What), addedUp(other.What)
	var out [][2]*Material
	used := make([]bool, len(b))
	for i := range a {
		pair := [2]*Material{&a[i], nil}
		for j := range b {
			if !used[j] && a[i].Name() == b[j].Name() {
				used[j], pair[1] = true, &b[j]
				break
			}
		}
		out = append(out, pair)
	}
	for j := range b {
		if !used[j] {
			out = append(out, [2]*Material{nil, &b[j]})
		}
	}
	return out
}

// addedUp are the materials of a list with those added up that are the same in all
// but how much of them is written at once.
func addedUp(list []Material) []Material {
	var out []Material
	for _, m := range list {
		at := slices.IndexFunc(out, func(x Material) bool { return x.addsTo(&m) })
		if at < 0 {
			out = append(out, m)
			continue
		}
		x := &out[at]
		x.Mass, x.Volume, x.Amount = joined(x.Mass, m.Mass), joined(x.Volume, m.Volume), joined(x.Amount, m.Amount)
	}
	return out
}

func (m *Material) addsTo(x *Material) bool {
	return m.Name() == x.Name() && field.Equal(m.Strength, x.Strength) && m.Mass.Set == x.Mass.Set &&
		m.Volume.Set == x.Volume.Set && m.Amount.Set == x.Amount.Set && !m.Ratio.Set && !x.Ratio.Set
}

func joined(a, b quantity.Value) quantity.Value {
	if !a.Set || !b.Set {
		return a
	}
	low, high := math.NaN(), math.NaN()
	if a.HasRange() || b.HasRange() {
		low, high = lowest(a)+lowest(b), highest(a)+highest(b)
	}
	a.Text += " + " + b.Text
	a.SI, a.Low, a.High = a.SI+b.SI, low, high
	return a
}
