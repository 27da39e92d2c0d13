package wash

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Read gives the wash figures of a walk.
func Read(c route.Case, w *working.Sheet, k process.Walk, _ []vessel.Run, _ []course.Course) []figure.Figure {
	mf := process.MolarMass(c.Store, w, "F").As("M_F")
	var out []figure.Figure
	for i := range k.Washes {
		out = append(out, read(w, &k.Washes[i], mf)...)
	}
	return out
}

func read(w *working.Sheet, x *process.Wash, mf working.Num) []figure.Figure {
	place := figure.Step(x.Step)
	var out []figure.Figure
	put := func(quantity string, v working.Num, conditions phrase.Phrase) {
		out = append(out, figure.Figure{ID: figure.ID{Quantity: quantity, Place: place}, Value: w.Keep(v),
			Conditions: conditions})
	}
	switch {
	case !x.Aims: // another liquid takes the place of what is there: no pH says how often
	case math.IsNaN(x.Target):
		put("wash.cycles", working.Absent("N", "1", working.Lacks(working.NotGiven, route.At(x.Step, "target_ph"))),
			phrase.Of("wash.no_target"))
	default:
		put("wash.cycles", x.Needed, phrase.Of("wash.to_ph", x.Target))
	}
	if x.WaterOnly || x.Unheld {
		cond := phrase.Of("wash.no_air")
		if x.OpenAir {
			cond = phrase.Of("wash.open_air")
		}
		put("wash.ph", x.PH, cond)
	}
	n, W, V0 := x.Done.As("N"), x.Added.As("W"), x.Decant0
	put("wash.water", w.Line("V", "L", "N*W/1000", n.V*W.V/1000, n, W), phrase.Of("wash.cycles_walked"))
	put("wash.liquor", w.Line("V", "L", "(V_0+N*W)/1000", (V0.V+n.V*W.V)/1000, V0, n, W), phrase.Of("wash.decants"))
	nf := x.Fluorine.As("n_F")
	put("wash.fluoride", w.Line("m_F", "g as F", "n_F*M_F", nf.V*mf.V, nf, mf), phrase.Of("wash.in_decants"))
	return out
}
