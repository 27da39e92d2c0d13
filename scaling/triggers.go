package scaling

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// Trigger is a rule that sends a change back to be reviewed.
type Trigger struct {
	ID, Label string
	Value     float64 // NaN where the rule has none
	Unit      string
	Source    string
	Status    string
}

// Triggers are the rules that count, in order.
type Triggers []Trigger

// Fired is a rule that a change meets, once, with everything that it is met by.
type Fired struct {
	Trigger
	Met []Met // at least one, in the order of the route, and findings worst first
}

// Met is one thing by which a change meets a rule.
type Met struct {
	Where, Was, Is string
	Lacks          working.Missing // what is no longer known, instead of where; zero for other rules
	Stop           phrase.Phrase   // a hold point that is new, instead of where; zero for other rules
}

//go:embed triggers.csv
var triggerTable string

var triggers = sync.OnceValue(func() Triggers {
	return columns.Must("scaling/triggers.csv", triggerTable, func(r columns.Row) Trigger {
		return Trigger{r.Named("id"), r.Named("label"), r.Number("value"), r.Text("unit"), r.Named("source"),
			r.Named("status")}
	})
})

// TriggersOf are the rules of a site: those of the program, with the values the
// site states in their place.
func TriggersOf(s *route.Site) Triggers {
	out := append(Triggers(nil), triggers()...)
	if s == nil {
		return out
	}
	set := func(v float64, ids ...string) {
		for i := range out {
			for _, id := range ids {
				if out[i].ID == id && !math.IsNaN(v) {
					out[i].Value, out[i].Source, out[i].Status = v, "the site", "stated"
				}
			}
		}
	}
	set(s.Triggers.QuantityRatio, "quantity", "proportion")
	set(s.Triggers.StrengthRatio, "strength")
	set(s.Triggers.TimeRatio, "addition")
	if s.Triggers.TemperatureChange.Set {
		set(s.Triggers.TemperatureChange.SI, "temperature")
	}
	if s.Triggers.HFStrength.Set {
		set(s.Triggers.HFStrength.In("wt%"), "strength_class")
	}
	return slices.DeleteFunc(out, func(r Trigger) bool { return slices.Contains(s.Triggers.Ignore, r.ID) })
}

// firing is the rules at work on one change.
type firing struct {
	rules Triggers
	d     *differ
	c     *Change
	b     *beside
	out   map[string][]Met
}

func (t Triggers) fire(c *Change, d *differ, b *beside) []Fired {
	f := firing{rules: t, d: d, c: c, b: b, out: map[string][]Met{}}
	f.keys() // the powder before what goes along with it
	f.amounts()
	f.order()
	f.band()
	f.class()
	f.creep()
	f.verdicts()
	var out []Fired
	for _, r := range t {
		if met := f.out[r.ID]; met != nil {
			out = append(out, Fired{r, met})
		}
	}
	return out
}

// rule is one that counts, and one without a value where it does not.
func (f *firing) rule(id string) Trigger {
	for _, r := range f.rules {
		if r.ID == id {
			return r
		}
	}
	return Trigger{ID: id, Value: math.NaN()}
}

func (f *firing) hit(id, where, was, is string) {
	f.out[id] = append(f.out[id], Met{Where: where, Was: was, Is: is})
}

// reaches reports whether a ratio is at least the value of a rule, but for the
// last digits of a division.
func reaches(ratio, value float64) bool { return ratio >= value*(1-1e-9) }

// ratio of two quantities that are stated in the same way; not a number where they
// are not, with both then incomparable.
func (f *firing) ratio(where string, a, b quantity.Value) float64 {
	if !a.Set && !b.Set {
		return math.NaN()
	}
	if a.Set != b.Set || a.Dim != b.Dim || !(a.SI > 0) {
		if !field.Equal(a, b) {
			f.hit("incomparable", where, orNothing(a.Text), orNothing(b.Text))
		}
		return math.NaN()
	}
	return b.SI / a.SI
}

func orNothing(s string) string {
	if s == "" {
		return "not stated"
	}
	return s
}

// amounts are the reagents of every step that both routes have, with their strengths.
func (f *firing) amounts() {
	powder := 1.0
	if a, b := f.d.a.Precursor, f.d.b.Precursor; a != nil && b != nil && a.Mass.SI > 0 {
		powder = b.Mass.SI / a.Mass.SI
	}
	for _, p := range route.SameSteps(f.d.a.Steps, f.d.b.Steps) {
		if p[0] < 0 || p[1] < 0 {
			continue
		}
		a, b := &f.d.a.Steps[p[0]], &f.d.b.Steps[p[1]]
		for _, m := range route.SameMaterials(a, b) {
			where := route.WhichStep(a, b)
			f.material(where, m, powder)
			if f.guards(a) {
				f.weaker(where, m)
			}
		}
	}
}

// guards reports whether what a step puts in is there to take up acid: in a scrubber, or where
// waste is neutralised.
func (f *firing) guards(s *route.Step) bool {
	p := f.d.a.Place(s.Works())
	return s.Verb().Does == route.Neutralises || p != nil && p.Kind == "scrubber"
}

// weaker are bases that guard and are weaker by as much as a reagent may not become stronger.
func (f *firing) weaker(where string, m [2]*route.Material) {
	if m[0] == nil || m[1] == nil || m[0].Substance == nil || !(m[0].Substance.Acid < 0) {
		return
	}
	name := m[0].Name()
	if r := f.stronger(where+", "+name+": strength", m[0], m[1]); reaches(1/r, f.rule("strength").Value) {
		f.hit("strength", where+", "+name, m[0].Strength.Text, m[1].Strength.Text)
	}
}

func (f *firing) material(where string, m [2]*route.Material, powder float64) {
	if m[0] == nil || m[1] == nil {
		name := func(m *route.Material) string {
			if m == nil {
				return "not there"
			}
			return m.Name()
		}
		f.hit("reagent", where, name(m[0]), name(m[1]))
		return
	}
	name := m[0].Name()
	for _, x := range []struct {
		what string
		a, b quantity.Value
	}{{"mass", m[0].Mass, m[1].Mass}, {"volume", m[0].Volume, m[1].Volume}, {"amount", m[0].Amount, m[1].Amount}} {
		r := f.ratio(where+", "+name+": "+x.what, x.a, x.b)
		switch limit := f.rule("quantity").Value; {
		case math.IsNaN(r):
		case !m[0].Precursor && reaches(r, limit):
			f.hit("quantity", where+", "+name, x.a.Text, x.b.Text)
		case x.a.SI == x.b.SI && f.grown(): // it is the powder alone, which is told
		case reaches(math.Max(r/powder, powder/r), f.rule("proportion").Value):
			f.hit("proportion", where+", "+name, x.a.Text+powderOf(f.d.a), x.b.Text+powderOf(f.d.b))
		}
	}
	if r := f.ratio(where+", "+name+": ratio", m[0].Ratio, m[1].Ratio); reaches(math.Max(r, 1/r),
		f.rule("proportion").Value) {
		f.hit("proportion", where+", "+name, m[0].Ratio.Text, m[1].Ratio.Text)
	}
	if mark := f.rule("corrosive").Value; corrosive(m[1]) && molar(m[1]) >= mark*(1-1e-9) && molar(m[0]) < mark*(1-1e-9) {
		f.hit("corrosive", where+", "+name, m[0].Strength.Text, m[1].Strength.Text)
	}
	if r := f.stronger(where+", "+name+": strength", m[0], m[1]); reaches(r, f.rule("strength").Value) {
		f.hit("strength", where+", "+name, m[0].Strength.Text, m[1].Strength.Text)
	}
}

// grown reports whether there is so much more powder that its amount meets a rule: what follows
// of that alone is the same matter.
func (f *firing) grown() bool {
	a, b := f.d.a.Precursor, f.d.b.Precursor
	return a != nil && b != nil && a.Mass.SI > 0 && reaches(b.Mass.SI/a.Mass.SI, f.rule("quantity").Value)
}

// powderOf says to how much powder an amount is.
func powderOf(r *route.Route) string {
	if r.Precursor == nil || !r.Precursor.Mass.Set {
		return ""
	}
	return " to " + r.Precursor.Mass.Text
}

// order is that in which things both routes have go in.
func (f *firing) order() {
	list := func(r *route.Route) []string {
		var out []string
		for i := range r.Steps {
			for j := range r.Steps[i].What {
				out = append(out, r.Steps[i].In+": "+r.Steps[i].What[j].Name())
			}
		}
		return out
	}
	a, b := list(f.d.a), list(f.d.b)
	a, b = common(a, b), common(b, a)
	for i := range a {
		if i < len(b) && a[i] != b[i] {
			f.hit("order", "what goes in", strings.Join(a, ", "), strings.Join(b, ", "))
			return
		}
	}
}

// common are the texts of a that b has too, each as often as both have it.
func common(a, b []string) []string {
	left := map[string]int{}
	for _, s := range b {
		left[s]++
	}
	var out []string
	for _, s := range a {
		if left[s] > 0 {
			left[s]--
			out = append(out, s)
		}
	}
	return out
}

// bands of powder, g: below the first, up to the second and above it.
var bands = [...]float64{5, 100}

func (f *firing) band() {
	a, b := f.d.a.Precursor, f.d.b.Precursor
	if a == nil || b == nil || !a.Mass.Set || !b.Mass.Set {
		return
	}
	edges, upTo := bands[:], len(bands)-1 // an edge from upTo on still belongs to the band below it
	if s := f.c.Reviewed.Case.Site; s != nil && s.Triggers.MassBands != nil {
		edges, upTo = nil, len(s.Triggers.MassBands)
		for _, b := range s.Triggers.MassBands {
			edges = append(edges, b.In("g"))
		}
	}
	of := func(v quantity.Value) int {
		n := 0
		for i, edge := range edges {
			if g := v.In("g"); i < upTo && g >= edge*(1-1e-9) || g > edge*(1+1e-9) {
				n++
			}
		}
		return n
	}
	switch {
	case of(b.Mass) <= of(a.Mass) || f.rule("mass_band").Label == "":
	case f.grown():
		f.hit("quantity", "precursor, across a mass band", a.Mass.Text, b.Mass.Text)
	default:
		f.hit("mass_band", "precursor", a.Mass.Text, b.Mass.Text)
	}
}

// class is the strength of hydrofluoric acid.
func (f *firing) class() {
	const id = "fluoride.hf_strength"
	mark := f.rule("strength_class").Value
	a, b := worstOf(&f.c.Reviewed, id), worstOf(&f.c.Proposed, id)
	if b > a && b >= mark*(1-1e-9) && !(a >= mark*(1-1e-9)) {
		f.hit("strength_class", "liquor", fmt.Sprintf("%.3g wt%%", a), fmt.Sprintf("%.3g wt%%", b))
	}
}
