package schemas

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"
)

// meets reports whether a node meets a schema. It tells no more than that: what is
// wrong with one that does not is for the library to say, which takes ten times as long.
type meets func(n *Node) bool

// quickly makes the check of a schema out of its keywords. Where it has one that is not
// known here nothing meets it, so that the library is asked. The two say the same, which
// a test holds.
func (d *schemaDoc) quickly() meets {
	b := &checks{doc: d, refs: map[string]*meets{}}
	if all := b.of(withoutWords(d.root)); !b.unsure {
		return all
	}
	return func(*Node) bool { return false }
}

// checks are made of one document.
type checks struct {
	doc    *schemaDoc
	refs   map[string]*meets // by the pointer of what is referred to
	unsure bool              // the document has a keyword that is not known here
}

func (b *checks) of(schema any) meets {
	s, ok := schema.(map[string]any)
	if !ok {
		b.unsure = b.unsure || schema != true && schema != false
		return func(*Node) bool { return schema == true }
	}
	if ref, ok := s["$ref"].(string); ok {
		b.unsure = b.unsure || len(s) > 1
		return b.referred(ref)
	}
	var all []meets
	for key, v := range s {
		if m := b.keyword(key, v, s); m != nil {
			all = append(all, m)
		}
	}
	if len(all) == 1 {
		return all[0]
	}
	return func(n *Node) bool { return every(all, n) }
}

func every(all []meets, n *Node) bool {
	for _, m := range all {
		if !m(n) {
			return false
		}
	}
	return true
}

// referred is the check of a part of the document; it may refer to itself.
func (b *checks) referred(ref string) meets {
	m, there := b.refs[ref]
	if !there {
		m = new(meets)
		b.refs[ref] = m
		*m = b.of(withoutWords(b.doc.pointer(strings.TrimPrefix(ref, "#"))))
	}
	return func(n *Node) bool { return (*m)(n) }
}

// keyword is the check of one keyword of a schema s; nil where another one reads it.
func (b *checks) keyword(key string, v any, s map[string]any) meets {
	switch key {
	case "$defs", "then", "else":
		return nil
	case "type":
		return ofType(stringsOf(v))
	case "enum":
		return b.oneOf(v)
	case "const":
		return b.oneOf([]any{v})
	case "pattern":
		return b.matches(stringOf(v))
	case "properties":
		return b.properties(v, s)
	case "additionalProperties":
		if s["properties"] != nil {
			return nil
		}
		return b.properties(nil, s)
	case "required":
		return holds(stringsOf(v))
	case "propertyNames":
		return named(b.of(v))
	case "items":
		return items(b.of(v))
	case "uniqueItems":
		return unique(v == true)
	case "allOf":
		return b.allOf(v)
	case "not":
		return not(b.of(v))
	case "if":
		return b.condition(v, s)
	}
	return b.measured(key, v)
}

// measured is the check of a keyword that holds a size against an end.
func (b *checks) measured(key string, v any) meets {
	end, ok := v.(float64)
	b.unsure = b.unsure || !ok
	switch key {
	case "minLength":
		return bound(Text, runes, atLeast, end)
	case "maxLength":
		return bound(Text, runes, atMost, end)
	case "minItems":
		return bound(List, length, atLeast, end)
	case "maxItems":
		return bound(List, length, atMost, end)
	case "minProperties":
		return bound(Map, length, atLeast, end)
	case "maxProperties":
		return bound(Map, length, atMost, end)
	case "minimum":
		return bound(Number, number, atLeast, end)
	case "maximum":
		return bound(Number, number, atMost, end)
	case "exclusiveMinimum":
		return bound(Number, number, above, end)
	}
	b.unsure = true
	return nil
}

func atLeast(x, end float64) bool { return x >= end }
func atMost(x, end float64) bool  { return x <= end }
func above(x, end float64) bool   { return x > end }
func runes(n *Node) float64       { return float64(utf8.RuneCountInString(n.Text)) }
func length(n *Node) float64      { return float64(len(n.Items) + len(n.Keys)) }
func number(n *Node) float64      { return n.Number }

// bound holds what is measured of a kind of node against an end; of others it says nothing.
func bound(kind Kind, of func(*Node) float64, within func(x, end float64) bool, end float64) meets {
	return func(n *Node) bool { return n.Kind != kind || within(of(n), end) }
}

func ofType(types []string) meets {
	var kinds [Map + 1]bool
	whole := false
	for _, t := range types {
		switch t {
		case "string":
			kinds[Text] = true
		case "number":
			kinds[Number] = true
		case "integer":
			whole = true
		case "boolean":
			kinds[Bool] = true
		case "array":
			kinds[List] = true
		case "object":
			kinds[Map] = true
		}
	}
	return func(n *Node) bool {
		return kinds[n.Kind] || whole && n.Kind == Number && n.Number == math.Trunc(n.Number)
	}
}

// oneOf is for texts, numbers and truth values.
func (b *checks) oneOf(v any) meets {
	list, _ := v.([]any)
	texts, numbers, truths := map[string]bool{}, map[float64]bool{}, map[bool]bool{}
	for _, x := range list {
		switch x := x.(type) {
		case string:
			texts[x] = true
		case float64:
			numbers[x] = true
		case bool:
			truths[x] = true
		default:
			b.unsure = true
		}
	}
	return func(n *Node) bool {
		switch n.Kind {
		case Text:
			return texts[n.Text]
		case Number:
			return numbers[n.Number]
		case Bool:
			return truths[n.Text == "true"]
		}
		return false
	}
}

func (b *checks) matches(pattern string) meets {
	p, err := regexp.Compile(pattern)
	if err != nil {
		b.unsure = true
		return nil
	}
	return func(n *Node) bool { return n.Kind != Text || p.MatchString(n.Text) }
}

func (b *checks) properties(v any, s map[string]any) meets {
	of := map[string]meets{}
	props, _ := v.(map[string]any)
	for key, rule := range props {
		of[key] = b.of(rule)
	}
	var more meets
	if rule, there := s["additionalProperties"]; there {
		more = b.of(rule)
	}
	return func(n *Node) bool {
		for i := range n.Keys {
			m, there := of[n.Keys[i].Name]
			if !there {
				m = more
			}
			if m != nil && !m(n.Keys[i].Value) {
				return false
			}
		}
		return true
	}
}

func holds(keys []string) meets {
	return func(n *Node) bool {
		return n.Kind != Map || !slices.ContainsFunc(keys, func(k string) bool { return !n.Has(k) })
	}
}

func named(name meets) meets {
	return func(n *Node) bool {
		return !slices.ContainsFunc(n.Keys, func(k Key) bool { return !name(&Node{Kind: Text, Text: k.Name}) })
	}
}

func items(item meets) meets {
	return func(n *Node) bool {
		return !slices.ContainsFunc(n.Items, func(x *Node) bool { return !item(x) })
	}
}

func unique(asked bool) meets {
	return func(n *Node) bool {
		for i := range n.Items {
			if asked && slices.ContainsFunc(n.Items[:i], func(x *Node) bool { return alike(x, n.Items[i]) }) {
				return false
			}
		}
		return true
	}
}

// alike reports whether two nodes say the same, however they are written.
func alike(a, b *Node) bool {
	switch {
	case a.Kind != b.Kind || len(a.Items) != len(b.Items) || len(a.Keys) != len(b.Keys):
		return false
	case a.Kind == Number:
		return a.Number == b.Number
	case a.Kind == Text || a.Kind == Bool:
		return a.Text == b.Text
	}
	for i := range a.Items {
		if !alike(a.Items[i], b.Items[i]) {
			return false
		}
	}
	for i := range a.Keys {
		if other := b.Get(a.Keys[i].Name); other == nil || !alike(a.Keys[i].Value, other) {
			return false
		}
	}
	return true
}

func (b *checks) allOf(v any) meets {
	list, _ := v.([]any)
	all := make([]meets, len(list))
	for i := range list {
		all[i] = b.of(list[i])
	}
	return func(n *Node) bool { return every(all, n) }
}

func not(m meets) meets { return func(n *Node) bool { return !m(n) } }

// condition is if with its then and else.
func (b *checks) condition(v any, s map[string]any) meets {
	test, then, other := b.of(v), b.of(true), b.of(true)
	if rule, there := s["then"]; there {
		then = b.of(rule)
	}
	if rule, there := s["else"]; there {
		other = b.of(rule)
	}
	return func(n *Node) bool {
		if test(n) {
			return then(n)
		}
		return other(n)
	}
}
