package book

import (
	"bytes"
	"io"
	"maps"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// Every figure shows its working, and every tenth, whose turn it is in its route, that
// of its dangerous end as well: each of those is a run of its own.
func TestEveryFigureOfEveryRouteExplains(t *testing.T) {
	long.Only(t)
	turn := 0
	all := fixture.Bundled(t)
	for _, name := range slices.Sorted(maps.Keys(all)) {
		r := all[name]
		b := newBuilder(&r, draft.Options{})
		for i := range r.Figures {
			var text bytes.Buffer
			f := &r.Figures[i]
			e := newExplainer(b, &text)
			e.centre(f)
			err := e.w.Flush()
			if turn++; turn%10 == 0 {
				text.Reset()
				err = Explain(&text, r, f.ID.String())
			}
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if s := text.String(); strings.Contains(s, "NaN") || strings.Contains(s, words.Of("sheets.none")) {
				t.Errorf("%s: %s has no working:\n%s", name, f.ID, s)
			}
		}
	}
	if turn < 1000 {
		t.Errorf("%d figures of all bundled routes", turn)
	}
}

// A row of data is shown with what it is: of the heat capacities that rises stand on, that they are
// low on purpose.
func TestExplainSaysWhatARowIs(t *testing.T) {
	r := fixture.Review()
	r.Case.Store = chemicals.Base()
	e := newExplainer(newBuilder(&r, draft.Options{}), io.Discard)
	for _, id := range []datum.ID{"cp.hcl_aq.low_factor", "cp.hf_aq.steepest"} {
		if got := e.datum(id); !strings.Contains(got, "note: ") || !strings.Contains(got, "on purpose") {
			t.Errorf("%s: %s", id, got)
		}
	}
}
