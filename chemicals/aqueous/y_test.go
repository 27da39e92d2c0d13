package aqueous

import (
	"fmt"
	"testing"
)

func TestY(t *testing.T) {
	m, _ := At(25)
	debug = true
	defer func() { debug = false }()
	for _, mix := range []Mixture{
		{Totals: []Amount{{"Li", 0.00020093422488536163}, {"Na", 0.0027571315046556835}, {"Mg", 3.3301322179964284e-08}, {"Al", 4.312929599352397e-11}, {"C(4)", 1.4822044533166552e-05}, {"N(-3)", 4.478042636118212e-07}, {"Si", 0.0002478749013956151}, {"PF6", 0.022229561825321997}}, Solids: []Amount{{"Dolomite", 0}, {"Mirabilite", 5.3034201384292876e-05}, {"Epsomite", 0.002836248380760165}, {"Hexahydrite", 0.00334249384418331}, {"Kieserite", 0}, {"Fluorite", 0}, {"Gibbsite", 0.010793441261962532}, {"Sylvite", 0.00026236792592242717}, {"Sellaite", 0}, {"SiO2(a)", 0}}},
		{Totals: []Amount{{"Na", 4.16311263451271e-07}, {"Ca", 9.361697107982425e-12}, {"Cl", 4.11480983504175e-05}, {"S(6)", 4.424071150083733e-06}, {"Si", 0.0037223639287611715}, {"BF4", 0.011354956397567234}}, Solids: []Amount{{"Aragonite", 0}, {"Arcanite", 0}, {"Mirabilite", 3.923269535165606e-06}, {"Kieserite", 0}, {"Fluorite", 0}, {"Gibbsite", 0}, {"Halite", 0}, {"Sylvite", 0}, {"Alunite", 0.0003200126940463471}, {"Sellaite", 0}}},
		{Totals: []Amount{{"K", 0.002001280717839209}, {"Mg", 1.6248082914906466e-09}, {"Al", 5.654715705109086e-07}, {"C(4)", 8.462554988466815e-11}, {"S(6)", 1.823721497694354e-11}, {"B", 6.694823454154424e-12}, {"Asc", 1.2191512818481476e-08}}, Solids: []Amount{{"Anhydrite", 0}, {"Arcanite", 0}, {"Epsomite", 3.33872933456578e-06}, {"Sylvite", 0}, {"Cryolite", 0.01923412089514558}}},
	} {
		fmt.Println("=======")
		_, err := m.Solve(mix)
		fmt.Println(err)
	}
}
