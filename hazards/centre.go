package hazards

import (
	"etchbound/hazards/figure"
	"etchbound/hazards/incompatible"
	"etchbound/hazards/residue"
	"etchbound/hazards/rinsing"
	"etchbound/hazards/route"
	"etchbound/hazards/verdict"
)

// Centre are the verdicts of a case on its values as they stand, without ranges: one
// assessment, for the search among very many routes. What a route comes to is told by
// Make alone. The error is that of the assessment.
func Centre(c route.Case) ([]figure.Finding, error) { return centre(c, false) }

// Widened is Centre with the ends of a wash to which no datum moves it: acid that comes out
// slowly from between the layers, and salt that is not dissolved.
func Widened(c route.Case) ([]figure.Finding, error) { return centre(c, true) }

func centre(c route.Case, widened bool) ([]figure.Finding, error) {
	a := Assess(c, nil)
	if a.Err != nil {
		return nil, a.Err
	}
	a.Figures = append(a.Figures, residue.Central(c, &a.Walk)...)
	a.Figures = append(a.Figures, incompatible.Read(c, nil, &a.Walk)...)
	for i := range a.Figures {
		f := &a.Figures[i]
		f.SetRange(f.Value.V, f.Value.V)
	}
	if widened {
		rinsing.Widen(c, &a.Walk, a.Figures)
	}
	verdict.WidenClasses(c, &a.Walk, a.Figures)
	figs := verdict.Bare(verdict.WithoutTraces(a.Figures))
	return verdict.Verdicts(c, figs, &a.Walk, func(*figure.Figure) bool { return false }), nil
}
