package review

import (
	"math"

	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// firstPrinted keeps every picture on the page and prints the first two, which stand side
// by side, with how many more there are.
func firstPrinted(blocks []document.Block) []document.Block {
	n := 0
	for i := range blocks {
		if p, ok := blocks[i].(document.Picture); ok {
			n++
			p.Screen = n > abreast
			blocks[i] = p
		}
	}
	if n <= abreast {
		return blocks
	}
	return append(blocks, document.Paragraph{Text: words.Of("pictures.more", n-abreast), Tone: document.OnPaper})
}

// abreast is how many pictures stand side by side on paper.
const abreast = 2

// drawn is a chart with its caption and the table of what it shows; nothing where it
// cannot be drawn, since the figures say what is missing.
func drawn(c chart.Chart) []document.Block {
	svg, err := c.SVG()
	if err != nil {
		return nil
	}
	t := document.Table{Caption: c.Title, Columns: []document.Column{{Text: headed(c.X), RowHead: true}}}
	for i, v := range c.Curves {
		name := v.Label
		if name == "" || len(c.Curves) == 1 {
			name = headed(c.Y)
		} else if i == 0 {
			name += ", " + c.Y.Unit
		}
		t.Columns = append(t.Columns, document.Column{Text: name, Right: true})
	}
	x, y := c.Values(mostValues)
	for i := range x {
		row := document.Row(number.Nearest(x[i], 3))
		for _, v := range y[i] {
			s := words.Of("value.dash")
			if !math.IsNaN(v) {
				s = number.Nearest(v, 3)
			}
			row = append(row, document.Text(s))
		}
		t.Rows = append(t.Rows, row)
	}
	return []document.Block{document.Picture{SVG: svg, Text: c.Text(), Caption: c.Title, Table: t}}
}

// mostValues is about how many values of each curve a table has.
const mostValues = 12

// headed is the name of an axis as the head of a column.
func headed(a chart.Axis) string {
	if a.Unit == "" {
		return a.Label
	}
	return a.Label + ", " + a.Unit
}

// bars is a picture of bars with its caption and table.
func bars(c chart.Bars, t document.Table) []document.Block {
	svg, err := c.SVG()
	if err != nil || len(c.Rows) == 0 {
		return nil
	}
	t.Caption = c.Title
	return []document.Block{document.Picture{SVG: svg, Text: c.Text(), Caption: c.Title, Table: t}}
}

// second puts pictures behind the first of others.
func second(pictures, more []document.Block) []document.Block {
	at := min(1, len(pictures))
	return append(append(pictures[:at:at], more...), pictures[at:]...)
}
