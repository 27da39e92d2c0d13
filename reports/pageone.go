package reports

import (
	"etchbound/reports/document"
	"etchbound/reports/firstpage"
)

func (b *builder) pageOne() document.Section {
	p := firstpage.Read(b.Draft, nil)
	return p.Lay(b.Title(), b.Control(), b.replacedBlocks())
}
