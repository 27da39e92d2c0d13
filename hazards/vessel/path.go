package vessel

import "sort"

// At is the run at t seconds; just before a switch.
func (p *Path) At(t float64) (Point, error) {
	y, err := p.vector(t)
	if err != nil {
		return Point{}, err
	}
	return p.b.point(t, y), nil
}

// State is what is in the vessel at t seconds; just before a switch.
func (p *Path) State(t float64) (State, error) {
	y, err := p.vector(t)
	if err != nil {
		return State{}, err
	}
	return p.b.state(y), nil
}

func (p *Path) vector(t float64) ([]float64, error) {
	y := make([]float64, p.b.n)
	return y, p.into(t, y)
}

func (p *Path) into(t float64, y []float64) error {
	i := min(sort.Search(len(p.parts), func(i int) bool { return p.parts[i].to >= t }), len(p.parts)-1)
	return p.parts[i].result.At(t, y)
}

// Times lists the moments the integration stepped to, rising, for drawing.
func (p *Path) Times() []float64 {
	var out []float64
	for i := range p.parts {
		times := p.parts[i].result.Times()
		if i > 0 {
			times = times[1:]
		}
		out = append(out, times...)
	}
	return out
}

// Points is the run at the moments the integration stepped to; none for the
// closed-form laws.
func (r *Run) Points() []Point {
	if r.Path == nil {
		return nil
	}
	var out []Point
	for _, t := range r.Path.Times() {
		if p, err := r.Path.At(t); err == nil {
			out = append(out, p)
		}
	}
	return out
}

// When is the first time, s, at which a value that is below a level at the
// start of the run reaches it, and false where it does not. The value is looked
// at at the steps of the integration and the time found between them to 1e-9
// of the run.
func (p *Path) When(value func(Point) float64, level float64) (float64, bool) {
	times := p.Times()
	for i, t := range times {
		at, err := p.At(t)
		if err != nil || !(value(at) >= level) {
			continue
		}
		if i == 0 {
			return t, true
		}
		return between(times[i-1], t, func(t float64) bool {
			at, err := p.At(t)
			return err == nil && value(at) >= level
		}), true
	}
	return 0, false
}

// between halves the time in which something becomes so.
func between(from, to float64, is func(float64) bool) float64 {
	for range 40 {
		mid := 0.5 * (from + to)
		if is(mid) {
			to = mid
		} else {
			from = mid
		}
	}
	return to
}

// Given is the first time, s, at which an amount of gas in mol has been given
// off since the run began, and false where it is not. What has been given off
// never falls, so the step is found by halving.
func (p *Path) Given(gas float64) (float64, bool) {
	times := p.Times()
	y := make([]float64, p.b.n)
	is := func(t float64) bool { return p.into(t, y) == nil && p.b.released(y) >= gas }
	i := sort.Search(len(times), func(i int) bool { return is(times[i]) })
	switch {
	case i == len(times):
		return 0, false
	case i == 0:
		return times[0], true
	}
	return between(times[i-1], times[i], is), true
}
