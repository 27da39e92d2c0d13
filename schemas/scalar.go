package schemas

import (
	"fmt"
	"strings"

	"etchbound/schemas/quantity"
)

// scalar settles what one written value is. Only text in quotes is never a
// number, true or false.
func (t *tree) scalar(n *Node, tag string) {
	if len(n.Text) > mostScalar && !n.bad {
		n.bad = true
		t.add(Problem{Line: n.Line, Column: n.Column, Path: n.Path,
			What: fmt.Sprintf("a text of more than %d bytes", mostScalar), Hint: "split it into shorter notes"})
	}
	if n.Quoted || n.bad {
		return
	}
	switch v := n.Text; {
	case v == "" || v == "~" || strings.EqualFold(v, "null"):
		n.bad, n.nothing = true, true // told where it is known what the key takes
	case v == "true" || v == "false":
		n.Kind = Bool
	case likeNumber(v, tag):
		t.number(n, v)
	}
}

// likeNumber reports whether a plain text is a number, or would be one to some
// reader of YAML.
func likeNumber(v, tag string) bool {
	if tag == "!!int" || tag == "!!float" {
		return true
	}
	switch strings.ToLower(strings.TrimLeft(v, "+-.")) {
	case "nan", "inf", "infinity":
		return true
	}
	return v[0] <= '9' && strings.Trim(v, "0123456789.eE+-") == "" && strings.ContainsAny(v, "0123456789") &&
		numberShape(v)
}

// numberShape reports whether v is digits with an exponent, as 1e400 is, which
// the YAML library takes for text.
func numberShape(v string) bool {
	m, exp, ok := strings.Cut(strings.ToLower(strings.TrimLeft(v, "+-")), "e")
	exp = strings.TrimLeft(exp, "+-")
	return ok && m != "" && exp != "" && strings.Trim(exp, "0123456789") == "" && strings.Trim(m, "0123456789.") == "" &&
		strings.Count(m, ".") < 2
}

func (t *tree) number(n *Node, v string) {
	x, err := quantity.PlainNumber(v)
	if err == nil {
		n.Kind, n.Number = Number, x
		return
	}
	n.bad, n.notPlain = true, err // told where it is known what the key takes
}
