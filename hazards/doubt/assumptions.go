package doubt

import (
	"cmp"
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/hazards/figure"
)

// Assumption is a value nobody stated or verified, with what it moves.
type Assumption struct {
	ID    datum.ID
	Text  string
	Named string // what it is, in few words; "" where nothing is noted of it
	Value float64
	Unit  string
	// Status is why it counts as not verified: memory, assumed or estimated.
	Status string
	Moves  []Move
}

// Move is the swing of one figure over the range of one assumption.
type Move struct {
	Figure   figure.ID
	From, To float64
}

// Assumptions lists every datum a run used that nobody has verified, with the
// figures it moves by more than one part in a hundred, most first. ends gives the
// figures with a variable at its low and at its high end.
func Assumptions(vars []chemicals.Datum, base []figure.Figure, ends func(v int) (low, high []float64)) []Assumption {
	var out []Assumption
	for v := range vars {
		d := &vars[v]
		if !d.Doubtful() {
			continue
		}
		a := Assumption{ID: d.ID, Text: d.Note, Named: d.Named(), Value: d.Value, Unit: d.Unit, Status: d.Status}
		if a.Text == "" {
			a.Text = "value " + d.Status
		}
		low, high := ends(v)
		for i := range base {
			lo, hi, x := low[i], high[i], base[i].Value.V
			most := max(math.Abs(x), math.Abs(hi), math.Abs(lo))
			if math.IsNaN(lo) || math.IsNaN(hi) || math.Abs(hi-lo) <= 0.01*most {
				continue
			}
			a.Moves = append(a.Moves, Move{Figure: base[i].ID, From: lo, To: hi})
		}
		slices.SortStableFunc(a.Moves, func(x, y Move) int { return cmp.Compare(share(y), share(x)) })
		out = append(out, a)
	}
	return out
}

// share is what a move is of its figure, to a millionth: those that move alike keep the order
// of the figures on every processor.
func share(m Move) float64 {
	return math.Round(1e6 * math.Abs(m.To-m.From) / max(math.Abs(m.To), math.Abs(m.From)))
}
