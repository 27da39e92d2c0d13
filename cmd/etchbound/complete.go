package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/reports"
)

// completes is what a shell offers for an argument that begins so, after those given.
type completes = func(c *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective)

// complete tells the shell what each command takes: routes by the ending of their files,
// and the names the program knows.
func complete(root *cobra.Command) {
	first := map[string]func() []string{"starter": starterNames, "data": dataNames, "schema": schemaNames}
	for _, c := range root.Commands() {
		switch names := first[c.Name()]; {
		case names != nil:
			c.ValidArgsFunction = one(names)
		case c.Name() == "explain":
			c.ValidArgsFunction = figureIDs
		case c.Name() == "version":
			c.ValidArgsFunction = cobra.NoFileCompletions
		default:
			c.ValidArgsFunction = routeFiles
		}
		c.Flags().VisitAll(func(f *pflag.Flag) { completeFlag(c, f.Name) })
	}
}

// flagWords are the words of flags that take some of a few.
var flagWords = map[string][]string{
	"format":    {"markdown", "html", "pdf", "json"},
	"stop-when": stopsWhen,
	"units":     {"kPa", "bar", "ppm", "mg/m3"},
	"follow":    {"vessel", "addition", "cooling"},
}

func completeFlag(c *cobra.Command, name string) {
	words, few := flagWords[name]
	var offer completes
	switch {
	case few:
		if f := c.Flags().Lookup(name); name == "format" && strings.Contains(f.Usage, "csv") {
			words = append(slices.Clone(words), "csv")
		}
		offer = cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp)
	case slices.Contains([]string{"site", "limits", "reviewed-site", "reviewed-limits"}, name):
		offer = routeFiles
	case name == "output", name == "working":
		return // any file
	default:
		offer = cobra.NoFileCompletions
	}
	_ = c.RegisterFlagCompletionFunc(name, offer) // it refuses a second one alone
}

// routeFiles are the files people write.
func routeFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
}

// one offers names for the only argument.
func one(names func() []string) completes {
	return func(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return beginning(names(), begun), cobra.ShellCompDirectiveNoFileComp
	}
}

func beginning(names []string, with string) []string {
	return slices.DeleteFunc(names, func(n string) bool { return !strings.HasPrefix(n, with) })
}

// figureIDs offers routes, and then the ids of the figures of the route that is named.
// Where it cannot be read, nothing is offered: a shell shows no message.
func figureIDs(c *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	if len(args) != 1 || args[0] == "-" {
		if len(args) == 0 {
			return routeFiles(c, args, begun)
		}
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var ids []string
	if k, err := load(files{route: args[0]}, streams{err: nothing{}}); err == nil {
		k.Brief = !strings.Contains(begun, ":")
		a := hazards.Assess(k, nil)
		for i := range a.Figures {
			ids = append(ids, a.Figures[i].ID.String())
		}
	}
	return beginning(ids, begun), cobra.ShellCompDirectiveNoFileComp
}

// nothing takes what nobody reads.
type nothing struct{}

func (nothing) Write(b []byte) (int, error) { return len(b), nil }

func starterNames() []string {
	var names []string
	for _, s := range route.Starters() {
		names = append(names, s.Name)
	}
	return names
}

// peopleWrite are the files that people write.
var peopleWrite = []string{"route", "site", "limits"}

func schemaNames() []string { return append(slices.Clone(peopleWrite), reports.Outputs()...) }

// dataNames are the substances and the ids of data.
func dataNames() []string {
	var names []string
	for _, x := range chemicals.Library().All() {
		names = append(names, x.Name)
	}
	for _, d := range chemicals.Base().Rows() {
		names = append(names, string(d.ID))
	}
	return names
}
