package meeting

import (
	"maps"
	"slices"
	"strings"

	"etchbound/hazards/route"
)

// Stream is what a route leaves in a container of waste. Containers of several routes that
// are called alike count as one.
type Stream struct {
	Container string
	Route     int      // which of the routes it is of; set by who asks
	holds     Contents // what came into it
	treated   bool     // a step neutralises in it: acid or base that was there may be used up
}

// Streams are what a route leaves in its containers of waste.
func Streams(r *route.Route) []Stream {
	var out []Stream
	all := Of(r)
	for i := range all {
		c := &all[i]
		if !c.Waste || len(c.Tags) == 0 {
			continue
		}
		tags := make(Tags, len(c.Tags)+1)
		for k, n := range c.Tags {
			tags[Tag(strings.Clone(string(k)))] = n
		}
		if tags.Has("strong_base") || tags.Has("ammonia") || tags.Has("carbonate") {
			tags.Add(1, base)
		}
		elements := make(map[string]int, len(c.elements))
		for e, n := range c.elements {
			elements[strings.Clone(e)] = n
		}
		out = append(out, Stream{Container: strings.Clone(c.Place.Key), // and nothing of the file with it
			holds: Contents{Tags: tags, washed: maps.Clone(c.washed), elements: elements, done: maps.Clone(c.done)},
			treated: slices.ContainsFunc(r.Steps, func(s route.Step) bool {
				return s.In == c.Place.Key && s.Verb().Does == route.Neutralises
			})})
	}
	return out
}

// Mixed is a pair that meets where streams of several routes come into one container: one side
// by some of them, the other by others.
type Mixed struct {
	Container, ID, Names, Result, Severity string
	Source, Status                         string
	One, Other                             []int // routes that bring each side, in their order
	Unknown                                bool  // it is not known whether the two may meet
}

// Mix lists them. What a route brings together by itself is told in its own review: it counts
// here where what one side was may be used up in it, since it is treated. Of what a wash left a
// residue counts for the worst pairs alone.
func Mix(all []Stream) []Mixed {
	var out []Mixed
	by, order := map[string][]*Stream{}, []string(nil)
	for i := range all {
		s := &all[i]
		if by[s.Container] == nil {
			order = append(order, s.Container)
		}
		by[s.Container] = append(by[s.Container], s)
	}
	slices.Sort(order)
	for _, key := range order {
		if len(by[key]) > 1 {
			out = append(out, mixed(key, by[key])...)
		}
	}
	return out
}

// mixed are the pairs of one container: those of the table, then what does not stand together
// on a shelf either.
func mixed(key string, of []*Stream) []Mixed {
	var out []Mixed
	add := func(m Mixed, one, other []*Stream) {
		told := slices.ContainsFunc(out, func(x Mixed) bool { return x.Result == m.Result })
		if len(one) > 0 && len(other) > 0 && !told {
			m.Container, m.One, m.Other = key, routes(one), routes(other)
			out = append(out, m)
		}
	}
	for i := range Pairs() {
		p := &Pairs()[i]
		if _, wall := p.Wall(); wall || p.A.Same(p.B) || p.Severity == "1" || p.A.Done() {
			continue
		}
		m := Mixed{ID: p.ID, Names: p.Names, Result: p.Result, Severity: p.Severity, Source: p.Source, Status: p.Status}
		if m.Unknown = p.B.Is(other); m.Unknown { // whatever the others bring
			one := slices.DeleteFunc(slices.Clone(of), func(s *Stream) bool { return !s.has(p.A, true) })
			rest := slices.DeleteFunc(slices.Clone(of), func(s *Stream) bool { return len(one) == 1 && s == one[0] })
			add(m, one, rest)
			continue
		}
		one, others := sides(of, p.A, p.B, p.Severity == "3")
		add(m, one, others)
	}
	for i := range shelf() {
		x := &shelf()[i]
		one, others := sides(of, x.a, x.b, false)
		add(Mixed{ID: x.a.String() + "_" + x.b.String(),
			Result: x.why, Severity: "2", Source: x.source, Status: x.status}, one, others)
	}
	return out
}

// sides are the routes that bring each of two sides. One that brings both counts where it is
// treated, beside one that brings a single one of them. near counts the residue of a wash.
func sides(of []*Stream, a, b Side, near bool) (first, second []*Stream) {
	var both []*Stream
	for _, s := range of {
		x, y := s.has(a, near), s.has(b, near)
		switch {
		case x && y && s.treated:
			both = append(both, s)
		case x && !y:
			first = append(first, s)
		case y && !x:
			second = append(second, s)
		}
	}
	switch {
	case len(first) > 0:
		second = append(second, both...)
	case len(second) > 0:
		first = both
	}
	return first, second
}

func routes(of []*Stream) []int {
	var out []int
	for _, s := range of {
		out = append(out, s.Route)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// has reports whether a side of a pair came into a container.
func (s *Stream) has(side Side, near bool) bool {
	if _, there := s.holds.step(side); !there {
		return false
	}
	return near || !s.holds.onlyWashed(side)
}
