package reports

import (
	"bytes"
	"encoding/json"
	"testing"

	"etchbound/reports/draft"
	"etchbound/reports/fixture"
)

// What is drawn of the air stands in the JSON as well, both curves of each picture.
func TestAirCurvesAreSeries(t *testing.T) {
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
	}
}
