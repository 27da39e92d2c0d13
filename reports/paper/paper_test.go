package paper

import (
	"context"
	"errors"
	"os/exec"
	"strings"
	"testing"
)

func TestAPageIsPrinted(t *testing.T) {
	if testing.Short() {
		t.Skip("the short form opens no page in a browser")
	}
	if _, err := Browser(); errors.Is(err, ErrNoBrowser) {
		t.Skip("no chromium is installed: nothing was printed")
	}
	html := `<!DOCTYPE html><html lang="en"><title>t</title><p>one<p style="break-before:page">two</html>`
	pdf, err := PDF(context.Background(), []byte(html))
	if err != nil {
		t.Fatal(err)
	}
	if n := Sheets(pdf); n != 2 {
		t.Errorf("%d sheets, want 2", n)
	}
}

func TestWithoutABrowserItSaysWhatToDo(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	t.Setenv(Variable, "")
	if _, err := PDF(context.Background(), nil); !errors.Is(err, ErrNoBrowser) ||
		!strings.Contains(err.Error(), "Install") {
		t.Error(err)
	}
	t.Setenv(Variable, "no-such-browser")
	if _, err := PDF(context.Background(), nil); !errors.Is(err, exec.ErrNotFound) ||
		!strings.Contains(err.Error(), Variable) {
		t.Error(err)
	}
}
