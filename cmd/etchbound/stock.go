package main

import (
	"bytes"
	"errors"
	"io"
	"path/filepath"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/reports"
	"etchbound/scaling"
)

func stockCommand(s streams) *cobra.Command {
	var f files
	var format, output string
	var sameDay bool
	c := &cobra.Command{
		Use:   "stock ROUTE...",
		Short: "Add up what all routes of a site take and hold it against quantity thresholds",
		Long: "Add up every pure substance over all routes named, with the stock of the site file: what\n" +
			"one run takes, how many runs the stock holds, the share of each quantity threshold of the\n" +
			"jurisdiction, and the air of the hood if all routes run on the same day. A share is not\n" +
			"known without a site file. The format follows the suffix of -o (.html, .json, .csv, else\n" +
			"Markdown) unless --format names it; .csv is an inventory to be filled in.",
		Example: "  etchbound stock testdata/routes/demo-lif-hcl-2g.yaml testdata/routes/hf-50-10g.yaml --site " +
			"testdata/routes/site-demo.yaml",
		Args: severalRoutes,
		RunE: func(c *cobra.Command, args []string) error {
			if err := given(c, "site", "limits", "format", "output"); err != nil {
				return err
			}
			kind, err := paperOf(format, output, append(f.inputs(), args...), s, "csv")
			if err != nil {
				return err
			}
			h, err := addUp(args, f, s, sameDay)
			if err != nil {
				return err
			}
			return deliver(output, append(f.inputs(), args...), s,
				printed(c.Context(), s, kind, func(w io.Writer, kind string) error {
					return writeStock(w, h, kind, f.options(false))
				}))
		},
	}
	caseFlags(c, &f)
	unitsFor(c, &f)
	c.Flags().BoolVar(&sameDay, "same-day", true, "add up the air all routes need, as if they ran at once; false: "+
		"the route that needs most")
	c.Flags().StringVar(&format, "format", "", "markdown, html, pdf, json or csv")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
}

// mostRoutes is how many routes are added up at once; the masses of several runs
// add up by hand.
const mostRoutes = 10000

func severalRoutes(c *cobra.Command, args []string) error {
	if len(args) == 0 || len(args) > mostRoutes {
		return input("etchbound: stock needs 1 to %d route files, found %d (see %s --help)",
			mostRoutes, len(args), c.CommandPath())
	}
	return nil
}

func writeStock(w io.Writer, h *scaling.Holdings, kind string, o reports.Options) error {
	switch kind {
	case "json":
		return reports.StockJSON(w, h, o)
	case "csv":
		return reports.HoldingsCSV(w, h)
	case "html":
		return reports.HTML(w, reports.BuildStock(h, o))
	}
	return reports.Markdown(w, reports.BuildStock(h, o))
}

// addUp reads the routes and adds them up, each as it is read, and the site and limits
// once. Problems of all files are told together, in the order the files were named.
func addUp(names []string, f files, s streams, sameDay bool) (*scaling.Holdings, error) {
	if twice(append([]string{f.site, f.limits}, names...)...) {
		return nil, input("-: standard input can be only one of the files; name the others")
	}
	seen := map[string]bool{}
	for _, n := range names {
		if n = filepath.Clean(n); seen[n] {
			return nil, input("%s: this route is named twice, and would count twice", n)
		}
		seen[n] = true
	}
	site, local, siteErr := around(f, s)
	limits := limit.Base().With(local)
	errs, notes := make([]error, len(names)), make([]bytes.Buffer, len(names))
	done := waiting(s.err, "working out the routes")
	h, err := scaling.StockOf(site, limits, len(names), func(i int) (c route.Case, err error) {
		c, errs[i] = loadRoute(names[i], site, limits, streams{in: s.in, err: &notes[i]})
		return c, errs[i]
	}, sameDay, runtime.GOMAXPROCS(0))
	done()
	if err := allOf(append(errs, siteErr)); err != nil {
		return nil, err
	}
	for i := range notes {
		io.Copy(s.err, &notes[i])
	}
	if err != nil {
		return nil, input("%v", err)
	}
	return h, nil
}

func loadRoute(name string, site *route.Site, limits *limit.Set, s streams) (route.Case, error) {
	raw, err := open(name, s)
	if err != nil {
		return route.Case{}, err
	}
	r, problems, err := route.Load(shown(name), bytes.NewReader(raw))
	if err != nil {
		return route.Case{}, err
	}
	if err := refuse(problems, s); err != nil {
		return route.Case{}, err
	}
	c, err := route.NewCase(r, site, limits)
	if err != nil {
		return c, input("%s: %v", shown(name), err)
	}
	return c, nil
}

// allOf joins mistakes of input into one; another error comes first.
func allOf(errs []error) error {
	var texts []string
	for _, err := range errs {
		var in *inputError
		switch {
		case err == nil:
		case errors.As(err, &in):
			texts = append(texts, in.text)
		default:
			return err
		}
	}
	if texts == nil {
		return nil
	}
	return &inputError{strings.Join(texts, "\n")}
}
