package schemas

import (
	"embed"
	"encoding/json"
	"fmt"
	"net/url"
	"strconv"
	"strings"
	"sync"
)

//go:embed *.schema.json
var files embed.FS

var schemaNames = [...]string{"route", "site", "limits"}

// Schema gives the JSON Schema of a kind of file: route, site or limits, or
// the file name such as route.schema.json.
func Schema(name string) ([]byte, bool) {
	b, err := files.ReadFile(strings.TrimSuffix(name, ".schema.json") + ".schema.json")
	return b, err == nil
}

// schemaDoc is one schema as plain maps, for its words. Beside the standard
// keywords the schemas carry our own: dimension (what a quantity measures),
// explain and hint (what a pattern asks or the words of a list mean), also and
// also_values (other words people try for a key or a value) and named_by (the key
// that names a map in messages).
type schemaDoc struct {
	name     string
	raw      []byte
	root     map[string]any
	compiled func() (*validator, error)
}

var documents = map[string]func() (*schemaDoc, error){
	"route":  sync.OnceValues(func() (*schemaDoc, error) { return parseDocument("route") }),
	"site":   sync.OnceValues(func() (*schemaDoc, error) { return parseDocument("site") }),
	"limits": sync.OnceValues(func() (*schemaDoc, error) { return parseDocument("limits") }),
}

func document(name string) (*schemaDoc, error) {
	get, ok := documents[name]
	if !ok {
		return nil, fmt.Errorf("schemas: there is no schema %q", name)
	}
	return get()
}

func parseDocument(name string) (*schemaDoc, error) {
	raw, _ := Schema(name)
	d := &schemaDoc{name: name, raw: raw}
	if err := json.Unmarshal(raw, &d.root); err != nil {
		return nil, fmt.Errorf("schemas: %s: %w", name, err)
	}
	d.compiled = sync.OnceValues(func() (*validator, error) { return compile(name, d.root) })
	return d, nil
}

// resolve follows a reference inside the document. Keys beside the reference
// add to what it refers to.
func (d *schemaDoc) resolve(s map[string]any) map[string]any {
	ref, ok := s["$ref"].(string)
	if !ok {
		return s
	}
	target, _ := d.pointer(strings.TrimPrefix(ref, "#")).(map[string]any)
	merged := make(map[string]any, len(target)+len(s))
	for k, v := range d.resolve(target) {
		merged[k] = v
	}
	for k, v := range s {
		if k != "$ref" {
			merged[k] = v
		}
	}
	return merged
}

// pointer gives the part of the document at a JSON pointer, nil if none.
func (d *schemaDoc) pointer(p string) any {
	var at any = d.root
	for _, token := range pointerTokens(p) {
		switch v := at.(type) {
		case map[string]any:
			at = v[token]
		case []any:
			i, err := strconv.Atoi(token)
			if err != nil || i < 0 || i >= len(v) {
				return nil
			}
			at = v[i]
		default:
			return nil
		}
	}
	return at
}

func pointerTokens(p string) []string {
	if p = strings.TrimPrefix(p, "/"); p == "" {
		return nil
	}
	tokens := strings.Split(p, "/")
	for i, t := range tokens {
		if plain, err := url.PathUnescape(t); err == nil {
			t = plain
		}
		tokens[i] = strings.ReplaceAll(strings.ReplaceAll(t, "~1", "/"), "~0", "~")
	}
	return tokens
}

// property is the schema of a key of a map, nil where the key is unknown.
func (d *schemaDoc) property(s map[string]any, key string) map[string]any {
	if props, ok := s["properties"].(map[string]any); ok {
		if p, ok := props[key].(map[string]any); ok {
			return d.resolve(p)
		}
	}
	if more, ok := s["additionalProperties"].(map[string]any); ok {
		return d.resolve(more)
	}
	return nil
}

// item is the schema of the items of a list, nil if there is none.
func (d *schemaDoc) item(s map[string]any) map[string]any {
	if i, ok := s["items"].(map[string]any); ok {
		return d.resolve(i)
	}
	return nil
}

func stringsOf(v any) []string {
	switch v := v.(type) {
	case string:
		return []string{v}
	case []any:
		list := make([]string, 0, len(v))
		for _, x := range v {
			if s, ok := x.(string); ok {
				list = append(list, s)
			}
		}
		return list
	}
	return nil
}

func stringOf(v any) string { s, _ := v.(string); return s }
