package nearly_test

import (
	"math"
	"testing"

	"etchbound/schemas/nearly"
)

var nan, inf = math.NaN(), math.Inf(1)

func TestTo(t *testing.T) {
	for _, c := range []struct {
		got, want, tolerance float64
		near                 bool
	}{
		{1, 1, 0, true}, {1.5, 1, 0.5, true}, {0.5, 1, 0.5, true}, {1.5, 1, 0.25, false}, {-1, 1, 1, false},
		{inf, inf, 1, true}, {inf, -inf, inf, false}, {inf, 1, inf, false}, {1, inf, 1, false},
		{nan, 1, 1, false}, {1, nan, 1, false}, {nan, nan, 1, false}, {1, 1, nan, false}, {1, 2, nan, false},
		{nan, 1, inf, false},
	} {
		if got := nearly.To(c.got, c.want, c.tolerance); got != c.near {
			t.Errorf("%g to %g within %g: %v", c.got, c.want, c.tolerance, got)
		}
	}
}

func TestShare(t *testing.T) {
	for _, c := range []struct {
		got, want, share float64
		near, alike      bool
	}{
		{101, 100, 0.02, true, true}, {103, 100, 0.02, false, false}, {-101, -100, 0.02, true, true},
		{100, -100, 0.5, false, false},
		{0, 0, 0.1, true, true}, {1e-300, 0, 0.1, false, false},
		{nan, 1, 1, false, false}, {1, nan, 1, false, false}, {nan, nan, 1, false, true}, {1, 1, nan, false, false},
	} {
		if got := nearly.Share(c.got, c.want, c.share); got != c.near {
			t.Errorf("%g by a share of %g to %g: %v", c.got, c.share, c.want, got)
		}
		if got := nearly.Alike(c.got, c.want, c.share); got != c.alike {
			t.Errorf("%g alike %g by %g: %v", c.got, c.want, c.share, got)
		}
	}
}

func TestBetween(t *testing.T) {
	for _, c := range []struct {
		got, low, high float64
		in             bool
	}{{1, 1, 2, true}, {2, 1, 2, true}, {2.1, 1, 2, false}, {0, 1, 2, false}, {nan, 1, 2, false}, {1, nan, 2, false},
		{1, 1, nan, false}} {
		if got := nearly.Between(c.got, c.low, c.high); got != c.in {
			t.Errorf("%g from %g to %g: %v", c.got, c.low, c.high, got)
		}
	}
}

func TestOff(t *testing.T) {
	for _, c := range [][3]float64{{1, 3, 2}, {3, 1, 2}, {inf, inf, 0}, {inf, -inf, inf}, {nan, 1, inf}, {1, nan, inf},
		{nan, nan, inf}} {
		if got := nearly.Off(c[0], c[1]); got != c[2] {
			t.Errorf("%g from %g: %g", c[0], c[1], got)
		}
	}
}
