package main

import (
	"io"
	"math"

	"github.com/spf13/cobra"

	"etchbound/reports"
	"etchbound/scaling/pacing"
	"etchbound/schemas/quantity"
)

func paceCommand(s streams) *cobra.Command {
	var f files
	var format, output, below string
	c := &cobra.Command{
		Use:   "pace ROUTE",
		Short: "Search how what reacts can be added, and when the addition is stopped",
		Long: "Search for each addition how it can be made with the cooling there is: the shortest even time,\n" +
			"portions, a slow beginning, held to a temperature, stopped and resumed; what piles up against\n" +
			"the share that is in and how hot it could get; and a stop rule in what a person sees. It is\n" +
			"kept below boiling, the technical limit or --below, whichever is lowest. The format follows\n" +
			"the suffix of -o (.html, .pdf, else Markdown) unless --format names it.",
		Example: "  etchbound pace testdata/routes/demo-lif-hcl-2g.yaml",
		Args:    exactly(1, "one route file"),
		RunE: func(c *cobra.Command, args []string) error {
			f.route = args[0]
			if err := given(c, "site", "limits", "batch", "below", "format", "output"); err != nil {
				return err
			}
			kind, err := formatOf(format, output)
			if err != nil {
				return err
			}
			if kind == "json" {
				return input("pace: found json, accepted are markdown, html and pdf")
			}
			limit, err := degrees(below)
			if err != nil {
				return err
			}
			r, err := reviewOf(f, false, s)
			if err != nil {
				return err
			}
			found := pacing.Of(&r, limit)
			return deliver(output, []string{f.route, f.site, f.limits}, s,
				printed(c.Context(), s, kind, func(w io.Writer, kind string) error {
					d := reports.BuildPace(r, found, f.options(false))
					if kind == "html" {
						return reports.HTML(w, d)
					}
					return reports.Markdown(w, d)
				}))
		},
	}
	caseFlags(c, &f)
	unitsFor(c, &f)
	c.Flags().StringVar(&f.batch, "batch", "", "at this mass of powder, such as \"50 g\"")
	c.Flags().StringVar(&below, "below", "", "a temperature of your own that it stays below, such as \"40 degC\"")
	c.Flags().StringVar(&format, "format", "", "markdown, html or pdf")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
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
