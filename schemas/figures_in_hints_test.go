package schemas_test

import (
	"regexp"
	"strings"
	"testing"

	"etchbound/schemas"
)

// amount is a number with a unit behind it, as a hint must not make one up: 6 for
// hours read "6 min", and a temperature left out "35 degC".
var amount = regexp.MustCompile(`(^|[^A-Za-z0-9.])([0-9][0-9.]*) ?(min|s|h|d|degC|K|mL|L|g|mg|kg|wt%|%|mol/L|mm|W)\b`)

// squeezed leaves out what a decimal point or comma is written with.
func squeezed(s string) string { return strings.NewReplacer(" ", "", ",", "", ".", "").Replace(s) }

// No hint and no list of what is accepted holds an amount that the file does not. The
// ceiling of what can be meant is a bound, and the value of a foreign unit a factor.
func TestHintsMakeUpNoFigure(t *testing.T) {
	texts := map[string]string{
		"hours without their unit":   step("{do: add, in: a, what: precursor, over: 6, temperature: 20 degC}"),
		"addition without its time":  step("{do: add, in: a, what: precursor, temperature: 20 degC}"),
		"addition without a warmth":  step("{do: add, in: a, what: precursor, over: 6 h}"),
		"hold without all":           step("{do: hold, in: a}"),
		"sample without its part":    step("{do: sample, in: a, into: b}"),
		"a datum without its value":  with("data: [{id: density.Ti3AlC2, source: own}]"),
		"a powder without its mass":  with("precursor: {phase: Ti3AlC2}"),
		"a curve without all":        with("measured: {curve: {points: []}}"),
		"nothing for a temperature":  step("{do: hold, in: a, time: 1 h, temperature: nan}"),
		"an addition that overnight": step("{do: add, in: a, what: precursor, over: overnight, temperature: RT}"),
	}
	for _, m := range malformed {
		texts[m.name], _, _ = place(m.text)
	}
	for name, text := range texts {
		_, problems := read(t, text, "route")
		for _, p := range problems {
			for _, m := range amount.FindAllStringSubmatch(p.Hint+" | "+p.Accepted, -1) {
				if !strings.Contains(squeezed(text), squeezed(m[2]+m[3])) && !strings.Contains(p.What+p.Hint, "the most") {
					t.Errorf("%s: %q is nobody's figure:\n%v", name, strings.TrimSpace(m[0]), p)
				}
			}
		}
		if len(problems) == 0 || !schemas.Refused(problems) {
			t.Errorf("%s: it is taken", name)
		}
	}
}
