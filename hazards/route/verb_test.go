package route

import (
	"encoding/json"
	"os"
	"slices"
	"testing"
)

// schemaVerbs are the verbs that the schema of routes accepts.
func schemaVerbs(t *testing.T) []string {
	t.Helper()
	raw, err := os.ReadFile("../../schemas/route.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	var schema struct {
		Defs map[string]struct {
			Properties map[string]struct {
				Enum []string `json:"enum"`
			} `json:"properties"`
		} `json:"$defs"`
	}
	if err := json.Unmarshal(raw, &schema); err != nil {
		t.Fatal(err)
	}
	list := schema.Defs["step"].Properties["do"].Enum
	if len(list) < 20 {
		t.Fatalf("only %d verbs in the schema", len(list))
	}
	return list
}

// Every verb of the schema has its row, and no row is of another.
func TestEveryVerbHasARow(t *testing.T) {
	accepted := schemaVerbs(t)
	for _, v := range accepted {
		if verbs()[v] == nil {
			t.Errorf("the verb %s has no row in verbs.csv", v)
		}
	}
	for name := range verbs() {
		if !slices.Contains(accepted, name) {
			t.Errorf("the row %s is of no verb that the schema accepts", name)
		}
	}
}

// The columns of a verb agree with each other.
func TestVerbsAgree(t *testing.T) {
	for name, v := range verbs() {
		sends := v.Liquid == Into
		if want := v.Does == Moves || v.Does == Parts || v.Cycles(); sends != want {
			t.Errorf("%s: does %s, its liquid goes %s", name, v.Does, v.Liquid)
		}
		if (v.Solids == Into) != (v.Does == Moves) || (v.Liquid == Out) != (v.Does == Dries) {
			t.Errorf("%s: does %s, liquid %s, solids %s", name, v.Does, v.Liquid, v.Solids)
		}
		if v.Passive != (v.Does == Moves || v.Does == Parts) || v.Passive && v.Cooled {
			t.Errorf("%s: passive %v, cooled %v, does %s", name, v.Passive, v.Cooled, v.Does)
		}
		if v.Pours && !v.Opens || v.Waste == "yes" && !sends {
			t.Errorf("%s: pours %v, opens %v, waste %s, liquid %s", name, v.Pours, v.Opens, v.Waste, v.Liquid)
		}
	}
}

func TestAWordThatIsNoVerbCountsAsTheWorst(t *testing.T) {
	if v := VerbOf("fling"); !v.Opens || !v.Pours || v.Spins != "yes" || v.Passive {
		t.Errorf("%+v", v)
	}
}
