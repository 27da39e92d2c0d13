package schemas

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

// validator is a compiled schema.
type validator = jsonschema.Schema

// compile compiles one schema for the loader. Notes for people are left out,
// and it is read as draft 7: the keywords used mean the same there, and holding
// a schema against the rules of draft 2020-12 takes three times as long as all
// the rest. A test compiles the published schemas as what they are.
func compile(name string, root map[string]any) (*validator, error) {
	lean, _ := withoutWords(root).(map[string]any)
	return compileAs(jsonschema.Draft7, name, lean)
}

// compileAs compiles a schema. No file and no address is ever opened: the
// schema is given, and its references stay inside it.
func compileAs(draft *jsonschema.Draft, name string, root map[string]any) (*validator, error) {
	c := jsonschema.NewCompiler()
	c.Draft = draft
	c.LoadURL = func(url string) (io.ReadCloser, error) {
		return nil, errors.New("schemas: nothing is loaded from " + url)
	}
	text, err := json.Marshal(root)
	if err != nil {
		return nil, err
	}
	address := "memory:///" + name + ".schema.json"
	if err := c.AddResource(address, bytes.NewReader(text)); err != nil {
		return nil, err
	}
	s, err := c.Compile(address)
	if err != nil {
		return nil, fmt.Errorf("schemas: %s: %w", name, err)
	}
	return s, nil
}

// withoutWords copies a schema without its notes for people. The names of the
// keys of a file, which stand under properties, are kept whatever they are.
func withoutWords(v any) any {
	switch v := v.(type) {
	case map[string]any:
		out := make(map[string]any, len(v))
		for k, x := range v {
			switch k {
			case "$schema", "$id", "title", "description", "examples", "dimension", "explain", "also", "also_values", "hint",
				"named_by":
			case "properties", "$defs":
				inner := maps.Clone(x.(map[string]any))
				for key, s := range inner {
					inner[key] = withoutWords(s)
				}
				out[k] = inner
			default:
				out[k] = withoutWords(x)
			}
		}
		return out
	case []any:
		out := make([]any, len(v))
		for i, x := range v {
			out[i] = withoutWords(x)
		}
		return out
	}
	return v
}

// failure is one keyword of a schema that a node did not meet.
type failure struct{ node, schema string } // both JSON pointers

// validate checks the tree against the schema and puts what fails into words.
func (d *schemaDoc) validate(root *Node) []Problem {
	s, err := d.compiled()
	if err != nil {
		return []Problem{root.Problem("the schema of the program is broken: "+err.Error(), "", "please report this")}
	}
	var failed *jsonschema.ValidationError
	if err := s.Validate(plain(root)); err == nil {
		return nil
	} else if !errors.As(err, &failed) {
		return []Problem{root.Problem("the file cannot be checked: "+err.Error(), "", "please report this")}
	}
	var list []Problem
	for _, f := range leaves(failed, nil) {
		list = append(list, d.explain(root, f)...)
	}
	return list
}

// leaves collects the failures that have no cause below them.
func leaves(e *jsonschema.ValidationError, list []failure) []failure {
	if len(e.Causes) == 0 {
		_, at, _ := bytes.Cut([]byte(e.AbsoluteKeywordLocation), []byte("#"))
		return append(list, failure{e.InstanceLocation, string(at)})
	}
	for _, c := range e.Causes {
		list = leaves(c, list)
	}
	return list
}

// plain gives the values the schema library takes. Numbers are finite here:
// the library cannot bear others.
func plain(n *Node) any {
	switch n.Kind {
	case Map:
		m := make(map[string]any, len(n.Keys))
		for _, k := range n.Keys {
			m[k.Name] = plain(k.Value)
		}
		return m
	case List:
		l := make([]any, len(n.Items))
		for i, x := range n.Items {
			l[i] = plain(x)
		}
		return l
	case Number:
		return n.Number
	case Bool:
		return n.Text == "true"
	}
	return n.Text
}
