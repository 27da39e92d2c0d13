package reports

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/schemas/long"
)

// No open liquor of the bundled routes stands hotter than it boils on page 1 or in any
// table of the review: water boils (common practice). What is molten or shut is left out.
func TestAnOpenLiquorBoilsAndGetsNoHotter(t *testing.T) {
	long.Only(t)
	risen := regexp.MustCompile(`Adiabatic temperature rise, step [0-9]+ +\| ([0-9.]+) K`)
	degrees := regexp.MustCompile(`([0-9]+(?:\.[0-9]+)?) °C`)
	reviews := fixture.Bundled(t)
	for _, name := range []string{"hf-50-10g.yaml", "demo-lif-hcl-2g.yaml"} {
		r, there := reviews[name]
		if !there {
			continue // the short form takes fewer routes
		}
		var b bytes.Buffer
		if err := document.Markdown(&b, Build(r, draft.Options{})); err != nil {
			t.Fatal(err)
		}
		text := b.String()
		if !strings.Contains(text, "boils at 10") && !strings.Contains(text, "boils between 9") {
			t.Errorf("%s never boils", name)
		}
		// Nitric acid with water boils at 120.5 degC at the most (azeotrope, common handbooks).
		if name == "demo-lif-hcl-2g.yaml" && !strings.Contains(text, "boils at 122") {
			t.Errorf("nitric acid for hydrochloric acid does not boil where nitric acid does")
		}
		for _, line := range strings.Split(text, "\n") {
			if m := risen.FindStringSubmatch(line); m != nil {
				if x, err := strconv.ParseFloat(m[1], 64); err != nil || !(x < 110) {
					t.Errorf("%s rises by %s K in water: %s", name, m[1], line)
				}
			}
			if !strings.Contains(line, "Highest temperature") {
				continue
			}
			for _, m := range degrees.FindAllStringSubmatch(line, -1) {
				if x, err := strconv.ParseFloat(m[1], 64); err != nil || !(x < 125) {
					t.Errorf("%s stands at %s in water: %s", name, m[0], line)
				}
			}
		}
	}
}
