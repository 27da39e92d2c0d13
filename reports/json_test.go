package reports

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/route"
)

func ptr[T any](v T) *T { return &v }

// emptyReview is what is left when nothing was stated.
func emptyReview() hazards.Review { return hazards.Review{Case: route.Case{Route: &route.Route{}}} }

func jsonOf(t *testing.T, r hazards.Review) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := JSON(&b, r, fixtureOptions); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestJSONMeetsItsSchema(t *testing.T) {
	text, err := ReviewSchema()
	if err != nil {
		t.Fatal(err)
	}
	var schema map[string]any
	if err := json.Unmarshal(text, &schema); err != nil {
		t.Fatal(err)
	}
	reviews := bundledReviews(t)
	reviews["fixture"], reviews["empty"] = fixture(), emptyReview()
	for name, r := range reviews {
		var v any
		if err := json.Unmarshal(jsonOf(t, r), &v); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, fault := range faults(schema, schema, v, "") {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

// The check has to be able to fail.
func TestSchemaRefuses(t *testing.T) {
	text, _ := ReviewSchema()
	var schema map[string]any
	json.Unmarshal(text, &schema)
	for _, change := range [][2]string{
		{`"etchbound.review/1"`, `"other"`}, {`"verdict": "near"`, `"verdict": "fine"`}, {`"quantity": "heat.mtsr"`, `"quantity": "heat.nonsense"`},
		{`"line": 14`, `"line": "14"`}, {`"of": ""`, `"off": ""`}, {`"digest": "0123456789abcdef0123456789abcdef"`, `"digest": null`},
	} {
		text := string(jsonOf(t, fixture()))
		if !strings.Contains(text, change[0]) {
			t.Fatalf("nothing to change for %s", change[0])
		}
		var v any
		if err := json.Unmarshal([]byte(strings.Replace(text, change[0], change[1], 1)), &v); err != nil {
			t.Fatal(err)
		}
		if len(faults(schema, schema, v, "")) == 0 {
			t.Errorf("%s passes", change[1])
		}
	}
}

// faults checks a value against the keywords the review schema uses; a keyword
// it does not know is a fault of the test.
func faults(root, s map[string]any, v any, at string) []string {
	var out []string
	bad := func(format string, args ...any) { out = append(out, at+": "+fmt.Sprintf(format, args...)) }
	for key, want := range s {
		switch key {
		case "$schema", "$id", "$defs", "title", "description":
		case "$ref":
			def := root["$defs"].(map[string]any)[strings.TrimPrefix(want.(string), "#/$defs/")].(map[string]any)
			out = append(out, faults(root, def, v, at)...)
		case "type":
			if !isType(want, v) {
				bad("%v is not %v", v, want)
			}
		case "const":
			if v != want {
				bad("%v is not %v", v, want)
			}
		case "enum":
			if !slices.Contains(want.([]any), v) {
				bad("%v is not listed", v)
			}
		case "pattern":
			if t, ok := v.(string); ok && !regexp.MustCompile(want.(string)).MatchString(t) {
				bad("%q does not match", t)
			}
		case "minimum":
			if n, ok := v.(float64); ok && n < want.(float64) {
				bad("%v is below %v", n, want)
			}
		case "minItems", "maxItems":
			if l, ok := v.([]any); ok && ((key == "minItems") == (len(l) < int(want.(float64))) && len(l) != int(want.(float64))) {
				bad("%d items", len(l))
			}
		case "items":
			l, _ := v.([]any)
			for i := range l {
				out = append(out, faults(root, want.(map[string]any), l[i], fmt.Sprintf("%s/%d", at, i))...)
			}
		case "required":
			m, _ := v.(map[string]any)
			for _, k := range want.([]any) {
				if _, ok := m[k.(string)]; !ok {
					bad("lacks %v", k)
				}
			}
		case "properties":
			m, _ := v.(map[string]any)
			for k, sub := range want.(map[string]any) {
				if x, ok := m[k]; ok {
					out = append(out, faults(root, sub.(map[string]any), x, at+"/"+k)...)
				}
			}
		case "additionalProperties":
			out = append(out, extra(root, s, want, v, at)...)
		default:
			bad("the test does not know the keyword %s", key)
		}
	}
	return out
}

func extra(root, s map[string]any, rule, v any, at string) []string {
	var out []string
	m, _ := v.(map[string]any)
	known, _ := s["properties"].(map[string]any)
	for k, x := range m {
		if _, ok := known[k]; ok {
			continue
		}
		if sub, ok := rule.(map[string]any); ok {
			out = append(out, faults(root, sub, x, at+"/"+k)...)
		} else {
			out = append(out, at+": unknown key "+k)
		}
	}
	return out
}

func isType(want, v any) bool {
	if l, ok := want.([]any); ok {
		return slices.ContainsFunc(l, func(w any) bool { return isType(w, v) })
	}
	switch v := v.(type) {
	case nil:
		return want == "null"
	case string:
		return want == "string"
	case float64:
		return want == "number" || (want == "integer" && v == float64(int64(v)))
	case []any:
		return want == "array"
	case map[string]any:
		return want == "object"
	}
	return false
}

func TestJSONNumbers(t *testing.T) {
	text := string(jsonOf(t, fixture()))
	for _, bad := range []string{"NaN", "Inf", "e-16", "e-18"} {
		if strings.Contains(text, bad) {
			t.Errorf("the JSON holds %s", bad)
		}
	}
	for _, m := range regexp.MustCompile(`: (-?[0-9][0-9.eE+-]*)`).FindAllStringSubmatch(text, -1) {
		digits := strings.TrimLeft(regexp.MustCompile(`e.*|[^0-9]`).ReplaceAllString(m[1], ""), "0")
		if len(strings.TrimRight(digits, "0")) > 9 {
			t.Errorf("%s has more than nine significant digits", m[1])
		}
	}
	var v struct {
		Figures []struct {
			ID             string
			Value, Low     *float64
			Status         string
			Missing        []string
			Draws          map[string]*float64
			Of, Conditions string
		}
	}
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	for _, f := range v.Figures {
		if f.ID == "gas.closed.pressure@waste_bottle" && (f.Value != nil || f.Low != nil || f.Status != "unknown" || len(f.Missing) == 0) {
			t.Errorf("an unknown figure has %+v", f)
		}
		if f.ID == "account.error" && (f.Value == nil || *f.Value != 0) {
			t.Error("a balance below 1e-12 is not 0")
		}
	}
}
