// Axe opens pages in a headless browser, in light and in dark and in a wide and a narrow
// window, runs axe-core in each and prints what it finds: the rule, and the places that
// break it. What a page folds away is opened first, since axe looks at what is shown. Of a
// table it is shown the first rows alone, those of a page being made alike: a review has
// thousands, which take axe minutes. AXE_ROWS=0 leaves none out.
//
//	axe AXE.MIN.JS PAGE.html...
//
// Exit code 1 is a violation, 75 that there is no browser.
package main

import (
	"context"
	"errors"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"sync"
	"sync/atomic"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	devtools "github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

const (
	notRun = 75
	rows   = 8 // of a table that axe is shown, unless AXE_ROWS says otherwise
	most   = 4 // pages that are looked at at a time
	// each bounds one look at one page.
	each = 2 * time.Minute
)

// look is a way to look at a page.
type look struct {
	scheme string
	width  int64
}

var looks = []look{{"light", 1280}, {"dark", 1280}, {"light", 390}, {"dark", 390}}

// broken asks axe for all its rules, best practices too, and lists what breaks them: no
// more than three places of a rule, which show the fault.
const broken = `(async () => {
  for (const d of document.querySelectorAll("details")) d.open = true;
  const most = %d;
  for (const b of most ? document.querySelectorAll("tbody") : [])
    for (const r of [...b.rows].slice(most)) r.remove();
  const found = await axe.run(document, {resultTypes: ["violations"]});
  return found.violations.map(v => v.id + " (" + v.impact + ", " + v.nodes.length + "): " + v.help +
    v.nodes.slice(0, 3).map(n => "\n    " + n.target.join(" ") + "  " + n.html.slice(0, 200)).join("")).join("\n  ");
})()`

func main() {
	if len(os.Args) < 3 {
		fmt.Fprintln(os.Stderr, "axe: give axe.min.js and the pages")
		os.Exit(2)
	}
	kept := rows
	if n, err := strconv.Atoi(os.Getenv("AXE_ROWS")); err == nil && n >= 0 {
		kept = n
	}
	found, err := check(os.Args[1], os.Args[2:], fmt.Sprintf(broken, kept))
	switch {
	case errors.Is(err, exec.ErrNotFound):
		fmt.Println("no chromium is installed: no page was opened")
		os.Exit(notRun)
	case err != nil:
		fmt.Println(err)
		os.Exit(1)
	case found > 0:
		os.Exit(1)
	}
}

// check looks at every page in every way and returns in how many axe found something.
func check(axe string, pages []string, ask string) (int, error) {
	script, err := os.ReadFile(axe)
	if err != nil {
		return 0, err
	}
	path, err := exec.LookPath("chromium")
	if err != nil {
		return 0, err
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path))
	for _, f := range []string{"no-sandbox", "disable-gpu", "disable-background-networking", "disable-sync"} {
		options = append(options, chromedp.Flag(f, true))
	}
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	defer stop()
	said, errs := make([]string, len(pages)*len(looks)), make([]error, len(pages)*len(looks))
	var next atomic.Int64
	var browsers sync.WaitGroup
	for range max(1, min(runtime.NumCPU(), most)) {
		own, quit := chromedp.NewContext(ctx) // a browser: pages of one share a process
		defer quit()
		if err := chromedp.Do(own); err != nil {
			return 0, err
		}
		browsers.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(said); i = int(next.Add(1)) - 1 {
				said[i], errs[i] = inspect(own, pages[i/len(looks)], string(script), ask, looks[i%len(looks)])
			}
		})
	}
	browsers.Wait()
	found := 0
	for i := range said {
		name, l := pages[i/len(looks)], looks[i%len(looks)]
		if errs[i] != nil {
			return found, fmt.Errorf("%s, %s, %d px: %w", name, l.scheme, l.width, errs[i])
		}
		if said[i] != "" {
			found++
			fmt.Printf("%s, %s, %d px:\n  %s\n", filepath.Base(name), l.scheme, l.width, said[i])
		}
	}
	fmt.Printf("axe-core looked at %d pages in %d ways: violations in %d\n", len(pages), len(looks), found)
	return found, nil
}

// inspect opens one page in a tab of its own and returns what axe says of it.
func inspect(ctx context.Context, name, axe, ask string, l look) (string, error) {
	full, err := filepath.Abs(name)
	if err != nil {
		return "", err
	}
	tab, closed := chromedp.NewContext(ctx)
	defer closed()
	if err := chromedp.Do(tab); err != nil {
		return "", err
	}
	tab, done := context.WithTimeout(tab, each)
	defer done()
	err = chromedp.Do(tab, bypass(), shown(l.scheme), chromedp.EmulateViewport(l.width, 900),
		chromedp.Navigate((&url.URL{Scheme: "file", Path: full}).String()))
	if err != nil {
		return "", err
	}
	if _, err := chromedp.Run(tab, chromedp.Evaluate[any](axe+"; true")); err != nil {
		return "", err
	}
	return chromedp.Run(tab, chromedp.Evaluate[string](ask, awaited))
}

// awaited waits for what a script promises.
func awaited(p *devtools.EvaluateParams) { yes := true; p.AwaitPromise = &yes }

// bypass lets axe into a page whose own policy runs no script.
func bypass() chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, page.SetBypassCSP, page.SetBypassCSPParams{Enabled: true})
		return err
	})
}

// shown shows the page in a colour scheme.
func shown(scheme string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "screen",
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
		return err
	})
}
