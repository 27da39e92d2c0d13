package review

import (
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards/treating"
	"etchbound/reports/document"
)

// How slowly an agent goes in is told, or that nobody knows: it never goes without a word.
func TestADoseOfUnknownHeatIsTold(t *testing.T) {
	lime, found := chemicals.Library().Find("calcium hydroxide")
	if !found {
		t.Fatal("no lime")
	}
	way := treating.Way{Parts: []treating.Part{{Sub: lime}}}
	blocks := dosings(&treating.Liquor{Ways: []treating.Way{way}})
	if len(blocks) != 1 || !strings.Contains(blocks[0].(document.Paragraph).Text, "calcium hydroxide") {
		t.Fatalf("an unknown dose reads %v", blocks)
	}
	way.Dosing = &treating.Dosing{Minutes: 1, Portions: 1}
	if blocks = dosings(&treating.Liquor{Ways: []treating.Way{way}}); blocks != nil {
		t.Errorf("one that may go in at once reads %v", blocks)
	}
}
