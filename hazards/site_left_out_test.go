package hazards_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/schemas/field"
	"etchbound/schemas/long"
	"etchbound/schemas/quantity"
)

// fullSite is the site of the examples with every fact that the table of keys has.
func fullSite(t testing.TB) *route.Site {
	t.Helper()
	s := demoSite(t)
	s.Hood.Stack = quantity.Of(10, "m")
	s.Dewar = quantity.Of(10, "L")
	s.Cabinet = quantity.Of(200, "L", quantity.AirVolume)
	hf, _ := chemicals.Library().Find("HF")
	s.Unattended = &route.Unattended{Time: quantity.Of(100, "h"), Temperature: quantity.Of(60, "degC"),
		Gas: quantity.Of(1, "L/min"), Never: []*chemicals.Substance{hf}}
	s.FireCode = &route.FireCode{Table: "us_model", Times: 1}
	return s
}

// siteFacts are the facts a site states, by their places in the file.
func siteFacts(s *route.Site) []field.Seen {
	var out []field.Seen
	s.Visit(func(x field.Seen) {
		if x.Fact && x.Value.Stated() {
			out = append(out, x)
		}
	})
	return out
}

// Every key of a site file that is a fact is among those that are taken away.
func TestEveryFactOfASiteIsTried(t *testing.T) {
	facts := siteFacts(fullSite(t))
	for _, f := range route.SiteFields() {
		tried := slices.ContainsFunc(facts, func(x field.Seen) bool { return x.Path == f.Path })
		if f.Fact && !tried {
			t.Errorf("%s is never taken away", f.Path)
		}
	}
	if len(facts) < 12 {
		t.Errorf("%d facts", len(facts))
	}
}

// siteTakes are what a site can leave unsaid: every fact of it by the table of keys,
// part of its stock, and the site.
func siteTakes(t testing.TB) map[string]func(*route.Case) {
	out := map[string]func(*route.Case){
		"the site": func(c *route.Case) { c.Site = nil },
		"the stock of acid fluoride": func(c *route.Case) {
			c.Site = c.Site.Copy()
			c.Site.Stock = c.Site.Stock[1:]
		},
	}
	for _, x := range siteFacts(fullSite(t)) {
		out[x.At] = func(c *route.Case) { c.Site, _ = c.Site.Without(x.At) }
	}
	return out
}

// A site that says less never makes a verdict better. Every fact is taken from the site of
// a sixth of the bundled routes, and from that of drawn routes below.
func TestASiteThatSaysLessNeverHelps(t *testing.T) {
	long.Only(t)
	type pair struct{ name, what string }
	texts, takes := bundledTexts(t), siteTakes(t)
	var pairs []pair
	for j, what := range sorted(takes) {
		for i, name := range sorted(texts) {
			if (i+j)%6 == 0 {
				pairs = append(pairs, pair{name, what})
			}
		}
	}
	wholes := map[string]*hazards.Review{}
	for _, x := range pairs {
		full, ok := wholes[x.name]
		if !ok {
			c := newCase(t, load(t, texts[x.name]))
			c.Brief, c.Site = true, fullSite(t)
			rv := must(t, c)
			full, wholes[x.name] = &rv, &rv
		}
		less := full.Case
		takes[x.what](&less)
		bare := must(t, less)
		notBetter(t, full, &bare, x.name+" without "+x.what)
	}
}

// The same of any route: one fact of its site less makes none of its verdicts better.
func TestASiteThatSaysLessNeverHelpsAnyRoute(t *testing.T) {
	takes := siteTakes(t)
	costly(t, func(tb testing.TB, t *rapid.T) {
		yaml := (&drawing{t: t}).recipe().yaml(plainly)
		c := newCase(tb, load(tb, yaml))
		c.Brief, c.Site = true, fullSite(tb)
		full, less := must(tb, c), c
		what := rapid.SampledFrom(sorted(takes)).Draw(t, "taken")
		takes[what](&less)
		bare := must(tb, less)
		notBetter(t, &full, &bare, "without "+what+"\n"+yaml)
	})
}

// Too little oxygen stops work whatever the site leaves out: 10000 L of a cylinder leave
// 20.9 exp(-10/20) = 12.7 vol% in a room of 20 m3, and less in a smaller one. So does too much
// hydrogen in a cabinet, and a few millilitres of gas stop nothing.
func TestAStopOfTheAirStaysWithoutAFactOfTheSite(t *testing.T) {
	long.NotShort(t)
	site := func(cylinder float64) *route.Site {
		s := demoSite(t)
		s.RoomVolume, s.Cylinder = quantity.Of(20, "m3"), quantity.Of(cylinder, "m3")
		s.Cabinet = quantity.Of(200, "L", quantity.AirVolume)
		return s
	}
	stops := func(s *route.Site, mass, id string) bool {
		c := newCase(t, load(t, etches("phase: Ti3AlC2, mass: "+mass+", "+pure, hf10)))
		c.Brief, c.Site = true, s
		rv := must(t, c)
		return holdsAt(&rv, id)
	}
	for _, c := range []struct {
		cylinder          float64
		without, mass, id string
		want              bool
	}{
		{10, "", "1 g", "oxygen", true}, {10, "room.volume", "1 g", "oxygen", true},
		{10, "room.cylinder", "1 g", "oxygen", true}, {0, "room.volume", "1 g", "oxygen", false},
		{0, "", "20 g", "hydrogen_quarter", true}, {0, "room.cabinet", "20 g", "hydrogen_quarter", true},
		{0, "room.cabinet", "50 mg", "hydrogen_quarter", false},
	} {
		s := site(c.cylinder)
		if c.without != "" {
			s, _ = s.Without(c.without)
		}
		if got := stops(s, c.mass, c.id); got != c.want {
			t.Errorf("cylinder of %g m3, %s, without %q: stop %s is %v", c.cylinder, c.mass, c.without, c.id, got)
		}
	}
}
