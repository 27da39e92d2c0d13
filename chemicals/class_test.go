package chemicals

import (
	"slices"
	"testing"
)

// What is not held may be of every class that its formula leaves room for, and of all
// where none is stated; what is held is of those it is of. The elements of a class are
// those of its name (definition).
func TestWhatMayBeOfAClass(t *testing.T) {
	formula := func(text string) Formula {
		f, err := ParseFormula(text)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	held, _ := Library().Find("lithium fluoride")
	for _, c := range []struct {
		name  string
		s     *Substance
		class string
		may   bool
	}{
		{"no formula", Unheld("florbide", Formula{}), "chloride", true},
		{"no formula", Unheld("florbide", Formula{}), "nitrate", true},
		{"caesium chloride", Unheld("florbide", formula("CsCl")), "chloride", true},
		{"caesium chloride", Unheld("florbide", formula("CsCl")), "nitrate", false},
		{"a nitrate nobody lists", Unheld("florbide", formula("CsNO3")), "nitrate", true},
		{"a nitrate nobody lists", Unheld("florbide", formula("CsNO3")), "bromide", false},
		{"a held fluoride", held, "chloride", false},
	} {
		if got := c.s.MayBe(c.class); got != c.may {
			t.Errorf("%s: may be of %s: %v", c.name, c.class, got)
		}
	}
	none := []string{"powder", "cyanide_sulfide", "dense_acid", "asphyxiant", "water_metal", "halogen", "peroxide_metal"}
	for _, row := range classes() {
		if row.elements == nil && !slices.Contains(none, row.name) {
			t.Errorf("%s says no element that each of it holds", row.name)
		}
	}

}
