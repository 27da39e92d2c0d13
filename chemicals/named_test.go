package chemicals_test

import (
	"strings"
	"testing"
	"unicode"

	"etchbound/chemicals"
)

// What nobody has read or measured can decide a verdict, and page 1 then says what would
// narrow it: its note begins with what the row is, in words, and not with why it has its value.
func TestWhatIsDoubtfulHasAName(t *testing.T) {
	for _, d := range chemicals.Base().Rows() {
		named := d.Named()
		if d.Swings() && d.Doubtful() && (len(strings.Fields(named)) < 2 || unicode.IsDigit(rune(named[0]))) {
			t.Errorf("%s is called %q", d.ID, named)
		}
	}
}
