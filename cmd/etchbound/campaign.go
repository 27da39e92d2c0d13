package main

import (
	"io"
	"strings"

	"github.com/spf13/cobra"

	"etchbound/hazards"
	"etchbound/reports"
	"etchbound/scaling/campaign"
	"etchbound/schemas/quantity"
)

// planned are the flags of a campaign.
type planned struct {
	batches, perWeek, records int
	hours, weeks, kept        float64
	sizes                     []string
}

func campaignCommand(s streams) *cobra.Command {
	var f files
	var format, output string
	var p planned
	c := &cobra.Command{
		Use:   "campaign ROUTE",
		Short: "Work out what a route comes to that is made again and again, with batch records to fill in",
		Long: "Work out how many batches a week the vessels and the people of a route allow, what a week and\n" +
			"a year take and leave, what containers that fills, what has to be kept against the quantity\n" +
			"thresholds, and what fewer and larger batches would change. A sheet to fill in is printed for\n" +
			"each of --records batches. A step without a time makes the batches a week a bound. The format\n" +
			"follows the suffix of -o (.html, .pdf, .json, else Markdown) unless --format names it.",
		Example: "  etchbound campaign testdata/routes/demo-lif-hcl-2g.yaml --batches 20 --sizes \"10 g, 40 g\"",
		Args:    exactly(1, "one route file"),
		RunE: func(c *cobra.Command, args []string) error {
			f.route = args[0]
			if err := given(c, "site", "limits", "batch", "format", "output"); err != nil {
				return err
			}
			kind, err := paperOf(format, output, f.inputs(), s)
			if err != nil {
				return err
			}
			a, err := p.asked()
			if err != nil {
				return err
			}
			r, err := reviewOf(f, false, s)
			if err != nil {
				return err
			}
			return p.write(c, s, f, &r, a, kind, output)
		},
	}
	caseFlags(c, &f)
	unitsFor(c, &f)
	c.Flags().StringVar(&f.batch, "batch", "", "at this mass of powder, such as \"50 g\"")
	c.Flags().IntVar(&p.batches, "batches", 10, "how many batches in all, 1 to 10000")
	c.Flags().IntVar(&p.perWeek, "per-week", 0, "batches a week that are planned; 0: as many as there can be")
	c.Flags().Float64Var(&p.hours, "hours", 40, "hours that people have for it in a week, over 0 to 2000")
	c.Flags().Float64Var(&p.weeks, "weeks", 46, "weeks worked in a year, over 0 to 53")
	c.Flags().Float64Var(&p.kept, "kept", 4, "weeks whose reagents stand on site at once, over 0 to 53")
	c.Flags().StringSliceVar(&p.sizes, "sizes", nil, "other batches to set beside, such as \"10 g, 40 g\"; at most 6")
	c.Flags().IntVar(&p.records, "records", 1, "batches to print a record for, 0 to 200")
	c.Flags().StringVar(&format, "format", "", "markdown, html, pdf or json")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
}

// mostSizes is how many batches are set beside that of the route: each is a review.
const mostSizes = 6

// asked are the flags as numbers that make sense.
func (p *planned) asked() (campaign.Asked, error) {
	a := campaign.Asked{Batches: p.batches, PerWeek: p.perWeek, Hours: p.hours, Weeks: p.weeks, Kept: p.kept}
	for _, x := range [...]struct {
		flag        string
		v, low, top float64
	}{{"batches", float64(p.batches), 1, 10000}, {"per-week", float64(p.perWeek), 0, 10000},
		{"hours", p.hours, 1e-6, 2000},
		{"weeks", p.weeks, 1e-6, 53}, {"kept", p.kept, 1e-6, 53}, {"records", float64(p.records), 0, 200},
		{"sizes", float64(len(p.sizes)), 0, mostSizes}} {
		if !(x.v >= x.low && x.v <= x.top) {
			return a, input("--%s: found %g, accepted is up to %g", x.flag, x.v, x.top)
		}
	}
	for _, text := range p.sizes {
		v, err := quantity.Parse(strings.TrimSpace(text), quantity.Mass)
		if err != nil || !(v.SI > 0) {
			return a, input("--sizes: %q is no mass of powder such as \"10 g\"", text)
		}
		a.Sizes = append(a.Sizes, v)
	}
	return a, nil
}

func (p *planned) write(c *cobra.Command, s streams, f files, r *hazards.Review, a campaign.Asked, kind,
	output string) error {
	done := waiting(s.err, "working out the other sizes")
	x, err := campaign.Of(r, a)
	done()
	if err != nil {
		return input("%s: %v", shown(f.route), err)
	}
	o := f.options(false)
	return deliver(output, f.inputs(), s,
		printed(c.Context(), s, kind, func(w io.Writer, kind string) error {
			switch kind {
			case "json":
				return reports.CampaignJSON(w, &x, o)
			case "html":
				return reports.HTML(w, reports.BuildCampaign(&x, p.records, o))
			}
			return reports.Markdown(w, reports.BuildCampaign(&x, p.records, o))
		}))
}
