// Package phrase knows what the calculation says: a key and what stands in its
// sentence. It must not know the sentence, nor what the key is about.
//
// The sentences stand in one table at the edge, where reviews are written. So a reader
// costs nothing for words in the many runs that nobody reads, and one place can be
// reworded, or told in another language.
package phrase

import (
	"reflect"
	"slices"

	"etchbound/chemicals/working"
)

// Phrase is one thing that is said, or some one after the other. The zero Phrase says
// nothing.
type Phrase struct {
	Key  string // of a row of the table
	Text string // what is said as it stands, where there is no key
	Args []any  // what stands in the sentence: numbers, names, steps, or phrases of their own
	More []Phrase
}

// Step is the number of a step of a route where it stands in a sentence.
type Step int

// Steps are the numbers of several steps, rising, of which one sentence says the same.
type Steps []int

// Step is the step that a phrase is of, the first that stands in its sentence; false where
// none does.
func (p Phrase) Step() (Step, bool) {
	at := p.stepAt()
	if at < 0 {
		return 0, false
	}
	return p.Args[at].(Step), true
}

// At is the phrase with several steps where the one stands that it is of.
func (p Phrase) At(steps Steps) Phrase {
	at := p.stepAt()
	if at < 0 {
		return p
	}
	p.Args = slices.Clone(p.Args)
	p.Args[at] = steps
	return p
}

func (p Phrase) stepAt() int {
	return slices.IndexFunc(p.Args, func(a any) bool { _, is := a.(Step); return is })
}

// Of is what a key says of some arguments, in the order of its sentence.
func Of(key string, args ...any) Phrase { return Phrase{Key: key, Args: args} }

// On is Of where a sheet keeps the working, for whoever reads it; else nothing, which
// costs nothing.
func On[A any](w *working.Sheet, key string, args ...A) Phrase {
	if w == nil {
		return Phrase{}
	}
	p := Phrase{Key: key, Args: make([]any, len(args))}
	for i, a := range args {
		p.Args[i] = a
	}
	return p
}

// As is said as it stands: what a person wrote, or a file says of itself.
func As(text string) Phrase { return Phrase{Text: text} }

// AsAll are several that are said as they stand.
func AsAll(texts []string) []Phrase {
	out := make([]Phrase, len(texts))
	for i, t := range texts {
		out[i] = As(t)
	}
	return out
}

// And is the phrase with another behind it.
func (p Phrase) And(more ...Phrase) Phrase {
	p.More = append(p.More[:len(p.More):len(p.More)], more...)
	return p
}

// Names reports whether something stands among what the phrase says.
func (p Phrase) Names(what any) bool {
	among := func(a any) bool {
		inner, is := a.(Phrase)
		return is && inner.Names(what) || reflect.DeepEqual(a, what)
	}
	more := func(q Phrase) bool { return q.Names(what) }
	return slices.ContainsFunc(p.Args, among) || slices.ContainsFunc(p.More, more)
}

// Says reports whether the phrase, or one behind it, is of a key.
func (p Phrase) Says(key string) bool {
	return p.Key == key || slices.ContainsFunc(p.More, func(q Phrase) bool { return q.Says(key) })
}

// IsZero reports whether nothing is said.
func (p Phrase) IsZero() bool { return p.Key == "" && p.Text == "" && len(p.More) == 0 }

// Equal reports whether two phrases say the same of the same.
func (p Phrase) Equal(q Phrase) bool { return reflect.DeepEqual(p, q) }
