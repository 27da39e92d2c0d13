package aid_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/hazards/route"
	"etchbound/reports/aid"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/words"
)

// The weaker the acid the later the pain; an edge counts to the weaker side, and what
// nobody knows has the longest delay.
func TestPainComesLaterFromWeakerAcid(t *testing.T) {
	for _, c := range []struct {
		strength float64 // wt%
		when     string
	}{
		{70, "skin.pain_now"}, {50.1, "skin.pain_now"}, {50, "skin.pain_hours"}, {20.1, "skin.pain_hours"},
		{20, "skin.pain_day"}, {1, "skin.pain_day"}, {math.NaN(), "skin.pain_day"},
	} {
		if said := aid.PainComes(c.strength); !strings.Contains(said, words.Of(c.when)) || strings.Contains(said, "NaN") {
			t.Errorf("%g wt%%: %q, want %q in it", c.strength, said, words.Of(c.when))
		}
	}
}

// Sand and glass never go on a spill, and no row stands both ways.
func TestRowsOfASpill(t *testing.T) {
	uses := map[string]string{}
	for _, r := range aid.SpillRows() {
		if r.Use != "never" && r.Use != "trained" || r.What == "" || r.Why == "" || r.Source == "" || r.Status == "" {
			t.Errorf("half a row: %+v", r)
		}
		if was, there := uses[r.What]; there {
			t.Errorf("%s is there as %s and as %s", r.What, was, r.Use)
		}
		uses[r.What] = r.Use
	}
	for _, word := range []string{"Sand", "Glass", "Carbonate"} {
		never := false
		for what, use := range uses {
			never = never || use == "never" && strings.HasPrefix(what, word)
		}
		if !never {
			t.Errorf("%s is not among what never goes on a spill", word)
		}
	}
}

// Water and carbon dioxide never go on burning powder, a class D extinguisher or dry sand does (a
// metal-dust page and a metal-printing safety page for water, the rest from memory); no row is half.
func TestWhatGoesOnAFire(t *testing.T) {
	for _, r := range aid.FireRows() {
		if len(r.Tags) == 0 || r.Use == r.Never {
			t.Errorf("half a row: %+v", r)
		}
	}
	rv := fixture.Review()
	d := draft.New(&rv, draft.Options{})
	for tag, want := range map[string]string{"powder": "carbon dioxide", "solvent": "a jet of water", "nothing": ""} {
		d.Tags = meeting.Tags{meeting.Tag(tag): 1}
		all := aid.Of(d).FireTable()
		if want == "" {
			if all != nil {
				t.Errorf("%s burns", tag)
			}
			continue
		}
		row := all[0].(document.Table).Rows[0]
		if never := row[2].Text; !strings.Contains(never, want) {
			t.Errorf("%s: never %q", tag, never)
		}
		if use := row[1].Text; tag == "powder" && (!strings.Contains(use, "class D") || !strings.Contains(use, "dry sand")) {
			t.Errorf("%s: %q", tag, use)
		}
	}
}

// A spill says something first as soon as nobody knows what it does to the room.
func TestTheFirstLineOfASpill(t *testing.T) {
	r := fixture.Review()
	d := draft.New(&r, draft.Options{})
	d.Tags = nil
	r.Findings = nil
	if got := aid.Of(d).SpillLine(); got != nil {
		t.Errorf("without acid or finding: %v", got)
	}
	for _, v := range []figure.Verdict{figure.Exceeds, figure.UnknownVerdict} {
		r.Findings = []figure.Finding{{Figure: figure.ID{Quantity: "air.room_peak"}, Verdict: v}}
		got := aid.Of(d).SpillLine()
		if len(got) != 1 || got[0].(document.Paragraph).Tone != document.Warning {
			t.Errorf("a room that is %v: %v, want a warning", v, got)
		}
	}
}

// What is no HF and no TMAOH has a line for what it does to people, and eyes, lungs and mouth.
func TestWhatNobodyHoldsHasALineForItsEffects(t *testing.T) {
	r := hazards.Review{Case: route.Case{Route: &route.Route{}}}
	var said strings.Builder
	d := document.Document{Sections: []document.Section{{Blocks: aid.Of(draft.New(&r, draft.Options{})).FirstAid()}}}
	if err := document.Markdown(&said, d); err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"skin.effects", "skin.in_eyes", "skin.in_air", "skin.in_mouth"} {
		if !strings.Contains(said.String(), words.Of(key)) {
			t.Errorf("nothing says %q: %s", words.Of(key), said.String())
		}
	}
}

// What is done first in several steps is said once, of steps that stand in two courses too.
func TestWhatIsDoneFirstIsSaidOnce(t *testing.T) {
	stages := func(steps ...int) (out course.Course) {
		for _, n := range steps {
			out.Stages = append(out.Stages, course.Stage{Step: &route.Step{Number: n}})
		}
		return out
	}
	r := hazards.Review{Case: route.Case{Route: &route.Route{}}}
	r.Courses = []course.Course{stages(2, 3, 4), stages(4, 6)}
	p, ok := aid.Of(draft.New(&r, draft.Options{})).FirstLines()[0].(document.Paragraph)
	if !ok || !strings.HasPrefix(p.Text, "Steps 2 to 4 and 6, if it gets hot: ") ||
		strings.Count(p.Text, "gets hot") != 1 {
		t.Errorf("%q", p.Text)
	}
}
