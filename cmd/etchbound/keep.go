package main

import (
	"io"

	"github.com/spf13/cobra"

	"etchbound/hazards"
	"etchbound/reports"
	"etchbound/reports/draft"
	"etchbound/scaling/keeping"
)

func keepCommand(s streams) *cobra.Command {
	c := &cobra.Command{
		Use:   "keep ROUTE",
		Short: "Set side by side how the product of a route can be kept",
		Long: "Set side by side how stored product can be kept: cold, frozen, under argon, vented, with an\n" +
			"antioxidant, in isopropanol, dry. Each is the route with a few edits, assessed again: days to\n" +
			"10, 20 and 50 % lost, pressure at the end of the store, and the hazard that it brings itself;\n" +
			"what is weighed for the batch, what to watch, and when it goes to waste. None is recommended.\n" +
			"The same stands in the review, without the curves over time. The format follows the suffix of\n" +
			"-o (.html, .pdf, .json, else Markdown) unless --format names it.",
		Example: "  etchbound keep testdata/routes/demo-lif-hcl-2g.yaml",
	}
	return onePaper(s, c, true, func(r hazards.Review, o draft.Options) (twofold, error) {
		ways, err := keeping.Of(r.Case)
		if err != nil {
			return twofold{}, err
		}
		keeping.Trace(ways)
		return twofold{reports.BuildKeep(r, ways, o),
			func(w io.Writer) error { return reports.KeepJSON(w, &r, ways, o) }}, nil
	})
}
