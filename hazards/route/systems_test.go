package route_test

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
)

// Line ends and byte order marks of other systems change the digest of a file
// and nothing else of it.
func TestLineEndsLoadTheSame(t *testing.T) {
	names, err := filepath.Glob(filepath.Join(bundled, "*.yaml"))
	if err != nil || len(names) < 11 {
		t.Fatal(len(names), err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		crlf := bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n"))
		want, digest := withoutDigest(t, name, text)
		for _, other := range [][]byte{crlf, append([]byte("\ufeff"), text...), append([]byte("\ufeff"), crlf...)} {
			got, changed := withoutDigest(t, name, other)
			if !alike(reflect.ValueOf(got), reflect.ValueOf(want)) {
				t.Errorf("%s loads as something else with other line ends", filepath.Base(name))
			}
			if changed == digest || digest == "" {
				t.Errorf("%s has the digest %q with other bytes", filepath.Base(name), changed)
			}
		}
	}
}

// alike is reflect.DeepEqual for values without loops in which a number that is
// not known is like another.
func alike(a, b reflect.Value) bool {
	if a.Kind() != b.Kind() || a.IsValid() && a.Type() != b.Type() {
		return false
	}
	all := func(n int, each func(i int) bool) bool {
		for i := range n {
			if !each(i) {
				return false
			}
		}
		return true
	}
	switch a.Kind() {
	case reflect.Pointer, reflect.Interface:
		return a.IsNil() == b.IsNil() && (a.IsNil() || alike(a.Elem(), b.Elem()))
	case reflect.Struct:
		return all(a.NumField(), func(i int) bool { return alike(a.Field(i), b.Field(i)) })
	case reflect.Slice:
		return a.Len() == b.Len() && all(a.Len(), func(i int) bool { return alike(a.Index(i), b.Index(i)) })
	case reflect.Map:
		return a.Len() == b.Len() && all(a.Len(), func(i int) bool {
			return alike(a.MapIndex(a.MapKeys()[i]), b.MapIndex(a.MapKeys()[i]))
		})
	case reflect.Float64:
		return a.Float() == b.Float() || a.Float() != a.Float() && b.Float() != b.Float()
	}
	return a.Equal(b)
}

// withoutDigest loads a file of any kind and takes out its digest.
func withoutDigest(t *testing.T, name string, text []byte) (any, string) {
	t.Helper()
	switch filepath.Base(name) {
	case "site-demo.yaml":
		s, problems, err := route.LoadSite("x.yaml", bytes.NewReader(text))
		if err != nil || s == nil {
			t.Fatal(problems, err)
		}
		digest := s.Digest
		s.Digest = ""
		return s, digest
	case "limits-demo.yaml":
		l, problems, err := limit.Load("x.yaml", bytes.NewReader(text), figure.Units{})
		if err != nil || l == nil {
			t.Fatal(problems, err)
		}
		digest := l.Digest
		l.Digest = ""
		return l, digest
	}
	r, problems, err := route.Load("x.yaml", bytes.NewReader(text))
	if err != nil || r == nil {
		t.Fatal(problems, err)
	}
	digest := r.Digest
	r.Digest, r.Text = "", ""
	return r, digest
}

// Problems name a file as it was named, with the place behind it, whatever
// the path is made of; the place is the same with other line ends.
func TestProblemsNameFilesOfAnySystem(t *testing.T) {
	const text = "route: etchbound/1\ntitle: x\nbasis: {status: invented}\n" +
		"places:\n  pot: {kind: beaker}\nsteps:\n  - {do: stirr, in: pot}\n"
	for _, name := range []string{`C:\routes\first one.yaml`,
		`\\server\share\route.yaml`, `..\route.yaml`, "/home/route:1.yaml"} {
		for _, lines := range []string{text, strings.ReplaceAll(text, "\n", "\r\n")} {
			_, problems, err := route.Load(name, strings.NewReader(lines))
			if err != nil || len(problems) == 0 {
				t.Fatal(problems, err)
			}
			got := problems[0].String()
			if !strings.HasPrefix(got, name+":7:10: ") || strings.Contains(got, "\r") {
				t.Errorf("%q", got)
			}
		}
	}
}
