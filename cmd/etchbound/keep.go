package main

import (
	"github.com/spf13/cobra"

	"etchbound/hazards"
	"etchbound/reports"
	"etchbound/reports/document"
	"etchbound/reports/draft"
)

func keepCommand(s streams) *cobra.Command {
	c := &cobra.Command{
		Use:   "keep ROUTE",
		Short: "Set side by side how the product of a route can be kept",
		Long: "Set side by side how stored product can be kept: cold, frozen, under argon, vented, with an\n" +
			"antioxidant, in isopropanol, dry. Each is the route with a few edits, assessed again: days to\n" +
			"10, 20 and 50 % lost, pressure at the end of the store, and the hazard that it brings itself;\n" +
			"what is weighed for the batch, what to watch, and when it goes to waste. None is recommended.\n" +
			"The same stands in the review. The format follows the suffix of -o (.html, .pdf, else\n" +
			"Markdown) unless --format names it.",
		Example: "  etchbound keep testdata/routes/demo-lif-hcl-2g.yaml",
	}
	return onePaper(s, c, true, func(r hazards.Review, o draft.Options) (document.Document, error) {
		return reports.BuildKeep(r, o), nil
	})
}
