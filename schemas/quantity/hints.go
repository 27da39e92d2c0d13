package quantity

import (
	"math"
	"strings"
)

// foreign holds units that people write and that are not accepted, with what
// to write instead.
var foreign = map[string]string{
	"psi": "1 psi is 6.895 kPa; pressures are gauge", "psig": "1 psi is 6.895 kPa; pressures are gauge",
	"atm":  "1 atm is 101.325 kPa; pressures are gauge, so open to the room is 0 kPa",
	"mmHg": "1 mmHg is 0.1333 kPa; pressures are gauge", "Torr": "1 Torr is 0.1333 kPa; pressures are gauge",
	"bara": "pressures are gauge: subtract 1.013 bar", "bar(a)": "pressures are gauge: subtract 1.013 bar",
	"F": "write the temperature in degC", "degF": "write the temperature in degC",
	"N":  "write the molar concentration in mol/L; normality depends on the reaction",
	"cc": "did you mean mL?", "oz": "1 oz is 28.35 g", "lb": "1 lb is 453.6 g",
	"in": "1 in is 25.4 mm", "cfm": "1 cfm is 1.699 m3/h", "fpm": "1 fpm is 0.00508 m/s",
	"drop": "write the volume as it is measured, in mL", "drops": "write the volume as it is measured, in mL",
	"overnight": "write how long it was, in h",
	"rpm":       "rotation is not read here; put it in the note",
	"C":         "did you mean degC?", "RT": "write the temperature of the room as it is, in degC",
}

// longTimes are the days in times that are not accepted; 0 where it depends.
var longTimes = map[string]float64{
	"week": 7, "weeks": 7, "wk": 7, "month": 0, "months": 0, "year": 0, "years": 0, "y": 0,
}

// unitHint says which unit was likely meant.
func unitHint(p Parts, dims []Dimension) string {
	text := unitSpelling.Replace(p.Unit)
	if h, ok := foreign[text]; ok {
		return h
	}
	if days, ok := longTimes[text]; ok && days == 0 {
		return "write how many days are meant, in d"
	} else if ok {
		return "write days: " + shortest(p.X*days) + " d"
	}
	if has(dims, MassFraction) && text == "%" {
		return "say of what: a share by mass is written in wt%"
	}
	if has(dims, Fraction) && text == "wt%" {
		return "write " + shortest(p.X) + " %"
	}
	if has(dims, TemperatureDiff) && text == "degC" {
		return "a difference is written in K: " + shortest(p.X) + " K"
	}
	if len(lookup(p.Unit)) > 0 {
		return ""
	}
	if unit, rest, found := strings.Cut(text, "("); found && math.IsNaN(p.Low) && find(unit, dims) != nil &&
		strings.HasSuffix(rest, ")") {
		_, inner, _ := strings.Cut(p.Unit, "(")
		return "write the range before the unit: " + shortest(p.X) + " (" + inner + " " + unit
	}
	if first := firstWord(p.Unit); first != p.Unit && find(first, dims) != nil {
		return "write " + shortest(p.X) + " " + first + ", and the words behind it as a note"
	}
	if n := nearestUnit(text, dims); n != "" {
		return "did you mean " + n + "?"
	}
	return ""
}

func has(dims []Dimension, d Dimension) bool {
	for _, x := range dims {
		if x == d {
			return true
		}
	}
	return false
}

// nearestUnit is the accepted unit whose spelling is closest; one that differs
// in capitals only comes first. Nothing is offered that shares too little.
func nearestUnit(text string, dims []Dimension) string {
	best, cost := "", 100*len(text)
	for i := range units {
		u := &units[i]
		if u.name == "" || len(dims) > 0 && !has(dims, u.dim) {
			continue
		}
		for _, s := range append(strings.Fields(u.also), u.name) {
			c := 10 * Distance(strings.ToLower(text), strings.ToLower(s))
			if text != s {
				c++
			}
			if c < cost {
				best, cost = u.name, c
			}
		}
	}
	if cost > 10*max(1, len(text)/2)+1 {
		return ""
	}
	return best
}

// Distance is the number of letters that have to be put in, left out, changed
// or swapped with their neighbour to turn a into b.
func Distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	two, one := make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range one {
		one[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row := make([]int, len(y)+1)
		row[0] = i
		for j := 1; j <= len(y); j++ {
			change := one[j-1]
			if x[i-1] != y[j-1] {
				change++
			}
			row[j] = min(change, one[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], two[j-2]+1)
			}
		}
		two, one = one, row
	}
	return one[len(y)]
}
