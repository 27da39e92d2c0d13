package ends_test

import (
	"math"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/scaling/ends"
)

// By hand; what nobody knows stays so through every step, at its own end alone.
func TestBothEnds(t *testing.T) {
	nan := math.NaN()
	x, half := ends.Two{Best: 2, Most: 6}, ends.Two{Best: 1, Most: nan}
	for _, row := range []struct {
		what      string
		got, want ends.Two
	}{
		{"by", x.By(3), ends.Two{Best: 6, Most: 18}},
		{"plus", x.Plus(ends.Same(1)), ends.Two{Best: 3, Most: 7}},
		{"over", x.Over(ends.Two{Best: 4, Most: 3}), ends.Two{Best: 0.5, Most: 2}},
		{"worse", x.Worse(ends.Same(3)), ends.Two{Best: 3, Most: 6}},
		{"least", x.Least(ends.Same(3)), ends.Two{Best: 2, Most: 3}},
		{"each", x.Each(math.Sqrt), ends.Two{Best: math.Sqrt2, Most: math.Sqrt(6)}},
		{"plus, one not known", x.Plus(half), ends.Two{Best: 3, Most: nan}},
		{"worse, one not known", x.Worse(half), ends.Two{Best: 2, Most: nan}},
		{"least, one not known", half.Least(x), ends.Two{Best: 1, Most: nan}},
		{"nobody knows", ends.Unknown().By(0), ends.Two{Best: nan, Most: nan}},
	} {
		same := func(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }
		if !same(row.got.Best, row.want.Best) || !same(row.got.Most, row.want.Most) {
			t.Errorf("%s: %v, by hand %v", row.what, row.got, row.want)
		}
	}
	if !x.Known() || half.Known() || ends.Unknown().Known() {
		t.Error("what is known of both ends")
	}
}

// A figure that is not known has no end that is.
func TestOfAFigure(t *testing.T) {
	f := figure.Figure{Value: working.Absent("m", "g", working.Lacks("data", "m"))}
	if x := ends.Of(&f); x.Known() || !math.IsNaN(x.Best) || !math.IsNaN(x.Most) {
		t.Errorf("%v", x)
	}
}
