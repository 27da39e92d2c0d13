package main

import (
	"testing"

	"github.com/spf13/cobra"
)

// The control line says which work was asked for and with what, in one order however it was
// typed; what the digests of the files tell, and what changes no number, is not in it.
func TestTheControlLineSaysWhatWasAsked(t *testing.T) {
	for _, c := range []struct {
		of   *cobra.Command
		args []string
		want string
	}{
		{scaleCommand(streams{}), nil, "scale"},
		{scaleCommand(streams{}), []string{"--to", "20 g", "--follow", "vessel,cooling", "--site", "s.yaml", "-o", "x.md"},
			"scale, follow vessel,cooling, to 20 g"},
		{scaleCommand(streams{}), []string{"--to", "30 g"}, "scale, to 30 g"},
		{stockCommand(streams{}), []string{"--same-day=false", "--units", "bar"}, "stock, same-day false"},
		{changeCommand(streams{}), []string{"--reviewed-site", "was.yaml", "--batch", "3 g"}, "change"},
		{reviewCommand(streams{}), []string{"--brief", "--batch", "3 g"}, ""},
	} {
		if err := c.of.ParseFlags(c.args); err != nil {
			t.Fatal(err)
		}
		if got := worksOut(c.of); got != c.want {
			t.Errorf("%s %v: %q, want %q", c.of.Name(), c.args, got, c.want)
		}
	}
}
