// Package document knows what a document is made of, and how one is written as
// Markdown and as a page: headed sections of paragraphs, lists, tables, blanks and
// pictures. It must not know what it is about: no figure, no route and no hazard.
package document

import (
	"slices"
	"strings"

	"etchbound/reports/words"
)

// Document is a review as a reader meets it. The first section is page 1.
// Texts are plain: each writer escapes them for its own format.
type Document struct {
	Title    string
	Lang     string // BCP 47 tag of the fixed sentences
	Paper    Paper
	Wide     bool   // printed across, in a smaller type
	Flows    bool   // the first section has no sheet to itself
	Control  string // what the foot of every page carries: what the document was made from
	Sections []Section
}

// Paper is the sheet a review is printed on.
type Paper string

// The papers. AnyPaper leaves the choice to the printer; page 1 fits both.
const (
	AnyPaper Paper = ""
	A4       Paper = "a4"
	Letter   Paper = "letter"
)

// Section is a headed part. Key is fixed and becomes the anchor; Number is
// printed before the title where it is not empty.
type Section struct {
	Key    string
	Number string
	Title  string
	Blocks []Block
	Subs   []Section
	Page   bool // begins a printed page
	Screen bool // not printed
}

// Block is one piece of a section: Paragraph, List, Table, Prose, Facts,
// Blanks, FormLine, Picture, Label, Fold or Unprinted.
type Block interface{ block() }

// Tone says how much weight a paragraph carries.
type Tone string

// The tones. A writer shows them by a word or a border, never colour alone.
const (
	Plain   Tone = ""
	Note    Tone = "note"
	Warning Tone = "warning"
	OnPaper Tone = "paper" // printed alone: where what is not printed stands
)

// Paragraph is one paragraph of plain text.
type Paragraph struct {
	Text string
	Tone Tone
}

// List is a list of plain texts.
type List struct {
	Ordered bool
	Items   []string
}

// Table is a table with a caption and one row of column heads.
type Table struct {
	Caption string
	Columns []Column
	Rows    [][]Cell
	Kind    Kind
}

// Kind is how the columns of a table share its width on paper; none by what is in them.
type Kind string

// The kinds: what counts of a section, and what failures do.
const (
	Held    Kind = "held"
	Failing Kind = "failing"
)

// Column is the head of a column. RowHead marks the column that names its row,
// Tight one whose cells stay on one line.
type Column struct {
	Text    string
	Right   bool
	RowHead bool
	Tight   bool
	Screen  bool // not printed
}

// Cell is one cell. Code marks identifiers and formulas, Blank a cell that
// people fill in; Mark is the verdict the cell states, shown by word and symbol.
// Span is how many cells it takes the place of on a page, itself among them, where that is
// more than one. Anchor is where a link to the cell leads, Links stand behind its text. Behind is folded
// away under a summary, on a page alone.
type Cell struct {
	Text   string
	Code   bool
	Blank  bool
	Mark   Mark
	Span   int
	Anchor string
	Links  []Link
	Behind *Behind
	listed []string // the things that Text lists, where there are several
}

// Behind is what a reader opens in a cell.
type Behind struct {
	Summary string
	Cell    Cell
}

// Items are the things that a cell lists; of one that lists none, its text.
func (c *Cell) Items() []string {
	if c.listed == nil && c.Text != "" {
		return []string{c.Text}
	}
	return c.listed
}

// Add puts more behind what a cell lists, each once.
func (c *Cell) Add(items ...string) {
	c.listed = slices.Clone(c.Items())
	for _, x := range items {
		if x != "" && !slices.Contains(c.listed, x) {
			c.listed = append(c.listed, x)
		}
	}
	c.Text = strings.Join(c.listed, "; ")
}

// Says reports whether another cell says the same, whatever it leads to.
func (c Cell) Says(other Cell) bool {
	return c.Text == other.Text && c.Code == other.Code && c.Blank == other.Blank && c.Mark == other.Mark
}

// Link leads to an anchor of the same document. With Sheet the number of the sheet that
// the anchor is printed on stands behind it, on paper alone.
type Link struct {
	Text, To string
	Sheet    bool
}

// Prose is what the writer of the route wrote, in Markdown.
type Prose struct{ Markdown string }

// Facts is a list of names with their values.
type Facts struct{ Pairs []Pair }

// Pair is one name with its value; an empty value is a blank for people.
type Pair struct {
	Name, Value string
	Screen      bool // not printed
}

// Blanks are lines that people fill in by hand.
type Blanks struct{ Labels []string }

// FormLine is a question with boxes to tick, such as the decision asked.
type FormLine struct {
	Label string
	Boxes []string
}

// Label is a block of text to be copied as it stands, line by line.
type Label struct{ Lines []string }

// Verbatim is the text of a file, whose blanks and ends of lines count.
type Verbatim struct{ Lines []string }

// Picture is a drawing with its caption, the sentences that stand for it where none can
// be shown, and the table of what is drawn, which a page folds away. SVG is our own and
// written as it is. One for the Screen is not printed.
type Picture struct {
	SVG, Text, Caption string
	Table              Table
	Screen             bool
}

// Fold is what a reader opens where it is wanted. On a page it is folded away without
// a script, and on paper only its summary is printed. Markdown leaves out what is Away.
type Fold struct {
	Summary string
	Blocks  []Block
	Away    bool
}

// Unprinted is what stands on the page and not on paper, where another sheet of the same
// paper says it.
type Unprinted struct{ Blocks []Block }

func (Unprinted) block() {}
func (Fold) block()      {}
func (Paragraph) block() {}
func (List) block()      {}
func (Table) block()     {}
func (Prose) block()     {}
func (Facts) block()     {}
func (Blanks) block()    {}
func (FormLine) block()  {}
func (Label) block()     {}
func (Verbatim) block()  {}
func (Picture) block()   {}

// Text is a cell of plain text.
func Text(s string) Cell { return Cell{Text: s} }

// Row is a row of cells of plain text.
func Row(texts ...string) []Cell {
	out := make([]Cell, len(texts))
	for i, s := range texts {
		out[i].Text = s
	}
	return out
}

// Code is a cell that holds an identifier or a formula.
func Code(s string) Cell { return Cell{Text: s, Code: true} }

// ToFill is a row of n cells for people, the first of them named.
func ToFill(name string, n int) []Cell {
	out := []Cell{Text(name)}
	for len(out) < n {
		out = append(out, Cell{Blank: true})
	}
	return out
}

// Tight keeps the cells of the columns at the positions given on one line.
func Tight(c []Column, at ...int) []Column {
	for _, i := range at {
		c[i].Tight = true
	}
	return c
}

// OnScreen leaves the columns at the positions given off paper.
func OnScreen(c []Column, at ...int) []Column {
	for _, i := range at {
		c[i].Screen = true
	}
	return c
}

// Columns makes left-aligned heads of the texts named by keys; the first names
// the row.
func Columns(keys ...string) []Column {
	out := make([]Column, len(keys))
	for i, k := range keys {
		out[i] = Column{Text: words.Of(k), RowHead: i == 0}
	}
	return out
}

// Right sets the columns at the positions given flush right.
func Right(c []Column, at ...int) []Column {
	for _, i := range at {
		c[i].Right = true
	}
	return c
}

// Begin starts the section of a fixed key, titled from the sentences.
func Begin(key string) Section { return Section{Key: key, Title: words.Of("title." + key)} }
