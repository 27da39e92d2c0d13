// Package growth knows how it is told what becomes of a route as its batch grows:
// which safeguard is outgrown first, what each batch takes, and how things grow. It
// must not know another page.
package growth

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// Build lays out what becomes of a route as its batch grows: which safeguard
// is outgrown first, what each batch takes, and how things grow.
func Build(g *scaling.Growth, s scaling.Split, o draft.Options) document.Document {
	b := growthBuilder(g, o)
	d := document.Document{Title: words.Of("growth.title", b.Title()), Lang: words.Of("lang"), Paper: o.Paper, Flows: true,
		Control: b.ControlLine()}
	top := document.Section{Key: "page-1", Title: d.Title,
		Blocks: []document.Block{b.Control(), document.Paragraph{Text: words.Of("deference.line")},
			document.Paragraph{Text: words.Of("growth.no_leave"), Tone: document.Warning}}}
	top.Blocks = append(top.Blocks, b.firstLimit(g)...)
	d.Sections = []document.Section{top, b.outgrown(g), b.required(g), b.powers(g), b.split(g, s), b.staysOrFollows(g)}
	if g.Chances != nil {
		d.Sections = append(d.Sections, b.growthChances(g))
	}
	if g.NotKnown() {
		d.Sections = append(d.Sections, b.notKnown(g))
	}
	for i := range d.Sections[1:] {
		d.Sections[i+1].Number = strconv.Itoa(i + 1)
	}
	return d
}

// growthBuilder names figures as a review of the largest batch would.
func growthBuilder(g *scaling.Growth, o draft.Options) *builder {
	r := hazards.Review{Case: g.Case, NotAssessed: hazards.NotAssessed()}
	for i := range g.Rungs {
		r.Figures = append(r.Figures, g.Rungs[i].Figures...)
	}
	return newBuilder(&r, o)
}

// grams is a batch that nobody rounds up.
func grams(v float64) string {
	if v >= 1000*(1-1e-9) {
		return number.With(number.Significant(v/1000, 4, -1), "kg")
	}
	return number.With(number.Significant(v, 4, -1), "g")
}

// firstLimit is what is exceeded at the smallest batch, and which limit that holds there is
// exceeded first of what is known, with what could come before it because nobody knows it.
func (b *builder) firstLimit(g *scaling.Growth) []document.Block {
	var out []document.Block
	warn := func(text string) { out = append(out, document.Paragraph{Text: text, Tone: document.Warning}) }
	already := exceededAtOnce(g)
	written, failing := apart(already)
	switch from := grams(g.From.In("g")); {
	case written != nil && failing != nil:
		warn(words.Of("growth.already", from, b.matters(g, written)) + " " +
			words.Of("growth.already_too", b.matters(g, failing)))
	case written != nil:
		warn(words.Of("growth.already", from, b.matters(g, written)))
	case failing != nil:
		warn(words.Of("growth.already_fails", from, b.matters(g, failing)))
	}
	next, there := nextOutgrown(g)
	text, open := words.Of("growth.none", grams(g.To.In("g"))), g.Withheld
	switch {
	case !there && g.Overflows != nil:
		text = b.overflows(g)
	case !there && already != nil:
		text = words.Of("growth.none_more", grams(g.To.In("g")))
	case there:
		text, open = words.Of("growth.first", b.NameOf(next.Figure), words.Say(next.Limit.Says()), nearAbove(g, &next),
			grams(next.Grams)), g.NotKnownBelow(next.Grams)
	}
	if before := b.matters(g, open); before != "" {
		text += " " + words.Of("growth.before", before)
	}
	warn(text)
	return append(out, b.NotAssessed()...)
}

// exceededAtOnce are the findings that are exceeded at the smallest batch.
func exceededAtOnce(g *scaling.Growth) []figure.FindingID {
	var out []figure.FindingID
	for i := range g.Crossings {
		if c := &g.Crossings[i]; c.Turns == figure.Exceeds && c.Already {
			out = append(out, c.ID())
		}
	}
	return out
}

// apart parts what is done as it is written from what would be if something failed.
func apart(all []figure.FindingID) (written, failing []figure.FindingID) {
	for _, id := range all {
		if id.Figure.Supposed() {
			failing = append(failing, id)
			continue
		}
		written = append(written, id)
	}
	return written, failing
}

// overflows says what runs over first, and that nothing is told beyond.
func (b *builder) overflows(g *scaling.Growth) string {
	if g.Overflows.Already {
		return words.Of("growth.overflows_already", grams(g.From.In("g")), g.Overflows.Figure.Place.String(), len(g.Beyond))
	}
	return words.Of("growth.overflows", grams(g.Overflows.Grams), g.Overflows.Figure.Place.String(), len(g.Beyond))
}

// nearAbove is the batch above which a finding that is exceeded later is near its limit;
// empty where it is at once exceeded.
func nearAbove(g *scaling.Growth, next *scaling.Crossing) string {
	for i := range g.Crossings {
		c := &g.Crossings[i]
		switch {
		case c.ID() != next.ID() || c.Turns != figure.Near || c.Back:
		case c.Already:
			return words.Of("growth.near_at_once")
		case grams(c.Grams) != grams(next.Grams):
			return words.Of("growth.near_above", grams(c.Grams))
		}
	}
	return ""
}

// mostMatters are told by name, the others counted.
const mostMatters = 4

// matters are what findings are of, whatever the step, each once with its limit.
func (b *builder) matters(g *scaling.Growth, ids []figure.FindingID) string {
	limits, seen := labelsOf(g), []string{}
	for _, id := range ids {
		one := number.LabelOf(id.Figure.Quantity) + " (" + limits[id] + ")"
		if !slices.Contains(seen, one) {
			seen = append(seen, one)
		}
	}
	if n := len(seen) - mostMatters; n > 0 {
		seen = append(seen[:mostMatters], words.Of("stock.by_more", n))
	}
	return strings.Join(seen, "; ")
}

func labelsOf(g *scaling.Growth) map[figure.FindingID]string {
	out := map[figure.FindingID]string{}
	for i := range g.Crossings {
		out[g.Crossings[i].ID()] = words.Say(g.Crossings[i].Limit.Says())
	}
	return out
}

// notKnown lists every finding that could set the first limit and is not known.
func (b *builder) notKnown(g *scaling.Growth) document.Section {
	l, limits := document.List{}, labelsOf(g)
	for _, id := range g.Withheld {
		l.Items = append(l.Items, b.NameOf(id.Figure)+" ("+limits[id]+")")
	}
	return document.Section{Key: "growth-unknown", Title: words.Of("growth.unknown"),
		Blocks: []document.Block{document.Paragraph{Text: words.Of("growth.unknown_lead")}, l}}
}

// nextOutgrown is the first limit that is exceeded only above the smallest batch.
func nextOutgrown(g *scaling.Growth) (scaling.Crossing, bool) {
	for _, c := range g.Crossings {
		if c.Turns == figure.Exceeds && !c.Back && !c.Already {
			return c, true
		}
	}
	return scaling.Crossing{}, false
}

// turned is one finding with the batches at which it turns.
type turned struct {
	id            figure.ID
	limit         string
	near, exceeds string
	unknown, back string
	sometimes     bool    // it turns above the smallest batch
	from          float64 // batch at which it exceeds, else is near, else turns
	rank          int     // 0 exceeds, 1 near, 2 else
}

// outgrown is the list of safeguards in the order in which they are outgrown, what
// was so from the start, and a picture.
func (b *builder) outgrown(g *scaling.Growth) document.Section {
	s := document.Begin("outgrown")
	grows, fixed := b.turnedRows(g)
	t := document.Table{Caption: words.Of("growth.caption"),
		Columns: document.Tight(document.Columns("growth.safeguard", "col.limit_basis",
			"growth.near", "growth.exceeds", "growth.other"), 2, 3)}
	t.Rows = grows
	if len(grows) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("growth.nothing_turns")})
	} else {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("growth.lead")}, t)
	}
	if g.Overflows != nil {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: b.overflows(g), Tone: document.Warning})
	}
	s.Blocks = append(s.Blocks, b.growthChart(g)...)
	if len(fixed) > 0 {
		s.Blocks = append(s.Blocks, document.Table{Caption: words.Of("growth.from_start", grams(g.From.In("g"))),
			Columns: document.Columns("growth.safeguard", "col.limit_basis", "col.verdict"), Rows: fixed})
	}
	return s
}

// turnedRows are the findings that turn, by the batch at which they are outgrown,
// and those that are so at the smallest batch and stay so.
func (b *builder) turnedRows(g *scaling.Growth) (grows, fixed [][]document.Cell) {
	var order []*turned
	byID := map[figure.FindingID]*turned{}
	worst := map[figure.FindingID]figure.Verdict{}
	for i := range g.Crossings {
		c := &g.Crossings[i]
		x, there := byID[c.ID()]
		if !there {
			x = &turned{id: c.Figure, rank: 3}
			byID[c.ID()] = x
			order = append(order, x)
		}
		// one that depends on the batch, as it is where it is exceeded
		if x.limit == "" || c.Turns == figure.Exceeds && !c.Back {
			x.limit = b.LimitText(&c.Limit, c.Figure) + draft.BasisText(&c.Limit)
		}
		x.tell(c)
		if c.Already && c.Turns.Rank() >= worst[c.ID()].Rank() {
			worst[c.ID()] = c.Turns
		}
	}
	slices.SortStableFunc(order, func(a, b *turned) int { return cmp.Or(a.rank-b.rank, cmp.Compare(a.from, b.from)) })
	shown := map[figure.ID]bool{}
	for _, x := range order {
		if x.sometimes && !shown[x.id] { // of the limits of one figure, the first to be exceeded
			shown[x.id] = true
			row := document.Row(b.NameOf(x.id), x.limit, words.OrDash(x.near), words.OrDash(x.exceeds),
				words.OrDash(strings.TrimSuffix(x.unknown+x.back, "; ")))
			grows = append(grows, row)
		}
	}
	for i := range g.Crossings {
		c := &g.Crossings[i]
		if x := byID[c.ID()]; c.Already && !x.sometimes && c.Turns == worst[c.ID()] {
			row := []document.Cell{document.Text(b.NameOf(c.Figure)), document.Text(x.limit), draft.VerdictCell(c.Turns)}
			if !draft.Joins(fixed, row) {
				fixed = append(fixed, row)
			}
		}
	}
	return grows, fixed
}

func (x *turned) tell(c *scaling.Crossing) {
	at := grams(c.Grams)
	switch {
	case c.Already:
		at = words.Of("growth.start")
	default:
		x.sometimes = true
	}
	if rank := severity(c); rank < x.rank {
		x.rank, x.from = rank, c.Grams
	}
	switch {
	case c.Back:
		x.back += words.Of("growth.back", draft.VerdictName(c.Turns), at)
	case c.Turns == figure.Near:
		x.near = plain.Join(x.near, at)
	case c.Turns == figure.Exceeds:
		x.exceeds = plain.Join(x.exceeds, at)
	default:
		x.unknown += words.Of("growth.unknown_from", at)
	}
}

// severity ranks what a crossing says: that something exceeds first.
func severity(c *scaling.Crossing) int {
	switch {
	case c.Back || c.Turns == figure.UnknownVerdict:
		return 2
	case c.Turns == figure.Near:
		return 1
	}
	return 0
}

// mostLines is how many safeguards a picture still tells apart.
const mostLines = 6

// growthChart has a line for each of the first safeguards to be outgrown: what it
// takes of its limit, against the batch, with a mark where it is outgrown.
func (b *builder) growthChart(g *scaling.Growth) []document.Block {
	c := chart.Chart{ID: "growth", Title: words.Of("growth.chart"), Alt: words.Of("growth.chart"),
		X:     chart.Axis{Label: words.Of("growth.batch"), Unit: "g", Log: true},
		Y:     chart.Axis{Label: words.Of("growth.share"), Log: true},
		Lines: []chart.Line{{Y: 1, Label: words.Of("growth.limit")}}}
	drawn := map[figure.ID]bool{}
	for i := range g.Crossings {
		x := &g.Crossings[i]
		if x.Already || x.Back || x.Turns != figure.Exceeds || len(c.Curves) == mostLines || drawn[x.Figure] {
			continue
		}
		drawn[x.Figure] = true
		v := chart.Curve{Label: b.NameOf(x.Figure)}
		for k := range g.Rungs {
			if y := g.Share(&g.Rungs[k], x); y > 0 {
				v.X, v.Y = append(v.X, g.Rungs[k].Batch.In("g")), append(v.Y, y)
			}
		}
		if len(v.X) > 1 {
			c.Curves = append(c.Curves, v)
			c.Marks = append(c.Marks, chart.Mark{X: x.Grams, Label: grams(x.Grams)})
		}
	}
	svg, err := c.SVG()
	if err != nil {
		return nil
	}
	return []document.Block{document.Picture{SVG: svg, Text: c.Text(), Caption: c.Title}}
}

// required is what has to be had at every batch, at the dangerous end.
func (b *builder) required(g *scaling.Growth) document.Section {
	s := document.Begin("required")
	t := document.Table{Caption: words.Of("growth.required"),
		Columns: []document.Column{{Text: words.Of("growth.batch"), RowHead: true,
			Right: true}, {Text: words.Of("growth.vessel")}}}
	var names []string
	for _, q := range scaling.Required {
		for i := range g.Rungs {
			if _, ok := g.Rungs[i].Worst(q, ""); ok {
				names = append(names, q)
				t.Columns = append(t.Columns, document.Column{Text: number.LabelOf(q), Right: true})
				break
			}
		}
	}
	t.Columns = append(t.Columns, document.Column{Text: words.Of("growth.threshold"), Right: true})
	for i := range g.Rungs {
		r := &g.Rungs[i]
		row := document.Row(grams(r.Batch.In("g")), words.OrDash(r.Vessel()))
		for _, q := range names {
			f, ok := r.Worst(q, "")
			switch {
			case !ok:
				row = append(row, document.Text(words.Of("value.dash")))
			default:
				row = append(row, document.Text(number.Units{}.Amount(q, "", f.Danger().V, 1)))
			}
		}
		t.Rows = append(t.Rows, append(row, document.Text(thresholdText(r))))
	}
	s.Blocks = []document.Block{document.Paragraph{Text: words.Of("growth.required_lead")}, t}
	return s
}

// thresholdText is the largest share of a quantity threshold at a batch.
func thresholdText(r *scaling.Rung) string {
	s, ok := r.LargestShare()
	switch {
	case !ok:
		return words.Of("value.dash")
	case s.Ratio.Unknown():
		return words.Of("value.unknown")
	}
	return number.Percent(s.Ratio.V, 3, 1) + ": " + s.Threshold.Programme + " (" + s.Threshold.Substance + ")"
}

// powers is how the main quantities grow.
func (b *builder) powers(g *scaling.Growth) document.Section {
	s := document.Begin("powers")
	t := document.Table{Caption: words.Of("growth.powers"),
		Columns: document.Right(document.Columns("col.figure", "growth.fitted", "growth.similar",
			"growth.explained", "growth.why"), 1, 2, 3)}
	for _, e := range g.Exponents() {
		name := number.LabelOf(e.Quantity)
		if e.Quantity == scaling.Removal {
			name = words.Of("growth.removal")
		}
		if e.Case != "" {
			name += ", " + draft.CaseName(figure.By(e.Case))
		}
		t.Rows = append(t.Rows, document.Row(name, number.Nearest(e.Fitted, 3), number.Nearest(e.Similar, 3),
			number.Nearest(100*e.Fit, 3)+" %", e.Note))
	}
	s.Blocks = []document.Block{document.Paragraph{Text: words.Of("growth.powers_lead")}, t}
	return s
}

// mostChanced is how many findings have their chances printed.
const mostChanced = 20

// growthChances is how often each finding that turns exceeds, at every batch.
func (b *builder) growthChances(g *scaling.Growth) document.Section {
	s := document.Begin("chances")
	t := document.Table{Caption: words.Of("growth.chances"), Columns: document.Columns("growth.safeguard")}
	for i := range g.Rungs {
		t.Columns = append(t.Columns, document.Column{Text: grams(g.Rungs[i].Batch.In("g")), Right: true})
	}
	seen := map[figure.ID]bool{}
	for i := range g.Crossings {
		c := &g.Crossings[i]
		if c.Already || c.Back || c.Turns != figure.Exceeds || seen[c.Figure] || len(t.Rows) == mostChanced {
			continue
		}
		seen[c.Figure] = true
		row := document.Row(b.NameOf(c.Figure) + " (" + words.Say(c.Limit.Says()) + ")")
		for k := range g.Rungs {
			x := g.Chances[k][c.ID()]
			row = append(row, document.Text(draft.Percent(x.Exceeds+x.Unknown)))
		}
		t.Rows = append(t.Rows, row)
	}
	s.Blocks = []document.Block{t, document.Paragraph{Text: words.Of("sampling.note"), Tone: document.Note}}
	return s
}

// split is one large batch beside small ones.
func (b *builder) split(g *scaling.Growth, x scaling.Split) document.Section {
	s := document.Begin("split")
	t := document.Table{Caption: words.Of("growth.split", grams(x.Large.Batch.In("g")), strconv.Itoa(x.Pots),
		grams(x.Small.Batch.In("g"))),
		Columns: document.Right(document.Columns("col.figure", "growth.large", "growth.one", "growth.all"), 1, 2, 3)}
	for _, r := range x.Rows {
		name := number.LabelOf(r.Quantity)
		if r.Case != "" {
			name += ", " + draft.CaseName(figure.By(r.Case))
		}
		is := func(v float64) string { return number.Units{}.Amount(r.Quantity, "", v, 1) }
		all := words.Of("growth.not_added")
		if r.Adds {
			all = is(r.All)
		}
		t.Rows = append(t.Rows, document.Row(name, is(r.Large.Danger().V), is(r.One.Danger().V), all))
	}
	steps, attended, alone := g.Handling()
	n := x.Pots
	t.Rows = append(t.Rows,
		document.Row(words.Of("growth.steps"), strconv.Itoa(steps), strconv.Itoa(steps),
			strconv.Itoa(n*steps)),
		document.Row(words.Of("growth.attended"), number.Nearest(attended, 3), number.Nearest(attended, 3),
			number.Nearest(float64(n)*attended, 3)),
		document.Row(words.Of("growth.alone"), number.Nearest(alone, 3), number.Nearest(alone, 3),
			number.Nearest(float64(n)*alone, 3)))
	s.Blocks = []document.Block{document.Paragraph{Text: words.Of("growth.split_lead")}, t}
	return s
}

// staysOrFollows says what stays and what follows.
func (b *builder) staysOrFollows(g *scaling.Growth) document.Section {
	s := document.Begin("assumed")
	l := document.List{Items: []string{words.Of("growth.amounts"), words.Of("growth.fixed")}}
	for _, x := range []struct {
		key string
		on  bool
	}{{"vessel", g.Follow.Vessel}, {"addition", g.Follow.Addition}, {"cooling", g.Follow.Cooling}} {
		if x.on {
			l.Items = append(l.Items, words.Of("growth.follows_"+x.key))
		} else {
			l.Items = append(l.Items, words.Of("growth.stays_"+x.key))
		}
	}
	l.Items = append(l.Items, words.Of("growth.no_failures"), words.Of("growth.corners"))
	s.Blocks = append(s.Blocks, l)
	if g.Follow.Vessel {
		t := document.Table{Caption: words.Of("growth.vessels"),
			Columns: document.Right(document.Columns("growth.size", "growth.material", "growth.wall",
				"col.status"), 0, 2)}
		for _, v := range scaling.Vessels() {
			t.Rows = append(t.Rows, document.Row(number.With(number.Nearest(v.Litres, 4), "L"), v.Material,
				number.With(number.Nearest(v.Wall, 3), "mm"), v.Status))
		}
		s.Blocks = append(s.Blocks, t)
	}
	return s
}
