package scaling

import (
	"cmp"
	_ "embed"
	"math"
	"slices"
	"strings"
	"sync"

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
	group   string
	classes []string
}

// anyClass stands for every class there is.
const anyClass = "any"

var categories = sync.OnceValue(func() []category {
	return columns.Must("scaling/categories.csv", categoriesCSV, func(r columns.Row) category {
		return category{Threshold{ID: r.Named("id"), Substance: r.Named("counts_as"), Programme: r.Named("programme"),
			Tier: r.Named("tier"), Limit: r.Stated("threshold_kg"), Counts: countsMixture,
			Jurisdictions: strings.Fields(r.Text("jurisdiction")), Document: r.Named("document"), Section: r.Text("section"),
			Edition: r.Text("edition"), Status: r.Named("status"), Note: r.Text("note")}, r.Text("group"), r.List("classes")}
	})
})

// kind is what a portion is classified as: its classes by their keys, and whether the
// classes of the substance are held at all.
type kind struct {
	classes []string
	held    bool
}

// classified is a portion at its strength; one of unknown strength counts as undiluted.
func classified(p *portion) kind {
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
func (h *Holding) byClass(where string, whole float64) {
	kinds := make([]kind, len(h.portions))
	for i := range h.portions {
		kinds[i] = classified(&h.portions[i])
	}
	counted := map[[2]string]map[int]bool{} // by group and tier
	for j := range categories() {
		g := &categories()[j]
		own := slices.ContainsFunc(h.Shares, func(s Share) bool {
			return s.Threshold.Programme == g.Programme && s.Threshold.CAS == h.CAS && h.CAS != ""
		})
		at := [2]string{cmp.Or(g.group, g.ID), g.Tier}
		if counted[at] == nil {
			counted[at] = map[int]bool{}
		}
		if !g.Holds(where) {
			continue
		}
		var in []portion
		for i := range h.portions {
			if counted[at][i] || h.portions[i].sub == nil || !g.takes(&kinds[i]) { // no stock list has a powder
				continue
			}
			counted[at][i] = true
			if !own {
				in = append(in, h.portions[i])
			}
		}
		if len(in) > 0 {
			h.Shares = append(h.Shares, h.shareOf(&g.Threshold, in, whole))
		}
	}
}

// sums are the groups of categories that a site adds up, each portion over the quantity
// that it counts toward:
//
//	x = sum m/Q
//
// What nobody has classified counts over the least quantity of the group, the stricter
// reading, so that it can only be less.
func (h *Holdings) sums(where string, whole float64) []Share {
	var out []Share
	for _, tier := range []string{"lower tier", "upper tier"} {
		for _, group := range []string{"health", "physical", "environment"} {
			if s, there := h.sum(group, tier, where); there {
				s.judge(whole)
				out = append(out, s)
			}
		}
	}
	return out
}

func (h *Holdings) sum(group, tier, where string) (Share, bool) {
	t := &Threshold{ID: "seveso_sum_" + group + "_" + strings.Fields(tier)[0], Substance: "all of " + group +
		" hazard, each over its own quantity", Programme: "Seveso sum", Tier: tier, Limit: math.NaN(), Counts: countsMixture,
		Document: "Directive 2012/18/EU", Section: "Annex I, note 4", Edition: "2012, in force 1 June 2015", Status: "memory",
		Note: "what nobody has classified counts over the least quantity; of powder only what a run takes"}
	ofSites, ofRuns := adder{}, adder{}
	found := false
	for i := range h.Substances {
		s := &h.Substances[i]
		counts := false
		for j := range s.portions {
			q := quantityOf(s, &s.portions[j], group, tier, where)
			if q == 0 {
				continue
			}
			found, counts = true, true
			if s.portions[j].by == ofSite {
				ofSites.add(s.portions[j].top.whole, q)
			} else {
				ofRuns.add(s.portions[j].top.whole, q)
			}
		}
		if counts && s.Stock.Top.Unknown() && s.CAS != "" { // powder that a site keeps is in no stock list
			ofSites.add(s.Stock.Top, 1)
		}
	}
	if h.Site == nil {
		ofSites.add(working.Absent("m", "kg", working.Lacks("site_with_stock", "")), 1)
	}
	out := Share{ID: figure.ID{Quantity: "stock.share", Place: figure.Site, Agent: t.ID}, Threshold: t,
		Held: larger(plus(ofSites.kg), plus(ofRuns.kg)), Left: plus(nil)}
	var w *working.Sheet
	a, b := plus(ofSites.shares).As("a"), plus(ofRuns.shares).As("b")
	out.Ratio = w.Line("x", "1", "max(a, b)", math.Max(a.V, b.V), a, b)
	return out, found
}

// adder adds up masses and what they are of their quantities.
type adder struct{ kg, shares []working.Num }

func (a *adder) add(kg working.Num, quantity float64) {
	var w *working.Sheet
	q := working.Exact("Q", "kg", quantity, "of its category")
	a.kg = append(a.kg, kg)
	a.shares = append(a.shares, w.Line("x", "1", "m/Q", kg.V/quantity, kg.As("m"), q))
}

// quantityOf is what a portion counts toward in a group, kg; 0 where in none of it.
func quantityOf(h *Holding, p *portion, group, tier, where string) float64 {
	k, out := classified(p), math.Inf(1)
	for i := range categories() {
		g := &categories()[i]
		if g.group == group && g.Tier == tier && g.Holds(where) && (!k.held || g.takes(&k)) {
			out = min(out, g.Limit)
		}
	}
	for i := range h.Shares { // a quantity of its own in the same directive counts as well
		t := h.Shares[i].Threshold
		if group == "health" && t.CAS != "" && t.CAS == h.CAS && t.Tier == tier &&
			strings.HasPrefix(t.Programme, "Seveso H") &&
			!(100*p.top.fraction.V < t.Least) {
			out = min(out, t.Limit)
		}
	}
	if math.IsInf(out, 1) {
		return 0
	}
	return out
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
