package main

import (
	"io"

	"github.com/spf13/cobra"

	"etchbound/hazards"
	"etchbound/reports"
	"etchbound/reports/draft"
	"etchbound/scaling/measuring"
)

func measureCommand(s streams) *cobra.Command {
	c := &cobra.Command{
		Use:   "measure ROUTE",
		Short: "Say what to measure first, by what it would cut of the figures asked for first",
		Long: "Rank for each figure that people ask for first the experiments by how far they would bring its\n" +
			"dangerous end back to the best estimate, with pictures; how each experiment is made and the key\n" +
			"of the route that takes its result; and what is not known at all. The format follows the suffix\n" +
			"of -o (.html, .pdf, .json, else Markdown) unless --format names it.",
		Example: "  etchbound measure testdata/routes/demo-lif-hcl-2g.yaml",
	}
	return onePaper(s, c, false, func(r hazards.Review, o draft.Options) (twofold, error) {
		all := measuring.Of(&r)
		return twofold{reports.BuildMeasure(r, all, o),
			func(w io.Writer) error { return reports.MeasureJSON(w, &r, all, o) }}, nil
	})
}
