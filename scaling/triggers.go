package scaling

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
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

// Fired is a rule that a change meets.
type Fired struct {
	Trigger
	Where, Was, Is string
}

//go:embed triggers.csv
var triggerTable string

var triggers = sync.OnceValue(func() Triggers {
	return columns.Must("scaling/triggers.csv", triggerTable, func(r columns.Row) Trigger {
		return Trigger{r.Named("id"), r.Named("label"), r.Number("value"), r.Text("unit"), r.Named("source"), r.Named("status")}
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
	out   map[string][]Fired
}

func (t Triggers) fire(c *Change, d *differ) []Fired {
	f := firing{rules: t, d: d, c: c, out: map[string][]Fired{}}
	f.amounts()
	f.steps()
	f.order()
	f.places()
	f.band()
	f.class()
	f.verdicts()
	var out []Fired
	for _, r := range t {
		out = append(out, f.out[r.ID]...)
	}
	return out
}

func (f *firing) rule(id string) Trigger {
	for _, r := range f.rules {
		if r.ID == id {
			return r
		}
	}
	return Trigger{ID: id, Value: math.NaN()}
}

func (f *firing) hit(id, where, was, is string) {
	f.out[id] = append(f.out[id], Fired{f.rule(id), where, was, is})
}

// reaches reports whether a ratio is at least the value of a rule, but for the
// last digits of a division.
func reaches(ratio, value float64) bool { return ratio >= value*(1-1e-9) }

// ratio of two quantities that are stated in the same way; not a number where they
// are not, with both then incomparable.
func (f *firing) ratio(where, what string, a, b quantity.Value) float64 {
	if !a.Set && !b.Set {
		return math.NaN()
	}
	if a.Set != b.Set || a.Dim != b.Dim || !(a.SI > 0) {
		if !equals(a, b) {
			f.hit("incomparable", where+", "+what, orNothing(a.Text), orNothing(b.Text))
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

// amounts are the batch, the reagents of every step and their strengths.
func (f *firing) amounts() {
	powder := 1.0
	if a, b := f.d.a.Precursor, f.d.b.Precursor; a != nil && b != nil {
		powder = f.ratio("precursor", "mass", a.Mass, b.Mass)
		if reaches(powder, f.rule("quantity").Value) {
			f.hit("quantity", "precursor", a.Mass.Text, b.Mass.Text)
		}
		if a.Phase.Text != b.Phase.Text {
			f.hit("reagent", "precursor", a.Phase.Text, b.Phase.Text)
		}
		if r := f.ratio("precursor", "particle_size", b.ParticleSize, a.ParticleSize); reaches(r, f.rule("quantity").Value) {
			f.hit("reagent", "precursor, particle_size", a.ParticleSize.Text, b.ParticleSize.Text)
		}
	} else if (f.d.a.Precursor == nil) != (f.d.b.Precursor == nil) {
		f.hit("reagent", "precursor", yes(f.d.a.Precursor != nil), yes(f.d.b.Precursor != nil))
	}
	for _, p := range f.d.pairs {
		if p[0] < 0 || p[1] < 0 {
			continue
		}
		a, b := &f.d.a.Steps[p[0]], &f.d.b.Steps[p[1]]
		for _, m := range pairsOf(a, b) {
			f.material(whichStep(a.Number, b.Number), m, powder)
		}
	}
}

func (f *firing) material(where string, m [2]*route.Material, powder float64) {
	if m[0] == nil || m[1] == nil {
		name := func(m *route.Material) string {
			if m == nil {
				return "not there"
			}
			return nameOf(m)
		}
		f.hit("reagent", where, name(m[0]), name(m[1]))
		return
	}
	name := nameOf(m[0])
	for _, x := range []struct {
		what string
		a, b quantity.Value
	}{{"mass", m[0].Mass, m[1].Mass}, {"volume", m[0].Volume, m[1].Volume}, {"amount", m[0].Amount, m[1].Amount}} {
		r := f.ratio(where, name+": "+x.what, x.a, x.b)
		switch limit := f.rule("quantity").Value; {
		case math.IsNaN(r):
		case !m[0].Precursor && reaches(r, limit):
			f.hit("quantity", where+", "+name, x.a.Text, x.b.Text)
		case reaches(math.Max(r/powder, powder/r), f.rule("proportion").Value):
			f.hit("proportion", where+", "+name, x.a.Text+powderOf(f.d.a), x.b.Text+powderOf(f.d.b))
		}
	}
	if r := f.ratio(where, name+": ratio", m[0].Ratio, m[1].Ratio); reaches(math.Max(r, 1/r), f.rule("proportion").Value) {
		f.hit("proportion", where+", "+name, m[0].Ratio.Text, m[1].Ratio.Text)
	}
	if mark := f.rule("corrosive").Value; corrosive(m[1]) && molar(m[1]) >= mark*(1-1e-9) && molar(m[0]) < mark*(1-1e-9) {
		f.hit("corrosive", where+", "+name, m[0].Strength.Text, m[1].Strength.Text)
	}
	if r := f.ratio(where, name+": strength", m[0].Strength, m[1].Strength); reaches(r, f.rule("strength").Value) {
		f.hit("strength", where+", "+name, m[0].Strength.Text, m[1].Strength.Text)
	}
}

// powderOf says to how much powder an amount is.
func powderOf(r *route.Route) string {
	if r.Precursor == nil || !r.Precursor.Mass.Set {
		return ""
	}
	return " to " + r.Precursor.Mass.Text
}

// corrosive reports whether a material is an acid or a base.
func corrosive(m *route.Material) bool { return m.Substance != nil && m.Substance.Acid != 0 }

// molar is the strength of a material in mol/L; one stated by mass counts as in water
// of 1 kg/L. It is not a number where it says neither.
func molar(m *route.Material) float64 {
	s := m.Strength
	switch {
	case !s.Set || m.Substance == nil:
		return math.NaN()
	case s.Dim == quantity.Molarity:
		return s.In("mol/L")
	case s.Dim == quantity.MassFraction:
		return 1000 * s.SI / m.Substance.Formula.MolarMass(chemicals.Base(), nil).V
	}
	return math.NaN()
}

// steps are what is done, how fast, how warm and who is there.
func (f *firing) steps() {
	for _, p := range f.d.pairs {
		switch {
		case p[1] < 0:
			s := &f.d.a.Steps[p[0]]
			f.hit("procedure", "step "+strconv.Itoa(s.Number)+" of the reviewed route", words(s), "left out")
			continue
		case p[0] < 0:
			s := &f.d.b.Steps[p[1]]
			f.hit("procedure", "step "+strconv.Itoa(s.Number), "not there", words(s))
			continue
		}
		f.step(&f.d.a.Steps[p[0]], &f.d.b.Steps[p[1]])
	}
}

func (f *firing) step(a, b *route.Step) {
	where := whichStep(a.Number, b.Number)
	if r := f.ratio(where, "over", b.Over, a.Over); reaches(r, f.rule("addition").Value) {
		f.hit("addition", where, a.Over.Text, b.Over.Text)
	}
	if r := f.ratio(where, "time", a.Time, b.Time); reaches(math.Max(r, 1/r), f.rule("proportion").Value) {
		f.hit("procedure", where+", time", a.Time.Text, b.Time.Text)
	}
	for _, x := range []struct {
		what string
		a, b quantity.Value
	}{{"temperature", a.Temperature, b.Temperature}, {"not_above", a.NotAbove, b.NotAbove}, {"retained", a.Retained, b.Retained}, {"gas_flow", a.GasFlow, b.GasFlow}} {
		f.ratio(where, x.what, x.a, x.b)
	}
	if a.NotAbove.Set && b.NotAbove.Set && b.NotAbove.SI-a.NotAbove.SI >= f.rule("temperature").Value*(1-1e-9) {
		f.hit("temperature", where+", not_above", a.NotAbove.Text, b.NotAbove.Text)
	}
	if a.Gas != b.Gas {
		f.hit("procedure", where+", gas", orNothing(a.Gas), orNothing(b.Gas))
	}
	if a.Part.Set && b.Part.Set && !equals(a.Part, b.Part) && !(b.Part.Dim == quantity.Volume && along(a.Part, b.Part, f.d.grown())) {
		f.hit("procedure", where+", part", a.Part.Text, b.Part.Text)
	}
	if told := acidity(a.TargetPH); told != acidity(b.TargetPH) {
		f.hit("procedure", where+", target_ph", told, acidity(b.TargetPH))
	}
	if a.Temperature.Set && b.Temperature.Set && math.Abs(b.Temperature.SI-a.Temperature.SI) >= f.rule("temperature").Value*(1-1e-9) {
		f.hit("temperature", where, a.Temperature.Text, b.Temperature.Text)
	}
	if a.Attended != nil && *a.Attended && (b.Attended == nil || !*b.Attended) {
		f.hit("attendance", where, "attended", "attended: "+told(b.Attended))
	}
	if told(a.Stirred) != told(b.Stirred) {
		f.hit("procedure", where, "stirred: "+told(a.Stirred), "stirred: "+told(b.Stirred))
	}
}

func acidity(ph *float64) string {
	if ph == nil {
		return "not stated"
	}
	return strconv.FormatFloat(*ph, 'g', -1, 64)
}

// order is that in which things both routes have go in.
func (f *firing) order() {
	list := func(r *route.Route) []string {
		var out []string
		for i := range r.Steps {
			for j := range r.Steps[i].What {
				out = append(out, r.Steps[i].In+": "+nameOf(&r.Steps[i].What[j]))
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

// places are containers, but for a capacity that only grew along with the batch.
func (f *firing) places() {
	powder := f.d.grown()
	for _, x := range f.d.diffs {
		if !strings.HasPrefix(x.Where, "place ") || grown(f.d, x, powder) {
			continue
		}
		f.hit("vessel", x.Where+", "+x.What, orNothing(x.Was), orNothing(x.Is))
	}
}

// grown is how many times the powder of the reviewed route the proposed one has.
func (d *differ) grown() float64 {
	if a, b := d.a.Precursor, d.b.Precursor; a != nil && b != nil && a.Mass.SI > 0 {
		return b.Mass.SI / a.Mass.SI
	}
	return 1
}

// along reports whether a quantity grew along with the powder.
func along(p, q quantity.Value, powder float64) bool {
	return p.Set && q.Set && math.Abs(q.SI/p.SI/powder-1) < 1e-6
}

// grown reports whether a difference of a place is what the batch explains.
func grown(d *differ, x InputDiff, powder float64) bool {
	find := func(r *route.Route) *route.Place {
		for i := range r.Places {
			if "place "+r.Places[i].Key == x.Where {
				return &r.Places[i]
			}
		}
		return nil
	}
	a, b := find(d.a), find(d.b)
	if a == nil || b == nil {
		return false
	}
	switch x.What {
	case "capacity":
		return along(a.Capacity, b.Capacity, powder)
	case "stirrer_heat":
		return along(a.StirrerHeat, b.StirrerHeat, powder)
	case "cooling: ice":
		return along(a.Cooling.Ice, b.Cooling.Ice, powder)
	case "cooling: bath":
		return along(a.Cooling.Bath, b.Cooling.Bath, powder)
	}
	return false
}

// bands of powder, g: below the first, up to the second and above it.
var bands = [...]float64{5, 100}

func (f *firing) band() {
	a, b := f.d.a.Precursor, f.d.b.Precursor
	if a == nil || b == nil || !a.Mass.Set || !b.Mass.Set {
		return
	}
	edges, upTo := bands[:], len(bands)-1 // an edge from upTo on still belongs to the band below it
	if s := f.c.Proposed.Case.Site; s != nil && s.Triggers.MassBands != nil {
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
	if of(b.Mass) > of(a.Mass) {
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

// worstOf is the greatest known value of a quantity, 0 where there is none.
func worstOf(r *hazards.Review, quantity string) float64 {
	out := 0.0
	for i := range r.Figures {
		if f := &r.Figures[i]; f.Quantity == quantity && f.Value.V > out {
			out = f.Value.V
		}
	}
	return out
}

// class is the worst a criticality class can be.
func class(f *figure.Figure) string {
	if f.High.Unknown() {
		return "not known"
	}
	return strconv.FormatFloat(f.High.V, 'g', -1, 64)
}

// verdicts are findings that get worse, and what is no longer known.
func (f *firing) verdicts() {
	for i := range f.c.Verdicts {
		if v := &f.c.Verdicts[i]; v.Worse() {
			f.hit("verdict", v.ID.String(), v.Was.Verdict.String(), v.Is.Verdict.String())
		}
	}
	before := map[figure.ID]*figure.Figure{}
	for i := range f.c.Reviewed.Figures {
		x := &f.c.Reviewed.Figures[i]
		before[x.ID] = x
	}
	for i := range f.c.Proposed.Figures { // it has no verdict of its own
		x := &f.c.Proposed.Figures[i]
		old := before[x.ID]
		if x.Quantity != "heat.criticality_class" || !x.Of.IsZero() || old == nil {
			continue
		}
		if x.High.V > old.High.V || x.High.Unknown() && !old.High.Unknown() {
			f.hit("verdict", x.ID.String(), class(old), class(x))
		}
	}
	was := map[string]bool{}
	for _, u := range f.c.Reviewed.Unknown {
		was[u.ID] = true
	}
	for _, u := range f.c.Proposed.Unknown {
		if !was[u.ID] {
			f.hit("unknown", u.Text, "known", "not known")
		}
	}
}
