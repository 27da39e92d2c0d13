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
	Number     string // such as UN 1790, or "not restricted"
	Name       string // proper shipping name, or what the entry is of
	Class      string
	Subsidiary string // "" where there is none
	Group      string // packing group; "" where there is none
	Source     string
	Status     string
	Free       bool // it is none of the dangerous goods: no number, no class

	parts    []string // slugs that all have to be there
	codes    []string // statements that the mixture has to have
	from, to float64  // wt% of the first, of all where there is none; NaN has no end
	ends     string   // which of them is in it
	dry      bool
	refused  bool // what fits it has no entry at all
}

// What stands in the place of a number where an entry has none.
const (
	free    = "not restricted"
	refused = "refused"
)

var entries = sync.OnceValue(func() []Entry {
	return columns.Must("chemicals/classifying/transport.csv", transportTable, func(r columns.Row) Entry {
		e := Entry{Number: r.Named("un"), Name: r.Text("name"), Class: r.Text("class"), Subsidiary: r.Text("subsidiary"),
			Group: r.Text("group"), Source: r.Named("source"), Status: r.Choice("status", statuses...),
			parts: r.List("parts"), codes: r.List("codes"), from: r.Stated("from"), to: r.Number("to"),
			ends: r.Choice("ends", "", "to", "both", "none"), dry: r.Yes("dry")}
		e.Free, e.refused = e.Number == free, e.Number == refused
		if !e.Free && !e.refused && (e.Name == "" || e.Class == "") {
			r.Fault("class", fmt.Errorf("%s has no name or no class", e.Number))
		}
		if len(e.parts)+len(e.codes) == 0 || e.Free && len(e.parts) != 1 {
			r.Fault("parts", fmt.Errorf("%s fits anything", e.Number))
		}
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

// within reports whether a share in wt% is in the band of an entry.
func (e *Entry) within(x float64) bool {
	above, below := x >= e.from*(1-rounding), !(x >= e.to*(1-rounding))
	if e.ends == "to" || e.ends == "none" {
		above = x > e.from*(1+rounding)
	}
	if e.ends == "to" || e.ends == "both" {
		below = !(x > e.to*(1+rounding))
	}
	return above && below
}

// fits reports whether an entry is one of a mixture, by shares in wt% and statements.
func (e *Entry) fits(c *Classified, share map[string]float64) bool {
	return !slices.ContainsFunc(e.parts, func(slug string) bool { return !(share[slug] > 0) }) &&
		!slices.ContainsFunc(e.codes, func(code string) bool { return !c.says(code) }) && e.within(e.first(share))
}

// first is the share of what an entry names first; all where it names nothing.
func (e *Entry) first(share map[string]float64) float64 {
	if len(e.parts) == 0 {
		return 100
	}
	return share[e.parts[0]]
}

// before reports whether an entry counts before another that fits too.
func (e *Entry) before(o *Entry, share map[string]float64) bool {
	if len(e.codes) != len(o.codes) {
		return len(e.codes) > len(o.codes)
	}
	if len(e.parts) != len(o.parts) {
		return len(e.parts) > len(o.parts)
	}
	return e.first(share) > o.first(share)
}

// says reports whether a mixture has a statement.
func (c *Classified) says(code string) bool {
	return slices.ContainsFunc(c.Classes, func(f Found) bool { return f.Class.Code == code })
}

// Carried is the entry under which a mixture of classes is carried: of those that fit the
// one with most statements, then the one that names most of it, and of these the one of its
// greatest share. The rest of a mixture is not seen: who sends it decides. It is not
// restricted only where all of its parts are not, each of a known share.
func Carried(c *Classified, parts []Part, dry bool) (Entry, bool) {
	share := map[string]float64{}
	for _, p := range parts {
		if p.Sub != nil && p.share() > 0 {
			share[p.Sub.Slug] += p.share()
		}
	}
	var best *Entry
	for i := range entries() {
		e := &entries()[i]
		switch {
		case e.Free || e.dry != dry || !e.fits(c, share):
		case e.refused:
			return Entry{}, false
		case best == nil || e.before(best, share):
			best = e
		}
	}
	if best == nil {
		best = unrestricted(c, parts, share)
	}
	if best == nil {
		return Entry{}, false
	}
	return *best, true
}

// unrestricted is the entry of a mixture none of whose parts is restricted, that of its
// greatest share; nil where one is, is not held, or has an unknown share.
func unrestricted(c *Classified, parts []Part, share map[string]float64) *Entry {
	var best *Entry
	for _, p := range parts {
		if p.Sub == nil || p.Share != p.Share {
			return nil
		}
		if p.Sub.Kind == "water" || p.share() <= 0 {
			continue
		}
		i := slices.IndexFunc(entries(), func(e Entry) bool {
			return e.Free && e.parts[0] == p.Sub.Slug && e.fits(c, share)
		})
		if i < 0 {
			return nil
		}
		if e := &entries()[i]; best == nil || e.before(best, share) {
			best = e
		}
	}
	return best
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
