package reports

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/schemas/long"
)

// crossed lists the texts of pictures that leave their picture or overlap another, and
// those smaller than nine pixels.
const crossed = `(() => { const bad = []; for (const s of document.querySelectorAll("figure svg")) {
	const p = s.getBoundingClientRect();
	const all = [...s.querySelectorAll("text")].map(e => [e.textContent, e.getBoundingClientRect()]);
	if (p.width === 0) continue;
	all.forEach(([t, b], i) => {
		if (b.left < p.left - 1 || b.right > p.right + 1) bad.push("leaves: " + t);
		if (b.top < p.top - 1 || b.bottom > p.bottom + 1) bad.push("leaves: " + t);
		if (13 * p.width / 480 < 9) bad.push("small: " + t);
		if (t.endsWith("…")) bad.push("cut: " + t);
		for (const [u, c] of all.slice(i + 1)) {
			const x = Math.min(b.right, c.right) - Math.max(b.left, c.left);
			const y = Math.min(b.bottom, c.bottom) - Math.max(b.top, c.top);
			if (x > 1 && y > 3) bad.push(t + " over " + u);
		}
	}) } return bad.slice(0, 8).join("\n") })()`

// wide makes the window so many pixels wide.
func wide(pixels int64) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{
			Width: pixels, Height: 900, DeviceScaleFactor: 1})
		return err
	})
}

// No text of a picture leaves it, is cut or covers another, at a desk and on a telephone.
func TestTextsOfPicturesStandClear(t *testing.T) {
	long.Only(t)
	for name, r := range fixture.Bundled(t) {
		ctx := browser(t)
		address := pageFile(t, Build(r, draft.Options{}))
		if err := chromedp.Do(ctx, chromedp.Navigate(address)); err != nil {
			t.Fatal(err)
		}
		for _, width := range []int64{1280, 390} {
			if err := chromedp.Do(ctx, wide(width)); err != nil {
				t.Fatal(err)
			}
			got, err := chromedp.Run(ctx, chromedp.Evaluate[string](crossed))
			if err != nil {
				t.Fatal(err)
			}
			if got != "" {
				t.Errorf("%s at %d:\n%s", name, width, strings.TrimSpace(got))
			}
		}
	}
}
