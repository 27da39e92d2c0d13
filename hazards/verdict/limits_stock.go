package verdict

import (
	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
)

// ofPrograms is the share of the quantity of a programme that may be reached: all of it,
// unless the site lets less of the substance be reached. What is reported once it gets out
// is reached by no holding.
func ofPrograms(c route.Case, f *figure.Figure) []limit.Limit {
	slug := ""
	if s, held := chemicals.Library().Find(f.Place.Key()); held {
		slug = s.Slug
	}
	l := limit.Limit{Key: limit.Named(limit.Review, "threshold"), Quantity: f.Quantity, Unit: "1",
		Value: stock.MayReach(c.Limits, slug), Report: f.Quantity == "stock.release", Status: "given"}
	if t, held := stock.ThresholdOf(f.Agent); held {
		l.Document, l.Section, l.Edition, l.Status = t.Document, t.Section, t.Edition, t.Status
		l.Label = t.Programme + ", " + t.Tier
	}
	return []limit.Limit{l}
}

// batchesLeft is how many batches have to be left to a quantity for nothing to be said on
// page 1. Assumed: a site that wants to hear of it sooner says so in its limits.
const batchesLeft = 10

// fewBatches is near where fewer than so many runs are left; a stock that exceeds is told
// by its share.
func fewBatches(f *figure.Figure) []limit.Limit {
	return []limit.Limit{{Key: limit.Named(limit.Review, "few_batches"), Quantity: f.Quantity, Value: batchesLeft,
		Unit: "1", Near: 1, Report: true, Status: "assumed"}}
}
