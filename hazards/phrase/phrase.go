// Package phrase knows what the calculation says: a key and what stands in its
// sentence. It must not know the sentence, nor what the key is about.
//
// The sentences stand in one table at the edge, where reviews are written. So a reader
// costs nothing for words in the many runs that nobody reads, and one place can be
// reworded, or told in another language.
package phrase

import (
	"reflect"

	"etchbound/chemicals/working"
)

// Phrase is one thing that is said, or some one after the other. The zero Phrase says
// nothing.
type Phrase struct {
	Key  string // of a row of the table
	Text string // what is said as it stands, where there is no key
	Args []any  // what stands in the sentence: numbers, names, or phrases of their own
	More []Phrase
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

// IsZero reports whether nothing is said.
func (p Phrase) IsZero() bool { return p.Key == "" && p.Text == "" && len(p.More) == 0 }

// Equal reports whether two phrases say the same of the same.
func (p Phrase) Equal(q Phrase) bool { return reflect.DeepEqual(p, q) }
