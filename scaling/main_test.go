package scaling

import (
	"os"
	"runtime/debug"
	"testing"
)

// TestMain has garbage collected as seldom as the command does: reviews leave much
// behind.
func TestMain(m *testing.M) {
	debug.SetGCPercent(400)
	os.Exit(m.Run())
}
