package number

import (
	"testing"

	"etchbound/hazards/limit"
)

// A limit that a document prints stands as printed; one that is worked out of another, such as a
// third of 2 ppm or 0.5 ppm of a working day for 45 min of it, has two digits and is never milder
// (by hand: 2/3 = 0.666..., 0.5*480/45 = 5.333..., 0.6/7 = 0.0857...).
func TestALimitWorkedOutHasTwoDigits(t *testing.T) {
	for v, want := range map[float64]string{1.8: "1.8 ppm", 0.5: "0.5 ppm", 95: "95 ppm", 1000: "1000 ppm",
		0.125: "0.125 ppm", 2.0 / 3: "0.66 ppm", 0.5 * 480 / 45: "5.3 ppm", 0.6 / 7: "0.085 ppm"} {
		l := limit.Limit{Quantity: "air.breathing_zone", Value: v, Unit: "ppm"}
		if got := (Units{}).Limit(&l, "hf"); got != want {
			t.Errorf("%.9g ppm is written %q, want %q", v, got, want)
		}
	}
}
