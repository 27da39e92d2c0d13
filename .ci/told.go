// Told reads what go test -json writes and prints it as go test does: what failed,
// and the closing lines of the packages. At the end it names the ten slowest tests
// and every test that skipped itself.
//
// With -whole a skipped test is a step that could not run, exit code 75, and the
// tests named as arguments must have passed.
package main

import (
	"bufio"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
)

type event struct {
	Action, Package, Test, Output string
	Elapsed                       float64
}

type result struct {
	action, name string
	elapsed      float64
}

const notRun = 75

func main() {
	whole := flag.Bool("whole", false, "nothing may be skipped")
	flag.Parse()
	results, failed := read(bufio.NewReader(os.Stdin))
	slices.SortStableFunc(results, func(a, b result) int { return int(1e3 * (b.elapsed - a.elapsed)) })
	fmt.Println("\nthe ten slowest tests:")
	shown := 0
	for _, r := range results {
		if _, test, _ := strings.Cut(r.name, " "); shown < 10 && !strings.Contains(test, "/") {
			fmt.Printf("%8.2f s  %s\n", r.elapsed, r.name)
			shown++
		}
	}
	passed, skipped := map[string]bool{}, 0
	for _, r := range results {
		switch _, name, _ := strings.Cut(r.name, " "); r.action {
		case "pass":
			passed[name] = true
		case "skip":
			skipped++
			fmt.Println("skipped:", r.name)
		}
	}
	for _, name := range flag.Args() {
		if !passed[name] {
			fmt.Println("did not pass:", name)
			failed = failed || !*whole || skipped == 0
		}
	}
	switch {
	case failed || len(results) == 0:
		os.Exit(1)
	case *whole && skipped > 0:
		os.Exit(notRun)
	}
}

// read prints while it reads, and gives what became of every test.
func read(in *bufio.Reader) (results []result, failed bool) {
	said := map[string]*strings.Builder{} // by test, until it is known whether it fails; it may be many megabytes
	for {
		line, err := in.ReadBytes('\n')
		var e event
		switch {
		case len(line) == 0 && err != nil:
			return results, failed
		case json.Unmarshal(line, &e) != nil: // from the tool itself
			fmt.Print(string(line))
			continue
		}
		name := e.Package + " " + e.Test
		switch e.Action {
		case "output", "build-output":
			if e.Test == "" && e.Output != "PASS\n" {
				fmt.Print(e.Output)
			} else {
				if said[name] == nil {
					said[name] = new(strings.Builder)
				}
				said[name].WriteString(e.Output)
			}
		case "build-fail":
			failed = true
		case "pass", "fail", "skip":
			if e.Action == "fail" {
				failed = true
				if b := said[name]; b != nil {
					fmt.Print(b.String())
				}
			}
			delete(said, name)
			if e.Test != "" {
				results = append(results, result{e.Action, name, e.Elapsed})
			}
		}
	}
}
