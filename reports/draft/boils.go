package draft

import (
	"math"
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/upset"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// rise is the rise that all the heat would give; of an open liquor it ends at boiling.
const rise = "heat.adiabatic_rise"

// selfHeated is the rise that cake gives itself; it is told to where its water boils.
const selfHeated = "cake.warming"

// isRise reports whether a figure is a rise, K, and no temperature.
func isRise(f *figure.Figure) bool { return f.Quantity == rise || f.Quantity == selfHeated }

// cappable are the temperatures that an open liquor cannot have beyond boiling, and the
// rise to there: what is left of the heat goes off as vapour.
var cappable = []string{"heat.mtsr", "heat.temperature_peak", rise, selfHeated}

// BoilsAt is the high end of the boiling point of the open liquor that a temperature is
// of, degC, or the rise to there, K; false for what is no such figure, where it is not
// known, and for what is shut or molten, which gets hotter and presses. Cake loses its water
// by then wherever it lies, and degrades no more in it.
func (b *Draft) BoilsAt(f *figure.Figure) (float64, bool) {
	if !slices.Contains(cappable, f.Quantity) {
		return 0, false
	}
	if of, ok := b.ByID[f.Of()]; ok {
		f = of
	}
	if f.Quantity == selfHeated {
		t, ok := b.At("cake.boiling", f.Place)
		if !ok || t.High().Unknown() {
			return 0, false
		}
		return t.High().V, true
	}
	s := b.step(f.Place)
	if s == nil || b.Route().Place(s.Works()) == nil || b.Shut(f.Place) || s.Verb().Does == route.Melts {
		return 0, false
	}
	t, ok := b.At("heat.boiling_point", f.Place)
	if boils, other := upset.OtherAcid(f.Case.Failure); other {
		return boils, true // another liquor than the one that is written
	}
	if !ok || t.High().Unknown() {
		return 0, false
	}
	if f.Quantity != rise {
		return t.High().V, true
	}
	top, ok := b.At("heat.mtsr", f.Place)
	if !ok || top.Value.Unknown() || f.Value.Unknown() {
		return 0, false
	}
	return t.High().V - (top.Value.V - f.Value.V), true
}

// Shut reports whether a step is done in a place that is closed: nothing boils there at the
// pressure of the air.
func (b *Draft) Shut(at figure.Place) bool {
	s := b.step(at)
	if s == nil {
		return false
	}
	place := b.Route().Place(s.Works())
	return s.Verb().Does == route.Shuts || place != nil && place.Closure == route.Closed
}

// IfOpen is what is told of boiling in a step, and where that is done in a closed place,
// that it holds if it were open.
func (b *Draft) IfOpen(at figure.Place, told string) string {
	if b.Shut(at) {
		return words.Of("value.if_open", told)
	}
	return told
}

// ToBoiling is a time to boiling in a step: in a closed place that of an open one, unless it
// is not known or does not come.
func (b *Draft) ToBoiling(f *figure.Figure, at figure.Place, told string) string {
	if f.Low().Unknown() || number.Never(f.Quantity, f.Low().V) {
		return told
	}
	return b.IfOpen(at, told)
}

// step is the step that a figure is of; nil for none.
func (b *Draft) step(at figure.Place) *route.Step {
	n, ok := at.Step()
	steps := b.Route().Steps
	if !ok || n < 1 || n > len(steps) {
		return nil
	}
	return &steps[n-1]
}

// ValueText is the central value of a figure with its unit, and of an open liquor that
// it boils.
func (b *Draft) ValueText(f *figure.Figure) string {
	if t, ok := b.BoilsAt(f); ok && f.Value.V >= t {
		if isRise(f) {
			return words.Of("rise.boils", b.Options.Units.Amount(f.Quantity, "", t, 1))
		}
		return b.Boils(f, t)
	}
	return b.Options.Units.Value(f)
}

// apart is how far the ends of a boiling point are, K, from which on both are told: acid that a
// salt may or may not take up boils anywhere between.
const apart = 10

// Boils is what is told of a temperature that reaches the high end t of the boiling point, degC.
func (b *Draft) Boils(f *figure.Figure, t float64) string {
	top := b.Options.Units.Amount(f.Quantity, "", t, 1)
	if low := b.boilsApart(f, t); !math.IsNaN(low) {
		return words.Of("temperature.boils_between", b.Options.Units.Amount(f.Quantity, "", low, -1), top)
	}
	return words.Of("temperature.boils", top)
}

// boilsApart is the low end of the boiling point that a temperature is held to, degC, where it is
// far from the high end t; else not a number.
func (b *Draft) boilsApart(f *figure.Figure, t float64) float64 {
	_, other := upset.OtherAcid(f.Case.Failure)
	if low := b.BoilsFrom(b.memberPlace(f.ID)); !other && !isRise(f) && t-low > apart {
		return low
	}
	return math.NaN()
}

// RangeText is the range of a figure, and of an open liquor to where it boils.
func (b *Draft) RangeText(f *figure.Figure) string {
	t, ok := b.BoilsAt(f)
	switch {
	case !ok || f.High().Unknown() || f.High().V < t:
		return b.Options.Units.Range(f)
	case f.Low().Unknown():
		return words.Of("value.unknown")
	case f.Low().V >= t, f.Value.V >= t && f.Low().V >= b.boilsApart(f, t):
		return words.Of("temperature.throughout")
	case f.Value.V >= t:
		return words.Of("temperature.from", b.Options.Units.LowEnd(f))
	}
	return words.Of("range", b.Options.Units.LowEnd(f), words.Of("temperature.boiling"))
}

// ValueAndRange is "63.1 K (56.9 to 69.3)", of an open liquor "boils at 104 °C (from
// 98)", with how much it throws out where all the heat comes at once.
func (b *Draft) ValueAndRange(f *figure.Figure) string {
	if _, ok := b.BoilsAt(f); !ok {
		return b.Options.Units.Whole(f)
	}
	s, r := b.ValueText(f), b.RangeText(f)
	if r != words.Of("range.none") && r != words.Of("temperature.throughout") &&
		!(f.Value.Unknown() && r == words.Of("value.unknown")) {
		s += " (" + r + ")"
	}
	if t, ok := b.BoilsAt(f); ok && f.Quantity == "heat.mtsr" && f.High().V >= t {
		if g, ok := b.At("heat.boiled_off", b.memberPlace(f.ID)); ok && !g.High().Unknown() && g.High().V > 0 {
			s = words.Of("temperature.throws_out", s, b.Options.Units.Danger(g))
		}
	}
	return s
}

// memberPlace is the place of a figure, of a sum or a worst that of its member.
func (b *Draft) memberPlace(of figure.ID) figure.Place {
	if f, ok := b.ByID[of]; ok {
		if member, ok := b.ByID[f.Of()]; ok {
			return member.Place
		}
	}
	return of.Place
}

// BoilsFrom is the low end of the boiling point of a step, degC; not a number
// where it is not known.
func (b *Draft) BoilsFrom(place figure.Place) float64 {
	if f, ok := b.At("heat.boiling_point", place); ok {
		return f.Low().V
	}
	return math.NaN()
}
