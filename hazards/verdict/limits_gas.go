package verdict

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// siteHood is the air the hood of the site moves; not known where no site says.
func siteHood(c route.Case, f *figure.Figure) []limit.Limit {
	l := limit.Limit{Key: limit.Named(limit.Site, "site_hood"), Quantity: f.Quantity, Value: math.NaN(), Unit: "m3/h",
		Section: "hood.flow", Status: "given"}
	if c.Site != nil && c.Site.Hood != nil && c.Site.Hood.Flow.Set {
		l.Value, l.Section = least(c.Site.Hood.Flow).In("m3/h"), c.Site.Hood.Flow.At
	}
	return []limit.Limit{l}
}

// writtenVent is the narrowest bore of the vent of a step; not known where the
// route does not say.
func writtenVent(c route.Case, k *process.Walk, f *figure.Figure) []limit.Limit {
	p, _ := placeOf(c, k, f)
	if p == nil {
		return nil
	}
	l := limit.Limit{Key: limit.Named(limit.Route, "written_vent"), Quantity: f.Quantity,
		Value: math.NaN(), Unit: "mm", Section: p.At + ".vent", Status: "given", Near: 1}
	if p.VentBore.Set {
		l.Value = least(p.VentBore).In("mm")
	}
	return []limit.Limit{l}
}

// roomLeft is the room over the liquor of a step.
func roomLeft(c route.Case, k *process.Walk, f *figure.Figure) []limit.Limit {
	p, d := placeOf(c, k, f)
	if p == nil {
		return nil
	}
	q := *p
	q.Capacity = least(q.Capacity)
	room := process.RoomIn(c, nil, k, &q, d.Contents())
	return []limit.Limit{{Key: limit.Named(limit.Route, "room_left"), Quantity: f.Quantity,
		Value: room.Space.V, Unit: "mL", Section: p.At + ".capacity", Status: "computed"}}
}

// placeOf is the place a step works in, and what was done there.
func placeOf(c route.Case, k *process.Walk, f *figure.Figure) (*route.Place, *process.Done) {
	for i := range k.Steps {
		d := &k.Steps[i]
		if figure.Step(d.Number) != f.Place {
			continue
		}
		for j := range c.Route.Places {
			if p := &c.Route.Places[j]; p.Key == d.Place {
				return p, d
			}
		}
	}
	return nil, nil
}

// most is a stated value at the high end of its range, where a limit that it leaves less
// of is strictest.
func most(q quantity.Value) quantity.Value {
	if q.HasRange() {
		q.SI, q.Low, q.High = q.High, math.NaN(), math.NaN()
	}
	return q
}

// least is a stated value at the low end of its range, where a limit that it
// sets is strictest.
func least(q quantity.Value) quantity.Value {
	if q.HasRange() {
		q.SI, q.Low, q.High = q.Low, math.NaN(), math.NaN()
	}
	return q
}
