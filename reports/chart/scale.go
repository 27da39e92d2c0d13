package chart

import (
	"math"
	"strconv"
	"unicode/utf8"
)

// scale maps values to a part of the axis, 0 at its beginning and 1 at its end.
type scale struct {
	lo, hi float64
	log    bool
	brk    float64 // where it is broken, between its ends; 0: nowhere
	ticks  []tick
}

type tick struct {
	v     float64
	label string
}

// measure is v as the axis counts it.
func (s scale) measure(v float64) float64 {
	if s.log {
		return math.Log10(v)
	}
	return v
}

// part is where v lies between the ends. The conversion keeps machines that
// fuse products and sums from giving other bytes.
func (s scale) part(v float64) float64 {
	if s.brk != 0 {
		if v <= s.brk {
			return early * float64(v-s.lo) / float64(s.brk-s.lo)
		}
		return early + (1-early)*float64(v-s.brk)/float64(s.hi-s.brk)
	}
	lo, hi := s.measure(s.lo), s.measure(s.hi)
	return float64(s.measure(v)-lo) / float64(hi-lo)
}

// value is what lies at a part of the axis: part turned round.
func (s scale) value(part float64) float64 {
	if s.brk != 0 {
		if part <= early {
			return s.lo + part/early*(s.brk-s.lo)
		}
		return s.brk + (part-early)/(1-early)*(s.hi-s.brk)
	}
	lo, hi := s.measure(s.lo), s.measure(s.hi)
	v := lo + float64(part*(hi-lo))
	if s.log {
		return math.Pow(10, v)
	}
	return v
}

// span is the range of values to be shown, widened where it has no width. What
// is narrower than noise is a constant.
func span(values [][]float64, log bool) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, list := range values {
		for _, v := range list {
			lo, hi = min(lo, v), max(hi, v)
		}
	}
	size := max(math.Abs(lo), math.Abs(hi))
	switch {
	case hi-lo > noise*size && hi-lo > least:
		return lo, hi
	case log:
		return lo / 3, hi * 3
	case size < least:
		return 0, 1
	}
	return lo - size/2, hi + size/2
}

// withZero takes zero in where the values begin not far from it, so that heights
// can be compared.
func withZero(lo, hi float64) (float64, float64) {
	switch {
	case lo > 0 && lo <= hi/4:
		return 0, hi
	case hi < 0 && hi >= lo/4:
		return lo, 0
	}
	return lo, hi
}

// linear is a scale with at most about n steps of 1, 2 or 5 times a power of
// ten. With widen the ends move out to the next tick.
func linear(lo, hi float64, n int, widen bool) scale {
	m, exp := step(lo, hi, n)
	first, last := inside(lo, hi, decimal(m, exp))
	if widen {
		first, last = around(lo, hi, decimal(m, exp))
		lo, hi = min(lo, decimal(first*m, exp)), max(hi, decimal(last*m, exp))
	}
	s := scale{lo: lo, hi: hi}
	for k := first; k <= last; k++ {
		s.ticks = append(s.ticks, tick{v: decimal(k*m, exp)})
	}
	name(s.ticks, exp)
	return s
}

// step is the least of 1, 2, 5 times 10^exp of which n fill the range.
func step(lo, hi float64, n int) (m int64, exp int) {
	raw := (hi - lo) / float64(n)
	exp = int(math.Floor(math.Log10(raw)))
	for _, m := range []int64{1, 2, 5} {
		if decimal(m, exp) >= raw*(1-1e-9) {
			return m, exp
		}
	}
	return 1, exp + 1
}

// slack is the part of a step by which a value may miss a tick for want of
// digits and still stand on it.
const slack = 1e-6

func inside(lo, hi, step float64) (first, last int64) {
	return int64(math.Ceil(lo/step - slack)), int64(math.Floor(hi/step + slack))
}

func around(lo, hi, step float64) (first, last int64) {
	return int64(math.Floor(lo/step + slack)), int64(math.Ceil(hi/step - slack))
}

// name labels ticks that are multiples of 10^exp, all in one manner: plainly, or
// with exponents where plain labels would be long and these are shorter.
func name(ticks []tick, exp int) {
	plain, short := 0, 0
	for i, t := range ticks {
		ticks[i].label = strconv.FormatFloat(t.v, 'f', max(-exp, 0), 64)
		if t.v == 0 {
			ticks[i].label = "0"
		}
		plain, short = max(plain, len(ticks[i].label)), max(short, utf8.RuneCountInString(power(t.v)))
	}
	if plain <= 7 || plain <= short {
		return
	}
	for i, t := range ticks {
		ticks[i].label = power(t.v)
	}
}
