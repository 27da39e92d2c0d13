package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
)

// What is not known to stand acid fluoride is a hold point and stands among what is
// not known, whatever it is called and where it is not stated at all. A wall that is
// known to stand it is neither.
func TestAMaterialThatNobodyKnowsIsNotSilent(t *testing.T) {
	for _, x := range []struct {
		material, hold string
		open           bool
	}{
		{"material: PTFE, lid_material: PTFE", "", false},
		{"material: fused silica, lid_material: PTFE", "attacked", false},
		{"material: Brandname, lid_material: PTFE", "material_unknown", true},
		{"lid_material: PTFE", "material_unknown", true},
	} {
		rv := review(t, strings.Replace(inIce("1 g", "20 mL", "2 W/K"), "material: PTFE", x.material, 1))
		for _, id := range []string{"attacked", "material_unknown"} {
			if there := slices.ContainsFunc(rv.Holds, func(h hazards.Hold) bool { return h.ID == id }); there != (id == x.hold) {
				t.Errorf("%s: hold point %s is there: %v", x.material, id, there)
			}
		}
		open := slices.ContainsFunc(rv.Unknown, func(u hazards.UnknownItem) bool { return u.Missing == working.Lacks("wall_open", "pot") })
		if open != x.open {
			t.Errorf("%s: among what is not known: %v", x.material, open)
		}
	}
}
