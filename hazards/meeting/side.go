package meeting

import (
	"fmt"
	"slices"
	"strings"

	"etchbound/chemicals"
)

// Tag is a property that makes a row of a rule apply: a class of a substance, or one of the
// constants of this package.
type Tag string

// Any is the tag of every substance, in rows that only say how two are mixed.
const Any Tag = "any"

// Side is one side of a row: what has to be there, all of it. A row reads it once, and it is
// text again only where it is printed.
type Side struct{ needs []need }

// need is one thing that has to be there: of several names any one.
type need struct {
	of    sort
	names []string
}

// sort is what the names of a need are of, and how a table writes it before a colon.
type sort string

const (
	aTag    sort = ""       // one tag
	element sort = "powder" // elements of the layered powder
	verb    sort = "does"   // what the verb of a step is tagged with
	wall    sort = "wall"   // slugs and classes of the table of materials
)

// ReadSide reads a side as tables write it: tags joined by +, of which powder:, does: and
// wall: stand before names of which any one will do. One that nothing brings is an error, but
// for those that a table has beside them: it would never be there, and nobody would hear of it.
func ReadSide(text string, beside ...Tag) (Side, error) {
	var s Side
	for part := range strings.SplitSeq(text, "+") {
		group, names, grouped := strings.Cut(part, ":")
		if !grouped {
			group, names = "", part
		}
		n := need{sort(group), strings.Split(names, "|")}
		if !slices.Contains([]sort{aTag, element, verb, wall}, n.of) || n.of == aTag && !brought(Tag(part), beside) {
			return s, fmt.Errorf("%q is no tag of what can come into a place", part)
		}
		s.needs = append(s.needs, n)
	}
	return s, nil
}

func brought(tag Tag, beside []Tag) bool {
	return slices.Contains(chemicals.Classes(), string(tag)) || slices.Contains(beside, tag) ||
		slices.Contains([]Tag{powder, loosePowder, other, water, molten, decomposes}, tag)
}

// String is the side as a table writes it.
func (s Side) String() string {
	parts := make([]string, len(s.needs))
	for i, n := range s.needs {
		if parts[i] = strings.Join(n.names, "|"); n.of != aTag {
			parts[i] = string(n.of) + ":" + parts[i]
		}
	}
	return strings.Join(parts, "+")
}

// One is the tag that is all of a side; ok is false where it needs more, or no tag.
func (s Side) One() (tag Tag, ok bool) {
	if len(s.needs) != 1 || s.needs[0].of != aTag {
		return "", false
	}
	return Tag(s.needs[0].names[0]), true
}

// Is reports whether a tag is all of a side.
func (s Side) Is(tag Tag) bool { one, ok := s.One(); return ok && one == tag }

// Same reports whether two sides need the same.
func (s Side) Same(o Side) bool {
	return slices.EqualFunc(s.needs, o.needs, func(a, b need) bool {
		return a.of == b.of && slices.Equal(a.names, b.names)
	})
}

// Tags are the tags of a side. One that also needs an element, a verb or a wall is in no
// liquor by them alone: ok is false.
func (s Side) Tags() (tags []Tag, ok bool) {
	for _, n := range s.needs {
		if n.of != aTag {
			return nil, false
		}
		tags = append(tags, Tag(n.names[0]))
	}
	return tags, true
}

// Done reports whether it is what is done that counts.
func (s Side) Done() bool { return len(s.needs) > 0 && s.needs[0].of == verb }

// Wall is what a side needs a part of the place to be made of; ok is false where it is of a
// substance.
func (s Side) Wall() (kinds []string, ok bool) {
	if len(s.needs) != 1 || s.needs[0].of != wall {
		return nil, false
	}
	return s.needs[0].names, true
}

// Tags are the properties that make a row of a rule apply, each with the first step that
// brought it.
type Tags map[Tag]int

// Add puts in tags that a step brings; what is there stays.
func (t Tags) Add(step int, tags ...Tag) { bring(t, step, tags) }

// Has reports whether a tag is there.
func (t Tags) Has(tag Tag) bool { _, ok := t[tag]; return ok }

// TagsOf are the tags of a substance: its classes.
func TagsOf(s *chemicals.Substance) []Tag { return Listed(s.Classes()) }

// Listed are tags as a cell of a table lists them.
func Listed(names []string) []Tag {
	out := make([]Tag, len(names))
	for i, n := range names {
		out[i] = Tag(n)
	}
	return out
}

func bring[K ~string](into map[K]int, step int, names []K) {
	for _, k := range names {
		if _, there := into[k]; !there {
			into[k] = step
		}
	}
}
