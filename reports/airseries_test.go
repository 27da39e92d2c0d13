package reports

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/schemas/long"
)

// What is drawn of the air stands in the JSON as well, both curves of each picture, and
// what a liquor comes to dose by dose.
func TestWhatIsDrawnIsASeries(t *testing.T) {
	long.Only(t)
	r := fixture.AtSite(t, "demo-lif-hcl-2g.yaml", "site-demo.yaml")
	var b bytes.Buffer
	if err := JSON(&b, r, fixtureOptions); err != nil {
		t.Fatal(err)
	}
	var d struct {
		Series []struct {
			ID     string
			Points [][2]float64
		}
	}
	if err := json.Unmarshal(b.Bytes(), &d); err != nil {
		t.Fatal(err)
	}
	points := map[string]int{}
	for _, s := range d.Series {
		points[s.ID] = len(s.Points)
	}
	tracks := draft.New(&r, fixtureOptions).AirTracks()
	if len(tracks) == 0 {
		t.Fatal("no air is drawn")
	}
	for _, x := range tracks {
		id := x.Of.ID.String()
		if points[id+"~t"] != len(x.Middle) || points[id+"~t_worst"] != len(x.Worst) || len(x.Worst) == 0 {
			t.Errorf("%s is drawn and no series of it is written", id)
		}
		for i := range x.Middle {
			if i < len(x.Worst) && x.Worst[i][1] < x.Middle[i][1] {
				t.Errorf("%s: the dangerous end is drawn below the middle after %g min", id, x.Middle[i][0])
				break
			}
		}
	}
	doses := 0
	for id, n := range points {
		if strings.HasSuffix(id, "~dose") && n > 0 {
			doses++
		}
	}
	if drawn := len(r.Treated) > 0; drawn != (doses > 0) {
		t.Errorf("%d series of a dose for %d treated liquors", doses, len(r.Treated))
	}
}
