package working_test

import (
	"fmt"

	"etchbound/chemicals/working"
)

// The arithmetic stands beside the formula; a line is no better known than its
// worst input.
func ExampleSheet_Line() {
	s := working.NewSheet()
	m := working.Exact("m", "g", 2, "powder")
	q := working.Exact("q", "kJ/g", 3.9, "heat of the etch").Worse(working.Estimated)
	heat := s.Line("Q", "kJ", "m*q", m.V*q.V, m, q)
	fmt.Println(heat.V, heat.Unit, heat.Status)
	last := s.Lines[len(s.Lines)-1]
	fmt.Println(last.Symbol, "=", last.Formula, "from", last.In[0].Symbol, "and", last.In[1].Symbol)
	// Output:
	// 7.8 kJ estimated
	// Q = m*q from m and q
}
