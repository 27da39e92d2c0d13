package edit

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"etchbound/schemas"
)

// page is the text of a file with the places where its lines begin.
type page struct {
	text   string
	starts []int
}

func newPage(text string) page {
	p := page{text, []int{0}}
	for i := 0; i < len(text); i++ {
		switch {
		case text[i] == '\n', text[i] == '\r' && !strings.HasPrefix(text[i:], "\r\n"):
			p.starts = append(p.starts, i+1)
		}
	}
	return p
}

// ending is how lines of the file end: as the first one does.
func (p page) ending() string {
	if i := strings.IndexAny(p.text, "\r\n"); i >= 0 {
		return p.text[i:p.nextLine(i)]
	}
	return "\n"
}

// offset is that of a line and a column, both from 1, columns in characters.
func (p page) offset(line, column int) int {
	at := p.starts[line-1]
	for range column - 1 {
		_, size := utf8.DecodeRuneInString(p.text[at:])
		at += size
	}
	return at
}

// lineEnd is where the line that holds an offset ends, before its line break.
func (p page) lineEnd(at int) int {
	if i := strings.IndexAny(p.text[at:], "\r\n"); i >= 0 {
		return at + i
	}
	return len(p.text)
}

// nextLine is what follows the line break at an offset.
func (p page) nextLine(at int) int {
	switch {
	case strings.HasPrefix(p.text[at:], "\r\n"):
		return at + 2
	case at < len(p.text):
		return at + 1
	}
	return at
}

// inBraces reports whether a map or a list is written between braces or brackets.
func (p page) inBraces(n *schemas.Node) bool {
	at := p.offset(n.Line, n.Column)
	return (n.Kind == schemas.Map || n.Kind == schemas.List) && at < len(p.text) &&
		(p.text[at] == '{' || p.text[at] == '[')
}

// end is where a value that stands on its own line, or in braces, ends.
func (p page) end(n *schemas.Node) (int, error) {
	at := p.offset(n.Line, n.Column)
	rest := p.text[at:]
	switch {
	case p.inBraces(n):
		return p.braces(at)
	case n.Kind == schemas.Map || n.Kind == schemas.List || n.Text == "" && !n.Quoted:
		return 0, fmt.Errorf("%w: it is no single value", ErrPlace)
	case !n.Quoted && strings.HasPrefix(rest, n.Text):
		return at + len(n.Text), nil
	case n.Quoted && rest != "" && (rest[0] == '"' || rest[0] == '\''):
		return quoteEnd(p.text, at)
	}
	return 0, fmt.Errorf("%w: its text runs over several lines", ErrPlace)
}

// quoteEnd is behind the quote that closes the one at an offset.
func quoteEnd(text string, at int) (int, error) {
	sign := text[at]
	for i := at + 1; i < len(text); i++ {
		switch {
		case sign == '"' && text[i] == '\\':
			i++
		case text[i] == sign && sign == '\'' && i+1 < len(text) && text[i+1] == sign:
			i++
		case text[i] == sign:
			return i + 1, nil
		}
	}
	return 0, fmt.Errorf("%w: a quote is not closed", ErrPlace)
}

// braces is behind what closes the brace or bracket at an offset.
func (p page) braces(at int) (int, error) {
	depth := 0
	for i := at; i < len(p.text); i++ {
		switch c := p.text[i]; {
		case c == '{' || c == '[':
			depth++
		case c == '}' || c == ']':
			if depth--; depth == 0 {
				return i + 1, nil
			}
		case (c == '"' || c == '\'') && strings.ContainsAny(p.text[i-1:i], " {[,:"):
			end, err := quoteEnd(p.text, i)
			if err != nil {
				return 0, err
			}
			i = end - 1
		case p.comment(i):
			i = p.lineEnd(i)
		}
	}
	return 0, fmt.Errorf("%w: a brace is not closed", ErrPlace)
}

// comment reports whether a comment begins at an offset that is in no quotes.
func (p page) comment(at int) bool {
	return p.text[at] == '#' && (at == 0 || strings.ContainsAny(p.text[at-1:at], " \t\r\n"))
}

// blockEnd is the end of the last line of what stands behind a key of a map that is
// written one key a line.
func (p page) blockEnd(k *schemas.Key) int {
	return p.linesBelow(k.Line, k.Column-1, k.Value.Kind == schemas.List && k.Value.Column == k.Column)
}

// linesBelow is the end of the last line that belongs to the one of a number: those that
// stand further in than an indent, and with dashes those that begin with a dash there.
func (p page) linesBelow(line, indent int, dashes bool) int {
	last := line
	for i := line; i < len(p.starts); i++ { // the line behind that one is the first
		whole := p.text[p.starts[i]:p.lineEnd(p.starts[i])]
		text := strings.TrimLeft(whole, " ")
		in := len(whole) - len(text)
		if strings.TrimSpace(text) == "" {
			continue
		}
		if in <= indent && !(dashes && in == indent && (text == "-" || strings.HasPrefix(text, "- "))) {
			break
		}
		last = i + 1
	}
	return p.lineEnd(p.starts[last-1])
}

// noted joins both parts of a text, with a note at the end of the line on which they
// meet: in a comment of its own, or behind the one that is there.
func (p page) noted(before, after, note string) string {
	if note == "" {
		return before + after
	}
	q := newPage(before + after)
	at := len(before)
	end := q.lineEnd(at)
	sign := " # "
	for i := at; i < end; i++ {
		if c := q.text[i]; c == '"' || c == '\'' {
			if to, err := quoteEnd(q.text, i); err == nil && to <= end {
				i = to - 1
			}
		} else if q.comment(i) {
			sign = "; "
			break
		}
	}
	if head, rest, _ := strings.Cut(note, "; "); sign == "; " && strings.Contains(q.text[at:end], head) {
		if note = rest; note == "" { // it is said there
			return q.text
		}
	}
	return strings.TrimRight(q.text[:end], " ") + sign + note + q.text[end:]
}
