package working_test

import (
	"testing"

	"etchbound/chemicals/working"
)

// What a line rests on, and no more, numbered anew; the line itself is the last.
func TestUnder(t *testing.T) {
	w := working.NewSheet()
	a, b := working.Given("a", "g", 2, "here"), working.Given("b", "g", 3, "there")
	w.Line("x", "g", "b*b", 9, b, b)
	c := w.Line("c", "g", "a*a", 4, a, a)
	d := w.Line("d", "g", "c+a", 6, c, a)
	got := w.Under(d.Line())
	if len(got) != 3 || got[0].Symbol != "a" || got[1].Symbol != "c" || got[2].Symbol != "d" || got[2].N != 3 {
		t.Fatalf("%+v", got)
	}
	if in := got[2].In; in[0].Line != 2 || in[1].Line != 1 || got[1].In[0].Line != 1 {
		t.Errorf("%+v", got)
	}
	if w.Lines[d.Line()-1].N != d.Line() || w.Under(0) != nil || w.Under(99) != nil {
		t.Error("the sheet was changed, or a line that is none has some under it")
	}
}
