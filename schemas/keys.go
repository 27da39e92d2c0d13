package schemas

import (
	"maps"
	"slices"
	"strings"

	"etchbound/schemas/quantity"
)

// missing tells of keys that have to be there.
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
			what = article(node.Str(naming)) + " step needs the key " + key
		}
		p := node.KeyProblem(key, what, said(rule), d.addHint(key, rule))
		p.Found = ""
		list = append(list, p)
	}
	return list
}

// misspelt reports whether a missing key is there under a name that is not
// known, or nothing that is needed is, both of which is told at the unknown key.
func (d *schemaDoc) misspelt(node *Node, schema map[string]any, key string) bool {
	if strange(node, schema) {
		return true
	}
	props := takenBy(node, schema)
	return slices.ContainsFunc(node.Keys, func(k Key) bool {
		_, known := props[k.Name]
		return !known && d.nearestKey(k.Name, props) == key
	})
}

// strange reports whether a map holds none of the keys it needs and some that
// are not known: it was written in another way throughout.
func strange(node *Node, schema map[string]any) bool {
	props, _ := schema["properties"].(map[string]any)
	needs := stringsOf(schema["required"])
	unknown := slices.ContainsFunc(node.Keys, func(k Key) bool { return props[k.Name] == nil })
	return unknown && len(needs) > 0 && !slices.ContainsFunc(needs, node.Has)
}

// takenBy are the keys that a map may hold, by what it is named.
func takenBy(node *Node, schema map[string]any) map[string]any {
	return takenKeys(schema, node.Str(stringOf(schema["named_by"])))
}

// unknown tells of keys that a map does not take.
func (d *schemaDoc) unknown(node *Node, schema map[string]any) []Problem {
	props, _ := schema["properties"].(map[string]any)
	takes := takenBy(node, schema)
	var list []Problem
	for _, k := range node.Keys {
		if _, ok := props[k.Name]; !ok {
			list = append(list, node.KeyProblem(k.Name, "the key "+k.Name+" is not known here", keyNames(takes),
				d.unknownHint(node, schema, takes, k.Name)))
		}
	}
	return list
}

// unknownHint says which key was meant, or where the key belongs.
func (d *schemaDoc) unknownHint(node *Node, schema, takes map[string]any, key string) string {
	if near := d.nearestKey(key, takes); near != "" {
		node.meant = append(node.meant, near)
		return "did you mean " + near + "?"
	}
	if strange(node, schema) {
		if s := stringOf(schema["explain"]); s != "" {
			return "write " + s
		}
		return "write " + d.likeness(schema)
	}
	if owner := d.ownerOf(key); owner != "" {
		return key + " is a key of " + owner
	}
	for _, prose := range []string{"note", "notes"} {
		if takes[prose] != nil {
			return "what no key takes belongs in " + prose
		}
	}
	return ""
}

// likeness is a map with every key it needs.
func (d *schemaDoc) likeness(schema map[string]any) string {
	var parts []string
	for _, key := range stringsOf(schema["required"]) {
		value := d.shown(d.property(schema, key))
		if value == "" {
			value = own
		}
		parts = append(parts, key+": "+value)
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

// ownerOf names a map of the file that has a key of the name.
func (d *schemaDoc) ownerOf(key string) string {
	defs, _ := d.root["$defs"].(map[string]any)
	for _, name := range slices.Sorted(maps.Keys(defs)) {
		def, _ := defs[name].(map[string]any)
		if props, _ := def["properties"].(map[string]any); props[key] != nil {
			return article(name)
		}
	}
	if props, _ := d.root["properties"].(map[string]any); props[key] != nil {
		return "the file itself, at its margin"
	}
	return ""
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
	names := slices.Sorted(maps.Keys(props))
	for _, key := range names {
		if m, ok := props[key].(map[string]any); ok && slices.Contains(stringsOf(d.resolve(m)["also"]), text) {
			return key
		}
	}
	return Nearest(text, names)
}

// Nearest is the one of the names that was likely meant by the text, empty
// where none is near.
func Nearest[S ~string](text string, names []S) S {
	names = slices.Clone(names)
	slices.Sort(names)
	best, least := S(""), 1+max(1, len(text)/3)
	for _, name := range names {
		n := string(name)
		d := quantity.Distance(strings.ToLower(text), strings.ToLower(n))
		if d > 0 && len(text) >= 3 && len(n) >= 3 && (strings.HasPrefix(n, text) || strings.HasPrefix(text, n)) {
			d = 1
		}
		if d < least {
			best, least = name, d
		}
	}
	return best
}

func nameHint(key string) string {
	switch small := KeyName(key); small {
	case "":
		return "begin it with a letter from a to z"
	case key:
		return "add a word to it, such as " + key + "_container"
	default:
		return "write it as " + small
	}
}

// KeyName is the key that a text would be if written as keys have to be, in
// small letters, digits and underscores; empty where nothing is left of it.
func KeyName(text string) string {
	return strings.TrimRight(strings.TrimLeft(strings.Map(func(r rune) rune {
		switch {
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '_':
			return r
		}
		return '_'
	}, text), "_0123456789"), "_")
}
