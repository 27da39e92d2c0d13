package working_test

import (
	"math"
	"slices"
	"testing"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

var (
	given  = working.Given("m", "g", 2, "precursor.mass")
	known  = working.Datum("M", "g/mol", 194.605, working.Known, "weight.x")
	guess  = working.Datum("q", "kJ/mol", 760, working.Estimated, "etch_heat.x")
	bound  = working.Datum("v", "mol/mol", 4, working.Bound, "valence.x")
	absent = working.Absent("h", "mol/mol", lacking("electrons.x"))
)

func lacking(id datum.ID) working.Missing { return working.LacksDatum(id) }

// A line stands no better than its worst input.
func TestStatusIsThatOfTheWorstInput(t *testing.T) {
	for _, tt := range []struct {
		in   []working.Num
		want working.Status
	}{
		{nil, working.Known},
		{[]working.Num{given, known}, working.Known},
		{[]working.Num{known, guess}, working.Estimated},
		{[]working.Num{bound, guess, known}, working.Bound},
		{[]working.Num{guess, absent, bound}, working.Unknown},
	} {
		for _, w := range []*working.Sheet{nil, working.NewSheet()} {
			for name, n := range map[string]working.Num{
				"line": w.Line("y", "g", "f", 1, tt.in...), "table": w.Table("y", "g", "t", 1, tt.in...),
				"model": w.Model("y", "g", "m", 1, tt.in...), "sum": w.Sum("y", "g", tt.in...),
			} {
				if n.Status != tt.want {
					t.Errorf("%s over %v is %v, want %v", name, tt.in, n.Status, tt.want)
				}
				if n.Unknown() != math.IsNaN(n.V) {
					t.Errorf("%s is %v with value %v", name, n.Status, n.V)
				}
			}
		}
	}
}

func TestStatusOrder(t *testing.T) {
	if !(working.Unknown < working.Bound && working.Bound < working.Estimated && working.Estimated < working.Known) {
		t.Error("the statuses do not run from unknown to known")
	}
	if got := guess.Worse(working.Known).Status; got != working.Estimated {
		t.Errorf("a number became better: %v", got)
	}
	if got := known.Worse(working.Bound).Status; got != working.Bound {
		t.Errorf("a number did not become worse: %v", got)
	}
}

// What is missing is merged, sorted and told once; known inputs add nothing.
func TestMissingMerges(t *testing.T) {
	other := working.Absent("d", "g/mL", lacking("density.x"), lacking("capacity.y"))
	for _, w := range []*working.Sheet{nil, working.NewSheet()} {
		a := w.Line("a", "L", "h*d*m", math.NaN(), absent, other, given)
		b := w.Sum("b", "L", a, absent, other.As("d"))
		if want := []working.Missing{lacking("capacity.y"), lacking("density.x"),
			lacking("electrons.x")}; !slices.Equal(b.Missing(), want) {
			t.Errorf("missing %v, want %v", b.Missing(), want)
		}
		if len(w.Line("c", "g", "m", 2, given).Missing()) != 0 {
			t.Error("a known number lacks something")
		}
	}
}

// A result that is no number is unknown even if its inputs were known, and says
// which line it was.
func TestNoNumberIsUnknown(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for _, w := range []*working.Sheet{nil, working.NewSheet()} {
			n := w.Line("y", "g", "m/z", v, given)
			if !n.Unknown() || !math.IsNaN(n.V) || !slices.Equal(n.Missing(),
				[]working.Missing{working.Lacks(working.NoNumber, "y")}) {
				t.Errorf("%v gives %v, missing %v", v, n, n.Missing())
			}
		}
	}
	for _, n := range []working.Num{working.Given("x", "g", math.NaN(), "at"),
		working.Given("x", "g", math.Inf(1), "at"), working.Datum("x", "g", math.NaN(), working.Known, "at")} {
		given := n.Ref() == ""
		want := map[bool]working.Missing{true: working.Lacks(working.NotGiven, "at"), false: lacking("at")}[given]
		if !n.Unknown() || !slices.Equal(n.Missing(), []working.Missing{want}) {
			t.Errorf("%v, missing %v", n, n.Missing())
		}
	}
}

// A missing value is never a zero.
func TestSumOfUnknownIsUnknown(t *testing.T) {
	var w *working.Sheet
	if n := w.Sum("s", "g", given, absent); !n.Unknown() || n.V == 0 {
		t.Errorf("%v", n)
	}
	if n := w.Sum("s", "g"); n.V != 0 || n.Status != working.Known {
		t.Errorf("an empty sum is %v", n)
	}
}

// work is the same arithmetic on any sheet.
func work(w *working.Sheet) []working.Num {
	n := w.Line("n", "mol", "m/M", given.V/known.V, given, known)
	h := w.Line("Q", "kJ", "n*q", n.V*guess.V, n, guess)
	u := w.Line("u", "mol", "n*h", n.V*absent.V, n, absent)
	return []working.Num{n, h, u, w.Sum("s", "kJ", h, h.As("t")), w.Model("x", "K", "root", 61.25, h),
		w.Table("d", "g/mL", "density", 1.1, n), w.Keep(h)}
}

func TestNilSheetGivesTheSameNumbers(t *testing.T) {
	a, b := work(nil), work(working.NewSheet())
	for i := range a {
		if a[i].V != b[i].V && !(math.IsNaN(a[i].V) && math.IsNaN(b[i].V)) || a[i].Status != b[i].Status ||
			a[i].Symbol != b[i].Symbol || a[i].Unit != b[i].Unit || !slices.Equal(a[i].Missing(), b[i].Missing()) {
			t.Errorf("%v without a sheet, %v with one", a[i], b[i])
		}
		if a[i].Line() != 0 || b[i].Line() == 0 {
			t.Errorf("%s stands on line %d without a sheet and on %d with one", a[i].Symbol, a[i].Line(), b[i].Line())
		}
	}
}

func TestNilSheetAllocatesNothing(t *testing.T) {
	var w *working.Sheet
	var v float64
	if n := testing.AllocsPerRun(200, func() {
		n := w.Line("n", "mol", "m/M", given.V/known.V, given, known)
		v = w.Line("Q", "kJ", "n*q", n.V*guess.V, n, guess).V
	}); n != 0 {
		t.Errorf("%g allocations for two lines", n)
	}
	if !(v > 0) {
		t.Error("nothing was worked out")
	}
}

// A datum or a given is recorded once, and lines point at the lines they used.
func TestLinesPointBack(t *testing.T) {
	w := working.NewSheet()
	n := w.Line("n", "mol", "m/M", given.V/known.V, given, known)
	h := w.Line("k", "mol", "m*M", given.V*known.V, given, known.As("K"))
	if len(w.Lines) != 4 {
		t.Fatalf("%d lines, want given, datum and two formulas", len(w.Lines))
	}
	for _, x := range []working.Num{n, h} {
		l := w.Lines[x.Line()-1]
		if l.N != x.Line() || l.Symbol != x.Symbol || l.V != x.V {
			t.Errorf("%v is not what its line %d says: %v", x, x.Line(), l)
		}
		for _, in := range l.In {
			if in.Line < 1 || in.Line >= l.N || w.Lines[in.Line-1].V != in.V {
				t.Errorf("input %+v of line %d", in, l.N)
			}
		}
	}
	if a, b := w.Lines[n.Line()-1].In[0].Line, w.Lines[h.Line()-1].In[0].Line; a != b {
		t.Errorf("the same given stands on lines %d and %d", a, b)
	}
}

// A kept number that nobody worked out is given or a datum, never a formula.
func TestKeptNumbersAreNoFormulas(t *testing.T) {
	for _, n := range []working.Num{given, known, absent, working.Exact("x", "1", 2, "a count")} {
		w := working.NewSheet()
		k := w.Keep(n)
		l := w.Lines
		if len(l) != 1 || k.Line() != 1 {
			t.Fatalf("%v: %d lines", n, len(l))
		}
		if l[0].Kind != working.KindGiven && l[0].Kind != working.KindDatum {
			t.Errorf("%v is kept as a %v with formula %q", n, l[0].Kind, l[0].Formula)
		}
	}
}

// Two different values under one reference are two lines.
func TestSameReferenceOtherValue(t *testing.T) {
	w := working.NewSheet()
	a := w.Keep(working.Given("x", "g", 1, "what[0]"))
	b := w.Keep(working.Given("x", "g", 2, "what[0]"))
	if a.Line() == b.Line() {
		t.Error("2 g stands on the line of 1 g")
	}
}

// Where nobody put a number there is none: it is never a known zero, and whatever is
// made of it says so.
func TestTheZeroNumberIsNone(t *testing.T) {
	var none working.Num
	if !none.None() || !none.Unknown() || none.As("x").Worse(working.Bound).Status != working.Unknown {
		t.Errorf("the zero number is %v", none)
	}
	for _, n := range []working.Num{given, known, absent, working.Exact("n", "1", 0, "none"), working.Absent("x", "1"),
		working.Given("x", "g", math.NaN(), "at")} {
		if n.None() {
			t.Errorf("%v is none", n)
		}
	}
	for _, w := range []*working.Sheet{nil, working.NewSheet()} {
		for _, n := range []working.Num{w.Line("y", "g", "a+b", 2, given, none), w.Sum("y", "g", given, none.As("b")),
			w.Line("z", "g", "a+b", 2, w.Line("y", "g", "a+b", 2, given, none.As("b")), given)} {
			if !n.Unknown() || n.None() || !math.IsNaN(n.V) || len(n.Missing()) != 1 ||
				n.Missing()[0].Kind != working.NothingIn {
				t.Errorf("a number made of none is %v", n)
			}
		}
	}
	for _, s := range []working.Status{working.Bound, working.Estimated, working.Known} {
		if got := none.Worse(s).Status; got != working.Unknown {
			t.Errorf("none became %v", got)
		}
	}
}
