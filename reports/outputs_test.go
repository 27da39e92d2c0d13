package reports

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/proposal"
	"etchbound/hazards/route"
	"etchbound/reports/book"
	"etchbound/reports/change"
	"etchbound/reports/comparison"
	"etchbound/reports/document"
	"etchbound/reports/failures"
	"etchbound/reports/fixture"
	"etchbound/reports/growth"
	"etchbound/reports/holdings"
	"etchbound/reports/proposed"
	"etchbound/reports/record"
	"etchbound/scaling"
	"etchbound/scaling/campaign"
	"etchbound/scaling/keeping"
	"etchbound/scaling/levers"
	"etchbound/scaling/measuring"
	"etchbound/scaling/pacing"
	"etchbound/scaling/scrubbing"
	"etchbound/schemas/long"
	"etchbound/schemas/quantity"
)

// madeOutput is one real output of a command: the name of its schema, or what
// it is written as where people read it.
type madeOutput struct {
	kind, from string
	text       []byte
}

// madeOutputs are what the commands write of every bundled route, in every
// format, with and without what the site adds; of some outside of the long form.
var madeOutputs = sync.OnceValues(func() ([]madeOutput, error) {
	var m maker
	names := []string{"demo-lif-hcl-2g.yaml", "bifluoride-1g.yaml", "hf-50-10g.yaml", "hf-hcl-1g.yaml",
		"lif-hcl-2g-read.yaml", "mo2tialc2-hf-2g.yaml", "precursor-1g.yaml", "reactor-50g.yaml", "tmaoh-half-gram.yaml",
		"zinc-chloride-melt-1g.yaml"}
	cases := m.cases(names...)
	var reviews []hazards.Review
	for _, c := range long.Some(cases, 4, 2) {
		reviews = append(reviews, m.review(c))
	}
	reviews = append(reviews, fixture.Review(), emptyReview())
	for i := range reviews {
		m.ofReview(&reviews[i], cmp.Or(reviews[i].Case.Route.Name, "nothing stated"))
	}
	if m.err == nil {
		m.ofSeveral(cases)
	}
	return m.out, m.err
})

type maker struct {
	out []madeOutput
	err error
}

func (m *maker) add(kind, from string, write func(io.Writer) error) {
	if m.err != nil {
		return
	}
	var b bytes.Buffer
	if m.err = write(&b); m.err != nil {
		m.err = fmt.Errorf("%s of %s: %w", kind, from, m.err)
	}
	m.out = append(m.out, madeOutput{kind, from, b.Bytes()})
}

// cases loads bundled routes, every second one with the site and local limits.
func (m *maker) cases(names ...string) []route.Case {
	out := make([]route.Case, len(names))
	site, _, err := route.LoadSite("site.yaml", m.open("site-demo.yaml"))
	m.keep(err)
	local, _, err := limit.Load("limits.yaml", m.open("limits-demo.yaml"), figure.Units{})
	m.keep(err)
	for i, n := range names {
		r, problems, err := route.Load(n, m.open(n))
		m.keep(err)
		if r == nil {
			m.keep(fmt.Errorf("%s: %v", n, problems))
			return nil
		}
		at, limits := site, limit.Base().With(local)
		if i%2 == 1 {
			at, limits = nil, nil
		}
		out[i], err = route.NewCase(r, at, limits)
		m.keep(err)
	}
	return out
}

func (m *maker) open(name string) io.Reader {
	b, err := os.ReadFile(filepath.Join("..", "testdata", "routes", name))
	m.keep(err)
	return bytes.NewReader(b)
}

func (m *maker) keep(err error) {
	if m.err == nil {
		m.err = err
	}
}

func (m *maker) review(c route.Case) hazards.Review {
	if m.err != nil {
		return emptyReview()
	}
	r, err := hazards.Make(c)
	m.keep(err)
	return r
}

// ofReview is what review, upset and explain write.
func (m *maker) ofReview(r *hazards.Review, from string) {
	o, failed := fixtureOptions, failures.Only(*r)
	m.add("review", from, func(w io.Writer) error { return record.JSON(w, *r, o) })
	m.add("markdown", from, func(w io.Writer) error { return document.Markdown(w, Build(*r, o)) })
	m.add("html", from, func(w io.Writer) error { return document.HTML(w, Build(*r, o)) })
	m.add("upset", from, func(w io.Writer) error { return record.JSON(w, failed, o) })
	m.add("upset.csv", from, func(w io.Writer) error { return record.CSV(w, failed) })
	m.add("upset.csv", from+", all figures", func(w io.Writer) error { return record.CSV(w, *r) })
	m.add("markdown", from+", upset", func(w io.Writer) error { return document.Markdown(w, BuildUpset(*r, o)) })
	m.add("html", from+", upset", func(w io.Writer) error { return document.HTML(w, BuildUpset(*r, o)) })
	for i := 0; i < len(r.Figures); i += 9 { // another test explains all
		id := r.Figures[i].ID.String()
		m.add("explain", from+", "+id, func(w io.Writer) error { return book.Explain(w, *r, id) })
	}
}

// ofSeveral is what scale, change, compare and stock write.
func (m *maker) ofSeveral(cases []route.Case) {
	o := fixtureOptions
	grams := func(v float64) quantity.Value { return quantity.Of(v, "g", quantity.Mass) }
	for _, c := range []route.Case{cases[5], cases[8]} {
		g, err := scaling.Grow(c, grams(1.5), grams(4), scaling.Follow{Vessel: true})
		m.keep(err)
		if m.err != nil {
			return
		}
		split, err := g.Split(3)
		m.keep(err)
		m.add("scale", c.Route.Name, func(w io.Writer) error { return growth.JSON(w, g, split, o) })
		m.add("scale.csv", c.Route.Name, func(w io.Writer) error { return growth.CSV(w, g) })
		m.add("markdown", "scale", func(w io.Writer) error { return document.Markdown(w, growth.Build(g, split, o)) })
		m.add("html", "scale", func(w io.Writer) error { return document.HTML(w, growth.Build(g, split, o)) })
	}
	for _, two := range [][2]int{{5, 8}, {8, 7}} {
		x, err := scaling.TriggersOf(cases[two[0]].Site).Compare(cases[two[0]], cases[two[1]])
		m.keep(err)
		m.add("change", fmt.Sprint(two), func(w io.Writer) error { return change.JSON(w, x, o) })
		m.add("change.csv", fmt.Sprint(two), func(w io.Writer) error { return change.CSV(w, x) })
		m.add("markdown", "change", func(w io.Writer) error { return document.Markdown(w, change.Build(x, o)) })
		m.add("html", "change", func(w io.Writer) error { return document.HTML(w, change.Build(x, o)) })
	}
	m.ofProposal("mo2tialc2-hf-2g.yaml")
	m.ofTwofold("demo-lif-hcl-2g.yaml", "mo2tialc2-hf-2g.yaml")
	m.ofCampaign("mo2tialc2-hf-2g.yaml")
	x, err := scaling.Compare(cases[5:])
	m.keep(err)
	m.add("compare", "some", func(w io.Writer) error { return comparison.JSON(w, x, o) })
	m.add("compare.csv", "some", func(w io.Writer) error { return comparison.CSV(w, x) })
	m.add("markdown", "compare", func(w io.Writer) error { return document.Markdown(w, comparison.Build(x, o)) })
	m.add("html", "compare", func(w io.Writer) error { return document.HTML(w, comparison.Build(x, o)) })
	for _, some := range [][]route.Case{cases, cases[1:2]} {
		h, err := scaling.Stock(some, true, 2)
		m.keep(err)
		m.add("stock", "some", func(w io.Writer) error { return holdings.JSON(w, h, o) })
		m.add("stock.csv", "some", func(w io.Writer) error { return holdings.CSV(w, h) })
		m.add("markdown", "stock", func(w io.Writer) error { return document.Markdown(w, holdings.Build(h, o)) })
		m.add("html", "stock", func(w io.Writer) error { return document.HTML(w, holdings.Build(h, o)) })
	}
}

// ofCampaign is what campaign writes.
func (m *maker) ofCampaign(name string) {
	c, o := m.cases(name), fixtureOptions
	if m.err != nil {
		return
	}
	c[0].Brief = true
	r, err := hazards.Make(c[0])
	m.keep(err)
	x, err := campaign.Of(&r, campaign.Asked{Batches: 5, Hours: 40, Weeks: 46, Kept: 4})
	m.keep(err)
	m.add("campaign", name, func(w io.Writer) error { return CampaignJSON(w, &x, o) })
	m.add("markdown", "campaign", func(w io.Writer) error { return document.Markdown(w, BuildCampaign(&x, 2, o)) })
	m.add("html", "campaign", func(w io.Writer) error { return document.HTML(w, BuildCampaign(&x, 2, o)) })
}

// ofProposal is what propose writes.
func (m *maker) ofProposal(name string) {
	c, o := m.cases(name), fixtureOptions
	if m.err != nil {
		return
	}
	text, err := io.ReadAll(m.open(name))
	m.keep(err)
	f, err := levers.Search(proposal.File{Case: c[0], Text: text}, func(int, int) {})
	m.keep(err)
	m.add("propose", name, func(w io.Writer) error { return proposed.JSON(w, &f, o) })
	m.add("markdown", "propose", func(w io.Writer) error { return document.Markdown(w, proposed.Build(&f, o)) })
	m.add("html", "propose", func(w io.Writer) error { return document.HTML(w, proposed.Build(&f, o)) })
}

// ofTwofold is what pace, offgas, keep and measure write.
func (m *maker) ofTwofold(names ...string) {
	o := fixtureOptions
	for _, c := range m.cases(names...) {
		r, err := hazards.Make(c)
		m.keep(err)
		if m.err != nil {
			return
		}
		m.add("pace", c.Route.Name, func(w io.Writer) error { return PaceJSON(w, &r, pacing.Of(&r, math.NaN()), o) })
		m.add("offgas", c.Route.Name, func(w io.Writer) error {
			all, err := scrubbing.Of(&r)
			if err != nil {
				return err
			}
			return OffGasJSON(w, &r, all, scrubbing.OutOf(&r), o)
		})
		m.add("keep", c.Route.Name, func(w io.Writer) error {
			ways, err := keeping.Of(r.Case)
			if err != nil {
				return err
			}
			keeping.Trace(ways)
			return KeepJSON(w, &r, ways, o)
		})
		m.add("measure", c.Route.Name, func(w io.Writer) error { return MeasureJSON(w, &r, measuring.Of(&r), o) })
	}
}

// schemaNamed is a printed schema as plain maps.
func schemaNamed(t *testing.T, name string) map[string]any {
	t.Helper()
	text, there, err := Schema(name)
	if err != nil || !there {
		t.Fatalf("no schema %s: %v", name, err)
	}
	var s map[string]any
	if err := json.Unmarshal(text, &s); err != nil {
		t.Fatal(err)
	}
	return s
}

// Whatever a command writes for programs is what its schema says; each schema
// is met by something real.
func TestOutputsMeetTheirSchemas(t *testing.T) {
	long.Only(t)
	made, err := madeOutputs()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range Outputs() {
		s, n := schemaNamed(t, name), 0
		for _, o := range made {
			if o.kind != name {
				continue
			}
			n++
			for _, fault := range faultsOf(s, o) {
				t.Errorf("%s of %s: %s", name, o.from, fault)
			}
		}
		if n == 0 {
			t.Errorf("nothing writes %s", name)
		}
	}
}

func faultsOf(s map[string]any, o madeOutput) []string {
	if !strings.HasSuffix(o.kind, ".csv") {
		var v any
		if err := json.Unmarshal(o.text, &v); err != nil {
			return []string{err.Error()}
		}
		return schemaFaults(s, v, "")
	}
	rows, err := csv.NewReader(bytes.NewReader(o.text)).ReadAll()
	if err != nil {
		return []string{err.Error()}
	}
	var out []string
	for i, name := range s["required"].([]any) {
		if i >= len(rows[0]) || rows[0][i] != name {
			return []string{fmt.Sprintf("the head is %q, want %v in place %d", rows[0], name, i)}
		}
	}
	for n, row := range rows[1:] {
		v := map[string]any{}
		for i, name := range rows[0] {
			v[name] = cellAs(s["properties"].(map[string]any)[name].(map[string]any)["type"], row[i])
		}
		out = append(out, schemaFaults(s, v, strconv.Itoa(n+2))...)
	}
	return out
}

// cellAs reads a cell as the first type of a column that it fits.
func cellAs(kind any, cell string) any {
	if cell == "" && isType(kind, nil) {
		return nil
	}
	if v, err := strconv.ParseFloat(cell, 64); err == nil && isType(kind, v) {
		return v
	}
	if v, err := strconv.ParseBool(cell); err == nil && isType(kind, v) {
		return v
	}
	return cell
}

// The check has to be able to fail.
func TestSchemaRefuses(t *testing.T) {
	s := schemaNamed(t, "review")
	for _, change := range [][2]string{
		{strconv.Quote(record.Format), `"other"`}, {`"verdict": "near"`, `"verdict": "fine"`},
		{`"quantity": "heat.mtsr"`, `"quantity": "heat.nonsense"`}, {`"line": 14`, `"line": "14"`},
		{`"of": ""`, `"off": ""`}, {`"digest": "0123456789abcdef`, `"digest": "g123456789abcdef`},
	} {
		text := string(jsonOf(t, fixture.Review()))
		if !strings.Contains(text, change[0]) {
			t.Fatalf("nothing to change for %s", change[0])
		}
		text = strings.Replace(text, change[0], change[1], 1)
		if len(faultsOf(s, madeOutput{kind: "review", text: []byte(text)})) == 0 {
			t.Errorf("%s passes", change[1])
		}
	}
	rows := schemaNamed(t, "scale.csv")
	for _, text := range []string{
		strings.Join(growth.Columns, ",") + "\n1,g,fine,true,false,a,b,c,1,g,d,e\n",
		strings.Join(growth.Columns, ",") + "\none,g,near,true,false,a,b,c,1,g,d,e\n",
		strings.Join(growth.Columns[1:], ",") + "\n",
	} {
		if len(faultsOf(rows, madeOutput{kind: "scale.csv", text: []byte(text)})) == 0 {
			t.Errorf("%q passes", text)
		}
	}
}

// Every key that is written has a row of words, and every row is of a key.
func TestKeysHaveTheirWords(t *testing.T) {
	general := map[string]bool{}
	for i := range outputs {
		o := &outputs[i]
		words, asked := record.WordsOf(o), map[*record.KeyWord]bool{}
		for _, path := range schemaPaths(o.Schema(), "") {
			if words.Of(path) == nil && !strings.HasSuffix(path, "[]") && !strings.HasSuffix(path, "{}") {
				t.Errorf("%s: nothing is said of the key %s", o.Name, path)
			}
			asked[words.Of(path)] = true
		}
		for path, w := range words {
			if w.Output == record.EveryDocument {
				general[path] = general[path] || asked[w]
			} else if !asked[w] {
				t.Errorf("%s: keys.csv speaks of %s, which is not written", o.Name, path)
			}
		}
	}
	for path, asked := range general {
		if !asked {
			t.Errorf("keys.csv speaks of %s, which nothing writes", path)
		}
	}
}

// schemaPaths are the paths of all keys of a schema, as keys.csv writes them.
func schemaPaths(s record.Object, path string) []string {
	var out []string
	if p, ok := s["properties"].(record.Object); ok {
		for k, sub := range p {
			at := strings.TrimPrefix(path+"."+k, ".")
			out = append(append(out, at), schemaPaths(sub.(record.Object), at)...)
		}
	}
	if sub, ok := s["items"].(record.Object); ok {
		out = append(append(out, path+"[]"), schemaPaths(sub, path+"[]")...)
	}
	if sub, ok := s["additionalProperties"].(record.Object); ok {
		out = append(append(out, path+"{}"), schemaPaths(sub, path+"{}")...)
	}
	return out
}
