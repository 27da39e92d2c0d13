package treating

import (
	"cmp"
	"slices"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/neutralising"
	"etchbound/hazards/waste"
)

// brings is what one mol of an agent does, mol.
type brings struct {
	base, binds, carbon, boron float64
	calcium                    bool
}

func bringsOf(s *chemicals.Substance) brings {
	x := neutralising.Of(s)
	b := brings{base: max(x.Base, 0), binds: x.Binds(), carbon: x.Carbon, calcium: x.Calcium > 0}
	if x.Base == 0 && s.Kind == "acid" {
		b.boron = s.Count("B")
	}
	return b
}

func (b brings) any() bool { return b.base > 0 || b.binds > 0 || b.boron > 0 }

// agents are all substances that do anything to an acid fluoride liquor and that can be
// had: no ion by itself, nothing that brings fluoride, no anhydrous salt beside its hydrate,
// and none of what is put between layers and burns or poisons without a carbon in it.
var agents = sync.OnceValue(func() []*chemicals.Substance {
	var out []*chemicals.Substance
	for _, s := range chemicals.Library().All() {
		switch {
		case s.NotHeld || s.State == "aq" || s.Count("F") > 0 || !bringsOf(s).any():
		case s.Kind == "intercalant" && s.Count("C") == 0:
		default:
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b *chemicals.Substance) int { return cmp.Compare(rank(a), rank(b)) })
	return out
})

// rank is the order in which agents stand: those offered for waste, then what binds and
// neutralises, then what neutralises, then what binds alone.
func rank(s *chemicals.Substance) int {
	x := bringsOf(s)
	switch {
	case s.WasteAgent > 0:
		return s.WasteAgent
	case x.base > 0 && x.binds > 0:
		return 100
	case x.base > 0:
		return 200
	}
	return 300
}

// beside is what binds fluoride beside a base that does not, and lime what ends what chalk
// began.
const (
	beside = "calcium_chloride_dihydrate"
	lime   = "calcium_hydroxide"
)

// byChalk is the share of the acid that a carbonate takes before hydroxide ends it.
const byChalk = 0.8

// over is the dose of what is not brought to a pH for what is needed.
const over = 1.1

// ways are the agents alone and in pairs, each with as much of it as a liquor needs.
func (b *bench) ways(l *Liquor) [][]waste.Dose {
	var single, pairs [][]waste.Dose
	find := func(slug string) *chemicals.Substance { s, _ := chemicals.Library().Find(slug); return s }
	for _, s := range agents() {
		x := bringsOf(s)
		d := waste.Dose{Sub: s}
		switch {
		case x.base > 0:
			d.Mol = l.Base / x.base
		case x.binds > 0:
			d.Mol = (l.Fluoride - l.Held) / x.binds
		default:
			d.Mol = l.Fluoride / 4 / x.boron
		}
		if d.Mol <= 0 {
			continue // no acid for a base, no fluoride for what binds
		}
		single = append(single, []waste.Dose{d})
		bound := d.Mol * x.binds
		switch c := find(beside); {
		case x.base > 0 && x.binds > 0 && x.carbon > 0: // it stops where carbon dioxide holds it
			if s := find(lime); s != nil {
				pairs = append(pairs, []waste.Dose{{Sub: d.Sub, Mol: d.Mol * byChalk},
					{Sub: s, Mol: l.Base * (1 - byChalk) / bringsOf(s).base}})
			}
		case x.base > 0 && c != nil && bound < (l.Fluoride-l.Held)*(1-1e-9) && common(s):
			pairs = append(pairs, []waste.Dose{d, {Sub: c, Mol: (l.Fluoride - l.Held - bound) / bringsOf(c).binds}})
			if s.WasteAgent > 0 && !b.usual {
				for _, o := range others() {
					pairs = append(pairs, []waste.Dose{d, {Sub: o, Mol: (l.Fluoride - l.Held - bound) / bringsOf(o).binds}})
				}
			}
		}
	}
	return append(single, pairs...)
}

// others are calcium salts that bind fluoride beside a base as the chloride does, with another
// anion each: of each anion the hydrate with most water.
var others = sync.OnceValue(func() []*chemicals.Substance {
	var out []*chemicals.Substance
	at := map[[3]float64]int{}
	for _, s := range agents() {
		if x := bringsOf(s); x.base > 0 || !x.calcium || s.Count("Cl") > 0 {
			continue
		}
		anion := [3]float64{s.Count("C"), s.Count("N"), s.Count("S")}
		i, there := at[anion]
		switch {
		case !there:
			at[anion] = len(out)
			out = append(out, s)
		case s.Count("H") > out[i].Count("H"):
			out[i] = s
		}
	}
	return out
})

// common are bases whose ions are followed one by one.
func common(s *chemicals.Substance) bool { _, asIs := formula(s); return asIs }

// formula is what the equilibria know a substance by, and whether it is the substance
// itself.
func formula(s *chemicals.Substance) (text string, asIs bool) {
	x := bringsOf(s)
	if s.Count("C") == x.carbon {
		return s.Formula.Text, true
	}
	if x.base > 0 {
		return "NaOH", false
	}
	return "CaCl2", false
}
