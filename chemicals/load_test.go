package chemicals

import (
	"maps"
	"strings"
	"testing"
	"testing/fstest"
)

// The whole of the data is parsed on first use, within the time of a command.
func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := load(dataFiles); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLoadLibrary(b *testing.B) {
	for b.Loop() {
		if _, err := loadSubstances(dataFiles); err != nil {
			b.Fatal(err)
		}
	}
}

const (
	datumHeads = "id,symbol,value,low,high,unit,shape,group,valid,source,where,status,note\n"
	tableHeads = "id,x,x_unit,unit,spacing,estimated_below,estimated_above,source,where,status,note\n"
)

func TestLoadRefuses(t *testing.T) {
	good := map[string]string{
		"data/sources.csv":  "key,title,publisher,year,doi,section\nown,,,,,\n",
		"data/tables.csv":   tableHeads + "t,x,,,linear,,,,,memory,\n",
		"data/tables/t.csv": "x,y\n1,2\n2,3\n",
		"data/a.csv":        datumHeads + "a,s,1,,,,,,,,,memory,\n",
	}
	if _, err := load(inMemory(good)); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, text, want string }{
		{"data/sources.csv", "key\nown\n", `there is no column "title"`},
		{"data/tables.csv", tableHeads + "t,x,,,linear,low,,,,memory,\n",
			`chemicals/data/tables.csv, row 2 (t), column estimated_below: "low" is not a number`},
		{"data/tables/t.csv", "x,y\n2,2\n1,3\n", "chemicals/data/tables/t.csv, row 3 (1), column x: x does not rise"},
		{"data/tables/t.csv", "x,y\n1,2\n2,\n", "chemicals/data/tables/t.csv, row 3 (2), column y: it must not be blank"},
		{"data/a.csv", datumHeads + "a,s,one,,,,,,,,,memory,\n",
			`chemicals/data/a.csv, row 2 (a), column value: "one" is not a number`},
	} {
		bad := maps.Clone(good)
		bad[c.name] = c.text
		if _, err := load(inMemory(bad)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s with %q: %v, want %s", c.name, c.text, err, c.want)
		}
	}
}

// The columns of a file may stand in any order.
func TestHeadsInAnyOrder(t *testing.T) {
	s, err := load(inMemory(map[string]string{
		"data/sources.csv": "doi,key,title,publisher,year,section\n,own,,,,\n",
		"data/tables.csv":  tableHeads + "t,x,,,linear,,,,,memory,\n", "data/tables/t.csv": "x,y\n1,2\n2,3\n",
		"data/a.csv": "value,id,symbol,low,high,unit,shape,group,valid,source,where,status,note\n7,a,s,,,,,,,,,memory,\n",
	}))
	if err != nil {
		t.Fatal(err)
	}
	if d, ok := s.Row("a"); !ok || d.Value != 7 {
		t.Errorf("read %+v", d)
	}
}

func inMemory(files map[string]string) fstest.MapFS {
	out := fstest.MapFS{}
	for _, name := range []string{"materials", "material_resistance", "material_words"} {
		text, err := dataFiles.ReadFile("data/" + name + ".csv")
		if err != nil {
			panic(err)
		}
		out["data/"+name+".csv"] = &fstest.MapFile{Data: text}
	}
	for name, text := range files {
		out[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return out
}
