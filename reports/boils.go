package reports

import (
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/words"
)

// rise is the rise that all the heat would give; of an open liquor it ends at boiling.
const rise = "heat.adiabatic_rise"

// cappable are the temperatures that an open liquor cannot have beyond boiling, and the
// rise to there: what is left of the heat goes off as vapour.
var cappable = []string{"heat.mtsr", "heat.temperature_peak", rise}

// boilsAt is the high end of the boiling point of the open liquor that a temperature is
// of, degC, or the rise to there, K; false for what is no such figure, where it is not
// known, and for what is shut or molten, which gets hotter and presses.
func (b *builder) boilsAt(f *figure.Figure) (float64, bool) {
	if !slices.Contains(cappable, f.Quantity) {
		return 0, false
	}
	if of, ok := b.byID[f.Of()]; ok {
		f = of
	}
	n, ok := f.Place.Step()
	steps := b.route().Steps
	if !ok || n < 1 || n > len(steps) {
		return 0, false
	}
	s := &steps[n-1]
	at := b.route().Place(s.In)
	does := s.Verb().Does
	if at == nil || at.Closure == route.Closed || does == route.Shuts || does == route.Melts {
		return 0, false
	}
	t, ok := b.at("heat.boiling_point", f.Place)
	if !ok || t.High().Unknown() {
		return 0, false
	}
	if f.Quantity != rise {
		return t.High().V, true
	}
	top, ok := b.at("heat.mtsr", f.Place)
	if !ok || top.Value.Unknown() || f.Value.Unknown() {
		return 0, false
	}
	return t.High().V - (top.Value.V - f.Value.V), true
}

// valueText is the central value of a figure with its unit, and of an open liquor that
// it boils.
func (b *builder) valueText(f *figure.Figure) string {
	if t, ok := b.boilsAt(f); ok && f.Value.V >= t {
		if f.Quantity == rise {
			return words.Of("rise.boils", b.o.Units.Amount(f.Quantity, "", t, 1))
		}
		return words.Of("temperature.boils", b.o.Units.Amount(f.Quantity, "", t, 1))
	}
	return b.o.Units.Value(f)
}

// ending is an end of what an assumption moves a figure to, with its unit; of an open
// liquor at most that it boils.
func (b *builder) ending(id figure.ID, v float64) string {
	if f, ok := b.byID[id]; ok {
		if t, ok := b.boilsAt(f); ok && v >= t {
			return words.Of("temperature.boiling")
		}
	}
	return b.o.Units.Amount(id.Quantity, id.Agent, v, 0)
}

// rangeText is the range of a figure, and of an open liquor to where it boils.
func (b *builder) rangeText(f *figure.Figure) string {
	t, ok := b.boilsAt(f)
	switch {
	case !ok || f.High().Unknown() || f.High().V < t:
		return b.o.Units.Range(f)
	case f.Low().Unknown():
		return words.Of("value.unknown")
	case f.Low().V >= t:
		return words.Of("temperature.throughout")
	case f.Value.V >= t:
		return words.Of("temperature.from", b.o.Units.LowEnd(f))
	}
	return words.Of("range", b.o.Units.LowEnd(f), words.Of("temperature.boiling"))
}

// valueAndRange is "63.1 K (56.9 to 69.3)", of an open liquor "boils at 104 °C (from
// 98)", with how much it throws out where all the heat comes at once.
func (b *builder) valueAndRange(f *figure.Figure) string {
	if _, ok := b.boilsAt(f); !ok {
		return b.o.Units.Whole(f)
	}
	s, r := b.valueText(f), b.rangeText(f)
	if r != words.Of("range.none") && r != words.Of("temperature.throughout") &&
		!(f.Value.Unknown() && r == words.Of("value.unknown")) {
		s += " (" + r + ")"
	}
	if t, ok := b.boilsAt(f); ok && f.Quantity == "heat.mtsr" && f.High().V >= t {
		if g, ok := b.at("heat.boiled_off", b.memberPlace(f)); ok && !g.High().Unknown() && g.High().V > 0 {
			s = words.Of("temperature.throws_out", s, b.o.Units.Danger(g))
		}
	}
	return s
}

// memberPlace is the place of a figure, of a sum or a worst that of its member.
func (b *builder) memberPlace(f *figure.Figure) figure.Place {
	if of, ok := b.byID[f.Of()]; ok {
		return of.Place
	}
	return f.Place
}
