package draft

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/reports/number"
	"etchbound/scaling"
)

// BandOf is where the draws of a figure lie; false where none were made or the
// figure is of a failure, whose range stays that of the corners.
func (b *Draft) BandOf(f *figure.Figure) (scaling.Band, bool) {
	if b.Options.Sample == nil {
		return scaling.Band{}, false
	}
	if x, there := b.Options.Sample.Bands[f.ID]; there {
		return x, true
	}
	x, there := b.Options.Sample.Bands[f.Of()]
	return x, there
}

// manyUnknown is the share of the draws from which on a chance is not known.
const manyUnknown = 0.05

// ChanceOf is how often a finding exceeds; not a number where no draws were made,
// where none judged it, as one of a failure, and where too many do not know it.
func (b *Draft) ChanceOf(f *figure.Finding) float64 {
	if g := b.ByID[f.Figure]; b.Options.Sample == nil || g == nil || g.Case.Failure != "" {
		return math.NaN()
	}
	return SureChance(b.Options.Sample.Chance, f.ID())
}

// SureChance is a chance, not a number where no draw judged the finding and where
// too many do not know it.
func SureChance(all map[figure.FindingID]scaling.Chance, id figure.FindingID) float64 {
	c, there := all[id]
	if !there || c.Unknown > manyUnknown {
		return math.NaN()
	}
	return c.Exceeds
}

// Percent of the draws.
func Percent(share float64) string { return number.Nearest(100*share, 3) + " %" }
