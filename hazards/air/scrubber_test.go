package air

import (
	"os"
	"strings"
	"testing"
)

// Every gas that can form has its base, or goes past; a row of no such gas is of the acids
// and of carbon dioxide.
func TestEveryGasHasItsBase(t *testing.T) {
	seen := map[string]bool{"hf": true, "hcl": true, "carbon_dioxide": true}
	table, err := os.ReadFile("../../chemicals/evolving/gases.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(string(table), "\n") {
		cells := strings.Split(line, ",")
		if strings.HasPrefix(line, "#") || len(cells) < 3 || cells[2] == "gas" || cells[2] == "none" {
			continue
		}
		slug := cells[2]
		seen[slug] = true
		if _, there := Scrubbing()[slug]; !there {
			t.Errorf("%s: no row says what base it takes", slug)
		}
	}
	for slug, x := range Scrubbing() {
		if !seen[slug] || !(x.Base >= 0 && x.Base <= 8) {
			t.Errorf("%s takes %g, and forms nowhere", slug, x.Base)
		}
	}
}
