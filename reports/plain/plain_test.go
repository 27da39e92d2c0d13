package plain

import (
	"strings"
	"testing"
)

// What no reader can see never reaches him: control characters and those that turn the
// direction of a text (Unicode, general category Cc, and the bidirectional controls of
// its Annex 9).
func TestPrintable(t *testing.T) {
	for in, want := range map[string]string{"a\x1b[31mb": "a[31mb", "a\u202eb": "ab", "a\tb\nc": "a b c", "°C": "°C",
		"\u2067x\u0085": "x"} {
		if got := Printable(in); got != want {
			t.Errorf("%q becomes %q, want %q", in, got, want)
		}
	}
}

func TestLines(t *testing.T) {
	for _, c := range []struct{ name, got, want string }{
		{"folded", Fold(" a\n  b\t"), "a b"}, {"digest", ShortDigest("0123456789abcdef"), "0123456789ab"},
		{"of nothing", ShortDigest(""), ""}, {"one and none", Join("", "b"), "b"}, {"two", Join("a", "b"), "a; b"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
}

// An id has letters, digits, hyphens and underscores alone, and no two texts share one.
func TestIDsDiffer(t *testing.T) {
	seen := map[string]string{}
	for _, text := range []string{"a.b", "a_b", "a-b", "a b", "a_2eb", "a@2", "a_402", "ä",
		"gas.closed.pressure@spin:shut"} {
		id := ID(text)
		if other, ok := seen[id]; ok || strings.Trim(id, "abcdefghijklmnopqrstuvwxyz0123456789-_") != "" {
			t.Errorf("%q has the id %q, as %q has", text, id, other)
		}
		seen[id] = text
	}
}
