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
func (p *part[T, E]) there(*T) Value                      { return nil }
func (p *part[T, E]) beside(a, b *T, w way, v func(Beside)) {
	p.keys.beside(p.of(a), p.of(b), w.enter(p.key), v)
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
		p.keys.beside(x, y, w.enter(p.key), visit)
	}
}

func (p *pointer[T, E]) there(t *T) Value {
	at := p.of(t)
	return Told{Tell: func() string { return given(*at != nil) }, Forget: func() { *at = nil }}
}

// given is the word for a map that is there.
func given(there bool) string {
	if there {
		return "given"
	}
	return ""
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

// Each is a list of maps. Items of two lists are the same item where name gives the
// same for both, in their order; it gets the place in the list, from 0.
func Each[T, E any](key string, keys Keys[E], name func(int, *E) string, of func(*T) *[]E) Key[T] {
	return Items(key, keys, ListOf[E]{Name: name}, of)
}

// Items is a list of maps, or a map of them, that is laid beside another as l says.
func Items[T, E any](key string, keys Keys[E], l ListOf[E], of func(*T) *[]E) Key[T] {
	return Key[T]{Field: Field{Key: key, Kind: Maps}, below: &items[T, E]{key, keys, l, of}}
}

// ListOf says what the items of a list of maps are.
type ListOf[E any] struct {
	Name  func(int, *E) string         // of an item, from its place in the list, from 0
	Under bool                         // the name is the key in the file
	Kept  func(*E) bool                // what is in it does not grow with the batch
	Pairs func(a, b []E) [][2]int      // the same items of two lists, -1 where there is none; nil: by their names
	Add   func([]E) []E                // what is the same but written in parts, as one
	Part  func(a, b *E) (where string) // of items that are parts of the file; one of them may be nil
	One   string                       // the word for such an item
	Told  bool                         // the key has a value that tells which items there are
	Order bool                         // another order of the same items is another list
	Tell  func(*E) string              // such an item in words
}

type items[T, E any] struct {
	key  string
	keys Keys[E]
	ListOf[E]
	of func(*T) *[]E
}

func (x *items[T, E]) list(w way) []Field {
	if x.Under {
		return x.keys.list(w.key("*"))
	}
	w.path += "[]"
	return x.keys.list(w)
}

// item is the way to one item.
func (x *items[T, E]) item(w way, i int, e *E) way {
	if x.Under {
		w.path, w.at = join(w.path, "*"), join(w.at, x.Name(i, e))
	} else {
		w.path, w.at = w.path+"[]", w.at+"["+strconv.Itoa(i)+"]"
	}
	w.kept = w.kept || x.Kept != nil && x.Kept(e)
	return w
}

func (x *items[T, E]) visit(t *T, w way, visit func(Seen)) {
	list := *x.of(t)
	for i := range list {
		x.keys.visit(&list[i], x.item(w, i, &list[i]), visit)
	}
}

func (x *items[T, E]) own(t *T) {
	list := x.of(t)
	*list = slices.Clone(*list)
	for i := range *list {
		x.keys.Own(&(*list)[i])
	}
}

func (x *items[T, E]) there(t *T) Value {
	at := x.of(t)
	return Told{Tell: func() string { return given(len(*at) > 0) }, Forget: func() { *at = nil }}
}

func (x *items[T, E]) beside(a, b *T, w way, visit func(Beside)) {
	one, other := *x.of(a), *x.of(b)
	if x.Add != nil {
		one, other = x.Add(one), x.Add(other)
	}
	if x.Part == nil && w.where == "" {
		w.where = x.key
	}
	if x.Part == nil && !x.Told && (len(one) == 0) != (len(other) == 0) {
		whole := x.whole(w)
		whole.Value, whole.Other = x.names(one), x.names(other)
		visit(whole)
		return
	}
	pairs := x.Pairs
	if pairs == nil {
		pairs = x.byName
	}
	last, turned := -1, false
	for _, p := range pairs(one, other) {
		x.pair(item(one, p[0]), item(other, p[1]), p, w, visit)
		if p[0] >= 0 && p[1] >= 0 {
			turned, last = turned || p[1] < last, p[1]
		}
	}
	if x.Order && turned {
		whole := x.whole(w)
		whole.Value, whole.Other = x.names(one), x.names(other)
		visit(whole)
	}
}

// item of a list, nil for a place before it.
func item[E any](list []E, i int) *E {
	if i < 0 {
		return nil
	}
	return &list[i]
}

// pair shows two items side by side, or the one that is there as a whole.
func (x *items[T, E]) pair(e, f *E, at [2]int, w way, visit func(Beside)) {
	if x.Part != nil {
		w.where = x.Part(e, f)
	}
	whole := x.whole(w)
	switch {
	case x.Told && (e == nil || f == nil):
	case f == nil:
		whole.Value = Word(x.tell(at[0], e))
		visit(whole)
	case e == nil:
		whole.Other = Word(x.tell(at[1], f))
		visit(whole)
	default:
		kept := x.Kept == nil || x.Kept(e)
		w = x.item(w, at[1], f)
		if w.kept = w.kept && kept; x.Part == nil {
			w = w.named(x.Name(at[0], e))
		}
		x.keys.beside(e, f, w, visit)
	}
}

// whole is the list itself, or one of its items where they are parts of the file.
func (x *items[T, E]) whole(w way) Beside {
	out := Beside{Field{Path: w.path, Key: x.key, Kind: Maps}, w.part(), w.name + x.key, w.kept, Word(""), Word("")}
	if x.Part != nil {
		out.Name = x.One
	}
	return out
}

func (x *items[T, E]) tell(i int, e *E) string {
	if x.Tell != nil {
		return x.Tell(e)
	}
	return x.Name(i, e)
}

// byName are the places of the same items in both lists.
func (x *items[T, E]) byName(a, b []E) [][2]int {
	var out [][2]int
	left := map[string][]int{}
	for j := range b {
		name := x.Name(j, &b[j])
		left[name] = append(left[name], j)
	}
	used := make([]bool, len(b))
	for i := range a {
		name, at := x.Name(i, &a[i]), -1
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
		out = append(out, x.Name(i, &list[i]))
	}
	return Word(strings.Join(out, ", "))
}
