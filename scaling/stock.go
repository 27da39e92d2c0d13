package scaling

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/assess"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
)

// Holdings is all routes of a site together. Routes are sorted by their names;
// positions in it are theirs.
type Holdings struct {
	Routes     []*route.Route
	Site       *route.Site // nil where none was given
	Limits     *limit.Set
	SameDay    bool
	Substances []Holding // by CAS, then powders by formula
	Sums       []Share   // of all of them together, where a programme adds up
	Hood       HoodLoad
}

// Holding is one pure substance over all routes. Masses are kg of the substance
// without its water; those named Top are at the upper ends of all that was
// stated with a range.
type Holding struct {
	CAS, Name, Formula, State string
	Takes                     []Take // one for each route that takes it
	Largest, Sum              Take   // of one run; Sum is one run of every route
	Stock                     Mass   // of the site; unknown where it is not stated
	Runs                      working.Num
	Strongest                 working.Num // g/g, the strongest portion present, at its upper end
	Shares                    []Share
	Bottles                   []Bottle // what the site keeps of it, as its file states it
	portions                  []portion
	slug                      string
	unheld                    bool
}

// ID is the id of the mass of the substance.
func (h *Holding) ID() figure.ID { return figure.ID{Quantity: "stock.mass", Place: figure.At(h.key())} }

func (h *Holding) key() string {
	return substance{cas: h.CAS, slug: h.slug, formula: h.Formula, unheld: h.unheld}.key()
}

// Mass is a mass in kg on its central values and at the upper ends.
type Mass struct{ Mid, Top working.Num }

// Take is the mass one run of a route takes. Route is its position.
type Take struct {
	Route int
	Mass
}

// Share is what is held against a threshold. Held and Ratio are at the upper
// ends; Left is what is there and does not count, kg.
type Share struct {
	ID        figure.ID
	Threshold *Threshold
	Held      working.Num // kg that counts
	Ratio     working.Num
	Left      working.Num
	Headroom  working.Num // runs of each route that bring in as much as is left to it, rounded down; none of a sum
	Verdict   figure.Verdict
}

// headroom is how often one run of every route could be brought in beside the stock:
//
//	N = floor(max(0, x T - stock)/run)
func headroom(t *Threshold, whole float64, stock, run working.Num) working.Num {
	var w *working.Sheet
	if run.V == 0 {
		return working.Absent("N", "1", working.Lacks("taking_route", ""))
	}
	to := working.Exact("T", "kg", whole*t.Limit, t.Document)
	return w.Line("N", "1", "floor(max(0,T-s)/m)", math.Floor(math.Max(0, to.V-stock.V)/run.V), to, stock.As("s"),
		run.As("m"))
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
	var all []portion
	st := cases[0].Store
	if h.Site != nil {
		st = ofTheSite(h.Site, st)
		all = kept(st, h.Site)
	}
	for i := range rows {
		h.Routes = append(h.Routes, cases[i].Route)
		all = append(all, rows[i].portions...)
	}
	h.Substances = gather(all, h.Site, h.Limits, st)
	h.Sums = h.sums(jurisdictionOf(h.Site), wholeOf(h.Limits))
	h.Hood = hood(h.Site, rows, sameDay)
	return h, nil
}

// ofTheSite is the store as the site changes it, without what a route says.
func ofTheSite(s *route.Site, otherwise *chemicals.Store) *chemicals.Store {
	st, _, err := chemicals.Base().Override(s.Data)
	if err != nil {
		return otherwise
	}
	return st
}

// read is what is kept of one assessment.
type read struct {
	portions []portion
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
	return read{taken(i, &c, &a, figs), loadOf(i, &c, figs)}, nil
}

// gather sorts portions by substance and adds them up; the store is that by which the
// bottles of the site are weighed.
func gather(all []portion, site *route.Site, limits *limit.Set, st *chemicals.Store) []Holding {
	at := map[string]int{}
	var out []Holding
	for _, p := range all {
		key := p.key()
		if p.unheld {
			key = p.name // two names can come to one slug
		}
		i, ok := at[key]
		if !ok {
			i = len(out)
			at[key] = i
			out = append(out, Holding{CAS: p.cas, Name: p.name, Formula: p.formula, State: p.state, slug: p.slug,
				unheld: p.unheld})
		}
		out[i].portions = append(out[i].portions, p)
	}
	slices.SortFunc(out, func(a, b Holding) int {
		if (a.CAS == "") != (b.CAS == "") {
			return strings.Compare(b.CAS, a.CAS)
		}
		return strings.Compare(a.key(), b.key())
	})
	for i := range out {
		out[i].add(site)
		out[i].hold(site, limits)
		out[i].bottles(site, st)
	}
	return out
}

func (h *Holding) add(site *route.Site) {
	for lo := 0; lo < len(h.portions); {
		hi := lo
		for hi < len(h.portions) && h.portions[hi].by == h.portions[lo].by {
			hi++
		}
		m := sumOf(h.portions[lo:hi])
		if by := h.portions[lo].by; by == ofSite {
			h.Stock = m
		} else {
			h.Takes = append(h.Takes, Take{by, m})
		}
		lo = hi
	}
	if len(h.portions) == 0 || h.portions[0].by != ofSite {
		none := h.notStated(site)
		h.Stock = Mass{none, none}
	}
	h.Largest, h.Sum = largest(h.Takes), total(h.Takes)
	h.Runs = over("N", h.Stock.Mid, h.Largest.Mid)
	h.strongest()
}

// notStated is a stock nobody wrote down. A site that lists other substances
// and not this one may still have it.
func (h *Holding) notStated(site *route.Site) working.Num {
	if site == nil {
		return working.Absent("m", "kg", working.Lacks("site_with_stock", ""))
	}
	return working.Absent("m", "kg", working.Lacks("stock_of", h.Name))
}

func sumOf(ps []portion) Mass {
	mid, top := make([]working.Num, len(ps)), make([]working.Num, len(ps))
	for i := range ps {
		mid[i], top[i] = ps[i].mid.pure, ps[i].top.pure
	}
	return Mass{plus(mid), plus(top)}
}

func plus(terms []working.Num) working.Num {
	var w *working.Sheet
	if len(terms) == 0 {
		return working.Exact("m", "kg", 0, "none")
	}
	return w.Sum("m", "kg", terms...)
}

// largest is the largest run; unknown where one is.
func largest(takes []Take) Take {
	out := Take{Route: ofSite, Mass: Mass{plus(nil), plus(nil)}}
	for i, t := range takes {
		if i == 0 || !out.Mid.Unknown() && (t.Mid.Unknown() || t.Mid.V > out.Mid.V) {
			out = t
		}
	}
	return out
}

func total(takes []Take) Take {
	mid, top := make([]working.Num, len(takes)), make([]working.Num, len(takes))
	for i, t := range takes {
		mid[i], top[i] = t.Mid, t.Top
	}
	return Take{ofSite, Mass{plus(mid), plus(top)}}
}

func over(symbol string, a, b working.Num) working.Num {
	var w *working.Sheet
	if b.V == 0 {
		return working.Absent(symbol, "1", working.Lacks("taking_route", ""))
	}
	return w.Line(symbol, "1", "a/b", a.V/b.V, a.As("a"), b.As("b"))
}

func (h *Holding) strongest() {
	for i := range h.portions {
		f := h.portions[i].top.fraction
		if i == 0 || !h.Strongest.Unknown() && (f.Unknown() || f.V > h.Strongest.V) {
			h.Strongest = f
		}
	}
}

// hold holds what is on the site against every threshold that counts there and
// against the limits of the site on what is held.
func (h *Holding) hold(site *route.Site, limits *limit.Set) {
	where, whole := jurisdictionOf(site), 1.0
	var local []Threshold
	for i := range limits.Limits {
		switch l := &limits.Limits[i]; {
		case l.Agent != "" && l.Agent != h.slug:
		case l.Quantity == "stock.share":
			whole = min(whole, l.Value)
		case l.Quantity == "stock.mass":
			local = append(local, ofSiteRules(l, h))
		}
	}
	for _, table := range [][]Threshold{Thresholds(), local} {
		for i := range table {
			if t := &table[i]; t.CAS == h.CAS && t.Holds(where) {
				h.Shares = append(h.Shares, h.shareOf(t, h.portions, whole))
			}
		}
	}
	h.byClass(where, whole)
}

// wholeOf is the share of a threshold that a site's limits let all substances reach.
func wholeOf(limits *limit.Set) float64 {
	whole := 1.0
	for i := range limits.Limits {
		if l := &limits.Limits[i]; l.Agent == "" && l.Quantity == "stock.share" {
			whole = min(whole, l.Value)
		}
	}
	return whole
}

// ofSiteRules is a limit of the site on the mass of a pure substance.
func ofSiteRules(l *limit.Limit, h *Holding) Threshold {
	t := Threshold{ID: l.ID, CAS: h.CAS, Substance: h.Name, Programme: l.Label, Tier: "stock.mass", Limit: l.Value,
		Counts:   countsPure,
		Document: l.Document, Section: l.Section, Edition: l.Edition, Status: l.Status}
	if l.Jurisdiction != "" {
		t.Jurisdictions = []string{l.Jurisdiction}
	}
	return t
}

// shareOf takes the larger of the stock and of one run of every route, of those portions
// that count; it is unknown while one of the two is. whole is the share that may be
// reached.
func (h *Holding) shareOf(t *Threshold, of []portion, whole float64) Share {
	stock, stockLeft := t.counted(of, true)
	runs, runsLeft := t.counted(of, false)
	if h.Stock.Top.Unknown() {
		stock, stockLeft = h.Stock.Top, h.Stock.Top
	}
	s := Share{ID: figure.ID{Quantity: "stock.share", Place: figure.At(h.key()), Agent: t.ID}, Threshold: t,
		Held: larger(stock, runs), Left: larger(stockLeft, runsLeft)}
	s.Ratio = over("x", s.Held, working.Exact("T", "kg", t.Limit, t.Document))
	s.Headroom = headroom(t, whole, stock, runs)
	s.judge(whole)
	return s
}

func larger(a, b working.Num) working.Num {
	var w *working.Sheet
	return w.Line("m", "kg", "max(a, b)", math.Max(a.V, b.V), a.As("a"), b.As("b"))
}

// counted adds up the portions of the site or of the routes that count, and
// those that are too weak to. A portion whose strength is not known counts as
// unknown where strength decides.
func (t *Threshold) counted(ps []portion, ofTheSite bool) (in, out working.Num) {
	var yes, no []working.Num
	for i := range ps {
		p := &ps[i]
		if (p.by == ofSite) != ofTheSite {
			continue
		}
		kg := p.top.pure
		if t.Counts == countsMixture {
			kg = p.top.whole
		}
		switch f := p.top.fraction; {
		case t.Least > 0 && f.Unknown():
			yes = append(yes, working.Absent("m", "kg", f.Missing()...))
		case t.Least > 0 && 100*f.V < t.Least*(1-1e-9):
			no = append(no, kg)
		default:
			yes = append(yes, kg)
		}
	}
	return plus(yes), plus(no)
}
