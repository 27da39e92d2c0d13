package ranges

import (
	"math"
	"slices"

	"etchbound/hazards/course"
	"etchbound/hazards/figure"
)

// rival is a second centre, at which what nobody states of a wall stands where least
// heat passes, and a stirrer of which nobody states it heats most. Close to a runaway, or
// where the room would warm the liquor else, other data move a figure the other way there,
// so that the corner found from the one centre misses what a stated wall would find from
// its own. Each figure that they move gets the corner of both.
type rival struct {
	r      *ranger
	at     []byte  // the end of each variable at the rival centre
	moved  []bool  // of each figure: what is unstated moves it, or what drives it
	base   found   // at the rival centre
	swings []found // [variable*2 + (low, high)]; not done where the centre counts
}

// rivals swings the variables once more from the rival centre. It is nil where no
// variable stands for what nobody states, or none moves a figure that is asked for.
func (r *ranger) rivals() *rival {
	x := &rival{r: r, at: slices.Repeat([]byte{centre}, len(r.vars)), moved: make([]bool, len(r.base))}
	want := wanted{}
	unstated := course.Unstated(r.c.Store)
	for v := range r.vars {
		high, known := unstated[r.vars[v].id]
		if !known {
			continue
		}
		if x.at[v] = 0; high {
			x.at[v] = 4
		}
		for i := range r.base {
			if x.moved[i] = x.moved[i] || r.asked(i) && r.stirs(v, r.driver(i)); x.moved[i] {
				want = want.and(r.wants(i))
			}
		}
	}
	if want.parts == 0 {
		return nil
	}
	keys, place := []key{key(x.at)}, map[int]int{}
	for v := range r.vars {
		if x.at[v] != centre || !x.concerns(v) {
			continue
		}
		for e, end := range [...]byte{0, 4} {
			b := slices.Clone(x.at)
			b[v] = end
			place[v*2+e] = len(keys)
			keys = append(keys, key(b))
		}
	}
	got := r.all(keys, func(int) wanted { return want })
	x.base, x.swings = got[0], make([]found, 2*len(r.vars))
	for k, at := range place {
		x.swings[k] = got[at]
	}
	return x
}

// asked reports whether the range of a figure is asked for and is not that of a search.
func (r *ranger) asked(i int) bool {
	return !r.base[i].Searched && (r.about == nil || r.about(&r.base[i]))
}

// stirs reports whether a swing of a variable that was made moves a figure.
func (r *ranger) stirs(v, i int) bool {
	x := r.base[i].Value.V
	for e := range ends {
		y := &r.swings[v*len(ends)+e]
		if !y.done {
			continue
		}
		if z := r.lots.at(y, i); z != x && !(math.IsNaN(z) && math.IsNaN(x)) {
			return true
		}
	}
	return false
}

// concerns reports whether a variable moves a figure that what is unstated moves.
func (x *rival) concerns(v int) bool {
	for i := range x.moved {
		if x.moved[i] && x.r.stirs(v, x.r.driver(i)) {
			return true
		}
	}
	return false
}

// corner is the run with every variable at the end that moves figure i toward danger
// from the rival centre; false where the figure has none.
func (x *rival) corner(i int) (key, bool) {
	if x == nil || !x.moved[i] {
		return "", false
	}
	r := x.r
	j := r.driver(i)
	d, _ := figure.Lookup(r.base[j].Quantity)
	b, from := slices.Clone(x.at), r.lots.at(&x.base, j)
	for v := range r.vars {
		best := 0.0
		for e, end := range [...]byte{0, 4} {
			y := &x.swings[2*v+e]
			if !y.done {
				continue
			}
			move := r.lots.at(y, j) - from
			if d.Danger == figure.Low {
				move = -move
			}
			if move > best && move > 1e-12*math.Abs(from) {
				best, b[v] = move, end
			}
		}
	}
	return key(b), true
}

// beyond are the ends of a figure with another corner toward danger, which widens the
// one where danger lies.
func (r *ranger) beyond(i int, down, up, corner float64) (float64, float64) {
	if q, _ := figure.Lookup(r.base[i].Quantity); q.Danger == figure.Low {
		return min(down, corner), up
	}
	return down, max(up, corner)
}
