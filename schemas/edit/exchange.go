package edit

import (
	"fmt"
	"strings"

	"etchbound/schemas"
)

// exchanged has two items of a list each in the place of the other, with the comments that
// stand over them.
func (p page) exchanged(root *schemas.Node, e Edit) (string, error) {
	a, b, err := pair(root, e)
	if err != nil {
		return "", err
	}
	list, _, _ := item(e.Path)
	from, _ := p.reach(root.At(list), a)
	to, dash := p.reach(root.At(list), b)
	if from.start < 0 || to.start < 0 {
		return "", fmt.Errorf("%w: a dash stands on a line of its own", ErrPlace)
	}
	first, second := p.text[from.start:from.end], p.text[to.start:to.end]
	at := from.start + dash - to.start
	text := p.text[:from.start] + second + p.text[from.end:to.start] + first + p.text[to.end:]
	return p.noted(text[:at], text[at:], e.Note), nil
}

// pair are the two items of an edit, the one that stands first in the file first.
func pair(root *schemas.Node, e Edit) (a, b *schemas.Node, err error) {
	one, i, ok := item(e.Path)
	other, k, also := item(e.With)
	list := root.At(one)
	if !ok || !also || one != other || i == k || list == nil || list.Kind != schemas.List || max(i, k) >= len(list.Items) {
		return nil, nil, fmt.Errorf("%w: there are no such two items of one list", ErrPlace)
	}
	return list.Items[min(i, k)], list.Items[max(i, k)], nil
}

// span is a part of a text.
type span struct{ start, end int }

// reach is what an item of a list fills, comments over it included, and where its dash
// stands. In braces it is the item alone.
func (p page) reach(list, n *schemas.Node) (s span, dash int) {
	from := p.offset(n.Line, n.Column)
	if p.inBraces(list) {
		end, err := p.end(n)
		if err != nil {
			return span{-1, -1}, -1
		}
		return span{from, end}, from
	}
	start, in := p.starts[n.Line-1], list.Column-1
	if lead := p.text[start:from]; len(lead) <= in || lead[:in+1] != strings.Repeat(" ", in)+"-" {
		return span{-1, -1}, -1
	}
	dash = start + in
	for start > 0 && strings.HasPrefix(strings.TrimLeft(p.line(start-1), " "), "#") {
		start = p.begin(start - 1)
	}
	return span{start, p.linesBelow(n.Line, in, false)}, dash
}

// traded are the values of a tree as they stood before two items changed places.
func traded(n *schemas.Node, e Edit) map[string]string {
	now := map[string]string{}
	values(n, none, now)
	out := make(map[string]string, len(now))
	for k, v := range now {
		switch {
		case below(k, e.Path):
			k = e.With + k[len(e.Path):]
		case below(k, e.With):
			k = e.Path + k[len(e.With):]
		}
		out[k] = v
	}
	return out
}

// below reports whether a path is another, or lies below it.
func below(path, of string) bool {
	rest, ok := strings.CutPrefix(path, of)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}
