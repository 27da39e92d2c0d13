package residue

import (
	"slices"

	"etchbound/chemicals/aqueous"
)

// Solid is what may settle out of a liquor within days.
type Solid struct {
	Of      string // its name in the equilibria
	Formula string
	Aged    string // what stands in its place once it has aged, in the equilibria; empty: itself
}

var solids = [...]Solid{{"Cryolite", "Na3AlF6", ""}, {"Fluorite", "CaF2", ""}, {"Sellaite", "MgF2", ""},
	{"LiF_s", "LiF", ""}, {"NaF_s", "NaF", ""}, {"Calcite", "CaCO3", ""}, {"Gypsum", "CaSO4.2H2O", ""},
	{"Portlandite", "Ca(OH)2", ""}, {"Brucite", "Mg(OH)2", ""}, {"Al(OH)3(a)", "Al(OH)3", "Gibbsite"},
	{"Brushite", "CaHPO4.2H2O", "Hydroxyapatite"}}

// Solids are those that every reader of liquors lets settle.
func Solids() []Solid { return slices.Clone(solids[:]) }

// Settles are they as a mixture asks for them, fresh or aged, but for some.
func Settles(aged bool, without ...string) []aqueous.Amount {
	out := make([]aqueous.Amount, 0, len(solids))
	for _, s := range solids {
		switch {
		case slices.Contains(without, s.Of):
		case aged && s.Aged != "":
			out = append(out, aqueous.Amount{Of: s.Aged})
		default:
			out = append(out, aqueous.Amount{Of: s.Of})
		}
	}
	return out
}
