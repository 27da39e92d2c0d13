package review

import (
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/classifying"
	"etchbound/hazards/rinsing"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// rinsed tells of each wash the ways to begin it, and decant by decant what the written one
// gives.
func (b *builder) rinsed() []document.Block {
	var out []document.Block
	for i := range b.Review.Rinsed {
		w := &b.Review.Rinsed[i]
		if w.Ceiling {
			out = append(out, document.Paragraph{Tone: document.Warning, Text: words.Of("rinsed.ceiling", w.Step,
				number.Nearest(w.Written, 3), number.Nearest(w.Target, 3)) + reached(&w.Reach)})
		}
		out = append(out, b.rinses(w), document.Paragraph{Text: spins(w)})
		out = append(out, printedDecants(w, decants(w))...)
		out = append(out, document.Paragraph{Text: words.Of("rinsed.note", number.Said(w.Celsius, 3, "degC")),
			Tone: document.Note})
	}
	for i := range b.Review.Walk.Washes {
		step := b.Review.Walk.Washes[i].Step
		if !slices.ContainsFunc(b.Review.Rinsed, func(w rinsing.Wash) bool { return w.Step == step }) {
			out = append(out, document.Paragraph{Tone: document.Warning, Text: words.Of("rinsed.not_known", step)})
		}
	}
	return out
}

// rinses are the ways to wash side by side.
func (b *builder) rinses(w *rinsing.Wash) document.Table {
	t := document.Table{Caption: words.Of("rinsed.ways", w.Step, number.Nearest(w.Target, 3)),
		Columns: document.Columns("rinsed.begins", "rinsed.cycles", "rinsed.liquid", "rinsed.per_gram", "rinsed.gas",
			"rinsed.left", "rinsed.settles")}
	grams := 0.0
	if p := b.Route().Precursor; p != nil && p.Mass.Set {
		grams = p.Mass.In("g")
	}
	for i := range w.Ways {
		x := &w.Ways[i]
		per := words.Of("value.dash")
		if grams > 0 {
			per = number.Said(x.Litres/grams, 2, "L/g")
		}
		t.Rows = append(t.Rows, document.Row(words.Of("rinsed."+string(x.Begins)), cycles(x),
			number.Said(x.Litres, 2, "L"), per, number.Said(x.CarbonDioxide, 2, "L"),
			number.Said(x.Undissolved, 2, "mmol"), number.Said(x.Settled, 2, "g")))
	}
	return t
}

// spins are how often, how long and in what a wash is spun.
func spins(w *rinsing.Wash) string {
	t := &w.Tubes
	out := words.Of("rinsed.spins_unknown", w.Step)
	if t.Spins > 0 {
		out = words.Of("rinsed.spins", w.Step, t.Spins)
	}
	switch {
	case t.Longest == 0:
		out += words.Of("rinsed.most_unknown")
	case t.Longest > t.Spins:
		out += words.Of("rinsed.most", t.Longest)
	}
	if t.Spins > 0 {
		most := float64(max(t.Spins, t.Longest))
		out += words.Of("rinsed.spinning", number.Significant(t.Minutes[0], 2, -1), number.Significant(t.Minutes[1], 2, 1),
			number.Said(float64(t.Spins)*t.Minutes[0]/60, 2, "h"), number.Said(most*t.Minutes[1]/60, 2, "h"))
	}
	switch {
	case t.Count == 0:
		return out + words.Of("rinsed.tubes_unknown")
	case t.Holds != t.Holds:
		return out + words.Of("rinsed.tubes_filled", t.Count, number.Said(t.Filled, 3, "mL"))
	}
	return out + words.Of("rinsed.tubes", t.Count, number.Said(t.Filled, 3, "mL"), number.Said(t.Holds, 3, "mL"))
}

// reached is what brings a target that water in air does not.
func reached(r *rinsing.Reach) string {
	free := words.Of("rinsed.reached_free_not", rinsing.Most)
	if r.Free[0] > 0 {
		free = words.Of("rinsed.reached_free", times(r.Free))
	}
	if r.Bicarbonate != r.Bicarbonate {
		return free + words.Of("rinsed.reached_salt_not")
	}
	return free + words.Of("rinsed.reached_salt",
		number.Said(r.Bicarbonate, 2, "mmol/L"), number.Said(r.Salt, 2, "g"))
}

// times are cycles with nothing between the layers and with the most.
func times(n [2]int) string {
	say := func(n int) string {
		if n == 0 {
			return words.Of("rinsed.not_within", rinsing.Most)
		}
		return number.Nearest(float64(n), 3)
	}
	if n[0] == n[1] {
		return say(n[0])
	}
	return words.Of("treated.between", say(n[0]), say(n[1]))
}

// cycles are those of a way, and with the most between layers; where pH alone is there it says so.
func cycles(x *rinsing.Way) string {
	out := times([2]int{x.Needed, x.Slowly})
	if x.Left > x.Limit {
		return words.Of("rinsed.by_ph", out, number.Significant(x.Left, 2, 1), times([2]int{x.Clean, x.Clean}),
			number.Nearest(x.Limit, 2))
	}
	return out
}

// shown is how many decants of a wash a table has.
const shown = 12

func decants(w *rinsing.Wash) document.Table {
	t := document.Table{Caption: words.Of("rinsed.caption", w.Step), Columns: document.Columns("rinsed.number",
		"rinsed.volume", "rinsed.ph", "rinsed.fluoride", "rinsed.acid_column", "rinsed.aluminium", "rinsed.undissolved",
		"rinsed.class", "rinsed.goes")}
	hf, _ := chemicals.Library().Find("hf")
	for i := range w.Ways[0].Decants {
		d := &w.Ways[0].Decants[i]
		if i > shown {
			break
		}
		goes := "rinsed.other"
		if d.Collected {
			goes = "rinsed.fluoride_waste"
		}
		var codes []string
		c := classifying.Mixture([]classifying.Part{{Sub: hf, Share: d.Strength}})
		for _, f := range c.Classes {
			codes = append(codes, f.Class.Code)
		}
		t.Rows = append(t.Rows, document.Row(number.Nearest(float64(d.Number), 3), number.Said(1000*d.Litres, 2, "mL"),
			acidity(d), fluorideOf(d), small(d.Acid), small(d.Aluminium),
			number.Said(d.Undissolved, 2, "mmol"), words.OrDash(strings.Join(codes, ", ")), words.Of(goes)))
	}
	return t
}

// printedDecants are those that are fluoride waste and the first that is not; what is
// weaker still is folded away.
func printedDecants(w *rinsing.Wash, t document.Table) []document.Block {
	n := len(t.Rows)
	for n > 0 && !w.Ways[0].Decants[n-1].Collected {
		n--
	}
	rest := t
	t.Rows, rest.Rows = t.Rows[:min(n+1, len(t.Rows))], t.Rows[min(n+1, len(t.Rows)):]
	out := []document.Block{t}
	if len(rest.Rows) > 0 {
		out = append(out, document.Fold{Summary: words.Of("rinsed.later", len(rest.Rows)), Blocks: []document.Block{rest}})
	}
	return out
}

// acidity is the pH of a decant, with the most between layers first.
func acidity(d *rinsing.Decant) string {
	if d.PH != d.PH {
		return words.Of("rinsed.beyond")
	}
	a, b := number.Significant(d.SlowPH, 2, -1), number.Nearest(d.PH, 2)
	if d.SlowPH != d.SlowPH || a == b {
		return b
	}
	return words.Of("treated.between", a, b)
}

func twoOf(a, b float64) string {
	a, b = min(a, b), max(a, b)
	x, y := small(a), number.Significant(b, 2, 1)
	if b < least {
		return x
	}
	if number.Nearest(b, 2) == x {
		return x
	}
	return words.Of("treated.between", x, y)
}

// fluorideOf is the fluoride of a decant, with what of it no metal holds.
func fluorideOf(d *rinsing.Decant) string {
	all := twoOf(d.Fluoride, d.SlowFluoride)
	if d.Free != d.Free {
		return all
	}
	return words.Of("rinsed.free", all, small(d.Free))
}

// least is what a table tells of as a number.
const least = 0.001

func small(v float64) string {
	if v < least {
		return words.Of("rinsed.trace")
	}
	return number.Nearest(v, 2)
}
