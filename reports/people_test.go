package reports

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/schemas/long"
)

// unwritten are numbers no person writes, each with what is written in its place.
var unwritten = map[string]*regexp.Regexp{
	"a power of ten as only programs read it":      regexp.MustCompile(`(?i)[0-9]e[-+]?[0-9]+\b`),
	"a step counted from 0":                        regexp.MustCompile(`steps\[`),
	"per cent above a thousand, for so many times": regexp.MustCompile(`(?:^|[^0-9.])[0-9]{4,}(\.[0-9]+)? %`),
	"minutes above two hours": regexp.MustCompile(`(?:^|[^0-9.])(?:1[2-9][1-9]|1[3-9]0|[2-9][0-9]{2}|[0-9]{4,})` +
		`(?:\.[0-9]+)? min\b`),
	"kilograms below one":     regexp.MustCompile(`(?:^|[^0-9.])0(\.[0-9]+)? kg(?:[^/\w]|$)`),
	"a unit as files have it": regexp.MustCompile(`degC|m3/h\b`),
}

// asWritten is what may stand so: what the writer of a route wrote, digests and ids.
var asWritten = regexp.MustCompile("(?m)^> .*$|`[^`]*`|(?i)digest [0-9a-f]{12}|^- \\*\\*Route:\\*\\* .*$")

// Whatever is printed of a bundled route, but for its calculation sheets, has numbers as
// a person writes them.
func TestNumbersAreWrittenForPeople(t *testing.T) {
	long.Only(t)
	for name, r := range fixture.Bundled(t) {
		d := Build(r, draft.Options{})
		var kept []document.Section
		for _, s := range d.Sections {
			if s.Key != "sheets" && s.Key != "values" { // data stand there as their sources have them
				kept = append(kept, s)
			}
		}
		d.Sections = kept
		var b bytes.Buffer
		if err := document.Markdown(&b, d); err != nil {
			t.Fatal(err)
		}
		text := strings.ReplaceAll(b.String(), r.Case.Route.Title, "")
		shown := map[string]int{}
		for _, line := range strings.Split(asWritten.ReplaceAllString(text, ""), "\n") {
			for what, number := range unwritten {
				if at := number.FindStringIndex(line); at != nil && shown[what] < 4 {
					shown[what]++
					t.Errorf("%s: %s: ...%s", name, what, line[max(at[0]-60, 0):min(at[1]+20, len(line))])
				}
			}
		}
	}
}
