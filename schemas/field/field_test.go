package field_test

import (
	"math"
	"slices"
	"testing"
	"unicode"

	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// A shelf with boxes, each with a lid or without one, stands for a file.
type shelf struct {
	Name  string
	Boxes []box
	Weigh []quantity.Value
	Notes []lid
}

type box struct {
	Key   string
	Full  quantity.Value
	Lid   *lid
	Fixed bool
	Seen  *bool
	Rest  float64
}

type lid struct{ Of string }

var lidKeys = field.Keys[lid]{field.Words("of", func(l *lid) *string { return &l.Of })}

var boxKeys = field.Keys[box]{
	field.Of("full", func(b *box) *quantity.Value { return &b.Full }).Grows(field.GrowsUnlessKept).IsFact(),
	field.Pointer("lid", lidKeys, func(b *box) **lid { return &b.Lid }),
	field.Yes("seen", func(b *box) **bool { return &b.Seen }),
	field.Plain("rest", func(b *box) *float64 { return &b.Rest }),
}

var boxList = field.ListOf[box]{Name: func(_ int, b *box) string { return b.Key }, Under: true,
	Kept: func(b *box) bool { return b.Fixed }}

var keys = field.Keys[shelf]{
	field.Words("name", func(s *shelf) *string { return &s.Name }),
	field.Items("boxes", boxKeys, boxList, func(s *shelf) *[]box { return &s.Boxes }),
	field.Amounts("weigh", func(s *shelf) *[]quantity.Value { return &s.Weigh }),
	field.Items("notes", lidKeys, field.ListOf[lid]{Name: func(_ int, l *lid) string { return l.Of }, Order: true},
		func(s *shelf) *[]lid { return &s.Notes }),
}

func whole() *shelf {
	yes := true
	a := box{"a", quantity.Of(2, "L"), &lid{"cork"}, true, &yes, 1}
	b := box{Key: "b", Full: quantity.Of(3, "L"), Rest: math.NaN()}
	return &shelf{"S", []box{a, b}, []quantity.Value{quantity.Of(1, "kg")}, []lid{{"x"}, {"y"}}}
}

func TestListAndVisit(t *testing.T) {
	var paths, at, kept []string
	for _, f := range keys.File("shelf").List() {
		paths = append(paths, f.Path)
	}
	keys.File("shelf").Visit(whole(), func(s field.Seen) {
		if at = append(at, s.At); s.Kept {
			kept = append(kept, s.At)
		}
	})
	for _, x := range []struct{ got, want []string }{
		{paths, []string{"name", "boxes", "boxes.*.full", "boxes.*.lid", "boxes.*.lid.of", "boxes.*.seen",
			"boxes.*.rest", "weigh", "notes", "notes[].of"}},
		{at, []string{"name", "boxes", "boxes.a.full", "boxes.a.lid", "boxes.a.lid.of", "boxes.a.seen", "boxes.a.rest",
			"boxes.b.full", "boxes.b.lid", "boxes.b.seen", "boxes.b.rest", "weigh",
			"notes", "notes[0].of", "notes[1].of"}},
		{kept, []string{"boxes.a.full", "boxes.a.lid", "boxes.a.lid.of", "boxes.a.seen", "boxes.a.rest"}},
	} {
		if !slices.Equal(x.got, x.want) {
			t.Errorf("got %q\nwant %q", x.got, x.want)
		}
	}
}

// What is stated otherwise is told by where it stands, and what is not is not.
func TestBeside(t *testing.T) {
	for _, row := range []struct {
		name   string
		change func(*shelf)
		want   []string
	}{
		{"nothing", func(*shelf) {}, nil},
		{"another unit", func(s *shelf) { s.Boxes[0].Full = quantity.Of(2000, "mL") }, nil},
		{"a text", func(s *shelf) { s.Name = "T" }, []string{"shelf/name: S, T"}},
		{"an amount", func(s *shelf) { s.Boxes[1].Full = quantity.Of(4, "L") }, []string{"boxes/b: full: 3 L, 4 L"}},
		{"a map taken out", func(s *shelf) { s.Boxes[0].Lid = nil }, []string{"boxes/a: lid: of: cork, "}},
		{"an item taken out", func(s *shelf) { s.Boxes = s.Boxes[1:] }, []string{"boxes/boxes: a, "}},
		{"all items taken out", func(s *shelf) { s.Boxes = nil }, []string{"boxes/boxes: a, b, "}},
		{"the other order", func(s *shelf) { slices.Reverse(s.Boxes) }, nil},
		{"the other order of what has one", func(s *shelf) { slices.Reverse(s.Notes) }, []string{"notes/notes: x, y, y, x"}},
		{"a flag", func(s *shelf) { s.Boxes[0].Seen = nil }, []string{"boxes/a: seen: true, "}},
		{"a number", func(s *shelf) { s.Boxes[1].Rest = 2 }, []string{"boxes/b: rest: , 2"}},
		{"a list", func(s *shelf) { s.Weigh = append(s.Weigh, quantity.Of(2, "kg")) },
			[]string{"shelf/weigh: 1 kg, 1 kg, 2 kg"}},
	} {
		b := whole()
		row.change(b)
		var got []string
		keys.File("shelf").Beside(whole(), b, func(x field.Beside) {
			if !x.Same() {
				got = append(got, x.Where+"/"+x.Name+": "+x.Value.String()+", "+x.Other.String())
			}
		})
		if !slices.Equal(got, row.want) {
			t.Errorf("%s: %q, want %q", row.name, got, row.want)
		}
	}
}

// Own memory is not that of what was copied.
func TestOwn(t *testing.T) {
	a := whole()
	b := *a
	keys.Own(&b)
	b.Boxes[0].Full, b.Boxes[0].Lid.Of, *b.Boxes[0].Seen, b.Weigh[0] = quantity.Value{}, "glass", false, quantity.Value{}
	if x := a.Boxes[0]; !x.Full.Set || x.Lid.Of != "cork" || !*x.Seen || !a.Weigh[0].Set {
		t.Errorf("the first is now %+v", a)
	}
}

// A range counts for whether two amounts state the same, on whichever side it is.
func TestEqual(t *testing.T) {
	v := func(text string) quantity.Value {
		q, err := quantity.Parse(text, quantity.Mass)
		if err != nil {
			t.Fatal(err)
		}
		return q
	}
	for _, row := range []struct {
		a, b string
		want bool
	}{{"2 g", "2000 mg", true}, {"2 g", "2.1 g", false}, {"2 (1 to 3) g", "2 g", false},
		{"2 (1 to 3) g", "2 (1 to 4) g", false}, {"2 (1 to 3) g", "2000 (1000 to 3000) mg", true}} {
		if field.Equal(v(row.a), v(row.b)) != row.want || field.Equal(v(row.b), v(row.a)) != row.want {
			t.Errorf("%s and %s are taken otherwise than %v", row.a, row.b, row.want)
		}
	}
}

// What is most alike in all stays together: a capital letter is the same letter, but less
// alike.
func TestInOrder(t *testing.T) {
	mark := func(x, y *rune) int {
		switch {
		case *x == *y:
			return 3
		case unicode.ToLower(*x) == unicode.ToLower(*y):
			return 2
		}
		return 0
	}
	pair := func(a, b string) [][2]int { return field.InOrder([]rune(a), []rune(b), mark) }
	for _, row := range []struct {
		a, b string
		want [][2]int
	}{
		{"abc", "abc", [][2]int{{0, 0}, {1, 1}, {2, 2}}},
		{"abc", "ac", [][2]int{{0, 0}, {1, -1}, {2, 1}}},
		{"ab", "xab", [][2]int{{-1, 0}, {0, 1}, {1, 2}}},
		{"", "x", [][2]int{{-1, 0}}}, {"ab", "aBb", [][2]int{{0, 0}, {-1, 1}, {1, 2}}},
		{"ab", "abB", [][2]int{{0, 0}, {1, 1}, {-1, 2}}}, {"aB", "aBb", [][2]int{{0, 0}, {1, 1}, {-1, 2}}},
	} {
		if got := pair(row.a, row.b); !slices.Equal(got, row.want) {
			t.Errorf("%q and %q: %v, want %v", row.a, row.b, got, row.want)
		}
	}
}
