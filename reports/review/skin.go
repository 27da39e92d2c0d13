package review

import (
	"etchbound/reports/document"
	"etchbound/reports/words"
)

func (b *builder) skin() document.Section {
	s := document.Begin("skin")
	// first aid is printed once and whole, on the card that lies at the bench
	s.Blocks = []document.Block{document.Paragraph{Text: words.Of("skin.on_card"), Tone: document.OnPaper},
		document.Unprinted{Blocks: b.FirstAid()}}
	if ready := b.Ready(); ready != nil {
		// that nobody is alone is printed wherever the block is; what is ticked, on the card alone
		s.Blocks = append(s.Blocks, ready[0], document.Unprinted{Blocks: ready[1:]})
	}
	s.Blocks = append(s.Blocks, b.freeOnSkin()...)
	if b.Tags.Has("hf") {
		s.Blocks = append(s.Blocks, restsOn("skin.sources_hf"))
	}
	if b.Tags.Has("tmaoh") {
		s.Blocks = append(s.Blocks, restsOn("skin.sources_tmaoh"))
	}
	return s
}

// restsOn is what first aid rests on: on the page, as the aid itself is.
func restsOn(key string) document.Block {
	return document.Unprinted{Blocks: []document.Block{document.Paragraph{Text: words.Of(key), Tone: document.Note}}}
}
