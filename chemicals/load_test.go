package chemicals

import (
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

func TestLoadRefuses(t *testing.T) {
	good := map[string]string{
		"data/sources.csv":  "key,title,publisher,year,doi,section\n",
		"data/tables.csv":   tableHeader + "\nt,x,,,linear,,,,,memory,\n",
		"data/tables/t.csv": "x,y\n1,2\n2,3\n",
		"data/a.csv":        datumHeader + "\na,s,1,,,,,,,,,memory,\n",
	}
	if _, err := load(inMemory(good)); err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"data/sources.csv":  "key\n",
		"data/tables.csv":   tableHeader + "\nt,x,,,linear,low,,,,memory,\n",
		"data/tables/t.csv": "x,y\n2,2\n1,3\n",
		"data/a.csv":        datumHeader + "\na,s,one,,,,,,,,,memory,\n",
	} {
		bad := map[string]string{}
		for k, v := range good {
			bad[k] = v
		}
		bad[name] = text
		if _, err := load(inMemory(bad)); err == nil {
			t.Errorf("%s with %q was taken", name, text)
		}
	}
}

func inMemory(files map[string]string) fstest.MapFS {
	out := fstest.MapFS{}
	for name, text := range files {
		out[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return out
}
