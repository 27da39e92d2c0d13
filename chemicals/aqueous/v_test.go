package aqueous

import (
	"fmt"
	"testing"
)

func TestV(t *testing.T) {
	m, _ := At(25)
	beginnings = [...]beginning{{6, 1e-3}, {6, 1e-3}, {6, 1e-3}, {6, 1e-3}, {6, 1e-3}}
	debug = true
	mix := Mixture{Totals: []Amount{{"F", 0.5}}, Added: []Amount{{"CaCO3", 0.5}}, Solids: []Amount{{"Fluorite", 0}, {"Calcite", 0}, {"Portlandite", 0}}}
	s, err := m.Solve(mix)
	fmt.Println(err, s != nil)
	debug = false
}
