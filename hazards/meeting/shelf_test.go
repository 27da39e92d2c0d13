package meeting

import (
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// Two of a stock stand apart where they must not meet when both leak; two of which each is
// the pair by itself, or that do nothing, may stand together (lists of incompatible pairs).
func TestWhatDoesNotStandTogether(t *testing.T) {
	for _, c := range []struct {
		one, other   string
		apart, never bool
	}{
		{"nitric acid", "acetone", true, true}, {"hydrogen peroxide", "ethanol", true, true},
		{"sodium hypochlorite", "hydrochloric acid", true, true}, {"ammonium persulfate", "aluminium", true, true},
		{"hydrofluoric acid", "lithium fluoride", true, false}, {"hydrofluoric acid", "sodium hydroxide", true, false},
		{"ammonium bifluoride", "hydrochloric acid", true, false}, {"ammonium bifluoride", "lithium fluoride", false, false},
		{"hydrochloric acid", "isopropanol", true, false}, {"sulfuric acid", "potassium permanganate", true, true},
		{"lithium fluoride", "lithium chloride", false, false}, {"hydrofluoric acid", "hydrochloric acid", false, false},
		{"hydrogen peroxide", "water", false, false}, {"ethanol", "acetone", false, false},
	} {
		var stock []route.Stock
		for _, name := range []string{c.one, c.other} {
			s, ok := chemicals.Library().Find(name)
			if !ok {
				t.Fatalf("the library lacks %s", name)
			}
			stock = append(stock, route.Stock{Substance: s, Volume: quantity.Value{Set: true}})
		}
		got := Shelf(stock)
		if (len(got) > 0) != c.apart || c.apart && (got[0].Never != c.never || len(got[0].Why) == 0) {
			t.Errorf("%s and %s: %+v", c.one, c.other, got)
		}
		if len(Shelf(stock[:1])) > 0 {
			t.Errorf("%s stands apart from itself", c.one)
		}
	}
}
