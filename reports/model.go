package reports

// Document is a review as a reader meets it. The first section is page 1.
// Texts are plain: each writer escapes them for its own format.
type Document struct {
	Title    string
	Lang     string // BCP 47 tag of the fixed sentences
	Paper    Paper
	Digest   string // short form of the route's digest, for the foot of a page
	Sections []Section
}

// Section is a headed part. Key is fixed and becomes the anchor; Number is
// printed before the title where it is not empty.
type Section struct {
	Key    string
	Number string
	Title  string
	Blocks []Block
	Subs   []Section
	Page   bool // begins a printed page
}

// Block is one piece of a section: Paragraph, List, Table, Prose, Facts,
// Blanks, FormLine, Picture or Label.
type Block interface{ block() }

// Tone says how much weight a paragraph carries.
type Tone string

// The tones. A writer shows them by a word or a border, never colour alone.
const (
	Plain   Tone = ""
	Note    Tone = "note"
	Warning Tone = "warning"
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
}

// Column is the head of a column. RowHead marks the column that names its row,
// Tight one whose cells stay on one line.
type Column struct {
	Text    string
	Right   bool
	RowHead bool
	Tight   bool
}

// Cell is one cell. Code marks identifiers and formulas, Blank a cell that
// people fill in; Mark is the verdict the cell states, shown by word and symbol.
type Cell struct {
	Text  string
	Code  bool
	Blank bool
	Mark  Mark
}

// Prose is what the writer of the route wrote, in Markdown.
type Prose struct{ Markdown string }

// Facts is a list of names with their values.
type Facts struct{ Pairs []Pair }

// Pair is one name with its value; an empty value is a blank for people.
type Pair struct{ Name, Value string }

// Blanks are lines that people fill in by hand.
type Blanks struct{ Labels []string }

// FormLine is a question with boxes to tick, such as the decision asked.
type FormLine struct {
	Label string
	Boxes []string
}

// Label is a block of text to be copied as it stands, line by line.
type Label struct{ Lines []string }

func (Paragraph) block() {}
func (List) block()      {}
func (Table) block()     {}
func (Prose) block()     {}
func (Facts) block()     {}
func (Blanks) block()    {}
func (FormLine) block()  {}
func (Label) block()     {}

// text is a cell of plain text.
func text(s string) Cell { return Cell{Text: s} }

// code is a cell that holds an identifier or a formula.
func code(s string) Cell { return Cell{Text: s, Code: true} }

// toFill is a row of n cells for people, the first of them named.
func toFill(name string, n int) []Cell {
	out := []Cell{text(name)}
	for len(out) < n {
		out = append(out, Cell{Blank: true})
	}
	return out
}

// tight keeps the cells of the columns at the positions given on one line.
func tight(c []Column, at ...int) []Column {
	for _, i := range at {
		c[i].Tight = true
	}
	return c
}

// columns makes left-aligned heads of the texts named by keys; the first names
// the row.
func columns(keys ...string) []Column {
	out := make([]Column, len(keys))
	for i, k := range keys {
		out[i] = Column{Text: say(k), RowHead: i == 0}
	}
	return out
}

// right sets the columns at the positions given flush right.
func right(c []Column, at ...int) []Column {
	for _, i := range at {
		c[i].Right = true
	}
	return c
}
