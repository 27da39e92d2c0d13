package schemas

import (
	"slices"
	"strconv"
	"strings"
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
	case "minProperties":
		if node.partial {
			return nil // what was in it was refused
		}
		return []Problem{d.other(node, schema, keyword)}
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
	owner.Get(key).bad = true
	return []Problem{owner.KeyProblem(key, article(value.Text)+" step takes no "+key,
		keyNames(takenKeys(schema, value.Text)), takers(schema, key))}
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
