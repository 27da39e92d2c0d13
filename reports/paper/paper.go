// Package paper knows how a page of HTML is printed to PDF: through a browser of the
// Chromium family that is installed. It must not know what stands on the page.
//
// The browser runs without a window, with a profile of its own that is removed
// afterwards, with no network, and for at most two minutes.
package paper

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"time"
)

// Variable names the environment variable that says which browser prints.
const Variable = "ETCHBOUND_BROWSER"

// limit is how long printing may take.
const limit = 2 * time.Minute

// names are what the browser is called where it is installed from packages.
var names = []string{"chromium", "chromium-browser", "chromium-headless-shell", "headless-shell", "headless_shell"}

// ErrNoBrowser is that no browser was found. Its text says what to do.
var ErrNoBrowser = errors.New("to print a PDF, a browser of the Chromium family has to be installed; none was found. " +
	"Install the package chromium, or name the program of another one of the family in " + Variable +
	". Or write the review as .html, open it in any browser and print it from there")

// Browser is the path of the program that prints. It returns ErrNoBrowser where there
// is none, and another error where Variable names what cannot be run.
func Browser() (string, error) {
	if stated := os.Getenv(Variable); stated != "" {
		path, err := exec.LookPath(stated)
		if err != nil {
			return "", fmt.Errorf("%s names %s, which cannot be run: %w", Variable, stated, err)
		}
		return path, nil
	}
	for _, n := range names {
		if path, err := exec.LookPath(n); err == nil {
			return path, nil
		}
	}
	return "", ErrNoBrowser
}

// PDF prints a page of HTML. Besides the errors of Browser it returns one where the
// browser fails, takes more than two minutes, or writes no PDF.
func PDF(ctx context.Context, html []byte) ([]byte, error) {
	browser, err := Browser()
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "etchbound-print-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	page, out := filepath.Join(dir, "page.html"), filepath.Join(dir, "page.pdf")
	if err := os.WriteFile(page, html, 0o600); err != nil {
		return nil, err
	}
	ctx, stop := context.WithTimeout(ctx, limit)
	defer stop()
	c := exec.CommandContext(ctx, browser, flags(dir, page, out)...)
	c.WaitDelay = time.Second
	said, err := c.CombinedOutput()
	if ctx.Err() != nil {
		return nil, fmt.Errorf("%s did not print within %v: %w", browser, limit, context.Cause(ctx))
	}
	pdf, unread := os.ReadFile(out)
	if err != nil || unread != nil || !bytes.HasPrefix(pdf, []byte("%PDF-")) {
		return nil, fmt.Errorf("%s printed no PDF: %w\n%s", browser, errors.Join(err, unread), last(said))
	}
	return pdf, nil
}

func flags(dir, page, out string) []string {
	f := []string{"--headless", "--disable-gpu", "--no-first-run", "--disable-extensions", "--disable-sync",
		"--disable-background-networking", "--disable-component-update", "--disable-quic",
		"--host-resolver-rules=MAP * ~NOTFOUND", "--user-data-dir=" + filepath.Join(dir, "profile"),
		"--no-pdf-header-footer", "--print-to-pdf=" + out}
	if os.Geteuid() == 0 {
		f = append(f, "--no-sandbox") // its sandbox does not start for root
	}
	return append(f, (&url.URL{Scheme: "file", Path: filepath.ToSlash(page)}).String())
}

// last is the end of what a program said.
func last(b []byte) []byte {
	const most = 400
	return b[max(0, len(b)-most):]
}

// Sheets counts the pages of a PDF, 0 where it does not show them.
func Sheets(pdf []byte) int {
	n := 0
	for _, mark := range [][]byte{[]byte("/Type /Page\n"), []byte("/Type /Page ")} {
		n += bytes.Count(pdf, mark)
	}
	return n
}
