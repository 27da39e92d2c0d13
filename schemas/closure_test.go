package schemas_test

import (
	"strings"
	"testing"

	"etchbound/schemas"
)

// What people write of a cap that is not screwed down is answered with what the words
// mean, not with one of them alone.
func TestALooseCapIsExplained(t *testing.T) {
	for _, word := range []string{"loose", "loosely capped", "cap loosened", "ajar", "screw cap, unscrewed", "not tight"} {
		text := "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 1 g}\n" +
			"places:\n  pot: {kind: bottle, closure: \"" + word + "\"}\n" +
			"steps:\n  - {do: charge, in: pot, what: [precursor]}\n"
		_, _, problems, err := schemas.Read("check.yaml", strings.NewReader(text), "route")
		if err != nil {
			t.Fatal(err)
		}
		said := ""
		for _, p := range problems {
			said += p.String()
		}
		if !strings.Contains(said, "vented where it cannot seal by itself, and closed where it can") {
			t.Errorf("%q: %s", word, said)
		}
	}
}
