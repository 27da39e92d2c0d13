package number

import (
	"math"
	"slices"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/reports/digits"
)

// Numbers beside each other are read in one unit from leastBeside to mostBeside.
const leastBeside, mostBeside = 0.01, 1e4

// Common is u for figures of one quantity that stand beside each other. Where each by itself
// would be in another unit it is the largest of these in which all can be read, else the
// smallest in which the greatest can. Masses and times are each in their own: grams below a
// kilogram, hours above two.
func (u Units) Common(of []*figure.Figure) Units {
	u.In = ""
	var units []string
	var said []float64
	for _, f := range of {
		t := u.Of(f.Quantity, f.Agent)
		for _, v := range t.saysOf(EndsOf(f)) {
			said = append(said, math.Abs(v))
			if own := t.form(Single(v)).unit.name; !slices.Contains(units, own) {
				units = append(units, own)
			}
		}
	}
	if len(units) > 1 {
		u.In = common(u.Of(of[0].Quantity, of[0].Agent).Unit, units, slices.Min(said), slices.Max(said))
	}
	return u
}

// saysOf are the numbers that are written of a value with its range: not what is 0, unknown or
// not reached, nor the value of a range that spans decades.
func (t Thing) saysOf(e Ends) []float64 {
	all := []float64{e.Value, e.Low, e.High}
	if e.span() {
		all = all[1:]
	}
	return slices.DeleteFunc(all, func(v float64) bool { return !digits.Is(v) || v == 0 || t.never(v) })
}

// common is that of some units in which numbers from low to high, in a unit of their ladder, are
// written.
func common(name string, units []string, low, high float64) string {
	base, of, as := strings.Cut(name, " as ")
	if as {
		of = " as " + of
	}
	smallest := ""
	for _, l := range ladders {
		was, there := onLadder(l, base)
		if !there || l[0].name == share || isTime(base) || isMass(base) {
			continue
		}
		for _, r := range l {
			per := was.of / r.of
			switch own := r.name + of; {
			case !slices.Contains(units, own):
			case low*per >= leastBeside && high*per < mostBeside:
				return own
			case smallest == "" || high*per < mostBeside:
				smallest = own
			}
		}
	}
	return smallest
}

func onLadder(l []rung, name string) (rung, bool) {
	for _, r := range l {
		if r.name == name {
			return r, true
		}
	}
	return rung{}, false
}

// in is a unit read in another one of its ladder; ok is false where it has none.
func in(name, other string) (u unit, ok bool) {
	base, _, _ := strings.Cut(name, " as ")
	to, _, _ := strings.Cut(other, " as ")
	for _, l := range ladders {
		was, a := onLadder(l, base)
		r, b := onLadder(l, to)
		if a && b {
			return unit{other, was.of / r.of}, true
		}
	}
	return unit{}, false
}
