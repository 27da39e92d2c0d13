package wetted

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed needed.csv
var neededCSV string

// Tables is the text of the tables of this package as the program carries them.
func Tables() string { return neededCSV }

// needed is what meets the liquor where a step does something.
type needed struct {
	where, kinds, words []string
	what                string
}

var needs = sync.OnceValue(func() []needed {
	return columns.Must("hazards/wetted/needed.csv", neededCSV, func(r columns.Row) needed {
		_ = r.Named("source") + r.Named("status")
		return needed{r.List("where"), r.List("kind"), r.List("words"), r.Named("what")}
	})
})

// coldRoom is below any room, K: what is kept colder stands in a fridge.
const coldRoom = 288.15

// is are the words of the table that are no verb, and when they are so of a step. What a step
// is done to that does not say whether it is stirred, may be.
var is = map[string]func(*route.Step) bool{
	"stirred": func(s *route.Step) bool {
		return s.Stirred == nil && s.Verb().Held || s.Stirred != nil && *s.Stirred
	},
	"watched": func(s *route.Step) bool {
		return s.NotAbove.Set || s.Verb().Held && s.Temperature.Set
	},
	"weighed": func(s *route.Step) bool {
		return slices.ContainsFunc(s.What, func(m route.Material) bool {
			s := m.Substance // what is not held may be such a salt
			return s != nil && m.Mass.Set && (s.Kind == "fluoride_salt" || s.NotHeld && s.May("F"))
		})
	},
	"cold": func(s *route.Step) bool {
		return s.Verb().Does == route.Stores && s.Temperature.Set && s.Temperature.SI < coldRoom
	},
}

// open is a part that steps need and that nobody names, and the places where.
type open struct {
	what   string
	places []string
}

// unstated are the parts that the steps need in a liquor that some material does not
// stand, and that the route does not name: nobody can say what they are made of.
func unstated(r *route.Route, contacts []process.Contact) []open {
	var out []open
	for i := range needs() {
		n := &needs()[i]
		x := open{what: n.what}
		for j := range r.Steps {
			s := &r.Steps[j]
			met := slices.ContainsFunc(contacts, func(c process.Contact) bool { return c.Place == s.In && c.Step <= s.Number })
			if met && n.lacks(r, s) && !slices.Contains(x.places, s.In) {
				x.places = append(x.places, s.In)
			}
		}
		if x.places != nil {
			out = append(out, x)
		}
	}
	return out
}

// lacks reports whether a step needs a thing that neither it nor its place names.
func (n *needed) lacks(r *route.Route, s *route.Step) bool {
	p := r.Place(s.In)
	if p == nil || slices.Contains(n.kinds, p.Kind) || !slices.ContainsFunc(n.where, func(w string) bool {
		so, word := is[w]
		return s.Do == w || word && so(s)
	}) {
		return false
	}
	return !slices.ContainsFunc(slices.Concat(s.Wetted, p.Wetted), func(x route.Wetted) bool {
		return slices.ContainsFunc(n.words, func(w string) bool { return strings.Contains(strings.ToLower(x.What), w) })
	})
}
