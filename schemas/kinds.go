package schemas

import (
	"fmt"
	"slices"
	"strings"

	"etchbound/schemas/quantity"
)

// wrongKind is for a list where a text is meant, a bare number where a quantity
// is meant, and so on.
func (d *schemaDoc) wrongKind(node *Node, rule map[string]any) Problem {
	node.bad = true
	types := stringsOf(rule["type"])
	accepted := d.acceptedWords(rule)
	name := lastKey(node.Path)
	if dims := dimensionsOf(rule); len(dims) > 0 && node.Kind < List {
		if node.Kind == Number {
			_, err := quantity.Parse(node.Text, dims...)
			if e, ok := err.(*quantity.Error); ok {
				return node.Problem(node.Text+" is "+e.What, accepted, e.Hint)
			}
		}
		return node.Problem(fmt.Sprintf("%s is %s where %s is meant", node.Text, node.Kind, dims[0].Words()), accepted,
			kindHint(node, types, rule))
	}
	what := fmt.Sprintf("%s is %s", name, found(node))
	if node.Kind == Number && (slices.Contains(types, "number") || slices.Contains(types, "integer")) {
		what = name + " is no whole number"
	}
	return node.Problem(what, accepted, kindHint(node, types, rule))
}

func found(node *Node) string {
	switch node.Kind {
	case List, Map:
		return node.Kind.String()
	case Number:
		return "the number " + node.Text
	case Bool:
		return "the truth value " + node.Text
	}
	return "the text \"" + shorten(node.Text) + "\""
}

func shorten(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "..."
	}
	return s
}

func kindHint(node *Node, types []string, rule map[string]any) string {
	switch {
	case slices.Contains(types, "boolean") && node.Kind == Text:
		switch strings.ToLower(node.Text) {
		case "yes", "on", "y":
			return "write true"
		case "no", "off", "n":
			return "write false"
		case "true", "false":
			return "write " + strings.ToLower(node.Text) + " in small letters and without quotes"
		}
	case slices.Contains(types, "string") && (node.Kind == Number || node.Kind == Bool) && rule["dimension"] == nil:
		return "in quotes it is text: \"" + node.Text + "\""
	case slices.Contains(types, "array") && node.Kind == Map && node.braced():
		return "put brackets around the braces: [{...}]"
	case slices.Contains(types, "array") && (node.Kind == Map || node.Kind == Text):
		return "write a list: each item on a line of its own, after a dash and a space"
	case (slices.Contains(types, "number") || slices.Contains(types, "integer")) && node.Kind == Text:
		return numberHint(node)
	case slices.Equal(types, []string{"object"}) && node.Kind == Text && rule["properties"] != nil:
		return objectHint(node, rule)
	}
	return ""
}

// braced reports whether a map is written in braces.
func (n *Node) braced() bool {
	line := []rune(n.file.line(n.Line))
	return n.Column <= len(line) && line[n.Column-1] == '{'
}

// objectHint is for a text where a map is meant, such as the one word that the
// map would need.
func objectHint(node *Node, rule map[string]any) string {
	props, _ := rule["properties"].(map[string]any)
	if keys := stringsOf(rule["required"]); len(keys) == 1 {
		inner, _ := props[keys[0]].(map[string]any)
		if near := nearestWord(node.Text, inner); near != "" {
			return "write {" + keys[0] + ": " + near + "}"
		}
	}
	return "write its keys in braces, or below it, indented by two spaces"
}

// numberHint is for a text where a plain number is meant.
func numberHint(node *Node) string {
	_, err := quantity.PlainNumber(node.Text)
	if err == nil {
		return "write " + node.Text + " without quotes"
	}
	if e, ok := err.(*quantity.Error); ok && e.Hint != "" {
		return e.Hint
	}
	if !strings.ContainsAny(node.Text, "0123456789") {
		return "write a number; what it depends on belongs in note"
	}
	return "write the number alone, without a unit"
}

func lastKey(path string) string {
	if path == "" {
		return "the file"
	}
	return path[strings.LastIndexByte(path, '.')+1:]
}

func dimensionsOf(rule map[string]any) []quantity.Dimension {
	var dims []quantity.Dimension
	for _, name := range stringsOf(rule["dimension"]) {
		if d, ok := quantity.Named(name); ok {
			dims = append(dims, d)
		}
	}
	return dims
}

// said is what a rule says of its key, as a terminal shows it: without the stars that make a
// word heavy on a page.
func said(rule map[string]any) string {
	return strings.ReplaceAll(stringOf(rule["description"]), "**", "")
}

// acceptedWords says what a key takes.
func (d *schemaDoc) acceptedWords(rule map[string]any) string {
	if dims := dimensionsOf(rule); len(dims) > 0 {
		return quantity.Accepted(dims...)
	}
	if list := stringsOf(rule["enum"]); len(list) > 0 {
		return "one of " + strings.Join(list, ", ")
	}
	if s := stringOf(rule["explain"]); s != "" {
		return s
	}
	s := strings.TrimSpace(shapeWords(rule) + said(rule))
	if e := d.shown(rule); e != "" && !strings.Contains(s, e) {
		s = strings.TrimSuffix(s, ".") + "; written as " + e
	}
	return s
}

// shapeWords begins what a key takes with its shape, where it is not plain text.
func shapeWords(rule map[string]any) string {
	switch stringOf(rule["type"]) {
	case "array":
		return "a list. "
	case "object":
		if props, ok := rule["properties"].(map[string]any); ok {
			return keyNames(props) + ". "
		}
		return "a map of keys. "
	case "number", "integer":
		return "a number. "
	case "boolean":
		return "true or false. "
	case "string":
		return "text. "
	}
	return ""
}

// notListed is for a word that is none of those a key takes.
func (d *schemaDoc) notListed(node *Node, rule map[string]any) Problem {
	node.bad = true
	list := stringsOf(rule["enum"])
	if c := stringOf(rule["const"]); c != "" {
		list = []string{c}
	}
	hint := ""
	if near := nearestWord(node.Text, rule); near != "" {
		hint = "did you mean " + near + "?"
	}
	if more := stringOf(rule["hint"]); more != "" { // what the words mean, where they are mixed up
		hint = strings.TrimSpace(hint + " " + more)
	}
	accepted := strings.Join(list, ", ")
	if len(list) > 1 {
		accepted = "one of " + accepted
	}
	return node.Problem(fmt.Sprintf("%s cannot be %s", lastKey(node.Path), shorten(node.Text)), accepted, hint)
}

// nearestWord is the word of a schema's list that was likely meant: by another
// word for it, by its spelling, or as one word of several.
func nearestWord(text string, rule map[string]any) string {
	list := append(stringsOf(rule["enum"]), stringsOf(rule["const"])...)
	also, _ := rule["also_values"].(map[string]any)
	word := strings.NewReplacer("-", "_", " ", "_").Replace(strings.ToLower(text))
	if near := stringOf(also[word]); near != "" {
		return near
	}
	if slices.Contains(list, word) && word != text {
		return word
	}
	if near := Nearest(word, list); near != "" {
		return near
	}
	for _, w := range strings.Split(word, "_") {
		if near := stringOf(also[w]); near != "" {
			return near
		}
		if slices.Contains(list, w) {
			return w
		}
	}
	return ""
}

// other is for the sizes and patterns that the schemas use.
func (d *schemaDoc) other(node *Node, rule map[string]any, keyword string) Problem {
	node.bad = node.Kind < List
	name := lastKey(node.Path)
	bound := ""
	if v, ok := rule[keyword].(float64); ok {
		bound = quantity.Number(v, 0)
	}
	what := ""
	switch keyword {
	case "minItems", "minProperties":
		what = name + " is empty"
	case "maxItems", "maxProperties":
		what = fmt.Sprintf("%s has more than %s entries", name, bound)
	case "minLength":
		what = name + " is an empty text"
	case "maxLength":
		what = fmt.Sprintf("%s is longer than %s characters", name, bound)
	case "minimum":
		what = fmt.Sprintf("%s is %s; the least is %s", name, node.Text, bound)
	case "exclusiveMinimum":
		what = fmt.Sprintf("%s is %s; it has to be more than %s", name, node.Text, bound)
	case "maximum":
		what = fmt.Sprintf("%s is %s; the most is %s", name, node.Text, bound)
	case "uniqueItems":
		what = name + " has an entry twice"
	default:
		what = fmt.Sprintf("%s cannot be %s", name, found(node))
	}
	hint := stringOf(rule["hint"])
	if keyword == "pattern" && strings.EqualFold("^"+node.Text+"$", stringOf(rule[keyword])) {
		hint = "write it in small letters: " + strings.ToLower(node.Text)
	}
	return node.Problem(what, d.acceptedWords(rule), hint)
}
