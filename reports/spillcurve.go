package reports

import (
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/spread"
	"etchbound/reports/chart"
)

// spillCurves draws the room over an hour after the spill of each vapour, with
// the concentrations at which it is left as labelled lines. Nothing is drawn
// where the room is not known.
func (b *builder) spillCurves() []Block {
	site := b.r.Case.Site
	if site == nil || !site.RoomVolume.Set || !site.RoomFlow.Set {
		return nil
	}
	mixing, ok := b.r.Case.Store.Row("air.mixing")
	if !ok {
		return nil
	}
	room := func(mixes float64) spread.Room {
		return spread.Room{Volume: site.RoomVolume.In("m3"), Flow: site.RoomFlow.In("m3/h") / 3600 * mixes}
	}
	var out []Block
	for i := range b.r.Figures {
		f := &b.r.Figures[i]
		if f.Quantity != "air.room_peak" || f.Of != "" || f.Value.Unknown() || f.High.Unknown() {
			continue
		}
		out = append(out, b.spillCurve(f, room(mixing.Value), room(mixing.Low))...)
	}
	return out
}

// followed is how long the room is drawn, min.
const followed = 60

// spillCurve is the room as it mixes in the middle of its range, and at the end
// where danger lies, where least of the exchange counts.
func (b *builder) spillCurve(f *figure.Figure, middle, worst spread.Room) []Block {
	name := agentName(f.Agent)
	c := chart.Chart{ID: "spill-" + f.Agent, Title: say("curve.spill", name), Alt: say("curve.spill", name),
		X: chart.Axis{Label: say("curve.spill_time"), Unit: "min"}, Y: chart.Axis{Label: say("curve.spill_axis"), Unit: "ppm"}}
	for _, x := range []struct {
		label string
		room  spread.Room
		end   float64
	}{{"curve.spill_mean", middle, f.Value.V}, {"curve.spill_worst", worst, f.High.V}} {
		v := chart.Curve{Label: say(x.label)}
		for t := 0.0; t <= followed; t++ {
			v.X, v.Y = append(v.X, t), append(v.Y, x.room.Mean(x.end*x.room.Flow, 60*t))
		}
		c.Curves = append(c.Curves, v)
	}
	for _, e := range limit.ExposureAt(f.Agent, "") {
		if e.Kind == limit.Escape || e.ID == "aegl2_"+f.Agent+"_10min" {
			c.Lines = append(c.Lines, chart.Line{Y: e.Value, Label: e.Label})
		}
	}
	svg, err := c.SVG()
	if err != nil {
		return nil
	}
	return []Block{Picture{SVG: svg, Text: c.Text()}}
}
