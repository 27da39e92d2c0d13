package schemas

import (
	"errors"
	"maps"
	"slices"
	"strings"

	"etchbound/schemas/quantity"
)

// walker goes through the nodes beside their schema for what a schema library
// cannot say: units, words that other readers take for true or false, and text
// that was cut by a comment.
type walker struct {
	doc      *schemaDoc
	problems []Problem
	owner    *Node          // the map whose key is looked at
	rule     map[string]any // and its schema
}

func (w *walker) visit(n *Node, rule map[string]any) {
	if n == nil || rule == nil {
		return
	}
	switch {
	case n.nothing:
		w.nothing(n, rule)
	case n.notPlain != nil:
		w.notPlain(n, rule)
	}
	if n.bad {
		return
	}
	switch n.Kind {
	case Map:
		w.keys(n, rule)
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

func (w *walker) keys(n *Node, rule map[string]any) {
	needs := allNeeded(rule, n.Str(stringOf(rule["named_by"])))
	for _, k := range n.Keys {
		k.Value.required = slices.Contains(needs, k.Name)
		w.owner, w.rule = n, rule
		w.visit(k.Value, w.doc.property(rule, k.Name))
	}
}

// nothing is for a key without a value, or with one that stands for none.
func (w *walker) nothing(n *Node, rule map[string]any) {
	what := "nothing is written after the key"
	if n.Text != "" {
		what = n.Text + " stands for nothing"
	} else if strings.HasSuffix(n.Path, "]") {
		what = "an empty item of a list"
	}
	hint := unknownHint(n, rule)
	if strings.HasSuffix(n.Path, "]") {
		hint = "delete the dash, or write what belongs behind it"
	}
	w.problems = append(w.problems, n.Problem(what, w.doc.acceptedWords(rule), hint))
}

// notPlain is for what some reader of YAML would take for a number, such as
// 0x10 or .nan, and that is no plain decimal.
func (w *walker) notPlain(n *Node, rule map[string]any) {
	p := n.Problem(n.Text+" is no plain decimal number", w.doc.acceptedWords(rule), "")
	if e, ok := n.notPlain.(*quantity.Error); ok {
		p.What, p.Hint = n.Text+": "+e.What, e.Hint
	}
	switch {
	case takesText(rule) && len(dimensionsOf(rule)) == 0:
		p.Hint = "in quotes if text is meant: \"" + n.Text + "\""
	case errors.Is(n.notPlain, quantity.ErrFinite):
		p.Hint = unknownHint(n, rule)
	}
	w.problems = append(w.problems, p)
}

// unknownHint is for a value by which the writer likely means that he does not
// know it.
func unknownHint(n *Node, rule map[string]any) string {
	if !n.required {
		return "leave the key out where a value is not known; nothing is never read as zero"
	}
	return "the key has to be there: write your own value" + inUnits(dimensionsOf(rule))
}

func (w *walker) text(n *Node, rule map[string]any) {
	if dims := dimensionsOf(rule); len(dims) > 0 {
		w.quantity(n, rule, dims)
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

func (w *walker) quantity(n *Node, rule map[string]any, dims []quantity.Dimension) {
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
	p := n.Problem(what, e.Accepted, w.hint(n, rule, e, dims))
	p.Column += w.offset(n, e.Offset)
	w.problems = append(w.problems, p)
}

// hint adds to the hint of the quantity what only the key can tell.
func (w *walker) hint(n *Node, rule map[string]any, e *quantity.Error, dims []quantity.Dimension) string {
	switch {
	case e.Hint != "":
	case errors.Is(e, quantity.ErrFinite):
		return unknownHint(n, rule)
	case errors.Is(e, quantity.ErrDimension):
		return w.otherKey(n, e.Found, dims)
	}
	return e.Hint
}

// otherKey names the keys of the same map that take the unit that was written,
// and are still free.
func (w *walker) otherKey(n *Node, unit string, dims []quantity.Dimension) string {
	props := takenKeys(w.rule, w.owner.Str(stringOf(w.rule["named_by"])))
	var list []string
	for _, key := range slices.Sorted(maps.Keys(props)) {
		for _, d := range dimensionsOf(w.doc.property(w.rule, key)) {
			if slices.Contains(quantity.Meant(unit), d) && !w.owner.Has(key) {
				list = append(list, "write "+key+": "+n.Text)
			}
		}
	}
	mean := "give " + dims[0].Words() + inUnits(dims[:1])
	if len(list) > 0 {
		mean = strings.Join(list, " or ") + ", or " + mean
	}
	return mean
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
			w.quantity(n, rule, []quantity.Dimension{d})
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
	p := n.Problem("the text ends before \""+shorten(c)+"\", which is read as a comment", "",
		"put the whole text in quotes if "+shorten(strings.Fields(c)[0])+" belongs to it")
	p.Severity = Notice
	w.problems = append(w.problems, p)
}
