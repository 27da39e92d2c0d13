package review

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"etchbound/hazards/figure"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// mostSafeguards is how many safeguards a picture of a few batches tells apart.
const mostSafeguards = 5

// batches draw what the safeguards that hold take of their limits at a few batches, those
// that take most at the largest.
func (b *builder) batches() []document.Block {
	if b.Grown == nil || len(b.Grown.Rungs) < 2 {
		return nil
	}
	rungs := b.Grown.Rungs
	last := rungs[len(rungs)-1].Shares
	ids := slices.SortedFunc(maps.Keys(last), func(x, y figure.FindingID) int {
		return cmp.Or(-cmp.Compare(last[x], last[y]), cmp.Compare(x.String(), y.String()))
	})
	c := chart.Chart{ID: "batches", Title: words.Of("curve.batches"), Alt: words.Of("curve.batches"),
		X:     chart.Axis{Label: words.Of("growth.batch"), Unit: "g"},
		Y:     chart.Axis{Label: words.Of("growth.share")},
		Lines: []chart.Line{{Y: 1, Label: words.Of("growth.limit")}}}
	seen := map[string]bool{}
	for _, id := range ids {
		if seen[id.Figure.Quantity] || len(c.Curves) == mostSafeguards {
			continue
		}
		v := chart.Curve{Label: number.LabelOf(id.Figure.Quantity)}
		for _, r := range rungs {
			if y, there := r.Shares[id]; there {
				v.X, v.Y = append(v.X, r.Grams), append(v.Y, math.Min(y, mostShown))
			}
		}
		if len(v.X) > 1 && v.X[0] == rungs[0].Grams && v.Y[len(v.Y)-1] > v.Y[0] {
			seen[id.Figure.Quantity] = true
			c.Curves = append(c.Curves, v)
		}
	}
	return drawn(c)
}

// mostShown is the share of a limit above which a curve is not followed.
const mostShown = 10
