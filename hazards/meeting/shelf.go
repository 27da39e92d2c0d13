package meeting

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed shelf.csv
var shelfCSV string

type shelved struct {
	a, b                Side
	why, source, status string
}

var shelf = sync.OnceValue(func() []shelved {
	return columns.Must("hazards/meeting/shelf.csv", shelfCSV, func(r columns.Row) shelved {
		return shelved{SideOf(r, "a", base), SideOf(r, "b", base), r.Named("why"), r.Named("source"),
			r.Named("status")}
	})
})

// Standing is how two of a stock that must not stand together do.
type Standing uint8

// How they stand, from the mildest.
const (
	Parted   Standing = iota // each in a cabinet or tray of its own
	Unsaid                   // of one of them nobody says where it stands
	Together                 // both in the same
)

// Apart is two substances of a stock that do not stand together, why, how they do, and
// whether one of the pairs is of those that must not meet at all.
type Apart struct {
	One, Other string
	Slugs      [2]string // of the two
	Why        []string
	Never      bool
	Stands     Standing
	In         string // where both stand; "" where not together
}

// Shelf lists which two of a stock do not stand on one shelf or in one tray: those of which
// a pair of the table meets when both leak, and by neither alone. Of two that stand in
// several places the worst counts.
func Shelf(stock []route.Stock) []Apart {
	var out []Apart
	for i := range stock {
		for j := range stock[:i] {
			x := stands(&stock[j], &stock[i])
			if len(x.Why) == 0 {
				continue
			}
			at := slices.IndexFunc(out, func(o Apart) bool {
				return o.Slugs == x.Slugs || o.Slugs == [...]string{x.Slugs[1], x.Slugs[0]}
			})
			switch {
			case at < 0:
				out = append(out, x)
			case x.Stands > out[at].Stands:
				out[at] = x
			}
		}
	}
	return out
}

// standing is how two of a stock stand.
func standing(a, b *route.Stock) (how Standing, in string) {
	one, other := strings.TrimSpace(a.Stands), strings.TrimSpace(b.Stands)
	switch {
	case one == "" || other == "":
		return Unsaid, ""
	case strings.EqualFold(one, other):
		return Together, one
	}
	return Parted, ""
}

// stands holds two of a stock against the tables.
func stands(a, b *route.Stock) Apart {
	if a.Substance == nil || b.Substance == nil || a.Substance == b.Substance {
		return Apart{}
	}
	one, other := kept(a), kept(b)
	both := kept(a, b)
	x := Apart{One: a.Substance.Name, Other: b.Substance.Name, Slugs: [...]string{a.Substance.Slug, b.Substance.Slug}}
	x.Stands, x.In = standing(a, b)
	for i := range Pairs() {
		p := &Pairs()[i]
		if p.Severity == "1" || !meets(both, p) || meets(one, p) || meets(other, p) {
			continue
		}
		x.Why, x.Never = append(x.Why, p.Result), x.Never || p.Severity == "3"
	}
	for _, s := range shelf() {
		if two(one, other, s) && len(x.Why) == 0 {
			x.Why = append(x.Why, s.why)
		}
	}
	return x
}

func two(one, other *Contents, s shelved) bool {
	has := func(c *Contents, of Side) bool { _, there := c.step(of); return there }
	return has(one, s.a) && has(other, s.b) || has(one, s.b) && has(other, s.a)
}

func meets(c *Contents, p *Pair) bool {
	if _, wall := p.Wall(); wall {
		return false
	}
	_, met := c.Meets(p)
	return met
}

// kept is what some of a stock would be together.
func kept(stock ...*route.Stock) *Contents {
	c := empty(&route.Place{})
	for _, x := range stock {
		c.put(1, &route.Material{Substance: x.Substance, Strength: x.Strength}, &route.Route{})
		if x.Substance.Acid < 0 {
			c.Tags.Add(1, base)
		}
	}
	c.joined(1)
	return c
}
