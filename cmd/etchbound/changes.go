package main

import (
	_ "embed"
	"fmt"
	"strings"

	"etchbound/schemas/columns"
)

// What a version changed of what people and programs read or write, newest
// first: a row for each key, id, format, figure, command or file, and for words that moved.
//
//go:embed changes.csv
var changesTable string

// change is one row of it.
type change struct{ version, kind, name, what string }

func allChanges() []change {
	return columns.Must("cmd/etchbound/changes.csv", changesTable, func(r columns.Row) change {
		return change{r.Named("version"), r.Choice("kind", "key", "id", "format", "figure", "word", "command",
			"file"),
			r.Named("name"), r.Named("what")}
	})
}

// changesText is the list as it is printed, version by version.
func changesText() string {
	var b strings.Builder
	last := ""
	for _, c := range allChanges() {
		if c.version != last {
			fmt.Fprintf(&b, "%s\n", c.version)
			last = c.version
		}
		fmt.Fprintf(&b, "  %-7s  %s: %s\n", c.kind, c.name, c.what)
	}
	return b.String()
}
