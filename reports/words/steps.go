package words

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards/phrase"
)

// Together are phrases with what is the same of several steps said once of all of them,
// where the first of them stood and where the table has a sentence for several. What is
// the same of the same step is said once.
func Together(all []phrase.Phrase) []phrase.Phrase {
	var out, bare []phrase.Phrase // as they come, and without the step each is of
	var steps []phrase.Steps
	for _, p := range all {
		step, of := p.Step()
		without := p
		if of && sentences()[p.Key].many != "" {
			without = p.At(nil)
		}
		at := slices.IndexFunc(bare, without.Equal)
		if at < 0 {
			out, bare, steps = append(out, p), append(bare, without), append(steps, nil)
			at = len(out) - 1
		}
		if n := int(step); of && !slices.Contains(steps[at], n) {
			steps[at] = append(steps[at], n)
		}
	}
	for i, s := range steps {
		if len(s) > 1 {
			slices.Sort(s)
			out[i] = out[i].At(s)
		}
	}
	return out
}

// Alike are phrases of which those that say the same of different things are one: what differs,
// the first of what stands in them, is listed as the row that ends in .each says it, in the
// sentence of the row that ends in .all.
func Alike(all []phrase.Phrase) []phrase.Phrase {
	var out []phrase.Phrase
	var lists [][]string
	for _, p := range all {
		each, n := eachOf(p)
		at := -1
		if n > 0 {
			at = slices.IndexFunc(out, func(q phrase.Phrase) bool {
				return q.Key == p.Key && reflect.DeepEqual(q.Args[n:], p.Args[n:])
			})
		}
		if at < 0 {
			out, lists = append(out, p), append(lists, nil)
			at = len(out) - 1
		}
		if n > 0 {
			lists[at] = append(lists[at], each)
		}
	}
	for i, list := range lists {
		if len(list) > 1 {
			_, n := eachOf(out[i])
			out[i] = phrase.Of(out[i].Key+allEnds, append([]any{List(list)}, out[i].Args[n:]...)...)
		}
	}
	return out
}

// What the keys of rows end in that list what a sentence says of several things.
const eachEnds, allEnds = ".each", ".all"

// eachOf is what of a phrase stands in a list with others, and how many of its arguments that
// takes; none where it stands in none.
func eachOf(p phrase.Phrase) (text string, args int) {
	s, there := sentences()[p.Key+eachEnds]
	if !there || len(p.More) > 0 {
		return "", 0
	}
	n := strings.Count(s.one, "%")
	return Say(phrase.Of(s.key, p.Args[:n]...)), n
}

// Runs are numbers in their order; three and more that follow each other are one.
func Runs(steps []int) []string {
	var out []string
	for i := 0; i < len(steps); {
		j := i
		for j+1 < len(steps) && steps[j+1] == steps[j]+1 {
			j++
		}
		if j < i+2 {
			j = i
			out = append(out, strconv.Itoa(steps[i]))
		} else {
			out = append(out, Of("list.run", steps[i], steps[j]))
		}
		i = j + 1
	}
	return out
}

// List is some things as people list them, with a word before the last.
func List(s []string) string {
	if len(s) < 2 {
		return strings.Join(s, "")
	}
	return strings.Join(s[:len(s)-1], ", ") + Of("list.and") + s[len(s)-1]
}
