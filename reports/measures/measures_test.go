package measures

import (
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/hazards"
	"etchbound/hazards/ranges"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/words"
	"etchbound/scaling/measuring"
	"etchbound/schemas/quantity"
)

// Every experiment has a name and says how it is made.
func TestExperimentsAreTold(t *testing.T) {
	all := measuring.Experiments()
	if len(all) < 5 {
		t.Fatalf("%d experiments", len(all))
	}
	for _, e := range all {
		if !words.Has("measure.name."+e) || !words.Has("measure.by."+e) {
			t.Errorf("%s is not told", e)
		}
	}
}

// A powder of 98 wt% with 0.5 wt% of metal stated leaves 1.5 wt% by hand that nobody explains; one
// of which nothing is stated is told elsewhere, and of one whose analysis cuts nothing nothing is said.
func TestWhatAPurityLeavesIsSaid(t *testing.T) {
	stood := func(id datum.ID) []measuring.Figure {
		return []measuring.Figure{{By: []measuring.By{{Data: []ranges.Stood{{Datum: chemicals.Datum{ID: id}}}}}}}
	}
	draftOf := func(stated bool) *draft.Draft {
		p := &route.Precursor{Purity: quantity.Of(98, "wt%"), Stated: stated,
			Impurities: []route.Impurity{{Share: quantity.Of(0.5, "wt%")}}}
		return &draft.Draft{Review: &hazards.Review{Case: route.Case{Route: &route.Route{Precursor: p}}}}
	}
	said := unexplained(draftOf(true), stood("impurity.unstated"))
	if len(said) != 1 || !strings.Contains(said[0].(document.Paragraph).Text, ", 1.5 wt%") {
		t.Errorf("%v", said)
	}
	if unexplained(draftOf(false), stood("impurity.unstated")) != nil ||
		unexplained(draftOf(true), stood("wall.pp")) != nil {
		t.Error("said where it is not so")
	}
}
