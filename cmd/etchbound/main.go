// Command etchbound reads the description of an etching route and writes its
// hazard review.
package main

import "os"

func main() {
	collects()
	os.Exit(run(os.Args[1:], streams{in: os.Stdin, out: os.Stdout, err: os.Stderr}))
}
