package chart

import (
	"strings"
	"unicode"
)

// clean is s in one line of characters that XML can hold, without those that
// turn the direction of what follows.
func clean(s string) string {
	s = strings.ToValidUTF8(s, "\ufffd")
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r) || r == 0x2028 || r == 0x2029:
			return ' '
		case unicode.IsControl(r), r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069, r&0xfffe == 0xfffe:
			return -1
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}

// em is the width of a character as a part of the letter size. No font is
// known where the picture is seen, so each group has the width of the widest of
// the common fonts without serifs, so that hardly any text is wider than thought.
func em(r rune) float64 {
	switch {
	case strings.ContainsRune("ijl'|", r):
		return 0.34
	case strings.ContainsRune(" fIrt.,:;!()[]/\\-²³·", r):
		return 0.42
	case strings.ContainsRune("mwMW%@æœÆŒŴ©®¼½¾", r):
		return 1.1
	case strings.ContainsRune("+=<>~#^&±×÷¬ŵ", r):
		return 0.84
	case unicode.IsUpper(r) && r < 0x250:
		return 0.79
	case r < 0x250:
		return 0.64
	case r == '‰' || r >= 0x1f000:
		return 1.4
	}
	return 1.1
}

// bold is by how much heavy letters are wider.
const bold = 1.15

// width of s in letters of a size.
func width(s string, size float64) float64 {
	w := 0.0
	for _, r := range s {
		w += em(r)
	}
	return w * size
}

// clip cuts s to a width; what was cut is seen by the ellipsis.
func clip(s string, size, room float64) string {
	if width(s, size) <= room {
		return s
	}
	out, _ := fit(s, size, room-width("…", size))
	return strings.TrimRight(out, " ,;:-") + "…"
}

// fit parts s where the room ends, after at least one character.
func fit(s string, size, room float64) (head, tail string) {
	w := 0.0
	for i, r := range s {
		w += em(r) * size
		if w > room && i > 0 {
			return s[:i], s[i:]
		}
	}
	return s, ""
}

// wrap breaks s into at most n lines of a width, between words where it can.
func wrap(s string, size, room float64, n int) []string {
	var lines []string
	for s != "" && len(lines) < n-1 {
		head, tail := fit(s, size, room)
		if at := strings.LastIndexByte(head, ' '); tail != "" && tail[0] != ' ' && at > 0 {
			head, tail = head[:at], s[at:]
		}
		lines = append(lines, strings.TrimSpace(head))
		s = strings.TrimSpace(tail)
	}
	if s != "" {
		lines = append(lines, clip(s, size, room))
	}
	return lines
}

// widest is the width of the widest of the lines.
func widest(lines []string, size float64) float64 {
	w := 0.0
	for _, l := range lines {
		w = max(w, width(l, size))
	}
	return w
}
