package order

import (
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards/meeting"
)

func held(t *testing.T, name string) *chemicals.Substance {
	t.Helper()
	s, there := chemicals.Library().Find(name)
	if !there {
		t.Fatalf("%s is not held", name)
	}
	return s
}

func of(subs ...*chemicals.Substance) contents {
	out := contents{subs: subs}
	for _, s := range subs {
		out.acid += s.Acid
	}
	return out
}

// A fluoride salt and an acid are HF together; what is not held may be what its formula
// leaves room for, and is no powder of the route (common practice, definition).
func TestTags(t *testing.T) {
	salt, acid := held(t, "lithium fluoride"), held(t, "hydrochloric acid")
	for _, c := range []struct {
		name string
		of   contents
		tag  string
		want truth
	}{
		{"an acid", of(acid), "acid", yes}, {"an acid", of(acid), "hf", no},
		{"a salt and an acid", of(salt, acid), "hf", yes},
		{"brought to neutral", contents{subs: []*chemicals.Substance{acid}, acid: 1, held: true}, "acid", no},
		{"nobody knows", of(acid, chemicals.Unheld("florbide", chemicals.Formula{})), "alcohol", maybe},
		{"nobody knows", of(acid, chemicals.Unheld("florbide", chemicals.Formula{})), "powder", no},
		{"powder", contents{powder: "Ti3AlC2", solids: true}, "powder", yes},
		{"liquid of it", contents{powder: "Ti3AlC2", solids: true}.liquid(), "powder", no},
	} {
		if got, _ := c.of.tag(meeting.Tag(c.tag)); got != c.want {
			t.Errorf("%s, %s: %v, want %v", c.name, c.tag, got, c.want)
		}
	}
}

// Each pair gets its own advice: acid with an alcohol, or base to HF, is never told as a
// dense acid with water (common practice).
func TestAdviceByPair(t *testing.T) {
	acid, hf, base := held(t, "sulfuric acid"), held(t, "hydrofluoric acid"), held(t, "sodium hydroxide")
	for _, c := range []struct {
		comes, there *chemicals.Substance
		want         string
	}{
		{acid, held(t, "water"), "dense_acid"}, {acid, held(t, "ethanol"), "acid_alcohol"}, {base, hf, "base_hf"},
		{base, acid, "base_acid"}, {held(t, "hydrogen peroxide"), held(t, "ethanol"), "oxidant_organic"},
		{held(t, "nitric acid"), held(t, "hydrochloric acid"), "listed"}, // nitrosyl chloride: no way of mixing them helps
		{held(t, "hydrogen peroxide"), acid, "listed"}, {held(t, "calcium oxide"), held(t, "water"), "lime"},
	} {
		m, got := together{there: of(c.there), comes: of(c.comes)}, ""
		for i := range meeting.Mixtures() {
			if p, fits := m.either(&meeting.Mixtures()[i]); fits {
				got = p.ID
				break
			}
		}
		if got != c.want {
			t.Errorf("%s to %s: %s, want %s", c.comes.Name, c.there.Name, got, c.want)
		}
	}
}

// Base that acid has used up takes none of the acid that comes later: sulfuric acid into
// hydrofluoric acid with isopropanol and a little base in it is still told as the worst of its pairs
// and never as a dense acid into water. Base in excess takes a little acid (common practice).
func TestUsedUpBaseTakesNoAcid(t *testing.T) {
	acid, hf, base := of(held(t, "sulfuric acid")), held(t, "hydrofluoric acid"), held(t, "TMAOH")
	there := of(hf, base, held(t, "2-propanol"))
	for _, c := range []struct {
		net  float64
		want truth
	}{{0.9, yes}, {-0.1, no}} {
		there.acid = c.net
		m := together{comes: acid, there: there, rise: 0}
		m = m.washed()
		if got, _ := m.comes.tag("acid"); got != c.want {
			t.Errorf("%g mol of acid there: what comes is acid %v, want %v", c.net, got, c.want)
		}
	}
}
