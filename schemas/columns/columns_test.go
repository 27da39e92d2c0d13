package columns_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"etchbound/schemas/columns"
)

type bottle struct {
	name  string
	holds float64
	of    []string
	shut  bool
	kind  string
	count int
}

func read(text string) ([]bottle, error) {
	return columns.Read("bottles.csv", text, func(r columns.Row) bottle {
		return bottle{r.Named("name"), r.Number("holds"), r.List("of"), r.Yes("shut"),
			r.Choice("kind", "", "narrow", "wide"), r.Count("count")}
	})
}

const heads = "name,holds,of,shut,kind,count\n"

func TestHeadsStandInAnyOrder(t *testing.T) {
	a, err := read("# what the shelf holds\n" + heads + "one,0.5,PP|HDPE,yes,wide,3\n")
	if err != nil {
		t.Fatal(err)
	}
	b, err := read("\ufeffcount,kind,shut,of,holds,name\r\n3,wide,yes,PP|HDPE,0.5,one\r\n")
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range [][]bottle{a, b} {
		g := x[0]
		if len(x) != 1 || g.name != "one" || g.holds != 0.5 || !slices.Equal(g.of, []string{"PP", "HDPE"}) ||
			!g.shut || g.kind != "wide" || g.count != 3 {
			t.Errorf("read %+v", x)
		}
	}
}

func TestBlankIsAbsent(t *testing.T) {
	x, err := read(heads + "one,,,,,\n")
	if err != nil {
		t.Fatal(err)
	}
	if g := x[0]; !math.IsNaN(g.holds) || g.of != nil || g.shut || g.kind != "" || g.count != 0 {
		t.Errorf("read %+v", g)
	}
}

// Every fault names file, row and column, and the first does not hide the second.
func TestFaults(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "bottles.csv: it needs a line of heads"},
		{heads, "bottles.csv: it needs a line of heads and a row"},
		{"name,holds,of,shut,kind\none,1,,,\n", `bottles.csv: there is no column "count"; there are name, holds`},
		{"name,holds,of,shut,kind,count,color\none,1,,,,,red\n", `bottles.csv: the column "color" is not known here`},
		{"name,name,of,shut,kind,count\none,1,,,,\n", `head 2: "name" is blank or stands there twice`},
		{heads + "one,1,,,,\ntwo,1\n", "bottles.csv, row 3: it has 2 cells under 6 heads"},
		{heads + "one,1,,,,\n,1,,,,\n", "bottles.csv, row 3 (), column name: it must not be blank"},
		{heads + "one,half,,,,\n", `bottles.csv, row 2 (one), column holds: "half" is not a number`},
		{heads + "one,NaN,,,,\n", `"NaN" is not a number`},
		{heads + "one,half,,,,few\n", `column count: "few" is not a whole number`},
		{heads + "one,1,PP|,,,\n", `column of: "PP|" has a blank part`},
		{heads + "one,1,,perhaps,,\n", `column shut: "perhaps" is not one of`},
		{heads + "one,1,,,round,\n", `column kind: "round" is not one of`},
		{heads + "one,\"1,,,,\n", "bottles.csv: "},
		{"# a remark of\n# two lines\n" + heads + "\"a\nb\",1,,,,\nc,x,,,,\n", "bottles.csv, row 6 (c), column holds"},
	} {
		_, err := read(c.text)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %q", c.text, err, c.want)
		}
	}
	if _, err := read(heads + "one,half,,,,few\n"); strings.Count(err.Error(), "bottles.csv, row 2") != 2 {
		t.Errorf("one of two faults is hidden: %v", err)
	}
}

func TestStatedAndFault(t *testing.T) {
	_, err := columns.Read("a.csv", "id,v\nx,\ny,2\n", func(r columns.Row) float64 {
		v := r.Stated("v")
		if v == 2 {
			r.Fault("v", errors.New("two is too many"))
		}
		return v + 0*float64(len(r.Text("id")))
	})
	for _, want := range []string{"row 2 (x), column v: it must not be blank", "row 3 (y), column v: two is too many"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}

func TestOpen(t *testing.T) {
	x, err := columns.Open("a.csv", "x,rho\n1,2\n3,4\n")
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(x.Heads(), []string{"x", "rho"}) || len(x.Rows()) != 2 || x.Rows()[1].Line() != 3 ||
		x.Rows()[1].Number("rho") != 4 || x.Err() != nil {
		t.Errorf("read %v", x)
	}
}

func TestMustPanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a table with a fault was taken")
		}
	}()
	columns.Must("a.csv", "x\nno\n", func(r columns.Row) float64 { return r.Number("x") })
}
