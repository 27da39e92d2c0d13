package selection_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
	"etchbound/reports/selection"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

const folder = "../../testdata/routes/"

// reviewOf is the review of a bundled route at the bundled site, under house rules.
func reviewOf(t *testing.T, name string, house bool) hazards.Review {
	t.Helper()
	r, _, err := route.Load(name, bytes.NewReader(read(t, name+".yaml")))
	if err != nil {
		t.Fatal(err)
	}
	site, _, err := route.LoadSite("site", bytes.NewReader(read(t, "site-demo.yaml")))
	if err != nil {
		t.Fatal(err)
	}
	var local *limit.Set
	if house {
		if local, _, err = limit.Load("limits", bytes.NewReader(read(t, "limits-demo.yaml")), figure.Units{}); err != nil {
			t.Fatal(err)
		}
	}
	c, err := route.NewCase(r, site, local)
	if err != nil {
		t.Fatal(err)
	}
	out, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func read(t *testing.T, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(folder, name))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func line(p selection.Page, key string) selection.Line {
	i := slices.IndexFunc(p.Questions, func(l selection.Line) bool { return l.Key == key })
	return p.Questions[i]
}

// A limit of the house that is stricter than boiling takes its place beside it and
// never before it. What boils at the dangerous end of its range alone can boil, beside a
// best estimate that does not.
func TestHouseRuleHidesNoBoiling(t *testing.T) {
	long.NotShort(t)
	says := map[string]string{"hf-50-10g": "Boils as written (step 3); ",
		"reactor-50g": "Can boil as written (step 3): 29"}
	for _, name := range long.Some([]string{"hf-50-10g", "reactor-50g"}, 1, 1) {
		r := reviewOf(t, name, true)
		p := selection.Read(draft.New(&r, draft.Options{}), nil)
		hot := line(p, "cooling")
		if !strings.HasPrefix(hot.Answer, says[name]) || !strings.HasPrefix(hot.Against, "boiling at") ||
			!strings.Contains(hot.Against, "local limit") || hot.Verdict != figure.Exceeds {
			t.Errorf("%s: %+v", name, hot)
		}
		if !slices.ContainsFunc(p.Stops, func(s selection.Stop) bool { return s.ID == "boiling_as_run" }) {
			t.Errorf("%s: no hold point that it boils as written", name)
		}
		failing := 0
		for _, l := range p.Others {
			if l.Key == "failures" {
				failing++
			}
		}
		if failing != 1 || len(p.Others) > 6 {
			t.Errorf("%s: %d lines of failures among %d", name, failing, len(p.Others))
		}
	}
}

// Nothing is cut, no bound is said to be a chance, and hydrofluoric acid is named.
func TestPageSaysItWhole(t *testing.T) {
	long.NotShort(t)
	r := reviewOf(t, "demo-lif-hcl-2g", true)
	p := selection.Read(draft.New(&r, draft.Options{}), nil)
	all := p.Asked + p.Within + p.Left + strings.Join(p.Banner, " ")
	for _, l := range append(p.Questions, p.Others...) {
		all += l.Asks + l.Answer + l.Against + l.Surely
		if l.Surely == "bound" && strings.Contains(l.Answer, "may exceed") {
			t.Errorf("%s is of a bound: %s", l.Key, l.Answer)
		}
	}
	if strings.Contains(all, "…") {
		t.Error("something is cut")
	}
	for _, want := range []string{"hydrofluoric acid made of lithium fluoride and hydrochloric acid", "24 h", "2.47 g",
		"mol/L", "wt%"} {
		if !strings.Contains(all, want) {
			t.Errorf("nothing says %q", want)
		}
	}
	n := r.Doubts
	if n.Memory*n.Assumed*n.Estimated == 0 {
		t.Errorf("nothing of a kind is counted: %+v", n)
	}
	if want := fmt.Sprintf("from memory: %d; assumed: %d; estimated: %d.", n.Memory, n.Assumed,
		n.Estimated); !strings.HasSuffix(p.Left, want) {
		t.Errorf("%q does not end with %q", p.Left, want)
	}
	if len(p.Questions) != 11 || line(p, "stored").Answer == "" {
		t.Errorf("%d questions", len(p.Questions))
	}
}

// Every hold point the calculation can raise has its rank, and every rank a hold point.
func TestHoldPointsAreRanked(t *testing.T) {
	text, err := os.ReadFile("../../hazards/verdict/holds.go")
	if err != nil {
		t.Fatal(err)
	}
	table, err := os.ReadFile("stops.csv")
	if err != nil {
		t.Fatal(err)
	}
	ids := regexp.MustCompile(`(?m)^\t"([a-z0-9_]+)": +true,`).FindAllSubmatch(text, -1)
	if len(ids) < 20 {
		t.Fatalf("only %d hold points", len(ids))
	}
	for _, id := range ids {
		if !strings.Contains(string(table), "\n"+string(id[1])+",") {
			t.Errorf("hold point %s has no rank", id[1])
		}
	}
}

// Every sentence of page 1 is said, and what is said has its sentence.
func TestSentencesOfPageOne(t *testing.T) {
	var code strings.Builder
	for _, pattern := range []string{"*.go", "../firstpage/*.go"} {
		files, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			b, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			code.Write(b)
		}
	}
	made := regexp.MustCompile(`^(closure|coolant|gap|each|settles|stop\.with|left|short|counts|unknown|in_air)\.`)
	for _, key := range words.FirstPageKeys() {
		if !made.MatchString(key) && !strings.Contains(code.String(), `"`+key+`"`) {
			t.Errorf("sentence %s is never said", key)
		}
	}
}

// What a route without a layered phase handles is named, a failure count of none is
// no line to begin with, and waste without fluorine is not said to bind fluoride.
func TestWhatARouteLacksIsSaidInWords(t *testing.T) {
	long.NotShort(t)
	burst := reviewOf(t, "../bursts/acid-onto-residue", false)
	p := selection.Read(draft.New(&burst, draft.Options{}), nil)
	if want := "Asked: to handle ethanol, potassium permanganate"; !strings.HasPrefix(p.Asked, want) {
		t.Errorf("%q does not begin with %q", p.Asked, want)
	}
	for _, g := range p.Gaps {
		if strings.Contains(g.What, "the data do not hold") {
			t.Errorf("a gap that names nothing: %+v", g)
		}
	}
	melt := reviewOf(t, "zinc-chloride-melt-1g", false)
	p = selection.Read(draft.New(&melt, draft.Options{}), nil)
	if a := line(p, "neutralise").Answer; !strings.Contains(a, "binds all acid, ") {
		t.Errorf("what binds the acid of a melt: %s", a)
	}
	for _, l := range p.Others {
		if strings.HasPrefix(l.Answer, "0 ") {
			t.Errorf("%s: %s", l.Key, l.Answer)
		}
	}
}
