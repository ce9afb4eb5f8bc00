package web

import (
	"bytes"
	"go/format"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/a-h/templ/generator"
	"github.com/a-h/templ/parser/v2"
)

// The Go made from a template is that of the template as it stands: go generate ./web remakes it.
func TestTemplatesAreFresh(t *testing.T) {
	names, err := filepath.Glob("*.templ")
	if err != nil || len(names) == 0 {
		t.Fatalf("%d templates, %v", len(names), err)
	}
	for _, name := range names {
		template, err := parser.Parse(name)
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if _, err := generator.Generate(template, &b, generator.WithFileName(name), generator.WithVersion("v0.3.1100")); err != nil {
			t.Fatal(err)
		}
		want, err := format.Source(b.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(strings.TrimSuffix(name, ".templ") + "_templ.go")
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("the Go of %s is not that of the template as it stands (%v): run go generate ./web", name, err)
		}
	}
}
