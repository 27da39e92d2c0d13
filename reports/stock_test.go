package reports

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/holdings"
	"etchbound/reports/words"
	"etchbound/scaling"
	"etchbound/schemas/long"
)

// together loads bundled routes in the demonstration site, with its stock.
func together(t *testing.T, names ...string) []route.Case {
	t.Helper()
	read := func(name string) *bytes.Reader {
		raw, err := os.ReadFile(filepath.Join("..", "testdata", "routes", name))
		if err != nil {
			t.Fatal(err)
		}
		return bytes.NewReader(raw)
	}
	site, problems, err := route.LoadSite("site.yaml", read("site-demo.yaml"))
	if err != nil || site == nil {
		t.Fatal(err, problems)
	}
	var out []route.Case
	for _, n := range names {
		r, problems, err := route.Load(n, read(n))
		if err != nil || r == nil {
			t.Fatal(err, problems)
		}
		c, err := route.NewCase(r, site, nil)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, c)
	}
	return out
}

func stockOf(t *testing.T, cases []route.Case, workers int) *scaling.Holdings {
	t.Helper()
	h, err := scaling.Stock(cases, true, workers)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

var bundled = []string{"bifluoride-1g.yaml", "demo-lif-hcl-2g.yaml", "hf-50-10g.yaml", "hf-hcl-1g.yaml",
	"lif-hcl-2g-read.yaml",
	"mo2tialc2-hf-2g.yaml", "precursor-1g.yaml", "reactor-50g.yaml", "tmaoh-half-gram.yaml", "zinc-chloride-melt-1g.yaml"}

// Neither the order of the routes nor the number of workers changes a byte.
func TestStockIsTheSameForAnyOrder(t *testing.T) {
	long.NotShort(t)
	cases := together(t, bundled...)
	var want [2]string
	for i, workers := range []int{1, 2, 8} {
		h := stockOf(t, cases, workers)
		var j, m bytes.Buffer
		if err := holdings.JSON(&j, h, draft.Options{}); err != nil {
			t.Fatal(err)
		}
		if err := document.Markdown(&m, holdings.Build(h, draft.Options{})); err != nil {
			t.Fatal(err)
		}
		if got := [2]string{j.String(), m.String()}; i == 0 {
			want = got
		} else if got != want {
			t.Errorf("%d workers and another order give another output", workers)
		}
		slices.Reverse(cases)
		cases[0], cases[4] = cases[4], cases[0]
	}
}

// What is unknown is null with what is missing, never zero.
func TestStockJSONUnknown(t *testing.T) {
	cases := together(t, "hf-50-10g.yaml")
	cases[0].Site = nil
	var b bytes.Buffer
	if err := holdings.JSON(&b, stockOf(t, cases, 1), draft.Options{}); err != nil {
		t.Fatal(err)
	}
	var got holdings.Shape
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	shares := 0
	for _, s := range got.Substances {
		if s.Sum.Missing == nil || len(s.Sum.Missing) > 0 || s.Stock.Status != "unknown" || len(s.Stock.Missing) == 0 {
			t.Errorf("%s: %+v", s.ID, s.Stock)
		}
		for _, x := range s.Shares {
			shares++
			if x.Verdict != "unknown" || x.Share.Status != "unknown" || len(x.Share.Missing) == 0 {
				t.Errorf("%s: %+v", x.ID, x)
			}
		}
	}
	if shares < 6 || strings.Count(b.String(), `"value": null`) < shares {
		t.Errorf("%d shares", shares)
	}
}

// The inventory has a row for each entry of the stock of the site, the columns people fill
// are empty, and every number is in the unit of its column: a litre of 48 wt% acid weighs
// 1.15 kg, in two bottles of half a litre.
func TestInventory(t *testing.T) {
	var b bytes.Buffer
	if err := holdings.CSV(&b, stockOf(t, together(t, bundled...), 2)); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at := func(row []string, column string) string { return row[slices.Index(rows[0], column)] }
	found := false
	for _, r := range rows[1:] {
		for _, c := range []string{"average_on_hand_kg", "container_type", "building", "room", "cabinet", "owner",
			"telephone", "date", "sds_on_file", "waste_stream"} {
			if at(r, c) != "" {
				t.Errorf("%s: %s is %q", r[0], c, at(r, c))
			}
		}
		if at(r, "cas") == "7664-39-3" {
			found = at(r, "concentration_wt_percent") == "48" && at(r, "maximum_on_hand_kg") == "1.15" &&
				at(r, "container_kg") == "0.575" && at(r, "container_count") == "2" && at(r, "physical_state") == "liquid" &&
				strings.Contains(at(r, "hazard_class"), "H310") && strings.Contains(at(r, "storage_group"), "acid fluoride")
		}
		if at(r, "chemical_name") == "lithium chloride" && (at(r, "pure_mass_of_stock_kg") != "" || at(r, "missing") == "" ||
			at(r, "computed_need_largest_run_kg") == "") {
			t.Errorf("a stock nobody stated: %v", r)
		}
	}
	if !found {
		t.Errorf("no row of the acid of the site: %v", rows)
	}
}

// The document keeps its distance and asks that remembered thresholds are
// looked up.
func TestStockDefers(t *testing.T) {
	cases := together(t, "hf-50-10g.yaml", "demo-lif-hcl-2g.yaml")
	for i := range cases {
		site := *cases[i].Site
		site.Jurisdiction = "us"
		cases[i].Site = &site
	}
	h := stockOf(t, cases, 2)
	var m, p bytes.Buffer
	if err := document.Markdown(&m, holdings.Build(h, draft.Options{})); err != nil {
		t.Fatal(err)
	}
	if err := document.HTML(&p, holdings.Build(h, draft.Options{})); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{words.Of("deference.line"), words.Of("stock.memory"), words.Of("stock.one_day")} {
		if !strings.Contains(m.String(), want) || !strings.Contains(p.String(), want) {
			t.Errorf("no %q", want)
		}
	}
	for _, bad := range []string{"approved", "compliant"} {
		if strings.Contains(strings.ToLower(m.String()), bad) {
			t.Errorf("it says %s", bad)
		}
	}
}
