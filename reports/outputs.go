package reports

import (
	"encoding/json"
	"slices"

	"etchbound/reports/campaigns"
	"etchbound/reports/change"
	"etchbound/reports/comparison"
	"etchbound/reports/growth"
	"etchbound/reports/holdings"
	"etchbound/reports/measures"
	"etchbound/reports/paced"
	"etchbound/reports/proposed"
	"etchbound/reports/record"
	"etchbound/reports/review"
	"etchbound/reports/scrubbed"
)

// outputs are all of them, in the order they are told.
var outputs = []record.Output{
	{Name: "review", Format: record.Format, Says: "Hazard review of one etching route", Of: record.Shape{}},
	{Name: "upset", Format: record.Format, Says: "What happens when something fails, as a review of nothing else",
		Of: record.Shape{}},
	{Name: "scale", Format: growth.Format, Says: "One route from a small batch to a large one", Of: growth.Shape{}},
	{Name: "change", Format: change.Format, Says: "What a proposed route changes of a reviewed one", Of: change.Shape{}},
	{Name: "compare", Format: comparison.Format, Says: "Several routes side by side", Of: comparison.Shape{}},
	{Name: "stock", Format: holdings.Format, Says: "What a site holds and its routes take", Of: holdings.Shape{}},
	{Name: "propose", Format: proposed.Format, Says: "What would have to change of a route", Of: proposed.Shape{}},
	{Name: "keep", Format: review.KeepFormat, Says: "How the product of a route can be kept", Of: review.KeepShape{}},
	{Name: "pace", Format: paced.Format, Says: "How what reacts can be added to a route", Of: paced.Shape{}},
	{Name: "measure", Format: measures.Format, Says: "What to measure first of a route", Of: measures.Shape{}},
	{Name: "offgas", Format: scrubbed.Format, Says: "What the gas of a route needs on its way out",
		Of: scrubbed.Shape{}},
	{Name: "campaign", Format: campaigns.Format, Says: "What a route comes to that is made again and again",
		Of: campaigns.Shape{}},
	{Name: "upset.csv", Format: record.Format, Says: "What happens when something fails, a figure a row",
		Columns: record.Columns},
	{Name: "scale.csv", Format: growth.Format, Says: "The batches at which findings turn, one a row",
		Columns: growth.Columns},
	{Name: "change.csv", Format: change.Format, Says: "What a change meets, states and moves, one a row",
		Columns: change.Columns},
	{Name: "compare.csv", Format: comparison.Format, Says: "Several routes side by side, a value a row",
		Columns: comparison.Columns},
	{Name: "stock.csv", Format: holdings.Format, Says: "An inventory, a bottle or a substance a row",
		Columns: holdings.Columns},
}

// Outputs are the names of what Schema has a schema of.
func Outputs() []string {
	names := make([]string, len(outputs))
	for i := range outputs {
		names[i] = outputs[i].Name
	}
	return names
}

// Schema is the JSON Schema (draft 2020-12) of an output of that name, of a CSV
// that of one row; false where there is none.
func Schema(name string) ([]byte, bool, error) {
	at := slices.IndexFunc(outputs, func(o record.Output) bool { return o.Name == name })
	if at < 0 {
		return nil, false, nil
	}
	b, err := json.MarshalIndent(outputs[at].Schema(), "", " ")
	return append(b, '\n'), true, err
}
