package scaling

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/stock"
)

// AsHF is all fluoride of the routes and of the site counted as hydrogen fluoride,
// kg: what the salts can give once they meet an acid. No threshold counts salts so.
type AsHF struct {
	Runs  stock.Mass // one run of every route
	Stock stock.Mass // of the site; unknown where the stock of one that the routes take is
}

// AsHF adds up the fluoride of all substances; false where none holds any.
//
//	m_HF = sum m x M(HF)/M,  x fluorine in a formula unit
func (h *Holdings) AsHF() (AsHF, bool) {
	st := chemicals.Base()
	at, _ := chemicals.ElementIndex("F")
	hf, err := chemicals.ParseFormula("HF")
	if err != nil {
		return AsHF{}, false
	}
	acid := hf.MolarMass(st, nil).As("M_HF")
	var runs, kept [3][]working.Num
	for i := range h.Substances {
		s := &h.Substances[i]
		f, err := chemicals.ParseFormula(s.Formula)
		if err != nil || f.Of[at] == 0 {
			continue
		}
		M, x := f.MolarMass(st, nil).As("M"), working.Exact("x", "1", f.Of[at], "fluorine in a formula unit of "+s.Name)
		as := func(m working.Num) working.Num {
			var w *working.Sheet
			m = m.As("m")
			return w.Line("m_HF", "kg", "m*x*M_HF/M", m.V*x.V*acid.V/M.V, m, x, acid, M)
		}
		for j, m := range [...]working.Num{s.Sum.Low, s.Sum.Mid, s.Sum.Top} {
			runs[j] = append(runs[j], as(m))
		}
		for j, m := range [...]working.Num{s.Stock.Low, s.Stock.Mid, s.Stock.Top} {
			kept[j] = append(kept[j], as(m))
		}
	}
	if len(runs[0]) == 0 {
		return AsHF{}, false
	}
	return AsHF{massOf(runs), massOf(kept)}, true
}

func massOf(of [3][]working.Num) stock.Mass {
	return stock.Mass{Low: stock.Plus(of[0]), Mid: stock.Plus(of[1]), Top: stock.Plus(of[2])}
}
