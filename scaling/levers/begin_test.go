package levers

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards"
	cases "etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/proposal"
	"etchbound/hazards/route"
	"etchbound/hazards/verdict"
)

// shut is a gram tipped into a shut bottle, whose waste is neutralised with a dry base.
const shut = `route: etchbound/1
title: One gram in a shut bottle
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, purity: 98 wt%, impurities: none (test)}
places:
  jar: {kind: bottle, material: PTFE, lid_material: PTFE, capacity: 100 mL, closure: closed}
  can: {kind: drum, material: HDPE, lid_material: HDPE, capacity: 2 L, closure: vented, batches: 3, held_before: new}
steps:
  - {do: charge, in: jar, what: [{substance: hydrofluoric acid, strength: 30 wt%, volume: 20 mL}], temperature: 20 degC}
  - {do: add, in: jar, what: [precursor], over: 2 min, temperature: 25 degC, attended: true}
  - {do: hold, in: jar, time: 24 h, temperature: 25 degC, attended: false}
  - {do: wash, in: jar, into: can, what: [{substance: water, volume: 60 mL}], cycles: 5}
  - {do: neutralise, in: can, what: [{substance: sodium hydroxide, mass: 30 g}], over: 10 min}
`

func searchOf(t *testing.T, text string) *search {
	t.Helper()
	c := cases.CaseOf(t, text)
	f := proposal.File{Case: c, Text: []byte(text)}
	s := &search{written: f, choices: choices(c.Route), progress: func(int, int) {}, kept: map[int]bool{}}
	for range s.choices {
		s.chosen = append(s.chosen, -1)
	}
	var err error
	if s.now, err = stand(f, nil, len(c.Route.Steps)); err != nil {
		t.Fatal(err)
	}
	return s
}

// An etch gives gas, so that its vessel has a way out for it (common practice): a shut one is
// opened before anything is searched, though what would be breathed if something failed is told
// only of one that is not shut, and a bore for it is among what is tried.
func TestAShutEtchIsOpenedFirst(t *testing.T) {
	s := searchOf(t, shut)
	was := s.now.failed
	if !s.begin() || s.begin() {
		t.Fatal("the jar is not opened, or twice")
	}
	file, err := s.written.With(s.changes(s.chosen)...)
	if err != nil || !strings.Contains(string(file.Text), "closure: vented} # proposed, not tried; closure was closed") {
		t.Fatal(err, string(file.Text))
	}
	for i := range s.now.sure {
		if x := &s.now.sure[i]; x.Figure.Quantity == "gas.closed.pressure" && x.Figure.Place == figure.At("jar") {
			t.Errorf("%s still exceeds", x.ID())
		}
	}
	if s.now.failed < was {
		t.Errorf("%d failures, %d before it was opened", s.now.failed, was)
	}
	bore := false
	for i := range s.choices {
		bore = bore || s.choices[i].name == "vent" && s.choices[i].levels[0][0].Path == "places.jar.vent"
	}
	if !bore {
		t.Error("no bore is tried")
	}
}

// Base goes into water and not water on to base (common practice): cold water comes before a dry
// base, and more of what is listed first, never behind the base, where it is not counted.
func TestWaterComesBeforeTheBase(t *testing.T) {
	s := searchOf(t, shut)
	file, seen := "", false
	for i := range s.choices {
		if c := &s.choices[i]; c.name == "slurry_water" {
			f, err := s.written.With(s.changes(s.with(pick{i, len(c.levels) - 1}))...)
			if err != nil {
				t.Fatal(err)
			}
			file, seen = string(f.Text), true
			now, err := stand(f, nil, len(s.written.Case.Route.Steps))
			if err != nil || rises(&now) >= rises(&s.now) {
				t.Errorf("%v: %d rise too much, %d before", err, rises(&now), rises(&s.now))
			}
		}
	}
	if !seen || !strings.Contains(file, "what: [{substance: water, volume: 10000 mL}, {substance: sodium hydroxide") {
		t.Errorf("it reads %s", file)
	}
}

func rises(s *standing) int {
	n := 0
	for i := range s.sure {
		if x := &s.sure[i]; x.Figure.Quantity == "neutralise.temperature_rise" && !x.Figure.Place.IsZero() {
			n++
		}
	}
	return n
}

// A larger vessel that is rated is another one with a rating of its own, which is never written, and
// water of 20 degC cools nothing that is heated to 120 degC: neither is tried of an autoclave, and of
// what more room would help it is told that it needs a certified one (common practice).
func TestNoRatingIsGivenToALargerVessel(t *testing.T) {
	rt := cases.CaseOf(t, strings.NewReplacer("kind: bottle, material: PTFE", "kind: autoclave, rating: 600 kPa, relief: "+
		"500 kPa, material: PTFE", "do: hold", "do: heat_closed", "time: 24 h, temperature: 25", "time: 24 h, "+
		"temperature: 120").Replace(shut)).Route
	tried := map[string]bool{}
	for _, c := range choices(rt) {
		tried[c.levels[0][0].Path] = true
	}
	if tried["places.jar.capacity"] || tried["places.jar.cooling"] || !tried["places.can.capacity"] {
		t.Errorf("tried: %v", tried)
	}
	for place, why := range map[figure.Place]string{figure.Step(3): "left.rating", figure.At("jar"): "left.rating",
		figure.Step(4): "left.rating", figure.At("can"): "left.etchant"} {
		l := Left{Finding: figure.Finding{Figure: figure.ID{Quantity: "gas.free_volume.required", Place: place},
			Surely: figure.WholeRange}}
		if got := l.why(rt).Key; got != why {
			t.Errorf("%s: %s, want %s", place, got, why)
		}
	}
}

// Whatever is held against a limit is helped by a lever, or it is told what it needs; the few of
// which neither is so are named here, each with its reason.
func TestEveryLimitHasALeverOrAReason(t *testing.T) {
	none := map[string]string{
		"account.error": "a fault of the program", "cake.share": "a wet cake is dried or not",
		"dry.margin": "the oven", "sinter.rise": "another powder", "skin.lethal": "base on the skin",
		"neutralise.ph_most": "less base, which no search may take away",
	}
	helped := map[string]bool{}
	for _, r := range rows() {
		for _, q := range r.helps {
			helped[q] = true
			if _, there := figure.Lookup(q); !there {
				t.Errorf("%s helps %s, which is not catalogued", r.name, q)
			}
		}
	}
	limited := verdict.Made()
	base := limit.Base()
	for i := range base.Limits {
		limited = append(limited, base.Limits[i].Quantity)
	}
	for _, q := range limited {
		if _, reason := none[q]; helped[q] == reason {
			t.Errorf("%s: helped %t, with a reason why not %t", q, helped[q], reason)
		}
	}
}

// What is told of what is left: glass that meets acid fluoride needs a part of another material,
// whatever the batch (common practice); ice that melts before the end is put in again; what only
// a dangerous end or a bound exceeds, no smaller batch is told to reach, since nothing exceeds
// there at the best estimate to begin with; and of what is not told of at a smaller batch
// neither is.
func TestWhyNothingReachesIt(t *testing.T) {
	half := []sized{{"0.5 g", map[figure.FindingID]bool{}}}
	for _, c := range []struct {
		quantity, agent, why, batch string
		surely                      figure.Surety
		told                        bool
	}{
		{"meeting.pair", "hf_glass", "left.material", "", figure.WholeRange, false},
		{"meeting.pair", "oxidant_organic", "left.etchant", "", figure.WholeRange, false},
		{"material.attack", "", "left.material", "", figure.WholeRange, false},
		{"heat.ice", "", "left.cooling", "0.5 g", figure.BestEstimate, true},
		{"wash.cycles", "", "left.measurement", "", figure.DangerousEnd, true},
		{"store.pressure", "", "left.rating", "", figure.NotSaid, true},
		{"heat.boiled_off.share", "", "left.measurement", "", figure.NotSaid, true},
		{"wash.cycles", "", "left.batch", "0.5 g", figure.BestEstimate, true},
		{"wash.cycles", "", "left.etchant", "", figure.BestEstimate, false},
	} {
		l := Left{Finding: figure.Finding{Figure: figure.ID{Quantity: c.quantity, Agent: c.agent}, Surely: c.surely}}
		clear(half[0].over)
		if c.told {
			half[0].over[l.Finding.ID()] = false
		}
		l.Batch = enough(half, &l.Finding)
		if got := l.why(&route.Route{}).Key; got != c.why || l.Batch != c.batch {
			t.Errorf("%s/%s: %s and batch %q, want %s and %q", c.quantity, c.agent, got, l.Batch, c.why, c.batch)
		}
	}
}

// Acid that comes out slowly from between the layers asks for more cycles than dilution does, which
// no datum moves: that it may take more than are written is seen, and that enough of them do.
func TestCyclesAreTriedForWhatComesOutSlowly(t *testing.T) {
	text := strings.Replace(shut, "cycles: 5", "target_ph: 6, cycles: 7, retained: 6 mL/g, water: co2_free", 1)
	s := searchOf(t, text)
	s.written.Case.Brief = true
	r, err := hazards.Make(s.written.Case)
	if err != nil {
		t.Fatal(err)
	}
	s.views = viewsOf(&r)
	more := func(n int) bool {
		for i := range s.choices {
			if s.choices[i].name != "cycles" {
				continue
			}
			st, ok := s.try(s.with(pick{i, n}))
			return ok && slices.ContainsFunc(st.may, func(x figure.Finding) bool { return x.Figure.Quantity == "wash.cycles" })
		}
		t.Fatal("no cycles to change")
		return false
	}
	if len(s.views) != 1 || !more(0) || more(5) {
		t.Errorf("%d views; may exceed with one more %v, with twelve more %v", len(s.views), more(0), more(5))
	}
}
