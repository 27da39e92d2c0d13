package selection

import (
	"cmp"
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/reports/draft"
	"etchbound/reports/words"
	"etchbound/schemas/columns"
)

//go:embed stops.csv
var stopTable string

// rank is a row of stops.csv.
type rank struct {
	order   int      // how soon and how surely what it stops kills, from 1
	settles []string // kinds of what is missing that the hold point says already
	with    string   // id of a hold point that it is one matter with where both are there
}

var ranks = sync.OnceValue(func() map[string]rank {
	out := map[string]rank{}
	n := 0
	columns.Must("reports/selection/stops.csv", stopTable, func(r columns.Row) string {
		_ = r.Named("stops") // for who reads the table
		n++
		out[r.Named("id")] = rank{n, r.List("missing"), r.Text("with")}
		return r.Named("id")
	})
	return out
})

// Matters are hold points as people read them: pairs that must not meet are one, and so
// are two that the table says are one matter. Nothing of what they say is left out.
func Matters(all []Stop) []Stop {
	var out []Stop
	for i, s := range all {
		if at := slices.IndexFunc(out, func(x Stop) bool { return x.Part != "" && s.Part != "" }); at >= 0 {
			out[at].Part += "; " + s.Part
			out[at].Says = say("stop.pairs", out[at].Part)
			continue
		}
		with := func(a, b *Stop) bool {
			return ranks()[b.ID].with == a.ID && plainly(a) && plainly(b)
		}
		if slices.ContainsFunc(all[:i], func(x Stop) bool { return with(&x, &s) }) {
			continue // the hold point before it says it
		}
		if at := slices.IndexFunc(all[i+1:], func(x Stop) bool { return with(&s, &x) }); at >= 0 {
			other := &all[i+1+at]
			s.Says, s.Here = say("stop.with."+other.ID, s.Here, other.Here), ""
		}
		out = append(out, s)
	}
	return out
}

// plainly reports whether a hold point says no more than its finding, at places beside it.
func plainly(s *Stop) bool { return s.Key == "hold.finding."+s.ID && s.Here != "" }

// Stops are all hold points of a review by their ids, the most dangerous first. One
// that the table does not rank goes before all.
func Stops(d *draft.Draft) []Stop {
	v := voice{d}
	var out []Stop
	for i := range d.Review.Holds {
		h := &d.Review.Holds[i]
		same := with(d.Review.Holds, h)
		if same[0] != h {
			continue // it is told with the first of them
		}
		for _, says := range ofAll(same) {
			s := Stop{ID: h.ID, Key: h.Says.Key, Says: folded(words.Say(says))}
			unsaid := unnamed(same)
			for _, at := range unsaid {
				s.At = append(s.At, v.Place(at))
			}
			s.Here = v.places(unsaid)
			out = append(out, s)
		}
	}
	for _, m := range meets(d) {
		if m.stops {
			at := strings.Join(m.where, "; ")
			says := "stop.pair"
			if m.A.Same(m.B) {
				says = "stop.alone"
			}
			out = append(out, Stop{ID: "pair", Says: say(says, m.Names, at, m.Result), At: m.places,
				Part: say("stop.pairs_each", m.Names, at, m.Result)})
		}
	}
	out = append(out, shelf(d)...)
	slices.SortStableFunc(out, func(a, b Stop) int { return ranks()[a.ID].order - ranks()[b.ID].order })
	return out
}

// with are the hold points that say the same of different steps and things; one without a key
// is by itself.
func with(all []hazards.Hold, h *hazards.Hold) []*hazards.Hold {
	if h.Says.Key == "" {
		return []*hazards.Hold{h}
	}
	var out []*hazards.Hold
	for i := range all {
		if all[i].ID == h.ID && all[i].Says.Key == h.Says.Key {
			out = append(out, &all[i])
		}
	}
	return out
}

// unnamed are the places of some hold points that their words do not name.
func unnamed(all []*hazards.Hold) []figure.Place {
	var out []figure.Place
	for _, h := range all {
		for _, at := range h.Places {
			if n, ok := at.Step(); (!ok || !h.Says.Names(phrase.Step(n))) && !slices.Contains(out, at) {
				out = append(out, at)
			}
		}
	}
	return out
}

// ofAll is what some hold points say, with what they say of several steps or things said once
// of all.
func ofAll(all []*hazards.Hold) []phrase.Phrase {
	if len(all) == 1 {
		return []phrase.Phrase{ofSteps(all[0])}
	}
	var says []phrase.Phrase
	for _, h := range all {
		says = append(says, h.Says)
	}
	return words.Alike(words.Together(says))
}

// ofSteps is what a hold point says, with what it says of several steps or things said once of
// all.
func ofSteps(h *hazards.Hold) phrase.Phrase {
	if len(h.Parts) < 2 {
		return h.Says
	}
	says := phrase.Phrase{}
	for i, x := range words.Alike(words.Together(h.Parts)) {
		if i > 0 {
			says = says.And(phrase.As(" "))
		}
		says = says.And(x)
	}
	return phrase.Of(h.Says.Key, says)
}

// shelf is one hold point of what of the stock of a site does not stand together and may, or
// does: what must not meet at all before what only stands apart, the rest counted.
func shelf(d *draft.Draft) []Stop {
	if d.Review.Case.Site == nil {
		return nil
	}
	all := slices.DeleteFunc(meeting.Shelf(d.Review.Case.Site.Stock), func(x meeting.Apart) bool {
		return x.Stands == meeting.Parted
	})
	slices.SortStableFunc(all, func(a, b meeting.Apart) int {
		return cmp.Or(cmp.Compare(b.Stands, a.Stands), falseFirst(!a.Never, !b.Never))
	})
	var apart []string
	for i, x := range all {
		if i == namedShelf {
			apart = append(apart, say("stop.shelf_more", len(all)-i))
			break
		}
		apart = append(apart, say("stop.shelf_pair", x.One, x.Other))
	}
	if apart == nil {
		return nil
	}
	return []Stop{{ID: "shelf", Says: say("stop.shelf", strings.Join(apart, "; "))}}
}

// namedShelf is how many pairs of a stock the hold point names; the rest it counts.
const namedShelf = 5
