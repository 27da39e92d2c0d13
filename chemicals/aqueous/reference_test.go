package aqueous_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"etchbound/chemicals/aqueous"
)

func (c *aCase) solve() (*aqueous.State, error) {
	if c.problem != nil {
		return nil, c.problem
	}
	m, err := aqueous.At(c.celsius)
	if err != nil {
		return nil, err
	}
	return m.Solve(c.mix)
}

// misses lists the figures of a case that are off.
func (c *aCase) misses(s *aqueous.State) (out []string, compared int) {
	got := map[string]float64{}
	for _, r := range c.results(s) {
		got[r.quantity] = r.value
	}
	for _, r := range c.rows {
		tolerance := c.near(r)
		if r.status != "computed" || math.IsNaN(tolerance) {
			continue
		}
		compared++
		v, there := got[r.quantity]
		if !there || !(math.Abs(v-r.number()) <= tolerance) {
			out = append(out, fmt.Sprintf("%s: %s is %.6g, want %s", c.id, r.quantity, v, r.value))
		}
	}
	return out, compared
}

// Runs the file of cases that AQUEOUS_CASES names and prints every figure of every case,
// a row each, under the heads of that file.
func TestCasesOfAFile(t *testing.T) {
	name := os.Getenv("AQUEOUS_CASES")
	if name == "" {
		t.Skip("set AQUEOUS_CASES to a file of cases")
	}
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	cases, err := readCases(name, string(text))
	if err != nil {
		t.Fatal(err)
	}
	w := csv.NewWriter(os.Stdout)
	w.Write(strings.Split("case_id,group,description,database,quantity,value,unit,status,validity", ","))
	for _, c := range cases {
		if !c.runs() {
			continue
		}
		s, err := c.solve()
		if err != nil {
			w.Write([]string{c.id, c.rows[0].group, c.rows[0].description, "", "error", err.Error(), "text", "", ""})
			continue
		}
		outside := strings.Join(s.Outside(), "; ")
		if outside == "" {
			outside = "inside"
		}
		for _, r := range c.results(s) {
			w.Write([]string{c.id, c.rows[0].group, c.rows[0].description, "own constants", r.quantity,
				strconv.FormatFloat(r.value, 'g', 7, 64), r.unit, "computed", outside})
		}
	}
	w.Flush()
	report(t, cases)
}

// report compares with what the file holds and counts by gate.
func report(t *testing.T, cases []*aCase) {
	passed, all := map[string]int{}, map[string]int{}
	for _, c := range cases {
		if !c.runs() {
			continue
		}
		all[c.gate]++
		s, err := c.solve()
		if err != nil {
			t.Errorf("%s (%s): %v", c.id, c.gate, err)
			continue
		}
		misses, _ := c.misses(s)
		if len(misses) == 0 {
			passed[c.gate]++
		}
		for _, miss := range misses {
			if c.gate == "yes" {
				t.Error(miss)
			} else if strings.Contains(miss, ": pH") {
				t.Log(c.gate, miss)
			}
		}
	}
	for gate, n := range all {
		t.Logf("gate %s: %d of %d", gate, passed[gate], n)
	}
}
