package draft

import (
	"etchbound/hazards/figure"
	"etchbound/hazards/spread"
)

// AirTrack is what is in the air over an hour, of a room after a spill or within reach of
// a source in the worst step: ppm against minutes, in the middle of the range and where
// danger lies. Both come to their figure as fast: the air that is slowest to be changed
// would draw the dangerous end below the middle of the first hour.
type AirTrack struct {
	Of            *figure.Figure
	Near          bool // within reach of a source
	Middle, Worst [][2]float64
}

// followed is how long air is drawn, min.
const followed = 60

// ventilated is a room with the air near a source in it.
type ventilated struct {
	room           spread.Room
	exchange, near float64 // m3/s, m3
}

// airOfSite is the air of the site in the middle of its range; false where the room is
// not known.
func (b *Draft) airOfSite() (ventilated, bool) {
	site, st := b.Review.Case.Site, b.Review.Case.Store
	if site == nil || !site.RoomVolume.Set || !site.RoomFlow.Set {
		return ventilated{}, false
	}
	mixing, a := st.Row("air.mixing")
	near, c := st.Row("air.near")
	volume, d := st.Row("air.near_volume")
	return ventilated{spread.Room{Volume: site.RoomVolume.In("m3"),
		Flow: site.RoomFlow.In("m3/h") / 3600 * mixing.Value}, near.Value / 60, volume.Value}, a && c && d
}

// AirTracks are the room after the spill of each vapour, and what is breathed near the
// source in the worst step of each; none where the room is not known.
func (b *Draft) AirTracks() []AirTrack {
	v, ok := b.airOfSite()
	if !ok {
		return nil
	}
	track := func(f *figure.Figure, near bool) AirTrack {
		return AirTrack{f, near, v.follow(f.Value.V, near), v.follow(f.High().V, near)}
	}
	var out []AirTrack
	nearest := map[string]*figure.Figure{}
	var order []string
	for i := range b.Review.Figures {
		f := &b.Review.Figures[i]
		switch {
		case f.Case.Failure != "" || f.Case == figure.By(figure.Boiling): // nobody knows for how long
		case !f.Of().IsZero() || f.Value.Unknown() || f.High().Unknown():
		case f.Quantity == "air.room_peak" && f.Case.Over == 0: // a mean over some time is of the same curve
			out = append(out, track(f, false))
		case f.Quantity == "air.breathing_zone" && nearest[f.Agent] == nil:
			order = append(order, f.Agent)
			nearest[f.Agent] = f
		case f.Quantity == "air.breathing_zone" && f.High().V > nearest[f.Agent].High().V:
			nearest[f.Agent] = f
		}
	}
	for _, agent := range order {
		out = append(out, track(nearest[agent], true))
	}
	return out
}

// follow is what is in the air by the minute of what comes to end: all over the room, or
// within reach of the source. What is nothing is left out.
func (v ventilated) follow(end float64, near bool) [][2]float64 {
	var out [][2]float64
	for t := 0.0; t <= followed; t++ {
		y := v.room.Mean(end*v.room.Flow, 60*t)
		if near {
			y, _ = v.room.TwoZones(end/(1/v.room.Flow+1/v.exchange), v.exchange, v.near, 60*t)
		}
		if y > 0 {
			out = append(out, [2]float64{t, y})
		}
	}
	return out
}
