package classifying

import (
	_ "embed"
	"fmt"
	"slices"
	"sync"

	"etchbound/chemicals"
	"etchbound/schemas/columns"
)

//go:embed transport.csv
var transportTable string

//go:embed storage.csv
var storageTable string

// Entry is one under which a mixture is carried.
type Entry struct {
	Number     string // such as UN 1790
	Name       string // proper shipping name, or what the entry is of
	Class      string
	Subsidiary string // "" where there is none
	Group      string // packing group; "" where there is none
	Source     string
	Status     string

	parts    []string // slugs that all have to be there
	from, to float64  // wt% of the first; to is not in it, NaN has no end
	dry      bool
}

var entries = sync.OnceValue(func() []Entry {
	return columns.Must("chemicals/classifying/transport.csv", transportTable, func(r columns.Row) Entry {
		e := Entry{Number: r.Named("un"), Name: r.Named("name"), Class: r.Named("class"), Subsidiary: r.Text("subsidiary"),
			Group: r.Text("group"), Source: r.Named("source"), Status: r.Choice("status", statuses...),
			parts: r.List("parts"), from: r.Stated("from"), to: r.Number("to"), dry: r.Yes("dry")}
		for _, slug := range e.parts {
			if _, there := chemicals.Library().Find(slug); !there {
				r.Fault("parts", fmt.Errorf("%s is no substance that is held", slug))
			}
		}
		return e
	})
})

// rounding is the share of a limit by which a share worked out from amounts may miss it.
const rounding = 1e-9

// Carried is the entry under which a mixture is carried: of those that fit the one that
// names most of it, and of these the one of its greatest share. The rest of a mixture is
// not seen: who sends it decides.
func Carried(parts []Part, dry bool) (Entry, bool) {
	share := map[string]float64{}
	for _, p := range parts {
		if p.Sub != nil && p.share() > 0 {
			share[p.Sub.Slug] += p.share()
		}
	}
	var best *Entry
	for i := range entries() {
		e := &entries()[i]
		x := share[e.parts[0]]
		all := !slices.ContainsFunc(e.parts, func(slug string) bool { return share[slug] <= 0 })
		if !all || e.dry != dry || x < e.from*(1-rounding) || x >= e.to*(1-rounding) {
			continue
		}
		if best == nil || len(e.parts) > len(best.parts) ||
			len(e.parts) == len(best.parts) && x > share[best.parts[0]] {
			best = e
		}
	}
	if best == nil {
		return Entry{}, false
	}
	return *best, true
}

// Store is a group of a store and what it is kept apart from.
type Store struct {
	Group, Apart, Source, Status string

	when []string
}

var stores = sync.OnceValue(func() []Store {
	return columns.Must("chemicals/classifying/storage.csv", storageTable, func(r columns.Row) Store {
		return Store{Group: r.Named("group"), Apart: r.Named("apart"), Source: r.Named("source"),
			Status: r.Choice("status", statuses...), when: r.List("when")}
	})
})

// Stands are the groups of a store that a bottle of a mixture of parts belongs to, the
// first first, by its classes and by what is in it: acid, base, fluoride.
func Stands(c *Classified, parts []Part) []Store {
	has := map[string]bool{}
	for _, p := range parts {
		has["fluoride"] = has["fluoride"] || p.Sub.Formula.Count("F") > 0
		has["acid"] = has["acid"] || p.Sub.Acid > 0
		has["base"] = has["base"] || p.Sub.Acid < 0
	}
	is := func(word string) bool { return has[word] }
	var out []Store
	for _, s := range stores() {
		fits := !slices.ContainsFunc(s.when, func(w string) bool { return !c.Has(w) && !is(w) })
		if fits && !slices.ContainsFunc(out, func(o Store) bool { return o.Group == s.Group }) {
			out = append(out, s)
		}
	}
	// A bottle that is acid fluoride is told once, not as any acid again.
	if len(out) > 1 && len(out[0].when) > 1 {
		first := out[0].when
		out = slices.DeleteFunc(out, func(s Store) bool { return len(s.when) == 1 && slices.Contains(first, s.when[0]) })
	}
	return out
}
