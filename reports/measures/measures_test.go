package measures_test

import (
	"testing"

	"etchbound/reports/words"
	"etchbound/scaling/measuring"
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
