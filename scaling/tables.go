package scaling

import (
	"encoding/csv"
	"math"
	"strconv"
	"strings"
)

// rowsOf are the rows of an embedded table without its head. A table that cannot be
// read is a fault of the build.
func rowsOf(name, table string) [][]string {
	rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		panic("scaling: " + name + ": " + err.Error())
	}
	return rows[1:]
}

// numberOf is a cell of such a table as a number, not a number where it is empty.
func numberOf(name, cell string) float64 {
	if cell == "" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		panic("scaling: " + name + ": " + err.Error())
	}
	return v
}
