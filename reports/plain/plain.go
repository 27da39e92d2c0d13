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

// ShortDigest is the first twelve hex digits, enough to compare by eye.
func ShortDigest(d string) string { return d[:min(12, len(d))] }

// ID is the id of an element of a page, different for different texts, behind a prefix
// that begins with a letter. Validators and lists of ids accept letters, digits, hyphens
// and underscores alone, so every other byte is written as a number.
func ID(text string) string {
	const hex = "0123456789abcdef"
	var b strings.Builder
	for i := 0; i < len(text); i++ {
		c := text[i]
		if c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c == '-' {
			b.WriteByte(c)
			continue
		}
		b.WriteByte('_')
		b.WriteByte(hex[c>>4])
		b.WriteByte(hex[c&15])
	}
	return b.String()
}

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
