package review

import (
	"os"
	"strings"
	"testing"

	"etchbound/reports/words"
)

// Every condition under which product can be kept has a name, and its own hazard beside it.
func TestEveryConditionHasItsHazard(t *testing.T) {
	text, err := os.ReadFile("../../scaling/keeping/conditions.csv")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, line := range strings.Split(string(text), "\n")[1:] {
		name, _, _ := strings.Cut(line, ",")
		if name == "" || strings.HasPrefix(line, "#") {
			continue
		}
		n++
		for _, key := range []string{"keep.is." + name, "keep.brings." + name} {
			if !words.Has(key) {
				t.Errorf("%s has no %s", name, key)
			}
		}
	}
	if n < 10 {
		t.Fatalf("only %d rows", n)
	}
}
