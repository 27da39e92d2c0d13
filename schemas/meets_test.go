package schemas

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"etchbound/schemas/long"
)

// spoils are ways to write a node otherwise; most of them are wrong at most places.
var spoils = []func(n *Node){
	func(n *Node) { *n = Node{Kind: Text, Text: "no word of any list 7 @"} },
	func(n *Node) { *n = Node{Kind: Text} },
	func(n *Node) { *n = Node{Kind: Number, Number: -1.5} },
	func(n *Node) { *n = Node{Kind: Number, Number: 1e9} },
	func(n *Node) { *n = Node{Kind: Number, Number: 0} },
	func(n *Node) { *n = Node{Kind: Bool, Text: "true"} },
	func(n *Node) { *n = Node{Kind: List} },
	func(n *Node) { *n = Node{Kind: Map} },
	func(n *Node) {
		n.Keys = append(slices.Clone(n.Keys), Key{Name: "Zz", Value: &Node{Kind: Bool, Text: "true"}})
	},
	func(n *Node) { n.Keys = n.Keys[min(len(n.Keys), 1):] },
	func(n *Node) { n.Keys = n.Keys[:max(len(n.Keys), 1)-1] },
	func(n *Node) { n.Items = append(slices.Clone(n.Items), n.Items...) },
	func(n *Node) { n.Items = append(slices.Clone(n.Items), &Node{Kind: List}) },
	func(n *Node) { n.Items = n.Items[min(len(n.Items), 1):] },
}

// below are a node and all below it.
func below(n *Node) []*Node {
	out := []*Node{n}
	for i := range n.Keys {
		out = append(out, below(n.Keys[i].Value)...)
	}
	for _, x := range n.Items {
		out = append(out, below(x)...)
	}
	return out
}

// The quick check takes the examples, and says of them with one node written otherwise
// what the library says. The usual form spoils each node of the first of a schema once.
func TestTheQuickCheckSaysWhatTheLibrarySays(t *testing.T) {
	seen := map[string]bool{}
	for _, name := range exampleFiles(t) {
		schema, _, _ := strings.Cut(filepath.Base(name), "-")
		if schema != "site" && schema != "limits" {
			schema = "route"
		}
		d, err := document(schema)
		if err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		root, _ := Places(name, text)
		lib, err := d.compiled()
		if err != nil {
			t.Fatal(err)
		}
		if !d.meets()(root) || lib.Validate(plain(root)) != nil {
			t.Errorf("%s is refused", name)
		}
		if seen[schema] && !long.Form() {
			continue
		}
		seen[schema] = true
		for i, n := range below(root) {
			for k := range spoils {
				if k != i%len(spoils) && (!long.Form() || k != (i+5)%len(spoils)) {
					continue
				}
				was := *n
				spoils[k](n)
				if n.Kind != Map && len(n.Keys) > 0 || n.Kind != List && len(n.Items) > 0 {
					*n = was // no file gives that
				}
				if quick, whole := d.meets()(root), lib.Validate(plain(root)) == nil; quick != whole {
					t.Errorf("%s, %s, spoilt %d: quick %v, library %v", name, was.Path, k, quick, whole)
				}
				*n = was
			}
		}
	}
}

func exampleFiles(t *testing.T) []string {
	out, err := filepath.Glob("../testdata/routes/*.yaml")
	if err != nil || len(out) == 0 {
		t.Fatal(fmt.Errorf("no routes: %w", err))
	}
	return out
}
