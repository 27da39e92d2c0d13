package main

import (
	"io"

	"github.com/spf13/cobra"

	"etchbound/hazards"
	"etchbound/reports"
	"etchbound/reports/draft"
	"etchbound/scaling/scrubbing"
)

func offgasCommand(s streams) *cobra.Command {
	c := &cobra.Command{
		Use:   "offgas ROUTE",
		Short: "Size what the gas of a route needs on its way out",
		Long: "Size for each place whose gas is led away: base, liquor and column of a scrubber, hours until it\n" +
			"is spent and what leaves it; the line for the gas, with a bound for liquor that comes with it;\n" +
			"what is drawn back and the trap for it; purge and condenser; and the duct and stack of the hood.\n" +
			"Every number stands at its best estimate and at its dangerous end. Hydrogen goes past all of it.\n" +
			"The format follows the suffix of -o (.html, .pdf, .json, else Markdown) unless --format names it.",
		Example: "  etchbound offgas testdata/routes/reactor-50g.yaml --site testdata/routes/site-demo.yaml",
	}
	return onePaper(s, c, false, func(r hazards.Review, o draft.Options) (twofold, error) {
		all, err := scrubbing.Of(&r)
		if err != nil {
			return twofold{}, err
		}
		out := scrubbing.OutOf(&r)
		return twofold{reports.BuildOffGas(r, all, out, o),
			func(w io.Writer) error { return reports.OffGasJSON(w, &r, all, out, o) }}, nil
	})
}
