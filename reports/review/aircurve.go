package review

import (
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/spread"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/words"
)

// followed is how long air is drawn, min.
const followed = 60

// airOf is the air of the site in the middle of its range, and at the end where
// danger lies.
type airOf struct{ middle, worst ventilated }

// ventilated is a room with the air near a source in it.
type ventilated struct {
	room           spread.Room
	exchange, near float64 // m3/s, m3
}

func (b *builder) airOfSite() (airOf, bool) {
	site, st := b.Review.Case.Site, b.Review.Case.Store
	if site == nil || !site.RoomVolume.Set || !site.RoomFlow.Set {
		return airOf{}, false
	}
	mixing, a := st.Row("air.mixing")
	near, c := st.Row("air.near")
	volume, d := st.Row("air.near_volume")
	of := func(mixes, exchange float64) ventilated {
		return ventilated{spread.Room{Volume: site.RoomVolume.In("m3"), Flow: site.RoomFlow.In("m3/h") / 3600 * mixes},
			exchange / 60, volume.Value}
	}
	return airOf{of(mixing.Value, near.Value), of(mixing.Low, near.Low)}, a && c && d
}

// airCurves draws the room over an hour after the spill of each vapour, and what
// is breathed near the source in the worst step, with the concentrations that
// count as labelled lines. Nothing is drawn where the room is not known.
func (b *builder) airCurves() []document.Block {
	air, ok := b.airOfSite()
	if !ok {
		return nil
	}
	var out []document.Block
	nearest := map[string]*figure.Figure{}
	var order []string
	for i := range b.Review.Figures {
		f := &b.Review.Figures[i]
		switch {
		case f.Case.Failure != "" || f.Case == figure.By(figure.Boiling): // nobody knows for how long
		case !f.Of().IsZero() || f.Value.Unknown() || f.High().Unknown():
		case f.Quantity == "air.room_peak" && f.Case.Over == 0: // a mean over some time is of the same curve
			out = append(out, b.airCurve(f, "curve."+f.Place.String(), air, wholeRoom, leaving(f.Agent))...)
		case f.Quantity == "air.breathing_zone" && nearest[f.Agent] == nil:
			order = append(order, f.Agent)
			nearest[f.Agent] = f
		case f.Quantity == "air.breathing_zone" && f.High().V > nearest[f.Agent].High().V:
			nearest[f.Agent] = f
		}
	}
	for _, agent := range order {
		out = append(out, b.airCurve(nearest[agent], "curve.near", air, arm, b.breathed(agent))...)
	}
	return out
}

// wholeRoom is the share in a room after t min of what comes to end in it.
func wholeRoom(v ventilated, end, t float64) float64 { return v.room.Mean(end*v.room.Flow, 60*t) }

// arm is the share within reach of a source after t min of what comes to end
// there.
func arm(v ventilated, end, t float64) float64 {
	close, _ := v.room.TwoZones(end/(1/v.room.Flow+1/v.exchange), v.exchange, v.near, 60*t)
	return close
}

// leaving are the lines at which a room is left.
func leaving(agent string) []chart.Line {
	var out []chart.Line
	for _, e := range limit.ExposureAt(agent, "") {
		if e.Leave() {
			out = append(out, chart.Line{Y: e.Value, Label: e.Label})
		}
	}
	return out
}

// breathed are the lowest limits of an agent at the site as lines.
func (b *builder) breathed(agent string) []chart.Line {
	var out []chart.Line
	for _, e := range b.lowest(agent) {
		out = append(out, chart.Line{Y: e.Value, Label: e.Label})
	}
	return out
}

// lowest are the lowest limits of an agent at the site: for a working day, for a quarter
// of an hour or less, and what is immediately dangerous.
func (b *builder) lowest(agent string) []*limit.Exposure {
	jurisdiction := ""
	if s := b.Review.Case.Site; s != nil {
		jurisdiction = s.Jurisdiction
	}
	var day, short, escape *limit.Exposure
	lower := func(into **limit.Exposure, e *limit.Exposure) {
		if *into == nil || e.Value < (*into).Value {
			*into = e
		}
	}
	for _, e := range limit.ExposureAt(agent, jurisdiction) {
		switch {
		case e.Kind == limit.Emergency:
		case e.Kind == limit.Escape:
			lower(&escape, &e)
		case e.Average <= 15:
			lower(&short, &e)
		default:
			lower(&day, &e)
		}
	}
	return slices.DeleteFunc([]*limit.Exposure{day, short, escape}, func(e *limit.Exposure) bool { return e == nil })
}

// airCurve is one figure of the air over time, in the middle of its range and
// where danger lies.
func (b *builder) airCurve(f *figure.Figure, title string, air airOf,
	share func(ventilated, float64, float64) float64, lines []chart.Line) []document.Block {
	name := draft.AgentName(f.Quantity, f.Agent)
	caption := words.Of(title, name)
	if title == "curve.near" {
		caption = words.Of(title, name, b.PlaceName(f.Place))
	}
	c := chart.Chart{ID: f.Place.String() + "-" + f.Agent, Title: caption, Alt: caption,
		X:     chart.Axis{Label: words.Of(title + "_time"), Unit: "min"},
		Y:     chart.Axis{Label: words.Of(title + "_axis"), Unit: "ppm", Log: true},
		Lines: lines}
	for _, x := range []struct {
		label string
		in    ventilated
		end   float64
	}{{"curve.spill_mean", air.middle, f.Value.V}, {"curve.spill_worst", air.worst, f.High().V}} {
		v := chart.Curve{Label: words.Of(x.label)}
		for t := 0.0; t <= followed; t++ {
			if y := share(x.in, x.end, t); y > 0 {
				v.X, v.Y = append(v.X, t), append(v.Y, y)
			}
		}
		c.Curves = append(c.Curves, v)
	}
	return drawn(c)
}
