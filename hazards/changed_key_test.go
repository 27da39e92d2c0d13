package hazards_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/hazards/route"
	"etchbound/schemas"
	"etchbound/schemas/field"
	"etchbound/schemas/long"
)

// tables are all maps of the recipe, those of materials, impurities and cooling
// included.
func (r *recipe) tables() []*table {
	var out []*table
	var add func(v any)
	add = func(v any) {
		switch v := v.(type) {
		case *table:
			if v == nil {
				return
			}
			out = append(out, v)
			for _, e := range v.entries {
				add(e.value)
			}
		case []any:
			for _, x := range v {
				add(x)
			}
		}
	}
	add(r.powder)
	add(r.measured)
	for _, e := range r.places.entries {
		add(e.value)
	}
	for _, s := range r.steps {
		add(s)
	}
	return out
}

// Whatever single key of a random route is left out or of another size, the route is
// refused in words or the change shows, and nothing of what stayed is told to differ.
func TestAChangedKeyShows(t *testing.T) {
	long.NotShort(t)
	loaded := 0
	rapid.Check(t, func(t *rapid.T) {
		r := (&drawing{t: t}).recipe()
		before := r.yaml(plainly)
		from := rapid.SampledFrom(r.tables()).Draw(t, "map")
		if len(from.entries) == 0 {
			return
		}
		e := rapid.SampledFrom(from.entries).Draw(t, "key")
		if a, ok := e.value.(amount); ok && (from == r.powder || rapid.Bool().Draw(t, "other size")) {
			a.value = a.value*1.01 + 0.01
			from.set(e.key, a)
		} else {
			from.drop(e.key)
		}
		a, b := reads(t, before), reads(t, r.yaml(plainly))
		if a == nil || b == nil {
			return
		}
		loaded++
		n := 0
		for _, pair := range [2][2]*route.Route{{a, b}, {b, a}} {
			route.Beside(pair[0], pair[1], func(x field.Beside) {
				if !x.Same() {
					n++
				}
			})
		}
		if n == 0 {
			t.Fatalf("%s of %v does not show in\n%s", e.key, e.value, before)
		}
		route.Beside(a, a.Copy(), func(x field.Beside) {
			if !x.Same() {
				t.Fatalf("%s, %s differs from its copy in\n%s", x.Where, x.Name, before)
			}
		})
	})
	if loaded < 20 && !testing.Short() { // which draws a fifth
		t.Errorf("%d changed routes were loaded", loaded)
	}
}

// reads gives a route, or nil where it is refused, which has to be in words.
func reads(t *rapid.T, yaml string) *route.Route {
	r, problems, err := route.Load("f.yaml", strings.NewReader(yaml))
	if err != nil || r == nil && !schemas.Refused(problems) {
		t.Fatalf("%v: %v\n%s", err, problems, yaml)
	}
	return r
}
