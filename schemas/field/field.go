// Package field knows what a key of a file is: what it holds, how it goes with the
// batch, and how two files are laid side by side key by key. It must not know what
// any key means.
//
// The keys of one kind of map stand in a table of type Keys, one entry a key, each
// with the way to the Go value it fills. Whoever goes over what a person wrote goes
// over the table, so that a key that is added to it is scaled, copied, compared and
// printed without another line.
package field

// Kind is what a key holds.
type Kind uint8

// The kinds. The keys of a Map stand in a table of their own, those of Maps in one
// for each of its items.
const (
	Text     Kind = iota // a name or prose
	Choice               // one of the words the schema lists
	Flag                 // true or false
	Count                // a whole number
	Number               // a number without a unit
	Quantity             // a number with its unit
	List                 // texts or quantities
	Map
	Maps
)

var kindWords = [...]string{"text", "choice", "flag", "count", "number", "quantity", "list", "map", "maps"}

// String is the word for the kind.
func (k Kind) String() string { return kindWords[k] }

// Scale is how a key goes with the mass of powder.
type Scale uint8

// The ways. Of a key that grows as a volume, a share and a volume per mass stay.
const (
	Fixed           Scale = iota // as written
	Grows                        // in proportion
	GrowsUnlessKept              // in proportion, but in a map that is kept as written
	GrowsAsVolume                // in proportion where it is a volume
)

var scaleWords = [...]string{"as written", "in proportion", "in proportion, unless kept", "a volume in proportion"}

// String says the way in words.
func (s Scale) String() string { return scaleWords[s] }

// Range says what becomes of the range a quantity is stated with.
type Range uint8

// What becomes of it.
const (
	NoRange Range = iota // only its value counts, and that is noticed
	OfGiven              // the quantity moves within it as a datum of its own
	OfDatum              // it is that of the datum the quantity replaces: see Datum
)

// Field is one key as the file and its reader have it.
type Field struct {
	Path  string // from the top of any such file: places.*.cooling.ice, steps[].over
	Key   string // as written
	Kind  Kind
	Scale Scale
	Range Range
	Datum string // what the id of the datum begins with that the quantity replaces
	// Fact marks what describes material, equipment or measurement: without it the
	// route means the same and less is known.
	Fact bool
	// Alone says why a change of the key is not listed; empty where it is.
	Alone string
}

// Seen is a key as a visitor comes to it.
type Seen struct {
	Field
	At    string // its path in this file: places.etch.cooling.ice, steps[2].over
	Kept  bool   // it stands in a map that does not grow with the batch
	Value Value
}

// Beside is a key of two files. Value is that of the first and Other that of the
// second. For a whole map that only one of them has, Value and Other tell its name.
type Beside struct {
	Field
	Where string // the part of the file, as people say it: "place pot", "step 2 (was 3)"
	Name  string // of the key in that part: "cooling: ice"
	Kept  bool   // both stand in maps that do not grow with the batch
	Value Value
	Other Value
}

// Same reports whether both files state the same.
func (b *Beside) Same() bool { return b.Value.Same(b.Other) }

// Keys are the keys of one kind of map, which fill a T.
type Keys[T any] []Key[T]

// Key is one entry of a table.
type Key[T any] struct {
	Field
	value func(*T) Value
	below below[T] // of a key that holds maps
}

// below is the table behind a key.
type below[T any] interface {
	list(w way) []Field
	visit(t *T, w way, visit func(Seen))
	beside(a, b *T, w way, visit func(Beside))
	own(t *T)
	there(t *T) Value // the map itself, to be taken out; nil where it always is there
}

// way is how one came to a map. Where no part of the file is entered yet, the next
// key that holds maps is one.
type way struct {
	path, at, name string
	file, where    string
	kept           bool
}

// part is where a key stands, as people say it.
func (w way) part() string {
	if w.where == "" {
		return w.file
	}
	return w.where
}

// enter goes into a map under a key.
func (w way) enter(key string) way {
	if w.where == "" {
		w.where = key
		return w
	}
	return w.named(key)
}

func (w way) key(k string) way {
	w.path, w.at = join(w.path, k), join(w.at, k)
	return w
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// named adds a word to the name by which a key is told.
func (w way) named(word string) way {
	if word != "" {
		w.name += word + ": "
	}
	return w
}

// File begins a visit at the top of a file of a name. Its maps are its parts.
func (k Keys[T]) File(name string) Mounted[T] { return Mounted[T]{k, way{file: name}} }

// Whole begins a visit at the top of a file of a name, which is one part.
func (k Keys[T]) Whole(name string) Mounted[T] { return Mounted[T]{k, way{where: name}} }

// Mounted are the keys of a map at its place in a file.
type Mounted[T any] struct {
	keys Keys[T]
	way  way
}

// List gives every key, those of maps after the key that holds them.
func (m Mounted[T]) List() []Field { return m.keys.list(m.way) }

// Visit shows every key that t has a place for, in the order of the table.
func (m Mounted[T]) Visit(t *T, visit func(Seen)) { m.keys.visit(t, m.way, visit) }

// Beside shows every key of a and b side by side. A nil stands for a map that is
// not there, of which nothing is stated.
func (m Mounted[T]) Beside(a, b *T, visit func(Beside)) { m.keys.beside(a, b, m.way, visit) }

// Own gives t memory of its own, so that it shares no list and no pointer of the
// table with what it was copied from.
func (k Keys[T]) Own(t *T) {
	for i := range k {
		if k[i].value != nil {
			k[i].value(t).Own()
		}
		if k[i].below != nil {
			k[i].below.own(t)
		}
	}
}

func (k Keys[T]) list(w way) []Field {
	var out []Field
	for i := range k {
		f := k[i].Field
		in := w.key(f.Key)
		f.Path = in.path
		out = append(out, f)
		if k[i].below != nil {
			out = append(out, k[i].below.list(in)...)
		}
	}
	return out
}

func (k Keys[T]) visit(t *T, w way, visit func(Seen)) {
	for i := range k {
		in := w.key(k[i].Key)
		if v := k[i].at(t); v != nil {
			s := Seen{k[i].Field, in.at, in.kept, v}
			s.Path = in.path
			visit(s)
		}
		if k[i].below != nil {
			k[i].below.visit(t, in, visit)
		}
	}
}

// at is the value of the key in t, or the map it holds; nil for one that always is there.
func (k *Key[T]) at(t *T) Value {
	if k.value != nil {
		return k.value(t)
	}
	return k.below.there(t)
}

func (k Keys[T]) beside(a, b *T, w way, visit func(Beside)) {
	if a == nil {
		a = new(T)
	}
	if b == nil {
		b = new(T)
	}
	for i := range k {
		in := w.key(k[i].Key)
		if k[i].value != nil {
			s := Beside{k[i].Field, w.part(), w.name + k[i].Key, in.kept, k[i].value(a), k[i].value(b)}
			s.Path = in.path
			visit(s)
		}
		if k[i].below != nil {
			k[i].below.beside(a, b, in, visit)
		}
	}
}
