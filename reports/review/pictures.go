package review

import (
	"etchbound/reports/document"
	"etchbound/reports/words"
)

// firstPrinted keeps every picture on the page and prints the first alone, with how
// many more there are.
func firstPrinted(blocks []document.Block) []document.Block {
	n := 0
	for i := range blocks {
		if p, ok := blocks[i].(document.Picture); ok {
			n++
			p.Screen = n > 1
			blocks[i] = p
		}
	}
	if n < 2 {
		return blocks
	}
	return append(blocks, document.Paragraph{Text: words.Of("pictures.more", n-1), Tone: document.OnPaper})
}
