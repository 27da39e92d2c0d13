package aqueous

import (
	"math"
	"testing"

	"etchbound/schemas/nearly"
)

// The powers of e are those of the standard library, over all that a search asks for.
func TestPowersOfE(t *testing.T) {
	for i := -70000; i <= 70000; i += 7 {
		x := float64(i)*0.01 + 0.0033
		if got, want := exp(x), math.Exp(x); !nearly.Share(got, want, 2e-15) {
			t.Fatalf("exp(%g) is %g, want %g", x, got, want)
		}
	}
	for _, x := range []float64{0, 1e-300, -800, 800, math.Inf(-1)} {
		if got, want := exp(x), math.Exp(x); got != want {
			t.Errorf("exp(%g) is %g, want %g", x, got, want)
		}
	}
}
