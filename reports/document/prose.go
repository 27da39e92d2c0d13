package document

import (
	"bytes"
	"html/template"
	"sync"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"

	"etchbound/reports/plain"
)

// proseWriter renders prose in goldmark's safe mode, without the parsers of raw
// HTML, so that what looks like HTML stays text. Links and images turn into
// their text and address: a review opens nothing, and on paper the address is
// what counts. Headings turn into bold lines, since the order of headings is
// the document's.
var proseWriter = sync.OnceValue(func() goldmark.Markdown {
	return goldmark.New(
		goldmark.WithParser(parser.NewParser(
			parser.WithBlockParsers(
				util.Prioritized(parser.NewThematicBreakParser(), 200),
				util.Prioritized(parser.NewListParser(), 300),
				util.Prioritized(parser.NewListItemParser(), 400),
				util.Prioritized(parser.NewCodeBlockParser(), 500),
				util.Prioritized(parser.NewATXHeadingParser(), 600),
				util.Prioritized(parser.NewFencedCodeBlockParser(), 700),
				util.Prioritized(parser.NewBlockquoteParser(), 800),
				util.Prioritized(parser.NewParagraphParser(), 1000),
			),
			parser.WithInlineParsers(
				util.Prioritized(parser.NewCodeSpanParser(), 100),
				util.Prioritized(parser.NewLinkParser(), 200),
				util.Prioritized(parser.NewEmphasisParser(), 500),
			),
			parser.WithParagraphTransformers(parser.DefaultParagraphTransformers()...),
		)),
		goldmark.WithRendererOptions(renderer.WithNodeRenderers(util.Prioritized(quiet{}, 10))),
	)
})

// proseHTML renders prose; the result holds no address, script or image.
func proseHTML(markdown string) template.HTML {
	var b bytes.Buffer
	if err := proseWriter().Convert([]byte(printableProse(markdown)), &b); err != nil {
		return template.HTML(template.HTMLEscapeString(markdown))
	}
	return template.HTML(b.String())
}

// quiet renders what would point out of the page, or into its outline.
type quiet struct{}

func (quiet) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(ast.KindLink, address)
	r.Register(ast.KindImage, address)
	r.Register(ast.KindHeading, boldLine)
}

func address(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		return ast.WalkContinue, nil
	}
	var to []byte
	switch n := n.(type) {
	case *ast.Link:
		to = n.Destination
	case *ast.Image:
		to = n.Destination
	}
	w.WriteString(" (")
	w.Write(util.EscapeHTML(to))
	w.WriteString(")")
	return ast.WalkContinue, nil
}

func boldLine(w util.BufWriter, _ []byte, _ ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		w.WriteString("<p><strong>")
	} else {
		w.WriteString("</strong></p>\n")
	}
	return ast.WalkContinue, nil
}

// printableProse drops control characters line by line and keeps the lines.
func printableProse(s string) string {
	var b bytes.Buffer
	for i, l := range bytes.Split([]byte(s), []byte("\n")) {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(plain.Printable(string(l)))
	}
	return b.String()
}
