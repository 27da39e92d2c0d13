package chemicals

import (
	"errors"
	"io/fs"

	"etchbound/schemas/columns"
)

// Strength is one strength of the solution of a substance: a bound against slips, or
// one that is bought. WT in wt% and Molar in mol/L stand for the same solution, NaN
// where it has none.
type Strength struct {
	Substance string // slug
	WT, Molar float64
	What      string // most, reviewed, dissolves, bought or decomposes; see the table
}

var strengths = embedded(loadStrengths)

func loadStrengths(fsys fs.FS) ([]Strength, error) {
	return read(fsys, "data/strengths.csv", func(r columns.Row) Strength {
		_ = r.Text("says") + r.Named("source") + r.Named("status")
		s := Strength{r.Named("substance"), r.Number("wt"), r.Stated("molar"),
			r.Choice("what", "most", "reviewed", "dissolves", "bought", "decomposes")}
		if _, held := Library().Find(s.Substance); !held {
			r.Fault("substance", errors.New("there is no substance "+s.Substance))
		}
		return s
	})
}

// Strengths are the rows of the table of strengths that are of a sort, in its order.
func Strengths(what string) []Strength {
	var out []Strength
	for _, s := range strengths() {
		if s.What == what {
			out = append(out, s)
		}
	}
	return out
}
