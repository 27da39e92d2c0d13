package draft

import (
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/route"
	"etchbound/reports/number"
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
	switch l.Kind {
	case working.KindGiven:
		return GivenAt(l)
	case working.KindDatum:
		return words.Of("made.datum", DatumName(l.Ref))
	}
	var s []string
	switch l.Kind {
	case working.KindTable:
		s = append(s, words.Of("made.table", l.Formula))
	case working.KindModel:
		s = append(s, words.Of("made.model", l.Formula))
	case working.KindSum:
		s = append(s, l.Symbol+" = "+SumOf(l))
	default:
		if l.Formula == "" {
			s = append(s, words.Of("value.not_stated"))
		} else {
			s = append(s, l.Symbol+" = "+l.Formula)
		}
	}
	for _, in := range l.In {
		s = append(s, words.Of("made.input", in.Symbol, number.Measure(in.V, SheetDigits, in.Unit), in.Line))
	}
	if len(l.Missing) > 0 {
		s = append(s, words.Of("figure.lacks", strings.Join(words.Names(l.Missing), ", ")))
	}
	return strings.Join(s, ", ")
}

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
