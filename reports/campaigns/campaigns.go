// Package campaigns knows how it is told what a route comes to that is made again and again,
// and how a batch record is laid out to be filled in. It must not know how any of it is worked
// out.
package campaigns

import (
	"math"
	"slices"
	"strings"

	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling/campaign"
	"etchbound/scaling/ends"
)

// Sections tell of a campaign, and print a record for each of some batches.
func Sections(d *draft.Draft, c *campaign.Campaign, records int) []document.Section {
	out := []document.Section{batches(c), flows(c), stock(c), sizes(c)}
	for n := 1; n <= records; n++ {
		out = append(out, sheet(d, c, n))
	}
	return out
}

func amount(v float64, unit string, way int) string {
	switch {
	case math.IsNaN(v):
		return words.Of("value.unknown")
	case math.IsInf(v, 0):
		return words.Of("offgas.no_end")
	case unit == "":
		return number.Significant(v, 3, way)
	}
	return number.Thing{Unit: unit}.Bound(v, way)
}

// both is a number with its dangerous end, where that is another.
func both(x ends.Two, unit string) string {
	best, most := amount(x.Best, unit, 0), amount(x.Most, unit, 1)
	if x.Best == x.Most || best == most {
		return best
	}
	return words.Of("campaign.up_to", best, most)
}

func by(x ends.Two, k float64) ends.Two {
	return ends.Two{Best: x.Best * k, Most: x.Most * k}
}

// batches is how many a week can have, and what bounds them.
func batches(c *campaign.Campaign) document.Section {
	s := document.Begin("campaign")
	say := func(key string, tone document.Tone, args ...any) {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of(key, args...), Tone: tone})
	}
	switch {
	case math.IsNaN(c.AtMost):
		say("campaign.no_bound", document.Warning)
	case c.AtMost < 1:
		say("campaign.less_than_one", document.Warning)
	default:
		say("campaign.at_most", document.Plain, amount(c.AtMost, "", 0))
	}
	if c.PerWeek > 0 && !c.Fits {
		say("campaign.does_not_fit", document.Warning, c.PerWeek)
	}
	if c.Unknown != nil {
		say("campaign.no_times", document.Warning, stepList(c.Unknown))
	}
	t := document.Table{Caption: words.Of("campaign.bounds"),
		Columns: document.Columns("campaign.what", "campaign.a_batch",
			"campaign.a_week")}
	for i := range c.Occupied {
		o := &c.Occupied[i]
		if o.Hours == 0 {
			continue
		}
		hours := amount(o.Hours, "h", 0)
		if o.Unknown {
			hours = words.Of("campaign.at_least", hours)
		}
		n := ""
		if i == c.Busiest {
			n = atMost(c.ByVessel)
		}
		t.Rows = append(t.Rows, document.Row(o.Place, hours, n))
	}
	hours := both(c.People, "h")
	if c.Unknown != nil {
		hours = words.Of("campaign.at_least", hours)
	}
	t.Rows = append(t.Rows, document.Row(words.Of("campaign.people", amount(c.Hours, "h", 0)), hours,
		atMost(c.ByPeople.Best)))
	if c.ByPeople.Most != c.ByPeople.Best {
		t.Rows = append(t.Rows, document.Row(words.Of("campaign.people_all"), amount(c.People.Most, "h", 1),
			atMost(c.ByPeople.Most)))
	}
	s.Blocks = append(s.Blocks, t)
	say("campaign.bounds_note", document.Note)
	return s
}

func atMost(n float64) string {
	if math.IsNaN(n) {
		return words.Of("campaign.not_bound")
	}
	return words.Of("campaign.most", amount(n, "", -1))
}

func stepList(steps []int) string {
	var out []string
	for _, n := range steps {
		out = append(out, amount(float64(n), "", 0))
	}
	return strings.Join(out, ", ")
}

// flows are what a batch, a week and a year take and leave, and what containers that fills.
func flows(c *campaign.Campaign) document.Section {
	s := document.Begin("campaign_flows")
	year := c.Week * c.Weeks
	all := float64(c.Batches)
	t := document.Table{Caption: words.Of("campaign.flows", amount(c.Week, "", 0), amount(year, "", 0), c.Batches),
		Columns: document.Columns("campaign.what", "campaign.a_batch", "campaign.a_week", "campaign.a_year",
			"campaign.in_all")}
	var l document.List
	for i := range c.Flows {
		f := &c.Flows[i]
		name := words.Of("campaign.flow."+f.Key, nameOf(f))
		t.Rows = append(t.Rows, document.Row(name, both(f.Batch, f.Unit), both(by(f.Batch, c.Week), f.Unit),
			both(by(f.Batch, year), f.Unit), both(by(f.Batch, all), f.Unit)))
		for _, m := range f.Missing {
			text, settles := words.Ask(m)
			l = once(l, words.Of("campaign.missing", name, text, settles))
		}
	}
	k := document.Table{Caption: words.Of("campaign.containers"), Columns: document.Columns("campaign.container",
		"campaign.a_batch", "campaign.holds", "campaign.filled_week", "campaign.filled_year", "campaign.filled_all")}
	for i := range c.Filled {
		f := &c.Filled[i]
		k.Rows = append(k.Rows, document.Row(f.Place, both(f.Litres, "L"), amount(f.Holds, "L", 0),
			both(f.Containers(c.Week), ""), both(f.Containers(year), ""), both(f.Containers(all), "")))
		for _, m := range f.Missing {
			text, settles := words.Ask(m)
			l = once(l, words.Of("campaign.missing", f.Place, text, settles))
		}
	}
	s.Blocks = append(s.Blocks, t)
	if len(k.Rows) > 0 {
		s.Blocks = append(s.Blocks, k)
	} else {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("campaign.no_container"), Tone: document.Warning})
	}
	if len(l.Items) > 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("offgas.missing"), Tone: document.Warning}, l)
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("campaign.flows_note"), Tone: document.Note})
	return s
}

func once(l document.List, item string) document.List {
	if !slices.Contains(l.Items, item) {
		l.Items = append(l.Items, item)
	}
	return l
}

// nameOf is the substance or the agent of a flow.
func nameOf(f *campaign.Flow) string {
	switch f.Key {
	case "neutraliser", "dilution", "sludge":
		return draft.AgentName("neutralise.mass", f.Name)
	}
	return f.Name
}

// stock is what has to be kept of each substance against the thresholds.
func stock(c *campaign.Campaign) document.Section {
	s := document.Begin("campaign_stock")
	n := c.Week * c.Kept
	t := document.Table{Caption: words.Of("campaign.stock", amount(c.Kept, "", 0), amount(n, "", 0)),
		Columns: document.Columns("campaign.substance", "campaign.a_batch", "campaign.kept", "campaign.share",
			"campaign.threshold")}
	for i := range c.Needed {
		x := &c.Needed[i]
		limit, share := words.Of("campaign.no_threshold"), ""
		if x.Threshold != nil {
			limit = strings.TrimSpace(x.Threshold.Programme + " " + x.Threshold.Tier)
			if x.Threshold.Limit > 0 {
				limit = words.Of("campaign.of_threshold", limit, amount(x.Threshold.Limit, "kg", 0))
			}
			share = both(by(x.Share, 100), "%")
			if !(x.Share.Most < 1) {
				limit = words.Of("campaign.over", limit)
			}
		}
		batch, held := both(x.Batch, "kg"), both(x.Kept, "kg")
		if x.CAS == "" { // no mass stands behind a sum of shares
			batch, held = words.Of("campaign.of_shares"), words.Of("campaign.of_shares")
		}
		t.Rows = append(t.Rows, document.Row(x.Name, batch, held, share, limit))
	}
	s.Blocks = append(s.Blocks, t, document.Paragraph{Text: words.Of("campaign.stock_note"), Tone: document.Note})
	return s
}

// sizes are the same powder in batches of other sizes.
func sizes(c *campaign.Campaign) document.Section {
	s := document.Begin("campaign_sizes")
	t := document.Table{Caption: words.Of("campaign.sizes", c.Batches), Columns: document.Columns("campaign.batch",
		"campaign.batches", "campaign.hours", "campaign.handlings", "campaign.hf", "campaign.hydrogen", "campaign.breathed",
		"campaign.exceed", "campaign.unknown")}
	for i := range c.Sizes {
		x := &c.Sizes[i]
		hours := both(x.Hours, "h")
		if c.Unknown != nil {
			hours = words.Of("campaign.at_least", hours)
		}
		t.Rows = append(t.Rows, document.Row(draft.Amount(x.Batch), amount(x.Batches, "", 0), hours,
			amount(x.Handlings, "", 0), both(x.HF, "g"), both(x.Hydrogen, "L/min"), both(x.Breathed, ""),
			amount(float64(x.Exceed), "", 0), amount(float64(x.Unknown), "", 0)))
	}
	s.Blocks = append(s.Blocks, t, document.Paragraph{Text: words.Of("campaign.sizes_note"), Tone: document.Note})
	return s
}
