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
// there is none.
func SameSteps(a, b []Step) [][2]int {
	return field.InOrder(a, b, func(x, y *Step) bool { return x.Do == y.Do && x.In == y.In && x.Into == y.Into })
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
