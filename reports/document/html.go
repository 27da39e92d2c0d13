package document

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"
	"sync"

	"etchbound/reports/plain"
	"etchbound/reports/words"
)

//go:embed page.html
var pageHTML string

//go:embed style.css
var styleCSS string

// HTML writes the document as one self-contained page: no script, no address
// that the browser would fetch, and a policy that forbids both.
func HTML(w io.Writer, d Document) error {
	return page().Execute(w, newPage(d))
}

var page = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("page").Funcs(template.FuncMap{
		"say":   func(key string) string { return words.Of(key) },
		"kind":  kind,
		"head":  headClasses,
		"prose": proseHTML,
		"svg":   func(p Picture) template.HTML { return template.HTML(p.SVG) },
		"rows":  rowsHTML,
		"clean": plain.Printable,
		"tab":   tab,
		"level": level,
		"open":  func(n int) template.HTML { return template.HTML(fmt.Sprintf("<h%d>", n)) },
		"shut":  func(n int) template.HTML { return template.HTML(fmt.Sprintf("</h%d>", n)) },
	}).Parse(pageHTML))
})

// longestTab is how many characters of a title, as the page spells them, a window or a
// bookmark is named by.
const longestTab = 70

// tab is the title of the window: whole words of the title, all of which the heading has.
func tab(title string) string {
	title = plain.Fold(plain.Printable(title))
	short := title
	for n := longestTab; len([]rune(template.HTMLEscapeString(short))) > longestTab; n-- {
		cut := string([]rune(title)[:min(n, len([]rune(title)))])
		if at := strings.LastIndexByte(cut, ' '); at > longestTab/2 {
			cut = cut[:at]
		}
		short = strings.TrimRight(cut, " ,;:(") + "…"
	}
	return short
}

// pageData is what the template reads.
type pageData struct {
	Document
	Style template.CSS
	First Section
	Rest  []Section
	Foot  string
}

func newPage(d Document) pageData {
	p := pageData{Document: d, Style: template.CSS(styleCSS + pageRules(d)),
		Foot: words.Of("foot.line", words.OrNone(d.Control))}
	if len(d.Sections) > 0 {
		p.First, p.Rest = d.Sections[0], d.Sections[1:]
	}
	return p
}

// wideCSS is how what is printed across is set.
const wideCSS = `@media print {
  main > section { font-size: 8.5pt; line-height: 1.1; }
  main > section table { font-size: 7.5pt; line-height: 1.05; }
  main > section :is(th, td) { padding: .08mm 1.2mm .08mm 0; }
  code { font-size: 6.8pt; line-height: 1; }
  #conditions .wide, #judged .wide, #working .wide { columns: 2; column-gap: 6mm; }
  #working table, #values-data table { table-layout: fixed; }
  #working th:nth-child(1) { width: 6%; }
  #working :is(th, td):nth-child(2) { width: 12%; overflow-wrap: anywhere; }
  #working :is(th, td):nth-child(3) { width: 16%; }
  #working :is(th, td):nth-child(5) { width: 10%; }
  #values-data :is(th, td):nth-child(1) { width: 17%; overflow-wrap: anywhere; }
  #values-data :is(th, td):nth-child(2) { width: 6%; }
  #values-data :is(th, td):is(:nth-child(3), :nth-child(5)) { width: 10.5%; }
  #values-data :is(th, td):is(:nth-child(4), :nth-child(6)) { width: 17%; }
  #working :is(th, td):nth-child(6) { width: 12%; }
}
`

// pageRules are the rules of the printed page. Only words and digits reach the style
// sheet.
func pageRules(d Document) string {
	size, across, more, margin := "", "", "", "10mm 14mm 12mm 19mm"
	if d.Wide {
		across = " landscape"
		margin, more = "10mm 12mm 12mm 12mm", wideCSS
	}
	switch {
	case d.Paper == A4:
		size = "size: A4" + across + "; "
	case d.Paper == Letter:
		size = "size: letter" + across + "; "
	case d.Wide:
		size = "size: landscape; "
	}
	return more + fmt.Sprintf("@page { %smargin: %s;\n"+
		"  @bottom-left { content: %q; font: 7pt sans-serif; width: 84%%; text-align: left; color: #444 }\n"+
		"  @bottom-right { content: %q counter(page) %q counter(pages); font: 8.5pt sans-serif; color: #444 } }\n",
		size, margin, words.Of("foot.print")+"; "+footOnly(d.Control), words.Of("foot.page")+" ",
		" "+words.Of("foot.of")+" ") +
		firstRules()
}

// firstRules are those of the sheet that page 1 has to itself; where it takes another,
// that says so.
func firstRules() string {
	return fmt.Sprintf("@page one { margin: 7.5mm 11mm 10mm; @top-left { content: %q; font: 8.5pt sans-serif } }\n"+
		"@page one:first { @top-left { content: none } }\n", words.Of("page.continued"))
}

// footOnly is a control line as the style sheet may hold it: words, digits and what
// stands between them.
func footOnly(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune(" ,.-+()", r) {
			return r
		}
		return -1
	}, s)
}

// kind names a block for the template.
func kind(b Block) string {
	switch b.(type) {
	case Paragraph:
		return "paragraph"
	case List:
		return "list"
	case Table:
		return "table"
	case Prose:
		return "prose"
	case Facts:
		return "facts"
	case Blanks:
		return "blanks"
	case FormLine:
		return "form"
	case Picture:
		return "picture"
	case Fold:
		return "fold"
	case Unprinted:
		return "unprinted"
	case Verbatim:
		return "verbatim"
	}
	return "label"
}

// headClasses are the classes of the head of a column.
func headClasses(c Column) string {
	c.Tight = false // a head may break where its cells do not
	return classes(c, Cell{})
}

// leveled is a section with the level of its heading.
type leveled struct {
	Section
	Level int
}

func level(s Section, n int) leveled { return leveled{s, n} }
