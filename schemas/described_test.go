package schemas_test

import (
	"slices"
	"testing"

	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

func TestDescribe(t *testing.T) {
	of := map[string]schemas.Described{}
	for _, d := range schemas.Describe("route") {
		of[d.Path] = d
	}
	mass := []quantity.Dimension{quantity.Mass}
	if d := of["places.*.cooling.ice"]; d.Key != "ice" || !slices.Equal(d.Dimensions, mass) || d.Text == "" {
		t.Errorf("%+v", d)
	}
	if d := of["steps[].over"]; !slices.Equal(d.NeededBy, []string{"add"}) || !slices.Contains(d.TakenBy, "charge") ||
		slices.Contains(d.TakenBy, "hold") || d.Required {
		t.Errorf("%+v", d)
	}
	if d := of["precursor.layers"]; d.Items != "string" || !slices.Equal(d.Types, []string{"array"}) {
		t.Errorf("%+v", d)
	}
	if d := of["route"]; !d.Only || !d.Required {
		t.Errorf("%+v", d)
	}
	if schemas.Describe("no such file") != nil {
		t.Error("a schema that is not there is described")
	}
}
