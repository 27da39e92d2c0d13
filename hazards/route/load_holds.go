package route

import (
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
)

// holdings are the formulas and elements a route is about. A row of data of
// anything else that is not tabled would be looked up by nothing.
type holdings struct {
	phase      string
	impurities []string
	leaving    []string // elements of the phase
	staying    []string // the other elements of the phase, but C, N and B
	substances []string
	unsure     bool // something held was refused, so that the list is not whole
}

func (h *holdings) substance(s *chemicals.Substance) {
	if f := s.Formula.Text; !s.NotHeld && !slices.Contains(h.substances, f) {
		h.substances = append(h.substances, f)
	}
}

// ids lists the rows a route of these holdings looks up, tabled or not.
func (h *holdings) ids() []datum.ID {
	var list []datum.ID
	add := func(t datum.Thing, names ...string) {
		for _, name := range names {
			list = append(list, datum.For(t, name)...)
		}
	}
	if h.phase != "" {
		add(datum.Phase, h.phase)
	}
	add(datum.Leaving, h.leaving...)
	add(datum.Staying, h.staying...)
	add(datum.Impurity, h.impurities...)
	add(datum.Dissolving, h.substances...)
	return list
}

// all names what is held, for messages.
func (h *holdings) all() string {
	list := slices.Clone(h.impurities)
	if h.phase != "" {
		list = append([]string{h.phase}, list...)
	}
	list = append(list, h.substances...)
	if len(list) == 0 {
		return "nothing"
	}
	return strings.Join(list, ", ")
}

// anyFormula gives the formula in an id that a route with such a phase,
// element, impurity or substance would look up.
func anyFormula(id datum.ID) (string, bool) {
	formula, held := id.Key().Holds()
	if _, err := chemicals.ParseFormula(formula); !held || err != nil {
		return "", false
	}
	return formula, true
}
