// Package scrubbed knows how it is told what the gas of a route needs on its way out. It
// must not know how any of it is worked out.
package scrubbed

import (
	"math"
	"slices"
	"strings"

	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling/ends"
	"etchbound/scaling/scrubbing"
)

// Sections tell of the gas of each place, and of the duct and the stack.
func Sections(all []scrubbing.Train, out scrubbing.Outdoors) []document.Section {
	var s []document.Section
	for i := range all {
		s = append(s, place(&all[i]))
	}
	if len(all) == 0 {
		x := document.Begin("offgas")
		x.Blocks = []document.Block{document.Paragraph{Text: words.Of("offgas.none"), Tone: document.Warning}}
		s = append(s, x)
	}
	return append(s, outdoors(&out))
}

// table is rows of what is asked, at the best estimate and at the dangerous end.
type table struct{ document.Table }

func begin(caption string) *table {
	return &table{document.Table{Caption: caption, Columns: document.Columns("offgas.what", "offgas.best", "offgas.most",
		"offgas.how")}}
}

func amount(v float64, unit string, way int) string {
	switch {
	case math.IsNaN(v):
		return words.Of("value.unknown")
	case math.IsInf(v, 0):
		return words.Of("offgas.no_end")
	}
	return number.Thing{Unit: unit}.Bound(v, way)
}

// two is a row; what has no scatter stands once.
func (t *table) two(key string, x ends.Two, unit string, args ...any) {
	way := 1
	if x.Most < x.Best {
		way = -1
	}
	most := amount(x.Most, unit, way)
	if math.Abs(x.Best-x.Most) <= 1e-9*math.Abs(x.Best) {
		most = ""
	}
	t.Rows = append(t.Rows, document.Row(words.Of("offgas.row."+key), amount(x.Best, unit, 0), most,
		words.Of("offgas.note."+key, args...)))
}

func place(t *scrubbing.Train) document.Section {
	s := document.Begin("offgas")
	s.Key += "-" + t.Place.Key
	s.Title = words.Of("offgas.place", t.Place.Key)
	say := func(key string, tone document.Tone, args ...any) {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of(key, args...), Tone: tone})
	}
	switch t.Place.Closure {
	case route.Closed:
		say("offgas.shut", document.Warning, t.Place.Key)
	case route.Open:
		say("offgas.open", document.Warning, t.Place.Key)
	}
	say("offgas.hydrogen", document.Warning, amount(t.Scrubber.Past.Best, "L", 0), amount(t.Scrubber.Past.Most, "L", 1))
	s.Blocks = append(s.Blocks, comes(t), scrubber(t))
	say("offgas.two_phase."+string(t.Line.TwoPhase()), toneOf(t.Line.TwoPhase()), scrubbing.Together)
	s.Blocks = append(s.Blocks, line(t))
	if l := missing(t); len(l.Items) > 0 {
		say("offgas.missing", document.Warning)
		s.Blocks = append(s.Blocks, l)
	}
	say("offgas.note", document.Note)
	return s
}

func toneOf(x scrubbing.TwoPhase) document.Tone {
	if x == scrubbing.Stays {
		return document.Plain
	}
	return document.Warning
}

// comes is what comes out of a place.
func comes(t *scrubbing.Train) document.Block {
	x := begin(words.Of("offgas.comes"))
	x.two("hydrogen", t.Hydrogen, "L/min")
	x.two("failing", t.Failing, "L/min")
	if more(t.Tenfold, t.Failing) { // where another failure is as bad it adds nothing
		x.two("tenfold", t.Tenfold, "L/min")
	}
	x.two("gas", t.Gas, "L/min")
	for i := range t.Acids {
		a := &t.Acids[i]
		x.two("acid", a.Flow, "mg/min", amount(1e6*a.Share.Best, "ppm", 0), amount(1e6*a.Share.Most, "ppm", 1))
		x.Rows[len(x.Rows)-1][0].Text = draft.AgentName("air.emission", a.Slug)
	}
	return x.Table
}

// scrubber is what takes the acid up.
func scrubber(t *scrubbing.Train) document.Block {
	x := begin(words.Of("offgas.scrubber"))
	r := &t.Scrubber
	x.two("taken", r.Taken, "mol")
	x.two("boiled", r.Boiled, "mol")
	x.two("base", r.Needed, "mol")
	if r.Named != "" {
		x.two("has", ends.Two{Best: r.Has, Most: r.Has}, "mol", r.Named)
	} else {
		x.two("litres", r.Litres, "L")
	}
	x.two("warms", r.Warms, "K")
	if r.Taken.Most > 0 || math.IsNaN(r.Taken.Most) {
		x.two("half", r.Half, "h")
	}
	if r.Column.Units != 0 { // not known, or something that reacts at once
		to := []string{}
		for i := range t.Acids {
			a := &t.Acids[i]
			to = append(to, words.Of("offgas.to", draft.AgentName("air.emission", a.Slug), amount(1e6*a.To, "ppm", 0)))
		}
		x.two("units", ends.Same(r.Column.Units), "1", strings.Join(to, "; "))
		x.two("unit", ends.Same(r.Column.Unit), "m")
	}
	if r.Slow != "" {
		x.two("slow", r.SlowHeight, "m", amount(1e6*r.To, "ppm", 0))
	}
	x.two("height", ends.Two{Best: r.Column.Height, Most: r.Column.Most}, "m")
	wide := 1000 * r.Column.Diameter
	x.two("wide", ends.Two{Best: wide, Most: wide}, "mm", amount(1000*r.Column.Packing.Size, "mm", 0),
		amount(60*r.Column.Liquor, "L/min", 0))
	return x.Table
}

func more(x, y ends.Two) bool { return x.Best > y.Best || x.Most > y.Most }

// line is what the line, the trap, the purge and a condenser have to be.
func line(t *scrubbing.Train) document.Block {
	x := begin(words.Of("offgas.line"))
	stated := words.Of("offgas.no_vent")
	if !math.IsNaN(t.Line.Stated) {
		stated = words.Of("offgas.stated", amount(t.Line.Stated, "mm", 0))
	}
	x.two("bore", t.Line.Bore, "mm", stated)
	x.two("liquor", t.Line.Liquor, "mm")
	x.two("liquor_failing", t.Line.Failing, "mm")
	if more(t.Line.Tenfold, t.Line.Failing) {
		x.two("liquor_tenfold", t.Line.Tenfold, "mm")
	}
	x.two("cools", t.Back.Cools, "mL")
	x.two("dissolves", t.Back.Dissolve, "mL")
	x.two("trap", t.Back.Trap, "mL", amount(t.Back.Whole.Most, "mL", 1))
	x.two("sweep", t.Back.Sweep, "L")
	if c := &t.Condenser; c.Steam.Most > 0 || !c.Steam.Known() {
		x.two("steam", c.Steam, "L/min")
		x.two("duty", c.Duty, "W")
		x.two("area", c.Area, "m2", amount(c.Cold, "degC", 0))
	}
	return x.Table
}

func missing(t *scrubbing.Train) document.List {
	var l document.List
	for _, m := range t.Missing {
		text, settles := words.Named(m)
		if item := words.Of("pace.missing", text, settles); !slices.Contains(l.Items, item) {
			l.Items = append(l.Items, item)
		}
	}
	return l
}

// outdoors is the duct and the stack of the hood.
func outdoors(o *scrubbing.Outdoors) document.Section {
	s := document.Begin("duct")
	x := begin(words.Of("offgas.duct"))
	one := func(key string, v float64, unit string) { x.two(key, ends.Two{Best: v, Most: v}, unit) }
	one("air", o.Air, "m3/h")
	one("duct", o.Bore, "mm")
	one("mouth", o.Mouth, "mm")
	x.two("share", o.Hydrogen, "vol%")
	for i := range o.Plumes {
		p := &o.Plumes[i]
		height := words.Of("offgas.no_stack")
		switch {
		case !p.Now.Known() || math.IsNaN(p.Limit):
			height = words.Of("offgas.stack_unknown")
		case !math.IsNaN(p.Stack):
			height = words.Of("offgas.stack", amount(p.Stack, "m", 0))
		}
		x.two("plume", p.Now, "ppm", amount(p.Limit, "ppm", 0), height)
		x.Rows[len(x.Rows)-1][0].Text = words.Of("offgas.row.plume", draft.AgentName("air.plume", p.Agent))
	}
	s.Blocks = []document.Block{x.Table}
	if l := missing(&scrubbing.Train{Missing: o.Missing}); len(l.Items) > 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("offgas.missing"), Tone: document.Warning}, l)
	}
	return s
}
