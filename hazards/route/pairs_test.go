package route_test

import "testing"

// What a container that has another key lacks is told by that key: a comparison of two
// routes would take it for something else that is missing.
func TestAnotherKeyIsAnotherPath(t *testing.T) {
	r := load(t, "../../testdata/routes/demo-lif-hcl-2g.yaml")
	was := r.Places[0]
	is := r.WithKeys(map[string]string{was.Key: "kettle"}).Places[0]
	if was.At != "places."+was.Key || is.Key != "kettle" || is.At != "places.kettle" {
		t.Errorf("%s at %s became %s at %s", was.Key, was.At, is.Key, is.At)
	}
}
