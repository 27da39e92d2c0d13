package schemas

import (
	"fmt"
	"io"
	"strings"

	"etchbound/schemas/quantity"

	"gopkg.in/yaml.v3"
)

// Bounds on what is walked, so that no file can take long or recurse deeply.
const (
	mostDepth  = 32
	mostNodes  = 20000
	mostKeys   = 1000
	mostScalar = 4096
)

// tree turns the YAML text into nodes of our own. The YAML library guesses too
// much (010 is 8, an empty value is 0, a repeated key is taken), so its guesses
// are used for nothing but the shape of the file.
type tree struct {
	file     *File
	problems []Problem
	nodes    int
	stopped  bool
}

func (t *tree) read(text string) *Node {
	dec := yaml.NewDecoder(strings.NewReader(text))
	doc, err := decodeOne(dec)
	switch {
	case err == io.EOF || err == nil && (doc.Kind != yaml.DocumentNode || len(doc.Content) == 0 ||
		emptyNode(doc.Content[0])):
		t.add(Problem{Line: 1, Column: 1, What: "the file is empty", Accepted: "keys with values, such as title: My route"})
		return nil
	case err != nil:
		t.problems = append(t.problems, t.syntax(err, text)...)
		return nil
	}
	second, err := decodeOne(dec)
	if err == nil {
		t.secondDocument(second)
	} else if err != io.EOF {
		t.problems = append(t.problems, t.syntax(err, text)...)
		return nil
	}
	root := doc.Content[0]
	if root.Kind != yaml.MappingNode {
		t.notAMap(root)
		return nil
	}
	n := t.convert(root, "", 1)
	if t.stopped {
		return nil
	}
	return n
}

// decodeOne reads one document. The library is trusted with no input: a panic
// inside it is an error of the file.
func decodeOne(dec *yaml.Decoder) (n *yaml.Node, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("yaml: %v", r)
		}
	}()
	n = new(yaml.Node)
	err = dec.Decode(n)
	return n, err
}

// readable reads a text to its end and gives the first error of its syntax.
func readable(text string) error {
	dec := yaml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := decodeOne(dec); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
	}
}

func emptyNode(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Style == 0 && n.Value == "" }

func (t *tree) add(p Problem) {
	p.File = t.file.Name
	p.Line, p.Column = max(p.Line, 1), max(p.Column, 1)
	if p.Text == "" {
		p.Text = t.file.line(p.Line)
	}
	t.problems = append(t.problems, p)
}

func (t *tree) at(y *yaml.Node, path, what, accepted, hint string) {
	t.add(Problem{Line: y.Line, Column: y.Column, Path: path, What: what, Accepted: accepted, Hint: hint})
}

func (t *tree) secondDocument(y *yaml.Node) {
	line := max(y.Line, 1)
	for n := min(line, len(t.file.lines)); n > 1; n-- {
		if strings.HasPrefix(t.file.line(n), "---") {
			line = n
			break
		}
	}
	t.add(Problem{Line: line, Column: 1, What: "a second document begins here", Accepted: "one document a file",
		Hint: "delete the line --- or keep the second part in a file of its own"})
}

func (t *tree) notAMap(y *yaml.Node) {
	hint := "begin with a key, such as title: My route"
	if y.Kind == yaml.SequenceNode {
		hint = "the list likely belongs under a key, such as steps:"
	}
	t.at(y, "", "the file is "+shape(y)+" at its top", "keys with values, such as title: My route", hint)
}

func shape(y *yaml.Node) string {
	switch y.Kind {
	case yaml.SequenceNode:
		return "a list"
	case yaml.MappingNode:
		return "a map of keys"
	case yaml.AliasNode:
		return "an alias"
	}
	return "one text"
}

// convert walks one node. Aliases are refused before anything follows them, so
// the walk ends.
func (t *tree) convert(y *yaml.Node, path string, depth int) *Node {
	n := &Node{Line: y.Line, Column: y.Column, Path: path, Text: y.Value, Quoted: y.Style != 0, comment: y.LineComment,
		file: t.file}
	if t.nodes++; t.stopped || t.tooMuch(y, path, depth) {
		n.bad = true
		return n
	}
	if t.refused(y, path) {
		n.bad = true
		if y.Kind == yaml.AliasNode {
			return n
		}
	}
	switch y.Kind {
	case yaml.MappingNode:
		n.Kind = Map
		t.convertMap(n, y, depth)
	case yaml.SequenceNode:
		n.Kind = List
		for i, c := range y.Content {
			n.Items = append(n.Items, t.convert(c, joinItem(path, i), depth+1))
		}
	default:
		t.scalar(n, y.Tag)
	}
	return n
}

func (t *tree) tooMuch(y *yaml.Node, path string, depth int) bool {
	what, accepted := "", ""
	switch {
	case depth > mostDepth:
		what, accepted = fmt.Sprintf("nested more than %d levels deep", mostDepth), deepest
	case t.nodes > mostNodes:
		what, accepted = fmt.Sprintf("more than %d values in one file", mostNodes),
			fmt.Sprintf("at most %d values", mostNodes)
	case y.Kind == yaml.MappingNode && len(y.Content)/2 > mostKeys:
		what, accepted = fmt.Sprintf("more than %d keys in one map", mostKeys), fmt.Sprintf("at most %d keys", mostKeys)
	default:
		return false
	}
	t.stopped = true
	t.at(y, path, what, accepted, "is this the right file? It is not read any further")
	return true
}

// refused reports constructs of YAML that no file here needs and that hide what
// is written.
func (t *tree) refused(y *yaml.Node, path string) bool {
	switch {
	case y.Kind == yaml.AliasNode:
		t.at(y, path, "an alias (*"+y.Value+")", "values written out", "write the value again, or put it in quotes if "+
			"it is text")
	case y.Anchor != "":
		t.at(y, path, "an anchor (&"+y.Anchor+")", "values written out", "delete &"+y.Anchor+", or put the value in "+
			"quotes if it is text")
	case y.Style&(yaml.FoldedStyle|yaml.LiteralStyle) != 0 && strings.TrimSpace(y.Value) == "":
		t.at(y, path, "a block of text with nothing in it, which the sign > or | begins", "a value", "write a number "+
			"alone, and text with such a sign in quotes")
	case y.Style&yaml.TaggedStyle != 0:
		t.at(y, path, "a tag ("+y.Tag+")", "values without a tag", "delete the tag, or put the value in quotes if it is text")
	default:
		return false
	}
	return true
}

func (t *tree) convertMap(n *Node, y *yaml.Node, depth int) {
	for i := 0; i+1 < len(y.Content); i += 2 {
		k, v := y.Content[i], y.Content[i+1]
		t.nodes++
		if more := t.decimalComma(n, y.Content[i:]); more > 0 {
			i += 2 * (more - 1)
			continue
		}
		if !t.goodKey(k, n.Path) {
			n.partial = true
			continue
		}
		if first := n.key(k.Value); first != nil {
			t.at(k, join(n.Path, k.Value), fmt.Sprintf("the key %s is written twice: first in line %d, column %d", k.Value,
				first.Line, first.Column),
				"each key once", listHint(v))
			continue
		}
		if emptyNode(v) {
			v.Line, v.Column = k.Line, k.Column
		}
		value := t.convert(v, join(n.Path, k.Value), depth+1)
		if value.comment == "" {
			value.comment = k.LineComment
		}
		n.Keys = append(n.Keys, Key{Name: k.Value, Line: k.Line, Column: k.Column, Value: value})
	}
}

// decimalComma recognises {mass: 3,2 g}, which YAML takes for the mass 3 and a
// key "2 g" with nothing behind it, and gives how many such keys there are: the
// range in {mass: 3,2 (3,1 to 3,3) g} makes three.
func (t *tree) decimalComma(n *Node, content []*yaml.Node) int {
	if len(n.Keys) == 0 {
		return 0
	}
	before := n.Keys[len(n.Keys)-1].Value
	if before.Quoted || before.Kind != Number || before.bad {
		return 0
	}
	written, keys := before.Text, 0
	for ; 2*keys+1 < len(content); keys++ {
		k, v := content[2*keys], content[2*keys+1]
		if !emptyNode(v) || k.Style != 0 || k.Line != before.Line || k.Value == "" ||
			!strings.Contains("0123456789", k.Value[:1]) {
			break
		}
		written += "," + k.Value
	}
	if keys == 0 {
		return 0
	}
	before.bad, n.partial = true, true
	p := Problem{Line: before.Line, Column: before.Column, Path: before.Path,
		What:  written + ": a comma, which parts two keys inside braces",
		Found: written, Accepted: "a decimal point, and no comma between thousands"}
	if _, err := quantity.Split(written); err != nil {
		p.Hint = err.(*quantity.Error).Hint
	}
	t.add(p)
	return keys
}

// listHint is for a list whose key already names the format of the file.
func listHint(v *yaml.Node) string {
	if v.Kind == yaml.SequenceNode {
		return "the list belongs under a key of its own; in a limits file that is entries"
	}
	return ""
}

func (t *tree) goodKey(k *yaml.Node, path string) bool {
	switch {
	case t.refused(k, path):
	case k.Kind != yaml.ScalarNode:
		t.at(k, path, shape(k)+" in the place of a key", "a key of small letters", "a text that begins with { or [ "+
			"has to be in quotes")
	case k.Tag == "!!merge" && k.Style == 0:
		t.at(k, path, "a merge key (<<)", "keys written out", "write the keys again")
	case k.Style == 0 && k.Tag != "!!str" && k.Tag != "":
		t.at(k, path, "the key "+k.Value+" is no text", "a key of small letters", "")
	case len(k.Value) > mostScalar:
		t.at(k, path, fmt.Sprintf("a key of more than %d bytes", mostScalar), "", "")
	default:
		return true
	}
	return false
}
