package record

import (
	"math"

	"etchbound/hazards"
	"etchbound/hazards/ranges"
)

// endsToJSON are the workings of the ends that decide, each with the lines it rests on.
func endsToJSON(r *hazards.Review) []endJSON {
	out := []endJSON{}
	hazards.Ends(r, r.Deciding(), func(e *hazards.End) {
		x := endJSON{Figure: e.Figure.String(), End: "low", Data: each(e.Stood, stoodToJSON)}
		if e.High {
			x.End = "high"
		}
		lines := e.Sheet.Under(e.Value.Line())
		x.Line, x.Lines = len(lines), each(lines, lineToJSON)
		out = append(out, x)
	})
	return out
}

func stoodToJSON(s *ranges.Stood) stoodJSON {
	return stoodJSON{string(s.ID), Nine(s.Value), Nine(s.At), s.Unit}
}

func turnToJSON(t *ranges.Turn) turnJSON {
	d := &t.Datum
	out := turnJSON{Finding: t.Finding.String(), Verdict: t.Verdict.String(), Datum: string(d.ID), Value: Nine(d.Value),
		Low: Nine(d.Low), High: Nine(d.High), Unit: d.Unit, Worst: Nine(t.Worst), At: Nine(t.At),
		Becomes: t.Becomes.String()}
	if d.ID == "" {
		out.Value, out.Low, out.High = Nine(math.NaN()), Nine(math.NaN()), Nine(math.NaN())
	}
	return out
}
