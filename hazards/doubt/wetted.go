package doubt

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/chemicals/working"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed wetted.csv
var wettedCSV string

// needed is what meets the liquor where a step does something.
type needed struct {
	where, kinds, words []string
	what                string
}

var needs = sync.OnceValue(func() []needed {
	return columns.Must("hazards/doubt/wetted.csv", wettedCSV, func(r columns.Row) needed {
		_ = r.Named("source") + r.Named("status")
		return needed{r.List("where"), r.List("kind"), r.List("words"), r.Named("what")}
	})
})

// Tables is the text of the tables of this package as the program carries them.
func Tables() string { return wettedCSV }

// unstated lists in one item what a step of its verb needs in a liquor that some material
// does not stand, and that the route does not name: nobody can say what it is made of.
func unstated(r *route.Route, contacts []process.Contact) []working.Missing {
	var list []string
	for i := range r.Steps {
		s := &r.Steps[i]
		met := slices.ContainsFunc(contacts, func(c process.Contact) bool { return c.Place == s.In && c.Step <= s.Number })
		if !met {
			continue
		}
		for j := range needs() {
			n := &needs()[j]
			if x := n.what + " (" + s.In + ")"; n.lacks(r, s) && !slices.Contains(list, x) {
				list = append(list, x)
			}
		}
	}
	if list == nil {
		return nil
	}
	return []working.Missing{working.Lacks("wetted_open", strings.Join(list, "; "))}
}

// lacks reports whether a step needs a thing that neither it nor its place names.
func (n *needed) lacks(r *route.Route, s *route.Step) bool {
	stirs := s.Stirred != nil && *s.Stirred && slices.Contains(n.where, "stirred")
	p := r.Place(s.In)
	if p == nil || !stirs && !slices.Contains(n.where, s.Do) || slices.Contains(n.kinds, p.Kind) {
		return false
	}
	return !slices.ContainsFunc(append(s.Wetted[:len(s.Wetted):len(s.Wetted)], p.Wetted...), func(x route.Wetted) bool {
		return slices.ContainsFunc(n.words, func(w string) bool { return strings.Contains(strings.ToLower(x.What), w) })
	})
}
