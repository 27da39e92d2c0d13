package number

import (
	"regexp"
	"strings"
)

// power is a number with a power of ten, as programs write it; nothing of a name stands before it.
var power = regexp.MustCompile(`(^|[^A-Za-z0-9_.])([0-9]+(?:\.[0-9]+)?)e(-?[0-9]+)`)

// Formula is a formula of the working as people write it: 10^6 and not 1e6, pi by its name. It
// stands for the same number wherever it stands in the formula.
func Formula(s string) string {
	if mayHoldPower(s) {
		s = power.ReplaceAllStringFunc(s, func(m string) string {
			of := power.FindStringSubmatch(m)
			if of[2] == "1" {
				return of[1] + "10^" + of[3]
			}
			return of[1] + "(" + of[2] + "*10^" + of[3] + ")"
		})
	}
	return strings.ReplaceAll(s, "3.141592653589793", "pi")
}

// mayHoldPower reports whether an e stands behind a digit: in few formulas of a review's many.
func mayHoldPower(s string) bool {
	for i := 1; i < len(s); i++ {
		if s[i] == 'e' && s[i-1] >= '0' && s[i-1] <= '9' {
			return true
		}
	}
	return false
}
