package edit

import (
	"fmt"
	"strconv"
	"strings"

	"etchbound/schemas"
)

// one makes an edit.
func one(p page, root *schemas.Node, e Edit) (string, error) {
	switch {
	case e.With != "":
		return p.exchanged(root, e)
	case e.Before:
		return p.inserted(root, e)
	}
	if before, at, ok := item(e.Path); ok {
		list := root.At(before)
		if list != nil && list.Kind == schemas.List && at == len(list.Items) && e.To != "" {
			return p.appended(list, e)
		}
		if list == nil || list.Kind != schemas.List || at >= len(list.Items) || e.To == "" {
			return "", ErrPlace
		}
		return p.replaced(list.Items[at], e)
	}
	before, name := "", e.Path
	if i := strings.LastIndexByte(e.Path, '.'); i >= 0 {
		before, name = e.Path[:i], e.Path[i+1:]
	}
	in := root
	if before != "" {
		in = root.At(before)
	}
	if in == nil || in.Kind != schemas.Map {
		return "", fmt.Errorf("%w: there is no map of keys around it", ErrPlace)
	}
	at := -1
	for i := range in.Keys {
		if in.Keys[i].Name == name {
			at = i
		}
	}
	switch {
	case at < 0 && e.To == "":
		return "", fmt.Errorf("%w: there is no such key to take out", ErrPlace)
	case at < 0:
		return p.added(in, name, e)
	case e.To == "":
		return p.removed(in, at)
	}
	return p.replacedKey(&in.Keys[at], e)
}

// item parts a path that ends in the place of a list.
func item(path string) (list string, at int, ok bool) {
	i := strings.LastIndexByte(path, '[')
	if i < 0 || !strings.HasSuffix(path, "]") {
		return "", 0, false
	}
	at, err := strconv.Atoi(path[i+1 : len(path)-1])
	return path[:i], at, err == nil && at >= 0
}

// replaced has another value in the place of a scalar, or of what stands in braces.
func (p page) replaced(n *schemas.Node, e Edit) (string, error) {
	from := p.offset(n.Line, n.Column)
	to, err := p.end(n)
	if err != nil {
		return "", err
	}
	return p.noted(p.text[:from]+e.To, p.text[to:], e.Note), nil
}

// replacedKey has another value behind a key.
func (p page) replacedKey(k *schemas.Key, e Edit) (string, error) {
	if k.Value.Line > k.Line && !p.inBraces(k.Value) {
		from, to := p.offset(k.Line, k.Column)+len(k.Name), p.blockEnd(k)
		return p.noted(p.text[:from]+": "+e.To, p.text[to:], e.Note), nil
	}
	return p.replaced(k.Value, e)
}

// appended has one more item behind those of a list.
func (p page) appended(list *schemas.Node, e Edit) (string, error) {
	if len(list.Items) == 0 {
		return "", fmt.Errorf("%w: the list is empty", ErrPlace)
	}
	last := list.Items[len(list.Items)-1]
	if p.inBraces(list) {
		at, err := p.end(last)
		if err != nil {
			return "", err
		}
		return p.noted(p.text[:at]+", "+e.To, p.text[at:], e.Note), nil
	}
	dash := list.Column - 1
	at := p.linesBelow(last.Line, dash, false)
	return p.noted(p.text[:at]+p.ending()+strings.Repeat(" ", dash)+"- "+e.To, p.text[at:], e.Note), nil
}

// added has one more key behind those of a map.
func (p page) added(in *schemas.Node, name string, e Edit) (string, error) {
	if len(in.Keys) == 0 {
		return "", fmt.Errorf("%w: the map is empty", ErrPlace)
	}
	last := &in.Keys[len(in.Keys)-1]
	if p.inBraces(in) {
		at, err := p.end(last.Value)
		if err != nil {
			return "", err
		}
		return p.noted(p.text[:at]+", "+name+": "+e.To, p.text[at:], e.Note), nil
	}
	at := p.blockEnd(last)
	return p.noted(p.text[:at]+p.ending()+strings.Repeat(" ", last.Column-1)+name+": "+e.To, p.text[at:], e.Note), nil
}

// removed is without a key of a map that keeps others.
func (p page) removed(in *schemas.Node, at int) (string, error) {
	k := &in.Keys[at]
	if len(in.Keys) < 2 {
		return "", fmt.Errorf("%w: it is the only key of its map", ErrPlace)
	}
	from := p.offset(k.Line, k.Column)
	if !p.inBraces(in) {
		start := p.starts[k.Line-1]
		if strings.Trim(p.text[start:from], " ") != "" {
			return "", fmt.Errorf("%w: it is the first key of an item", ErrPlace)
		}
		return p.text[:start] + p.text[p.nextLine(p.blockEnd(k)):], nil
	}
	if at == 0 {
		next := &in.Keys[1]
		return p.text[:from] + p.text[p.offset(next.Line, next.Column):], nil
	}
	before, err := p.end(in.Keys[at-1].Value)
	if err != nil {
		return "", err
	}
	to, err := p.end(k.Value)
	if err != nil {
		return "", err
	}
	return p.text[:before] + p.text[to:], nil
}
