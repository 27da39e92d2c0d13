package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"etchbound/reports/plain"
	"etchbound/schemas"
)

// streams are the three streams of a command.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// The exit codes. They are part of the interface.
const (
	exitDone    = 0
	exitFinding = 1 // a finding reaches --stop-when
	exitInput   = 2 // what the user gave is wrong
	exitOther   = 3 // anything else
)

// inputError is a mistake in what the user gave.
type inputError struct{ text string }

func (e *inputError) Error() string { return e.text }

func input(format string, a ...any) error { return &inputError{fmt.Sprintf(format, a...)} }

// reached says that findings reached --stop-when.
type reached struct{ text string }

func (e *reached) Error() string { return e.text }

// run does one command line and returns its exit code.
func run(args []string, s streams) (code int) {
	defer func() {
		if p := recover(); p != nil {
			fmt.Fprintf(s.err, "etchbound: something went wrong inside the program: %v\nPlease report it with the route "+
				"file that caused it. Nothing was written.\n", p)
			code = exitOther
		}
	}()
	cmd := root(s)
	cmd.SetArgs(args)
	err := errors.Join(short(args), isCommand(args))
	if err == nil {
		err = cmd.Execute()
	}
	var in *inputError
	var stop *reached
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &stop):
		fmt.Fprintln(s.err, "etchbound:", visible(stop.text))
		return exitFinding
	case errors.As(err, &in):
		fmt.Fprintln(s.err, visible(in.text))
		return exitInput
	}
	fmt.Fprintln(s.err, "etchbound:", visible(err.Error()))
	return exitOther
}

// visible is a text without what a terminal would take for an order, line by line: the name of a
// file may hold it.
func visible(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = plain.Printable(lines[i])
	}
	return strings.Join(lines, "\n")
}

// longest is the length of the longest argument, that of a path.
const longest = 4096

// short refuses arguments so long that looking for what was meant would take
// long.
func short(args []string) error {
	for _, a := range args {
		if len(a) > longest {
			return input("etchbound: an argument of %d bytes that begins with %.40q; accepted are at most %d", len(a), a,
				longest)
		}
	}
	return nil
}

// isCommand refuses a route where a command belongs, and says which one most people mean.
func isCommand(args []string) error {
	if len(args) == 0 {
		return nil
	}
	if ending := strings.ToLower(filepath.Ext(args[0])); ending == ".yaml" || ending == ".yml" {
		return input("etchbound: %s is a file and no command; did you mean etchbound review %s?", args[0],
			strings.Join(args, " "))
	}
	return nil
}

const notice = `A calculation aid. It does not replace the supplier's data sheets, stand above local codes
or your institution's safety office, or decide anything: people do.`

func root(s streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "etchbound",
		Short: "Work out the hazards of an etching route and write the review",
		Long: "etchbound reads one YAML description of a route that etches a layered powder with\n" +
			"fluoride-bearing acid, works out gas, heat, fluoride, washing and neutralising,\n" +
			"and writes the hazard review, every figure with its working.\n\n" + notice + "\n\n" +
			"Exit codes: 0 done; 1 a finding reaches --stop-when; 2 the input is wrong; 3 anything else.",
		Example:       "  etchbound review testdata/routes/demo-lif-hcl-2g.yaml -o review.html",
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          noArgs,
		RunE:          func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	cmd.SuggestionsMinimumDistance = 2
	cmd.Version = version
	cmd.SetVersionTemplate(versionText())
	cmd.SetHelpCommand(helpCommand(cmd))
	cmd.SetIn(s.in)
	cmd.SetOut(s.out)
	cmd.SetErr(s.err)
	cmd.SetFlagErrorFunc(func(c *cobra.Command, err error) error {
		text, _, parse := strings.Cut(err.Error(), ": strconv.")
		switch {
		case parse && strings.Contains(err.Error(), "strconv.ParseBool"):
			text += ": it takes no value, or true or false"
		case parse:
			text += ": it takes a whole number, such as 1000"
		}
		return input("etchbound: %s%s (see %s --help)", text, nearFlag(c, err), c.CommandPath())
	})
	cmd.AddCommand(reviewCommand(s), upsetCommand(s), keepCommand(s), paceCommand(s), measureCommand(s),
		offgasCommand(s), campaignCommand(s), checkCommand(s), starterCommand(s), dataCommand(s),
		explainCommand(s), schemaCommand(s), scaleCommand(s), changeCommand(s), compareCommand(s),
		stockCommand(s), proposeCommand(s), versionCommand(s))
	complete(cmd)
	return cmd
}

func noArgs(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	if c.HasParent() {
		return input("etchbound: %s takes no argument, found %q", c.Name(), args[0])
	}
	hint := ""
	if near := c.SuggestionsFor(args[0]); len(near) > 0 {
		hint = fmt.Sprintf("; did you mean %s?", near[0])
	}
	return input("etchbound: no command %q%s (see etchbound --help)", args[0], hint)
}

// exactly asks for n arguments, named in the message.
func exactly(n int, what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) != n {
			return input("etchbound: %s needs %s, found %d argument(s) (see %s --help)", c.Name(), what, len(args),
				c.CommandPath())
		}
		return nil
	}
}

// nearFlag offers the flag nearest to one that is unknown.
func nearFlag(c *cobra.Command, err error) string {
	_, wrong, ok := strings.Cut(err.Error(), "unknown flag: --")
	if !ok {
		return ""
	}
	var names []string
	c.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	if near := schemas.Nearest(wrong, names); near != "" {
		return "; did you mean --" + near + "?"
	}
	return ""
}

// helpCommand shows the help of a command and refuses one that is not there.
func helpCommand(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "Show the help of a command",
		Long:    "Show the help of a command, or of the whole program.",
		Example: "  etchbound help review",
		RunE: func(_ *cobra.Command, args []string) error {
			c, rest, err := root.Find(args)
			if err != nil || len(rest) > 0 {
				return noArgs(root, args)
			}
			c.InitDefaultHelpFlag()
			return c.Help()
		},
	}
}

// given refuses flags that were named but left empty, as an unset shell
// variable does.
func given(c *cobra.Command, names ...string) error {
	for _, n := range names {
		if f := c.Flags().Lookup(n); f != nil && f.Changed && f.Value.String() == "" {
			return input("--%s: found nothing; give it a value or leave it out", n)
		}
	}
	return nil
}
