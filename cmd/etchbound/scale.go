package main

import (
	"context"
	"io"

	"github.com/spf13/cobra"

	"etchbound/reports"
	"etchbound/reports/plain"
	"etchbound/scaling"
	"etchbound/schemas/quantity"
)

func scaleCommand(s streams) *cobra.Command {
	var f files
	var from, to, format, output string
	var follow []string
	pots := 10
	var d drawing
	c := &cobra.Command{
		Use:   "scale ROUTE --from MASS --to MASS",
		Short: "Find the batch at which each safeguard is outgrown",
		Long: "Assess the route from one mass of powder to another and find for every finding the batch at\n" +
			"which it turns near, exceeds or cannot be known, what each batch takes, and how things grow.\n" +
			"Amounts and containers grow with the batch; strengths, temperatures, holds, hood and room\n" +
			"never do. --follow says what follows beside that: vessel (from a list of sizes), addition\n" +
			"(stretched to what cooling follows), cooling (a stated UA and jacket as in a similar vessel).\n" +
			"The format follows the suffix of -o (.md, .html, .pdf, .json, .csv; without one, Markdown).",
		Example: "  etchbound scale testdata/routes/demo-lif-hcl-2g.yaml --from \"1 g\" --to \"1 kg\"",
		Args:    exactly(1, "one route file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			f.route = args[0]
			if err := given(cmd, "site", "limits", "from", "to", "format", "output"); err != nil {
				return err
			}
			if err := d.asked(cmd); err != nil {
				return err
			}
			kind, err := paperOf(format, output, f.inputs(), s, "csv")
			if err != nil {
				return err
			}
			along, err := following(follow)
			if err != nil {
				return err
			}
			g, split, err := grown(f, from, to, along, pots, s)
			if err != nil {
				return err
			}
			if err := d.into(cmd.Context(), s, func(ctx context.Context,
				show func(int)) error {
				return g.Draw(ctx, d.n, d.seed, d.workers, show)
			}); err != nil {
				return err
			}
			return deliver(output, f.inputs(), s,
				printed(cmd.Context(), s, kind, func(w io.Writer, kind string) error {
					return writeGrowth(w, g, split, kind, f.options(false))
				}))
		},
	}
	caseFlags(c, &f)
	unitsFor(c, &f)
	d.flags(c)
	c.Flags().StringVar(&from, "from", "1 g", "smallest batch")
	c.Flags().StringVar(&to, "to", "10 kg", "largest batch")
	c.Flags().StringSliceVar(&follow, "follow", nil, "what follows the batch: vessel, addition, cooling")
	c.Flags().IntVar(&pots, "pots", pots, "number of small batches that the largest is set beside")
	c.Flags().StringVar(&format, "format", "", "markdown, html, pdf, json or csv")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
}

func following(words []string) (scaling.Follow, error) {
	var out scaling.Follow
	for _, w := range words {
		switch w {
		case "vessel":
			out.Vessel = true
		case "addition":
			out.Addition = true
		case "cooling":
			out.Cooling = true
		default:
			return out, input("--follow: found %q, accepted are vessel, addition and cooling, joined by commas", w)
		}
	}
	return out, nil
}

func grown(f files, from, to string, along scaling.Follow, pots int, s streams) (*scaling.Growth, scaling.Split,
	error) {
	var none scaling.Split
	lo, err := quantity.Parse(from, quantity.Mass)
	if err != nil {
		return nil, none, input("--from: %v", err)
	}
	hi, err := quantity.Parse(to, quantity.Mass)
	if err != nil {
		return nil, none, input("--to: %v", err)
	}
	if pots < 2 || pots > scaling.MostPots {
		return nil, none, input("--pots: %d pots: one large batch is set beside 2 to %d small ones", pots, scaling.MostPots)
	}
	c, err := load(f, s)
	if err != nil {
		return nil, none, err
	}
	defer waiting(s.err, "working out "+plain.Printable(shown(f.route)))()
	g, err := scaling.Grow(c, lo, hi, along)
	if err != nil {
		return nil, none, input("%s: %v", shown(f.route), err)
	}
	split, err := g.Split(pots)
	if err != nil {
		return nil, none, input("--pots: %v", err)
	}
	return g, split, nil
}

func writeGrowth(w io.Writer, g *scaling.Growth, split scaling.Split, kind string, o reports.Options) error {
	switch kind {
	case "json":
		return reports.GrowthJSON(w, g, split, o)
	case "csv":
		return reports.GrowthCSV(w, g)
	case "html":
		return reports.HTML(w, reports.BuildGrowth(g, split, o))
	}
	return reports.Markdown(w, reports.BuildGrowth(g, split, o))
}
