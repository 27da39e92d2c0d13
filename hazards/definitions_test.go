package hazards_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/schemas/long"
)

// packageText is the code and the package comment of a folder, comment apart.
func packageText(t *testing.T, folder string) (code, comment string) {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case strings.HasSuffix(name, "_test.go"):
		case filepath.Base(name) == "doc.go":
			comment = string(text)
		default:
			code += string(text)
		}
	}
	return code, comment
}

// What a number means stands in the comment of a package that makes it.
func TestQuantitiesAreDefinedWhereTheyAreMade(t *testing.T) {
	long.NotShort(t)
	folders, err := filepath.Glob("*")
	if err != nil {
		t.Fatal(err)
	}
	folders = append(folders, filepath.Join("..", "scaling"))
	codes, comments := make([]string, len(folders)), make([]string, len(folders))
	for i, folder := range folders {
		codes[i], comments[i] = packageText(t, folder)
	}
	for _, q := range figure.Catalogue() {
		if !q.Built {
			continue
		}
		short := q.Name[strings.LastIndexByte(q.Name, '.')+1:]
		said := regexp.MustCompile(regexp.QuoteMeta(q.Name) + `|\b` + regexp.QuoteMeta(short) + `\b`)
		made, defined := "", false
		for i, folder := range folders {
			if strings.Contains(codes[i], `"`+q.Name+`"`) {
				made += " " + folder
				defined = defined || said.MatchString(comments[i])
			}
		}
		if made == "" || !defined {
			t.Errorf("%s is made in%s, and none of these says in its package comment what it is", q.Name, made)
		}
	}
}

// The first sentence of a package comment says what the package knows, and a
// later one what it must not know.
func TestPackagesSayWhatTheyKnow(t *testing.T) {
	top, err := filepath.Abs("..")
	if err != nil {
		t.Fatal(err)
	}
	err = filepath.WalkDir(top, func(path string, d os.DirEntry, err error) error {
		if err != nil || !d.IsDir() || strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata" {
			if d != nil && d.IsDir() && path != top {
				return filepath.SkipDir
			}
			return err
		}
		code, comment := packageText(t, path)
		if code+comment == "" || strings.Contains(code, "\npackage main\n") {
			return nil
		}
		head := regexp.MustCompile(`Package ` + d.Name() + ` [a-z]+s .*(must not|knows nothing)`)
		if !head.MatchString(strings.ReplaceAll(code+comment, "\n// ", " ")) {
			t.Errorf("%s: its comment does not say what package %s knows and must not know", path, d.Name())
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// What the guide names is there, and it stays short enough to be read.
func TestTheGuideIsTrue(t *testing.T) {
	const top, most = "..", 12 << 10
	text, err := os.ReadFile(filepath.Join(top, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	if len(text) > most {
		t.Errorf("DEVELOPERS.md has %d bytes, more than %d", len(text), most)
	}
	for _, m := range regexp.MustCompile("`((?:schemas|chemicals|hazards|scaling|reports|cmd|testdata)/[a-z/_.]*)`").
		FindAllStringSubmatch(string(text), -1) {
		if _, err := os.Stat(filepath.Join(top, filepath.FromSlash(m[1]))); err != nil {
			t.Errorf("DEVELOPERS.md names %s, which is not there", m[1])
		}
	}
	code, _ := packageText(t, "gas")
	signature := regexp.MustCompile("`(func Read[^`]*)`").FindSubmatch(text)
	if signature == nil || !strings.Contains(strings.ReplaceAll(code, "_ []", "runs []"), string(signature[1])) {
		t.Errorf("DEVELOPERS.md gives a reader the signature %q", signature)
	}
}
