package stock

import (
	"math"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Of is what the site of a case keeps and what one run of its route takes, by CAS number,
// then the powder, with the sums of all of them.
func Of(c *route.Case, k *process.Walk, figs *figure.Set) ([]Holding, []Share) {
	if c.Route == nil || c.Store == nil || c.Limits == nil {
		return nil, nil
	}
	all, st := Taken(0, c, k, figs), c.Store
	if c.Site != nil {
		st = OfTheSite(c.Site, st)
		all = append(Kept(st, c.Site), all...)
	}
	held := Gather(all, c.Site, c.Limits, st)
	return held, Sums(held, c.Site, c.Limits)
}

// Figures are the masses and the shares of what is held. Without a site nothing of it is
// known, and neither is the stock of a substance that the site file leaves out: that is
// said once, and not for every programme.
func Figures(c *route.Case, held []Holding, sums []Share) []figure.Figure {
	if c.Site == nil {
		return []figure.Figure{unknown(figure.Site, working.Lacks("site_with_stock", ""))}
	}
	var out []figure.Figure
	if len(c.Site.Stock) == 0 { // what it keeps beside what the route takes
		out = append(out, unknown(figure.Site, working.Lacks("site_with_stock", "")))
	}
	if x := c.Site.FireCode; x != nil && !FireCodeHeld(x.Table) {
		f := unknown(figure.Site, working.Lacks("fire_code_held", x.Table))
		f.Agent = "fire_code"
		out = append(out, f)
	}
	for i := range held {
		out = append(out, held[i].figures()...)
	}
	for i := range sums {
		out = append(out, sums[i].figure())
	}
	return out
}

func (h *Holding) figures() []figure.Figure {
	if h.CAS == "" && !h.unheld { // no list of stock has a powder
		return nil
	}
	var out []figure.Figure
	switch at := figure.At(h.key()); {
	case h.Stock.Top.Unknown() && (len(h.Shares) > 0 || h.unheld):
		out = append(out, unknown(at, h.Stock.Top.Missing()...))
	case h.Stock.Top.Unknown():
	default:
		for i := range h.Shares {
			out = append(out, h.Shares[i].figures()...)
		}
		if h.unheld {
			out = append(out, unknown(at, working.Lacks("on_a_list", h.Name)))
		}
	}
	if h.unheld { // how many batches are left to a quantity that may be one
		left := unknown(figure.At(h.key()), working.Lacks("on_a_list", h.Name))
		left.Quantity = "stock.batches"
		left.Value = left.Value.As("N")
		out = append(out, left)
	}
	mass := figure.Figure{ID: h.ID(), Value: h.Stock.Mid, Conditions: phrase.Of("stock.held")}
	mass.SetRange(h.Stock.Low.V, h.Stock.Top.V)
	return append(out, mass)
}

// unknown is a share that nobody can tell.
func unknown(at figure.Place, missing ...working.Missing) figure.Figure {
	f := figure.Figure{ID: figure.ID{Quantity: "stock.share", Place: at}, Value: working.Absent("x", "1", missing...),
		Conditions: phrase.Of("stock.held")}
	f.SetRange(math.NaN(), math.NaN())
	return f
}

func (s *Share) figures() []figure.Figure {
	out := []figure.Figure{s.figure()}
	none := slices.ContainsFunc(s.Headroom.Missing(), func(m working.Missing) bool { return m.Kind == noRoute })
	if !s.Threshold.Release() && !none {
		id := s.ID
		id.Quantity = "stock.batches"
		left := figure.Figure{ID: id, Value: s.Headroom, Conditions: phrase.Of("stock.held")}
		left.SetRange(s.Headroom.V, s.Headroom.V)
		out = append(out, left)
	}
	return out
}

func (s *Share) figure() figure.Figure {
	f := figure.Figure{ID: s.ID, Value: s.Best, Conditions: phrase.Of("stock.held")}
	f.SetRange(s.Least.V, s.Ratio.V)
	return f
}
