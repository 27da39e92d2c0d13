package review

import (
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/material"
	"etchbound/hazards/meeting"
	"etchbound/hazards/route"
	"etchbound/reports/words"
)

// The rows of the rules have statuses and known tags.
func TestRules(t *testing.T) {
	for _, p := range meeting.Pairs() {
		if p.Status == "" || p.Source == "" || !words.Has("severity."+p.Severity) {
			t.Errorf("pair %s: %+v", p.ID, p)
		}
	}
	for _, m := range material.Media() {
		if !words.Has("medium." + m) {
			t.Errorf("no word for the medium %s", m)
		}
	}
	for v := material.Yes; v <= material.No; v++ {
		if !words.Has("suited." + v.String()) {
			t.Errorf("no word for the verdict %s", v)
		}
	}
	for _, g := range safeguardRules() {
		if g.status == "" || g.source == "" || !words.Has("order."+g.order) {
			t.Errorf("safeguard %+v", g)
		}
	}
}

// Pairs that reviewers expect to be raised, from the check list in the rules of
// the committee: salt and acid give HF, DMSO meets acid, an ammonium salt meets
// lime, persulfate meets hydrochloric acid.
func TestExpectedPairs(t *testing.T) {
	for _, c := range []struct{ a, b, want string }{
		{"lithium fluoride", "hydrochloric acid", "acid_fluoride_salt"},
		{"dmso", "hydrochloric acid", "dmso_acid"},
		{"ammonium bifluoride", "calcium hydroxide", "base_ammonium"},
		{"ammonium persulfate", "hydrochloric acid", "persulfate_chloride"},
		{"sodium hydrogencarbonate", "hydrofluoric acid", "carbonate_acid"},
		{"hydrogen peroxide", "ethanol", "oxidant_organic"},
	} {
		x := meeting.Contents{Place: &route.Place{}, Tags: meeting.Tags{}}
		for _, name := range []string{c.a, c.b} {
			s, ok := chemicals.Library().Find(name)
			if !ok {
				t.Fatalf("the library lacks %s", name)
			}
			x.Tags.Add(1, meeting.TagsOf(s)...)
		}
		found := false
		for _, p := range meeting.Pairs() {
			_, met := x.Meets(&p)
			found = found || met && p.ID == c.want
		}
		if !found {
			t.Errorf("%s with %s does not raise %s: tags %v", c.a, c.b, c.want, x.Tags)
		}
	}
	if s, _ := chemicals.Library().Find("water"); len(s.Classes()) != 0 {
		t.Errorf("water is of %v", s.Classes())
	}
}
