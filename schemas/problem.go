package schemas

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Severity says whether a problem keeps a file from being used.
type Severity uint8

// The severities.
const (
	Error  Severity = iota // the file is refused
	Notice                 // the file is used; a person should look here
)

// Problem is one thing wrong, or doubtful, in a file. Line and Column count
// from 1, columns in characters; Path is the place in the file's structure,
// such as "steps[2].over", with list items counted from 0.
type Problem struct {
	Severity     Severity
	File         string
	Line, Column int
	Path         string
	What         string // what is wrong, in words
	Found        string // the text that was found, if it is one
	Accepted     string // what is accepted in its place; may be empty
	Hint         string // what was likely meant; may be empty
	Text         string // the source line
}

// Short gives place and message in one line.
func (p Problem) Short() string {
	s := p.What
	if p.Severity == Notice {
		s = "notice: " + s
	}
	return fmt.Sprintf("%s:%d:%d: %s", p.File, p.Line, p.Column, s)
}

// String gives the message, the source line with a caret under the place, what
// is accepted and a hint.
func (p Problem) String() string {
	var b strings.Builder
	b.WriteString(p.Short())
	if strings.TrimSpace(p.Text) != "" {
		text, column := clip(p.Text, p.Column)
		gutter := fmt.Sprintf("%5d | ", p.Line)
		b.WriteString("\n" + gutter + text)
		b.WriteString("\n" + strings.Repeat(" ", len(gutter)-2) + "| " + padding(text, column) + "^")
	}
	if p.Accepted != "" {
		b.WriteString("\n  accepted: " + p.Accepted)
	}
	if p.Hint != "" {
		b.WriteString("\n  hint: " + p.Hint)
	}
	return b.String()
}

// clip keeps about a hundred characters around the column of a long line.
func clip(text string, column int) (string, int) {
	const wide, before = 100, 60
	r := []rune(text)
	if len(r) <= wide+20 {
		return text, column
	}
	from := min(max(0, column-1-before), len(r)-1)
	to := min(len(r), from+wide)
	out, at := string(r[from:to]), column-from
	if from > 0 {
		out, at = "..."+out, at+3
	}
	if to < len(r) {
		out += "..."
	}
	return out, at
}

// padding is as wide on a screen as the characters before the column; tabs
// stay tabs, so that they are as wide as those above.
func padding(text string, column int) string {
	var b strings.Builder
	n := 1
	for _, r := range text {
		if n >= column {
			break
		}
		n++
		switch {
		case r == '\t':
			b.WriteByte('\t')
		case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		case wideRune(r):
			b.WriteString("  ")
		default:
			b.WriteByte(' ')
		}
	}
	return b.String()
}

// wideRune reports whether a terminal gives a character two columns.
func wideRune(r rune) bool {
	switch {
	case r < 0x1100:
		return false
	case r <= 0x115f, 0x2e80 <= r && r <= 0xa4cf, 0xac00 <= r && r <= 0xd7a3,
		0xf900 <= r && r <= 0xfaff, 0xfe30 <= r && r <= 0xfe6f, 0xff00 <= r && r <= 0xff60,
		0xffe0 <= r && r <= 0xffe6, 0x1f300 <= r && r <= 0x1faff, 0x20000 <= r && r <= 0x3fffd:
		return true
	}
	return false
}

// Refused reports whether any problem keeps the file from being used.
func Refused(list []Problem) bool {
	return slices.ContainsFunc(list, func(p Problem) bool { return p.Severity == Error })
}

// mostProblems is how many problems of one file are shown; a file with more is
// not the file that was meant.
const mostProblems = 100

// Sorted gives the problems of one file by position, each once.
func Sorted(list []Problem) []Problem {
	slices.SortStableFunc(list, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column), cmp.Compare(a.Severity, b.Severity),
			cmp.Compare(a.What, b.What))
	})
	list = slices.CompactFunc(list, func(a, b Problem) bool {
		return a.Line == b.Line && a.Column == b.Column && a.What == b.What
	})
	if n := len(list) - mostProblems; n > 0 {
		last := list[mostProblems]
		more := Problem{Severity: Error, File: last.File, Line: last.Line, Column: last.Column,
			What: fmt.Sprintf("and %d more problems from here on", n), Text: last.Text}
		list = append(list[:mostProblems:mostProblems], more)
	}
	return list
}
