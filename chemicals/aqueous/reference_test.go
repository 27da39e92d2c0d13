package aqueous_test

import (
	"cmp"
	_ "embed"
	"encoding/csv"
	"fmt"
	"io"
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
func (c *aCase) misses(results []result) (out []string, compared int) {
	got := map[string]float64{}
	for _, r := range results {
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

//go:embed testdata/cases.csv
var bundled string

// Every case that has to be met is met, and those outside of what the model is held for
// say so. AQUEOUS_CASES names another file of cases in place of the bundled one; every
// figure of every case is then printed, a row each, under the heads of that file.
func TestCases(t *testing.T) {
	file := os.Getenv("AQUEOUS_CASES")
	name, text := "testdata/cases.csv", bundled
	if file != "" {
		b, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		name, text = file, string(b)
	}
	cases, err := readCases(name, text)
	if err != nil {
		t.Fatal(err)
	}
	w := csv.NewWriter(io.Discard)
	if file != "" {
		w = csv.NewWriter(os.Stdout)
	}
	w.Write(strings.Split("case_id,group,description,database,quantity,value,unit,status,validity", ","))
	passed, all, figures := map[string]int{}, map[string]int{}, 0
	for _, c := range cases {
		all[c.gate]++
		misses, n := c.judge(t, w)
		figures += n
		if misses == 0 {
			passed[c.gate]++
		}
	}
	for gate, n := range all {
		t.Logf("gate %s: %d of %d", gate, passed[gate], n)
	}
	if file == "" && (len(cases) < 30 || figures < 250) {
		t.Errorf("only %d cases with %d figures", len(cases), figures)
	}
}

// spread tells whether the pH that other data give lies in the band of ours.
func (c *aCase) spread(t *testing.T) {
	for _, r := range c.rows {
		if r.quantity != "pH" || r.status != "computed" {
			continue
		}
		m, err := aqueous.At(c.celsius)
		if err != nil {
			t.Error(err)
			continue
		}
		b, err := m.Band(c.mix, (*aqueous.State).PH)
		inside := r.number() > b.Low-0.01 && r.number() < b.High+0.01
		t.Logf("cross %s: pH %s, ours %.3f to %.3f, inside %v, without %v %v", c.id, r.value, b.Low, b.High, inside,
			b.Without, err)
	}
}

// figures are those of a case, and why they are outside of what the model is held for.
func (c *aCase) figures() ([]result, string, error) {
	if !c.runs() {
		out, err := c.bulk()
		return out, "", err
	}
	s, err := c.solve()
	if err != nil {
		return nil, "", err
	}
	return c.results(s), strings.Join(s.Outside(), "; "), nil
}

// judge solves a case, writes its figures and counts those that are off and all.
func (c *aCase) judge(t *testing.T, w *csv.Writer) (misses, figures int) {
	results, outside, err := c.figures()
	if err != nil {
		t.Errorf("%s (%s): %v", c.id, c.gate, err)
		w.Write([]string{c.id, c.rows[0].group, c.rows[0].description, "", "error", err.Error(), "text", "", ""})
		w.Flush()
		return 1, 0
	}
	validity := cmp.Or(outside, "inside")
	if c.gate == "indicative" && outside == "" { // the solution is held, what the case means by it is not
		validity = "outside by the file of cases: " + c.rows[0].validity
	}
	for _, r := range results {
		w.Write([]string{c.id, c.rows[0].group, c.rows[0].description, "own constants", r.quantity,
			strconv.FormatFloat(r.value, 'g', 7, 64), r.unit, "computed", validity})
	}
	w.Flush() // whole rows, before anything is logged between them
	all, figures := c.misses(results)
	for _, miss := range all {
		switch {
		case c.gate == "yes", c.gate == "indicative":
			t.Error(miss)
		case strings.Contains(miss, ": pH"):
			t.Log(c.gate, miss)
		}
	}
	if c.gate == "cross" {
		c.spread(t)
	}
	if c.gate == "indicative" && outside == "" {
		say := t.Errorf
		if os.Getenv("AQUEOUS_CASES") != "" {
			say = t.Logf // the same liquor may stand there once more as one that has to be met
		}
		say("%s: it is not said to be outside", c.id)
	}
	return len(all), figures
}
