package chemicals

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"math"
	"path"
	"slices"
	"strconv"
	"strings"
	"sync"
)

//go:embed data
var dataFiles embed.FS

// files is everything read from the data folder but the scalar rows.
type files struct {
	sources   []Source
	bySource  map[string]int
	tables    map[string]*Table
	tableList []*Table
}

// Files of the data folder that do not hold scalar rows.
var otherFiles = [...]string{"sources.csv", "tables.csv", "substances.csv"}

// datumHeader is the first line of every file of scalar rows.
const datumHeader = "id,symbol,value,low,high,unit,shape,group,valid,source,where,status,note"

// base parses the embedded data once. They are part of the binary, so that a
// fault in them is a fault of the build: it panics, and a test reads them all.
var base = sync.OnceValue(func() *Store {
	s, err := load(dataFiles)
	if err != nil {
		panic(err)
	}
	return s
})

func load(fsys fs.FS) (*Store, error) {
	f, err := loadFiles(fsys)
	if err != nil {
		return nil, err
	}
	entries, err := fs.ReadDir(fsys, "data")
	if err != nil {
		return nil, err
	}
	rows := make([]Datum, 0, 1024)
	for _, e := range entries {
		if e.IsDir() || slices.Contains(otherFiles[:], e.Name()) {
			continue
		}
		if rows, err = loadRows(fsys, "data/"+e.Name(), rows); err != nil {
			return nil, err
		}
	}
	return newStore(rows, f), nil
}

func loadRows(fsys fs.FS, name string, rows []Datum) ([]Datum, error) {
	records, err := readCSV(fsys, name, datumHeader)
	if err != nil {
		return nil, err
	}
	for n, r := range records {
		d := Datum{ID: r[0], Symbol: r[1], Unit: r[5], Shape: r[6], Group: r[7], Valid: r[8],
			Source: r[9], Where: r[10], Status: r[11], Note: r[12], Old: math.NaN()}
		for k, to := range [...]*float64{&d.Value, &d.Low, &d.High} {
			if *to, err = readNumber(r[2+k]); err != nil {
				return nil, fmt.Errorf("%s, row %d: %w", name, n+2, err)
			}
		}
		rows = append(rows, d)
	}
	return rows, nil
}

func loadFiles(fsys fs.FS) (*files, error) {
	f := &files{bySource: map[string]int{}, tables: map[string]*Table{}}
	records, err := readCSV(fsys, "data/sources.csv", "key,title,publisher,year,doi,section")
	if err != nil {
		return nil, err
	}
	for i, r := range records {
		f.sources = append(f.sources, Source{r[0], r[1], r[2], r[3], r[4], r[5]})
		f.bySource[r[0]] = i
	}
	index, err := readCSV(fsys, "data/tables.csv", tableHeader)
	if err != nil {
		return nil, err
	}
	for n, r := range index {
		t, err := loadTable(fsys, r)
		if err != nil {
			return nil, fmt.Errorf("data/tables.csv, row %d: %w", n+2, err)
		}
		f.tables[t.ID] = t
		f.tableList = append(f.tableList, t)
	}
	return f, nil
}

// readCSV returns the records below the header, which must be the one given;
// an empty header takes any and returns it as the first record.
func readCSV(fsys fs.FS, name, header string) ([][]string, error) {
	text, err := fs.ReadFile(fsys, path.Clean(name))
	if err != nil {
		return nil, err
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	records, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if header == "" {
		return records, nil
	}
	if len(records) == 0 || strings.Join(records[0], ",") != header {
		return nil, fmt.Errorf("%s: the first line is not %q", name, header)
	}
	return records[1:], nil
}

// readNumber turns blank into NaN: a blank is absent, never zero.
func readNumber(text string) (float64, error) {
	if text == "" {
		return math.NaN(), nil
	}
	return strconv.ParseFloat(text, 64)
}
