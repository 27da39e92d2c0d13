package schemas

import (
	"strings"

	"etchbound/schemas/quantity"
)

// walker goes through the nodes beside their schema for what a schema library
// cannot say: units, words that other readers take for true or false, and text
// that was cut by a comment.
type walker struct {
	doc      *schemaDoc
	problems []Problem
}

func (w *walker) visit(n *Node, rule map[string]any) {
	if n == nil || rule == nil || n.bad {
		return
	}
	switch n.Kind {
	case Map:
		for _, k := range n.Keys {
			w.visit(k.Value, w.doc.property(rule, k.Name))
		}
	case List:
		item := w.doc.item(rule)
		for _, x := range n.Items {
			w.visit(x, item)
		}
	case Text:
		w.text(n, rule)
	case Number:
		w.count(n, rule)
	}
}

func (w *walker) text(n *Node, rule map[string]any) {
	if dims := dimensionsOf(rule); len(dims) > 0 {
		w.quantity(n, dims)
		return
	}
	if !takesText(rule) || rule["enum"] != nil || rule["const"] != nil {
		return
	}
	if !n.Quoted {
		w.halfBoolean(n)
		w.cut(n)
	}
}

func takesText(rule map[string]any) bool {
	for _, t := range stringsOf(rule["type"]) {
		if t == "string" {
			return true
		}
	}
	return false
}

func (w *walker) quantity(n *Node, dims []quantity.Dimension) {
	v, err := quantity.Parse(n.Text, dims...)
	if err == nil {
		v.At = n.Path
		n.Quantity = v
		return
	}
	n.bad = true
	e, ok := err.(*quantity.Error)
	if !ok {
		w.problems = append(w.problems, n.Problem(err.Error(), quantity.Accepted(dims...), ""))
		return
	}
	what := e.What
	if e.Found != "" {
		what = "\"" + shorten(e.Found) + "\" is " + e.What
	}
	p := n.Problem(what, e.Accepted, e.Hint)
	p.Column += w.offset(n, e.Offset)
	w.problems = append(w.problems, p)
}

// offset moves the place of a problem to the part of the text that is wrong,
// where the text stands in its line as it is.
func (w *walker) offset(n *Node, runes int) int {
	line := []rune(n.file.line(n.Line))
	quote := 0
	if n.Quoted {
		quote = 1
	}
	from := n.Column - 1 + quote
	if from > len(line) || !strings.HasPrefix(string(line[from:]), n.Text) {
		return 0
	}
	return quote + runes
}

// count keeps a bare number where the key takes one as a quantity.
func (w *walker) count(n *Node, rule map[string]any) {
	for _, d := range dimensionsOf(rule) {
		if d == quantity.Count || d == quantity.None {
			w.quantity(n, []quantity.Dimension{d})
			return
		}
	}
}

func (w *walker) halfBoolean(n *Node) {
	switch strings.ToLower(n.Text) {
	case "yes", "no", "on", "off", "y", "n":
		w.problems = append(w.problems, n.Problem("the bare word "+n.Text+", which some programs read as true or false",
			"text", "put it in quotes: \""+n.Text+"\""))
	}
}

// cut notices a text that ends where YAML takes the rest for a comment, as in
// TiC #2. A comment that begins with a blank after its # is one that was meant.
func (w *walker) cut(n *Node) {
	c := n.comment
	if len(c) < 2 || c[0] != '#' || strings.ContainsAny(c[1:2], " \t#!-=") || strings.Contains(c, "\n") {
		return
	}
	p := n.Problem("the text ends before \""+shorten(c)+"\", which is read as a comment", "", "put the whole text in quotes if "+shorten(strings.Fields(c)[0])+" belongs to it")
	p.Severity = Notice
	w.problems = append(w.problems, p)
}
