package main

import (
	"os"
	"runtime/debug"
)

// collects says how often garbage is collected in one short run: less often than usual,
// up to what a large route may take. Still less often costs more than it saves, since a
// short run then pays for touching memory that it uses once.
func collects() {
	debug.SetGCPercent(400)
	within(240 << 20)
}

// within has garbage collected more often beyond some memory, in bytes, until it is
// told to stop. It refuses nothing, and GOMEMLIMIT stands above it.
func within(bytes int64) (stop func()) {
	if os.Getenv("GOMEMLIMIT") != "" {
		return func() {}
	}
	before := debug.SetMemoryLimit(bytes)
	return func() { debug.SetMemoryLimit(before) }
}

// drawn is what some draws may take, in bytes: what any run does, and the figures and
// inputs of each.
func drawn(n int) int64 { return 55<<20 + 5000*int64(n) }
