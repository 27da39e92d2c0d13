package document

import (
	"strings"
	"testing"
)

func TestProseStaysText(t *testing.T) {
	for _, c := range []struct{ in, has, hasNot string }{
		{"<b>bold</b> & <script>x</script>", "&lt;script&gt;x&lt;/script&gt;", "<b>"},
		{"<div>\nblock\n</div>", "&lt;div&gt;", "<div>"},
		{"![p](http://a.example/p.png)", "p (http://a.example/p.png)", "<img"},
		{"[l](javascript:alert(1))", "l (javascript:alert(1))", "<a"},
		{"<http://a.example>", "&lt;http://a.example&gt;", "<a"},
		{"# head", "<strong>head</strong>", "<h1"},
		{"a *b* `c<d`\n\n- e", "<em>b</em>", "c<d"},
	} {
		got := string(proseHTML(c.in))
		if !strings.Contains(got, c.has) || strings.Contains(got, c.hasNot) {
			t.Errorf("%q gives %q", c.in, got)
		}
	}
}
