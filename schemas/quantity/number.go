package quantity

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// scanNumber reads a plain decimal, [+-]digits[.digits][e[+-]digits], from the
// start of s and gives its value and length in bytes. The Unicode minus counts
// as a minus. strconv alone will not do: it takes nan, 0x10 and 1_000, and
// turns 1e-400 into 0 without a word.
func scanNumber(s string) (float64, int, *Error) {
	n := numberLength(s)
	if n == 0 {
		return 0, 0, noNumber(s)
	}
	text := s[:n]
	if err := numberTail(text, s[n:]); err != nil {
		return 0, 0, err
	}
	plain := strings.Replace(text, "\u2212", "-", 1)
	digits := strings.TrimLeft(plain, "+-")
	if len(digits) > 1 && digits[0] == '0' && isDigit(digits[1]) {
		return 0, 0, &Error{Reason: ErrNumber, Found: text,
			What: "a number with leading zeros, which some programs read as octal",
			Hint: "write " + strings.TrimLeft(digits[:len(digits)-1], "0") + digits[len(digits)-1:]}
	}
	v, err := strconv.ParseFloat(plain, 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, 0, &Error{Reason: ErrNumber, Found: text, What: "a number too large to hold"}
	}
	if v == 0 && strings.ContainsAny(mantissa(digits), "123456789") {
		return 0, 0, &Error{Reason: ErrNumber, Found: text, What: "a number too small to hold"}
	}
	return v, n, nil
}

// PlainNumber reads a whole text as one plain decimal number.
func PlainNumber(s string) (float64, error) {
	v, n, e := scanNumber(s)
	if e == nil && n != len(s) {
		e = &Error{Reason: ErrNumber, Found: s, What: "no plain decimal number"}
	}
	if e != nil {
		e.Text, e.Accepted = s, Accepted(None)
		if e.ranged {
			e.Hint = "write one number, without a range"
		}
		return 0, e
	}
	return v, nil
}

func mantissa(digits string) string {
	if i := strings.IndexAny(digits, "eE"); i >= 0 {
		return digits[:i]
	}
	return digits
}

// numberLength is the length of the longest plain decimal at the start of s, 0
// where there is none.
func numberLength(s string) int {
	i := 0
	switch {
	case strings.HasPrefix(s, "\u2212"):
		i = len("\u2212")
	case s != "" && (s[0] == '+' || s[0] == '-'):
		i = 1
	}
	start := i
	i += digitRun(s[i:])
	if i == start {
		return 0
	}
	if i < len(s) && s[i] == '.' {
		if d := digitRun(s[i+1:]); d > 0 {
			i += 1 + d
		}
	}
	return i + exponentLength(s[i:])
}

// exponentLength is the length of an exponent; 0 where the e begins a word.
func exponentLength(s string) int {
	if s == "" || s[0] != 'e' && s[0] != 'E' {
		return 0
	}
	i := 1
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	d := digitRun(s[i:])
	if d == 0 {
		return 0
	}
	return i + d
}

func digitRun(s string) int {
	n := 0
	for n < len(s) && isDigit(s[n]) {
		n++
	}
	return n
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// noNumber says why no number begins s.
func noNumber(s string) *Error {
	e := &Error{Reason: ErrNumber, Found: firstWord(s), What: "no number at the start"}
	low := strings.ToLower(strings.TrimLeft(s, "+-\u2212."))
	switch {
	case strings.TrimSpace(s) == "":
		e.What = "no number at all"
	case len(lookup(s)) > 0:
		e.What, e.Hint = "a unit without a number", "write your own number before it"
	case strings.HasPrefix(low, "nan"), strings.HasPrefix(low, "inf"):
		e.Reason, e.What = ErrFinite, "not a finite number"
	case strings.HasPrefix(s, ".") && digitRun(s[1:]) > 0:
		e.What, e.Hint = "a number that begins with its point", "write 0"+s
	case strings.HasPrefix(s, "~"), strings.HasPrefix(s, "\u2248"), strings.HasPrefix(low, "ca"),
		strings.HasPrefix(low, "about"):
		e.ranged, e.Hint = true, "write the number alone, or with its range: "+rangeLike(s)
	case strings.HasPrefix(s, "<"), strings.HasPrefix(s, ">"), strings.HasPrefix(s, "\u2264"),
		strings.HasPrefix(s, "\u2265"):
		e.ranged, e.Hint = true, "write one number, or a number with its range: "+rangeLike(s)
	case foreign[unitSpelling.Replace(s)] != "":
		e.Hint = foreign[unitSpelling.Replace(s)]
	}
	return e
}

// numberTail refuses what follows a number when it shows that the number was
// meant differently from how it would be read.
func numberTail(number, rest string) *Error {
	if rest == "" {
		return nil
	}
	e := &Error{Reason: ErrNumber, Found: number + firstWord(rest)}
	next, _ := utf8.DecodeRuneInString(rest)
	after := strings.TrimLeft(rest, " \u00a0\u202f")
	switch {
	case next == '.' && digitRun(rest[1:]) > 0, next == '.' && strings.Contains(number, "."):
		e.What = "a number with two points"
	case next == '.':
		e.What, e.Hint = "a number that ends in its point", "write "+number
	case next == ',' && digitRun(rest[1:]) > 0:
		e.Found = number + beforeWord(rest)
		e.What, e.Hint = commaWords(number, rest[1:])
	case next == '_':
		e.What, e.Hint = "an underscore inside a number", "write the digits without it"
	case (next == 'x' || next == 'X') && strings.Trim(number, "+-0") == "":
		e.What, e.Hint = "a hexadecimal number", "write it as a plain decimal number"
	case (next == 'o' || next == 'b') && number == "0" && len(rest) > 1 && isDigit(rest[1]):
		e.What, e.Hint = "an octal or binary number", "write it as a plain decimal number"
	case after != "" && isDigit(after[0]):
		e.Found = number + rest
		e.What, e.Hint = "a number with a gap in it", "write the digits without a space"
	case next == ':':
		e.Found = number + rest
		e.What, e.Hint = "a number with a colon", "write a time with one unit: "+AnyUnit(Time)
	case strings.HasPrefix(after, "\u00d7"), strings.HasPrefix(after, "*"), strings.HasPrefix(after, "^"),
		strings.HasPrefix(after, "x10"), strings.HasPrefix(after, "x 10"):
		e.Found = number + rest
		e.What, e.Hint = "a number with a power of ten written out", "write an exponent, with e before it"
	case strings.HasPrefix(after, "\u00b1"), strings.HasPrefix(after, "+/-"), strings.HasPrefix(after, "+-"):
		e.Found = number + rest
		e.ranged, e.What, e.Hint = true, "a number with a deviation", "write the range: "+rangeLike(after)
	case isRangeSign(after):
		e.Found = number + rest
		e.ranged, e.What, e.Hint = true, "a range without a central value", "write the value first: "+rangeLike(after)
	default:
		return nil
	}
	return e
}

// commaWords says what a comma behind a number is, and how to write what was
// meant. Three digits behind it are a thousand to half of the world, so both
// readings are offered, the larger first; a second comma or a point settles it.
func commaWords(number, rest string) (what, hint string) {
	n := digitRun(rest)
	whole, tail := number+rest[:n], rest[n:]
	for n == 3 && strings.HasPrefix(tail, ",") && digitRun(tail[1:]) == 3 {
		whole, tail = whole+tail[1:4], tail[4:]
	}
	tail = pointed(strings.TrimRight(tail, blanks))
	switch plain := strings.ReplaceAll(number, ".", ""); {
	case plain != number:
		return "a number with points and a comma", "write the digits with one decimal point: " + plain + "." + rest[:n] + tail
	case n != 3 || strings.TrimLeft(number, "+-\u2212") == "0":
		return "a decimal comma", "write a decimal point: " + number + "." + rest[:n] + tail
	case whole != number+rest[:n], strings.HasPrefix(tail, "."):
		return "a comma between thousands", "write the digits without it: " + whole + tail
	}
	return "a comma that parts thousands or decimals",
		"write " + whole + tail + ", or " + number + "." + rest[:n] + tail + " if the comma is a decimal one"
}

// pointed turns the commas between digits into points, as the range behind a
// number with a decimal comma has them too.
func pointed(s string) string {
	b := []byte(s)
	for i := 1; i+1 < len(b); i++ {
		if b[i] == ',' && isDigit(b[i-1]) && isDigit(b[i+1]) {
			b[i] = '.'
		}
	}
	return string(b)
}

// beforeWord is the first word of s, without a bracket that follows it.
func beforeWord(s string) string {
	return strings.TrimRight(firstWord(s), "()")
}

// isRangeSign reports whether s goes on as "to 11" or "- 11" does.
func isRangeSign(s string) bool {
	for _, sign := range []string{"to ", "-", "\u2013", "\u2014", "\u2212", "...", "\u2026"} {
		if t, ok := strings.CutPrefix(s, sign); ok {
			t = strings.TrimLeft(t, " ")
			return t != "" && isDigit(t[0])
		}
	}
	return false
}

// rangeLike is the form of a range, in the unit that was written.
func rangeLike(s string) string {
	unit := "unit"
	if f := strings.Fields(s); len(f) > 0 && len(lookup(f[len(f)-1])) > 0 {
		unit = f[len(f)-1]
	}
	return "value (low to high) " + unit
}

func firstWord(s string) string {
	if f := strings.Fields(s); len(f) > 0 {
		return f[0]
	}
	return ""
}
