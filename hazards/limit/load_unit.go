package limit

import (
	"io"
	"strings"

	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

// plainUnit strips what the catalogue adds to a unit for readers, such as the
// "as HF" of g as HF and the gauge of kPa gauge.
func plainUnit(unit string) string {
	head, _, _ := strings.Cut(unit, " ")
	if head == "1" {
		return ""
	}
	return head
}

// inCatalogueUnit reads a limit in the unit of its quantity, whose dimension
// settles symbols such as K that serve two.
func inCatalogueUnit(text, unit string) (float64, error) {
	unit = plainUnit(unit)
	if unit == "" {
		v, err := quantity.Parse(text, quantity.None)
		return v.SI, err
	}
	dims := []quantity.Dimension{quantity.TemperatureDiff}
	if unit != "K" {
		d, _ := quantity.DimensionOf(unit)
		dims[0] = d
	}
	v, err := quantity.Parse(text, dims...)
	if err != nil {
		return 0, err
	}
	return v.In(unit), nil
}

// near is where near begins: a share of the limit, or for a temperature point
// the kelvins below it; 0 stands for the usual margin.
func (e Entry) near(unit string) (float64, error) {
	want := quantity.Fraction
	if plainUnit(unit) == "degC" {
		want = quantity.TemperatureDiff
	}
	if !e.Margin.Set {
		return 0, nil
	}
	v, err := quantity.Parse(e.Margin.Text, want)
	if err == nil && v.SI == 0 {
		err = &quantity.Error{Reason: quantity.ErrSize, Text: e.Margin.Text, What: "a margin of nothing",
			Accepted: "more than zero",
			Hint:     "write near: 100 % for no margin"}
	}
	return v.SI, err
}

// Load reads a limits file into the units of the catalogue. The set is nil
// where any problem is an error. The error is one of reading r.
func Load(name string, r io.Reader, c Catalogue) (*Set, []schemas.Problem, error) {
	f, problems, err := LoadFile(name, r)
	if err != nil || f == nil {
		return nil, problems, err
	}
	s, more := f.Resolve(c)
	problems = schemas.Sorted(append(problems, more...))
	if schemas.Refused(problems) {
		return nil, problems, nil
	}
	return s, problems, nil
}
