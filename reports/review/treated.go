package review

import (
	"strings"

	"etchbound/hazards/treating"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// treated sets the agents side by side for each liquor: what is usual stands on paper, the
// rest is folded.
func (b *builder) treated() []document.Block {
	var out []document.Block
	for i := range b.Review.Treated {
		l := &b.Review.Treated[i]
		if l.Written != nil {
			out = append(out, document.Paragraph{Text: held(l), Tone: toneOf(l)})
		}
		var usual, rest []*treating.Way
		for j := range l.Ways {
			if w := &l.Ways[j]; w.Usual() {
				usual = append(usual, w)
			} else {
				rest = append(rest, w)
			}
		}
		table := waysTable(words.Of("treated.caption", of(l)), usual)
		other := waysTable(words.Of("treated.caption_more", of(l)), rest)
		if i > 0 { // the same agents as for all together, for a part of it
			table.Rows = append(table.Rows, other.Rows...)
			out = append(out, document.Fold{Summary: table.Caption, Blocks: []document.Block{table}})
			continue
		}
		out = append(out, table)
		out = append(out, falseEnds(l)...)
		out = append(out, dosings(l)...)
		out = append(out, document.Paragraph{Text: thinned(l), Tone: document.Note},
			document.Fold{Summary: other.Caption, Blocks: []document.Block{other}})
		out = append(out, worst(l)...)
		if curves := titration(l); len(curves) > 0 {
			out = append(out, document.Unprinted{Blocks: curves},
				document.Paragraph{Text: words.Of("pictures.more", len(curves)), Tone: document.OnPaper})
		}
	}
	return out
}

// of names a liquor.
func of(l *treating.Liquor) string {
	switch {
	case l.Step > 0:
		return words.Of("treated.of_step", l.Step)
	case l.Place != "":
		return words.Of("treated.of_place", l.Place)
	}
	return words.Of("treated.of_all")
}

func thinned(l *treating.Liquor) string {
	switch l.Thinned {
	case 0:
		return words.Of("treated.not_held")
	case 1:
		return words.Of("treated.as_is", number.Nearest(l.Celsius, 3))
	}
	return words.Of("treated.thinned", number.Nearest(l.Celsius, 3), number.Nearest(l.Thinned, 3))
}

// held says what a step writes against its liquor.
func held(l *treating.Liquor) string {
	w := l.Written
	var names []string
	for _, s := range w.Subs {
		names = append(names, s.Name)
	}
	out := words.Of("treated.written", l.Step, strings.Join(names, words.Of("treated.and")))
	switch {
	case !(w.AcidLeft <= 1e-9*l.Base):
		out += words.Of("treated.acid_left", number.Said(w.AcidLeft, 2, "mol"))
		if w.Strong > 0.01*w.AcidLeft {
			out += words.Of("treated.strong_left", number.Said(w.Strong, 2, "mol"))
		}
	default:
		out += words.Of("treated.acid_gone")
	}
	switch {
	case w.Short != w.Short:
		out += words.Of("treated.short_unknown")
	case w.Short > 1-1e-9:
		out += words.Of("treated.binds_none")
	case w.Short > 1e-9:
		out += words.Of("treated.short", number.Nearest(100*w.Short, 2))
	default:
		out += words.Of("treated.enough")
	}
	switch {
	case w.Left != w.Left:
	case w.Outside:
		out += words.Of("treated.equilibrium_beyond")
	case w.Thinned > 0:
		out += words.Of("treated.at_thinned", number.Nearest(w.Thinned, 3), number.Nearest(w.PH, 2),
			number.Said(w.Left, 2, "mg/L"))
	default:
		out += words.Of("treated.at_equilibrium", number.Nearest(w.PH, 2), number.Said(w.Left, 2, "mg/L"))
	}
	return out
}

func toneOf(l *treating.Liquor) document.Tone {
	if w := l.Written; !(w.AcidLeft <= 1e-9*l.Base) || !(w.Short <= 1e-9) {
		return document.Warning
	}
	return document.Plain
}

func waysTable(caption string, ways []*treating.Way) document.Table {
	t := document.Table{Caption: caption, Columns: document.Columns("treated.agent", "treated.heat", "treated.water",
		"treated.gas", "treated.sludge", "treated.acid", "treated.left", "treated.practice", "treated.leaves")}
	for _, w := range ways {
		gas, first := number.Said(w.CarbonDioxide, 2, "L"), number.Said(w.WaterFirst, 2, "L")
		if w.CarbonDioxide > 0 {
			gas = words.Of("treated.over", gas, lasting(w.MinutesGas))
		}
		if w.WaterFirst > 0 {
			first = words.Of("treated.or_slowly", first, lasting(w.MinutesHeat))
		}
		if w.Ammonia > 0 {
			gas = words.Of("treated.with_ammonia", gas, number.Said(w.Ammonia, 2, "L"))
		}
		t.Rows = append(t.Rows, document.Row(parts(w), words.Of("treated.heat_rise", number.Said(w.Heat, 2, "kJ"),
			number.Said(w.Rise, 2, "K")), first, gas,
			words.Of("treated.dry_wet", number.Said(w.SludgeDry, 2, "g"), between(w.SludgeWet, "L")),
			number.Said(w.AcidLeft, 2, "mol"), stays(w), between(w.Practical, "mg/L"), leaves(w)))
	}
	return t
}

// lasting is how long a dose takes, rounded up.
func lasting(minutes float64) string {
	if minutes > 120 {
		return number.With(number.Significant(minutes/60, 2, 1), "h")
	}
	return number.With(number.Significant(max(minutes, 1), 2, 1), "min")
}

// parts are the agents of a way with what is needed of each and what practice takes.
func parts(w *treating.Way) string {
	var out []string
	for i := range w.Parts {
		p := &w.Parts[i]
		out = append(out, words.Of("treated.part", p.Sub.Name, number.Said(p.Grams, 2, "g"),
			number.Said(p.Excess, 2, "g")))
	}
	return strings.Join(out, words.Of("treated.then"))
}

func between(x [2]float64, unit string) string {
	a, b := number.Significant(x[0], 2, -1), number.Said(x[1], 2, unit)
	if number.Said(x[0], 2, unit) == b {
		return b
	}
	return words.Of("treated.between", a, b)
}

// stays is the fluoride that stays dissolved, with its range and the pH.
func stays(w *treating.Way) string {
	s := number.Said(w.Left, 2, "mg/L")
	if r := between(w.Ends, "mg/L"); r != s {
		s = words.Of("treated.ranged", s, r)
	}
	switch {
	case w.PH != w.PH:
		return words.Of("treated.all_of_it", s)
	case w.Outside:
		return words.Of("treated.outside", s, number.Nearest(w.PH, 2))
	}
	return words.Of("treated.at_ph", s, number.Nearest(w.PH, 2))
}

// leaves is what stays behind besides sludge and salt water.
func leaves(w *treating.Way) string {
	var out []string
	say := func(is bool, key string) {
		if is {
			out = append(out, words.Of(key))
		}
	}
	say(w.Borate, "treated.fluoroborate")
	say(w.AcidLeft > 1e-9 && !w.Borate, "treated.acid_of_salt")
	say(!w.Binds && !w.Borate, "treated.fluoride")
	say(w.Ammonia > 0, "treated.ammonia")
	say(w.CarbonDioxide > 0, "treated.foam")
	say(w.As, "treated.stand_in")
	if out == nil {
		return words.Of("value.dash")
	}
	return strings.Join(out, "; ")
}

// falseEnds says where a pH seems the end and is not, of the first usual way that has one.
func falseEnds(l *treating.Liquor) []document.Block {
	for i := range l.Ways {
		if f := l.Ways[i].False; f != nil && l.Ways[i].Usual() {
			return []document.Block{document.Paragraph{Tone: document.Warning, Text: words.Of("treated.false_end",
				l.Ways[i].Parts[0].Sub.Name, number.Nearest(f.PH, 2), number.Nearest(100*f.Share, 2),
				number.Said(f.Left, 2, "mg/L"), number.Said(f.Aged, 2, "mg/L"),
				number.Said(l.Ways[i].Left, 2, "mg/L"), number.Nearest(l.Ways[i].PH, 2))}}
		}
	}
	return nil
}
