package route

import (
	"slices"
	"strings"

	"etchbound/chemicals"
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

// etched are the families of a layered phase as it is etched.
var etched = []string{"etch_heat.", "etch_heat.melt.", "etch_heat_bound.", "etch_hydrogen.", "etch_conversion."}

// ids lists the rows a route of these holdings looks up, tabled or not.
func (h *holdings) ids() []string {
	var list []string
	add := func(names []string, state string, families ...string) {
		for _, name := range names {
			for _, f := range families {
				list = append(list, f+name+state)
			}
		}
	}
	phase := []string{h.phase}
	if h.phase == "" {
		phase = nil
	}
	add(phase, "", append([]string{"density."}, etched...)...)
	add(phase, "(s)", "cp.", "enthalpy.")
	add(h.leaving, "", "electrons.", "leaving_heat.", "leaving_heat.base.", "leaving_heat.acid.",
		"leaving_heat.melt.")
	add(h.staying, "", "valence.", "surface_heat.", "surface_heat.melt.")
	add(h.impurities, "", "hydrogen.impurity.", "hydrogen.impurity.base.", "methane.impurity.", "heat.impurity.hf.",
		"heat.impurity.acid.", "heat.impurity.base.", "etch_heat.")
	add(h.impurities, "(s)", "cp.", "density.", "enthalpy.")
	add(h.substances, "(s)", "cp.", "density.", "enthalpy.", "dissolution.", "dissolution_water.")
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
func anyFormula(id string) (string, bool) {
	any := holdings{phase: "*", leaving: []string{"*"}, staying: []string{"*"}, impurities: []string{"*"},
		substances: []string{"*"}}
	for _, pattern := range any.ids() {
		before, after, _ := strings.Cut(pattern, "*")
		rest, begins := strings.CutPrefix(id, before)
		formula, ends := strings.CutSuffix(rest, after)
		if _, err := chemicals.ParseFormula(formula); begins && ends && err == nil {
			return formula, true
		}
	}
	return "", false
}
