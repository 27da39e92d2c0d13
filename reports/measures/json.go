package measures

import (
	"io"

	"etchbound/hazards"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/record"
	"etchbound/reports/words"
	"etchbound/scaling/measuring"
)

// Format names the shape of the JSON of what is measured first.
const Format = "etchbound.measure/1"

// Shape is what to measure first, as it is written for programs.
type Shape struct {
	record.Head
	Figures []figureJSON `json:"figures"`
}

type figureJSON struct {
	ID      string               `json:"id"`
	Unit    string               `json:"unit"`
	Best    record.Nine          `json:"best"`
	End     record.Nine          `json:"dangerous_end"`
	Beyond  record.Nine          `json:"beyond"`
	By      []byJSON             `json:"experiments"`
	Missing []record.MissingJSON `json:"missing"`
}

type byJSON struct {
	Experiment string      `json:"experiment"`
	How        string      `json:"how"`
	Keys       []string    `json:"keys"`
	Data       []string    `json:"data"`
	Alone      record.Nine `json:"alone"`
	Left       record.Nine `json:"left"`
	Cut        record.Nine `json:"cut"`
}

// JSON writes what is measured first for programs: every experiment, not the first few.
func JSON(w io.Writer, r *hazards.Review, all []measuring.Figure, o draft.Options) error {
	c := &r.Case
	out := Shape{Head: record.HeadOf(Format, c, o), Figures: []figureJSON{}}
	for i := range all {
		f := &all[i]
		x := figureJSON{ID: f.ID.String(), Unit: number.UnitOf(f.ID.Quantity), Best: record.Nine(f.Best),
			End: record.Nine(f.End), Beyond: record.Nine(f.Beyond),
			By: []byJSON{}, Missing: record.MissingJSONs(f.Missing)}
		for k := range f.By {
			b := &f.By[k]
			y := byJSON{b.Experiment, words.Of("measure.by." + b.Experiment), append([]string{}, b.Keys...), []string{},
				record.Nine(b.Alone), record.Nine(b.Left), record.Nine(f.Cut(b))}
			for j := range b.Data {
				y.Data = append(y.Data, string(b.Data[j].ID))
			}
			x.By = append(x.By, y)
		}
		out.Figures = append(out.Figures, x)
	}
	return record.Write(w, out)
}
