package levers_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/proposal"
	"etchbound/hazards/route"
	"etchbound/scaling/levers"
	"etchbound/schemas/long"
)

// hasty is a gram tipped in within minutes, through a narrow vent, into a shut bottle.
const hasty = `# a comment at the head
route: etchbound/1
title: One gram in a hurry
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, purity: 98 wt%, impurities: none (test)}
measured:
  td24: 150 degC # of the liquor as it is
places:
  pot: # a small one
    kind: bottle
    material: PTFE
    lid_material: PTFE
    capacity: 150 mL # not much
    closure: vented
    vent: 2 mm
    cooling: {kind: water_bath, temperature: 20 degC, ua: 0.5 W/K}
  cans: {kind: bottle, material: HDPE, lid_material: HDPE, capacity: 2 L} # nobody says how it is shut
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 20 wt%, volume: 15 mL}], temperature: 20 degC}
  # here it comes
  - do: add
    in: pot
    what: [precursor]
    over: 5 min # too short
    temperature: 25 degC
  - {do: hold, in: pot, time: 24 h, temperature: 25 degC, attended: false}
  - {do: transfer, in: pot, into: cans}
`

func found(t *testing.T, text string) levers.Found {
	t.Helper()
	raw, err := os.ReadFile("../../testdata/routes/site-demo.yaml")
	if err != nil {
		t.Fatal(err)
	}
	site, problems, err := route.LoadSite("site.yaml", bytes.NewReader(raw))
	if err != nil || site == nil {
		t.Fatal(err, problems)
	}
	r, problems, err := route.Load("hasty.yaml", strings.NewReader(text))
	if err != nil || r == nil {
		t.Fatal(err, problems)
	}
	c, err := route.NewCase(r, site, limit.Base())
	if err != nil {
		t.Fatal(err)
	}
	f, err := levers.Search(proposal.File{Case: c, Text: []byte(text)}, func(int, int) {})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// exceeds counts what exceeds, and of that what does over its best estimate as the route
// is written and is no fact of the site, nor of waste that the file does not treat.
func exceeds(r *hazards.Review) (all, surely int) {
	for i := range r.Findings {
		f := &r.Findings[i]
		key := f.Figure.Place.Key()
		if f.Verdict != figure.Exceeds {
			continue
		}
		all++
		if f.Surely >= figure.BestEstimate && f.Figure.Case.Failure == "" && key != "delivery" && key != "yard" &&
			f.Figure.Place != figure.Waste {
			surely++
		}
	}
	return all, surely
}

func TestAHastyGramComesToExceedNothingOverItsBestEstimate(t *testing.T) {
	long.Only(t)
	f := found(t, hasty)
	again, problems, err := route.Load("changed.yaml", bytes.NewReader(f.Text))
	if err != nil || again == nil {
		t.Fatal(err, problems)
	}
	c, err := route.NewCase(again, f.Written.Case.Site, limit.Base())
	if err != nil {
		t.Fatal(err)
	}
	written, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	before, sure := exceeds(&f.Before)
	after, left := exceeds(&written)
	if sure == 0 || left != 0 || after >= before {
		t.Errorf("%d exceed, %d surely; then %d, %d surely\n%s", before, sure, after, left, f.Text)
	}
	if len(f.Bought) == 0 || f.Tried == 0 {
		t.Error("nothing was changed")
	}
	onlyLevers(t, &f)
}

// onlyLevers holds that nothing was touched but levers, and every other line stands.
func onlyLevers(t *testing.T, f *levers.Found) {
	t.Helper()
	for i := range f.Bought {
		for _, x := range f.Bought[i].Changes {
			for _, never := range []string{"data", "measured", "precursor", "rating", "attended", "lid_material"} {
				if strings.HasPrefix(x.Path, never) || strings.HasSuffix(x.Path, "."+never) {
					t.Errorf("%s was changed to %q", x.Path, x.To)
				}
			}
		}
	}
	has := map[string]bool{}
	for line := range strings.Lines(string(f.Text)) {
		has[line] = true
	}
	for line := range strings.Lines(hasty) {
		marked := false
		for other := range has {
			head, _, cut := strings.Cut(strings.TrimSpace(line), ":")
			marked = marked || cut && strings.Contains(other, head) && strings.Contains(other, "proposed, not tried")
		}
		gone := len(f.Dropped) > 0 && (strings.Contains(line, "td24") || strings.HasPrefix(line, "measured"))
		if !has[line] && !marked && !gone {
			t.Errorf("%q is gone", line)
		}
	}
	for _, comment := range []string{"# a comment at the head", "# here it comes", "# not much", "# too short"} {
		if !strings.Contains(string(f.Text), comment) {
			t.Errorf("%q is gone", comment)
		}
	}
}

func TestLeversAreNamedOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, n := range levers.Names() {
		if seen[n] {
			t.Error(n)
		}
		seen[n] = true
	}
	if len(seen) < 12 {
		t.Errorf("only %d", len(seen))
	}
}
