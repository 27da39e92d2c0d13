package document

import (
	"strings"

	"etchbound/reports/plain"
)

// alwaysEscaped are the characters that begin or end markup anywhere in a line.
const alwaysEscaped = "\\`*_{}[]<>#!|~&"

// escape makes Markdown that reads as s and nothing else: newlines fold, every
// character that could open markup is escaped, and so are the ones that only
// matter in their place, at the start of a text or inside an address.
func escape(s string) string {
	s = plain.Fold(plain.Printable(s))
	var b strings.Builder
	b.Grow(len(s) + len(s)/8)
	for i, r := range s {
		if strings.ContainsRune(alwaysEscaped, r) || inPlace(s, i, r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// inPlace reports whether a character opens markup where it stands: a list or
// rule at the start of the text, a numbered list after leading digits, or an
// address that some readers turn into a link by themselves.
func inPlace(s string, i int, r rune) bool {
	before, after := s[:i], s[i+len(string(r)):]
	switch r {
	case '-', '+', '=':
		return strings.Trim(before, "-+= ") == ""
	case '.', ')':
		numbered := before != "" && strings.Trim(before, "0123456789") == "" && (after == "" || after[0] == ' ')
		return numbered || (r == '.' && endsFold(before, "www"))
	case ':':
		return strings.HasPrefix(after, "/") || strings.Trim(before, ": ") == ""
	case '@':
		return true
	}
	return false
}

func endsFold(s, suffix string) bool {
	return len(s) >= len(suffix) && strings.EqualFold(s[len(s)-len(suffix):], suffix)
}

// codeSpan quotes s as code, with a fence longer than any run of backticks in
// it. Pipes are escaped as well, since a table takes them before code.
func codeSpan(s string) string {
	s = plain.Fold(plain.Printable(s))
	if s == "" {
		return ""
	}
	longest, run := 0, 0
	for _, r := range s {
		if r == '`' {
			run++
			longest = max(longest, run)
		} else {
			run = 0
		}
	}
	fence := strings.Repeat("`", longest+1)
	if longest > 0 {
		s = " " + s + " "
	}
	return fence + strings.ReplaceAll(s, "|", "\\|") + fence
}
