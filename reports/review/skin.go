package review

import (
	"etchbound/reports/document"
	"etchbound/reports/words"
)

func (b *builder) skin() document.Section {
	s := document.Begin("skin")
	s.Blocks = append(b.FirstAid(), b.Ready()...)
	if b.Tags.Has("hf") {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("skin.sources_hf"), Tone: document.Note})
	}
	if b.Tags.Has("tmaoh") {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("skin.sources_tmaoh"), Tone: document.Note})
	}
	return s
}
