package solution_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"testing"

	"etchbound/chemicals/working"
)

// recheck works every formula line of a sheet out again from the inputs as
// printed, so that the text and the arithmetic cannot drift apart.
func recheck(t *testing.T, w *working.Sheet) {
	t.Helper()
	formulas := 0
	for _, line := range w.Lines {
		if line.Kind == working.KindFormula && line.Status != working.Unknown {
			formulas++
			recheckLine(t, w, line)
		}
	}
	if formulas == 0 {
		t.Error("no formula line on the sheet")
	}
}

func recheckLine(t *testing.T, w *working.Sheet, line working.Line) {
	t.Helper()
	names := map[string]float64{}
	for _, in := range line.In {
		if _, twice := names[in.Symbol]; twice || !token.IsIdentifier(in.Symbol) {
			t.Errorf("line %d %q: input %q is there twice or no identifier", line.N, line.Formula, in.Symbol)
		}
		if in.Line < 1 || in.Line >= line.N {
			t.Fatalf("line %d %q: input %s from line %d", line.N, line.Formula, in.Symbol, in.Line)
		}
		if from := w.Lines[in.Line-1]; from.Status < line.Status || from.V != in.V {
			t.Errorf("line %d %q is %v of %v, input %s is %v of line %d", line.N, line.Formula, line.V, line.Status, in.Symbol,
				from.Status, in.Line)
		}
		names[in.Symbol] = in.V
	}
	got, used, err := evaluate(line.Formula, names)
	if err != nil || !(math.Abs(got-line.V) <= 1e-12*max(1, math.Abs(line.V))) {
		t.Errorf("line %d: %s = %s gives %.15g, recorded %.15g (%v)", line.N, line.Symbol, line.Formula, got, line.V, err)
	}
	for name := range names {
		if !used[name] {
			t.Errorf("line %d: %s = %s does not use %s", line.N, line.Symbol, line.Formula, name)
		}
	}
}

// evaluate works out Go arithmetic over named values.
func evaluate(text string, names map[string]float64) (v float64, used map[string]bool, err error) {
	tree, err := parser.ParseExpr(text)
	if err != nil {
		return math.NaN(), nil, err
	}
	used = map[string]bool{}
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("%v", r)
		}
	}()
	return eval(tree, names, used), used, nil
}

func eval(e ast.Expr, names map[string]float64, used map[string]bool) float64 {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return eval(e.X, names, used)
	case *ast.BasicLit:
		v, err := strconv.ParseFloat(e.Value, 64)
		if err != nil {
			panic(err)
		}
		return v
	case *ast.Ident:
		v, ok := names[e.Name]
		if !ok {
			panic("no value of " + e.Name)
		}
		used[e.Name] = true
		return v
	case *ast.UnaryExpr:
		if e.Op == token.SUB {
			return -eval(e.X, names, used)
		}
	case *ast.BinaryExpr:
		return binary(e.Op, eval(e.X, names, used), eval(e.Y, names, used))
	case *ast.CallExpr:
		return call(e, names, used)
	}
	panic(fmt.Sprintf("%T is not arithmetic", e))
}

func binary(op token.Token, x, y float64) float64 {
	switch op {
	case token.ADD:
		return x + y
	case token.SUB:
		return x - y
	case token.MUL:
		return x * y
	case token.QUO:
		return x / y
	}
	panic("operator " + op.String())
}

func call(e *ast.CallExpr, names map[string]float64, used map[string]bool) float64 {
	var args []float64
	for _, a := range e.Args {
		args = append(args, eval(a, names, used))
	}
	switch name := e.Fun.(*ast.Ident).Name; name {
	case "min":
		return min(args[0], args[1])
	case "max":
		return max(args[0], args[1])
	case "pow":
		return math.Pow(args[0], args[1])
	case "exp":
		return math.Exp(args[0])
	case "log10":
		return math.Log10(args[0])
	case "sqrt":
		return math.Sqrt(args[0])
	default:
		panic("function " + name)
	}
}
