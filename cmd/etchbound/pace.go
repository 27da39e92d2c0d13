package main

import (
	"io"
	"math"

	"github.com/spf13/cobra"

	"etchbound/hazards"
	"etchbound/reports"
	"etchbound/reports/draft"
	"etchbound/scaling/pacing"
	"etchbound/schemas/quantity"
)

func paceCommand(s streams) *cobra.Command {
	var below string
	c := &cobra.Command{
		Use:   "pace ROUTE",
		Short: "Search how what reacts can be added, and when the addition is stopped",
		Long: "Search for each addition how it can be made with the cooling there is: the shortest even time,\n" +
			"portions, a slow beginning, held to a temperature, stopped and resumed; what piles up against\n" +
			"the share that is in and how hot it could get; and a stop rule in what a person sees. It is\n" +
			"kept below boiling, the technical limit or --below, whichever is lowest; below --below alone\n" +
			"where nobody knows at what the liquor boils. The format follows\n" +
			"the suffix of -o (.html, .pdf, .json, else Markdown) unless --format names it.",
		Example: "  etchbound pace testdata/routes/demo-lif-hcl-2g.yaml",
	}
	c.Flags().StringVar(&below, "below", "", "a temperature of your own that it stays below, such as \"40 degC\"")
	return onePaper(s, c, false, func(r hazards.Review, o draft.Options) (twofold, error) {
		limit, err := degrees(below)
		if err != nil {
			return twofold{}, err
		}
		all := pacing.Of(&r, limit)
		return twofold{reports.BuildPace(r, all, o),
			func(w io.Writer) error { return reports.PaceJSON(w, &r, all, o) }}, nil
	}, "below")
}

// degrees is a temperature of the command line in degC; not a number where none is given.
func degrees(text string) (float64, error) {
	if text == "" {
		return math.NaN(), nil
	}
	v, err := quantity.Parse(text, quantity.Temperature)
	if err != nil {
		return 0, input("--below: %v", err)
	}
	return v.In("degC"), nil
}
