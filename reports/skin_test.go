package reports

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/reports/aid"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/record"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// What must not stand in any review: a dose, a count of tubes, a time that is
// said to be enough or to do no harm.
var doses = regexp.MustCompile(`(?i)\d\s*(mg|g|ml|mmol|µg|ug)\s*/\s*kg\b` +
	`|\d\s*(mg|g|ml|mmol)?\s*(tubes|tube|ampoules?|vials?) of (gel|calcium)|\d\s*gel tubes?|\d+(\.\d+)?\s*% ` +
	`(calcium )?gluconate` +
	`|(minutes?|min|seconds?|hours?|h|s) (is|are) (safe|enough|harmless|tolerable)` +
	`|safe (time|period|duration|contact|exposure|dose)` +
	`|(rinse|rinsing|water|shower|gel|contact|wetted|on the skin)[^.;|<]{0,30} (for|within|up to|after|at most) ` +
	`\d+(\.\d+)?\s*(s|sec|seconds?|min|minutes?)\b` +
	`|(at most|up to|no more than|within) \d+(\.\d+)?\s*(s|min|minutes|seconds) (of|on|in) (contact|skin|the skin)` +
	`|inject|intravenous|infusion|lethal dose|LD50`)

// doseWords are texts of which one stands in every dose, in small letters: quicker
// looked for than doses.
var doseWords = []string{"kg", "gel", "calcium", "gluconate", "safe", "enough", "harmless", "tolerable", " for ",
	"within", "up to", "after", "at most", "no more than", "inject", "intravenous", "infusion", "lethal", "ld50"}

func TestDoseWordsAreFound(t *testing.T) {
	for _, s := range []string{"give 20 mg/kg", "keep 2 tubes of gel", "5 minutes is safe", "a safe time of contact",
		"rinse for 5 min", "2.5 % calcium gluconate",
		"rinse with water for 15 minutes", "up to 3 min on the skin", "skin contact within 5 min", "5 s is enough",
		"Gel after 10 s", "LD50",
		"1 min is harmless", "2 h are tolerable", "4 vials of calcium", "Inject", "water at most 3 min",
		"no more than 5 min of contact", "infusion", "intravenous", "a lethal dose"} {
		if !doses.MatchString(s) || len(dosesIn(s)) == 0 {
			t.Errorf("%q passes", s)
		}
	}
	for _, s := range []string{"pain can come 1 to 8 h after the contact", "on more than 5 % of the body", "4 of 50 mL",
		"add water over 10 min"} {
		if m := doses.FindString(s); m != "" {
			t.Errorf("%q is taken for a dose: %q", s, m)
		}
	}
}

// everyFormat is a review in each format that is written.
func everyFormat(t *testing.T, r hazards.Review) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	keep := func(name string, err error, b *bytes.Buffer) {
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		out[name] = b.Bytes()
	}
	for _, d := range []struct {
		name string
		doc  document.Document
	}{{"review", Build(r, fixtureOptions)}, {"upset", BuildUpset(r, fixtureOptions)}} {
		var m, h bytes.Buffer
		keep(d.name+".md", document.Markdown(&m, d.doc), &m)
		keep(d.name+".html", document.HTML(&h, d.doc), &h)
	}
	var j, f bytes.Buffer
	keep("review.json", record.JSON(&j, r, fixtureOptions), &j)
	keep("figures.csv", record.CSV(&f, r), &f)
	return out
}

// dosesIn are the doses of a text, with what stands around them: of each of its lines
// once, and in the long form of what stands around each end of a line, where one could
// be broken over two.
func dosesIn(text string) []string {
	parts := strings.Split(toxicity().Replace(text), "\n")
	if long.Form() {
		const reach = 100 // longer than any dose
		for i, line := range parts[:len(parts)-1] {
			next := parts[i+1]
			parts = append(parts, line[max(0, len(line)-reach):]+"\n"+next[:min(len(next), reach)])
		}
	}
	var out []string
	for _, part := range parts {
		if _, known := noDose.Load(part); known || !mayDose(part) {
			continue
		}
		for _, m := range doses.FindAllStringIndex(part, -1) {
			out = append(out, part[max(0, m[0]-40):min(len(part), m[1]+40)])
		}
		if len(out) == 0 {
			noDose.Store(part, true)
		}
	}
	return out
}

// toxicity takes out what the data hold of rats, which nobody is told to give.
var toxicity = sync.OnceValue(func() *strings.Replacer {
	var out []string
	for _, d := range chemicals.Base().Rows() {
		if d.Unit != "mg/kg" {
			continue
		}
		for _, v := range []float64{d.Value, d.Low, d.High} {
			out = append(out, fmt.Sprintf("%g mg/kg", v), "toxicity")
		}
	}
	return strings.NewReplacer(out...)
})

func mayDose(line string) bool {
	small := strings.ToLower(line)
	return slices.ContainsFunc(doseWords, func(w string) bool { return strings.Contains(small, w) })
}

// noDose are the texts in which no dose was found: outputs have most lines in common.
var noDose sync.Map

func TestNoDoseInAnyFormatOfAnyRoute(t *testing.T) {
	long.Only(t)
	all := fixture.Some(t, 1, 1)
	all["fixture"] = fixture.Review()
	for name, r := range all {
		for format, text := range everyFormat(t, r) {
			if at := bytes.Index(text, []byte("%!")); at >= 0 {
				t.Errorf("%s, %s: a sentence lost its arguments: %q", name, format, text[at:min(len(text), at+40)])
			}
			for _, m := range dosesIn(string(text)) {
				t.Errorf("%s, %s: %q", name, format, m)
			}
		}
	}
}

// wholeHF and wholeTMAOH are the lists that have to stand together.
func wholeHF() []string {
	return []string{words.Of("skin.rinse"), words.Of("skin.gel"), words.Of("skin.help"), words.Of("skin.sheet")}
}

// Wherever one line of the block is printed all of it is, in order, with the
// pointer, and the sections that need it have it.
func TestSkinBlockIsWhole(t *testing.T) {
	long.Only(t)
	for name, r := range fixture.Bundled(t) {
		b := newBuilder(&r, draft.Options{})
		got := map[string]bool{}
		for _, s := range Build(r, fixtureOptions).Sections {
			all := textsOf([]document.Section{s})
			at := slices.Index(all, words.Of("skin.rinse"))
			if at < 0 {
				for _, line := range []string{words.Of("skin.gel"), words.Of("skin.gel_is"), words.Of("skin.help"),
					words.Of("skin.area"),
					words.Of("skin.eyes_hf")} {
					if slices.Contains(all, line) {
						t.Errorf("%s, %s: a part of the block: %s", name, s.Key, line)
					}
				}
				continue
			}
			got[s.Key] = true
			if !slices.Equal(all[at:at+4], wholeHF()) {
				t.Errorf("%s, %s: %v", name, s.Key, all[at:at+4])
			}
			for _, line := range []string{words.Of("skin.hf_lead"), words.Of("skin.gel_is"), words.Of("skin.area"),
				words.Of("skin.eyes_hf"),
				words.Of("skin.breathed"), words.Of("skin.swallowed"), words.Of("skin.pointer"), words.Of("ready.never_alone")} {
				if !slices.Contains(all, line) {
					t.Errorf("%s, %s lacks: %s", name, s.Key, line)
				}
			}
		}
		if hf := b.Tags.Has("hf"); got["skin"] != hf || got["bench"] != hf {
			t.Errorf("%s: HF %v, block in %v", name, hf, got)
		}
	}
}

// TMAOH stands beside HF: the same kind of list, in the same places.
func TestTMAOHRanksWithHF(t *testing.T) {
	long.NotShort(t)
	text, err := os.ReadFile("../testdata/routes/tmaoh-half-gram.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r := fixture.Of(t, "tmaoh-half-gram.yaml", text)
	for _, s := range Build(r, fixtureOptions).Sections {
		if s.Key != "skin" && s.Key != "bench" {
			continue
		}
		var leads, lists int
		for _, bl := range unfolded(s.Blocks) {
			if p, ok := bl.(document.Paragraph); ok && p.Tone == document.Warning &&
				(p.Text == words.Of("skin.hf_lead") || p.Text == words.Of("skin.tmaoh")) {
				leads++
			}
			if l, ok := bl.(document.List); ok && l.Ordered && slices.Contains(l.Items, words.Of("skin.sheet")) {
				lists++
			}
		}
		if leads != 2 || lists != 2 {
			t.Errorf("%s: %d leads, %d lists", s.Key, leads, lists)
		}
	}
}

// The delay by strength: above 50 wt% at once, 20 to 50 wt% 1 to 8 h, below up
// to 24 h (letter of a labour authority, two further pages). An edge counts to
// the longer delay; the longest stands in all of them.
func TestPainComes(t *testing.T) {
	for _, c := range []struct {
		strength float64
		want     string
	}{{51, "skin.pain_now"}, {50, "skin.pain_hours"}, {20.1, "skin.pain_hours"}, {20, "skin.pain_day"},
		{0.1, "skin.pain_day"}, {math.NaN(), "skin.pain_day"}} {
		s := aid.PainComes(c.strength)
		if !strings.Contains(s, words.Fixed()[c.want]) || !strings.Contains(s, "24 h") ||
			!strings.Contains(s, "no pain says nothing") {
			t.Errorf("%g: %s", c.strength, s)
		}
		if unknown := strings.Contains(s, words.Of("skin.strength_unknown")); unknown != math.IsNaN(c.strength) {
			t.Errorf("%g: %s", c.strength, s)
		}
	}
}

// People before reagent: the first line of a spill is to leave, close and call.
func TestSpillBeginsWithLeaving(t *testing.T) {
	long.NotShort(t)
	for name, r := range fixture.Bundled(t) {
		b := newBuilder(&r, draft.Options{})
		words := b.SpillWords()
		if !b.Tags.Has("hf") {
			if words != nil {
				t.Errorf("%s: a spill of acid fluoride where there is none", name)
			}
			continue
		}
		if p, ok := words[0].(document.Paragraph); !ok || p.Tone != document.Warning ||
			!strings.Contains(p.Text, "leave, close, call") {
			t.Errorf("%s: begins with %v", name, words[0])
		}
		rows := 0
		for _, w := range words {
			if table, ok := w.(document.Table); ok {
				rows += len(table.Rows)
			}
		}
		if rows != len(aid.SpillRows()) {
			t.Errorf("%s: %d rows of %d", name, rows, len(aid.SpillRows()))
		}
	}
}

// What a person has to have ready stands as boxes and blanks wherever it is
// asked: in the section and at the bench.
func TestReadinessIsAsked(t *testing.T) {
	r := fixture.Review()
	for _, s := range Build(r, fixtureOptions).Sections {
		if s.Key != "skin" && s.Key != "bench" {
			continue
		}
		var boxes, lines []string
		for _, bl := range unfolded(s.Blocks) {
			switch bl := bl.(type) {
			case document.FormLine:
				boxes = append(boxes, bl.Boxes...)
			case document.Blanks:
				lines = append(lines, bl.Labels...)
			}
		}
		for _, want := range []string{"ready.two", "ready.shower", "ready.eyewash", "ready.gel"} {
			if !slices.Contains(boxes, words.Fixed()[want]) {
				t.Errorf("%s lacks the box %s", s.Key, want)
			}
		}
		for _, want := range []string{"ready.second", "emergency.number", "emergency.medical", "emergency.gel",
			"contacts.day_night"} {
			if !slices.Contains(lines, words.Fixed()[want]) {
				t.Errorf("%s lacks the blank %s", s.Key, want)
			}
		}
	}
}

// unfolded are blocks with those that the page alone has, which the bench card prints.
func unfolded(blocks []document.Block) []document.Block {
	var out []document.Block
	for _, b := range blocks {
		if x, ok := b.(document.Unprinted); ok {
			out = append(out, x.Blocks...)
			continue
		}
		out = append(out, b)
	}
	return out
}

// First aid is printed once and whole: on the bench card, where nothing is left off paper,
// and the section on skin says where.
func TestFirstAidIsPrintedOnTheCard(t *testing.T) {
	r := fixture.Review()
	for _, s := range Build(r, fixtureOptions).Sections {
		switch s.Key {
		case "bench":
			at := slices.IndexFunc(s.Blocks, func(b document.Block) bool {
				l, ok := b.(document.List)
				return ok && slices.Equal(l.Items, wholeHF())
			})
			if at < 0 {
				t.Error("the bench card prints no first aid")
			}
		case "skin":
			p, ok := s.Blocks[0].(document.Paragraph)
			if !ok || p.Tone != document.OnPaper || !strings.Contains(p.Text, "bench card") {
				t.Errorf("skin begins with %v", s.Blocks[0])
			}
		}
	}
}
