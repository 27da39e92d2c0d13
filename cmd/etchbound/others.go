package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"etchbound/chemicals"
	"etchbound/chemicals/etching"
	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/reports"
	"etchbound/reports/words"
	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

func checkCommand(s streams) *cobra.Command {
	var f files
	c := &cobra.Command{
		Use:   "check ROUTE",
		Short: "Say whether a route file is written right, without reviewing it",
		Long: "Read a route file, and a site or limits file if named, and list every mistake at once:\nfile, line, " +
			"column, what was found and what is accepted.",
		Example: "  etchbound check testdata/routes/demo-lif-hcl-2g.yaml",
		Args:    exactly(1, "one route file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			f.route = args[0]
			if err := given(cmd, "site", "limits"); err != nil {
				return err
			}
			c, err := load(f, s)
			if err != nil {
				return err
			}
			c.Brief = true // mistakes of writing need no failures
			a := hazards.Assess(c, nil)
			if a.Err != nil {
				return input("%s: %v", shown(f.route), a.Err)
			}
			text := fmt.Sprintf("%s: no mistakes found in %s and %s\n", shown(f.route),
				many(len(c.Route.Steps), "step"), many(len(c.Route.Places), "place"))
			for _, n := range a.Warnings {
				text += "  note: " + words.Say(n) + "\n"
			}
			for _, f := range a.Walk.Facts {
				if f.ID == "overfull" {
					text += "  note: " + words.Say(f.Says) + "\n"
				}
			}
			_, err = io.WriteString(s.out, text)
			return err
		},
	}
	caseFlags(c, &f)
	return c
}

func starterCommand(s streams) *cobra.Command {
	var phase, batch, output string
	names := starterNames()
	long := "Write a commented route to start from, to standard output or a file:\n"
	for _, st := range route.Starters() {
		long += fmt.Sprintf("  %-10s %s\n", st.Name, st.Title)
	}
	c := &cobra.Command{
		Use:     "starter NAME",
		Short:   "Write one of four commented routes to start from",
		Long:    long,
		Example: "  etchbound starter salt-acid --precursor Ti3AlC2 --batch \"2 g\"",
		Args:    exactly(1, "the name of a starter: "+strings.Join(names, ", ")),
		RunE: func(_ *cobra.Command, args []string) error {
			if !slices.Contains(names, args[0]) {
				return input("etchbound: no starter %q; there are %s", args[0], strings.Join(names, ", "))
			}
			if err := layered(phase); err != nil {
				return err
			}
			m, err := quantity.Parse(batch, quantity.Mass)
			if err != nil {
				return input("--batch: %v", err)
			}
			if !(m.SI > 0) {
				return input("--batch: found %s, accepted is a mass above zero such as \"1 g\"", batch)
			}
			if _, err := os.Stat(output); output != "" && output != "-" && err == nil {
				return input("%s: there is a file of this name, and a starter does not replace what somebody may have "+
					"written; choose another name", output)
			}
			return deliver(output, nil, s, func(w io.Writer) error {
				if err := route.WriteStarter(w, args[0], phase, m); err != nil {
					return input("etchbound: %v", err)
				}
				return nil
			})
		},
	}
	c.Flags().StringVar(&phase, "precursor", "Ti3AlC2", "formula of the layered powder")
	c.Flags().StringVar(&batch, "batch", "1 g", "mass of powder")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write")
	return c
}

// layered refuses a formula that is no layered precursor.
func layered(phase string) error {
	f, err := chemicals.ParseFormula(phase)
	if err != nil {
		return input("--precursor: %v; name a phase such as Ti3AlC2", err)
	}
	if _, err := etching.Split(chemicals.Base(), nil, f, nil); err != nil {
		return input("--precursor: %v; name a phase such as Ti3AlC2", err)
	}
	return nil
}

func dataCommand(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "data [SUBSTANCE or ID]",
		Short: "Show the data: values, ranges, sources and how far they can be trusted",
		Long: "Show the data rows of a substance, of one id, or of all ids that begin with what is named;\nwithout " +
			"an argument, all of them.",
		Example: "  etchbound data etch_heat.Ti3AlC2",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) > 1 {
				return input("etchbound: data takes one substance or id, found %d arguments", len(args))
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			query := strings.Join(args, "")
			return deliver("", nil, s, func(w io.Writer) error {
				if err := reports.WriteData(w, chemicals.Base(), query); err != nil {
					return input("etchbound: %v", err)
				}
				return nil
			})
		},
	}
}

func explainCommand(s streams) *cobra.Command {
	var f files
	c := &cobra.Command{
		Use:   "explain ROUTE FIGURE",
		Short: "Show how one figure of the review was worked out, down to the data",
		Long: "Show how one figure was worked out: formula, inputs with units, the data rows and the places " +
			"in\nthe route it rests on. FIGURE is an id of the review, such as heat.adiabatic_rise@2.",
		Example: "  etchbound explain testdata/routes/demo-lif-hcl-2g.yaml gas.hydrogen.total",
		Args:    exactly(2, "a route file and the id of a figure"),
		RunE: func(c *cobra.Command, args []string) error {
			f.route = args[0]
			if err := given(c, "site", "limits", "batch"); err != nil {
				return err
			}
			r, err := reviewOf(f, false, s)
			if err != nil {
				return err
			}
			return deliver("", nil, s, func(w io.Writer) error {
				if err := reports.Explain(w, r, args[1]); err != nil {
					return input("etchbound: %v", err)
				}
				return nil
			})
		},
	}
	caseFlags(c, &f)
	c.Flags().StringVar(&f.batch, "batch", "", "at this mass of powder")
	return c
}

func schemaCommand(s streams) *cobra.Command {
	names := schemaNames()
	return &cobra.Command{
		Use:   "schema NAME",
		Short: "Print the JSON Schema of a file that is read or written",
		Long: "Print the JSON Schema of a file people write (route, site, limits), of what a command writes\n" +
			"as JSON (review, upset, scale, change, compare, stock, propose,\n" +
			"pace, measure, campaign) or, with .csv, of one row of a CSV.\n" +
			"NAME is one of:\n  " + strings.Join(names, ", "),
		Example: "  etchbound schema route\n  etchbound schema scale.csv",
		Args:    exactly(1, "one of "+strings.Join(names, ", ")),
		RunE: func(_ *cobra.Command, args []string) error {
			if slices.Contains(peopleWrite, args[0]) {
				b, _ := schemas.Schema(args[0])
				_, err := s.out.Write(b)
				return err
			}
			b, there, err := reports.Schema(args[0])
			if err != nil {
				return err
			}
			if !there {
				return input("etchbound: no schema %q; there are %s", args[0], strings.Join(names, ", "))
			}
			_, err = s.out.Write(b)
			return err
		},
	}
}

func versionCommand(s streams) *cobra.Command {
	var changes bool
	c := &cobra.Command{
		Use:   "version",
		Short: "Print the version of the program and of its data",
		Long: "Print the version of the program and of the data it carries. With --changes print every key,\n" +
			"id, format and figure that a version changed, newest first.",
		Example: "  etchbound version --changes",
		Args:    noArgs,
		RunE: func(*cobra.Command, []string) error {
			text := versionText()
			if changes {
				text = changesText()
			}
			_, err := io.WriteString(s.out, text)
			return err
		},
	}
	c.Flags().BoolVar(&changes, "changes", false, "what each version changed of files, ids and figures")
	return c
}

func versionText() string {
	return fmt.Sprintf("etchbound %s, data %s\n%s\n", version, dataVersion, notice)
}
