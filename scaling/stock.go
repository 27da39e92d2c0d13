package scaling

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/hazards/assess"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/meeting"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
)

// Holdings is all routes of a site together. Routes are sorted by their names;
// positions in it are theirs.
type Holdings struct {
	Routes     []Named
	Site       *route.Site // nil where none was given
	Limits     *limit.Set
	SameDay    bool
	Substances []stock.Holding // by CAS, then powders by formula
	Sums       []stock.Share   // of all of them together, where a programme adds up
	Mixed      []meeting.Mixed // pairs of streams of several routes in one container of waste
	Hood       HoodLoad
}

// Named is what is kept of a route that was added up.
type Named struct{ Name, Title, Digest string }

// Stock is StockOf for cases that are there already. They share one site.
func Stock(cases []route.Case, sameDay bool, workers int) (*Holdings, error) {
	if len(cases) == 0 {
		return nil, errNoRoute
	}
	return StockOf(cases[0].Site, cases[0].Limits, len(cases), func(i int) (route.Case, error) { return cases[i], nil },
		sameDay, workers)
}

var errNoRoute = errors.New("there is no route to add up")

// StockOf assesses n cases of a site briefly, on so many workers, and adds up what the
// routes take. A case is asked for once, by several goroutines, and let go as soon as it
// is read, so that thousands take no more memory than some. The result does not depend
// on the order of the cases nor on workers. The error joins those of all routes that are
// not there or cannot be walked.
func StockOf(site *route.Site, limits *limit.Set, n int, of func(i int) (route.Case, error), sameDay bool,
	workers int) (*Holdings, error) {
	if n == 0 {
		return nil, errNoRoute
	}
	rows, errs := make([]read, n), make([]error, n)
	hazards.EachOn(n, workers, func(i int) {
		var c route.Case
		if c, errs[i] = of(i); errs[i] == nil {
			rows[i], errs[i] = readOne(i, c)
		}
	})
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	slices.SortStableFunc(rows, func(a, b read) int {
		return cmp.Or(strings.Compare(a.named.Name, b.named.Name), strings.Compare(a.named.Digest, b.named.Digest))
	})
	h := &Holdings{Site: site, Limits: limits, SameDay: sameDay}
	var all []stock.Portion
	var streams []meeting.Stream
	st := chemicals.Base()
	if site != nil {
		st = stock.OfTheSite(site, st)
		all = stock.Kept(st, site)
	}
	for i := range rows {
		rows[i].load.Route = i
		h.Routes = append(h.Routes, rows[i].named)
		all = append(all, stock.By(i, rows[i].portions)...)
		for j := range rows[i].streams {
			rows[i].streams[j].Route = i
		}
		streams = append(streams, rows[i].streams...)
	}
	h.Mixed = meeting.Mix(streams)
	h.Substances = stock.Gather(all, site, limits, st)
	h.Sums = stock.Sums(h.Substances, site, limits)
	h.Hood = hood(site, rows, sameDay)
	return h, nil
}

// read is what is kept of one assessment.
type read struct {
	named    Named
	portions []stock.Portion
	streams  []meeting.Stream
	load     Load
}

// ofStock is what gives the figures that a stock looks at: the flow of hydrogen and its
// air, the air of vapours, the cycles that a wash needs and what neutralises.
var ofStock = assess.Of(assess.Gas, assess.Air, assess.Wash, assess.Waste)

func readOne(i int, c route.Case) (read, error) {
	c.Brief = true // no figure here is of a failure
	a := assess.Some(c, ofStock)
	if a.Err != nil {
		return read{}, fmt.Errorf("%s: %w", c.Route.Name, a.Err)
	}
	figs := figure.NewSet(a.Figures)
	r := c.Route
	return read{Named{r.Name, r.Title, r.Digest}, stock.Taken(i, &c, &a.Walk, figs), meeting.Streams(r),
		loadOf(i, &c, figs)}, nil
}
