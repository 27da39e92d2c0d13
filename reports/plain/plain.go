// Package plain knows texts of one line: how they are folded, cut and rid of what
// no reader can see. It must not know what they say nor what becomes of them.
package plain

import "strings"

// Fold joins the lines of a text with single blanks.
func Fold(s string) string { return strings.Join(strings.Fields(s), " ") }

// Join puts two texts in one, with a semicolon between them where both say something.
func Join(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

// Clip cuts a text to n runes and marks the cut.
func Clip(s string, n int) string {
	r := []rune(s)
	if len(r) <= n {
		return s
	}
	return strings.TrimRight(string(r[:n-1]), " ,;") + "…"
}

// ShortDigest is the first twelve hex digits, enough to compare by eye.
func ShortDigest(d string) string { return d[:min(12, len(d))] }

// Printable drops control characters, which no writer may pass on.
func Printable(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case r < ' ' || (r >= 0x7f && r < 0xa0) || r == 0x2028 || r == 0x2029 || (r >= 0x202a && r <= 0x202e) ||
			(r >= 0x2066 && r <= 0x2069):
			return -1
		}
		return r
	}, s)
}
