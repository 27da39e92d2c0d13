package selection_test

import (
	"regexp"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/draft"
	"etchbound/reports/selection"
	"etchbound/schemas/long"
)

// What goes in without a time goes in all at once: that is no answer that nothing is
// added, and where nothing is worked out of it the verdict is unknown.
func TestWhatTakesNoTimeGoesInAtOnce(t *testing.T) {
	r := reviewOf(t, "zinc-chloride-melt-1g", false)
	l := line(selection.Read(draft.New(&r, draft.Options{}), nil), "all_at_once")
	if l.State != selection.Judged || l.Verdict != figure.UnknownVerdict ||
		!strings.Contains(l.Answer, "all at once as written (step 1)") {
		t.Errorf("%+v", l)
	}
	r.Findings = nil
	p := selection.Read(draft.New(&r, draft.Options{}), nil)
	for _, key := range []string{"all_at_once", "addition"} {
		if l := line(p, key); l.State != selection.Judged || l.Verdict != figure.UnknownVerdict {
			t.Errorf("with nothing worked out: %+v", l)
		}
	}
}

// Of hydrogen that comes all at once page 1 says how much, and no rate that a law gives
// at a temperature the liquor never has.
func TestHydrogenAtOnceIsBounded(t *testing.T) {
	r := reviewOf(t, "hf-50-10g", false)
	l := line(selection.Read(draft.New(&r, draft.Options{}), nil), "all_at_once")
	if strings.Contains(l.Answer, "/min") || !strings.Contains(l.Answer, "all hydrogen, up to 5.09 L, within the time") ||
		l.Verdict != figure.Exceeds {
		t.Errorf("%+v", l)
	}
}

// No id of a datum or of a figure is a word of page 1.
func TestNoIDOnPageOne(t *testing.T) {
	id := regexp.MustCompile(`\b[a-z_]{2,}\.[a-z_]{2,}`)
	for _, name := range long.Some([]string{"hf-50-10g", "zinc-chloride-melt-1g", "demo-lif-hcl-2g", "bifluoride-1g",
		"hf-hcl-1g", "lif-hcl-2g-read", "mo2tialc2-hf-2g", "reactor-50g", "tmaoh-half-gram"}, 2, 1) {
		r := reviewOf(t, name, true)
		p := selection.Read(draft.New(&r, draft.Options{}), nil)
		said := append([]string{p.Asked, p.Within, p.Left}, append(p.Banner, selection.Texts(p.Stops)...)...)
		for _, l := range append(p.Questions, p.Others...) {
			said = append(said, l.Asks, l.Answer, l.Against, l.Surely)
		}
		for _, g := range p.Gaps {
			said = append(said, g.What, g.Where, g.Settles)
		}
		for _, s := range said {
			if found := id.FindString(s); found != "" {
				t.Errorf("%s: %s in %q", name, found, s)
			}
		}
	}
}

// Vapour that nobody works out is not said to be none.
func TestWhatNobodyWorksOutIsNotBreathedAsNothing(t *testing.T) {
	r := reviewOf(t, "../bursts/nitric-after-methanol", false)
	l := line(selection.Read(draft.New(&r, draft.Options{}), nil), "breathe")
	if l.Verdict != figure.UnknownVerdict || !strings.Contains(l.Answer, "methanol, nitric acid") {
		t.Errorf("%+v", l)
	}
}
