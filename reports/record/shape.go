package record

import (
	"reflect"
	"strings"
)

// Object is one JSON object of a schema.
type Object map[string]any

// typed is a schema of a JSON type, or of one of several.
func typed(names ...string) Object {
	if len(names) == 1 {
		return Object{"type": names[0]}
	}
	return Object{"type": names}
}

// shapeOf is the schema of what encoding/json writes of a Go type, with the
// words of an output's keys: it cannot name a key that the type has not. Path is
// that of the value in the output, such as figures[].value.
func shapeOf(t reflect.Type, words keyWords, path string) Object {
	var out Object
	switch {
	case t == reflect.TypeFor[Nine]():
		out = typed("number", "null")
	case t.Kind() == reflect.Pointer:
		return orNull(shapeOf(t.Elem(), words, path))
	case t.Kind() == reflect.String:
		out = typed("string")
	case t.Kind() == reflect.Bool:
		out = typed("boolean")
	case t.Kind() == reflect.Int:
		out = typed("integer")
	case t.Kind() == reflect.Slice:
		out = Object{"type": "array", "items": shapeOf(t.Elem(), words, path+"[]")}
	case t.Kind() == reflect.Array:
		out = Object{"type": "array", "minItems": t.Len(), "maxItems": t.Len(), "items": shapeOf(t.Elem(), words, path+"[]")}
	case t.Kind() == reflect.Map:
		out = Object{"type": "object", "additionalProperties": shapeOf(t.Elem(), words, path+"{}")}
	default:
		out = fieldsOf(t, words, path)
	}
	words.add(out, path)
	return out
}

// fieldsOf is the schema of a struct: every key is there, and no other.
func fieldsOf(t reflect.Type, words keyWords, path string) Object {
	properties, required := Object{}, []string{}
	for _, f := range reflect.VisibleFields(t) {
		if f.Anonymous { // its own fields stand in its place
			continue
		}
		key, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		properties[key] = shapeOf(f.Type, words, strings.TrimPrefix(path+"."+key, "."))
		required = append(required, key)
	}
	return Object{"type": "object", "additionalProperties": false, "required": required, "properties": properties}
}

// orNull is a schema that takes null too.
func orNull(s Object) Object {
	if name, one := s["type"].(string); one {
		s["type"] = []string{name, "null"}
	}
	if values, listed := s["enum"].([]any); listed {
		s["enum"] = append(values, nil)
	}
	return s
}

// rowShape is the schema of one row of a CSV: its columns in their order are the
// list of required keys.
func rowShape(columns []string, words keyWords) Object {
	properties := Object{}
	for _, c := range columns {
		s := typed(cellTypes[words[c].kind]...)
		words.add(s, c)
		properties[c] = s
	}
	return Object{"type": "object", "additionalProperties": false, "required": columns, "properties": properties}
}

// cellTypes are the JSON types of the kinds of columns; an empty cell is null
// where that is one of them.
var cellTypes = map[string][]string{
	"number": {"number", "null"}, "whole": {"integer", "null"}, "yes": {"boolean"}, "text": {"string"},
	"either": {"number", "string", "null"},
}
