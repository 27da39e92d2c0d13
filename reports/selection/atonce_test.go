package selection_test

import (
	"regexp"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
	"etchbound/reports/selection"
	"etchbound/schemas/long"
)

// What goes in without a time goes in all at once: that is no answer that nothing is
// added, and where nothing is worked out of it the verdict is unknown.
func TestWhatTakesNoTimeGoesInAtOnce(t *testing.T) {
	long.NotShort(t)
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
	long.NotShort(t)
	r := reviewOf(t, "hf-50-10g", false)
	l := line(selection.Read(draft.New(&r, draft.Options{}), nil), "all_at_once")
	if strings.Contains(l.Answer, "/min") || !strings.Contains(l.Answer, "all hydrogen, up to 5.09 L, within the time") ||
		l.Verdict != figure.Exceeds {
		t.Errorf("%+v", l)
	}
}

// No id of a datum or of a figure is a word of page 1.
func TestNoIDOnPageOne(t *testing.T) {
	long.Only(t)
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
	if l.Verdict != figure.UnknownVerdict || !strings.Contains(l.Answer, "not known for nitric acid") {
		t.Errorf("%+v", l)
	}
}

const inAShutBottle = `route: etchbound/1
title: check
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 20 g, impurities: none (certificate)}
places:
  pot: {kind: bottle, material: PTFE, lid_material: PTFE, capacity: 200 mL, closure: closed}
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 30 wt%, volume: 100 mL}],
     temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 20 min, temperature: 25 degC}
  - {do: hold, in: pot, time: 12 h, temperature: 25 degC}
`

// In a shut container temperature and pressure rise together: nothing boils there at the
// pressure of the air (common practice).
func TestNothingIsSaidToBoilInAShutContainer(t *testing.T) {
	long.NotShort(t)
	r := written(t, inAShutBottle, "")
	p := selection.Read(draft.New(&r, draft.Options{}), nil)
	for _, l := range append(p.Questions, p.Others...) {
		if strings.Contains(l.Answer, "oils") || strings.HasPrefix(l.Answer, "boil") ||
			strings.HasPrefix(l.Against, "boiling") && !strings.Contains(l.Against, "if it were open") {
			t.Errorf("%s: %s | %s", l.Asks, l.Answer, l.Against)
		}
	}
	if l := line(p, "cooling"); !strings.Contains(l.Answer, "its pressure rises with it") || l.Verdict != figure.Exceeds {
		t.Errorf("%+v", l)
	}
}

const someAcid = `route: etchbound/1
title: check
basis: {status: invented}
places:
  pot: {kind: beaker, material: glass, capacity: 1 L, closure: open}
  other: {kind: beaker, material: glass, capacity: 1 L, closure: open}
steps:
  - {do: charge, in: pot, what: [{substance: hydrochloric acid, strength: 1 wt%, volume: 100 mL}], temperature: 20 degC,
     time: 1 min, attended: true}
  - {do: charge, in: other, what: [{substance: nitric acid, strength: 1 wt%, volume: 100 mL}], temperature: 20 degC,
     time: 1 min, attended: true}
`

const someHood = `site: etchbound/1
title: check
jurisdiction: eu
hood: {flow: 800 m3/h, face_velocity: 0.5 m/s, tested: "2026-05-01", containment: 0.1 %}
room: {volume: 100 m3, flow: 600 m3/h}
`

// What nobody knows of the air is within nothing, though another gas is within its limits.
func TestWhatIsBreathedUnknownIsNotWithin(t *testing.T) {
	r := written(t, someAcid, someHood)
	l := line(selection.Read(draft.New(&r, draft.Options{}), nil), "breathe")
	if !strings.Contains(l.Answer, "up to") || !strings.Contains(l.Answer, "not known for nitric acid") ||
		l.Verdict != figure.UnknownVerdict {
		t.Errorf("%+v", l)
	}
}

// written is the review of a route, at a site where there is one.
func written(t *testing.T, yaml, at string) hazards.Review {
	t.Helper()
	return reviewed(t, yaml, at, nil)
}

// writtenHeld is the review of a route under limits of a house.
func writtenHeld(t *testing.T, yaml, limits string) hazards.Review {
	t.Helper()
	own, problems, err := limit.Load("l.yaml", strings.NewReader(limits), figure.Units{})
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return reviewed(t, yaml, "", limit.Base().With(own))
}

func reviewed(t *testing.T, yaml, at string, own *limit.Set) hazards.Review {
	t.Helper()
	r, problems, err := route.Load("r.yaml", strings.NewReader(yaml))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	var s *route.Site
	if at != "" {
		if s, problems, err = route.LoadSite("s.yaml", strings.NewReader(at)); err != nil || len(problems) > 0 {
			t.Fatal(err, problems)
		}
	}
	c, err := route.NewCase(r, s, own)
	if err != nil {
		t.Fatal(err)
	}
	v, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
