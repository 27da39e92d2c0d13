package reports

import (
	"bytes"
	"context"
	"errors"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/plain"
	"etchbound/schemas/long"
)

// opened is the browser of this package's tests, started by the first that asks for it,
// and what closes it.
var opened = sync.OnceValues(func() (context.Context, error) {
	path, err := exec.LookPath("chromium")
	if err != nil {
		return nil, err
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path))
	for _, f := range []string{"no-sandbox", "disable-gpu", "disable-quic", "no-first-run",
		"disable-background-networking", "disable-component-update", "disable-sync"} {
		options = append(options, chromedp.Flag(f, true))
	}
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	closing = append(closing, stop)
	ctx, stop = chromedp.NewContext(ctx)
	closing = append(closing, stop)
	return ctx, chromedp.Do(ctx)
})

var closing []context.CancelFunc // what TestMain calls at the end, last first

// browser opens a tab of a headless browser, or skips where none is installed and in
// the short form.
func browser(t *testing.T) context.Context {
	t.Helper()
	if testing.Short() {
		t.Skip("the short form opens no page in a browser")
	}
	ctx, err := opened()
	if errors.Is(err, exec.ErrNotFound) {
		t.Skip("no chromium is installed: the page was not opened in a browser")
	} else if err != nil {
		t.Fatal(err)
	}
	ctx, closeTab := chromedp.NewContext(ctx)
	t.Cleanup(closeTab)
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(ctx, time.Minute)
	t.Cleanup(cancel)
	return ctx
}

// pageFile writes a document as a page and returns its address.
func pageFile(t *testing.T, d document.Document) string {
	t.Helper()
	var b bytes.Buffer
	if err := document.HTML(&b, d); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "review.html")
	if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return (&url.URL{Scheme: "file", Path: path}).String()
}

// complaints collects every request but the one for the page itself, and every
// message of the console.
type complaints struct {
	sync.Mutex
	list []string
}

func (c *complaints) watch(t *testing.T, ctx context.Context, page string) {
	t.Helper()
	add := func(s string) { c.Lock(); c.list = append(c.list, s); c.Unlock() }
	err := chromedp.Listen(ctx, func(ev any) {
		switch ev := ev.(type) {
		case *network.EventRequestWillBeSent:
			if ev.Request.URL != page && !strings.HasPrefix(ev.Request.URL, "data:") {
				add("requests " + ev.Request.URL)
			}
		case *runtime.EventConsoleAPICalled:
			add("console " + string(ev.Type))
		case *runtime.EventExceptionThrown:
			add("exception")
		case *log.EventEntryAdded:
			add("log " + ev.Entry.Text)
		}
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestPageInBrowser(t *testing.T) {
	ctx := browser(t)
	address := pageFile(t, Build(fixture.Review(), fixtureOptions))
	var c complaints
	c.watch(t, ctx, address)
	if err := chromedp.Do(ctx, chromedp.Navigate(address)); err != nil {
		t.Fatal(err)
	}
	for _, check := range []struct{ script, want, why string }{
		{`String(document.querySelectorAll("h1").length)`, "1", "one h1"},
		{`String(document.scripts.length)`, "0", "no script"},
		{`String(document.images.length)`, "0", "no image"},
		{`document.querySelector("h1").textContent`, plain.Fold(fixture.HostileTitle), "the title is text"},
		{`String([...document.querySelectorAll("[id]")].length - new Set([...document.querySelectorAll("[id]")].map(e ` +
			`=> e.id)).size)`, "0", "no id twice"},
		{`[...document.querySelectorAll("a")].filter(a => !document.querySelector(a.getAttribute("href"))).map(a => ` +
			`a.href).join()`, "", "links end in the page"},
		{`[...document.querySelectorAll("table")].filter(t => !t.caption || !t.querySelector("th[scope=col]")).length + ""`,
			"0", "captions and scopes"},
		{`(() => { let last = 1, bad = ""; for (const h of document.querySelectorAll("h2,h3,h4")) { const n = ` +
			`+h.tagName[1]; if (n > last + 1) bad += h.textContent; last = n } return bad })()`, "", "headings without gaps"},
		{`String(document.documentElement.scrollWidth > document.documentElement.clientWidth)`, "false",
			"the page does not scroll sideways"},
	} {
		got, err := chromedp.Run(ctx, chromedp.Evaluate[string](check.script))
		if err != nil {
			t.Fatalf("%s: %v", check.why, err)
		}
		if got != check.want {
			t.Errorf("%s: got %q, want %q", check.why, got, check.want)
		}
	}
	for _, look := range [][2]string{{"screen", "light"}, {"screen", "dark"}, {"print", "dark"}} {
		if err := chromedp.Do(ctx, media(look[0], look[1])); err != nil {
			t.Fatal(err)
		}
		if got, err := chromedp.Run(ctx, chromedp.Evaluate[string](lowContrast)); err != nil || got != "" {
			t.Errorf("contrast on %v: %s %v", look, got, err)
		}
	}
	c.Lock()
	defer c.Unlock()
	if len(c.list) > 0 {
		t.Errorf("the page complains: %v", c.list)
	}
}

// lowContrast lists texts whose colour against the paper is below 4.5 to 1, by
// the formula of WCAG 2.2, success criterion 1.4.3.
const lowContrast = `(() => {
  const rgb = s => s.match(/[\d.]+/g).slice(0, 3).map(Number);
  const lum = c => { const [r, g, b] = c.map(v => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / ` +
	`1.055) ** 2.4 }); return 0.2126 * r + 0.7152 * g + 0.0722 * b };
  const paper = lum(rgb(getComputedStyle(document.documentElement).backgroundColor));
  const bad = new Set();
  for (const e of document.querySelectorAll("body *")) {
    const l = lum(rgb(getComputedStyle(e).color));
    const ratio = (Math.max(l, paper) + 0.05) / (Math.min(l, paper) + 0.05);
    if (ratio < 4.5) bad.add(e.tagName + "." + e.className + " " + ratio.toFixed(2));
  }
  return [...bad].join();
})()`

// The inch of a style sheet is 96 of its pixels; the margins of page 1 are 9 mm above, 12 mm below,
// 11 mm aside. Hold points are
// never cut, so that where there are many a second side follows, and no third.
func TestPageOneFitsItsSides(t *testing.T) {
	type side struct {
		name  string
		paper document.Paper
	}
	for _, paper := range long.Some([]side{{"A4", document.A4}, {"letter", document.Letter}}, 1, 1) {
		t.Run(paper.name, func(t *testing.T) {
			ctx := browser(t)
			o := fixtureOptions
			o.Paper = paper.paper
			printed := strings.ReplaceAll(pageFile(t, Build(fixture.Review(), o)), "file://", "")
			if pages := pagesOfFirst(ctx, t, printed); pages > 2 {
				t.Errorf("page 1 prints on %d sides", pages)
			}
		})
	}
}

// Page 1 of every bundled route, of one of them outside of the long form, is on one side
// of either paper, with all its hold points and all that is not known.
func TestPageOneOfBundledRoutesFits(t *testing.T) {
	long.Only(t)
	for name, r := range fixture.Some(t, 1, 1) {
		fitsOneSide(t, name, r)
	}
}

// So is it at a site with limits of the house, and of routes written as people write them,
// with what they leave out, with a site and without.
func TestPageOneAtASiteFits(t *testing.T) {
	long.Only(t)
	for _, name := range []string{"mo2tialc2-hf-2g.yaml", "tmaoh-half-gram.yaml"} { // the fullest
		fitsOneSide(t, name+" at a site", fixture.AtSite(t, name, "site-demo.yaml", "limits-demo.yaml"))
	}
	names, err := filepath.Glob("testdata/written/*.yaml")
	if err != nil || len(names) < 4 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		fitsOneSide(t, name, fixture.AtSite(t, "../../reports/"+name, ""))
		fitsOneSide(t, name+" at a site", fixture.AtSite(t, "../../reports/"+name,
			"../../reports/testdata/written/site.yml", "../../reports/testdata/written/limits.yml"))
	}
}

// fitsOneSide lays page 1 of a review out on both papers.
func fitsOneSide(t *testing.T, name string, r hazards.Review) {
	t.Helper()
	address := pageFile(t, Build(r, draft.Options{Brief: true, Version: "0.0.0", DataVersion: "2026.11", Batches: true}))
	ctx := browser(t)
	for _, side := range [][2]float64{{210, 297}, {215.9, 279.4}} {
		height := printedHeight(ctx, t, address, side[0]-22)
		room := (side[1] - 17.5) / 25.4 * 96
		if !(height <= room) {
			t.Errorf("%s: page 1 is %.0f px high; a side of %.0f by %.0f mm has %.0f",
				name, height, side[0], side[1], room)
		}
		t.Logf("%s: %.0f of %.0f px", name, height, room)
	}
}

// printedHeight is the height of page 1 laid out for print on a side of a
// given printable width in mm.
func printedHeight(ctx context.Context, t *testing.T, address string, width float64) float64 {
	t.Helper()
	px := int64(width / 25.4 * 96)
	err := chromedp.Do(ctx, chromedp.EmulateViewport(px, 1000), chromedp.Navigate(address))
	if err == nil {
		err = chromedp.Do(ctx, media("print", "light"))
	}
	if err != nil {
		t.Fatal(err)
	}
	h, err := chromedp.Run(ctx,
		chromedp.Evaluate[float64](`document.querySelector(".one").getBoundingClientRect().height`))
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// What is wider than its sheet makes the browser print all of it smaller: a whole review of a
// route with acid fluoride and TMAOH has nothing of the kind on the width that A4 leaves.
func TestNothingPrintedIsWiderThanItsSheet(t *testing.T) {
	long.Only(t)
	o := fixtureOptions
	o.Paper = document.A4
	address := pageFile(t, Build(fixture.AtSite(t, "tmaoh-half-gram.yaml", "site-demo.yaml"), o))
	ctx := browser(t)
	printedHeight(ctx, t, address, 210-33)
	wide, err := chromedp.Run(ctx, chromedp.Evaluate[string](`(() => { let most = innerWidth + 1, what = "";
		for (const s of document.querySelectorAll("#fields .sheet")) s.textContent = "88"; // as it is printed
		for (const e of document.querySelectorAll("main > section:not(.one) *")) {
			const right = e.getBoundingClientRect().right;
			if (right > most && getComputedStyle(e).position != "absolute") {
				most = right; what = e.closest("section").id + ": " + e.textContent.slice(0, 80) } }
		return what })()`))
	if err != nil || wide != "" {
		t.Errorf("wider than the sheet: %q, %v", wide, err)
	}
}

// media shows the page as a medium and a colour scheme would.
func media(medium, scheme string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: medium,
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
		return err
	})
}

// pagesOfFirst prints the page cut down to page 1 and counts the sides.
func pagesOfFirst(ctx context.Context, t *testing.T, path string) int {
	t.Helper()
	if err := chromedp.Do(ctx, chromedp.Navigate("file://"+path)); err != nil {
		t.Fatal(err)
	}
	cut := `(() => { for (const s of document.querySelectorAll("main > section:not(.one)")) s.remove(); ` +
		`document.querySelector(".one").style.breakAfter = "auto"; return "" })()`
	if _, err := chromedp.Run(ctx, chromedp.Evaluate[string](cut)); err != nil {
		t.Fatal(err)
	}
	pdf, err := chromedp.Run(ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	if err != nil {
		t.Fatal(err)
	}
	m := regexp.MustCompile(`/Type /Pages[^>]*?/Count (\d+)`).FindSubmatch(pdf)
	if m == nil {
		t.Fatal("the printed file does not count its pages")
	}
	n, _ := strconv.Atoi(string(m[1]))
	return n
}

func TestNarrowPageScrollsInItsOwnBox(t *testing.T) {
	ctx := browser(t)
	address := pageFile(t, Build(fixture.Review(), fixtureOptions))
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(320, 800), chromedp.Navigate(address)); err != nil {
		t.Fatal(err)
	}
	wide, err := chromedp.Run(ctx, chromedp.Evaluate[float64](`document.documentElement.scrollWidth`))
	if err != nil {
		t.Fatal(err)
	}
	if wide > 320 {
		t.Errorf("the page is %.0f px wide in a window of 320", wide)
	}
}
