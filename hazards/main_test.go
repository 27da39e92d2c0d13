package hazards_test

import (
	"flag"
	"os"
	"runtime/debug"
	"testing"
)

// TestMain draws the same random routes every time, so that a change is judged
// by what it changes. Look further with -rapid.seed=N -rapid.checks=1000.
func TestMain(m *testing.M) {
	flag.Parse()
	debug.SetGCPercent(400) // reviews leave much behind
	if f := flag.Lookup("rapid.seed"); f != nil && f.Value.String() == "0" {
		if err := flag.Set("rapid.seed", "20261125"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
