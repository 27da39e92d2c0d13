package scaling

import (
	"math"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/schemas/nearly"
)

// Of the draws 1 to 100, some are not known. They rank as the most dangerous, so
// each point of the others moves toward danger, and is not known where it falls
// among them. heat.etch.total is in danger when high, heat.time_left when low.
func TestUnknownDrawsRankAsWorst(t *testing.T) {
	nan := math.NaN()
	for _, row := range []struct {
		id            string
		unknown       int
		p05, p50, p95 float64
	}{
		{"heat.etch.total", 0, 5, 50, 95},
		{"heat.etch.total@2", 4, 5, 50, 95},
		{"heat.etch.total@2", 6, 5, 50, nan},
		{"heat.etch.total@2", 60, 5, nan, nan},
		{"heat.etch.total@2", 100, nan, nan, nan},
		{"heat.time_left@2", 4, 1, 46, 91},
		{"heat.time_left@2", 6, nan, 44, 89},
		{"heat.time_left@2", 60, nan, nan, 35},
	} {
		v := make([]float64, 100)
		for i := range v {
			v[i] = float64((i*37)%100 + 1)
			if v[i] > float64(100-row.unknown) {
				v[i] = nan
			}
		}
		id, err := figure.Parse(row.id)
		if err != nil {
			t.Fatal(err)
		}
		b := bandOf(id, v)
		for _, x := range [][2]float64{{b.P05, row.p05}, {b.P50, row.p50}, {b.P95, row.p95}} {
			if !nearly.Alike(x[0], x[1], 1e-9) {
				t.Errorf("%s with %d unknown: %+v, want %g %g %g", row.id, row.unknown, b, row.p05, row.p50, row.p95)
				break
			}
		}
		if b.Unknown != row.unknown {
			t.Errorf("%s: %d unknown, want %d", row.id, b.Unknown, row.unknown)
		}
	}
}

// Noise regressed on noise explains nothing: 100 draws of which 33 inputs take up a
// third by chance leave 67 of 99 degrees of freedom.
func TestUnexplainedCountsTheInputs(t *testing.T) {
	for _, row := range []struct {
		left          float64
		draws, inputs int
		want          float64
	}{{66.0 / 99, 100, 33, 1}, {0.5, 101, 50, 1}, {0.1, 1001, 1, 0.1 * 1000 / 999}, {0, 60, 20, 0}} {
		if got := unexplained(row.left, row.draws, row.inputs); !nearly.To(got, row.want, 1e-12) {
			t.Errorf("%+v: %g", row, got)
		}
	}
}
