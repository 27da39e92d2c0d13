package long_test

import (
	"slices"
	"testing"

	"etchbound/schemas/long"
)

func TestSomeIsSpreadAndWhole(t *testing.T) {
	list := []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}
	t.Setenv(long.Variable, "")
	if testing.Short() {
		if got := long.Some(list, 5, 2); !slices.Equal(got, []int{0, 5}) {
			t.Errorf("the short form takes %v", got)
		}
	} else if got := long.Some(list, 5, 2); !slices.Equal(got, []int{0, 2, 4, 6, 8}) {
		t.Errorf("the usual form takes %v", got)
	}
	if got := long.Some(list, 20, 20); !slices.Equal(got, list) {
		t.Errorf("twenty of ten are %v", got)
	}
	t.Setenv(long.Variable, "1")
	if got := long.Some(list, 5, 2); !slices.Equal(got, list) {
		t.Errorf("the long form takes %v", got)
	}
}

// A test that asks for the long form runs in no other.
func TestOnly(t *testing.T) {
	for value, want := range map[string]bool{"": false, "1": true} {
		t.Setenv(long.Variable, value)
		ran := false
		t.Run("asks", func(t *testing.T) {
			r := &recorder{TB: t}
			long.Only(r)
			ran = !r.skipped
		})
		if ran != want {
			t.Errorf("%s=%q: ran %v", long.Variable, value, ran)
		}
	}
}

// recorder notes a skip and goes on.
type recorder struct {
	testing.TB
	skipped bool
}

func (r *recorder) Skip(...any) { r.skipped = true }

// What is no part of the short form runs in the others.
func TestNotShort(t *testing.T) {
	r := &recorder{TB: t}
	long.NotShort(r)
	if r.skipped != testing.Short() {
		t.Errorf("skipped: %v", r.skipped)
	}
}
