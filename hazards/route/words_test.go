package route_test

import (
	"testing"

	"etchbound/hazards/route"
)

// Steps are counted from 1 where people read them.
func TestTold(t *testing.T) {
	for path, want := range map[string]string{
		"steps[4].temperature":                       "step 5: temperature",
		"steps[0].what[1].strength":                  "step 1: material 2: strength",
		"steps[9].what[0].ratio needs a precursor":   "step 10: material 1: ratio needs a precursor",
		"places.etch.cooling.ua":                     "etch: cooling: ua",
		"places.wash_tubes.vent_line":                "wash_tubes: vent line",
		"places.etch.capacity: nothing is left over": "etch: capacity: nothing is left over",
		"precursor.impurities[1].share":              "precursor: impurity 2: share",
		"measured.curve.points[0].time":              "measured: curve: point 1: time",
		"data[3].value":                              "datum 4: value",
		"stock[0].bottle":                            "stock 1: bottle",
		"hood.face_velocity":                         "hood: face velocity",
		"title":                                      "title",
	} {
		if got := route.Told(path); got != want {
			t.Errorf("%q is told as %q, want %q", path, got, want)
		}
	}
}
