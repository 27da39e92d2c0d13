package chemicals

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// Limits on what is taken for a formula, so that hostile text costs nothing.
const (
	maxFormulaLength = 120
	maxFormulaDepth  = 8
	maxFormulaCount  = 10000
)

// FormulaError says what in a formula was not understood. Position counts
// characters from 1.
type FormulaError struct {
	Text     string
	Position int
	Problem  string
}

// Error gives the formula, the position and the problem in one line.
func (e *FormulaError) Error() string {
	return fmt.Sprintf("formula %q, character %d: %s", e.Text, e.Position, e.Problem)
}

// ParseFormula reads a formula such as Ti3C2(OH)2, CaCl2.2H2O, Ti1.8Nb0.2AlC
// or Al(OH)4[-]. Counts may have decimals; a charge stands last, in square or
// round brackets. The error is a *FormulaError.
func ParseFormula(text string) (Formula, error) {
	p := formulaParser{text: text, f: Formula{Text: text}}
	if len(text) > maxFormulaLength {
		return Formula{}, p.fail(maxFormulaLength, "longer than any formula this reads")
	}
	p.units()
	p.charge()
	if p.err == nil && p.at < len(text) {
		p.fail(p.at, "not expected here")
	}
	if p.err == nil && len(p.f.Order) == 0 {
		p.fail(p.at, "no element")
	}
	if p.err != nil {
		return Formula{}, p.err
	}
	return p.f, nil
}

type formulaParser struct {
	text string
	at   int
	f    Formula
	err  error
}

func (p *formulaParser) fail(at int, problem string) error {
	if p.err == nil {
		position := len([]rune(p.text[:min(at, len(p.text))])) + 1
		p.err = &FormulaError{p.text, position, problem}
	}
	return p.err
}

// units reads the parts parted by dots, each with its own factor: CaCl2.2H2O.
func (p *formulaParser) units() {
	for first := true; p.err == nil; first = false {
		factor := 1.0
		if !first || p.digit() {
			factor = p.number(true)
		}
		c := p.sequence(0)
		p.add(&c, factor)
		if !p.separator() {
			return
		}
	}
}

// sequence reads elements and bracketed groups up to something else.
func (p *formulaParser) sequence(depth int) Composition {
	var c Composition
	start := p.at
	for p.err == nil && p.at < len(p.text) {
		ch := p.text[p.at]
		switch {
		case ch == '(' && !chargePattern().MatchString(p.text[p.at:]):
			p.group(&c, depth)
		case ch >= 'A' && ch <= 'Z':
			i := p.element()
			c[i] += p.number(false)
		case ch >= 'a' && ch <= 'z':
			p.fail(p.at, "an element begins with a capital letter")
		default:
			if p.at == start {
				p.fail(p.at, "an element or a bracket is expected")
			}
			return c
		}
	}
	if p.err == nil && p.at == start {
		p.fail(p.at, "an element or a bracket is expected")
	}
	return c
}

func (p *formulaParser) group(c *Composition, depth int) {
	open := p.at
	if depth >= maxFormulaDepth {
		p.fail(open, "brackets too deep")
		return
	}
	p.at++
	inner := p.sequence(depth + 1)
	if p.at >= len(p.text) || p.text[p.at] != ')' {
		p.fail(open, "bracket is not closed")
		return
	}
	p.at++
	factor := p.number(false)
	for i, n := range inner {
		c[i] += n * factor
	}
}

// element takes the two-letter symbol where there is one, as in Co for cobalt.
func (p *formulaParser) element() int {
	for _, length := range [...]int{2, 1} {
		if p.at+length > len(p.text) {
			continue
		}
		if i, ok := elementIndex[p.text[p.at:p.at+length]]; ok {
			p.note(elementSymbols[i])
			p.at += length
			return i
		}
	}
	p.fail(p.at, "no element of the data files begins so")
	return 0
}

func (p *formulaParser) note(symbol string) {
	for _, s := range p.f.Order {
		if s == symbol {
			return
		}
	}
	p.f.Order = append(p.f.Order, symbol)
}

// number reads a count; where none is written it is 1. A dot that begins a
// solvate is left, unless the number is itself the factor of one: CaCl2.2H2O
// is not CaCl2.2 with H2O, and CaSO4.0.5H2O holds half a water.
func (p *formulaParser) number(factor bool) float64 {
	start := p.at
	for p.digit() {
		p.at++
	}
	if p.at == start {
		return 1
	}
	if p.at+1 < len(p.text) && p.text[p.at] == '.' && isDigit(p.text[p.at+1]) &&
		(factor || !solvatePattern().MatchString(p.text[p.at+1:])) {
		for p.at++; p.digit(); p.at++ {
		}
	}
	n, err := strconv.ParseFloat(p.text[start:p.at], 64)
	if err != nil || n <= 0 || n > maxFormulaCount {
		p.fail(start, "a count lies above 0 and at most at "+strconv.Itoa(maxFormulaCount))
		return 1
	}
	return n
}

func (p *formulaParser) separator() bool {
	for _, dot := range [...]string{".", "·", "*"} {
		if p.err == nil && strings.HasPrefix(p.text[p.at:], dot) {
			p.at += len(dot)
			return true
		}
	}
	return false
}

func (p *formulaParser) charge() {
	if p.err != nil || p.at >= len(p.text) {
		return
	}
	m := chargePattern().FindStringSubmatch(p.text[p.at:])
	if m == nil {
		return
	}
	p.f.Charge = 1
	if m[1] != "" {
		p.f.Charge, _ = strconv.Atoi(m[1])
	}
	if m[2] != "+" {
		p.f.Charge = -p.f.Charge
	}
	p.at = len(p.text)
}

func (p *formulaParser) add(c *Composition, factor float64) {
	for i, n := range c {
		p.f.Of[i] += n * factor
	}
}

func (p *formulaParser) digit() bool { return p.at < len(p.text) && isDigit(p.text[p.at]) }

func isDigit(ch byte) bool { return ch >= '0' && ch <= '9' }

// compile puts the work off until a formula needs it; nothing runs at start-up.
func compile(pattern string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(pattern) })
}

var (
	chargePattern  = compile(`^[\[(]([1-9]?)([+-])[\])]$`)
	solvatePattern = compile(`^\d+(\.\d+)?(H2O|D2O|HF|HCl|NH3|C2H6O|CH4O)([.·*]|$)`)
)
