package scaling

import (
	_ "embed"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"etchbound/hazards/route"
	"etchbound/schemas/columns"
	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

//go:embed keys.csv
var keyTable string

// The ways in which a change of a key meets a rule. By those that need an amount, a key
// that only one of the two states, or each in another kind of unit, is incomparable.
const (
	judgedNot      = "none"
	judgedNames    = "names"    // it only says where things come from or what they are called
	judgedOther    = "other"    // whatever it is
	judgedBatch    = "batch"    // but where it only grew along with the batch
	judgedMore     = "more"     // at least so many times as much
	judgedLess     = "less"     // at least so many times less
	judgedRatio    = "ratio"    // one or the other
	judgedApart    = "apart"    // by so much, up or down
	judgedAway     = "away"     // likewise, or where only one of the two states it
	judgedAbove    = "above"    // by so much, up
	judgedFewer    = "fewer"    // at all less than grows along with the batch, or no longer stated
	judgedBore     = "bore"     // likewise, of a place that was not shut
	judgedGreater  = "greater"  // at all more than grows along with the batch
	judgedToward   = "toward"   // from one word to a later one of the row
	judgedGone     = "gone"     // where it is no longer stated
	judgedMoves    = "moves"    // where a figure that people ask for first moves by it
	judgedStated   = "stated"   // where only one states it
	judgedNobody   = "nobody"   // where it was true and is not
	judgedMaterial = "material" // with the rest of its material
)

// judged says how a change of a key meets a rule, or why it meets none.
type judged struct {
	file, key string
	rule, how string
	mark      string   // the rule whose value counts
	words     []string // from the best to the worst
	bare      bool     // where it stands says enough
	why       string
}

type keyOf struct{ file, path string }

var judgedKeys = sync.OnceValue(func() map[keyOf]judged {
	out := map[keyOf]judged{}
	for _, j := range columns.Must("scaling/keys.csv", keyTable, func(r columns.Row) judged {
		return judged{r.Choice("file", "route", "site", "limits"), r.Named("key"), r.Text("rule"),
			r.Choice("how", judgedNot, judgedNames, judgedOther, judgedBatch, judgedMore, judgedLess, judgedRatio,
				judgedApart, judgedAway, judgedAbove, judgedStated, judgedNobody, judgedMaterial, judgedFewer, judgedBore,
				judgedGreater, judgedToward,
				judgedGone, judgedMoves), r.Text("mark"),
			strings.Fields(r.Text("words")),
			r.Yes("bare"), r.Text("why")}
	}) {
		out[keyOf{j.file, j.key}] = j
	}
	return out
})

// keys holds every key that differs against the rule of its kind.
func (f *firing) keys() {
	for i := range f.d.found {
		x := &f.d.found[i]
		j := x.judged()
		f.judge(&j, x)
	}
}

// judged is the row of the key. That there is one for each is held by a test.
func (x *found) judged() judged {
	if j, known := judgedKeys()[keyOf{x.file, x.Path}]; known {
		return j
	}
	return judged{rule: "procedure", how: judgedOther}
}

func (f *firing) judge(j *judged, x *found) {
	where := x.Where + ", " + x.Name
	if j.bare {
		where = x.Where
	}
	a, isAmount := x.Value.(field.Amount)
	b, _ := x.Other.(field.Amount)
	meets := false
	switch mark := f.rule(j.mark).Value; j.how {
	case judgedNot, judgedNames, judgedMaterial:
	case judgedOther:
		meets = !field.Alike(x.Value, x.Other)
	case judgedBatch:
		meets = !isAmount && !field.Alike(x.Value, x.Other) || isAmount &&
			(x.Scale == field.Fixed || !along(*a.Of, *b.Of, f.d.powder()))
	case judgedNobody:
		meets = x.Value.String() == "true"
	case judgedGone:
		meets = x.Value.Stated() && !x.Other.Stated()
	case judgedToward:
		meets = slices.Index(j.words, x.Other.String()) > slices.Index(j.words, x.Value.String()) ||
			!slices.Contains(j.words, x.Other.String()) || !slices.Contains(j.words, x.Value.String())
	case judgedMoves:
		f.replaced()
	case judgedFewer, judgedGreater:
		meets = f.changed(where, j.how, x)
	case judgedAway:
		meets = a.Of.Set != b.Of.Set || reached(judgedApart, *a.Of, *b.Of, mark)
	case judgedBore:
		meets = !f.wasShut(x) && f.changed(where, judgedFewer, x)
	default:
		if !isAmount {
			panic("scaling/keys.csv: " + j.key + " is no quantity to be " + j.how)
		}
		r := f.ratio(where, *a.Of, *b.Of)
		meets = !math.IsNaN(r) && reached(j.how, *a.Of, *b.Of, mark)
	}
	if meets {
		was, is := x.told()
		f.hit(j.rule, where, was, is)
	}
}

// wasShut reports whether a key is of a place that was shut in the review: any bore is more.
func (f *firing) wasShut(x *found) bool {
	b, _ := x.Other.(field.Amount)
	for i := range f.d.b.Places {
		p := &f.d.b.Places[i]
		if was := f.d.a.Place(p.Key); was != nil && b.Of != nil && b.Of.At == p.At+"."+x.Key {
			return was.ClosureStated && was.Closure == route.Closed
		}
	}
	return false
}

// changed reports whether a quantity is changed to the worse beyond what the batch asks for.
// A count is less or more as well. What is no longer stated is worse; what was not is
// incomparable.
func (f *firing) changed(where, how string, x *found) bool {
	worse := func(a, b float64) bool { return how == judgedFewer && b < a || how == judgedGreater && b > a }
	a, isAmount := x.Value.(field.Amount)
	if b, _ := x.Other.(field.Amount); isAmount {
		if a.Of.Set && !b.Of.Set {
			return true
		}
		r, of := f.ratio(where, *a.Of, *b.Of), 1.0
		if x.Scale != field.Fixed {
			of = f.d.powder()
		}
		return !math.IsNaN(r) && math.Abs(r/of-1) > 1e-6 && worse(of, r)
	}
	was, err := strconv.ParseFloat(x.Value.String(), 64)
	is, err2 := strconv.ParseFloat(x.Other.String(), 64)
	return err != nil || err2 != nil || worse(was, is)
}

// told is what both files state, in words that can stand alone.
func (x *found) told() (was, is string) {
	was, is = x.Value.String(), x.Other.String()
	switch {
	case x.Kind == field.Maps && was == "":
		return "not there", is
	case x.Kind == field.Maps && is == "":
		return was, "left out"
	case x.Kind == field.Flag:
		return x.Key + ": " + orNothing(was), x.Key + ": " + orNothing(is)
	}
	return orNothing(was), orNothing(is)
}

// reached reports whether a change of a quantity that both state is as large as mark.
func reached(how string, a, b quantity.Value, mark float64) bool {
	r := b.SI / a.SI
	switch how {
	case judgedMore:
		return reaches(r, mark)
	case judgedLess:
		return reaches(1/r, mark)
	case judgedRatio:
		return reaches(math.Max(r, 1/r), mark)
	case judgedApart:
		return math.Abs(b.SI-a.SI) >= mark*(1-1e-9)
	case judgedAbove:
		return b.SI-a.SI >= mark*(1-1e-9)
	}
	return false
}

// along reports whether a quantity grew along with the powder. A share does not: it
// is the same or another.
func along(a, b quantity.Value, powder float64) bool {
	return a.Set && b.Set && a.Dim == b.Dim && a.Dim != quantity.Fraction && math.Abs(b.SI/a.SI/powder-1) < 1e-6
}
