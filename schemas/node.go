package schemas

import (
	"slices"
	"strconv"
	"strings"

	"etchbound/schemas/quantity"
)

// Kind is what a node of a file is.
type Kind uint8

// The kinds of node.
const (
	Text Kind = iota
	Number
	Bool
	List
	Map
)

var kindWords = [...]string{"text", "a number", "true or false", "a list", "a map of keys"}

// String says what the kind is, in words.
func (k Kind) String() string { return kindWords[k] }

// Node is one value of a file with the place where it was written. A nil Node
// stands for a key that was left out; its methods give zero values.
type Node struct {
	Kind         Kind
	Line, Column int    // of the value, from 1; columns in characters
	Path         string // such as steps[2].over
	Text         string // a scalar as written, without quotes
	Quoted       bool
	Number       float64        // of a Number
	Quantity     quantity.Value // of a key that takes one; its At is Path
	Keys         []Key          // of a Map, in the order of the file
	Items        []*Node        // of a List

	bad      bool     // already reported; nothing more is said of it
	partial  bool     // a key of it was refused, so none is missed
	nothing  bool     // no value was written
	notPlain error    // why it is no plain number, though it looks like one
	required bool     // of a key that cannot be left out
	meant    []string // keys that were likely meant by those that are not known
	comment  string
	file     *File
}

// Key is one entry of a map.
type Key struct {
	Name         string
	Line, Column int
	Value        *Node
}

// File is the text a node came from.
type File struct {
	Name  string
	lines []string
}

// line gives a source line by its number, empty outside of the file.
func (f *File) line(n int) string {
	if n < 1 || n > len(f.lines) {
		return ""
	}
	return f.lines[n-1]
}

// Get is the value of a key, nil where it was left out.
func (n *Node) Get(key string) *Node {
	if k := n.key(key); k != nil {
		return k.Value
	}
	return nil
}

// Near is the value of a key, or the map itself where the key is not there or is
// misspelt: the place to which a message about the key points.
func (n *Node) Near(key string) *Node {
	if v := n.Get(key); v != nil {
		return v
	}
	return n
}

func (n *Node) key(name string) *Key {
	if n == nil {
		return nil
	}
	for i := range n.Keys {
		if n.Keys[i].Name == name {
			return &n.Keys[i]
		}
	}
	return nil
}

// At is the node at a path below this one, such as steps[2].over; nil where there is
// none.
func (n *Node) At(path string) *Node {
	for _, part := range strings.Split(path, ".") {
		key, places, _ := strings.Cut(part, "[")
		n = n.Get(key)
		for _, place := range strings.Split(strings.TrimSuffix(places, "]"), "][") {
			i, err := strconv.Atoi(place)
			if err != nil {
				continue
			}
			if n == nil || i < 0 || i >= len(n.Items) {
				return nil
			}
			n = n.Items[i]
		}
	}
	return n
}

// Has reports whether the key was written.
func (n *Node) Has(key string) bool { return n.key(key) != nil }

// Wrote reports whether the key was written, be it misspelt, which is told at
// its place.
func (n *Node) Wrote(key string) bool {
	return n.Has(key) || n != nil && slices.Contains(n.meant, key)
}

// Str is the text of a scalar key as written, empty where it was left out.
func (n *Node) Str(key string) string { return n.Get(key).String() }

// String is the text of a scalar as written.
func (n *Node) String() string {
	if n == nil {
		return ""
	}
	return n.Text
}

// List is the items of a list key.
func (n *Node) List(key string) []*Node {
	if v := n.Get(key); v != nil {
		return v.Items
	}
	return nil
}

// Value is the quantity of a key, not Set where it was left out or is wrong. It knows
// its path even then, so that what lacks it can say where to write it.
func (n *Node) Value(key string) quantity.Value {
	q := quantity.Value{}
	if v := n.Get(key); v != nil {
		q = v.Quantity
	}
	if q.At == "" && n != nil {
		q.At = join(n.Path, key)
	}
	return q
}

// Int is the whole number of a key, or the fallback.
func (n *Node) Int(key string, fallback int) int {
	if v := n.Get(key); v != nil && v.Kind == Number && v.Number == float64(int(v.Number)) {
		return int(v.Number)
	}
	return fallback
}

// Bool is the truth of a key, nil where it was left out.
func (n *Node) Bool(key string) *bool {
	v := n.Get(key)
	if v == nil || v.Kind != Bool {
		return nil
	}
	b := v.Text == "true"
	return &b
}

// Usable reports whether the node is there, of the kind, and not already
// reported as wrong.
func (n *Node) Usable(k Kind) bool { return n != nil && !n.bad && n.Kind == k }

// Required reports whether the node is the value of a key that has to be there.
func (n *Node) Required() bool { return n != nil && n.required }

// Problem is an error at the node.
func (n *Node) Problem(what, accepted, hint string) Problem {
	found := ""
	if n.Kind < List {
		found = n.Text
	}
	return Problem{File: n.file.Name, Line: n.Line, Column: n.Column, Path: n.Path,
		What: what, Found: found, Accepted: accepted, Hint: hint, Text: n.file.line(n.Line)}
}

// KeyProblem is an error at a key of the map, or at the map where the key was
// left out.
func (n *Node) KeyProblem(key, what, accepted, hint string) Problem {
	p := n.Problem(what, accepted, hint)
	p.Found, p.Path = key, join(n.Path, key)
	if k := n.key(key); k != nil {
		p.Line, p.Column = k.Line, k.Column
		p.Text = n.file.line(k.Line)
	}
	return p
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func joinItem(path string, i int) string { return path + "[" + strconv.Itoa(i) + "]" }
