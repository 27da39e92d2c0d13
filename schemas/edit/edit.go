// Package edit knows how one value of a file that a person wrote is changed where it
// stands: every byte outside of the lines that are changed, comments and layout among
// them, stays. It must not know what a file is about, nor whether a change makes sense:
// what it gives is read by the loader like any other file.
package edit

import (
	"errors"
	"fmt"
	"maps"
	"strings"

	"etchbound/schemas"
)

// Edit is one value of a file as it shall be.
type Edit struct {
	// Path is where the value stands, such as steps[1].over. A key that is not there yet is
	// added behind those of its map, and an item one beyond the end of a list behind the
	// others; the map or the list has to be there.
	Path string
	To   string // as it is written, such as 30 min; empty where the key is taken out
	Note string // a comment for the end of its line; none where it is empty

	Before bool   // a new item, before the one of a list at Path
	With   string // an item of the same list that the one at Path changes places with
}

// ErrPlace is the error of a place that cannot be edited: it is not there, or its
// text is laid out in a way that is not changed here.
var ErrPlace = errors.New("this place of the file cannot be edited")

// Apply makes some edits of a file, one after the other. What it gives reads as the file
// did but for the places edited, or there is an error, which wraps ErrPlace where the
// place is at fault.
func Apply(raw []byte, edits ...Edit) ([]byte, error) {
	text, mark := strings.CutPrefix(string(raw), "\ufeff")
	var root *schemas.Node // what the text reads as
	var err error
	for _, e := range edits {
		if root == nil {
			if root, err = read(text); err != nil {
				return nil, err
			}
		}
		changed, err := one(newPage(text), root, e)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", e.Path, err)
		}
		if root, err = onlyThere(root, changed, e); err != nil {
			return nil, err
		}
		text = changed
	}
	if mark {
		text = "\ufeff" + text
	}
	return []byte(text), nil
}

// Quoted is a text as it is written where it may hold signs that mean something.
func Quoted(text string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(text) + `"`
}

// Head puts lines of comment before a file.
func Head(raw []byte, lines ...string) []byte {
	text, mark := strings.CutPrefix(string(raw), "\ufeff")
	end := newPage(text).ending()
	var b strings.Builder
	if mark {
		b.WriteString("\ufeff")
	}
	for _, l := range lines {
		b.WriteString(strings.TrimRight("# "+l, " ") + end)
	}
	b.WriteString(text)
	return []byte(b.String())
}

func read(text string) (*schemas.Node, error) {
	root, problems := schemas.Places("the file", []byte(text))
	if root == nil || schemas.Refused(problems) {
		return nil, fmt.Errorf("%w: it is not read: %v", ErrPlace, problems)
	}
	return root, nil
}

// onlyThere is what a text reads as, and an error where that differs from what it was anywhere
// but where an edit is and below it.
func onlyThere(was *schemas.Node, text string, e Edit) (*schemas.Node, error) {
	path := e.Path
	is, err := read(text)
	if err != nil {
		return nil, err
	}
	a, b := map[string]string{}, map[string]string{}
	switch {
	case e.With != "":
		values(was, none, a)
		b = traded(is, e)
	case e.Before:
		values(was, none, a)
		b = moved(is, path)
	default:
		values(was, path, a)
		values(is, path, b)
	}
	if !maps.Equal(a, b) {
		return nil, fmt.Errorf("%w: %s cannot be changed alone", ErrPlace, path)
	}
	return is, nil
}

// none is the path of nothing.
const none = "\x00"

// values are the scalars of a tree by their paths, without those at one and below it.
func values(n *schemas.Node, without string, into map[string]string) {
	if below(n.Path, without) {
		return
	}
	if n.Kind != schemas.Map && n.Kind != schemas.List {
		into[n.Path] = fmt.Sprintf("%d %t %s", n.Kind, n.Quoted, n.Text)
	}
	for i := range n.Keys {
		values(n.Keys[i].Value, without, into)
	}
	for _, x := range n.Items {
		values(x, without, into)
	}
}
