package draft

import (
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards/meeting"
)

// Each row by the least that asks for it; what is left out of a route asks for nothing more,
// and what is not held asks in its place.
func TestDutiesByTag(t *testing.T) {
	for _, row := range []struct {
		tags, says string
		n          int
	}{
		{"", "", 0},
		{"hf", "repairs", 1},
		{"hf unwatched", "nobody watched", 2},
		{"hf unwatched hydrogen", "settled powder", 3},
		{"centrifuge hf", "rotor", 2},
		{"centrifuge not_held", "leave, close, call", 2},
		{"dry hf", "cold trap", 2},
		{"scrubber", "before half of its base", 1},
		{"tmaoh", "TMAOH", 1},
	} {
		of := meeting.Tags{}
		for _, tag := range strings.Fields(row.tags) {
			of.Add(1, meeting.Tag(tag))
		}
		got := dutiesOf(of)
		var all string
		for _, d := range got {
			all += d.Text
		}
		if len(got) != row.n || !strings.Contains(all, row.says) {
			t.Errorf("%q: %d, %q", row.tags, len(got), all)
		}
	}
	for _, d := range allDuties() {
		if len(d.Card) > 130 {
			t.Errorf("%q does not fit the bench card", d.Card)
		}
	}
}

// What is not held is told as near to what was written as its id lets it, and what is held by
// its name.
func TestWhatIsNotHeldIsToldAsWritten(t *testing.T) {
	unheld := chemicals.Unheld("my solvent", chemicals.Formula{})
	for slug, want := range map[string]string{unheld.Slug: "my solvent", "isopropanol": "2-propanol"} {
		if got := AgentName("air.breathing_zone", slug); got != want {
			t.Errorf("%s: %q, want %q", slug, got, want)
		}
	}
}
