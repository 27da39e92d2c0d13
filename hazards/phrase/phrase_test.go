package phrase_test

import (
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
)

func TestNothingIsSaidWithoutASheet(t *testing.T) {
	if p := phrase.On(nil, "finding.hot", 3.0); !p.IsZero() {
		t.Errorf("%+v is said where nobody reads it", p)
	}
	got := phrase.On(working.NewSheet(), "finding.hot", 3.0, 4.0)
	if want := phrase.Of("finding.hot", 3.0, 4.0); !got.Equal(want) || got.IsZero() {
		t.Errorf("%+v, want %+v", got, want)
	}
}

func TestEqualAsksForAllThatIsSaid(t *testing.T) {
	p := phrase.Of("lid", "etch", 2).And(phrase.As("as written"))
	for name, q := range map[string]phrase.Phrase{
		"another key":       phrase.Of("lids", "etch", 2).And(phrase.As("as written")),
		"another argument":  phrase.Of("lid", "etch", 3).And(phrase.As("as written")),
		"one argument less": phrase.Of("lid", "etch").And(phrase.As("as written")),
		"nothing behind it": phrase.Of("lid", "etch", 2),
		"other words":       phrase.Of("lid", "etch", 2).And(phrase.As("As written")),
	} {
		if p.Equal(q) {
			t.Errorf("%s is taken for the same", name)
		}
	}
	if !p.Equal(phrase.Of("lid", "etch", 2).And(phrase.As("as written"))) {
		t.Error("the same said twice is not the same")
	}
}

// And leaves what it was asked of as it was: two phrases grown from one do not share
// what stands behind it.
func TestAndChangesNothingElse(t *testing.T) {
	base := phrase.Of("a").And(phrase.Of("b"), phrase.Of("c"), phrase.Of("d"))
	one, two := base.And(phrase.As("one")), base.And(phrase.As("two"))
	if one.More[3].Text != "one" || two.More[3].Text != "two" || len(base.More) != 3 {
		t.Errorf("%+v and %+v of %+v", one, two, base)
	}
}

// The step that a phrase is of is told from other numbers, and others can stand in its place.
func TestStepsStandInAPhrase(t *testing.T) {
	p := phrase.Of("wash", "etch", 3, phrase.Step(2), phrase.Of("inner", phrase.Step(7)))
	if n, ok := p.Step(); !ok || n != 2 {
		t.Errorf("of step %d, %v", n, ok)
	}
	of := p.At(phrase.Steps{2, 5})
	if _, one := of.Step(); one || !of.Names(phrase.Steps{2, 5}) || !p.Names(phrase.Step(2)) {
		t.Errorf("%+v of %+v", of, p)
	}
	for what, want := range map[any]bool{phrase.Step(7): true, phrase.Step(3): false, 3: true, "etch": true, "et": false} {
		if p.Names(what) != want {
			t.Errorf("names %v: %v", what, !want)
		}
	}
	if q := phrase.Of("dry", 2); !q.At(phrase.Steps{1, 2}).Equal(q) {
		t.Error("a phrase of no step is of some")
	}
}

func TestZeroSaysNothing(t *testing.T) {
	if !(phrase.Phrase{}).IsZero() || !phrase.As("").IsZero() {
		t.Error("nothing is said, and is not nothing")
	}
	if all := phrase.AsAll([]string{"x", "y"}); len(all) != 2 || all[1].Text != "y" || all[0].IsZero() {
		t.Errorf("%+v", all)
	}
	if (phrase.Phrase{}).And(phrase.As("x")).IsZero() {
		t.Error("what stands behind nothing is something")
	}
}
