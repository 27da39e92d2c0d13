package rinsing

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Widen takes into the ranges of wash.cycles and wash.ph what acid held between the layers
// does when it comes out slowly, and the cycles that undissolved lithium fluoride asks for,
// and says so. It returns what to warn of.
func Widen(c route.Case, k *process.Walk, figures []figure.Figure) []phrase.Phrase {
	var out []phrase.Phrase
	var was before
	for i := range k.Washes {
		x := &k.Washes[i]
		b, known := benchOf(c, x)
		known = known && k.Open == nil
		e := ends{known: known, layers: between(c) > 0}
		if known {
			was.leads(b)
			w := b.follow(AsWritten)
			e.of(&w, b)
			was = before{x, w.after}
		} else if !known {
			e.salt = salted(c, x)
		}
		for j := range figures {
			if f := &figures[j]; f.Place == figure.Step(x.Step) {
				e.widen(f)
			}
		}
		switch {
		case e.salt && !known:
			out = append(out, phrase.Of("warn.undissolved_open", x.Step))
		case e.left > 0:
			out = append(out, phrase.Of("warn.undissolved", x.Step, e.left))
		}
	}
	return out
}

// ends are what a wash comes to beyond what dilution says.
type ends struct {
	known  bool    // equilibria are held of all that is in it
	layers bool    // there are layers that may hold acid
	salt   bool    // lithium fluoride is undissolved when it begins
	left   float64 // mmol of it after the cycles that are walked
	cycles float64 // that the salt asks for; NaN where not within Most
	slowly float64 // that acid between the layers asks for, and the pH after those that are walked
	pH     float64
	by     float64 // mg/L of fluoride when the pH is there, where that is too much; else 0
}

// of reads the way that is written.
func (e *ends) of(w *Way, b *bench) {
	e.salt, e.left = b.first.solid["LiF_s"] > trace, w.Undissolved
	e.cycles, e.slowly, e.pH = within(w.Needed), within(w.Slowly), math.NaN()
	if w.Left > w.Limit {
		e.by = w.Left
	}
	if b.walked < len(w.Decants) {
		e.pH = w.Decants[b.walked].SlowPH
	}
}

func within(cycles int) float64 {
	if cycles == 0 {
		return math.NaN()
	}
	return float64(cycles)
}

// widen puts the ends into a figure of the wash.
func (e *ends) widen(f *figure.Figure) {
	cycles, pH := f.Quantity == "wash.cycles", f.Quantity == "wash.ph"
	if cycles && e.by > 0 {
		f.Conditions = f.Conditions.And(phrase.Of("wash.by_ph", e.by))
	}
	if !cycles && !pH || !e.layers && !e.salt {
		return
	}
	low, high := f.Low().V, f.High().V
	swings := math.Max(high-f.Value.V, 0) // what the data move beside it
	switch {
	case !e.known && e.salt:
		f.Conditions, high = f.Conditions.And(phrase.Of("wash.undissolved_open")), math.NaN()
	case e.salt:
		f.Conditions = f.Conditions.And(phrase.Of("wash.undissolved", e.left))
		high = math.Max(high, e.cycles)
	}
	switch {
	case !e.layers:
	case !e.known:
		f.Conditions, high = f.Conditions.And(phrase.Of("wash.slowly_open")), math.NaN()
		low = math.NaN()
	default:
		f.Conditions = f.Conditions.And(phrase.Of("wash.slowly"))
		high, low = math.Max(high, e.slowly+swings), math.Min(low, e.pH)
	}
	was := f.Danger().V
	switch {
	case f.Value.Unknown():
	case cycles:
		f.SetRange(f.Low().V, high)
	case pH && e.layers:
		f.SetRange(low, f.High().V)
	}
	f.Widened = f.Widened || f.Danger().V != was
}
