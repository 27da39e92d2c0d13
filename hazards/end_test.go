package hazards_test

import (
	"math"
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/ranges"
	"etchbound/schemas/long"
)

// The second run gives the very end that was judged, each line of it computes again from
// what it prints, and the figure stands on its line there. The ends of two routes, of all
// in the long form.
func TestTheDangerousEndIsTheOneJudged(t *testing.T) {
	long.Only(t)
	texts := bundledTexts(t)
	for _, name := range long.Some(sorted(texts), 2, 1) {
		rv := followed(t, texts[name])
		ids := decisive(&rv)
		told := map[figure.ID]bool{}
		hazards.Ends(&rv, ids, func(e *hazards.End) {
			told[e.Figure] = true
			if figureOf(&rv, e.Figure.String()).Widened {
				t.Errorf("%s: %s is told of a run that does not stand at its end", name, e.Figure)
			}
			if f := figureOf(&rv, e.Figure.String()); !(math.Abs(e.Value.V-f.Danger().V) <= 1e-12*math.Abs(e.Value.V)) {
				t.Errorf("%s: %s is %v in its end, %v was judged", name, e.Figure, e.Value.V, f.Danger().V)
			}
			n := e.Value.Line()
			if n < 1 || n > len(e.Sheet.Lines) || !same(e.Sheet.Lines[n-1].V, e.Value.V) || len(e.Stood) == 0 {
				t.Errorf("%s: %s stands on line %d, with %d data moved", name, e.Figure, n, len(e.Stood))
			}
		})
		swung := figure.NewSet(hazards.Assess(rv.Case, nil).Figures)
		for _, id := range ids {
			f := figureOf(&rv, rv.Member(id).String())
			if swung.Get(f.ID) == nil || f.Widened {
				continue // made once and outside of the runs, with a range of its own
			}
			if !told[f.ID] && !f.Danger().Unknown() && f.Danger().V != f.Value.V {
				t.Errorf("%s: %s has no working of its end", name, id)
			}
		}
	}
}

// decisive are the figures of findings that are not within, as meant.
func decisive(rv *hazards.Review) []figure.ID {
	var out []figure.ID
	for i := range rv.Findings {
		if f := &rv.Findings[i]; f.Verdict != figure.Within && f.Figure.Case.Failure == "" {
			out = append(out, f.Figure)
		}
	}
	return out
}

func TestLinesOfAnEndComputeAgain(t *testing.T) {
	long.Only(t)
	rv := followed(t, bundledTexts(t)["demo-lif-hcl-2g.yaml"])
	lines := 0
	hazards.Ends(&rv, rv.Deciding()[:1], func(e *hazards.End) {
		for i := range e.Sheet.Lines {
			if l := &e.Sheet.Lines[i]; recompute(l) != nil {
				t.Errorf("line %d, %s = %s: %v", l.N, l.Symbol, l.Formula, recompute(l))
			}
		}
		lines += len(e.Sheet.Lines)
	})
	if lines < 500 {
		t.Errorf("only %d lines", lines)
	}
}

// A verdict turns about where it is said to: reviewed with the datum known to a tenth of
// its range better than that, it is milder, and with one a hundredth worse it is not but at
// the edge of a runaway.
func TestAVerdictTurnsWhereItIsSaidTo(t *testing.T) {
	long.Only(t)
	texts := bundledTexts(t)
	tried := 0
	for name, text := range texts {
		rv := followed(t, text)
		for i := range rv.Turns {
			x := &rv.Turns[i]
			if math.IsNaN(x.At) || x.Datum.Group != "" || x.Share < 0.02 {
				continue
			}
			tried++
			span := (x.At - x.Worst) / x.Share
			if got := knowing(t, &rv, x.Datum, clamped(x.Datum, x.At+0.1*span), x.Finding); got >= x.Verdict {
				t.Errorf("%s: %s is %s with %s at %g", name, x.Finding, got, x.Datum.ID, x.At)
			}
			short := clamped(x.Datum, x.At-0.01*span)
			if got := knowing(t, &rv, x.Datum, short, x.Finding); got < x.Verdict && !edge(&rv, x) {
				t.Errorf("%s: %s is %s with %s short of %g", name, x.Finding, got, x.Datum.ID, x.At)
			}
		}
	}
	if tried < 10 {
		t.Errorf("only %d turns were tried", tried)
	}
}

// edge reports whether a verdict stands at the edge of a runaway, which starts or does not:
// its figure is many times its best estimate at the dangerous end. The turn is told on the
// cautious side there, and a review that knows more may find it milder before.
func edge(rv *hazards.Review, x *ranges.Turn) bool {
	for i := range rv.Findings {
		if f := &rv.Findings[i]; f.ID() == x.Finding {
			g := figureOf(rv, f.Figure.String())
			return g.Danger().V > 20*g.Value.V
		}
	}
	return false
}

// knowing is a verdict with a datum known to have a value.
func knowing(t *testing.T, rv *hazards.Review, d chemicals.Datum, v float64, id figure.FindingID) figure.Verdict {
	t.Helper()
	c := rv.Case
	st, _, err := c.Store.Override([]chemicals.Override{{ID: d.ID, Value: v, Low: v, High: v, Source: "test"}})
	if err != nil {
		t.Fatal(err)
	}
	c.Store, c.Brief = st, true
	out, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	for i := range out.Findings {
		if f := &out.Findings[i]; f.ID() == id {
			return f.Verdict
		}
	}
	return figure.Within // it is not even held against the limit
}

// What has a verdict over its whole range is turned by no datum, and says so.
func TestWhatIsSureIsTurnedByNothing(t *testing.T) {
	long.Only(t)
	rv := followed(t, bundledTexts(t)["hf-50-10g.yaml"])
	sure := map[figure.FindingID]bool{}
	for i := range rv.Findings {
		f := &rv.Findings[i]
		sure[f.ID()] = f.Surely == figure.WholeRange
	}
	none, some := 0, 0
	for i := range rv.Turns {
		x := &rv.Turns[i]
		switch {
		case !math.IsNaN(x.At) && (sure[x.Finding] || x.Becomes >= x.Verdict || x.Datum.ID == ""):
			t.Errorf("%s turns with %s", x.Finding, x.Datum.ID)
		case math.IsNaN(x.At):
			none++
		default:
			some++
		}
	}
	if none == 0 || some == 0 {
		t.Errorf("%d turn and %d do not", some, none)
	}
}

// clamped is a value of a datum within its range.
func clamped(d chemicals.Datum, v float64) float64 { return min(max(v, d.Low), d.High) }
