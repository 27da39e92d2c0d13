package schemas

import (
	"maps"
	"slices"

	"etchbound/schemas/quantity"
)

// Described is one key of a kind of file as its schema has it.
type Described struct {
	Path       string // from the top of the file: places.*.cooling.ice, steps[].over
	Key        string
	Types      []string // of JSON
	Dimensions []quantity.Dimension
	Words      []string // one of which it has to be; nil: any
	Only       bool     // it takes one word and no other
	Items      string   // type of JSON of the items of a list
	Text       string   // what it is, in a sentence
	Required   bool
	NeededBy   []string // of a key of a step: the verbs that need it
	TakenBy    []string // and those that take it
}

// Describe lists every key that a kind of file may have, by name, with the keys of a
// map after the key that holds it. It is empty for a kind there is none of.
func Describe(name string) []Described {
	d, err := document(name)
	if err != nil {
		return nil
	}
	return d.described(d.root, "")
}

// described lists the keys of a map and of what is in it.
func (d *schemaDoc) described(rule map[string]any, path string) []Described {
	var out []Described
	props, _ := rule["properties"].(map[string]any)
	for _, key := range slices.Sorted(maps.Keys(props)) {
		p := d.property(rule, key)
		x := Described{Path: join(path, key), Key: key, Types: stringsOf(p["type"]), Dimensions: dimensionsOf(p),
			Words: stringsOf(p["enum"]), Only: p["const"] != nil, Text: stringOf(p["description"]),
			Required: slices.Contains(stringsOf(rule["required"]), key)}
		for _, name := range names(rule) {
			if needed(rule, name, key) {
				x.NeededBy = append(x.NeededBy, name)
			}
			if taken(rule, name, key) {
				x.TakenBy = append(x.TakenBy, name)
			}
		}
		for _, one := range d.choices(p) {
			x.Types = append(x.Types, stringsOf(one["type"])...)
		}
		if item := d.item(d.listOf(p)); item != nil {
			if types := stringsOf(item["type"]); len(types) > 0 {
				x.Items = types[0]
			}
			out = append(out, x)
			out = append(out, d.described(item, x.Path+"[]")...)
			continue
		}
		out = append(out, x)
		out = append(out, d.described(p, x.Path)...)
		if more, ok := p["additionalProperties"].(map[string]any); ok {
			out = append(out, d.described(d.resolve(more), x.Path+".*")...)
		}
	}
	return out
}

// choices are the schemas of which a value has to fit one.
func (d *schemaDoc) choices(p map[string]any) []map[string]any {
	var out []map[string]any
	for _, word := range [...]string{"oneOf", "anyOf"} {
		list, _ := p[word].([]any)
		for _, x := range list {
			if m, ok := x.(map[string]any); ok {
				out = append(out, d.resolve(m))
			}
		}
	}
	return out
}

// listOf is the part of a schema that is for a list.
func (d *schemaDoc) listOf(p map[string]any) map[string]any {
	for _, one := range d.choices(p) {
		if one["items"] != nil {
			return one
		}
	}
	return p
}
