package holdings

import (
	"io"

	"etchbound/chemicals/working"
	"etchbound/hazards/stock"
	"etchbound/reports/draft"
	"etchbound/reports/record"
	"etchbound/scaling"
)

// Format names the shape of the JSON of holdings. Ids and keys are only
// added within it.
const Format = "etchbound.stock/2"

type Shape struct {
	record.Opening
	SiteDigest   string          `json:"site_digest"`
	Jurisdiction string          `json:"jurisdiction"`
	SameDay      bool            `json:"same_day"`
	Assumes      string          `json:"assumes"`
	Routes       []stockRoute    `json:"routes"`
	Substances   []substanceJSON `json:"substances"`
	Sums         []shareJSON     `json:"sums"`
	AsHF         *asHFJSON       `json:"hf_equivalent"` // null where there is no fluoride
	Mixed        []mixedJSON     `json:"mixed"`
	Hood         hoodJSON        `json:"hood"`
}

type mixedJSON struct {
	Container string `json:"container"`
	Pair      string `json:"pair"`
	Result    string `json:"result"`
	Verdict   string `json:"verdict"`
	One       []int  `json:"one"`
	Other     []int  `json:"other"`
	Source    string `json:"source"`
	Status    string `json:"status"`
}

type stockRoute struct {
	Number   int        `json:"number"`
	Name     string     `json:"name"`
	Title    string     `json:"title"`
	Digest   string     `json:"digest"`
	Hydrogen numberJSON `json:"hydrogen_peak"`
	Dilution numberJSON `json:"dilution_air"`
	Exhaust  numberJSON `json:"exhaust_required"`
}

type numberJSON struct {
	Value   record.Nine          `json:"value"`
	High    record.Nine          `json:"high"`
	Unit    string               `json:"unit"`
	Status  string               `json:"status"`
	Missing []record.MissingJSON `json:"missing"`
}

type substanceJSON struct {
	ID        string       `json:"id"`
	CAS       string       `json:"cas"`
	Name      string       `json:"name"`
	Formula   string       `json:"formula"`
	State     string       `json:"state"`
	Sum       numberJSON   `json:"sum"`
	Largest   numberJSON   `json:"largest_run"`
	Stock     numberJSON   `json:"stock"`
	Runs      numberJSON   `json:"runs"`
	Strongest numberJSON   `json:"strongest"`
	Takes     []takeJSON   `json:"takes"`
	Shares    []shareJSON  `json:"shares"`
	Bottles   []bottleJSON `json:"bottles"`
}

type bottleJSON struct {
	Whole    numberJSON `json:"held"`
	Strength numberJSON `json:"strength"`
	Each     numberJSON `json:"largest"`
	Count    numberJSON `json:"count"`
	Classes  []string   `json:"classes"`
	Groups   []string   `json:"groups"`
}

type takeJSON struct {
	Route int        `json:"route"`
	Mass  numberJSON `json:"mass"`
}

type shareJSON struct {
	ID        string        `json:"id"`
	Held      numberJSON    `json:"held"`
	Left      numberJSON    `json:"left_out"`
	Share     numberJSON    `json:"share"`
	Headroom  *numberJSON   `json:"headroom"` // null of a sum
	Verdict   string        `json:"verdict"`
	Threshold thresholdJSON `json:"threshold"`
}

type thresholdJSON struct {
	ID        string      `json:"id"`
	Substance string      `json:"substance"`
	Programme string      `json:"programme"`
	Tier      string      `json:"tier"`
	Value     record.Nine `json:"value"`
	Unit      string      `json:"unit"`
	Least     record.Nine `json:"least_strength_wt"`
	Counts    string      `json:"counts"`
	Document  string      `json:"document"`
	Section   string      `json:"section"`
	Edition   string      `json:"edition"`
	Status    string      `json:"status"`
	Note      string      `json:"note"`
}

type asHFJSON struct {
	Runs  numberJSON `json:"runs"`
	Stock numberJSON `json:"stock"`
}

type hoodJSON struct {
	Hydrogen      numberJSON `json:"hydrogen_peak"`
	Dilution      numberJSON `json:"dilution_air"`
	Exhaust       numberJSON `json:"exhaust_required"`
	Flow          numberJSON `json:"flow"`
	DilutionShare numberJSON `json:"dilution_share"`
	ExhaustShare  numberJSON `json:"exhaust_share"`
}

// JSON writes holdings for programs: every key present, nine significant
// digits, null for what is unknown.
func JSON(w io.Writer, h *scaling.Holdings, o draft.Options) error {
	return record.Write(w, newStockJSON(h, o))
}

func newStockJSON(h *scaling.Holdings, o draft.Options) Shape {
	out := Shape{Opening: record.OpeningOf(Format, o, controlOf(h, o)),
		SameDay: h.SameDay, Assumes: assumes(h), Routes: []stockRoute{}, Substances: []substanceJSON{}, Sums: []shareJSON{},
		Mixed: []mixedJSON{}}
	if h.Site != nil {
		out.SiteDigest, out.Jurisdiction = h.Site.Digest, h.Site.Jurisdiction
	}
	for i, r := range h.Routes {
		l := &h.Hood.Routes[i]
		out.Routes = append(out.Routes, stockRoute{i + 1, r.Name, r.Title, r.Digest, one(l.Hydrogen), one(l.Dilution),
			one(l.Exhaust)})
	}
	for i := range h.Substances {
		out.Substances = append(out.Substances, substanceOf(&h.Substances[i]))
	}
	for i := range h.Sums {
		out.Sums = append(out.Sums, shareOf(&h.Sums[i]))
	}
	for _, m := range worstFirst(h.Mixed) {
		out.Mixed = append(out.Mixed, mixedJSON{m.Container, m.ID, m.Result, mixedVerdict(&m).String(), fromOne(m.One),
			fromOne(m.Other), m.Source, m.Status})
	}
	if x, there := h.AsHF(); there {
		out.AsHF = &asHFJSON{both(x.Runs), both(x.Stock)}
	}
	l := &h.Hood
	out.Hood = hoodJSON{one(l.Hydrogen), one(l.Dilution), one(l.Exhaust), one(l.Flow), one(l.DilutionShare),
		one(l.ExhaustShare)}
	return out
}

// fromOne are routes by their numbers.
func fromOne(routes []int) []int {
	var out []int
	for _, r := range routes {
		out = append(out, r+1)
	}
	return out
}

func substanceOf(s *stock.Holding) substanceJSON {
	out := substanceJSON{ID: s.ID().String(), CAS: s.CAS, Name: s.Name, Formula: s.Formula, State: s.State,
		Sum: both(s.Sum.Mass), Largest: both(s.Largest.Mass),
		Stock: both(s.Stock), Runs: one(s.Runs), Strongest: one(s.Strongest), Takes: []takeJSON{}, Shares: []shareJSON{},
		Bottles: []bottleJSON{}}
	for _, t := range s.Takes {
		out.Takes = append(out.Takes, takeJSON{t.Route + 1, both(t.Mass)})
	}
	for j := range s.Shares {
		out.Shares = append(out.Shares, shareOf(&s.Shares[j]))
	}
	for j := range s.Bottles {
		out.Bottles = append(out.Bottles, bottleOf(&s.Bottles[j]))
	}
	return out
}

func shareOf(x *stock.Share) shareJSON {
	t := x.Threshold
	var runs *numberJSON
	if !x.Headroom.None() {
		n := one(x.Headroom)
		runs = &n
	}
	return shareJSON{x.ID.String(), one(x.Held), one(x.Left), one(x.Ratio), runs, x.Verdict.String(),
		thresholdJSON{t.ID, t.Substance, t.Programme, t.Tier, record.Nine(t.Limit), "kg", record.Nine(t.Least), t.Counts,
			t.Document, t.Section, t.Edition, t.Status, t.Note}}
}

func bottleOf(x *stock.Bottle) bottleJSON {
	return bottleJSON{one(x.Whole), one(x.Strength), one(x.Each), one(x.Count), append([]string{}, x.Classes...),
		append([]string{}, x.Groups...)}
}

// one is a number that is its own upper end.
func one(n working.Num) numberJSON { return both(stock.Mass{Mid: n, Top: n}) }

func both(m stock.Mass) numberJSON {
	return numberJSON{record.Nine(m.Mid.V), record.Nine(m.Top.V), m.Mid.Unit, m.Mid.Status.String(),
		record.MissingJSONs(m.Mid.Missing())}
}
