package review

import (
	"etchbound/reports/document"
	"etchbound/reports/words"
)

func (b *builder) skin() document.Section {
	s := document.Begin("skin")
	s.Blocks = b.FirstAid()
	if ready := b.Ready(); ready != nil {
		// that nobody is alone is printed wherever the block is; what is ticked, on the card alone
		s.Blocks = append(s.Blocks, ready[0], document.Unprinted{Blocks: ready[1:]},
			document.Paragraph{Text: words.Of("ready.on_card"), Tone: document.OnPaper})
	}
	s.Blocks = append(s.Blocks, b.freeOnSkin()...)
	if b.Tags.Has("hf") {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("skin.sources_hf"), Tone: document.Note})
	}
	if b.Tags.Has("tmaoh") {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("skin.sources_tmaoh"), Tone: document.Note})
	}
	return s
}
