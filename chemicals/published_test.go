package chemicals_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

// published reads a file of values from outside the project, each with its
// source and tolerance, as one map a row.
func published(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil || len(records) < 2 {
		t.Fatalf("%s: %d records, %v", name, len(records), err)
	}
	var out []map[string]string
	for _, r := range records[1:] {
		row := map[string]string{}
		for i, key := range records[0] {
			row[key] = r[i]
		}
		out = append(out, row)
	}
	return out
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
