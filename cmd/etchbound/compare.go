package main

import (
	"context"
	"io"

	"github.com/spf13/cobra"

	"etchbound/hazards/route"
	"etchbound/reports"
	"etchbound/scaling"
)

func compareCommand(s streams) *cobra.Command {
	var f files
	var format, output string
	var d drawing
	c := &cobra.Command{
		Use:   "compare ROUTE ROUTE...",
		Short: "Set routes side by side, a batch and a gram of product of each",
		Long: "Set two to eight routes side by side: fluoride, heat, gas, vapour, water, neutraliser and hours,\n" +
			"per batch and per gram of product. A quantity tells routes apart only where no ranges overlap\n" +
			"and nothing is unknown; what each gives less of is named, and no score is made of it.\n" +
			"The format follows the suffix of -o (.md, .html, .pdf, .json, .csv; without one, Markdown).",
		Example: "  etchbound compare testdata/routes/demo-lif-hcl-2g.yaml testdata/routes/mo2tialc2-hf-2g.yaml",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) < 2 {
				return exactly(2, "at least two route files")(c, args)
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := given(cmd, "site", "limits", "batch", "format", "output"); err != nil {
				return err
			}
			if err := d.asked(cmd); err != nil {
				return err
			}
			kind, err := paperOf(format, output, append(f.inputs(), args...), s, "csv")
			if err != nil {
				return err
			}
			if twice(append(args, f.site, f.limits)...) {
				return input("-: standard input can be only one of the files; name the others")
			}
			x, err := compared(f, args, s)
			if err != nil {
				return err
			}
			if err := d.into(cmd.Context(), s, func(ctx context.Context,
				show func(int)) error {
				return x.Draw(ctx, d.n, d.seed, d.workers, show)
			}); err != nil {
				return err
			}
			return deliver(output, append(f.inputs(), args...), s,
				printed(cmd.Context(), s, kind, func(w io.Writer, kind string) error {
					return writeComparison(w, x, kind, f.options(false))
				}))
		},
	}
	caseFlags(c, &f)
	unitsFor(c, &f)
	d.flags(c)
	c.Flags().StringVar(&f.batch, "batch", "", "all routes at this mass of powder, such as \"50 g\"")
	c.Flags().StringVar(&format, "format", "", "markdown, html, pdf, json or csv")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
}

func compared(f files, routes []string, s streams) (scaling.Comparison, error) {
	var cases []route.Case
	for _, name := range routes {
		one := f
		one.route = name
		c, err := load(one, s)
		if err != nil {
			return scaling.Comparison{}, err
		}
		cases = append(cases, c)
	}
	defer waiting(s.err, "working out the routes")()
	x, err := scaling.Compare(cases)
	if err != nil {
		return x, input("%v", err)
	}
	return x, nil
}

func writeComparison(w io.Writer, x scaling.Comparison, kind string, o reports.Options) error {
	switch kind {
	case "json":
		return reports.CompareJSON(w, x, o)
	case "csv":
		return reports.CompareCSV(w, x)
	case "html":
		return reports.HTML(w, reports.BuildComparison(x, o))
	}
	return reports.Markdown(w, reports.BuildComparison(x, o))
}
