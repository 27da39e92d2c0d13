package draft

import (
	"strings"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// SheetDigits is what an eight-digit pocket calculator can follow.
const SheetDigits = 7

// neverGiven stands for the place of what nobody stated.
func neverGiven(l *working.Line) string {
	return "missing: " + strings.Join(words.Names(l.Missing), ", ")
}

// GivenAt says where a given was stated, or what an exact number is.
func GivenAt(l *working.Line) string {
	if why, ok := strings.CutPrefix(l.Ref, working.ExactPrefix); ok {
		return words.Of("made.exact", why)
	}
	if l.Ref == "" && len(l.Missing) > 0 {
		return neverGiven(l)
	}
	return words.Of("made.given", words.OrNone(StatedAt(l)))
}

// Made is how a line came about: "n = m*w/M, m = 10 g (line 3), ...".
func Made(l *working.Line) string {
	s := []string{MadeBy(l)}
	if l.Kind == working.KindGiven || l.Kind == working.KindDatum {
		return s[0]
	}
	for i := range l.In {
		s = append(s, InputText(&l.In[i], l.In[i].Line))
	}
	if len(l.Missing) > 0 {
		s = append(s, words.Of("figure.lacks", strings.Join(words.Names(l.Missing), ", ")))
	}
	return strings.Join(s, ", ")
}

// MadeBy is what made a line, without its inputs: a formula, a table, a datum.
func MadeBy(l *working.Line) string {
	s := Origin(l)
	if l.Kind == working.KindSum || l.Kind == working.KindFormula && l.Formula != "" {
		return l.Symbol + " = " + s
	}
	return s
}

// Origin is where a line came from, beside its symbol: formula, table, model, or for the leaves
// the place in the file or the name of the datum.
func Origin(l *working.Line) string {
	id, reads := l.Datum()
	switch {
	case l.Kind == working.KindGiven:
		return GivenAt(l)
	case reads:
		return words.Of("made.datum", DatumName(id))
	case l.Kind == working.KindTable:
		return words.Of("made.table", number.Formula(l.Formula))
	case l.Kind == working.KindModel:
		return words.Of("made.model", number.Formula(l.Formula))
	case l.Kind == working.KindSum:
		return SumOf(l)
	case l.Formula == "":
		return words.Of("value.not_stated")
	}
	return number.Formula(l.Formula)
}

// MadeOf is how a line was made, each input leading to its own line.
func MadeOf(l *working.Line) document.Cell {
	if l.Kind == working.KindGiven || l.Kind == working.KindDatum || len(l.Missing) > 0 {
		return document.Code(Made(l))
	}
	c := document.Code(MadeBy(l))
	for i := range l.In {
		if in := &l.In[i]; in.Line > 0 {
			c.Links = append(c.Links, document.Link{Text: InputText(in, in.Line), To: LineAnchor(in.Line)})
		} else {
			c.Text += ", " + InputText(in, in.Line)
		}
	}
	return c
}

// InputText is an input of a line with the number of the line it came from.
func InputText(in *working.Input, line int) string {
	return words.Of("made.input", in.Symbol, number.Measure(in.V, SheetDigits, in.Unit), line)
}

// InputOf is an input of a line with the datum that it is.
func InputOf(in *working.Input, read *working.Line) string {
	id, _ := read.Datum()
	return words.Of("made.input_datum", in.Symbol, number.Measure(in.V, SheetDigits, in.Unit), DatumName(id))
}

// DatumAnchor is where a link to a datum leads: its row among the data.
func DatumAnchor(id datum.ID) string { return "datum-" + plain.ID(string(id)) }

// SumOf writes a sum out: several inputs may bear one symbol, and their line
// numbers tell them apart.
func SumOf(l *working.Line) string {
	if len(l.In) == 0 {
		return "0"
	}
	var s []string
	for _, in := range l.In {
		s = append(s, in.Symbol)
	}
	return strings.Join(s, " + ")
}

// StatedAt is where the input of a line stands in the route or site, as people say
// it; what is exact or was never given says so in its own words.
func StatedAt(l *working.Line) string {
	switch {
	case l.Ref == "" && l.Kind == working.KindGiven && len(l.Missing) > 0:
		return neverGiven(l)
	case strings.HasPrefix(l.Ref, working.ExactPrefix):
		return l.Ref
	}
	return route.Told(l.Ref)
}
