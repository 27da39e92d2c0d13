package review

import (
	"os"
	"strings"
	"testing"
)

// What committees ask of equipment, storing and waste, by a few words each, has a sentence in
// the tables that a review prints: procedures, forms and incident notes of institutions (read),
// told in our own words.
func TestQuestionsOnMaterialsAndStoringHaveASentence(t *testing.T) {
	all := ""
	for _, name := range []string{"safeguards.csv", "receiving.csv", "protection.csv", "incidents.csv", "local.csv",
		"../aid/spill.csv", "../aid/fire.csv", "../draft/people.csv"} {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all += strings.ToLower(string(b))
	}
	for _, asked := range []string{
		"never alone", "gel at the bench", "reliance on smell", "any strength; sash down", "ordinary acid kit", "do not sit",
		"on a cart", "tilted", "25 % of its lower flammable limit", "vent of its own", "automatic shut-down",
		"shower in reach within seconds", "no acid, halide or metal salt left", "limit of scale and a shield",
		"goes through the skin", "hydroxide slurry to carbonate", "look at the ph again the next day",
		"no glass, ceramic or concrete", "hearing protection", "hands out of the bath", "in sealed tubes",
		"aerosol has settled", "corrode and later break", "0.8 mm", "wiped up wet", "glove box",
		"date on the label", "at most half full", "rinsed three times", "names, shares and date", "once a week",
		"vents by itself", "110 %", "swelling", "hand pump", "acid into water", "shut by default", "vented cap",
		"sand, vermiculite", "metal scoops", "repairs, moves or throws out", "cold trap", "scrubber",
		"never of metal", "class d extinguisher", "dry sand", "carbon dioxide, any jet", "a jet of water",
		"put out while gas still comes", "breathing apparatus", "smallest batch", "compare the routes",
		"three times the volume", "first water on settled", "never heated shut", "gas space at least half",
		"only after gas has stopped", "tray below every vessel", "written leave", "confirm every item",
	} {
		found := false
		for words := range strings.SplitSeq(asked, "|") {
			found = found || strings.Contains(all, words)
		}
		if !found {
			t.Errorf("nothing is said of %q", asked)
		}
	}
}
