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
