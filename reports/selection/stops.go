package selection

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/reports/draft"
	"etchbound/reports/words"
	"etchbound/schemas/columns"
)

//go:embed stops.csv
var stopTable string

// rank is a row of stops.csv.
type rank struct {
	order   int    // how soon and how surely what it stops kills, from 1
	settles string // kind of what is missing that the hold point says already
}

var ranks = sync.OnceValue(func() map[string]rank {
	out := map[string]rank{}
	for _, r := range columns.Must("reports/selection/stops.csv", stopTable, func(r columns.Row) [2]string {
		_ = r.Named("stops") // for who reads the table
		return [...]string{r.Named("id"), r.Text("missing")}
	}) {
		out[r[0]] = rank{len(out) + 1, r[1]}
	}
	return out
})

// Stops are all hold points of a review, one a matter, the most dangerous first. One
// that the table does not rank goes before all.
func Stops(d *draft.Draft) []Stop {
	v := voice{d}
	var out []Stop
	for _, h := range d.Review.Holds {
		s := Stop{ID: h.ID, Says: folded(words.Say(h.Says))}
		var unsaid []figure.Place
		for _, at := range h.Places {
			if name := v.Place(at); !strings.Contains(s.Says, name) {
				s.At, unsaid = append(s.At, name), append(unsaid, at)
			}
		}
		s.Here = v.places(unsaid)
		out = append(out, s)
	}
	for _, m := range meets(d) {
		if m.Severity == "3" {
			out = append(out, Stop{ID: "pair", Says: say("stop.pair", m.Names, strings.Join(m.where, "; "), m.Result),
				At: m.places})
		}
	}
	out = append(out, shelf(d)...)
	slices.SortStableFunc(out, func(a, b Stop) int { return ranks()[a.ID].order - ranks()[b.ID].order })
	return out
}

// shelf is one hold point of what of the stock of a site must not meet at all.
func shelf(d *draft.Draft) []Stop {
	if d.Review.Case.Site == nil {
		return nil
	}
	var apart []string
	for _, x := range meeting.Shelf(d.Review.Case.Site.Stock) {
		if x.Never {
			apart = append(apart, say("stop.shelf_pair", x.One, x.Other))
		}
	}
	if apart == nil {
		return nil
	}
	return []Stop{{ID: "shelf", Says: say("stop.shelf", strings.Join(apart, "; "))}}
}
