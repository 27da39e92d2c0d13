package main

import (
	"etchbound/reports/number"
)

// unitsFlag is the units in which pages and Markdown are written; JSON and CSV keep those
// of the catalogue.
type unitsFlag struct {
	number.Units
	text string
}

// String is what was asked for.
func (u *unitsFlag) String() string { return u.text }

// Type is how the help names what it takes.
func (u *unitsFlag) Type() string { return "units" }

// Set takes a list of units; one it does not know is an error that says which it takes.
func (u *unitsFlag) Set(text string) error {
	got, err := number.Choose(text)
	if err != nil {
		return err
	}
	u.Units, u.text = got, text
	return nil
}
