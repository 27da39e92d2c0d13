package chart

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

func labels(s scale) string {
	var out []string
	for _, t := range s.ticks {
		out = append(out, t.label)
	}
	return strings.Join(out, " ")
}

// Ticks by hand: the least of 1, 2, 5 times a power of ten that fills the range
// with n steps, and the multiples of it.
func TestTicks(t *testing.T) {
	for _, c := range []struct {
		s    scale
		want string
	}{
		{linear(0, 60, 6, true), "0 10 20 30 40 50 60"},
		{linear(22, 69, 6, true), "20 30 40 50 60 70"},
		{linear(22, 69, 6, false), "30 40 50 60"},
		{linear(-0.3, 0.7, 6, true), "-0.4 -0.2 0 0.2 0.4 0.6 0.8"},
		{linear(0, 0.3, 3, true), "0 0.1 0.2 0.3"},
		{linear(0, 1.2e-5, 6, true), "0 0.000002 0.000004 0.000006 0.000008 0.000010 0.000012"},
		{linear(0, 0.0012, 6, true), "0 0.0002 0.0004 0.0006 0.0008 0.0010 0.0012"},
		{linear(0, 3e6, 6, true), "0 500000 1000000 1500000 2000000 2500000 3000000"},
		{linear(0, 3e7, 6, true), "0 5·10⁶ 10⁷ 1.5·10⁷ 2·10⁷ 2.5·10⁷ 3·10⁷"},
		{linear(101325, 101325.04, 4, true), "101325.00 101325.01 101325.02 101325.03 101325.04"},
		{logarithmic(3e-7, 1, 6, true), "10⁻⁸ 10⁻⁶ 0.0001 0.01 1"},
		{logarithmic(1, 1000, 8, false), "1 2 5 10 20 50 100 200 500 1000"},
		{logarithmic(3, 4000, 6, true), "1 10 100 1000 10000"},
		{logarithmic(101, 123, 6, true), "100 105 110 115 120 125"},
	} {
		if got := labels(c.s); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}

// Whatever the range, a scale rises, holds it and has some ticks.
func TestScalesHoldTheirRange(t *testing.T) {
	long.Only(t)
	r := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		lo := (r.Float64() - 0.5) * math.Pow(10, 600*r.Float64()-300)
		hi := lo + r.Float64()*math.Pow(10, 590*r.Float64()-290)
		log := lo > least && r.IntN(2) == 0
		lo, hi = span([][]float64{{lo, min(hi, most)}}, log)
		s := linear(lo, hi, 6, true)
		if log {
			s = logarithmic(lo, hi, 6, true)
		}
		low, high := s.part(lo), s.part(hi)
		if !(low >= 0 && high <= 1 && low < high) || len(s.ticks) < 2 || len(s.ticks) > 12 {
			t.Fatalf("%v to %v, log %v: parts %v %v, ticks %s", lo, hi, log, low, high, labels(s))
		}
		if v := s.value(s.part(hi)); !nearly.To(v, hi, 1e-9*max(math.Abs(lo), math.Abs(hi))) {
			t.Fatalf("%v comes back as %v", hi, v)
		}
		if !slices.IsSortedFunc(s.ticks, func(a, b tick) int { return int(math.Copysign(1, a.v-b.v)) }) {
			t.Fatal(labels(s))
		}
	}
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{rounded(63.1038, 50), "63.1"}, {rounded(63.1538, 50), "63.15"}, {rounded(0, 1), "0"},
		{rounded(-0.00012345, 1), "-0.0001234"}, {rounded(1.26e-17, 4.069), "0"},
		{rounded(12345.6, 20000), "12346"}, {rounded(1.23456e8, 1e8), "1.235·10⁸"},
		{rounded(101325.0186, 0.04), "101325.0186"}, {rounded(25+1e-13, 1e-13), "25"},
		{rounded(3.0591e-7, 1), "3.059·10⁻⁷"}, {exact(101325), "101325"}, {exact(0.1 + 0.2), "0.3"}, {exact(-40), "-40"},
		{power(1e7), "10⁷"}, {power(5), "5"}, {power(0), "0"},
		{coordinate(-0.001), "0"}, {coordinate(12.3456), "12.35"}, {coordinate(100), "100"},
	} {
		if c.got != c.want {
			t.Errorf("got %s, want %s", c.got, c.want)
		}
	}
}

func TestText(t *testing.T) {
	c := Chart{ID: "a", Alt: "What is seen", X: minutes, Y: celsius,
		Curves: []Curve{
			{"Vessel", []float64{0, 10, 20, 40}, []float64{20, 80, 60, 30}},
			{"Jacket", []float64{0, 10, 40}, []float64{15, 5, 12}},
			{"", []float64{0, 40}, []float64{50, 50}},
			{"Probe", []float64{7}, []float64{33.3}},
		},
		Lines: []Line{{70, "rated  limit"}, {90, ""}, {5, "frost"}}, Marks: []Mark{{12, "pump stops"}, {30, ""}}}
	want := "What is seen. Temperature (°C) over Time (min)." +
		" Vessel: first 20 °C at 0 min, greatest 80 °C at 10 min, last 30 °C at 40 min." +
		" Jacket: first 15 °C at 0 min, greatest 15 °C at 0 min, least 5 °C at 10 min, last 12 °C at 40 min." +
		" curve 3: constant, 50 °C at 0 min and still at 40 min." +
		" Probe: one point, 33.3 °C at 7 min." +
		// 20 to 80 in 10 min passes 70 after 50/60 of them.
		" Line at 70 °C, rated limit: Vessel first meets it at 8.333 min; Jacket stays below it; curve 3 stays below " +
		"it; Probe stays below it." +
		" Line at 90 °C: Vessel stays below it; Jacket stays below it; curve 3 stays below it; Probe stays below it." +
		" Line at 5 °C, frost: Vessel stays above it; Jacket first meets it at 10 min; curve 3 stays above it; Probe " +
		"stays above it." +
		" Mark at 12 min, pump stops. Mark at 30 min."
	if got := c.Text(); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// On logarithmic axes a straight piece is a power law: y = x^-2 from 1 to 100
// passes 1e-2 at 10.
func TestMeetsOnLogarithmicAxes(t *testing.T) {
	c := Chart{X: Axis{Log: true}, Y: Axis{Log: true}}
	x, ok := c.meets(Curve{X: []float64{1, 100}, Y: []float64{1, 1e-4}}, 1e-2)
	if !ok || !nearly.To(x, 10, 1e-9) {
		t.Error(x, ok)
	}
}

// Labels keep their order, do not overlap, stay inside and move only where they
// must.
func TestSpread(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 5000 {
		ends := make([]end, 1+r.IntN(9))
		for i := range ends {
			ends[i] = end{lines: make([]string, 1+r.IntN(3)), want: 100 * r.Float64()}
		}
		sortEnds(ends)
		high := max(100, stacked(ends))
		spread(ends, 0, high)
		free, moved, apart := 0.0, 0.0, true
		for i, e := range ends {
			if !(e.at-e.height()/2 >= free-1e-9) {
				t.Fatalf("%d: %v", i, ends)
			}
			if i > 0 && e.want-e.height()/2 < ends[i-1].want+ends[i-1].height()/2 || e.want < e.height()/2 ||
				e.want > high-e.height()/2 {
				apart = false
			}
			free, moved = e.at+e.height()/2, max(moved, math.Abs(e.at-e.want))
		}
		if !(free <= high+1e-9) || apart && !(moved <= 1e-9) {
			t.Fatalf("to %v of %v, moved %v, apart %v", free, high, moved, apart)
		}
	}
}

func TestWrapAndClip(t *testing.T) {
	text := "some words that do not fit in one line of the place they have"
	for _, room := range []float64{30, 60, 100, 200, 1000} {
		for n := 1; n <= 4; n++ {
			lines := wrap(text, letters, room, n)
			if len(lines) > n || widest(lines, letters) > room+1e-9 {
				t.Errorf("room %v: %q", room, lines)
			}
			whole := strings.Join(lines, " ")
			if whole != text && !strings.HasSuffix(whole, "…") && room > 100 {
				t.Errorf("room %v: %q lost words in silence", room, lines)
			}
		}
	}
	if got := wrap("", letters, 100, 3); got != nil {
		t.Errorf("%q", got)
	}
}

func TestClean(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"a\n b\t c", "a b c"}, {" \u00a0x\u2028y ", "x y"}, {"a\u202eb", "ab"}, {"\x00\x1b[1m", "[1m"}, {"\xff", "\ufffd"},
		{"\uffff", ""}, {"µm²", "µm²"},
	} {
		if got := clean(c.in); got != c.want {
			t.Errorf("%q gives %q", c.in, got)
		}
	}
}
