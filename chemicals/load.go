package chemicals

import (
	"embed"
	"io/fs"
	"math"
	"path"
	"slices"
	"sync"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/material"
	"etchbound/schemas/columns"
)

//go:embed data
var dataFiles embed.FS

// files is everything read from the data folder but the scalar rows.
type files struct {
	sources   []Source
	bySource  map[string]int
	tables    map[string]*Table
	tableList []*Table
	materials *material.Table
}

// Files of the data folder that do not hold scalar rows.
var otherFiles = [...]string{"sources.csv", "tables.csv", "substances.csv", "bands.csv", "classes.csv", "families.csv",
	"no_range.csv",
	"strengths.csv",
	"materials.csv", "material_resistance.csv", "material_words.csv", "name_parts.csv"}

// base parses the embedded data once. They are part of the binary, so that a
// fault in them is a fault of the build: it panics, and a test reads them all.
var base = sync.OnceValue(func() *Store {
	s, err := load(dataFiles)
	if err != nil {
		panic(err)
	}
	return s
})

// Files are the files of the embedded data, as Load reads them.
func Files() fs.FS { return dataFiles }

// Load reads data that lie in a folder data like those that are embedded: a changed
// copy of Files. The error names file, row and column of every fault of a table.
func Load(fsys fs.FS) (*Store, error) { return load(fsys) }

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
	if f.materials, err = loadMaterials(fsys); err != nil {
		return nil, err
	}
	return newStore(append(rows, ofMaterials(f.materials)...), f), nil
}

// read makes a thing of each row of a table of the data folder.
func read[T any](fsys fs.FS, name string, thing func(columns.Row) T) ([]T, error) {
	text, err := fs.ReadFile(fsys, path.Clean(name))
	if err != nil {
		return nil, err
	}
	return columns.Read("chemicals/"+name, string(text), thing)
}

// embedded reads a table that the program carries, once. A fault of it is one of the
// build, which a test finds.
func embedded[T any](load func(fs.FS) ([]T, error)) func() []T {
	return sync.OnceValue(func() []T {
		all, err := load(dataFiles)
		if err != nil {
			panic(err)
		}
		return all
	})
}

func loadRows(fsys fs.FS, name string, rows []Datum) ([]Datum, error) {
	more, err := read(fsys, name, func(r columns.Row) Datum {
		return Datum{ID: datum.ID(r.Named("id")), Symbol: r.Text("symbol"), Unit: r.Text("unit"), Shape: r.Text("shape"),
			Value: r.Number("value"), Low: r.Number("low"), High: r.Number("high"), Old: math.NaN(),
			Group: r.Text("group"), Valid: r.Text("valid"), Source: r.Text("source"), Where: r.Text("where"),
			Status: r.Named("status"), Note: r.Text("note")}
	})
	return append(rows, more...), err
}

func loadFiles(fsys fs.FS) (*files, error) {
	f := &files{bySource: map[string]int{}, tables: map[string]*Table{}}
	var err error
	f.sources, err = read(fsys, "data/sources.csv", func(r columns.Row) Source {
		return Source{r.Named("key"), r.Text("title"), r.Text("publisher"), r.Text("year"), r.Text("doi"), r.Text("section")}
	})
	if err != nil {
		return nil, err
	}
	for i := range f.sources {
		f.bySource[f.sources[i].Key] = i
	}
	f.tableList, err = read(fsys, "data/tables.csv", func(r columns.Row) *Table {
		t := tableOf(r)
		if err := t.load(fsys); err != nil {
			r.Fault("id", err)
		}
		return t
	})
	for _, t := range f.tableList {
		f.tables[t.ID] = t
	}
	return f, err
}
