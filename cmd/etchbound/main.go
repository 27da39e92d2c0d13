// Command etchbound reads the description of an etching route and writes its
// hazard review.
package main

import (
	"os"
	"runtime/debug"
)

func main() {
	// One short run: collecting garbage less often is worth more than memory, up to
	// what a large route may take.
	debug.SetGCPercent(400)
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(mostMemory)
	}
	os.Exit(run(os.Args[1:], streams{in: os.Stdin, out: os.Stdout, err: os.Stderr}))
}

// mostMemory is the memory, in bytes, beyond which garbage is collected more often.
// It refuses nothing.
const mostMemory = 240 << 20
