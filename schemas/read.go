package schemas

import (
	"bytes"
	"fmt"
	"io"
)

// Read reads one file: name is used in messages, schema is one of route, site
// and limits. It gives the root of the file, the bytes as read, and everything
// that is wrong, by position. The node is nil where the file cannot be read as
// a map of keys; where it is not nil but Refused(problems), what is good in it
// can still be checked further. The error is one of reading, or of a schema
// name that does not exist.
func Read(name string, r io.Reader, schema string) (*Node, []byte, []Problem, error) {
	doc, err := document(schema)
	if err != nil {
		return nil, nil, nil, err
	}
	raw, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	if err != nil {
		return nil, nil, nil, fmt.Errorf("%s: %w", name, err)
	}
	root, problems := readText(name, raw, doc)
	return root, raw, Sorted(problems), nil
}

// Places reads where the values of a file stand, and nothing of what they mean: no
// schema is held against them. The node is nil where the file is no map of keys.
func Places(name string, raw []byte) (*Node, []Problem) {
	text := bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf"))
	t := &tree{file: &File{Name: name, lines: splitLines(string(text))}}
	root := t.read(string(text))
	return root, t.problems
}

func readText(name string, raw []byte, doc *schemaDoc) (*Node, []Problem) {
	if len(raw) > mostBytes {
		return nil, []Problem{{File: name, Line: 1, Column: 1, What: "the file is larger than 1 MiB",
			Accepted: "a file of at most 1 MiB"}}
	}
	text := bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf"))
	if list := encoding(name, text); len(list) > 0 {
		return nil, list
	}
	file := &File{Name: name, lines: splitLines(string(text))}
	t := &tree{file: file}
	root := t.read(string(text))
	if root == nil {
		return nil, t.problems
	}
	if p, other := wrongFile(root, doc); other {
		return nil, append(t.problems, p)
	}
	problems := append(t.problems, doc.validate(root)...)
	w := &walker{doc: doc}
	w.visit(root, doc.root)
	return root, append(problems, w.problems...)
}

// wrongFile recognises a file of another kind by its first key.
func wrongFile(root *Node, doc *schemaDoc) (Problem, bool) {
	if root.Has(doc.name) {
		return Problem{}, false
	}
	for _, other := range schemaNames {
		if other != doc.name && root.Has(other) && root.Get(other).Kind == Text {
			return root.KeyProblem(other, "this is a "+other+" file where a "+doc.name+" file is wanted",
				doc.name+": etchbound/1", ""), true
		}
	}
	return Problem{}, false
}
