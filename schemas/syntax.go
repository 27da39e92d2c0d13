package schemas

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"
)

var syntaxLine = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`) })

// valueStart matches up to a quote at the start of a value.
var valueStart = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^ *(?:- +)*(?:[A-Za-z0-9_]+ *: +)?(?:{.*: +)?["']`)
})

// blockSign matches a value that begins with a sign by which YAML begins a block
// of text, as in >38 um.
var blockSign = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[^>|'"]*: +[>|][^ ]`) })

// syntax turns an error of the YAML library, which has no column and often the
// wrong line, into problems with a place.
func (t *tree) syntax(err error, text string) []Problem {
	if tabs := t.tabs(); len(tabs) > 0 {
		return tabs
	}
	line, message := 1, err.Error()
	if m := syntaxLine().FindStringSubmatch(message); m != nil {
		line, _ = strconv.Atoi(m[1])
		message = m[2]
	}
	line = t.firstFailing(max(line, 1), message, text)
	if p, found := t.openQuote(line); found {
		return []Problem{p}
	}
	if strings.Contains(message, "exceeded max depth") {
		return []Problem{t.tooDeep(line)}
	}
	column, what, hint := explainSyntax(message, t.file.line(line))
	return []Problem{{File: t.file.Name, Line: line, Column: column, What: what, Hint: hint, Text: t.file.line(line)}}
}

// tabs finds tabs in indentation, which YAML refuses with a message that names
// no tab.
func (t *tree) tabs() []Problem {
	var list []Problem
	for i, line := range t.file.lines {
		indent := line[:len(line)-len(strings.TrimLeft(line, " \t"))]
		if at := strings.IndexByte(indent, '\t'); at >= 0 && strings.TrimSpace(line) != "" && len(list) < mostProblems {
			list = append(list, Problem{File: t.file.Name, Line: i + 1, Column: at + 1, What: "a tab in the indentation",
				Accepted: "spaces", Hint: "indent with spaces, two for each level", Text: line})
		}
	}
	return list
}

// tooDeep is for nesting that the library itself gives up on.
func (t *tree) tooDeep(line int) Problem {
	text := t.file.line(line)
	column := 1
	if at := strings.IndexAny(text, "[{"); at >= 0 {
		column = 1 + len([]rune(text[:at]))
	}
	return Problem{File: t.file.Name, Line: line, Column: column, What: "nested far too deeply", Accepted: deepest,
		Hint: "look for brackets that are not closed", Text: text}
}

var deepest = fmt.Sprintf("at most %d levels", mostDepth)

// openQuote finds a quote that begins a value and is never closed. The parser
// notices only at some later quote.
func (t *tree) openQuote(last int) (Problem, bool) {
	lines := t.file.lines[:min(last, len(t.file.lines))]
	for i := 0; i < len(lines); i++ {
		at := valueStart().FindStringIndex(lines[i])
		if at == nil {
			continue
		}
		end := closedIn(lines[i:], at[1])
		if end < 0 {
			return Problem{File: t.file.Name, Line: i + 1, Column: len([]rune(lines[i][:at[1]])), What: "a quote that is " +
				"not closed",
				Accepted: "a text with a quote at both ends", Hint: "close it at the end of the text", Text: lines[i]}, true
		}
		i += end
	}
	return Problem{}, false
}

// closedIn gives how many lines below the first the quote ends that stands
// before from in it, -1 where it does not end. In a later line only a quote
// that nothing follows is taken for its end: another begins a text of its own.
func closedIn(lines []string, from int) int {
	quote := lines[0][from-1 : from]
	for i, line := range lines {
		if i == 0 {
			line = line[from:]
		}
		line = strings.ReplaceAll(strings.ReplaceAll(line, `\"`, ""), "''", "")
		_, rest, found := strings.Cut(line, quote)
		switch rest = strings.TrimLeft(rest, " "); {
		case !found:
		case i == 0 || rest == "" || strings.ContainsAny(rest[:1], ",]}#"):
			return i
		default:
			return -1
		}
	}
	return -1
}

// firstFailing finds the first line with which the same error appears, by
// reading shorter and shorter beginnings of the file. Large files keep the line
// the library gave.
func (t *tree) firstFailing(line int, message, text string) int {
	total := len(t.file.lines)
	if len(text) > 64<<10 {
		return min(line, total)
	}
	fails := func(n int) bool {
		err := readable(strings.Join(t.file.lines[:n], "\n") + "\n")
		return err != nil && strings.HasSuffix(err.Error(), message)
	}
	low, high := 0, total
	for high-low > 1 {
		if mid := (low + high) / 2; fails(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	for high > 1 && strings.TrimSpace(t.file.line(high)) == "" {
		high--
	}
	return high
}

// explainSyntax gives column, message and hint for an error on a line.
func explainSyntax(message, line string) (column int, what, hint string) {
	column = 1 + len([]rune(line)) - len([]rune(strings.TrimLeft(line, " ")))
	switch {
	case strings.Contains(message, "mapping values are not allowed"):
		if at := secondColon(line); at > 0 {
			return at, "a second colon in one value", "put the text in quotes"
		}
		return column, "a key in a place where none can be", "check that the line is indented as the line above, or " +
			"put the text in quotes"
	case strings.Contains(message, "cannot start any token"):
		if at := strings.IndexAny(line, "\t@`%"); at >= 0 {
			column = 1 + len([]rune(line[:at]))
		}
		return column, "a character that cannot begin a value", "put the text in quotes, and indent with spaces"
	case strings.Contains(message, "found unexpected end of stream"):
		return column, "a quote or bracket that is not closed", "close it, or check the line before"
	case strings.Contains(message, "',' or ']'"), strings.Contains(message, "',' or '}'"):
		if at := strings.IndexAny(line, "{["); at >= 0 {
			column = 1 + len([]rune(line[:at]))
		}
		return column, "a bracket that is not closed, or a comma that is missing", "check the brackets { } and [ ]"
	case strings.Contains(message, "could not find expected ':'"):
		return column, "a line without a colon between key and value", "write key: value"
	case strings.Contains(message, "unknown anchor"), strings.Contains(message, "alphabetic or numeric character"):
		if at := strings.IndexAny(line, "*&"); at >= 0 {
			column = 1 + len([]rune(line[:at]))
		}
		return column, "a value that begins with * or &", "put the text in quotes"
	case blockSign().MatchString(line):
		return 1 + len([]rune(line[:strings.IndexAny(line, ">|")])), "a value that begins with > or |",
			"write a number alone, and text with such a sign in quotes"
	case strings.Contains(message, "did not find expected"):
		return column, "a line that does not fit the lines above it",
			"check that keys of one map, and dashes of one list, begin in the same column"
	}
	return column, "not readable as YAML: " + message, "put text with special characters in quotes"
}

// secondColon is the column of the second ": " outside of quotes, 0 if none.
func secondColon(line string) int {
	seen, column, quote := 0, 0, rune(0)
	for i, r := range line {
		column++
		switch {
		case quote != 0:
			if r == quote {
				quote = 0
			}
		case (r == '"' || r == '\'') && (i == 0 || line[i-1] == ' '):
			quote = r
		case r == ':' && (i+1 == len(line) || line[i+1] == ' '):
			if seen++; seen == 2 {
				return column
			}
		}
	}
	return 0
}
