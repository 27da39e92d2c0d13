package schemas

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"etchbound/schemas/quantity"
)

// example is the first example of a schema, as it would be written.
func example(rule map[string]any) string {
	if list, ok := rule["examples"].([]any); ok && len(list) > 0 {
		return flow(list[0])
	}
	return ""
}

// addHint shows how to write a key that is missing.
func addHint(key string, rule map[string]any) string {
	e := example(rule)
	if items, ok := rule["examples"].([]any); ok && len(items) > 0 {
		if list, ok := items[0].([]any); ok && len(list) > 0 {
			return "add " + key + ": and below it, indented, - " + flow(list[0])
		}
	}
	if e == "" {
		return ""
	}
	return "add " + key + ": " + e
}

// flow writes a value of an example on one line; keys come by name.
func flow(v any) string {
	switch v := v.(type) {
	case string:
		if strings.ContainsAny(v, ",:{}[]#") {
			return strconv.Quote(v)
		}
		return v
	case float64:
		return quantity.Number(v, 0)
	case bool:
		return strconv.FormatBool(v)
	case []any:
		parts := make([]string, len(v))
		for i, x := range v {
			parts[i] = flow(x)
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case map[string]any:
		parts := make([]string, 0, len(v))
		for _, k := range slices.Sorted(maps.Keys(v)) {
			parts = append(parts, k+": "+flow(v[k]))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	}
	return ""
}
