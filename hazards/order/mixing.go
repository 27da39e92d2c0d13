package order

import (
	_ "embed"
	"sync"

	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

// Pair is two that are mixed in a step, and the id of what is told of them.
type Pair struct{ ID, Comes, There string }

// advice is what is told of two tags that are mixed.
type advice struct{ id, a, b string }

//go:embed mixing.csv
var mixingCSV string

var advices = sync.OnceValue(func() []advice {
	return columns.Must("hazards/order/mixing.csv", mixingCSV, func(r columns.Row) advice {
		_ = r.Named("source") + r.Named("status")
		return advice{r.Named("id"), r.Named("a"), r.Named("b")}
	})
})

// Mixed is the pair that meets in a step, by the first row of the table that fits any
// two of it; false where nothing meets.
func Mixed(r *route.Route, k *process.Walk, step int) (Pair, bool) {
	var met []meeting
	meetings(r, k, func(s *route.Step, m *meeting) {
		if s.Number != step || len(m.there.subs) == 0 || len(m.comes.subs) == 0 {
			return
		}
		met = append(met, m.washed())
	})
	for _, x := range advices() {
		for i := range met {
			m := &met[i]
			if p, fits := m.fits(&x, x.a, x.b); fits {
				return p, true
			}
			if p, fits := m.fits(&x, x.b, x.a); fits {
				return p, true
			}
		}
	}
	return Pair{}, false
}

// washed leaves out the acid that is there, or comes, where it meets base and is too
// little to warm the place.
func (m *meeting) washed() meeting {
	out := *m
	bases, _ := m.comes.tag("base")
	lies, _ := m.there.tag("base")
	if max(bases, lies) == yes && m.rise <= process.NoRise {
		out.there.held, out.comes.held = true, true
	}
	return out
}

// fits reports whether what comes is of one tag and what is there of another.
func (m *meeting) fits(x *advice, comes, there string) (Pair, bool) {
	a, what := m.comes.has(comes)
	b, to := m.there.has(there)
	if comes == "any" {
		what = m.comes.leading()
	}
	if there == "any" {
		to = m.there.leading()
	}
	return Pair{x.id, what, to}, a == yes && b == yes
}

// leading is what names a liquor: what is in it beside water, and beside acid of which
// too little is left.
func (c *contents) leading() string {
	for _, s := range c.subs {
		if s.Solution != "water" && !(c.held && s.Acid > 0) {
			return s.Name
		}
	}
	for _, s := range c.subs {
		if s.Solution == "water" {
			return s.Name
		}
	}
	return ""
}
