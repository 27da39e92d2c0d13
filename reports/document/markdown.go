package document

import (
	"bufio"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// Markdown writes the document as CommonMark with pipe tables. Texts are
// escaped so that none of them can open markup; the prose of the writer stands
// in quotations, its HTML and headings disarmed.
func Markdown(w io.Writer, d Document) error {
	m := &markdown{w: bufio.NewWriter(w)}
	for i := range d.Sections {
		m.Begin(&d.Sections[i], i == 0, 2)
	}
	m.line(escape(words.Of("foot.line", words.OrNone(d.Control))))
	return m.w.Flush()
}

type markdown struct{ w *bufio.Writer }

// line writes one paragraph or heading and the blank line after it. Errors of
// the writer are kept by bufio and come out of Flush.
func (m *markdown) line(s string) {
	m.w.WriteString(s)
	m.w.WriteString("\n\n")
}

func (m *markdown) Begin(s *Section, first bool, level int) {
	title := s.Title
	if s.Number != "" {
		title = s.Number + " " + title
	}
	if first {
		m.line("# " + escape(words.OrNone(title)))
	} else {
		m.line(strings.Repeat("#", level) + " " + escape(title))
		level++
	}
	for _, b := range s.Blocks {
		m.block(b)
	}
	for i := range s.Subs {
		m.Begin(&s.Subs[i], false, level)
	}
}

func (m *markdown) block(b Block) {
	switch b := b.(type) {
	case Paragraph:
		m.paragraph(b)
	case List:
		m.list(b)
	case Table:
		m.table(b)
	case Prose:
		m.prose(b)
	case Facts:
		m.facts(b)
	case Blanks:
		m.blanks(b)
	case FormLine:
		m.form(b)
	case Picture:
		if b.Caption != "" {
			m.line("**" + escape(b.Caption) + "**")
		}
		m.line(escape(b.Text))
	case Label:
		m.label(b)
	case Verbatim:
		m.verbatim(b)
	case Fold:
		m.fold(b)
	case Unprinted:
		for _, x := range b.Blocks {
			m.block(x)
		}
	}
}

// fold writes what is folded on a page under its summary, which alone stands for what
// is away.
func (m *markdown) fold(f Fold) {
	m.line(escape(f.Summary))
	if f.Away {
		return
	}
	for _, b := range f.Blocks {
		m.block(b)
	}
}

func (m *markdown) paragraph(p Paragraph) {
	if p.Tone == OnPaper {
		return
	}
	if p.Tone == Warning {
		m.line("**" + escape(p.Text) + "**")
		return
	}
	m.line(escape(p.Text))
}

func (m *markdown) list(l List) {
	for i, t := range l.Items {
		head := "- "
		if l.Ordered {
			head = strconv.Itoa(i+1) + ". "
		}
		m.w.WriteString(head + escape(t) + "\n")
	}
	m.w.WriteString("\n")
}

func (m *markdown) facts(f Facts) {
	for _, p := range f.Pairs {
		m.w.WriteString("- **" + escape(p.Name) + ":** " + orBlank(escape(p.Value)) + "\n")
	}
	m.w.WriteString("\n")
}

// blank is a line to write on.
const blank = `\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_`

func orBlank(s string) string {
	if s == "" {
		return blank
	}
	return s
}

func (m *markdown) blanks(b Blanks) {
	for _, l := range b.Labels {
		m.w.WriteString("- " + escape(l) + ": " + blank + "\n")
	}
	m.w.WriteString("\n")
}

func (m *markdown) form(f FormLine) {
	s := escape(f.Label)
	for _, b := range f.Boxes {
		s += " ☐ " + escape(b)
	}
	m.line(s)
}

func (m *markdown) label(l Label) {
	for i, t := range l.Lines {
		m.w.WriteString("> " + escape(t))
		if i < len(l.Lines)-1 {
			m.w.WriteString("  ")
		}
		m.w.WriteString("\n")
	}
	m.w.WriteString("\n")
}

// verbatim fences a text with more ticks than stand together in it.
func (m *markdown) verbatim(v Verbatim) {
	lines := make([]string, len(v.Lines))
	for i, l := range v.Lines {
		lines[i] = plain.Printable(l)
	}
	text, fence := strings.Join(lines, "\n"), "```"
	for strings.Contains(text, fence) {
		fence += "`"
	}
	m.w.WriteString(fence + "\n" + text + "\n" + fence + "\n\n")
}

// prose quotes what the writer wrote. The quotation ends whatever it leaves
// open; raw HTML, images and headings become text.
func (m *markdown) prose(p Prose) {
	for l := range strings.Lines(p.Markdown) {
		m.w.WriteString("> " + disarm(printableLine(l)) + "\n")
	}
	m.w.WriteString("\n")
}

func printableLine(s string) string { return plain.Printable(strings.TrimRight(s, "\r\n")) }

// disarm takes HTML, images and headings out of a line of prose and leaves the
// rest of its markup alone.
func disarm(s string) string {
	s = strings.ReplaceAll(s, "<", "\\<")
	s = strings.ReplaceAll(s, "![", "!\\[")
	t := strings.TrimLeft(s, " ")
	if t != "" && strings.ContainsRune("#=", rune(t[0])) || strings.Trim(t, "- ") == "" && t != "" {
		return s[:len(s)-len(t)] + "\\" + t
	}
	return s
}

func (m *markdown) table(t Table) {
	m.line("**" + escape(t.Caption) + "**")
	grid := make([][]string, 0, len(t.Rows)+1)
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = escape(c.Text)
	}
	grid = append(grid, head)
	for _, r := range t.Rows {
		row := make([]string, len(r))
		for i, c := range r {
			row[i] = cellText(c)
		}
		grid = append(grid, row)
	}
	m.grid(grid, t.Columns)
}

func cellText(c Cell) string {
	if len(c.Links) > 0 {
		return linksText(c)
	}
	if c.Code {
		return codeSpan(c.Text)
	}
	if c.Mark != NoMark {
		return escape(c.Mark.Symbol() + " " + c.Text)
	}
	return escape(c.Text)
}

// linksText is a cell with the texts of its links, which lead nowhere in Markdown.
func linksText(c Cell) string {
	var s []string
	if c.Text != "" {
		s = append(s, cellText(Cell{Text: c.Text, Code: c.Code, Mark: c.Mark}))
	}
	for _, l := range c.Links {
		s = append(s, escape(l.Text))
	}
	return strings.Join(s, ", ")
}

// widest is the width up to which columns are padded for reading; longer cells
// stand out rather than push every other row apart.
const widest = 48

func (m *markdown) grid(g [][]string, c []Column) {
	width := make([]int, len(c))
	for _, row := range g {
		for i, s := range row {
			width[i] = max(width[i], min(utf8.RuneCountInString(s), widest))
		}
	}
	for n, row := range g {
		for i, s := range row {
			m.w.WriteString("| " + s + strings.Repeat(" ", max(width[i]-utf8.RuneCountInString(s), 0)) + " ")
		}
		m.w.WriteString("|\n")
		if n == 0 {
			m.rule(width, c)
		}
	}
	m.w.WriteString("\n")
}

func (m *markdown) rule(width []int, c []Column) {
	for i := range c {
		dashes := strings.Repeat("-", max(width[i], 3)-1)
		if c[i].Right {
			m.w.WriteString("| " + dashes + ": ")
		} else {
			m.w.WriteString("| " + dashes + "- ")
		}
	}
	m.w.WriteString("|\n")
}
