package hazards_test

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/nearly"
)

// A batch brings 1 L to a container of 5 L: 20 %, so that two fill 40 % and three 60 %, where
// half is the most of what may still give gas (two waste pages) and three quarters of what
// does not. Whose batches nobody states, in a drum or in a bottle that takes waste, is unknown.
func TestWasteOfSeveralBatches(t *testing.T) {
	for _, row := range []struct {
		kind, batches string
		fill          float64
		verdict       figure.Verdict
	}{
		{"drum", ", batches: 1", 20, figure.Within},
		{"bottle", ", batches: 2", 40, figure.Within},
		{"drum", ", batches: 3", 60, figure.Exceeds},
		{"drum", "", 0, figure.UnknownVerdict},
		{"bottle", "", 0, figure.UnknownVerdict},
	} {
		r, problems, err := route.Load("r.yaml", strings.NewReader(fmt.Sprintf(`route: etchbound/1
title: waste
basis: {status: invented}
places:
  pot: {kind: beaker, closure: open, capacity: 2 L, material: HDPE}
  can: {kind: %s, closure: vented, capacity: 5 L, material: HDPE%s}
steps:
  - {do: charge, in: pot, what: [{substance: HF, strength: 5 wt%%, volume: 1 L}], temperature: 20 degC}
  - {do: collect, in: pot, into: can}
`, row.kind, row.batches)))
		if err != nil || r == nil {
			t.Fatalf("%v %v", err, problems)
		}
		c, err := route.NewCase(r, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		c.Brief = true
		got, err := hazards.Make(c)
		if err != nil {
			t.Fatal(err)
		}
		id, judged := figure.ID{Quantity: "vessel.piled", Place: figure.At("can")}, false
		for i := range got.Findings {
			f := &got.Findings[i]
			if f.Figure != id {
				continue
			}
			judged = true
			x := figure.NewSet(got.Figures).Get(id).High().V
			if f.Verdict != row.verdict || row.fill > 0 && !nearly.Share(x, row.fill, 0.01) {
				t.Errorf("%s%s: %g %%, %s, want %g, %s", row.kind, row.batches, x, f.Verdict, row.fill, row.verdict)
			}
		}
		if !judged {
			t.Errorf("%s%s: not judged", row.kind, row.batches)
		}
	}
}
