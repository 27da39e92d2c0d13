package document

import (
	"html/template"
	"strconv"
	"strings"

	"etchbound/reports/plain"
)

// rowsHTML is the body of a table. It is written by hand, since a review has
// thousands of cells and the template costs a microsecond and more for each;
// every text in it goes through write.
func rowsHTML(t Table) template.HTML {
	b := &escaper{}
	for _, r := range t.Rows {
		b.WriteString("<tr>")
		for i := 0; i < len(r); i += max(r[i].Span, 1) {
			b.cell(t.Columns[i], r[i])
		}
		b.WriteString("</tr>\n")
	}
	return template.HTML(b.String())
}

// escaper builds HTML; texts that are not our own markup go through write.
type escaper struct{ strings.Builder }

func (b *escaper) write(s string) { template.HTMLEscape(b, []byte(plain.Printable(s))) }

func (b *escaper) cell(col Column, c Cell) {
	open, shut := "<td", "</td>"
	empty := c.Blank || c.Text == "" && c.Mark == NoMark && c.Behind == nil
	if col.RowHead && !empty { // what is empty heads nothing
		open, shut = "<th scope=\"row\"", "</th>"
	}
	b.WriteString(open)
	if k := classes(col, c); k != "" {
		b.WriteString(` class="` + k + `"`)
	}
	if c.Anchor != "" {
		b.WriteString(` id="`)
		b.write(c.Anchor)
		b.WriteByte('"')
	}
	if c.Span > 1 {
		b.WriteString(` colspan="` + strconv.Itoa(c.Span) + `"`)
	}
	b.WriteByte('>')
	switch {
	case c.Mark != NoMark:
		b.mark(c)
	case c.Code:
		b.code(c.Text)
	default:
		b.write(c.Text)
	}
	b.links(c)
	if c.Behind != nil {
		b.WriteString("<details><summary>")
		b.write(c.Behind.Summary)
		b.WriteString("</summary><p>")
		b.code(c.Behind.Cell.Text)
		b.links(c.Behind.Cell)
		b.WriteString("</p></details>")
	}
	b.WriteString(shut)
}

// links are behind the text of a cell.
func (b *escaper) links(c Cell) {
	for i, l := range c.Links {
		if i > 0 || c.Text != "" {
			b.WriteString(", ")
		}
		b.WriteString(`<a href="#`)
		b.write(l.To)
		b.WriteString(`">`)
		b.write(l.Text)
		b.WriteString("</a>")
		if l.Sheet {
			b.WriteString(`<i class="sheet" data-of="`)
			b.write(l.To)
			b.WriteString(`"></i>`)
		}
	}
}

// mark states a verdict by word, symbol and border.
func (b *escaper) mark(c Cell) {
	b.WriteString(`<span class="mark `)
	b.write(string(c.Mark))
	b.WriteString(`"><span aria-hidden="true">` + c.Mark.Symbol() + "</span> ")
	b.write(c.Text)
	b.WriteString("</span>")
}

// code writes an identifier or a formula, which may break after a mark of its
// grammar and never within a word.
func (b *escaper) code(s string) {
	b.WriteString("<code>")
	for s != "" {
		n := breakAfter(s)
		b.write(s[:n])
		if s = s[n:]; s != "" {
			b.WriteString("<wbr>")
		}
	}
	b.WriteString("</code>")
}

// breakAfter is the length of the first piece of s that may stand at the end of
// a line. A decimal point is no such mark.
func breakAfter(s string) int {
	for i := 0; i < len(s)-1; i++ {
		point := s[i] == '.' && s[i+1] >= '0' && s[i+1] <= '9'
		if strings.IndexByte(".@:/+~,", s[i]) >= 0 && !point {
			return i + 1
		}
	}
	return len(s)
}

// classes are the classes of a cell in a column.
func classes(col Column, c Cell) string {
	var s []string
	if col.Right {
		s = append(s, "r")
	}
	if col.Tight {
		s = append(s, "t")
	}
	if col.Screen {
		s = append(s, "screen")
	}
	if c.Blank {
		s = append(s, "fill")
	}
	return strings.Join(s, " ")
}
