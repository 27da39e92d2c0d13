package pacing

import (
	"math"
	"testing"

	"etchbound/schemas/nearly"
)

// A stated temperature counts alone only where neither of the others is known to be lower, and
// without one nothing counts where one of them is not known.
func TestTheLowestLimitThatIsKnownCounts(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		boils, technical, stated, want float64
		of                             Limit
		open                           bool
	}{
		{105, 90, nan, 90, Technical, false}, {90, 105, nan, 90, Boiling, false}, {105, 90, 40, 40, Stated, false},
		{nan, nan, 70, 70, Stated, true}, {55, nan, 70, 55, Boiling, true}, {nan, 60, 70, 60, Technical, true},
		{nan, 60, nan, nan, Boiling, false}, {55, nan, nan, nan, Boiling, false},
	} {
		v, of, open := lowest(c.boils, c.technical, c.stated)
		if !nearly.Alike(v, c.want, 0) || of != c.of || open != c.open {
			t.Errorf("%g, %g, %g: %g by %s, open %v", c.boils, c.technical, c.stated, v, of, open)
		}
	}
}
