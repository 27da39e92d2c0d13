// Command etchbound reads the description of an etching route and writes its
// hazard review.
package main

import (
	"os"
	"runtime/debug"
)

func main() {
	// One short run: collecting garbage less often is worth more than memory.
	debug.SetGCPercent(400)
	os.Exit(run(os.Args[1:], streams{in: os.Stdin, out: os.Stdout, err: os.Stderr}))
}
