package field

import (
	"slices"
	"strconv"
	"strings"
)

// Part is a map that fills a part of T, or T itself.
func Part[T, E any](key string, keys Keys[E], of func(*T) *E) Key[T] {
	return Key[T]{Field: Field{Key: key, Kind: Map}, below: &part[T, E]{key, keys, of}}
}

type part[T, E any] struct {
	key  string
	keys Keys[E]
	of   func(*T) *E
}

func (p *part[T, E]) list(w way) []Field                  { return p.keys.list(w) }
func (p *part[T, E]) visit(t *T, w way, visit func(Seen)) { p.keys.visit(p.of(t), w, visit) }
func (p *part[T, E]) own(t *T)                            { p.keys.Own(p.of(t)) }
func (p *part[T, E]) beside(a, b *T, w way, v func(Beside)) {
	p.keys.beside(p.of(a), p.of(b), w.named(p.key), v)
}

// Pointer is a map that may be left out as a whole.
func Pointer[T, E any](key string, keys Keys[E], of func(*T) **E) Key[T] {
	return Key[T]{Field: Field{Key: key, Kind: Map}, below: &pointer[T, E]{key, keys, of}}
}

type pointer[T, E any] struct {
	key  string
	keys Keys[E]
	of   func(*T) **E
}

func (p *pointer[T, E]) list(w way) []Field { return p.keys.list(w) }

func (p *pointer[T, E]) visit(t *T, w way, visit func(Seen)) {
	if e := *p.of(t); e != nil {
		p.keys.visit(e, w, visit)
	}
}

func (p *pointer[T, E]) beside(a, b *T, w way, visit func(Beside)) {
	if x, y := *p.of(a), *p.of(b); x != nil || y != nil {
		p.keys.beside(x, y, w.named(p.key), visit)
	}
}

func (p *pointer[T, E]) own(t *T) {
	at := p.of(t)
	if *at == nil {
		return
	}
	e := **at
	*at = &e
	p.keys.Own(&e)
}

// Each is a list of maps. Items of two lists are the same item where name gives
// the same for both, in their order; it gets the place in the list, from 0.
func Each[T, E any](key string, keys Keys[E], name func(int, *E) string, of func(*T) *[]E) Key[T] {
	return Key[T]{Field: Field{Key: key, Kind: Maps}, below: &items[T, E]{key: key, keys: keys, of: of, name: name}}
}

// Under is a map of maps, each under a name of the writer; where kept holds, what
// is in it does not grow with the batch.
func Under[T, E any](key string, keys Keys[E], name func(int, *E) string, kept func(*E) bool, of func(*T) *[]E) Key[T] {
	return Key[T]{Field: Field{Key: key, Kind: Maps}, below: &items[T, E]{key, keys, of, name, kept, true}}
}

type items[T, E any] struct {
	key   string
	keys  Keys[E]
	of    func(*T) *[]E
	name  func(int, *E) string
	kept  func(*E) bool
	under bool // the name is the key in the file
}

func (x *items[T, E]) list(w way) []Field {
	if x.under {
		return x.keys.list(w.key("*"))
	}
	w.path += "[]"
	return x.keys.list(w)
}

// item is the way to one item; e and f are the same item of two files.
func (x *items[T, E]) item(w way, i int, e, f *E) way {
	name := x.name(i, e)
	in := way{w.path + "[]", w.at + "[" + strconv.Itoa(i) + "]", w.name, w.kept}
	if x.under {
		in.path, in.at = join(w.path, "*"), join(w.at, name)
	}
	in.kept = in.kept || x.kept != nil && x.kept(e) && x.kept(f)
	return in.named(name)
}

func (x *items[T, E]) visit(t *T, w way, visit func(Seen)) {
	list := *x.of(t)
	for i := range list {
		x.keys.visit(&list[i], x.item(w, i, &list[i], &list[i]), visit)
	}
}

func (x *items[T, E]) own(t *T) {
	list := x.of(t)
	*list = slices.Clone(*list)
	for i := range *list {
		x.keys.Own(&(*list)[i])
	}
}

func (x *items[T, E]) beside(a, b *T, w way, visit func(Beside)) {
	one, other := *x.of(a), *x.of(b)
	whole := Beside{Field{Path: w.path, Key: x.key, Kind: Maps}, w.name + x.key, w.kept, Word(""), Word("")}
	if (len(one) == 0) != (len(other) == 0) {
		whole.Value, whole.Other = x.names(one), x.names(other)
		visit(whole)
		return
	}
	for _, p := range x.pairs(one, other) {
		switch {
		case p[1] < 0:
			whole.Value, whole.Other = Word(x.name(p[0], &one[p[0]])), Word("")
			visit(whole)
		case p[0] < 0:
			whole.Value, whole.Other = Word(""), Word(x.name(p[1], &other[p[1]]))
			visit(whole)
		default:
			e, f := &one[p[0]], &other[p[1]]
			x.keys.beside(e, f, x.item(w, p[1], f, e), visit)
		}
	}
}

// pairs are the places of the same items in both lists, -1 where there is none.
func (x *items[T, E]) pairs(a, b []E) [][2]int {
	var out [][2]int
	left := map[string][]int{}
	for j := range b {
		name := x.name(j, &b[j])
		left[name] = append(left[name], j)
	}
	used := make([]bool, len(b))
	for i := range a {
		name, at := x.name(i, &a[i]), -1
		if js := left[name]; len(js) > 0 {
			at, left[name] = js[0], js[1:]
			used[at] = true
		}
		out = append(out, [2]int{i, at})
	}
	for j := range b {
		if !used[j] {
			out = append(out, [2]int{-1, j})
		}
	}
	return out
}

// mostNames is how many items of a list that only one file has are named.
const mostNames = 8

func (x *items[T, E]) names(list []E) Word {
	var out []string
	for i := range list {
		if i == mostNames {
			out = append(out, "and "+strconv.Itoa(len(list)-i)+" more")
			break
		}
		out = append(out, x.name(i, &list[i]))
	}
	return Word(strings.Join(out, ", "))
}
