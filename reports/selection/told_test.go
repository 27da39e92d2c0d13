package selection

import (
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/doubt"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
	"etchbound/reports/draft"
	"etchbound/reports/words"
)

// What the same settles is one gap, at the place of the worst, and each still says where.
func TestGapsThatTheSameSettlesAreOne(t *testing.T) {
	got := joined([]Gap{{"heat", "step 2", "calorimetry"}, {"temperature", "step 5", "write it"},
		{"gas", "", "measure it"}, {"bore", "", "write it"}, {"what nobody settles", "", ""}, {"another", "", ""}})
	want := []Gap{{"heat", "step 2", "calorimetry"}, {"temperature (step 5); bore", "", "write it"},
		{"gas", "", "measure it"}, {"what nobody settles", "", ""}, {"another", "", ""}}
	if !slices.Equal(got, want) {
		t.Errorf("%+v, want %+v", got, want)
	}
}

// What a step does not say stands at that step, whatever earlier figures lack it.
func TestWhatAStepDoesNotSayIsOfThatStep(t *testing.T) {
	u := doubt.UnknownItem{Missing: working.Lacks(working.NotGiven, route.At(4, "temperature")),
		Figures: []figure.ID{{Quantity: "heat.mtsr", Place: figure.Step(2)}}}
	if got := (&reader{}).places(&u); !slices.Equal(got, []figure.Place{figure.Step(4)}) {
		t.Errorf("the temperature of step 4 is not known at %v", got)
	}
}

// One limit that several vapours are held against stands once; of several limits the order
// tells whose each is.
func TestOneLimitOfSeveralVapoursStandsOnce(t *testing.T) {
	id := func(agent string) figure.ID { return figure.ID{Quantity: "air.breathing_zone", Agent: agent} }
	of := func(agent string, ppm float64) *figure.Finding {
		return &figure.Finding{Figure: id(agent), Verdict: figure.Exceeds, Surely: figure.WholeRange,
			Limit: limit.Limit{Key: limit.Key{Origin: limit.Local}, Quantity: "air.breathing_zone", Value: ppm}}
	}
	p := reader{v: voice{&draft.Draft{}}, figs: figure.NewSet(nil)}
	for _, c := range []struct {
		held []*figure.Finding
		want string
	}{
		{[]*figure.Finding{of("hf", 2), of("hcl", 2)}, "2 ppm, local limit"},
		{[]*figure.Finding{of("hf", 2), of("hcl", 5)}, "2 ppm, local limit; 5 ppm, local limit"},
		{[]*figure.Finding{of("hf", 2), of("hcl", 5), of("chlorine", 2)},
			"2 ppm, local limit; 5 ppm, local limit; 2 ppm, local limit"},
		{[]*figure.Finding{of("hf", 2), of("hcl", 5), of("chlorine", 5)}, "2 ppm, local limit; 5 ppm, local limit; the same"},
	} {
		var l Line
		if p.eachHeld(&l, c.held); l.Against != c.want {
			t.Errorf("%q, want %q", l.Against, c.want)
		}
	}
}

// A route without powder is told what its base gives at once: that no powder goes in is no
// answer to who holds the bag of bicarbonate. Rounded by hand: up to 223 L, and it cools.
func TestBaseAtOnceIsTold(t *testing.T) {
	at := func(quantity string, v float64) figure.Figure {
		q, _ := figure.Lookup(quantity)
		f := figure.Figure{ID: figure.ID{Quantity: quantity, Place: figure.Step(2), Agent: "sodium_hydrogencarbonate"},
			Value: working.Exact("x", q.Unit, v, "as written")}
		f.SetRange(v, v)
		return f
	}
	r := &hazards.Review{Case: route.Case{Route: &route.Route{}}}
	p := reader{r: r, v: voice{&draft.Draft{Review: r}},
		figs: figure.NewSet([]figure.Figure{at("neutralise.mass", 0.763), at("neutralise.carbon_dioxide", 223),
			at("neutralise.temperature_rise", -12)})}
	got := p.baseAtOnce()
	if !strings.Contains(got, "sodium bicarbonate") || !strings.Contains(got, "up to 223 L of carbon dioxide") ||
		strings.Contains(got, "warmer") {
		t.Errorf("%q", got)
	}
}

// What is said word for word of several steps is said once, of all of them; what differs in
// anything but the step is said by itself.
func TestAHoldPointSaysStepsOnce(t *testing.T) {
	part := func(key string, step phrase.Step, args ...any) phrase.Phrase {
		return phrase.Of(key, append([]any{step}, args...)...)
	}
	h := hazards.Hold{ID: "ammonia", Parts: []phrase.Phrase{part("fact.ammonia", 4), part("fact.ammonia", 1),
		part("fact.ammonia", 2)}}
	h.Says = phrase.Of("hold.ammonia", h.Parts[0].And(phrase.As(" "), h.Parts[1], phrase.As(" "), h.Parts[2]))
	if got, want := words.Say(ofSteps(&h)), "Keep that vessel open in the hood in that step. "+
		"Steps 1, 2 and 4 bring base to ammonium: ammonia comes off."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	h = hazards.Hold{ID: "hf_strong", Parts: []phrase.Phrase{part("fact.hf_strong", 1, 55.0),
		part("fact.hf_strong", 3, 60.0)}}
	h.Says = phrase.Of("hold.hf_strong", h.Parts[0].And(phrase.As(" "), h.Parts[1]))
	if got := words.Say(ofSteps(&h)); got != words.Say(h.Says) {
		t.Errorf("two strengths read %q", got)
	}
}

// A number is told where it stands by itself, and not at the end of a longer one.
func TestANumberIsToldByItself(t *testing.T) {
	for text, want := range map[string]bool{"reaches 5 K": true, "5 K": true, "15 K": false, "0.5 K, -5 K": false,
		"15 K, then 5 K": true, "about5 K": true, "": false} {
		if tells(text, "5 K") != want {
			t.Errorf("%q tells 5 K: %v", text, !want)
		}
	}
}

// Places in which a pair meets from one step on are told with that step once, in the order in
// which they first stand.
func TestAPlaceWhereAPairMeetsSaysItsStepOnce(t *testing.T) {
	got := metAt([]string{"etch", "drum", "tubes", "jar"}, []int{2, 4, 2, 0})
	want := []string{draft.MetAt("etch, tubes", 2), draft.MetAt("drum", 4), draft.MetAt("jar", 0)}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// What counts toward a threshold ten times over and more is told in times, and less in percent.
func TestAShareOfAThresholdIsToldAsPeopleTellIt(t *testing.T) {
	of := func(kg, ratio float64) *stock.Share {
		return &stock.Share{Threshold: &stock.Threshold{Programme: "a code"}, Headroom: working.Absent("n", "1"),
			Held: working.Exact("m", "kg", kg, "as written"), Ratio: working.Exact("r", "1", ratio, "as written")}
	}
	for want, s := range map[string]*stock.Share{
		"x: 630 kg counts for a code, 140 times of its threshold": of(630, 140),
		"x: 4.5 kg counts for a code, 100 % of its threshold":     of(4.5, 1),
	} {
		if got := (&reader{}).shared(s, "x"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A poisonous gas that kills without warning is in the banner of whatever gives it off, each
// gas once with all that shows it; one that the step does not name is not (common practice:
// hot copper(II) chloride gives chlorine, an anode in chloride too).
func TestAGasThatAStepGivesOffIsInTheBanner(t *testing.T) {
	off := func(step int, gas string) process.Fact {
		return process.Fact{ID: "toxic_gas", Step: step,
			Says: phrase.Of("fact.toxic_gas", gas, 2.0, 6.0, phrase.Step(step))}
	}
	for _, c := range []struct {
		facts []process.Fact
		met   []met
		want  string
	}{
		{facts: []process.Fact{off(2, "chlorine"), off(4, "ammonia"), off(5, "chlorine")},
			want: "Chlorine can come off: steps 2, 5."},
		{facts: []process.Fact{off(4, "ammonia")}},
		{[]process.Fact{off(3, "chlorine")}, []met{{Pair: &meeting.Pair{ID: "persulfate_chloride", Names: "salt with acid"},
			where: []string{"jar from step 2 on"}}},
			"Chlorine can come off: salt with acid (jar from step 2 on); step 3."},
	} {
		r := &hazards.Review{Case: route.Case{Route: &route.Route{}}, Walk: process.Walk{Facts: c.facts}}
		d := draft.New(r, draft.Options{})
		p := &reader{r: r, v: voice{d}, figs: d.Set, met: c.met}
		if got := strings.Join(p.banner(), " "); got != c.want {
			t.Errorf("the banner says %q, want %q", got, c.want)
		}
	}
}
