package roots_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"etchbound/hazards/roots"
	"etchbound/schemas/nearly"
)

// Values: NIST Digital Library of Mathematical Functions and the On-Line
// Encyclopedia of Integer Sequences, from memory, each also fixed by the
// defining equation to the last bit of a double; tolerance 4 ulp.
var known = []struct {
	name      string
	f         func(float64) float64
	low, high float64
	want      float64
}{
	{"square root of 2", func(x float64) float64 { return x*x - 2 }, 0, 2, 1.41421356237309504880},
	{"cube root of 2, bracket reversed", func(x float64) float64 { return x*x*x - 2 }, 3, 0, 1.25992104989487316477},
	{"golden ratio", func(x float64) float64 { return x*x - x - 1 }, 1, 1000, 1.61803398874989484820},
	{"fixed point of cosine", func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 0.73908513321516064165},
	{"omega constant, x exp(x) = 1", func(x float64) float64 { return x*math.Exp(x) - 1 }, 0, 100, 0.56714329040978387300},
	{"pi", math.Sin, 3, 4, math.Pi},
	{"e", func(x float64) float64 { return math.Log(x) - 1 }, 1e-3, 1e6, math.E},
	{"first zero of the Bessel function J0", math.J0, 2, 3, 2.40482555769577276862},
	{"root at the low end", func(x float64) float64 { return x }, 0, 5, 0},
	{"root at the high end", func(x float64) float64 { return x - 5 }, 0, 5, 5},
	{"triple root, flat", func(x float64) float64 { return (x - 1) * (x - 1) * (x - 1) }, -4, 7, 1},
	{"jump", func(x float64) float64 { return math.Copysign(1, x-0.25) }, 0, 1, 0.25},
	{"tiny root", func(x float64) float64 { return x - 1e-200 }, 0, 1, 1e-200},
}

func TestFindKnownRoots(t *testing.T) {
	for _, c := range known {
		got, err := roots.Find(c.f, c.low, c.high, 0)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		tolerance := 4 * 0x1p-52 * math.Abs(c.want)
		if !nearly.To(got.X, c.want, tolerance) {
			t.Errorf("%s: %.17g, want %.17g", c.name, got.X, c.want)
		}
	}
}

// Superlinear convergence: a smooth function costs a dozen calls, not the
// fifty of bisection.
func TestFindIsFasterThanBisection(t *testing.T) {
	for _, c := range known[3:8] {
		got, err := roots.Find(c.f, c.low, c.high, 0)
		if err != nil || got.Calls > 35 {
			t.Errorf("%s: %d calls, %v", c.name, got.Calls, err)
		}
	}
}

func TestFindKeepsTheBracketWithinTolerance(t *testing.T) {
	for _, tolerance := range []float64{1e-2, 1e-5, 1e-8, 1e-11} {
		got, err := roots.Find(math.Cos, 0, 3, tolerance)
		if err != nil {
			t.Fatal(err)
		}
		if width := math.Abs(got.X - got.Other); got.Value != 0 && !(width <= tolerance+8e-16) {
			t.Errorf("tolerance %g: bracket %g", tolerance, width)
		}
		if !nearly.To(got.X, math.Pi/2, tolerance) {
			t.Errorf("tolerance %g: %g", tolerance, got.X)
		}
	}
}

func TestFindErrors(t *testing.T) {
	nan := func(float64) float64 { return math.NaN() }
	hole := func(x float64) float64 { return 1 / (x - 0.5) }
	line := func(x float64) float64 { return x - 0.3 }
	var bracket *roots.BracketError
	if _, err := roots.Find(line, 1, 2, 0); !errors.As(err, &bracket) || bracket.AtLow != 0.7 {
		t.Errorf("same sign: %v", err)
	}
	var value *roots.ValueError
	for name, c := range map[string]struct {
		f         func(float64) float64
		low, high float64
	}{
		"NaN":          {nan, 0, 1},
		"pole met":     {hole, 0, 0.5},
		"NaN end":      {line, math.NaN(), 1},
		"infinite end": {line, 0, math.Inf(1)},
		"width":        {line, -math.MaxFloat64, math.MaxFloat64},
	} {
		if _, err := roots.Find(c.f, c.low, c.high, 0); !errors.As(err, &value) {
			t.Errorf("%s: %v", name, err)
		}
	}
	var tolerance *roots.ToleranceError
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1)} {
		if _, err := roots.Find(line, 0, 1, bad); !errors.As(err, &tolerance) {
			t.Errorf("tolerance %g: %v", bad, err)
		}
	}
}

func ExampleFind() {
	// At which temperature, in K, is 1/T - 1/298.15 equal to -1e-4 per K?
	r, err := roots.Find(func(T float64) float64 { return 1/T - 1/298.15 + 1e-4 }, 280, 400, 1e-9)
	fmt.Printf("%.4f %v\n", r.X, err)
	// Output: 307.3125 <nil>
}

func FuzzFind(f *testing.F) {
	f.Add(-1.0, 2.0, 0.5, 1.0)
	f.Add(0.0, 1e300, 3.0, 1e-9)
	f.Add(-1e-300, 1e-300, 1e-301, 1e200)
	f.Fuzz(func(t *testing.T, low, high, at, steep float64) {
		got, err := roots.Find(func(x float64) float64 { return math.Tanh(steep * (x - at)) }, low, high, 0)
		if err != nil {
			return
		}
		if math.IsNaN(got.X) || got.X < math.Min(low, high) || got.X > math.Max(low, high) {
			t.Errorf("%g outside %g..%g", got.X, low, high)
		}
	})
}

func BenchmarkFind(b *testing.B) {
	for b.Loop() {
		if _, err := roots.Find(math.Cos, 0, 3, 0); err != nil {
			b.Fatal(err)
		}
	}
}
