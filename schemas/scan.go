package schemas

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// mostBytes is the largest file read: 1 MiB, about ten thousand steps.
const mostBytes = 1 << 20

// splitLines parts the text where YAML does: LF, CR LF or a lone CR.
func splitLines(text string) []string {
	text = strings.ReplaceAll(text, "\r\n", "\n")
	return strings.Split(strings.ReplaceAll(text, "\r", "\n"), "\n")
}

// encoding refuses what is not UTF-8 text, before any parser sees it.
func encoding(name string, raw []byte) []Problem {
	for _, mark := range []string{"\xff\xfe", "\xfe\xff", "\x00"} {
		if bytes.HasPrefix(raw, []byte(mark)) || len(raw) > 1 && mark == "\x00" && raw[1] == 0 {
			return []Problem{{File: name, Line: 1, Column: 1, What: "the file is not UTF-8 text (it looks like UTF-16)",
				Accepted: "UTF-8 text", Hint: "save it again with the encoding UTF-8"}}
		}
	}
	var list []Problem
	for i, line := range splitLines(string(raw)) {
		list = append(list, encodingOfLine(name, i+1, line)...)
		if len(list) > mostProblems {
			break
		}
	}
	return list
}

func encodingOfLine(name string, number int, line string) []Problem {
	var list []Problem
	column, comment, before := 0, false, ' '
	for i, r := range line {
		column++
		comment = comment || r == '#' && (before == ' ' || before == '\t')
		before = r
		what, hint := badRune(r, line[i:], comment)
		if what == "" {
			continue
		}
		list = append(list, Problem{File: name, Line: number, Column: column, What: what,
			Accepted: "visible UTF-8 text and ordinary spaces", Hint: hint, Text: printable(line)})
		if len(list) == 3 {
			break
		}
	}
	return list
}

// badRune says what is wrong with a character. Spaces that only look like
// spaces do no harm in a comment.
func badRune(r rune, rest string, comment bool) (what, hint string) {
	switch {
	case r == utf8.RuneError && strings.HasPrefix(rest, "\ufffd"):
		return "a replacement character (U+FFFD): a letter was lost here when the file was saved",
			"write the letter again and save as UTF-8"
	case r == utf8.RuneError:
		return fmt.Sprintf("the byte 0x%02X is not UTF-8", rest[0]), "save the file again with the encoding UTF-8"
	case r == '\t', r >= ' ' && r < 0x7f:
		return "", ""
	case r < ' ' || r >= 0x7f && r < 0xa0 || r == '\u2028' || r == '\u2029':
		return fmt.Sprintf("a control character (U+%04X)", r), "delete it"
	case 0x202a <= r && r <= 0x202e, 0x2066 <= r && r <= 0x2069, r == 0x200e, r == 0x200f:
		return fmt.Sprintf("a character that changes the direction of the text (U+%04X)", r), "delete it"
	case comment:
		return "", ""
	case r == '\u00a0' || r == '\u202f' || 0x2000 <= r && r <= 0x200a || r == '\u3000':
		return fmt.Sprintf("a no-break or special space (U+%04X)", r), "replace it by an ordinary space"
	case 0x200b <= r && r <= 0x200d, r == 0x2060, r == 0xfeff, r == 0xad:
		return fmt.Sprintf("an invisible character (U+%04X)", r), "delete it"
	}
	return "", ""
}

// printable keeps control characters out of messages, one for one.
func printable(line string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' || r >= 0x7f && r < 0xa0 || 0x2028 <= r && r <= 0x202e || 0x2066 <= r && r <= 0x2069 {
			return '\ufffd'
		}
		return r
	}, line)
}
