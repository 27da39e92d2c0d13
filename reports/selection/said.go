package selection

import (
	"etchbound/reports/document"
	"etchbound/reports/draft"
)

// Warned is what can kill without warning, for every page that has to say it.
func Warned(d *draft.Draft) []document.Block { return Warnings(newReader(d).banner()) }

// Warnings are texts that must not be overlooked, each a block.
func Warnings(texts []string) []document.Block {
	var out []document.Block
	for _, t := range texts {
		out = append(out, document.Paragraph{Text: t, Tone: document.Warning})
	}
	return out
}

// StopTexts are all hold points of a review as they are printed.
func StopTexts(d *draft.Draft) []string { return Texts(Matters(Stops(d))) }

// Texts are hold points as they are printed.
func Texts(all []Stop) []string {
	var out []string
	for _, x := range all {
		if x.Here == "" {
			out = append(out, x.Says)
			continue
		}
		out = append(out, say("stop.at", x.Says, x.Here))
	}
	return out
}
