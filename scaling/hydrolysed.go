package scaling

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/limit"
)

// Hydrolysed is the acid that water makes of gases of a route that can stay where they form,
// such as the chloride of the layer element in a melt that has set: at most, all of them.
type Hydrolysed struct {
	Gases []string    // what they are called, each once
	Acid  string      // slug of the acid
	N     working.Num // mol of it
	Mass  working.Num // g of it
	Lime  working.Num // g of calcium hydroxide that binds it
}

// HydrolysedOf is what water makes of the gases of a review, an acid at a time.
//
//	n = sum N x x,  x acid that one of the gas makes;  m_lime = n M(Ca(OH)2)/2
func HydrolysedOf(r *hazards.Review) []Hydrolysed {
	most := map[*chemicals.Substance]working.Num{}
	var gases []*chemicals.Substance
	for i := range r.Walk.Evolved {
		x := &r.Walk.Evolved[i]
		if x.Gas == nil {
			continue
		}
		old, there := most[x.Gas]
		if !there {
			gases = append(gases, x.Gas)
		}
		if !there || x.N.Unknown() || x.N.V > old.V {
			most[x.Gas] = x.N
		}
	}
	var out []Hydrolysed
	for _, g := range gases {
		as, moles := limit.Makes(g.Slug)
		acid, held := chemicals.Library().Find(as)
		if !held || acid.Acid <= 0 {
			continue
		}
		h := of(&out, as)
		h.Gases = append(h.Gases, g.Name)
		n, x := most[g].As("N"), working.Exact("x", "mol/mol", moles, "acid that one of the gas makes")
		var w *working.Sheet
		n = w.Line("n", "mol", "N*x", n.V*x.V, n, x)
		if len(h.Gases) > 1 {
			h.N = w.Line("n", "mol", "a+b", h.N.V+n.V, h.N.As("a"), n.As("b"))
			continue
		}
		h.N = n
	}
	for i := range out {
		out[i].weigh(r)
	}
	return out
}

func of(all *[]Hydrolysed, acid string) *Hydrolysed {
	for i := range *all {
		if (*all)[i].Acid == acid {
			return &(*all)[i]
		}
	}
	*all = append(*all, Hydrolysed{Acid: acid})
	return &(*all)[len(*all)-1]
}

// weigh is the mass of the acid and of the lime that binds it.
func (h *Hydrolysed) weigh(r *hazards.Review) {
	var w *working.Sheet
	n := h.N.As("n")
	acid, _ := chemicals.Library().Find(h.Acid)
	lime, _ := chemicals.Library().Find("calcium_hydroxide")
	A, L := acid.Formula.MolarMass(r.Case.Store, nil).As("A"), lime.Formula.MolarMass(r.Case.Store, nil).As("L")
	h.Mass = w.Line("m", "g", "n*A", n.V*A.V, n, A)
	h.Lime = w.Line("m", "g", "n*L/2", n.V*L.V/2, n, L)
}
