package route_test

import (
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/hazards/route"
	"etchbound/schemas"
	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// Every key of the schema stands in the table and the other way round, as what it is.
func TestKeysAreThoseOfTheSchema(t *testing.T) {
	for name, fields := range map[string][]field.Field{"route": route.Fields(), "site": route.SiteFields()} {
		rules := map[string]schemas.Described{}
		for _, d := range schemas.Describe(name) {
			rules[d.Path] = d
		}
		if len(rules) < 20 {
			t.Fatalf("%s: the schema gives %d keys", name, len(rules))
		}
		for _, f := range fields {
			d, there := rules[f.Path]
			if delete(rules, f.Path); !there {
				t.Errorf("%s: %s is no key of the schema", name, f.Path)
			} else if want := kindOf(d); f.Kind != want && !(f.Kind == field.Number && f.Path[:4] == "data") {
				t.Errorf("%s: %s is %v in the table and %v in the schema", name, f.Path, f.Kind, want)
			}
			if f.Scale == field.GrowsAsVolume && !slices.Contains(d.Dimensions, quantity.Volume) {
				t.Errorf("%s: %s grows as a volume and is none", name, f.Path)
			}
		}
		for path := range rules {
			t.Errorf("%s: %s has no entry in the table", name, path)
		}
	}
}

// kindOf is the kind of a key by its schema.
func kindOf(d schemas.Described) field.Kind {
	switch {
	case d.Items == "object":
		return field.Maps
	case d.Items == "string":
		return field.List
	case slices.Contains(d.Types, "object") && d.Path == "places":
		return field.Maps
	case slices.Contains(d.Types, "object"):
		return field.Map
	case d.Words != nil || d.Only:
		return field.Choice
	case slices.Contains(d.Types, "boolean"):
		return field.Flag
	case slices.Contains(d.Dimensions, quantity.Count):
		return field.Count
	case len(d.Dimensions) > 0:
		return field.Quantity
	case slices.Equal(d.Types, []string{"number"}):
		return field.Number
	}
	return field.Text
}

// wholeRoutes are the routes of the project and one that states every key.
func wholeRoutes(t *testing.T) map[string]*route.Route {
	t.Helper()
	names, err := filepath.Glob("../../testdata/routes/*.yaml")
	if err != nil || len(names) < 8 {
		t.Fatalf("%d routes: %v", len(names), err)
	}
	out := map[string]*route.Route{"written whole": loaded(t, every(t))}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(text), "\nroute:") {
			out[filepath.Base(name)] = loaded(t, string(text))
		}
	}
	return out
}

// every states every key that a route file has.
func every(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../testdata/keys/route.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// The route that states every key does, so that what is held for all keys is held for
// each of them.
func TestEveryKeyIsWritten(t *testing.T) {
	seen := map[string]bool{}
	loaded(t, every(t)).Visit(func(s field.Seen) { seen[s.Path] = seen[s.Path] || s.Value.Stated() })
	for _, f := range route.Fields() {
		if !seen[f.Path] && f.Kind != field.Map && f.Kind != field.Maps {
			t.Errorf("%s is never stated", f.Path)
		}
	}
}

// A copy shares no memory that a calculation could write to. What the program holds
// of a substance is the same for all and never written.
func TestCopySharesNothing(t *testing.T) {
	for name, r := range wholeRoutes(t) {
		c := r.Copy()
		shared(t, name, reflect.ValueOf(r).Elem(), reflect.ValueOf(c).Elem())
	}
}

func shared(t *testing.T, at string, a, b reflect.Value) {
	t.Helper()
	if a.Type() == reflect.TypeFor[*chemicals.Substance]() {
		return
	}
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			shared(t, at+"."+a.Type().Field(i).Name, a.Field(i), b.Field(i))
		}
	case reflect.Pointer:
		if !a.IsNil() && a.Pointer() == b.Pointer() {
			t.Errorf("%s is shared", at)
		} else if !a.IsNil() {
			shared(t, at, a.Elem(), b.Elem())
		}
	case reflect.Slice:
		if a.Len() > 0 && a.Pointer() == b.Pointer() {
			t.Errorf("%s is shared", at)
		}
		for i := range min(a.Len(), b.Len()) {
			shared(t, at+"[]", a.Index(i), b.Index(i))
		}
	case reflect.Map:
		t.Errorf("%s is a map, which is not copied", at)
	}
}

// What the table says grows does, by as much as the powder and its range with it, and
// everything else stays.
func TestScalingGoesByTheTable(t *testing.T) {
	for name, r := range wholeRoutes(t) {
		if r.Precursor == nil {
			continue
		}
		want := map[string]float64{}
		r.Visit(func(s field.Seen) {
			x, ok := s.Value.(field.Amount)
			if !ok || !x.Of.Set {
				return
			}
			grows := s.Scale == field.Grows || s.Scale == field.GrowsUnlessKept && !kept(r, s.At) ||
				s.Scale == field.GrowsAsVolume && x.Of.Dim == quantity.Volume
			if want[s.At] = x.Of.SI; grows {
				want[s.At] *= 2
			}
		})
		double := r.Scaled(r.Precursor.Mass.Times(2))
		double.Visit(func(s field.Seen) {
			x, ok := s.Value.(field.Amount)
			if ok && x.Of.Set && !(max(x.Of.SI/want[s.At], want[s.At]/x.Of.SI) < 1+1e-9) {
				t.Errorf("%s: %s becomes %s, want %g in SI", name, s.At, x.Of.Text, want[s.At])
			}
			if delete(want, s.At); ok && x.Of.HasRange() && !(x.Of.Low < x.Of.SI && x.Of.SI < x.Of.High) {
				t.Errorf("%s: %s has the range %g to %g", name, s.At, x.Of.Low, x.Of.High)
			}
		})
	}
}

func kept(r *route.Route, at string) bool {
	for _, p := range r.Places {
		if strings.HasPrefix(at, p.At+".") {
			return p.Keep
		}
	}
	return false
}

// Whatever is stated with a range stands in the store with it, so that it moves: the
// highest temperature of an addition did not, and made the addition time unknown.
func TestEveryRangeIsCarried(t *testing.T) {
	r := loaded(t, every(t))
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	r.Visit(func(s field.Seen) {
		x, ok := s.Value.(field.Amount)
		if !ok || !x.Of.HasRange() {
			return
		}
		n++
		id := datum.Stated(x.Of.At)
		if s.Range == field.OfDatum {
			id = datum.Of(s.Datum, r.Precursor.Phase.Text)
		}
		d, there := c.Store.Row(id)
		if !there || !(d.Low < d.Value && d.Value < d.High) {
			t.Errorf("%s stands in the store as %+v", s.At, d)
		}
	})
	if n < 12 {
		t.Errorf("%d ranges", n)
	}
}

// A key is taken out as if it had been left out, and nothing else is.
func TestWithout(t *testing.T) {
	r := loaded(t, every(t))
	paths := map[string]bool{}
	r.Visit(func(s field.Seen) {
		if !s.Value.Stated() || s.Alone != "" {
			return
		}
		paths[s.Path] = true
		less, there := r.Without(s.At)
		if !there {
			t.Errorf("%s is not found", s.At)
		}
		less.Visit(func(x field.Seen) {
			if x.At == s.At && x.Value.Stated() {
				t.Errorf("%s is still stated as %q", s.At, x.Value)
			}
		})
		n := 0
		route.Beside(r, less, func(b field.Beside) {
			if !b.Same() {
				n++
			}
		})
		if n == 0 {
			t.Errorf("without %s, no key differs", s.At)
		}
	})
	if len(paths) < 80 {
		t.Errorf("%d keys were taken out", len(paths))
	}
}

// A site is copied and stripped as a route is.
func TestSiteWithout(t *testing.T) {
	f, err := os.Open("../../testdata/keys/site.yaml")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	s, problems, err := route.LoadSite("s.yaml", f)
	if err != nil || s == nil {
		t.Fatal(err, problems)
	}
	shared(t, "site", reflect.ValueOf(s).Elem(), reflect.ValueOf(s.Copy()).Elem())
	n := 0
	s.Visit(func(x field.Seen) {
		if !x.Value.Stated() || x.Alone != "" {
			return
		}
		n++
		less, there := s.Without(x.At)
		if !there {
			t.Errorf("%s is not found", x.At)
		}
		less.Visit(func(y field.Seen) {
			if y.At == x.At && y.Value.Stated() {
				t.Errorf("%s is still stated as %q", x.At, y.Value)
			}
		})
	})
	if n < 35 {
		t.Errorf("%d keys were taken out", n)
	}
}

// A range that nothing could move within is noticed, and its value counts.
func TestARangeOfNoUse(t *testing.T) {
	text := "site: etchbound/1\ntitle: Workshop\ntriggers: {temperature_change: 5 (4 to 6) K}\n"
	s, problems, err := route.LoadSite("s.yaml", strings.NewReader(text))
	if err != nil || s == nil || len(problems) != 1 || !strings.Contains(problems[0].What, "5 K counts") {
		t.Errorf("%v, %v", err, problems)
	}
}
