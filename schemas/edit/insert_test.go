package edit_test

import (
	"errors"
	"strings"
	"testing"

	"etchbound/schemas"
	"etchbound/schemas/edit"
)

// An item goes in before another, whose comments stay over it, in every layout; the rest
// of the file stays to the byte.
func TestAnItemIsPutInBeforeAnother(t *testing.T) {
	for _, x := range []struct{ path, was, is string }{
		{"steps[0]", "steps:\n", "steps:\n- NEW\n"},
		{"steps[1]", "- do: charge\n", "- NEW\n- do: charge\n"},
		{"steps[0].what[0]", "[precursor]", "[NEW, precursor]"},
		{"steps[1].what[0]", "  what:\n    - {sub", "  what:\n    - NEW\n    - {sub"},
		{"measured.curve.points[0]", "points:\n", "points:\n      - NEW\n"},
	} {
		to := "{do: hold, in: etch}"
		want := strings.Replace(small, x.was, strings.Replace(x.is, "NEW", to, 1), 1)
		got, err := edit.Apply([]byte(small), edit.Edit{Path: x.path, To: to, Before: true})
		if err != nil || string(got) != want {
			t.Errorf("%s: %v\n%s", x.path, err, got)
		}
		if root, problems := schemas.Places("x", got); root == nil || schemas.Refused(problems) {
			t.Errorf("%s: not read: %v", x.path, problems)
		}
	}
	told := strings.Replace(small, "- do: charge\n", "# told of it\n- do: charge\n", 1)
	want := strings.Replace(told, "# told of it\n", "- x\n# told of it\n", 1)
	if got, err := edit.Apply([]byte(told), edit.Edit{Path: "steps[1]", To: "x", Before: true}); string(got) != want {
		t.Errorf("%v\n%s", err, got)
	}
	for _, path := range []string{"steps[2]", "steps", "places.etch", "nothing[0]"} {
		if _, err := edit.Apply([]byte(small), edit.Edit{Path: path, To: "x", Before: true}); !errors.Is(err, edit.ErrPlace) {
			t.Errorf("%s: %v, want ErrPlace", path, err)
		}
	}
}
