package edit

import (
	"fmt"
	"strings"

	"etchbound/schemas"
)

// inserted has one more item before the one of a list that stands at a path. Comments over
// that item stay over it.
func (p page) inserted(root *schemas.Node, e Edit) (string, error) {
	path, at, ok := item(e.Path)
	list := root.At(path)
	if !ok || list == nil || list.Kind != schemas.List || at >= len(list.Items) || e.To == "" {
		return "", fmt.Errorf("%w: there is no such item to put one before", ErrPlace)
	}
	next := list.Items[at]
	from := p.offset(next.Line, next.Column)
	if p.inBraces(list) {
		return p.text[:from] + e.To + ", " + p.text[from:], nil
	}
	start, dash := p.starts[next.Line-1], list.Column-1
	if lead := p.text[start:from]; len(lead) <= dash || lead[:dash+1] != strings.Repeat(" ", dash)+"-" {
		return "", fmt.Errorf("%w: its dash stands on a line of its own", ErrPlace)
	}
	for start > 0 && strings.HasPrefix(strings.TrimLeft(p.line(start-1), " "), "#") {
		start = p.begin(start - 1)
	}
	line := strings.Repeat(" ", dash) + "- " + e.To
	if e.Note != "" {
		line += " # " + e.Note
	}
	return p.text[:start] + line + p.ending() + p.text[start:], nil
}

// begin is where the line that holds an offset begins.
func (p page) begin(at int) int {
	for i := len(p.starts) - 1; i >= 0; i-- {
		if p.starts[i] <= at {
			return p.starts[i]
		}
	}
	return 0
}

// line is the text of the line that holds an offset.
func (p page) line(at int) string {
	start := p.begin(at)
	return p.text[start:p.lineEnd(start)]
}

// moved are the values of a tree as they stood before an item was put in at a path.
func moved(n *schemas.Node, path string) map[string]string {
	list, at, _ := item(path)
	now := map[string]string{}
	values(n, path, now)
	out := make(map[string]string, len(now))
	for k, v := range now {
		out[back(k, list, at)] = v
	}
	return out
}

// back is a path with an item of a list behind a place one place farther up.
func back(path, list string, at int) string {
	rest, ok := strings.CutPrefix(path, list+"[")
	if !ok {
		return path
	}
	number, more, _ := strings.Cut(rest, "]")
	var i int
	if _, err := fmt.Sscan(number, &i); err != nil || i <= at {
		return path
	}
	return fmt.Sprintf("%s[%d]%s", list, i-1, more)
}
