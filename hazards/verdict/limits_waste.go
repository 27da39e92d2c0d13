package verdict

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
)

// heldWhen reports whether a limit is of the place of a figure and what that holds. What
// nobody knows can give gas.
func heldWhen(c route.Case, figs *figure.Set, l *limit.Limit, f *figure.Figure) bool {
	switch l.When {
	case limit.Always:
		return true
	case limit.Waste:
		p := c.Route.Place(f.Place.Key())
		return p != nil && (p.Batches > 0 || c.Route.TakesWaste(p))
	}
	known, gives := false, false
	for g := range figs.At("gas.closed.pressure", f.Place) {
		known, gives = true, gives || !(g.High().V <= 0)
	}
	return (l.When == limit.Gas) == (gives || !known)
}

// writtenStore is how long a place is stored as written, d: so long its gas has to stay
// below what can burn. A time that is not stated is not known.
func writtenStore(c route.Case, f *figure.Figure) []limit.Limit {
	days := 0.0
	for i := range c.Route.Steps {
		s := &c.Route.Steps[i]
		switch {
		case s.Verb().Does != route.Stores || figure.At(s.In) != f.Place:
		case !s.Time.Set:
			days = math.NaN()
		default:
			days += s.Time.In("d")
		}
	}
	return []limit.Limit{{Key: limit.Named(limit.Route, "written_store"), Quantity: f.Quantity, Value: days, Unit: "d",
		Status: "given", Near: 1, Role: limit.Gathers, Stops: limit.WhereExceeded}}
}
