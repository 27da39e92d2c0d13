package words

import (
	"regexp"
	"strings"
	"testing"
)

// verb is what a sentence may have behind a percent sign: a name or a phrase, a count, a
// number to some digits, minutes to some digits as they are read, or the sign itself.
var verb = regexp.MustCompile(`%(s|d|g|\.\dg|\.\df|\.\dt|%)`)

// A sentence with a percent sign of its own writes it twice.
func TestSentencesTakeTheirArguments(t *testing.T) {
	for key, s := range sentences() {
		for _, form := range []string{s.one, s.many} {
			if rest := verb.ReplaceAllString(form, ""); strings.Contains(rest, "%") {
				t.Errorf("%s: %q has a percent sign that takes nothing", key, form)
			}
		}
	}
}
