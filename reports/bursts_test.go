package reports

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/doubt"
	"etchbound/hazards/figure"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/record"
	"etchbound/reports/selection"
	"etchbound/reports/words"
)

// Containers that burst, as routes, are stopped by page 1: the pressure of the shut one is
// not known and exceeds, before all others, and the first hold point names what meets and
// says what settles it.
func TestContainersThatBurstAreStopped(t *testing.T) {
	for name, c := range map[string]struct{ place, met string }{
		"acid-onto-residue":          {"collecting", "oxidant with an organic"},
		"nitric-after-methanol":      {"collecting", "nitric acid with an organic"},
		"two-acids-with-isopropanol": {"collecting", "nitric acid with an organic"},
		"mixed-acids":                {"collecting", "nitric acid with hydrofluoric acid"},
		"nitric-alone":               {"collecting", "nitric acid of 60 wt% or more by itself"},
		"acid-in-a-steel-drum":       {"drum", "acid in metal"},
	} {
		text, err := os.ReadFile(filepath.Join("..", "testdata", "bursts", name+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		r := fixture.Brief(t, string(text))
		b := newBuilder(&r, draft.Options{})
		worst := selection.Worst(b.Draft)
		if len(worst) < 2 {
			t.Fatalf("%s: %d findings", name, len(worst))
		}
		for i, quantity := range []string{"meeting.pair", "gas.closed.pressure"} { // the two first of all
			f := worst[i]
			if f.Figure.Quantity != quantity || f.Verdict != figure.Exceeds || i == 1 && f.Figure.Place.Key() != c.place {
				t.Errorf("%s: finding %d is %s, %s", name, i, f.Figure, f.Verdict)
			}
		}
		holds := selection.StopTexts(b.Draft)
		if !strings.Contains(holds[0], c.place) ||
			!strings.HasPrefix(holds[0], "Keep it vented, never shut, and ask the safety office first.") {
			t.Errorf("%s: the first hold point is not of the shut container: %v", name, holds)
		}
		if says := words.Say(b.Review.Holds[0].Says); !strings.Contains(says, c.met) {
			t.Errorf("%s: the hold point does not name %s: %s", name, c.met, says)
		}
		alone := strings.Contains(strings.Join(holds, " "), "Do not keep nitric acid of 60 wt% or more by itself (coll")
		if alone != (name == "nitric-alone") {
			t.Errorf("%s: one thing that is kept: %v", name, holds)
		}
		countsAsPageOne(t, name, &r)
	}
}

// countsAsPageOne holds what nobody has read, among the data of the JSON, against the counts
// of page 1: a density of nitric or sulfuric acid is a table, and is counted in both.
func countsAsPageOne(t *testing.T, name string, r *hazards.Review) {
	t.Helper()
	var text bytes.Buffer
	if err := record.JSON(&text, *r, draft.Options{}); err != nil {
		t.Fatal(err)
	}
	var of struct{ Data []struct{ Status string } }
	if err := json.Unmarshal(text.Bytes(), &of); err != nil {
		t.Fatal(err)
	}
	var got doubt.Counts
	for _, d := range of.Data {
		switch d.Status {
		case "memory":
			got.Memory++
		case "assumed":
			got.Assumed++
		case "estimated":
			got.Estimated++
		}
	}
	if got != r.Doubts || got.Memory == 0 {
		t.Errorf("%s: the JSON counts %+v, page 1 %+v", name, got, r.Doubts)
	}
}
