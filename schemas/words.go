package schemas

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"etchbound/schemas/quantity"
)

// explain turns one failed keyword into problems in the writer's words.
func (d *schemaDoc) explain(root *Node, f failure) []Problem {
	tokens := pointerTokens(f.schema)
	if len(tokens) == 0 {
		return nil
	}
	node := locate(root, f.node)
	if node == nil || d.afterFault(node, tokens) {
		return nil
	}
	keyword := tokens[len(tokens)-1]
	if keyword != "additionalProperties" && d.pointer(f.schema) == false {
		return d.notAllowed(root, f)
	}
	schema, _ := d.pointer(parent(f.schema)).(map[string]any)
	if slices.Contains(tokens, "place_name") {
		return []Problem{badName(root, f.node, stringOf(schema["explain"]))}
	}
	if node.bad {
		return nil
	}
	schema = d.resolve(schema)
	switch keyword {
	case "required":
		return d.missing(node, stringsOf(schema["required"]))
	case "additionalProperties":
		return d.unknown(node, schema)
	case "type":
		return []Problem{d.wrongKind(node, schema)}
	case "enum", "const":
		return []Problem{d.notListed(node, schema)}
	default:
		return []Problem{d.other(node, schema, keyword)}
	}
}

func parent(pointer string) string {
	return pointer[:max(0, strings.LastIndexByte(pointer, '/'))]
}

// locate finds the node of an instance pointer.
func locate(root *Node, pointer string) *Node {
	at := root
	for _, token := range pointerTokens(pointer) {
		if i, err := strconv.Atoi(token); at.Kind == List && err == nil && i < len(at.Items) {
			at = at.Items[i]
		} else if at = at.Get(token); at == nil {
			return nil
		}
	}
	return at
}

// badName is for a key of the writer's choice that cannot be used.
func badName(root *Node, pointer, accepted string) Problem {
	tokens := pointerTokens(pointer)
	key := tokens[len(tokens)-1]
	owner := locate(root, parent(pointer))
	return owner.KeyProblem(key, "the key "+shorten(key)+" is not a name that can be used", accepted, nameHint(key))
}

// afterFault reports whether a condition failed only because the key it hangs
// on is missing or wrong, which is said once.
func (d *schemaDoc) afterFault(node *Node, tokens []string) bool {
	i := slices.Index(tokens, "allOf")
	if i < 0 {
		return false
	}
	var owner map[string]any = d.root
	for _, t := range tokens[:i] {
		owner, _ = owner[t].(map[string]any)
	}
	naming := stringOf(owner["named_by"])
	if naming == "" || node.Kind != Map || !node.Has(naming) {
		return naming != "" && node.Kind == Map
	}
	props, _ := owner["properties"].(map[string]any)
	rule, _ := props[naming].(map[string]any)
	value := node.Get(naming)
	return value == nil || value.bad || !slices.Contains(stringsOf(rule["enum"]), value.Text)
}

// notAllowed is for a key that a condition rules out.
func (d *schemaDoc) notAllowed(root *Node, f failure) []Problem {
	tokens := pointerTokens(f.node)
	key := tokens[len(tokens)-1]
	owner := locate(root, parent(f.node))
	schema := d.schemaAt(root, parent(f.node))
	if owner == nil {
		return nil
	}
	naming := stringOf(schema["named_by"])
	value := owner.Get(naming)
	props, _ := schema["properties"].(map[string]any)
	rule, _ := props[naming].(map[string]any)
	if value == nil || !slices.Contains(stringsOf(rule["enum"]), value.Text) {
		return nil
	}
	return []Problem{owner.KeyProblem(key, fmt.Sprintf("a %s step takes no %s", value.Text, key), d.takers(f.schema, naming, key), "leave the key out")}
}

// takers names the steps that take a key, where the condition lists them.
func (d *schemaDoc) takers(pointer, naming, key string) string {
	condition, _, found := strings.Cut(pointer, "/else/")
	if !found {
		return ""
	}
	rule, _ := d.pointer(condition + "/if/properties/" + naming).(map[string]any)
	list := append(stringsOf(rule["enum"]), stringsOf(rule["const"])...)
	return key + " in steps of " + strings.Join(list, ", ")
}

// schemaAt is the schema that describes the node at an instance pointer.
func (d *schemaDoc) schemaAt(root *Node, pointer string) map[string]any {
	at, schema := root, d.root
	for _, token := range pointerTokens(pointer) {
		if at == nil || schema == nil {
			return nil
		}
		if at.Kind == List {
			i, _ := strconv.Atoi(token)
			if i >= len(at.Items) {
				return nil
			}
			at, schema = at.Items[i], d.item(schema)
		} else {
			at, schema = at.Get(token), d.property(schema, token)
		}
	}
	return schema
}

func (d *schemaDoc) missing(node *Node, keys []string) []Problem {
	var list []Problem
	schema := d.schemaOf(node)
	for _, key := range keys {
		if node.Has(key) || node.partial || d.misspelt(node, schema, key) {
			continue
		}
		rule := d.property(schema, key)
		what := "the key " + key + " is missing"
		if naming := stringOf(schema["named_by"]); naming != "" && node.Has(naming) {
			what = fmt.Sprintf("a %s step needs the key %s", node.Str(naming), key)
		}
		hint := ""
		if e := example(rule); e != "" {
			hint = "add " + key + ": " + e
		}
		p := node.KeyProblem(key, what, stringOf(rule["description"]), hint)
		p.Found = ""
		list = append(list, p)
	}
	return list
}

// misspelt reports whether a missing key is there under a name that is not
// known, which is told at that place.
func (d *schemaDoc) misspelt(node *Node, schema map[string]any, key string) bool {
	props, _ := schema["properties"].(map[string]any)
	return slices.ContainsFunc(node.Keys, func(k Key) bool {
		_, known := props[k.Name]
		return !known && d.nearestKey(k.Name, props) == key
	})
}

// schemaOf is the schema that describes a node, found by its path.
func (d *schemaDoc) schemaOf(node *Node) map[string]any {
	path := strings.NewReplacer("[", "/", "]", "", ".", "/").Replace(node.Path)
	schema := d.root
	for _, token := range pointerTokens(path) {
		if next := d.item(schema); next != nil && isIndex(token) {
			schema = next
		} else if schema = d.property(schema, token); schema == nil {
			return nil
		}
	}
	return schema
}

func isIndex(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

func (d *schemaDoc) unknown(node *Node, schema map[string]any) []Problem {
	props, _ := schema["properties"].(map[string]any)
	var list []Problem
	for _, k := range node.Keys {
		if _, ok := props[k.Name]; ok {
			continue
		}
		hint := ""
		if near := d.nearestKey(k.Name, props); near != "" {
			hint = "did you mean " + near + "?"
		}
		list = append(list, node.KeyProblem(k.Name, "the key "+k.Name+" is not known here", keyNames(props), hint))
	}
	return list
}

func keyNames(props map[string]any) string {
	names := make([]string, 0, len(props))
	for k := range props {
		names = append(names, k)
	}
	slices.Sort(names)
	return "the keys " + strings.Join(names, ", ")
}

// nearestKey finds the key that was likely meant, also by the other names that
// the schema lists for it.
func (d *schemaDoc) nearestKey(text string, props map[string]any) string {
	text = strings.NewReplacer("-", "_", " ", "_").Replace(strings.ToLower(text))
	names := make([]string, 0, len(props))
	for key, rule := range props {
		names = append(names, key)
		if m, ok := rule.(map[string]any); ok && slices.Contains(stringsOf(d.resolve(m)["also"]), text) {
			return key
		}
	}
	return Nearest(text, names)
}

// Nearest is the one of the names that was likely meant by the text, empty
// where none is near.
func Nearest(text string, names []string) string {
	names = slices.Clone(names)
	slices.Sort(names)
	best, least := "", 1+max(1, len(text)/3)
	for _, n := range names {
		d := quantity.Distance(strings.ToLower(text), n)
		if d > 0 && len(text) >= 3 && (strings.HasPrefix(n, text) || strings.HasPrefix(text, n)) {
			d = 1
		}
		if d < least {
			best, least = n, d
		}
	}
	return best
}

func nameHint(key string) string {
	small := strings.Trim(strings.Map(func(r rune) rune {
		switch {
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '_':
			return r
		}
		return '_'
	}, key), "_0123456789")
	if small == "" || small == key {
		return ""
	}
	return "write it as " + small
}

func example(rule map[string]any) string {
	if list, ok := rule["examples"].([]any); ok && len(list) > 0 {
		switch v := list[0].(type) {
		case string:
			return v
		case float64:
			return quantity.Number(v, 0)
		case bool:
			return strconv.FormatBool(v)
		}
	}
	return ""
}
