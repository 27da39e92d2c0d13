package reports

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"

	"etchbound/hazards/figure"
)

//go:embed review.schema.json
var reviewSchema []byte

// quantityMark is where the enumeration of quantities goes, so that the schema
// never lists what the catalogue does not have.
var quantityMark = []byte(`"$comment": "quantities of the catalogue"`)

// ReviewSchema is the JSON Schema (draft 2020-12) of the JSON review. Its
// quantities are those of the catalogue. An error means the embedded schema
// lost its mark.
func ReviewSchema() ([]byte, error) {
	var names []string
	for _, q := range figure.Catalogue() {
		names = append(names, q.Name)
	}
	enum, err := json.Marshal(names)
	if err != nil {
		return nil, err
	}
	out := bytes.Replace(reviewSchema, quantityMark, append([]byte(`"enum": `), enum...), 1)
	if bytes.Equal(out, reviewSchema) {
		return nil, fmt.Errorf("reports: review.schema.json has no mark for the quantities")
	}
	return out, nil
}
