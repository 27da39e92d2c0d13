package route

import (
	"embed"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"text/template"

	"etchbound/chemicals"
	"etchbound/schemas/quantity"
)

// starterFiles are the route templates the binary carries.
//
//go:embed starters/*.yaml
var starterFiles embed.FS

// Starter is a commented route file a writer can begin from.
type Starter struct {
	Name  string // what WriteStarter takes
	Title string // one line for a list
}

// Starters lists the starters, the plainest etchant first.
func Starters() []Starter {
	return []Starter{
		{"hf", "dilute hydrofluoric acid"},
		{"salt-acid", "lithium fluoride and hydrochloric acid"},
		{"hf-hcl", "hydrofluoric and hydrochloric acid, lithium chloride to open the layers"},
		{"bifluoride", "ammonium bifluoride"},
	}
}

// WriteStarter writes the starter called name for batch (a mass above zero) of
// powder of the given phase, a formula such as Ti3AlC2. The amounts are in
// proportion to the powder; above one gram times of addition grow with the cube root of
// the mass, the least that geometry asks, up to seven hours, and bores with its square
// root, as the gas that comes all by itself asks.
func WriteStarter(w io.Writer, name, phase string, batch quantity.Value) error {
	if !starterNamed(name) {
		return fmt.Errorf("no starter is called %q: there are %s", name, starterNames())
	}
	if _, err := chemicals.ParseFormula(phase); err != nil {
		return fmt.Errorf("the phase of a starter is a formula such as Ti3AlC2: %w", err)
	}
	if batch.Dim != quantity.Mass || !(batch.SI > 0) || math.IsInf(batch.SI, 1) {
		return fmt.Errorf("the batch of a starter is a mass above zero, such as 2 g, not %q", batch.Text)
	}
	grams := batch.SI * 1000
	t, err := template.New(name+".yaml").Funcs(template.FuncMap{
		"amount":  func(perGram, least float64) string { return figures(max(perGram*grams, least), 3) },
		"growing": func(atOneGram float64) string { return figures(atOneGram*max(1, math.Cbrt(grams)), 2) },
		"addition": func(atOneGram, capacity float64) string {
			return figures(min(longestAddition, atOneGram*max(1, math.Cbrt(grams))*thicker(capacity*grams)), 2)
		},
		"wall": func(thin, capacity float64) string { return wall(thin, capacity*grams) },
		"bore": func(atOneGram float64) string { return figures(atOneGram*max(1, math.Sqrt(grams)), 2) },
	}).ParseFS(starterFiles, "starters/"+name+".yaml")
	if err != nil {
		return err
	}
	return t.Execute(w, struct{ Phase, Batch string }{phase, batchText(batch, grams)})
}

// longestAddition is in minutes, less than the shortest etch of the starters: what takes
// more wants another vessel, and no other number in a starter.
const longestAddition = 420

// thicker is how much longer an addition takes where a bottle of a capacity in mL is so
// big that its wall is taken as a thick one, through which the bath takes less.
func thicker(capacity float64) float64 {
	if capacity/1000 > chemicals.Base().Num("wall.big").V {
		return 3
	}
	return 1
}

// wall is the line of the wall of a bottle of a capacity in mL: as thin as bottles are, in
// mm, to be measured; a comment where a bottle is so big that it may be a thick one.
func wall(thin, capacity float64) string {
	if thicker(capacity) > 1 {
		return "# wall: 10 mm # FILL IN if measured: left out, so big a vessel counts as thick-walled"
	}
	return "wall: " + figures(thin, 2) + " mm # FILL IN, measured: left out, the bath takes least"
}

// batchText is the batch as the writer gave it, or in grams if he gave none.
func batchText(batch quantity.Value, grams float64) string {
	if batch.Text != "" {
		return batch.Text
	}
	return figures(grams, 6) + " g"
}

// figures rounds x to n significant figures and writes it without an exponent,
// which a reader of a route file should not have to count.
func figures(x float64, n int) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', n-1, 64), 64)
	if err != nil {
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

func starterNamed(name string) bool {
	for _, s := range Starters() {
		if s.Name == name {
			return true
		}
	}
	return false
}

func starterNames() string {
	var names []string
	for _, s := range Starters() {
		names = append(names, s.Name)
	}
	return strings.Join(names, ", ")
}
