package hazards_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
)

var pin = flag.Bool("pin", false, "store figures and verdicts of the bundled routes anew")

// pinnedFolder holds what this program gave of the bundled routes on one
// processor. It is our own output: it proves nothing of chemistry, but shows
// where another processor or compiler gives something else.
const pinnedFolder = "../testdata/pinned"

// pinned are the rows of a review: every figure with eight digits, every finding
// with its verdict.
func pinned(r *hazards.Review) []string {
	var out []string
	for i := range r.Figures {
		f := &r.Figures[i]
		out = append(out, fmt.Sprintf("%s,%.8g,%.8g,%.8g", strings.ReplaceAll(f.ID.String(), ",", ";"), f.Value.V, f.Low().V,
			f.High().V))
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		out = append(out, fmt.Sprintf("%s,%v", strings.ReplaceAll(f.ID().String(), ",", ";"), f.Verdict))
	}
	slices.Sort(out)
	return out
}

// The same ids and verdicts on every processor, and figures to a millionth.
func TestFiguresAreAsPinned(t *testing.T) {
	names := make([]string, 0, 9)
	routes := bundled(t)
	for name := range routes {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range long.Some(names, 3, 1) {
		c, err := route.NewCase(routes[name], demoSite(t), limit.Base())
		if err != nil {
			t.Fatal(err)
		}
		r, err := hazards.Make(c)
		if err != nil {
			t.Fatal(err)
		}
		file, got := filepath.Join(pinnedFolder, strings.TrimSuffix(name, ".yaml")+".csv"), pinned(&r)
		if *pin {
			if err := os.WriteFile(file, []byte(strings.Join(got, "\n")+"\n"), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		comparePinned(t, name, strings.Split(strings.TrimSpace(string(text)), "\n"), got)
	}
}

func comparePinned(t *testing.T, name string, want, got []string) {
	t.Helper()
	if len(want) != len(got) {
		t.Errorf("%s: %d figures and findings, pinned are %d", name, len(got), len(want))
		return
	}
	for i := range want {
		a, b := strings.Split(want[i], ","), strings.Split(got[i], ",")
		same := len(a) == len(b) && a[0] == b[0]
		for k := 1; same && k < len(a); k++ {
			same = a[k] == b[k] || closeTo(a[k], b[k])
		}
		if !same {
			t.Errorf("%s: %s, pinned is %s", name, got[i], want[i])
		}
	}
}

// closeTo compares two numbers to a millionth.
func closeTo(a, b string) bool {
	x, err := strconv.ParseFloat(a, 64)
	y, other := strconv.ParseFloat(b, 64)
	return err == nil && other == nil && math.Abs(x-y) <= 1e-6*math.Max(math.Abs(x), math.Abs(y))+1e-12
}
