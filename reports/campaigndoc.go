package reports

import (
	"io"

	"etchbound/reports/campaigns"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/selection"
	"etchbound/reports/words"
	"etchbound/scaling/campaign"
)

// BuildCampaign lays out what a route comes to that is made again and again, with a record to
// fill in for each of some batches, as a document of its own.
func BuildCampaign(c *campaign.Campaign, records int, o draft.Options) document.Document {
	b := newBuilder(c.Review, o)
	d := document.Document{Title: words.Of("campaign.title", b.Title()), Lang: words.Of("lang"), Paper: o.Paper,
		Flows: true, Control: b.ControlLine()}
	top := document.Section{Key: "page-1", Title: d.Title, Blocks: []document.Block{b.Control(),
		document.Paragraph{Text: words.Of("deference.line")},
		document.Paragraph{Text: words.Of("campaign.state"), Tone: document.Warning}}}
	top.Blocks = append(top.Blocks, selection.Warned(b.Draft)...)
	d.Sections = append([]document.Section{top}, campaigns.Sections(b.Draft, c, records)...)
	return d
}

// CampaignJSON writes a campaign for programs.
func CampaignJSON(w io.Writer, c *campaign.Campaign, o draft.Options) error {
	return campaigns.JSON(w, c, o)
}
