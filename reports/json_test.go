package reports

import (
	"bytes"
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/reports/fixture"
	"etchbound/reports/record"
)

// emptyReview is what is left when nothing was stated.
func emptyReview() hazards.Review { return hazards.Review{Case: route.Case{Route: &route.Route{}}} }

func jsonOf(t *testing.T, r hazards.Review) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := record.JSON(&b, r, fixtureOptions); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestJSONNumbers(t *testing.T) {
	text := string(jsonOf(t, fixture.Review()))
	for _, bad := range []string{"NaN", "Inf", "e-16", "e-18"} {
		if strings.Contains(text, bad) {
			t.Errorf("the JSON holds %s", bad)
		}
	}
	for _, m := range regexp.MustCompile(`: (-?[0-9][0-9.eE+-]*)`).FindAllStringSubmatch(text, -1) {
		digits := strings.TrimLeft(regexp.MustCompile(`e.*|[^0-9]`).ReplaceAllString(m[1], ""), "0")
		if len(strings.TrimRight(digits, "0")) > 9 {
			t.Errorf("%s has more than nine significant digits", m[1])
		}
	}
	var v struct {
		Figures []struct {
			ID             string
			Value, Low     *float64
			Status         string
			Missing        []record.MissingJSON
			Draws          map[string]*float64
			Of, Conditions string
		}
	}
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	for _, f := range v.Figures {
		if f.ID == "gas.closed.pressure@waste_bottle" &&
			(f.Value != nil || f.Low != nil || f.Status != "unknown" || len(f.Missing) == 0) {
			t.Errorf("an unknown figure has %+v", f)
		}
		if f.ID == "account.error" && (f.Value == nil || *f.Value != 0) {
			t.Error("a balance below 1e-12 is not 0")
		}
	}
}
