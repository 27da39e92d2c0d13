package words

import (
	"regexp"
	"strings"
	"testing"

	"etchbound/hazards/phrase"
)

// slip is what formatting writes where an argument is missing, left over or of another
// kind.
var slip = regexp.MustCompile(`%!|MISSING|EXTRA`)

// arguments are some of the kinds a sentence asks for; counts are all n.
func arguments(form string, n int) []any {
	var out []any
	for _, v := range verb.FindAllString(form, -1) {
		switch v {
		case "%%":
		case "%d":
			out = append(out, n)
		case "%s":
			out = append(out, "name")
		default:
			out = append(out, 1.5)
		}
	}
	return out
}

// Every row can be said, of one and of many, and says something.
func TestEveryRowCanBeSaid(t *testing.T) {
	for key, s := range sentences() {
		for _, n := range []int{1, 3} {
			form := s.one
			if n != 1 && s.many != "" {
				form = s.many
			}
			said := Say(phrase.Of(key, arguments(form, n)...))
			if strings.TrimSpace(said) == "" || slip.MatchString(said) {
				t.Errorf("%s of %d: %q", key, n, said)
			}
		}
	}
}

// A sentence that asks for digits behind the point gets as many.
func TestDigitsBehindThePoint(t *testing.T) {
	got := Say(phrase.Of("warn.step_water_that_has", 4, 5.61, 6.0))
	if !strings.Contains(got, "about pH 5.6,") || !strings.Contains(got, "reach pH 6:") {
		t.Error(got)
	}
}
