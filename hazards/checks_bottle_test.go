package hazards_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

// bottleReview is a route that takes a little 37 % hydrochloric acid, of which the site
// has bottles.
func bottleReview(t *testing.T, bottles ...quantity.Value) hazards.Review {
	t.Helper()
	site := *demoSite(t)
	site.RoomVolume, site.RoomFlow = quantity.Of(30, "m3"), quantity.Of(180, "m3/h")
	site.Stock = nil
	for _, b := range bottles {
		site.Stock = append(site.Stock, route.Stock{Substance: mustFind(t, "hydrochloric acid"),
			Strength: quantity.Of(37, "wt%"), Volume: quantity.Of(10, "L"), Bottle: b})
	}
	c := newCase(t, load(t, strings.ReplaceAll(airRoutes[0].yaml,
		"{substance: hydrochloric acid, strength: 1 mol/L, volume: 200 mL}",
		"{substance: hydrochloric acid, strength: 37 wt%, volume: 20 mL}")))
	c.Site = &site
	return must(t, c)
}

// A litre of 37 % acid weighs 1.18 kg and holds 11.97 mol. Given off within 10 min that is
// 0.01995 mol/s, and of a plume at 100 m in a stable night, 1.5 m/s, 3.98 m across and
// 1.553 m high, 839.8 ppm for each mol/s: 16.8 ppm, within an hour 2.8 (by hand).
func TestABottleGivesOffNoMoreThanItHolds(t *testing.T) {
	long.NotShort(t)
	rv := bottleReview(t, quantity.Of(1, "L"))
	for id, want := range map[string]float64{"air.plume@yard/hcl:over_10_min": 16.8,
		"air.plume@yard/hcl:over_60_min": 2.8} {
		f := figureOf(&rv, id)
		if f == nil || !nearly.Share(f.Value.V, want, 0.005) {
			t.Errorf("%s: %+v, want %g ppm", id, f, want)
		}
		if v, there := verdicts(&rv)[id+"+aegl2_hcl"]; !there || v != figure.Within {
			t.Errorf("%s: against the level of its own time %v", id, v)
		}
	}
	peak := figureOf(&rv, "air.plume@yard/hcl")
	if peak == nil || !nearly.To(peak.Value.V, 38.5, 1) {
		t.Errorf("before it is empty %+v, want 38.5 ppm", peak)
	}
	for _, e := range []string{"+aegl2_hcl", "+idlh_hcl"} {
		if _, there := verdicts(&rv)["air.plume@yard/hcl"+e]; there != (e == "+idlh_hcl") {
			t.Errorf("the peak out of doors is held against %s: %v", e, there)
		}
	}
	room, mean := figureOf(&rv, "air.room_peak@delivery/hcl"), figureOf(&rv, "air.room_peak@delivery/hcl:over_10_min")
	all := 1e6 * 11.97 * 24.4654e-3 / 30 // all of it in the air of the room
	if room == nil || mean == nil || !(room.Value.V < all) || !(mean.Value.V <= room.Value.V) {
		t.Errorf("%+v and on average %+v in the room, which all of it would bring to %g ppm", room, mean, all)
	}
}

// Two bottles are no better than the worse of them at any time, and the level of each
// time is the one tabled for it.
func TestTheWorseBottleCountsAtEachTime(t *testing.T) {
	long.NotShort(t)
	small, large := bottleReview(t, quantity.Of(100, "mL")), bottleReview(t, quantity.Of(1, "L"))
	both := bottleReview(t, quantity.Of(100, "mL"), quantity.Of(1, "L"))
	times := limit.AEGLTimes("hcl", 2)
	if len(times) != 5 {
		t.Fatal(times)
	}
	ids := []string{"air.plume@yard/hcl", "air.plume@yard/hcl:over_10_min", "air.plume@yard/hcl:over_30_min",
		"air.plume@yard/hcl:over_60_min", "air.plume@yard/hcl:over_240_min", "air.plume@yard/hcl:over_480_min"}
	for _, id := range ids {
		a, b, most := figureOf(&small, id), figureOf(&large, id), figureOf(&both, id)
		if !nearly.Share(most.Value.V, math.Max(a.Value.V, b.Value.V), 1e-9) {
			t.Errorf("%s: %g of both, %g and %g of each", id, most.Value.V, a.Value.V, b.Value.V)
		}
	}
}
