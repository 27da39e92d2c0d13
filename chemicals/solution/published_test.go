package solution_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/schemas/quantity"
)

// published reads a file of values from outside the project, each with its
// source and tolerance, as one map a row.
func published(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/published/" + name)
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

func given(symbol, unit string, v float64) working.Num {
	return working.Given(symbol, unit, v, "test "+symbol)
}

func strength(dim quantity.Dimension, si float64) quantity.Value {
	return quantity.Value{SI: si, Dim: dim, Set: true, At: "test strength"}
}

func substance(t *testing.T, name string) *chemicals.Substance {
	t.Helper()
	s, ok := chemicals.Library().Find(name)
	if !ok {
		t.Fatalf("no substance %q", name)
	}
	return s
}
