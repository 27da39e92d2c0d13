package route

import (
	"fmt"
	"strings"

	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

// standing is what earlier steps have brought to a place.
type standing struct {
	liquid bool
	other  bool // anything but the powder of the route
}

func (a standing) with(b standing) standing {
	return standing{a.liquid || b.liquid, a.other || b.other}
}

// brings is what a step puts in.
func (s *Step) brings() (b standing, powder bool) {
	for _, m := range s.What {
		if m.Precursor {
			powder = true
			continue
		}
		b.other = true
		if m.Substance != nil && (m.Substance.State != "s" || m.Strength.Set) {
			b.liquid = true
		}
	}
	return b, powder
}

// follower goes through the steps and keeps what is where, no more closely than
// the checks of a file need.
type follower struct {
	places map[string]standing
	powder string // the place it is in, empty before it is put in
}

// before takes in what the step brings.
func (f *follower) before(s *Step) {
	b, powder := s.brings()
	f.places[s.In] = f.places[s.In].with(b)
	if powder {
		f.powder = s.In
	}
}

// after moves what the step sends on.
func (f *follower) after(s *Step) {
	switch here := f.places[s.In]; {
	case s.Verb().Liquid == Out:
		here.liquid = false
		f.places[s.In] = here
	case s.Into != "":
		f.places[s.Into] = f.places[s.Into].with(here)
		if s.Verb().Solids == Into && !s.Part.Set {
			f.places[s.In] = standing{}
			if f.powder == s.In {
				f.powder = s.Into
			}
		}
	}
}

// stretch is a row of steps during which the powder stands in one liquor.
type stretch []*Step

// etch is the first stretch with a time, from the step in which the powder
// meets the liquor; what a pre-wash ends is not the etch.
func (r *Route) etch() stretch {
	f := follower{places: map[string]standing{}}
	var now stretch
	for i := range r.Steps {
		s := &r.Steps[i]
		f.before(s)
		switch {
		case s.In != f.powder:
		case s.Verb().EndsEtch:
			if s.Verb().Does != Prewashes && now.lasts() > 0 {
				return now
			}
			now = nil
		case f.places[s.In].other:
			now = append(now, s)
		}
		f.after(s)
	}
	return now
}

// lasts is the time of a step in s: that of its addition and its own.
func (s *Step) lasts() float64 {
	t := 0.0
	for _, v := range []quantity.Value{s.Over, s.Time} {
		if v.Set {
			t += v.SI
		}
	}
	return t
}

func (x stretch) lasts() float64 {
	t := 0.0
	for _, s := range x {
		t += s.lasts()
	}
	return t
}

// addition is the step of a stretch over whose time powder and etchant come
// together, nil where they do at once.
func (x stretch) addition() *Step {
	if len(x) > 0 && x[0].Over.Set {
		return x[0]
	}
	for _, s := range x {
		if s.Do == "add" {
			return s
		}
	}
	return nil
}

// heldAfter gives the first step that holds the liquor after the addition, and
// the time from then on in s.
func (x stretch) heldAfter(add *Step) (first *Step, total float64) {
	for _, s := range x {
		if s.Number <= add.Number {
			continue
		}
		if first == nil && s.Time.Set && s.Verb().Held {
			first = s
		}
		total += s.lasts()
	}
	return first, total
}

// holdAfterAddition refuses an etch that ends sooner after the addition than
// the addition takes: one of the two times is a slip. A first hold as short that
// others follow is noticed; heating up may be as short as it likes.
func (l *loader) holdAfterAddition(root *schemas.Node, etch stretch) {
	add := etch.addition()
	if add == nil {
		return
	}
	first, total := etch.heldAfter(add)
	if first == nil || first.Time.SI >= add.Over.SI*(1-1e-9) {
		return
	}
	n := root.List("steps")[first.Number-1].Get("time")
	what := fmt.Sprintf("the %s of step %d lasts %s, less than the addition of step %d, which takes %s",
		strings.Replace(first.Do, "heat", "heating", 1), first.Number, first.Time.Text, add.Number, add.Over.Text)
	more := total > first.Time.SI*(1+1e-9)
	if more {
		what += "; in all, " + span(total) + " pass in the liquor after the addition"
	}
	switch {
	case total < add.Over.SI*(1-1e-9):
		l.refuse(n, what, add.Over.Text+" or more: the hold counts the time after the last powder is in",
			"check the units of both times")
	case first.Do == "hold":
		l.doubt(n, what, "the hold counts the time after the last powder is in")
	}
}

// span writes a time in s in a unit that suits its size.
func span(seconds float64) string {
	x, unit := seconds, "s"
	switch {
	case seconds < 1:
		return "less than 1 s"
	case seconds >= 4*86400:
		x, unit = seconds/86400, "d"
	case seconds >= 2*3600:
		x, unit = seconds/3600, "h"
	case seconds >= 120:
		x, unit = seconds/60, "min"
	}
	return figures(x, 3) + " " + unit
}
