package draft

import (
	"etchbound/reports/document"
	"etchbound/reports/number"
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

// HfPresent is the sentence that names HF, and whether there is any.
func (b *Draft) HfPresent() (string, bool) {
	f, ok := b.Bare("fluoride.hf_equivalent")
	if !ok {
		return "", false
	}
	where := f.Place
	if m, ok := b.ByID[f.Of()]; ok {
		f, where = m, m.Place
	}
	at := func(quantity string) string {
		g, ok := b.At(quantity, where)
		if !ok {
			g, ok = b.Bare(quantity)
		}
		if !ok || g.Value.Unknown() {
			return words.Of("hf.unknown", number.UnitOf(quantity))
		}
		return b.valueText(g)
	}
	s := words.Of("hf.present", b.valueText(f), at("fluoride.hf_concentration"), at("fluoride.hf_strength"))
	if !where.IsZero() {
		s = words.Of("hf.present_where", s, b.PlaceName(where))
	}
	return s, true
}
