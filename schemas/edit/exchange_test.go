package edit_test

import (
	"errors"
	"testing"

	"etchbound/schemas/edit"
)

const ordered = `steps:
  # the powder first
  - do: charge
    what: [precursor] # dry
    note: it waits

  - {do: hold, in: etch}
  # then the acid
  # all of it
  - do: add
    over: 5 min
# the end
`

// Two items change places with the comments over them; the rest of the file stays.
func TestTwoItemsChangePlaces(t *testing.T) {
	const want = `steps:
  # then the acid
  # all of it
  - do: add # was third
    over: 5 min

  - {do: hold, in: etch}
  # the powder first
  - do: charge
    what: [precursor] # dry
    note: it waits
# the end
`
	for _, e := range []edit.Edit{{Path: "steps[0]", With: "steps[2]"}, {Path: "steps[2]", With: "steps[0]"}} {
		e.Note = "was third"
		if got, err := edit.Apply([]byte(ordered), e); err != nil || string(got) != want {
			t.Errorf("%v\n%s", err, got)
		}
	}
	got, err := edit.Apply([]byte("a: [{b: 1}, [2], {c: 3}] # d\n"), edit.Edit{Path: "a[0]", With: "a[1]", Note: "e"})
	if err != nil || string(got) != "a: [[2], {b: 1}, {c: 3}] # d; e\n" {
		t.Errorf("%v\n%s", err, got)
	}
	for _, with := range []string{"steps[0]", "steps[3]", "steps", "places[1]", "other[1]"} {
		if _, err := edit.Apply([]byte(ordered), edit.Edit{Path: "steps[0]", With: with}); !errors.Is(err, edit.ErrPlace) {
			t.Errorf("%s: %v, want ErrPlace", with, err)
		}
	}
}
