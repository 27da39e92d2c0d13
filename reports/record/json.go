package record

import (
	"io"
	"math"
	"strconv"

	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// Format names the shape of the JSON review. Ids and keys are only added
// within it.
const Format = "etchbound.review/2"

// JSON writes the review for programs: every key present, nine significant
// digits, null for what is unknown, the same bytes for the same review on one
// platform. A brief case lacks what happens when something fails, and says so
// among the warnings.
func JSON(w io.Writer, r hazards.Review, o draft.Options) error {
	return Write(w, newReviewJSON(&r, o))
}

// Nine is a number in JSON: nine significant digits, null where it is none.
type Nine float64

// MarshalJSON implements json.Marshaler.
func (n Nine) MarshalJSON() ([]byte, error) {
	v := float64(n)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null"), nil
	}
	return strconv.AppendFloat(nil, number.Round9(v), 'g', -1, 64), nil
}

type Shape struct {
	Opening
	Route       routeJSON        `json:"route"`
	Figures     []figureJSON     `json:"figures"`
	Findings    []findingJSON    `json:"findings"`
	Holds       []holdJSON       `json:"holds"`
	Labels      []labelJSON      `json:"labels"`
	Treated     []treatedJSON    `json:"treated"`
	Containers  []containerJSON  `json:"containers"`
	Rinsed      []rinsedJSON     `json:"rinsed"`
	Speciated   []speciatedJSON  `json:"speciated"`
	Spread      []spreadJSON     `json:"spread"`
	Lines       []lineJSON       `json:"lines"`
	Ends        []endJSON        `json:"ends"`
	Data        []datumJSON      `json:"data"`
	Sources     []sourceJSON     `json:"sources"`
	Account     []balanceJSON    `json:"account"`
	Series      []seriesJSON     `json:"series"`
	Replaced    []replacedJSON   `json:"replaced"`
	Milder      []milderJSON     `json:"milder"`
	Turns       []turnJSON       `json:"turns"`
	Assumptions []assumptionJSON `json:"assumptions"`
	Unknown     []unknownJSON    `json:"unknown"`
	NotAssessed []string         `json:"not_assessed"`
	Warnings    []string         `json:"warnings"`
}

// OfRouteJSON says which route something is of.
type OfRouteJSON struct {
	Title  string `json:"title"`
	Digest string `json:"digest"`
}

// Opening is what every document begins with.
type Opening struct {
	Format string     `json:"format"`
	Notice string     `json:"notice"`
	MadeBy MadeByJSON `json:"made_by"`
}

// OpeningOf is the opening of a document of some format, with its control line.
func OpeningOf(format string, o draft.Options, control string) Opening {
	return Opening{format, words.Of("deference.line"), MadeBy(o, control)}
}

// Head is what a document of one route begins with.
type Head struct {
	Opening
	Route OfRouteJSON `json:"route"`
}

// HeadOf is the head of a document about a case.
func HeadOf(format string, c *route.Case, o draft.Options) Head {
	return Head{OpeningOf(format, o, draft.ControlOf(o, c.Site, c.Limits, c.Route.Digest)),
		OfRouteJSON{c.Route.Title, c.Route.Digest}}
}

// MadeByJSON is what made a document: the program, its data and the control line.
type MadeByJSON struct {
	Version  string `json:"version"`
	Data     string `json:"data"`
	Digest   string `json:"data_digest"`
	Control  string `json:"control"`
	Platform string `json:"platform"`
}

// MadeBy says what made a document, with its control line.
func MadeBy(o draft.Options, control string) MadeByJSON {
	return MadeByJSON{o.Version, o.DataVersion, o.DataDigest, control, o.Platform}
}

type holdJSON struct {
	ID   string   `json:"id"`
	Text string   `json:"text"`
	At   []string `json:"at"`
}

type valueJSON struct {
	Value Nine   `json:"value"`
	Unit  string `json:"unit"`
}

type routeJSON struct {
	Title        string      `json:"title"`
	Batch        valueJSON   `json:"batch"`
	Digest       string      `json:"digest"`
	SiteDigest   string      `json:"site_digest"`
	LimitsDigest string      `json:"limits_digest"`
	Steps        []stepJSON  `json:"steps"`
	Places       []placeJSON `json:"places"`
}

type stepJSON struct {
	Number int    `json:"number"`
	Do     string `json:"do"`
	In     string `json:"in"`
	Into   string `json:"into"`
}

type placeJSON struct {
	Key      string    `json:"key"`
	Kind     string    `json:"kind"`
	Material string    `json:"material"`
	Capacity valueJSON `json:"capacity"`
	Closure  string    `json:"closure"`
}

type figureJSON struct {
	ID         string        `json:"id"`
	Quantity   string        `json:"quantity"`
	Place      string        `json:"place"`
	Agent      string        `json:"agent"`
	Case       string        `json:"case"`
	Of         string        `json:"of"`
	Label      string        `json:"label"`
	Value      Nine          `json:"value"`
	Low        Nine          `json:"low"`
	High       Nine          `json:"high"`
	Unit       string        `json:"unit"`
	Status     string        `json:"status"`
	Conditions string        `json:"conditions"`
	Line       int           `json:"line"`
	Missing    []MissingJSON `json:"missing"`
	Draws      drawsJSON     `json:"draws"`
}

// MissingJSON is a thing that would have to be known.
type MissingJSON struct {
	Kind    string `json:"kind"`
	Subject string `json:"subject"`
	Step    int    `json:"step"`
	Text    string `json:"text"`
}

type drawsJSON struct {
	P05 Nine `json:"p05"`
	P50 Nine `json:"p50"`
	P95 Nine `json:"p95"`
}

type findingJSON struct {
	ID      string     `json:"id"`
	Figure  string     `json:"figure"`
	Limit   limitJSON  `json:"limit"`
	Verdict string     `json:"verdict"`
	Surely  string     `json:"surely"`
	Of      string     `json:"of"` // the figure it was judged by, where that is another
	Margin  Nine       `json:"margin"`
	Needs   []needJSON `json:"needs"`
	Chance  Nine       `json:"chance"`
}

type limitJSON struct {
	ID       string `json:"id"`
	Origin   string `json:"origin"`
	Value    Nine   `json:"value"`
	Unit     string `json:"unit"`
	Document string `json:"document"`
	Section  string `json:"section"`
	Edition  string `json:"edition"`
	Status   string `json:"status"`
}

type needJSON struct {
	Quantity string `json:"quantity"`
	Value    Nine   `json:"value"`
	Unit     string `json:"unit"`
	Text     string `json:"text"`
}

type lineJSON struct {
	N       int         `json:"n"`
	Kind    string      `json:"kind"`
	Symbol  string      `json:"symbol"`
	Unit    string      `json:"unit"`
	Formula string      `json:"formula"`
	Value   Nine        `json:"value"`
	Status  string      `json:"status"`
	In      []inputJSON `json:"in"`
	Data    string      `json:"data"`
	At      string      `json:"at"`
}

// endJSON is how the dangerous end of a figure was worked out.
type endJSON struct {
	Figure string      `json:"figure"`
	End    string      `json:"end"`
	Data   []stoodJSON `json:"data"`
	Line   int         `json:"line"`
	Lines  []lineJSON  `json:"lines"`
}

// stoodJSON is a datum that is not at its best estimate at that end.
type stoodJSON struct {
	ID    string `json:"id"`
	Value Nine   `json:"value"`
	At    Nine   `json:"at"`
	Unit  string `json:"unit"`
}

// turnJSON is what one datum does to a verdict.
type turnJSON struct {
	Finding string `json:"finding"`
	Verdict string `json:"verdict"`
	Datum   string `json:"datum"` // empty where the whole range has the verdict
	Value   Nine   `json:"value"`
	Low     Nine   `json:"low"`
	High    Nine   `json:"high"`
	Unit    string `json:"unit"`
	Worst   Nine   `json:"worst"`
	At      Nine   `json:"at"` // null where its whole range does not turn it
	Becomes string `json:"becomes"`
}

type inputJSON struct {
	Symbol string `json:"symbol"`
	Value  Nine   `json:"value"`
	Unit   string `json:"unit"`
	Line   int    `json:"line"`
}

type datumJSON struct {
	ID           string `json:"id"`
	Value        Nine   `json:"value"`
	Low          Nine   `json:"low"`
	High         Nine   `json:"high"`
	Unit         string `json:"unit"`
	Status       string `json:"status"`
	Source       string `json:"source"`
	OverriddenBy string `json:"overridden_by"`
}

// replacedJSON is a datum that the route or the site replaced.
type replacedJSON struct {
	ID     string `json:"id"`
	Value  Nine   `json:"value"`
	Low    Nine   `json:"low"`
	High   Nine   `json:"high"`
	Unit   string `json:"unit"`
	Old    Nine   `json:"old"` // null where there was none
	Source string `json:"source"`
	At     string `json:"at"`
	From   string `json:"from"`
}

// milderJSON is a verdict that what was replaced made milder.
type milderJSON struct {
	Finding string `json:"finding"`
	Was     string `json:"was"`
	Is      string `json:"is"` // empty where the finding is gone
}

type sourceJSON struct {
	Key       string `json:"key"`
	Title     string `json:"title"`
	Publisher string `json:"publisher"`
	Year      string `json:"year"`
	DOI       string `json:"doi"`
	Section   string `json:"section"`
}

type balanceJSON struct {
	Element string          `json:"element"`
	In      Nine            `json:"in"`
	Out     map[string]Nine `json:"out"` // encoding/json sorts the keys
	Error   Nine            `json:"error"`
}

type seriesJSON struct {
	ID     string      `json:"id"`
	X      axisJSON    `json:"x"`
	Unit   string      `json:"unit"`
	Points [][2]Nine   `json:"points"`
	Events []eventJSON `json:"events"`
}

type axisJSON struct {
	Quantity string `json:"quantity"`
	Unit     string `json:"unit"`
}

type eventJSON struct {
	X    Nine   `json:"x"`
	Text string `json:"text"`
}

type assumptionJSON struct {
	ID     string     `json:"id"`
	Text   string     `json:"text"`
	Value  Nine       `json:"value"`
	Unit   string     `json:"unit"`
	Status string     `json:"status"`
	Moves  []moveJSON `json:"moves"`
}

type moveJSON struct {
	Figure string `json:"figure"`
	From   Nine   `json:"from"`
	To     Nine   `json:"to"`
}

type unknownJSON struct {
	ID      string   `json:"id"`
	Kind    string   `json:"kind"`
	Subject string   `json:"subject"`
	Step    int      `json:"step"`
	Text    string   `json:"text"`
	Measure string   `json:"measure"`
	Figures []string `json:"figures"`
}
