package scaling

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/assess"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
)

// Holdings is all routes of a site together. Routes are sorted by their names;
// positions in it are theirs.
type Holdings struct {
	Routes     []*route.Route
	Site       *route.Site // nil where none was given
	Limits     *limit.Set
	SameDay    bool
	Substances []stock.Holding // by CAS, then powders by formula
	Sums       []stock.Share   // of all of them together, where a programme adds up
	Hood       HoodLoad
}

// Stock assesses every case briefly, on so many workers, and adds up what the
// routes take. Cases share one site. The result does not depend on the order of
// the cases nor on workers. The error joins those of all routes that cannot be
// walked.
func Stock(cases []route.Case, sameDay bool, workers int) (*Holdings, error) {
	if len(cases) == 0 {
		return nil, errors.New("there is no route to add up")
	}
	cases = slices.Clone(cases)
	slices.SortStableFunc(cases, func(a, b route.Case) int {
		return cmp.Or(strings.Compare(a.Route.Name, b.Route.Name), strings.Compare(a.Route.Digest, b.Route.Digest))
	})
	rows, err := readAll(cases, workers)
	if err != nil {
		return nil, err
	}
	h := &Holdings{Site: cases[0].Site, Limits: cases[0].Limits, SameDay: sameDay}
	var all []stock.Portion
	st := cases[0].Store
	if h.Site != nil {
		st = stock.OfTheSite(h.Site, st)
		all = stock.Kept(st, h.Site)
	}
	for i := range rows {
		h.Routes = append(h.Routes, cases[i].Route)
		all = append(all, rows[i].portions...)
	}
	h.Substances = stock.Gather(all, h.Site, h.Limits, st)
	h.Sums = stock.Sums(h.Substances, h.Site, h.Limits)
	h.Hood = hood(h.Site, rows, sameDay)
	return h, nil
}

// read is what is kept of one assessment.
type read struct {
	portions []stock.Portion
	load     Load
}

// ofStock is what gives the figures that a stock looks at: the flow of hydrogen and its
// air, the air of vapours, the cycles that a wash needs and what neutralises.
var ofStock = assess.Of(assess.Gas, assess.Air, assess.Wash, assess.Waste)

// readAll assesses the cases in no order and keeps them in theirs.
func readAll(cases []route.Case, workers int) ([]read, error) {
	rows, errs := make([]read, len(cases)), make([]error, len(cases))
	hazards.EachOn(len(cases), workers, func(i int) { rows[i], errs[i] = readOne(i, cases[i]) })
	return rows, errors.Join(errs...)
}

func readOne(i int, c route.Case) (read, error) {
	c.Brief = true // no figure here is of a failure
	a := assess.Some(c, ofStock)
	if a.Err != nil {
		return read{}, fmt.Errorf("%s: %w", c.Route.Name, a.Err)
	}
	figs := figure.NewSet(a.Figures)
	return read{stock.Taken(i, &c, &a.Walk, figs), loadOf(i, &c, figs)}, nil
}
