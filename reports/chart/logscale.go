package chart

import "math"

// logarithmic is a scale with ticks at 1, 2 and 5 in each decade, or where there
// are many decades at every one of them, every second, every fifth and so on.
func logarithmic(lo, hi float64, n int, widen bool) scale {
	ticks := decades(lo, hi, n)
	if within(ticks, lo, hi) < 3 && hi/lo < 10 {
		return finelyLogarithmic(lo, hi, n, widen)
	}
	if widen {
		lo, hi = enclosing(ticks, lo, hi)
	}
	s := scale{lo: lo, hi: hi, log: true}
	for _, t := range ticks {
		if contains(lo, hi, t.v) {
			s.ticks = append(s.ticks, t)
		}
	}
	return s
}

// decades lists the ticks of a logarithmic scale from below lo to above hi.
func decades(lo, hi float64, n int) []tick {
	from, to := int(math.Floor(math.Log10(lo))), int(math.Ceil(math.Log10(hi)))
	mantissas, stride := []int64{1}, 1
	if to-from <= 3 {
		mantissas = []int64{1, 2, 5}
	}
	for _, wider := range []int{2, 5, 10, 20, 50, 100, 200} {
		if (to-from)/stride > n {
			stride = wider
		}
	}
	first := int(math.Floor(float64(from)/float64(stride))) * stride
	var out []tick
	for exp := first; exp < to+stride; exp += stride {
		for _, m := range mantissas {
			v := decimal(m, exp)
			t := []tick{{v: v, label: power(v)}}
			if exp >= -4 && exp <= 5 {
				name(t, exp)
			}
			out = append(out, t...)
		}
	}
	return out
}

// finelyLogarithmic has evenly counted ticks, for a range too narrow for others.
func finelyLogarithmic(lo, hi float64, n int, widen bool) scale {
	s := linear(lo, hi, n, widen)
	if s.lo <= 0 {
		s = linear(lo, hi, n, false)
	}
	s.log = true
	return s
}

// contains reports whether v lies in the range, short of the last digits.
func contains(lo, hi, v float64) bool { return v >= lo*(1-1e-9) && v <= hi*(1+1e-9) }

func within(ticks []tick, lo, hi float64) int {
	n := 0
	for _, t := range ticks {
		if contains(lo, hi, t.v) {
			n++
		}
	}
	return n
}

// enclosing are the closest ticks that hold the range between them.
func enclosing(ticks []tick, lo, hi float64) (float64, float64) {
	below, above := lo, hi
	for _, t := range ticks {
		if t.v <= lo*(1+1e-9) {
			below = min(lo, t.v)
		}
	}
	for i := len(ticks) - 1; i >= 0; i-- {
		if ticks[i].v >= hi*(1-1e-9) {
			above = max(hi, ticks[i].v)
		}
	}
	return below, above
}
