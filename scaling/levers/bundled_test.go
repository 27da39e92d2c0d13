package levers_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/proposal"
	"etchbound/hazards/route"
	"etchbound/scaling/levers"
	"etchbound/schemas/long"
	"etchbound/schemas/quantity"
)

var update = flag.Bool("update", false, "write what a search gives to testdata/routes/proposed")

const examples = "../../testdata/routes"

// beyondReach is what a proposed route still exceeds over its best estimate, by file and
// quantity, with why no value of the route reaches it. What stands in the room is told
// apart: delivery and yard are of the site's bottles.
var beyondReach = map[string]map[string]string{
	"tmaoh-half-gram.yaml": {"skin.lethal": "half a gram is opened with so much base that it kills on the skin"},
	"mo2tialc2-hf-2g.yaml": {"meeting.pair": "the solvent comes to a sediment that held acid, however often it is washed"},
	"lif-hcl-2g-read.yaml": {"neutralise.temperature_rise": "nobody knows how water mixes with what the drum holds"},
	"zinc-chloride-melt-1g.yaml": {
		"heat.addition_time.required": "acid that washes is tipped in, and a wash says no time for it",
		"gas.addition_time.hood":      "the same",
		"heat.adiabatic_rise":         "a dry melt has little in it that warms, and its heat is its etch",
	},
}

// source is a route as it is bundled, or as a starter writes it, with the name of the file
// that a search made of it.
type source struct {
	name string
	text []byte
}

func sources(t *testing.T) []source {
	t.Helper()
	var out []source
	names, err := filepath.Glob(filepath.Join(examples, "*.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range names {
		text, err := os.ReadFile(n)
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Contains(text, []byte("\nroute:")) {
			out = append(out, source{filepath.Base(n), text})
		}
	}
	for _, s := range route.Starters() {
		var b strings.Builder
		if err := route.WriteStarter(&b, s.Name, "Ti3AlC2", quantity.Of(2, "g", quantity.Mass)); err != nil {
			t.Fatal(err)
		}
		out = append(out, source{"starter-" + s.Name + "-2g.yaml", []byte(b.String())})
	}
	if len(out) < 12 {
		t.Fatalf("only %d", len(out))
	}
	return out
}

// inPractice is a route in the practice workshop, with its house rules.
func inPractice(t *testing.T, name string, text []byte) route.Case {
	t.Helper()
	raw := map[string][]byte{}
	for _, n := range []string{"site-demo.yaml", "limits-demo.yaml"} {
		b, err := os.ReadFile(filepath.Join(examples, n))
		if err != nil {
			t.Fatal(err)
		}
		raw[n] = b
	}
	site, p1, err := route.LoadSite("site-demo.yaml", bytes.NewReader(raw["site-demo.yaml"]))
	if err != nil || site == nil {
		t.Fatal(err, p1)
	}
	limits, p2, err := limit.Load("limits-demo.yaml", bytes.NewReader(raw["limits-demo.yaml"]), figure.Units{})
	if err != nil || limits == nil {
		t.Fatal(err, p2)
	}
	r, p3, err := route.Load(name, bytes.NewReader(text))
	if err != nil || r == nil {
		t.Fatal(name, err, p3)
	}
	c, err := route.NewCase(r, site, limit.Base().With(limits))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// A route done well exceeds nothing over its best estimate, beside what no value of it
// reaches, which is listed, and nothing listed is out of date.
func TestProposedRoutesExceedNothingOverTheirBestEstimate(t *testing.T) {
	long.Only(t)
	for _, s := range long.Some(sources(t), 1, 1) {
		text, err := os.ReadFile(filepath.Join(examples, "proposed", s.name))
		if err != nil {
			t.Fatal(err)
		}
		c := inPractice(t, s.name, text)
		r, err := hazards.Make(c)
		if err != nil {
			t.Fatal(err)
		}
		met := map[string]bool{}
		for i := range r.Findings {
			f := &r.Findings[i]
			key := f.Figure.Place.Key()
			if f.Verdict != figure.Exceeds || f.Surely < figure.BestEstimate || f.Figure.Case.Failure != "" ||
				key == "delivery" || key == "yard" {
				continue
			}
			met[f.Figure.Quantity] = true
			if beyondReach[s.name][f.Figure.Quantity] == "" {
				t.Errorf("%s: %s exceeds (%s)", s.name, f.ID(), f.Surely)
			}
		}
		for q := range beyondReach[s.name] {
			if !met[q] {
				t.Errorf("%s: %s no longer exceeds: leave it out", s.name, q)
			}
		}
	}
}

// What lies beside the examples is what a search gives of them: of every second one, and
// of all with -update.
func TestProposedRoutesAreWhatASearchGives(t *testing.T) {
	if !*update {
		long.Only(t)
	}
	for i, s := range sources(t) {
		if i%2 > 0 && !*update {
			continue
		}
		f, err := levers.Search(proposal.File{Case: inPractice(t, s.name, s.text), Text: s.text}, func(int, int) {})
		if err != nil {
			t.Fatal(s.name, err)
		}
		name := filepath.Join(examples, "proposed", s.name)
		if *update {
			if err := os.WriteFile(name, f.Text, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if stands, err := os.ReadFile(name); err != nil || !bytes.Equal(stands, f.Text) {
			t.Errorf("%s is not what a search gives (%v): run this test with -update", s.name, err)
		}
	}
}
