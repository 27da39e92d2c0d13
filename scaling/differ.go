package scaling

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// differ walks two routes side by side.
type differ struct {
	a, b  *route.Route
	pairs [][2]int // steps that are the same step, by their index; -1 where there is none
	diffs []InputDiff
}

func (d *differ) add(where, what, was, is string) {
	if was != is {
		d.diffs = append(d.diffs, InputDiff{where, what, was, is})
	}
}

// value adds a quantity that is stated otherwise.
func (d *differ) value(where, what string, a, b quantity.Value) {
	if !equals(a, b) {
		d.add(where, what, a.Text, b.Text+again(a, b))
	}
}

// again tells two values apart that are written alike.
func again(a, b quantity.Value) string {
	if a.Set && b.Set && a.Text == b.Text {
		return " (as computed)"
	}
	return ""
}

func equals(a, b quantity.Value) bool {
	if a.Set != b.Set || !a.Set {
		return a.Set == b.Set
	}
	near := func(x, y float64) bool {
		return math.IsNaN(x) && math.IsNaN(y) || math.Abs(x-y) <= 1e-9*math.Max(math.Abs(x), math.Abs(y))
	}
	return a.Dim == b.Dim && near(a.SI, b.SI) && (!a.HasRange() && !b.HasRange() || near(a.Low, b.Low) && near(a.High, b.High))
}

func (d *differ) all() {
	d.align()
	d.precursor()
	d.places()
	for _, p := range d.pairs {
		d.step(p)
	}
	d.value("measured", "td24", d.a.TD24, d.b.TD24)
	d.add("measured", "kinetics", d.a.Kinetics, d.b.Kinetics)
	d.add("measured", "curve", yes(d.a.Curve != nil), yes(d.b.Curve != nil))
	d.data()
}

func yes(b bool) string {
	if b {
		return "stated"
	}
	return ""
}

func (d *differ) data() {
	text := func(r *route.Route) map[string]string {
		out := map[string]string{}
		for _, o := range r.Overrides() {
			out[o.ID] = fmt.Sprintf("%.6g", o.Value)
		}
		return out
	}
	a, b := text(d.a), text(d.b)
	var ids []string
	for _, r := range []*route.Route{d.a, d.b} {
		for _, o := range r.Overrides() {
			if !slices.Contains(ids, o.ID) {
				ids = append(ids, o.ID)
			}
		}
	}
	for _, id := range ids {
		d.add("data", id, a[id], b[id])
	}
}

func (d *differ) precursor() {
	a, b := d.a.Precursor, d.b.Precursor
	if a == nil || b == nil {
		d.add("precursor", "precursor", yes(a != nil), yes(b != nil))
		return
	}
	d.add("precursor", "phase", a.Phase.Text, b.Phase.Text)
	d.value("precursor", "mass", a.Mass, b.Mass)
	d.value("precursor", "purity", a.Purity, b.Purity)
	d.value("precursor", "particle_size", a.ParticleSize, b.ParticleSize)
	d.add("precursor", "impurities", impurities(a), impurities(b))
}

func impurities(p *route.Precursor) string {
	s := ""
	for i := range p.Impurities {
		s += fmt.Sprintf("%s %s; ", p.Impurities[i].Formula.Text, p.Impurities[i].Share.Text)
	}
	return s
}

// places pairs containers by their key.
func (d *differ) places() {
	other := map[string]*route.Place{}
	for i := range d.b.Places {
		other[d.b.Places[i].Key] = &d.b.Places[i]
	}
	seen := map[string]bool{}
	for i := range d.a.Places {
		p := &d.a.Places[i]
		seen[p.Key] = true
		q, there := other[p.Key]
		if !there {
			d.add("place "+p.Key, "place", p.Kind, "")
			continue
		}
		d.place(p, q)
	}
	for i := range d.b.Places {
		if q := &d.b.Places[i]; !seen[q.Key] {
			d.add("place "+q.Key, "place", "", q.Kind)
		}
	}
}

func (d *differ) place(a, b *route.Place) {
	where := "place " + a.Key
	d.add(where, "kind", a.Kind, b.Kind)
	d.add(where, "material", a.Material, b.Material)
	d.add(where, "lid_material", a.LidMaterial, b.LidMaterial)
	d.add(where, "count", strconv.Itoa(a.Count), strconv.Itoa(b.Count))
	d.add(where, "closure", closureOf(a), closureOf(b))
	for _, x := range []struct {
		what string
		a, b quantity.Value
	}{{"capacity", a.Capacity, b.Capacity}, {"rating", a.Rating, b.Rating}, {"relief", a.Relief, b.Relief}, {"vent", a.VentBore, b.VentBore},
		{"vent_line", a.VentLine, b.VentLine}, {"bubbler", a.Bubbler, b.Bubbler}, {"wall", a.Wall, b.Wall}, {"stirrer_heat", a.StirrerHeat, b.StirrerHeat}} {
		d.value(where, x.what, x.a, x.b)
	}
	d.cooling(where, a.Cooling, b.Cooling)
}

func closureOf(p *route.Place) string {
	if !p.ClosureStated {
		return "not stated"
	}
	return [...]string{"closed", "vented", "open"}[closureRank(p.Closure)]
}

func closureRank(c route.Closure) int {
	switch c {
	case route.Open:
		return 2
	case route.Vented:
		return 1
	}
	return 0
}

func (d *differ) cooling(where string, a, b *route.Cooling) {
	none := &route.Cooling{Kind: "none"}
	if a == nil {
		a = none
	}
	if b == nil {
		b = none
	}
	d.add(where, "cooling", a.Kind, b.Kind)
	d.value(where, "cooling: temperature", a.Temperature, b.Temperature)
	d.value(where, "cooling: ua", a.UA, b.UA)
	d.value(where, "cooling: ice", a.Ice, b.Ice)
	d.value(where, "cooling: bath", a.Bath, b.Bath)
}

// align pairs the steps of both routes: the longest run of steps that do the same
// in the same places keeps together, the others stand alone.
func (d *differ) align() {
	a, b := d.a.Steps, d.b.Steps
	n, m := len(a), len(b)
	long := make([][]int, n+1)
	for i := range long {
		long[i] = make([]int, m+1)
	}
	for i := n - 1; i >= 0; i-- {
		for j := m - 1; j >= 0; j-- {
			long[i][j] = max(long[i+1][j], long[i][j+1])
			if alike(&a[i], &b[j]) {
				long[i][j] = max(long[i][j], long[i+1][j+1]+1)
			}
		}
	}
	i, j := 0, 0
	for i < n && j < m {
		switch {
		case alike(&a[i], &b[j]) && long[i][j] == long[i+1][j+1]+1:
			d.pairs = append(d.pairs, [2]int{i, j})
			i, j = i+1, j+1
		case long[i+1][j] >= long[i][j+1]:
			d.pairs = append(d.pairs, [2]int{i, -1})
			i++
		default:
			d.pairs = append(d.pairs, [2]int{-1, j})
			j++
		}
	}
	for ; i < n; i++ {
		d.pairs = append(d.pairs, [2]int{i, -1})
	}
	for ; j < m; j++ {
		d.pairs = append(d.pairs, [2]int{-1, j})
	}
}

func alike(a, b *route.Step) bool { return a.Do == b.Do && a.In == b.In && a.Into == b.Into }

func words(s *route.Step) string {
	out := s.Do + " in " + s.In
	if s.Into != "" {
		out += " into " + s.Into
	}
	return out
}

// whichStep names a step by its number in both routes.
func whichStep(a, b int) string {
	if a == b {
		return "step " + strconv.Itoa(a)
	}
	return fmt.Sprintf("step %d (was %d)", b, a)
}

func (d *differ) step(p [2]int) {
	switch {
	case p[1] < 0:
		s := &d.a.Steps[p[0]]
		d.add("step "+strconv.Itoa(s.Number)+" of the reviewed route", "step", words(s), "")
		return
	case p[0] < 0:
		s := &d.b.Steps[p[1]]
		d.add("step "+strconv.Itoa(s.Number), "step", "", words(s))
		return
	}
	a, b := &d.a.Steps[p[0]], &d.b.Steps[p[1]]
	where := whichStep(a.Number, b.Number)
	for _, x := range []struct {
		what string
		a, b quantity.Value
	}{{"over", a.Over, b.Over}, {"time", a.Time, b.Time}, {"temperature", a.Temperature, b.Temperature}, {"not_above", a.NotAbove, b.NotAbove},
		{"retained", a.Retained, b.Retained}, {"part", a.Part, b.Part}, {"current", a.Current, b.Current}, {"gas_flow", a.GasFlow, b.GasFlow}} {
		d.value(where, x.what, x.a, x.b)
	}
	d.add(where, "attended", told(a.Attended), told(b.Attended))
	d.add(where, "stirred", told(a.Stirred), told(b.Stirred))
	d.add(where, "cycles", strconv.Itoa(a.Cycles), strconv.Itoa(b.Cycles))
	d.add(where, "water", a.Water, b.Water)
	d.add(where, "gas", a.Gas, b.Gas)
	d.add(where, "target_ph", number(a.TargetPH), number(b.TargetPH))
	d.materials(where, a, b)
}

func told(b *bool) string {
	if b == nil {
		return "not stated"
	}
	return strconv.FormatBool(*b)
}

func number(v *float64) string {
	if v == nil {
		return ""
	}
	return strconv.FormatFloat(*v, 'g', -1, 64)
}

// nameOf a material: that of its substance, or the powder.
func nameOf(m *route.Material) string {
	if m.Precursor || m.Substance == nil {
		return "precursor"
	}
	return m.Substance.Name
}

// addedUp are the materials of a step with those added up that are the same in
// all but how much of them is written at once.
func addedUp(s *route.Step) []route.Material {
	var out []route.Material
	for i := range s.What {
		m := s.What[i]
		at := slices.IndexFunc(out, func(x route.Material) bool {
			return nameOf(&x) == nameOf(&m) && equals(x.Strength, m.Strength) && x.Mass.Set == m.Mass.Set && x.Volume.Set == m.Volume.Set && x.Amount.Set == m.Amount.Set && !x.Ratio.Set && !m.Ratio.Set
		})
		if at < 0 {
			out = append(out, m)
			continue
		}
		x := &out[at]
		x.Mass, x.Volume, x.Amount = joined(x.Mass, m.Mass), joined(x.Volume, m.Volume), joined(x.Amount, m.Amount)
	}
	return out
}

func joined(a, b quantity.Value) quantity.Value {
	if !a.Set || !b.Set {
		return a
	}
	a.Text += " + " + b.Text
	a.SI, a.Low, a.High = a.SI+b.SI, math.NaN(), math.NaN()
	return a
}

// pairsOf pairs the materials of two steps by name, in their order.
func pairsOf(one, other *route.Step) [][2]*route.Material {
	a, b := addedUp(one), addedUp(other)
	var out [][2]*route.Material
	used := make([]bool, len(b))
	for i := range a {
		at := -1
		for j := range b {
			if !used[j] && nameOf(&a[i]) == nameOf(&b[j]) {
				at = j
				break
			}
		}
		if at < 0 {
			out = append(out, [2]*route.Material{&a[i], nil})
			continue
		}
		used[at] = true
		out = append(out, [2]*route.Material{&a[i], &b[at]})
	}
	for j := range b {
		if !used[j] {
			out = append(out, [2]*route.Material{nil, &b[j]})
		}
	}
	return out
}

func (d *differ) materials(where string, a, b *route.Step) {
	for _, p := range pairsOf(a, b) {
		switch {
		case p[0] == nil:
			d.add(where, "what", "", nameOf(p[1]))
			continue
		case p[1] == nil:
			d.add(where, "what", nameOf(p[0]), "")
			continue
		}
		name := nameOf(p[0])
		d.value(where, name+": strength", p[0].Strength, p[1].Strength)
		for _, x := range []struct {
			what string
			a, b quantity.Value
		}{{"mass", p[0].Mass, p[1].Mass}, {"volume", p[0].Volume, p[1].Volume}, {"amount", p[0].Amount, p[1].Amount}, {"ratio", p[0].Ratio, p[1].Ratio}} {
			d.value(where, name+": "+x.what, x.a, x.b)
		}
	}
}
