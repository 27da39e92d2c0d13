package reports

import (
	"fmt"
	"regexp"
	"slices"
	"sync"
)

// schemaFaults are what a value has against a schema, by the keywords ours use;
// a keyword that is not known here is a fault too.
func schemaFaults(s map[string]any, v any, at string) []string {
	var out []string
	for key, want := range s {
		check, known := keywords[key]
		if !known {
			out = append(out, at+": the test does not know the keyword "+key)
			continue
		}
		out = append(out, check(s, want, v, at)...)
	}
	return out
}

var keywords map[string]func(s map[string]any, want, v any, at string) []string

func init() {
	words := func(map[string]any, any, any, string) []string { return nil }
	keywords = map[string]func(s map[string]any, want, v any, at string) []string{
		"$schema": words, "$id": words, "title": words, "description": words,
		"type": typeFaults, "const": constFaults, "enum": enumFaults, "pattern": patternFaults,
		"minItems": lengthFaults, "maxItems": lengthFaults, "items": itemFaults,
		"required": lackFaults, "properties": propertyFaults, "additionalProperties": extraFaults,
	}
}

func typeFaults(_ map[string]any, want, v any, at string) []string {
	if isType(want, v) {
		return nil
	}
	return []string{fmt.Sprintf("%s: %v is not %v", at, v, want)}
}

func constFaults(_ map[string]any, want, v any, at string) []string {
	if v == want {
		return nil
	}
	return []string{fmt.Sprintf("%s: %v is not %v", at, v, want)}
}

func enumFaults(_ map[string]any, want, v any, at string) []string {
	if slices.Contains(want.([]any), v) {
		return nil
	}
	return []string{fmt.Sprintf("%s: %v is not listed", at, v)}
}

var patterns sync.Map

func patternFaults(_ map[string]any, want, v any, at string) []string {
	re, ok := patterns.Load(want)
	if !ok {
		re, _ = patterns.LoadOrStore(want, regexp.MustCompile(want.(string)))
	}
	if text, ok := v.(string); !ok || re.(*regexp.Regexp).MatchString(text) {
		return nil
	}
	return []string{fmt.Sprintf("%s: %q does not match", at, v)}
}

func lengthFaults(s map[string]any, want, v any, at string) []string {
	l, _ := v.([]any)
	if s["minItems"] != s["maxItems"] || float64(len(l)) == want {
		return nil
	}
	return []string{fmt.Sprintf("%s: %d items", at, len(l))}
}

func itemFaults(_ map[string]any, want, v any, at string) []string {
	var out []string
	l, _ := v.([]any)
	for i := range l {
		out = append(out, schemaFaults(want.(map[string]any), l[i], fmt.Sprintf("%s/%d", at, i))...)
	}
	return out
}

func lackFaults(_ map[string]any, want, v any, at string) []string {
	var out []string
	m, ok := v.(map[string]any)
	if !ok {
		return nil // what is required is required of objects; the type says what else may stand
	}
	for _, k := range want.([]any) {
		if _, ok := m[k.(string)]; !ok {
			out = append(out, fmt.Sprintf("%s: lacks %v", at, k))
		}
	}
	return out
}

func propertyFaults(_ map[string]any, want, v any, at string) []string {
	var out []string
	m, _ := v.(map[string]any)
	for k, sub := range want.(map[string]any) {
		if x, ok := m[k]; ok {
			out = append(out, schemaFaults(sub.(map[string]any), x, at+"/"+k)...)
		}
	}
	return out
}

func extraFaults(s map[string]any, rule, v any, at string) []string {
	var out []string
	m, _ := v.(map[string]any)
	known, _ := s["properties"].(map[string]any)
	for k, x := range m {
		if _, ok := known[k]; ok {
			continue
		}
		if sub, ok := rule.(map[string]any); ok {
			out = append(out, schemaFaults(sub, x, at+"/"+k)...)
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
	case bool:
		return want == "boolean"
	case float64:
		return want == "number" || (want == "integer" && v == float64(int64(v)))
	case []any:
		return want == "array"
	case map[string]any:
		return want == "object"
	}
	return false
}
