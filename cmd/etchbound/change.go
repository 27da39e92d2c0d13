package main

import (
	"cmp"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"etchbound/reports"
	"etchbound/scaling"
)

func changeCommand(s streams) *cobra.Command {
	var f, reviewed files
	var format, output string
	c := &cobra.Command{
		Use:   "change REVIEWED PROPOSED",
		Short: "Say what a proposed route changes of a reviewed one, and whether it goes back to review",
		Long: "List the inputs that differ between two routes, the figures and verdicts that move and by how\n" +
			"much, and the rules by which the change goes back to be reviewed; a site file may set their\n" +
			"values. Site and limits are those of both routes, unless those of the review are named: then\n" +
			"what changed in them is listed too, and the rules are those of the site of the review.\n" +
			"The first page is a sheet to sign. The exit code is 1 if a rule is met.\n" +
			"The format follows the suffix of -o (.md, .html, .pdf, .json, .csv; without one, Markdown).",
		Example: "  etchbound change testdata/routes/demo-lif-hcl-2g.yaml testdata/routes/demo-lif-hcl-2g.yaml " +
			"--batch \"2.1 g\"",
		Args: exactly(2, "two route files: the reviewed one and the proposed one"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := given(cmd, "site", "limits", "batch", "reviewed-batch", "reviewed-site", "reviewed-limits", "format",
				"output"); err != nil {
				return err
			}
			inputs := append(append(f.inputs(), reviewed.inputs()...), args...)
			kind, err := paperOf(format, output, inputs, s, "csv")
			if err != nil {
				return err
			}
			x, err := bothRoutes(f, reviewed, args, s)
			if err != nil {
				return err
			}
			err = deliver(output, inputs, s,
				printed(cmd.Context(), s, kind, func(w io.Writer, kind string) error {
					return writeChange(w, x, kind, f.options(false))
				}))
			if err != nil || len(x.Fired) == 0 {
				return err
			}
			return &reached{rulesMet(x)}
		},
	}
	caseFlags(c, &f)
	unitsFor(c, &f)
	c.Flags().StringVar(&f.batch, "batch", "", "the proposed route at this mass of powder, such as \"50 g\"")
	c.Flags().StringVar(&reviewed.batch, "reviewed-batch", "", "the reviewed route at this mass of powder")
	c.Flags().StringVar(&reviewed.site, "reviewed-site", "", "site file the review was made with, if another one")
	c.Flags().StringVar(&reviewed.limits, "reviewed-limits", "", "limits file the review was made with, if another one")
	c.Flags().StringVar(&format, "format", "", "markdown, html, pdf, json or csv")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
}

func bothRoutes(proposed, reviewed files, routes []string, s streams) (scaling.Change, error) {
	var none scaling.Change
	if twice(routes[0], routes[1], proposed.site, proposed.limits, reviewed.site, reviewed.limits) {
		return none, input("-: standard input can be only one of the files; name the others")
	}
	reviewed.route, proposed.route = routes[0], routes[1]
	reviewed.site, reviewed.limits = cmp.Or(reviewed.site, proposed.site), cmp.Or(reviewed.limits, proposed.limits)
	a, err := load(reviewed, s)
	if err != nil {
		return none, err
	}
	b, err := load(proposed, s)
	if err != nil {
		return none, err
	}
	defer waiting(s.err, "working out both routes")()
	x, err := scaling.TriggersOf(a.Site).Compare(a, b)
	if err != nil {
		return none, input("%v", err)
	}
	return x, nil
}

func rulesMet(x scaling.Change) string {
	var at []string
	for i := range x.Fired {
		f := &x.Fired[i]
		first := &f.Met[0]
		line := fmt.Sprintf("  %s, %s: %s, now %s", f.ID, reports.MetAt(first), first.Was, first.Is)
		if more := len(f.Met) - 1; more > 0 {
			line += fmt.Sprintf("; and %d more", more)
		}
		at = append(at, line)
	}
	return fmt.Sprintf("rules for a new review that are met: %d\n%s", len(at), strings.Join(at, "\n"))
}

func writeChange(w io.Writer, x scaling.Change, kind string, o reports.Options) error {
	switch kind {
	case "json":
		return reports.ChangeJSON(w, x, o)
	case "csv":
		return reports.ChangeCSV(w, x)
	case "html":
		return reports.HTML(w, reports.BuildChange(x, o))
	}
	return reports.Markdown(w, reports.BuildChange(x, o))
}
