package stock

import (
	"math"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
)

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
	portions                  []Portion
	slug                      string
	unheld                    bool
}

// ID is the id of the mass of the substance.
func (h *Holding) ID() figure.ID { return figure.ID{Quantity: "stock.mass", Place: figure.At(h.key())} }

func (h *Holding) key() string {
	return substance{cas: h.CAS, slug: h.slug, formula: h.Formula, unheld: h.unheld}.key()
}

// Mass is a mass in kg on its central values and at the lower and the upper ends.
type Mass struct{ Low, Mid, Top working.Num }

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
	Best      working.Num // the ratio on the central values
	Least     working.Num // the ratio at the lower ends
	Left      working.Num
	Headroom  working.Num // runs of each route that bring in as much as is left to it, rounded down; none of a sum
	Verdict   figure.Verdict
}

// noRoute is the kind of what is missing where no route takes a substance.
const noRoute = "taking_route"

// headroom is how often one run of every route could be brought in beside the stock:
//
//	N = floor(max(0, x T - stock)/run)
func headroom(t *Threshold, whole float64, stock, run working.Num) working.Num {
	var w *working.Sheet
	if run.V == 0 {
		return working.Absent("N", "1", working.Lacks(noRoute, ""))
	}
	to := amount("T", whole*t.Limit, t.Document)
	return w.Line("N", "1", "floor(max(0,T-s)/m)", math.Floor(math.Max(0, to.V-stock.V)/run.V), to, stock.As("s"),
		run.As("m"))
}

// Gather sorts portions by substance and adds them up; the store is that by which the
// bottles of the site are weighed.
func Gather(all []Portion, site *route.Site, limits *limit.Set, st *chemicals.Store) []Holding {
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
		h.Stock = Mass{none, none, none}
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

func sumOf(ps []Portion) Mass {
	low, mid, top := make([]working.Num, len(ps)), make([]working.Num, len(ps)), make([]working.Num, len(ps))
	for i := range ps {
		low[i], mid[i], top[i] = ps[i].low.pure, ps[i].mid.pure, ps[i].top.pure
	}
	return Mass{Plus(low), Plus(mid), Plus(top)}
}

// Plus is the sum of masses, kg; none is 0.
func Plus(terms []working.Num) working.Num {
	var w *working.Sheet
	if len(terms) == 0 {
		return working.Exact("m", "kg", 0, "none")
	}
	return w.Sum("m", "kg", terms...)
}

// largest is the largest run; unknown where one is.
func largest(takes []Take) Take {
	out := Take{Route: ofSite, Mass: Mass{Plus(nil), Plus(nil), Plus(nil)}}
	for i, t := range takes {
		if i == 0 || !out.Mid.Unknown() && (t.Mid.Unknown() || t.Mid.V > out.Mid.V) {
			out = t
		}
	}
	return out
}

func total(takes []Take) Take {
	low, mid, top := make([]working.Num, len(takes)), make([]working.Num, len(takes)), make([]working.Num, len(takes))
	for i, t := range takes {
		low[i], mid[i], top[i] = t.Low, t.Mid, t.Top
	}
	return Take{ofSite, Mass{Plus(low), Plus(mid), Plus(top)}}
}

func over(symbol string, a, b working.Num) working.Num {
	var w *working.Sheet
	if b.V == 0 {
		return working.Absent(symbol, "1", working.Lacks(noRoute, ""))
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
	where, whole := jurisdictionOf(site), MayReach(limits, h.slug)
	var local []Threshold
	for i := range limits.Limits {
		if l := &limits.Limits[i]; l.Quantity == "stock.mass" && (l.Agent == "" || l.Agent == h.slug) {
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
	h.byClass(site, whole)
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
func (h *Holding) shareOf(t *Threshold, of []Portion, whole float64) Share {
	s := Share{ID: figure.ID{Quantity: "stock.share", Place: figure.At(h.key()), Agent: t.ID}, Threshold: t}
	if t.Release() {
		s.ID.Quantity = "stock.release"
	}
	held := func(pick func(*Portion) weighed) (stock, runs, left working.Num) {
		stock, a := t.counted(of, true, pick)
		runs, b := t.counted(of, false, pick)
		if h.Stock.Top.Unknown() {
			stock, a = h.Stock.Top, h.Stock.Top
		}
		return stock, runs, larger(a, b)
	}
	ratio := func(pick func(*Portion) weighed) working.Num {
		stock, runs, _ := held(pick)
		return over("x", larger(stock, runs), amount("T", t.Limit, t.Document))
	}
	stock, runs, left := held(atTop)
	s.Held, s.Left = larger(stock, runs), left
	s.Ratio, s.Best, s.Least = ratio(atTop), ratio(atMid), ratio(atLow)
	s.Headroom = headroom(t, whole, stock, runs)
	s.judge(whole)
	return s
}

func atTop(p *Portion) weighed { return p.top }
func atMid(p *Portion) weighed { return p.mid }
func atLow(p *Portion) weighed { return p.low }

func larger(a, b working.Num) working.Num {
	var w *working.Sheet
	return w.Line("m", "kg", "max(a, b)", math.Max(a.V, b.V), a.As("a"), b.As("b"))
}

// counted adds up the portions of the site or of the routes that count, and those that
// are too weak to, by the strength at its upper end. A portion whose strength is not
// known counts as unknown where strength decides.
func (t *Threshold) counted(ps []Portion, ofTheSite bool, pick func(*Portion) weighed) (in, out working.Num) {
	var yes, no []working.Num
	for i := range ps {
		p := &ps[i]
		if (p.by == ofSite) != ofTheSite {
			continue
		}
		x := pick(p)
		kg := x.pure
		if t.Counts == countsMixture {
			kg = x.whole
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
	return Plus(yes), Plus(no)
}

// OfTheSite is the store as the data of a site change it, without what a route says; the
// store otherwise where they cannot, which the loader has refused before.
func OfTheSite(s *route.Site, otherwise *chemicals.Store) *chemicals.Store {
	st, _, err := chemicals.Base().Override(s.Data)
	if err != nil {
		return otherwise
	}
	return st
}
