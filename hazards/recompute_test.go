package hazards_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
)

// Text and code must not drift apart: what a line prints is evaluated again
// with the inputs it prints, by a reader that knows nothing of the program.

// allTexts are the bundled routes and those of the published checks.
func allTexts(t *testing.T) map[string]string {
	t.Helper()
	out := bundledTexts(t)
	for _, set := range [][]check{gasChecks, heatChecks, fluorideChecks, wasteChecks, washChecks, closedChecks,
		laterGasChecks, quenchChecks, familyChecks, evolvedChecks, metalChecks, airRoutes} {
		for _, c := range set {
			out[c.name] = c.yaml
		}
	}
	return out
}

func allRoutes(t *testing.T) map[string]*route.Route {
	t.Helper()
	out := map[string]*route.Route{}
	for name, text := range allTexts(t) {
		out[name] = load(t, text)
	}
	return out
}

// allReviews are the reviews of all routes, and a fifth of them in the short form.
func allReviews(t *testing.T) map[string]hazards.Review {
	t.Helper()
	texts := allTexts(t)
	out := map[string]hazards.Review{}
	for _, name := range long.Some(sorted(texts), len(texts)/8, len(texts)/15) {
		out[name] = review(t, texts[name])
	}
	return out
}

// bundledReviews are those of the examples, three in the usual form and one in the short.
func bundledReviews(t *testing.T) map[string]hazards.Review {
	t.Helper()
	texts := bundledTexts(t)
	out := map[string]hazards.Review{}
	for _, name := range long.Some(sorted(texts), 3, 1) {
		out[name] = followed(t, texts[name])
	}
	return out
}

func TestSheetsRecompute(t *testing.T) {
	long.NotShort(t)
	formulas := 0
	for name, r := range allRoutes(t) {
		w := working.NewSheet()
		a := hazards.Assess(newCase(t, r), w)
		if a.Err != nil {
			t.Errorf("%s: %v", name, a.Err)
			continue
		}
		for i := range w.Lines {
			l := &w.Lines[i]
			if err := recompute(l); err != nil {
				t.Errorf("%s: line %d, %s = %s: %v", name, l.N, l.Symbol, l.Formula, err)
			}
			if err := trusts(w, l); err != nil {
				t.Errorf("%s: line %d, %s = %s: %v", name, l.N, l.Symbol, l.Formula, err)
			}
			if l.Kind == working.KindFormula {
				formulas++
			}
		}
	}
	if formulas < 5000 {
		t.Errorf("only %d formula lines were read", formulas)
	}
}

func TestFiguresStandOnTheirLines(t *testing.T) {
	long.Only(t)
	for name, rv := range allReviews(t) {
		for i := range rv.Figures {
			f := &rv.Figures[i]
			n := f.Value.Line()
			if n < 1 || n > len(rv.Sheet.Lines) {
				t.Errorf("%s: %s stands on line %d of %d", name, f.ID.String(), n, len(rv.Sheet.Lines))
				continue
			}
			l := &rv.Sheet.Lines[n-1]
			if !same(f.Value.V, l.V) {
				t.Errorf("%s: %s is %v, its line %d says %v", name, f.ID.String(), f.Value.V, n, l.V)
			}
			if f.Value.Status > l.Status {
				t.Errorf("%s: %s is %v, its line %d only %v", name, f.ID.String(), f.Value.Status, n, l.Status)
			}
			if (f.Value.Status == working.Unknown) != math.IsNaN(f.Value.V) {
				t.Errorf("%s: %s is %v with value %v", name, f.ID.String(), f.Value.Status, f.Value.V)
			}
			if f.Value.Status == working.Unknown && len(f.Value.Missing()) == 0 {
				t.Errorf("%s: %s is unknown and lacks nothing", name, f.ID.String())
			}
		}
	}
}

func same(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }

// trusts holds the status of a line against those of the lines it used.
func trusts(w *working.Sheet, l *working.Line) error {
	for _, in := range l.In {
		if in.Line < 1 || in.Line >= l.N {
			return fmt.Errorf("input %s stands on line %d", in.Symbol, in.Line)
		}
		from := &w.Lines[in.Line-1]
		if from.Status < l.Status {
			return fmt.Errorf("%v, but %s of line %d is %v", l.Status, in.Symbol, in.Line, from.Status)
		}
		if !same(from.V, in.V) {
			return fmt.Errorf("%s is printed as %v, line %d says %v", in.Symbol, in.V, in.Line, from.V)
		}
	}
	return nil
}

func recompute(l *working.Line) error {
	switch l.Kind {
	case working.KindSum:
		sum := 0.0
		for _, in := range l.In {
			if in.Unit != l.Unit && in.V != 0 {
				return fmt.Errorf("adds %s to %s", in.Unit, l.Unit)
			}
			sum += in.V
		}
		return agree(l, sum)
	case working.KindFormula:
		in := map[string]float64{}
		for _, x := range l.In {
			if _, twice := in[x.Symbol]; twice {
				return fmt.Errorf("two inputs are called %s", x.Symbol)
			}
			in[x.Symbol] = x.V
		}
		expr, err := parser.ParseExpr(l.Formula)
		if err != nil {
			return err
		}
		e := evaluator{in: in, used: map[string]bool{}}
		v := e.eval(expr)
		if e.err != nil {
			return e.err
		}
		for s := range in {
			if !e.used[s] {
				return fmt.Errorf("input %s is not in the formula", s)
			}
		}
		return agree(l, v)
	}
	return nil
}

func agree(l *working.Line, v float64) error {
	if l.Status == working.Unknown {
		return nil
	}
	if !(math.Abs(v-l.V) <= 1e-12*max(math.Abs(v), math.Abs(l.V))) && v != l.V {
		return fmt.Errorf("evaluates to %.15g, not %.15g", v, l.V)
	}
	return nil
}

// evaluator is a pocket calculator: + - * /, brackets and a few functions.
type evaluator struct {
	in   map[string]float64
	used map[string]bool
	err  error
}

func (e *evaluator) eval(x ast.Expr) float64 {
	switch x := x.(type) {
	case *ast.BasicLit:
		v, err := strconv.ParseFloat(x.Value, 64)
		if err != nil {
			e.err = err
		}
		return v
	case *ast.ParenExpr:
		return e.eval(x.X)
	case *ast.Ident:
		v, ok := e.in[x.Name]
		if !ok {
			e.err = fmt.Errorf("%s is no input", x.Name)
		}
		e.used[x.Name] = true
		return v
	case *ast.UnaryExpr:
		if x.Op != token.SUB {
			e.err = fmt.Errorf("operator %v", x.Op)
		}
		return -e.eval(x.X)
	case *ast.BinaryExpr:
		return e.binary(x.Op, e.eval(x.X), e.eval(x.Y))
	case *ast.CallExpr:
		return e.call(x)
	}
	e.err = fmt.Errorf("%T is no arithmetic", x)
	return math.NaN()
}

func (e *evaluator) binary(op token.Token, a, b float64) float64 {
	switch op {
	case token.ADD:
		return a + b
	case token.SUB:
		return a - b
	case token.MUL:
		return a * b
	case token.QUO:
		return a / b
	}
	e.err = fmt.Errorf("operator %v", op)
	return math.NaN()
}

func (e *evaluator) call(x *ast.CallExpr) float64 {
	name, ok := x.Fun.(*ast.Ident)
	if !ok {
		e.err = fmt.Errorf("call of %T", x.Fun)
		return math.NaN()
	}
	var args []float64
	for _, a := range x.Args {
		args = append(args, e.eval(a))
	}
	f, ok := functions[name.Name]
	if !ok || len(args) == 0 {
		e.err = fmt.Errorf("function %s", name.Name)
		return math.NaN()
	}
	return f(args)
}

var functions = map[string]func([]float64) float64{
	"min":   func(x []float64) float64 { return fold(x, func(a, b float64) float64 { return min(a, b) }) },
	"max":   func(x []float64) float64 { return fold(x, func(a, b float64) float64 { return max(a, b) }) },
	"pow":   func(x []float64) float64 { return math.Pow(x[0], x[1]) },
	"sqrt":  func(x []float64) float64 { return math.Sqrt(x[0]) },
	"exp":   func(x []float64) float64 { return math.Exp(x[0]) },
	"log10": func(x []float64) float64 { return math.Log10(x[0]) },
	"above": func(x []float64) float64 {
		if x[0] > x[1] {
			return 1
		}
		return 0
	},
}

func fold(x []float64, f func(a, b float64) float64) float64 {
	v := x[0]
	for _, y := range x[1:] {
		v = f(v, y)
	}
	return v
}
