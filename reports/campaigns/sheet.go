package campaigns

import (
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/words"
	"etchbound/scaling/campaign"
)

// sheet is the record of one batch: what is to be done, and blanks for what is read. Nothing
// of it is filled in beforehand but what the route says.
func sheet(d *draft.Draft, c *campaign.Campaign, n int) document.Section {
	s := document.Begin("campaign_record")
	s.Key += "-" + amount(float64(n), "", 0)
	s.Title, s.Page = words.Of("campaign.record", n, c.Batches), true
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("campaign.record_lead", d.BatchText()),
		Tone: document.Warning},
		document.Facts{Pairs: blanks("record.number", "record.lot", "record.date", "record.hood", "record.decision")})
	t := document.Table{Caption: words.Of("campaign.record_steps"), Columns: document.Columns("record.step", "record.do",
		"record.put_in", "record.weighed", "record.set", "record.read", "record.from_to", "record.seen", "record.by")}
	blank := document.Cell{Blank: true}
	for i := range c.Steps {
		x := c.Steps[i].Of
		put, set := d.StepMaterials(x), draft.StepTime(x)
		if x.Temperature.Set {
			set = joined(draft.Amount(x.Temperature), set)
		}
		if x.NotAbove.Set {
			set = joined(set, words.Of("record.not_above", draft.Amount(x.NotAbove)))
		}
		weighed := blank
		if put == "" {
			weighed = document.Text(words.Of("record.nothing"))
		}
		t.Rows = append(t.Rows, []document.Cell{document.Text(amount(float64(x.Number), "", 0)),
			document.Text(draft.StepText(x) + ", " + draft.StepWhere(x)), document.Text(put), weighed, document.Text(set), blank,
			blank, blank, blank})
	}
	s.Blocks = append(s.Blocks, t, document.Facts{Pairs: blanks("record.product", "record.ph", "record.waste",
		"record.deviations", "record.cleaned", "record.signed")})
	return s
}

func joined(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

func blanks(keys ...string) []document.Pair {
	var out []document.Pair
	for _, k := range keys {
		out = append(out, document.Pair{Name: words.Of(k)})
	}
	return out
}
