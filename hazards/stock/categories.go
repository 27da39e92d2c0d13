package stock

import (
	"cmp"
	_ "embed"
	"math"
	"slices"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/classifying"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed categories.csv
var categoriesCSV string

// category is a quantity that counts by class of hazard.
type category struct {
	Threshold
	classes []string
	code    string // the fire code it is of; empty where it holds by law
}

// holds reports whether the category counts at a site: by its jurisdiction, and of a fire
// code where the site names that.
func (g *category) holds(site *route.Site) bool {
	if g.code != "" {
		return site != nil && site.FireCode != nil && site.FireCode.Table == g.code
	}
	return g.Holds(jurisdictionOf(site))
}

// at is the threshold at a site: of a fire code as many times its amount as the site says
// hold there; NaN where it says nothing.
func (g *category) at(site *route.Site) *Threshold {
	if g.code == "" {
		return &g.Threshold
	}
	t := g.Threshold
	t.Limit *= site.FireCode.Times // NaN stays NaN
	return &t
}

// FireCodeHeld reports whether the amounts of a fire code are held.
func FireCodeHeld(table string) bool {
	return slices.ContainsFunc(categories(), func(g category) bool { return g.code == table })
}

// codeShare is the kind of what is missing where a site names a fire code and not how much
// of it holds.
const codeShare = "fire_code_share"

// amount is the quantity of a threshold in kg, unknown where the site does not say how much
// of it holds.
func amount(symbol string, kg float64, by string) working.Num {
	if math.IsNaN(kg) {
		return working.Absent(symbol, "kg", working.Lacks(codeShare, ""))
	}
	return working.Exact(symbol, "kg", kg, by)
}

// anyClass stands for every class there is.
const anyClass = "any"

var categories = sync.OnceValue(func() []category {
	return columns.Must("hazards/stock/categories.csv", categoriesCSV, func(r columns.Row) category {
		return category{Threshold{ID: r.Named("id"), Substance: r.Named("counts_as"), Programme: r.Named("programme"),
			Tier: r.Named("tier"), Limit: r.Stated("threshold_kg"), Counts: countsMixture,
			Jurisdictions: strings.Fields(r.Text("jurisdiction")), Document: r.Named("document"), Section: r.Text("section"),
			Edition: r.Text("edition"), Status: r.Named("status"), Note: r.Text("note"), Group: r.Text("group")},
			r.List("classes"), r.Text("code")}
	})
})

// kind is what a portion is classified as: its classes by their keys, and whether the
// classes of the substance are held at all.
type kind struct {
	classes []string
	held    bool
}

// classified is a portion at its strength; one of unknown strength counts as undiluted.
func classified(p *Portion) kind {
	if !classifying.Held(p.sub) {
		return kind{}
	}
	c := classifying.Mixture([]classifying.Part{{Sub: p.sub, Share: 100 * p.top.fraction.V}})
	out := kind{held: true}
	for i := range c.Classes {
		out.classes = append(out.classes, c.Classes[i].Class.Key)
	}
	return out
}

// kinds remembers what portions of a strength are: thousands of routes take the same
// bottles.
type kinds map[strength]kind

// strength is a substance at a share of its solution, by its bits, so that one nobody
// knows is like itself.
type strength struct {
	of    *chemicals.Substance
	share uint64
}

// of is classified, worked out once.
func (k kinds) of(p *Portion) kind {
	at := strength{p.sub, math.Float64bits(p.top.fraction.V)}
	out, there := k[at]
	if !there {
		out = classified(p)
		k[at] = out
	}
	return out
}

// takes reports whether a category takes a portion. What nobody has classified it takes
// only where it takes any class.
func (g *category) takes(k *kind) bool {
	if slices.Contains(g.classes, anyClass) {
		return !k.held || len(k.classes) > 0
	}
	return slices.ContainsFunc(g.classes, func(c string) bool { return slices.Contains(k.classes, c) })
}

// byClass holds a substance against the categories that take any of it. A portion counts in
// one category of a group, that of the least quantity, and in none of which the substance has
// a quantity of its own.
func (h *Holding) byClass(site *route.Site, whole float64) {
	known, kinds := kinds{}, make([]kind, len(h.portions))
	for i := range h.portions {
		kinds[i] = known.of(&h.portions[i])
	}
	counted := map[[2]string]map[int]bool{} // by group and tier
	for j := range categories() {
		g := &categories()[j]
		own := slices.ContainsFunc(h.Shares, func(s Share) bool {
			return s.Threshold.Programme == g.Programme && s.Threshold.CAS == h.CAS && h.CAS != ""
		})
		at := [2]string{cmp.Or(g.Group, g.ID), g.Tier}
		if counted[at] == nil {
			counted[at] = map[int]bool{}
		}
		if !g.holds(site) {
			continue
		}
		var in []Portion
		for i := range h.portions {
			if counted[at][i] || h.portions[i].sub == nil || !g.takes(&kinds[i]) { // no stock list has a powder
				continue
			}
			counted[at][i] = true
			if !own && h.named(&g.Threshold, h.portions[i].top.fraction.V) == nil {
				in = append(in, h.portions[i])
			}
		}
		if len(in) > 0 {
			h.Shares = append(h.Shares, h.shareOf(g.at(site), in, whole))
		}
	}
}

// named is the threshold that counts a share of a substance in place of those of a class, nil
// where the document of the class names no such.
func (h *Holding) named(of *Threshold, share float64) *Threshold {
	for i := range h.Shares {
		if t := h.Shares[i].Threshold; t.names(h.CAS, of, share) {
			return t
		}
	}
	return nil
}

// Sums are the groups of categories that a site adds up, each portion over the quantity
// that it counts toward:
//
//	x = sum m/Q
//
// What nobody has classified counts over the least quantity of the group, the stricter
// reading, so that it can only be less.
func Sums(of []Holding, site *route.Site, limits *limit.Set) []Share {
	var out []Share
	whole, known := MayReach(limits, ""), kinds{}
	for i := range sums() {
		if s, there := sumOver(of, known, site, &sums()[i]); there {
			s.judge(whole)
			out = append(out, s)
		}
	}
	return out
}

func sumOver(of []Holding, known kinds, site *route.Site, t *sum) (Share, bool) {
	kg, ratio, found := added(of, known, site, t, atTop)
	out := Share{ID: figure.ID{Quantity: "stock.share", Place: figure.Site, Agent: t.ID}, Threshold: &t.Threshold,
		Held: kg, Left: Plus(nil), Ratio: ratio, Headroom: working.Absent("N", "1", working.Lacks(noRoute, ""))}
	_, out.Best, _ = added(of, known, site, t, atMid)
	_, out.Least, _ = added(of, known, site, t, atLow)
	return out, found
}

//go:embed sums.csv
var sumsCSV string

// sum is the threshold of a group of which a programme adds up all shares: 1 of them.
type sum struct{ Threshold }

var sums = sync.OnceValue(func() []sum {
	return columns.Must("hazards/stock/sums.csv", sumsCSV, func(r columns.Row) sum {
		return sum{Threshold{ID: r.Named("id"), Substance: r.Named("counts_as"), Programme: r.Named("programme"),
			Tier: r.Named("tier"), Limit: math.NaN(), Counts: countsMixture, Document: r.Named("document"),
			Section: r.Text("section"), Edition: r.Text("edition"), Status: r.Named("status"), Note: r.Text("note"),
			Group: r.Named("group")}}
	})
})

// added is all that counts in a group, kg, what it is of its quantities, and whether
// anything does.
func added(of []Holding, known kinds, site *route.Site, t *sum,
	pick func(*Portion) weighed) (kg, ratio working.Num, found bool) {
	ofSites, ofRuns := adder{}, adder{}
	for i := range of {
		s := &of[i]
		if s.unheld { // no list says what it counts toward
			found = true
			ofSites.add(working.Absent("m", "kg", working.Lacks("on_a_list", s.Name)), 1)
			continue
		}
		counts := false
		for j := range s.portions {
			q := quantityOf(s, &s.portions[j], known, t.Group, t.Tier, site)
			if q == 0 {
				continue
			}
			found, counts = true, true
			if s.portions[j].by == ofSite {
				ofSites.add(pick(&s.portions[j]).whole, q)
			} else {
				ofRuns.add(pick(&s.portions[j]).whole, q)
			}
		}
		if counts && s.Stock.Top.Unknown() && s.CAS != "" { // powder that a site keeps is in no stock list
			ofSites.add(s.Stock.Top, 1)
		}
	}
	if site == nil {
		ofSites.add(working.Absent("m", "kg", working.Lacks("site_with_stock", "")), 1)
	}
	var w *working.Sheet
	a, b := Plus(ofSites.shares).As("a"), Plus(ofRuns.shares).As("b")
	return larger(Plus(ofSites.kg), Plus(ofRuns.kg)), w.Line("x", "1", "max(a, b)", math.Max(a.V, b.V), a, b), found
}

// adder adds up masses and what they are of their quantities.
type adder struct{ kg, shares []working.Num }

func (a *adder) add(kg working.Num, kgOf float64) {
	var w *working.Sheet
	q := working.Exact("Q", "kg", kgOf, "of its category")
	if math.IsNaN(kgOf) {
		q = amount("Q", kgOf, "")
	}
	a.kg = append(a.kg, kg)
	a.shares = append(a.shares, w.Line("x", "1", "m/Q", kg.V/q.V, kg.As("m"), q))
}

// quantityOf is what a portion counts toward in a group, kg; 0 where in none of it.
func quantityOf(h *Holding, p *Portion, known kinds, group, tier string, site *route.Site) float64 {
	k, out := known.of(p), math.Inf(1)
	for i := range categories() {
		g := &categories()[i]
		if g.Group != group || g.Tier != tier || !g.holds(site) || k.held && !g.takes(&k) {
			continue
		}
		if t := h.named(&g.Threshold, p.top.fraction.V); t != nil {
			out = min(out, t.Limit)
			continue
		}
		out = min(out, g.at(site).Limit)
	}
	for i := range h.Shares { // a quantity of its own in the same directive counts as well
		t := h.Shares[i].Threshold
		if t.Group == group && t.CAS != "" && t.CAS == h.CAS && t.Tier == tier && !(100*p.top.fraction.V < t.Least) {
			out = min(out, t.Limit)
		}
	}
	if math.IsInf(out, 1) {
		return 0
	}
	return out
}

// MayReach is the share of a threshold that a site lets a substance reach, all of them
// where none is named: 1 unless its limits say less.
func MayReach(limits *limit.Set, slug string) float64 {
	whole := 1.0
	for i := range limits.Limits {
		if l := &limits.Limits[i]; l.Quantity == "stock.share" && (l.Agent == "" || l.Agent == slug) {
			whole = min(whole, l.Value)
		}
	}
	return whole
}

// judge gives a share its verdict. What a programme asks of a release is no limit of what is
// held: it never exceeds.
func (s *Share) judge(whole float64) {
	level, _ := (&limit.Limit{Value: whole, Unit: "1"}).Compare(s.Ratio.V, false)
	s.Verdict = [...]figure.Verdict{figure.Within, figure.Near, figure.UnknownVerdict, figure.Exceeds}[level]
	if s.Threshold.Release() && s.Verdict == figure.Exceeds {
		s.Verdict = figure.Near
	}
}

// jurisdictionOf is that of a site; empty where none is stated.
func jurisdictionOf(site *route.Site) string {
	if site == nil {
		return ""
	}
	return site.Jurisdiction
}
