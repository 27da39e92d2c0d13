package roots

import "math"

const eps = 0x1p-52

// search holds the bracket. b is the best point so far and c the end on the
// other side of the zero; a is the point before b, used to interpolate.
type search struct {
	f            func(float64) float64
	tolerance    float64
	a, b, c      float64
	fa, fb, fc   float64
	step, before float64 // the last two moves of b
	calls        int
}

func (s *search) call(x float64) (float64, error) {
	s.calls++
	v := s.f(x)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, &ValueError{x, v}
	}
	return v, nil
}

func (s *search) open(low, high float64) (err error) {
	for _, x := range [...]float64{low, high, high - low} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return &ValueError{x, x}
		}
	}
	s.a, s.b = low, high
	if s.fa, err = s.call(low); err != nil {
		return err
	}
	if s.fb, err = s.call(high); err != nil {
		return err
	}
	if s.fa == 0 {
		s.b, s.fb = s.a, s.fa
	}
	if s.fb != 0 && math.Signbit(s.fa) == math.Signbit(s.fb) {
		return &BracketError{low, high, s.fa, s.fb}
	}
	s.bracket()
	return nil
}

// bracket puts the far end of the last interval back as a.
func (s *search) bracket() {
	s.c, s.fc = s.a, s.fa
	s.step = s.b - s.a
	s.before = s.step
}

// slack is half the width at which the search ends.
func (s *search) slack() float64 {
	return 2*eps*math.Abs(s.b) + 0.5*s.tolerance
}

// done first makes b the better end, so that the answer is always the better.
func (s *search) done() bool {
	if math.Abs(s.fc) < math.Abs(s.fb) {
		s.a, s.b, s.c = s.b, s.c, s.b
		s.fa, s.fb, s.fc = s.fb, s.fc, s.fb
	}
	return s.fb == 0 || math.Abs(s.c-s.b) <= 2*s.slack()
}

func (s *search) advance() error {
	half := 0.5 * (s.c - s.b)
	s.propose(half)
	s.a, s.fa = s.b, s.fb
	if slack := math.Max(s.slack(), math.SmallestNonzeroFloat64); math.Abs(s.step) > slack {
		s.b += s.step
	} else {
		s.b += math.Copysign(slack, half)
	}
	v, err := s.call(s.b)
	if err != nil {
		return err
	}
	s.fb = v
	if math.Signbit(s.fb) == math.Signbit(s.fc) && s.fb != 0 {
		s.bracket()
	}
	return nil
}

// propose sets step: interpolation if it stays inside and shrinks faster than
// halving, else half the bracket.
func (s *search) propose(half float64) {
	slack := s.slack()
	bisect := math.Abs(s.before) < slack || math.Abs(s.fa) <= math.Abs(s.fb)
	if !bisect {
		p, q := s.interpolate(half)
		before := s.before
		s.before = s.step
		bisect = 2*p >= 3*half*q-math.Abs(slack*q) || p >= math.Abs(0.5*before*q)
		s.step = p / q
	}
	if bisect {
		s.step, s.before = half, half
	}
}

// interpolate returns the move of b as p/q with p >= 0.
func (s *search) interpolate(half float64) (p, q float64) {
	r := s.fb / s.fa
	if s.a == s.c {
		p, q = 2*half*r, 1-r
	} else {
		u, v := s.fa/s.fc, s.fb/s.fc
		p = r * (2*half*u*(u-v) - (s.b-s.a)*(v-1))
		q = (u - 1) * (v - 1) * (r - 1)
	}
	if p > 0 {
		return p, -q
	}
	return -p, q
}
