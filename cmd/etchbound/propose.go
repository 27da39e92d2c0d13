package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"etchbound/hazards/proposal"
	"etchbound/reports"
	"etchbound/scaling/levers"
)

func proposeCommand(s streams) *cobra.Command {
	var f files
	var format, output string
	c := &cobra.Command{
		Use:   "propose ROUTE",
		Short: "Search what would have to change of a route so that less of it exceeds",
		Long: "Search what a writer can change of a route, the smallest change first: times and portions of\n" +
			"additions, vents, closures, cooling and ice, temperatures, containers, water, neutraliser, cycles.\n" +
			"It tells what each change takes away, with numbers, what remains and why nothing reaches it.\n" +
			"With -o and a name that ends in .yaml it writes the changed route, comments and layout kept,\n" +
			"and prints the rest. The changed route is proposed, not tried: it is reviewed like a new one.\n" +
			"The format follows the suffix of -o (.md, .html, .pdf, .json, .yaml; without one, Markdown).",
		Example: "  etchbound propose testdata/routes/demo-lif-hcl-2g.yaml --site testdata/routes/site-demo.yaml",
		Args:    exactly(1, "one route file"),
		RunE: func(c *cobra.Command, args []string) error {
			f.route = args[0]
			if err := given(c, "site", "limits", "format", "output"); err != nil {
				return err
			}
			kind, err := proposalFormat(format, output, f, s)
			if err != nil {
				return err
			}
			found, err := proposed(f, s)
			if err != nil {
				return err
			}
			return deliverProposal(c, f, s, found, kind, output)
		},
	}
	caseFlags(c, &f)
	unitsFor(c, &f)
	c.Flags().StringVar(&format, "format", "", "markdown, html, pdf, json or yaml")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
}

// routeEndings are the endings of a route file.
var routeEndings = []string{".yaml", ".yml"}

// proposalFormat is formatOf with that of a route.
func proposalFormat(asked, output string, f files, s streams) (string, error) {
	ending := strings.ToLower(filepath.Ext(output))
	if asked == "yaml" || asked == "" && slices.Contains(routeEndings, ending) {
		return "yaml", mayWrite(output, f.inputs(), s)
	}
	return paperOf(asked, output, f.inputs(), s)
}

// proposed searches the route of some files.
func proposed(f files, s streams) (*levers.Found, error) {
	if f.route == "-" {
		return nil, input("propose: it changes a file, so it takes the name of one and no standard input")
	}
	c, err := load(f, s)
	if err != nil {
		return nil, err
	}
	text, err := open(f.route, s)
	if err != nil {
		return nil, err
	}
	tell, done := counting(s.err, "versions of the route assessed")
	found, err := levers.Search(proposal.File{Case: c, Text: text}, tell)
	done()
	if err != nil {
		return nil, input("%s: %v", shown(f.route), err)
	}
	return &found, nil
}

// counting tells on a terminal, and nowhere else, how many of most are done.
func counting(w io.Writer, what string) (tell func(n, most int), done func()) {
	if terminal(w) == nil {
		return func(int, int) {}, func() {}
	}
	return func(n, most int) { fmt.Fprintf(w, "\r\033[Ketchbound: %d %s, at most %d", n, what, most) },
		func() { fmt.Fprint(w, "\r\033[K") }
}

// deliverProposal writes a proposal: of a changed route that goes to a file the rest is
// printed.
func deliverProposal(c *cobra.Command, f files, s streams, x *levers.Found, kind, output string) error {
	o := f.options(false)
	if kind == "yaml" {
		err := deliver(output, f.inputs(), s, func(w io.Writer) error {
			_, err := w.Write(x.Text)
			return err
		})
		if err != nil || output == "" || output == "-" {
			return err
		}
		kind, output = "markdown", ""
	}
	return deliver(output, f.inputs(), s, printed(c.Context(), s, kind, func(w io.Writer, kind string) error {
		switch kind {
		case "json":
			return reports.ProposalJSON(w, x, o)
		case "html":
			return reports.HTML(w, reports.BuildProposal(x, o))
		}
		return reports.Markdown(w, reports.BuildProposal(x, o))
	}))
}
