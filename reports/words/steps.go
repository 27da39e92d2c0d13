package words

import (
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
