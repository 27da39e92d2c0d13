package schemas

import (
	"maps"
	"slices"
	"strings"

	"etchbound/schemas/quantity"
)

// own stands in what is shown where the writer's own value belongs. An example that
// could be copied would set a dose, a time or a temperature that nobody meant.
const own = "..."

// shown is the shape of a value of a rule: its keys with the word a format has to be,
// and with a gap for whatever is the writer's to say. It is empty for plain values.
func (d *schemaDoc) shown(rule map[string]any) string {
	if list, ok := rule["examples"].([]any); ok && len(list) > 0 {
		switch list[0].(type) {
		case map[string]any, []any:
			return d.shape(list[0], rule)
		}
	}
	return stringOf(rule["const"])
}

// shape writes a value of an example on one line, keys by name.
func (d *schemaDoc) shape(v any, rule map[string]any) string {
	switch v := v.(type) {
	case []any:
		parts := make([]string, len(v))
		for i, x := range v {
			parts[i] = d.shape(x, d.item(rule))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case map[string]any:
		parts := make([]string, 0, len(v))
		for _, k := range slices.Sorted(maps.Keys(v)) {
			parts = append(parts, k+": "+d.shape(v[k], d.property(rule, k)))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	}
	if c := stringOf(rule["const"]); c != "" {
		return c
	}
	return own
}

// addHint asks for the value of a key that is missing, in the writer's own words.
func (d *schemaDoc) addHint(key string, rule map[string]any) string {
	if dims := dimensionsOf(rule); len(dims) > 0 {
		return "add " + key + ": with your own value" + inUnits(dims)
	}
	if list := stringsOf(rule["enum"]); len(list) > 0 {
		return "add " + key + ": with one of " + strings.Join(list, ", ")
	}
	if s := stringOf(rule["explain"]); s != "" {
		return "add " + key + ": with " + s
	}
	switch s := d.shown(rule); {
	case s == "":
		return "add " + key + ": with your own value"
	case strings.HasPrefix(s, "["):
		first, _ := rule["examples"].([]any)[0].([]any)
		return "add " + key + ": and below it, indented, - " + d.shape(first[0], d.item(rule))
	default:
		return "add " + key + ": " + s
	}
}

// inUnits names the units that a value of the dimensions is written in.
func inUnits(dims []quantity.Dimension) string {
	if units := quantity.AnyUnit(dims...); units != "" {
		return " and its unit: " + units
	}
	return ""
}
