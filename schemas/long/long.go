// Package long tells a test how much of its work to do. It must not know what is
// tested, and nothing but tests imports it.
//
// A test runs in one of three forms. The short one (go test -short) is a glance
// while typing; the usual one (go test) is for every change; the long one leaves
// nothing out and runs in .ci/run, which sets ETCHBOUND_LONG=1. What is left out
// of the first two is the number of draws, routes and cases, never an assertion. A
// costly property draws more often where -rapid.checks asks for it.
package long

import (
	"flag"
	"os"
	"strconv"
	"sync"
	"testing"
)

// Variable is the name of the environment variable that asks for the long form.
const Variable = "ETCHBOUND_LONG"

// Form reports whether tests run in their long form.
func Form() bool { return os.Getenv(Variable) != "" }

// Only skips a test outside of the long form. Its name has to stand in .ci/run,
// which runs it: the test of the house looks it up there.
func Only(t testing.TB) {
	t.Helper()
	if !Form() {
		t.Skip("runs in the long form only: set " + Variable + "=1")
	}
}

// NotShort skips a test in the short form, which .ci/run never asks for.
func NotShort(t testing.TB) {
	t.Helper()
	if testing.Short() {
		t.Skip("is no part of the short form")
	}
}

// Some gives as many members of a list as the form asks for, evenly spread over
// it and always the same ones: all of them in the long form.
func Some[T any](list []T, usual, short int) []T {
	n := usual
	switch {
	case Form():
		return list
	case testing.Short():
		n = short
	}
	if n >= len(list) {
		return list
	}
	out := make([]T, n)
	for i := range out {
		out[i] = list[i*len(list)/n]
	}
	return out
}

const checks = "rapid.checks"

// asked reports whether somebody gave the number of draws on the command line.
// It looks once, before Draws sets the flag itself.
var asked = sync.OnceValue(func() bool {
	given := false
	flag.Visit(func(f *flag.Flag) { given = given || f.Name == checks })
	return given
})

// inLongForm is how many draws a costly property takes there. Each run draws others.
const inLongForm = 60

// Draws lowers the number of random draws of a property to usual, until the test
// ends, in the long form to sixty or usual, whichever is more; it must not run beside
// another property of its package. The number somebody asked for with -rapid.checks
// stays as it is; the short form takes a fifth, as it does of every property.
func Draws(t testing.TB, usual int) {
	t.Helper()
	f := flag.Lookup(checks)
	if f == nil {
		t.Fatal("the flag " + checks + " is not there: import pgregory.net/rapid")
	}
	if asked() {
		return
	}
	if Form() {
		usual = max(usual, inLongForm)
	}
	was := f.Value.String()
	if err := flag.Set(checks, strconv.Itoa(usual)); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { flag.Set(checks, was) })
}
