package draft

import (
	"etchbound/reports/document"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

func (b *Draft) Control() document.Block {
	return document.Facts{Pairs: []document.Pair{
		{Name: words.Of("control.digest"), Value: b.DigestText()},
		{Name: words.Of("control.date"), Value: plain.Fold(b.Route().Date)},
		{Name: words.Of("control.version"), Value: b.VersionText()},
		{Name: words.Of("control.page"), Value: words.Of("control.page_value")},
		{Name: words.Of("control.state"), Value: words.Of("control.draft")},
	}}
}

func (b *Draft) DigestText() string {
	if d := plain.ShortDigest(b.Route().Digest); d != "" {
		return d
	}
	return words.Of("value.none_given")
}

func (b *Draft) VersionText() string {
	return words.Of("control.version_value", words.OrNone(b.Options.Version), words.OrNone(b.Options.DataVersion))
}
