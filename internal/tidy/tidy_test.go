package tidy

import (
	"go/parser"
	"go/token"
	"slices"
	"strings"
	"testing"
)

// parse gives files of one package from their texts.
func parse(t *testing.T, texts ...string) []File {
	t.Helper()
	fset := token.NewFileSet()
	var files []File
	for _, text := range texts {
		name := "water/" + string(rune('a'+len(files))) + ".go"
		parsed, err := parser.ParseFile(fset, name, "package water\n"+text, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, File{name, fset, parsed})
	}
	return files
}

func TestChangesAreSeen(t *testing.T) {
	const vars = `
import "os"
var count, table, list = 0, map[string]int{}, []int{}
var tank struct{ held [2]float64 }
var out = os.Stdout
`
	for body, want := range map[string]int{
		"count = 1": 1, "count++": 1, `table["x"] = 1`: 1, "list = append(list, 1)": 1, "tank.held[1] -= 3": 1,
		`delete(table, "x")`: 1, "clear(table)": 1, "for count = range 3 {}": 1, "func() { count = 2 }()": 1, "out = nil": 1,
		"count := 1; count++": 0, "for count := range 3 { count++ }": 0, "n := count; n++": 0, "list := list; list[0] = 1": 0,
		"_ = table[\"x\"]": 0, "table := 3; table = 4; _ = table": 0,
	} {
		for _, f := range [][]File{parse(t, vars+"\nfunc f() { "+body+" }"), parse(t, vars, "func f() { "+body+" }")} {
			if got := Changed(f); len(got) != want {
				t.Errorf("%s in %d files: %v, want %d", body, len(f), got, want)
			}
		}
	}
	if got := Changed(parse(t, vars+"\nfunc init() { count = 1 }")); len(got) != 0 {
		t.Errorf("init may set a variable, but got %v", got)
	}
}

func TestSkipsAreSeen(t *testing.T) {
	for text, want := range map[string]int{
		"func TestA(t *testing.T) { t.Skip() }":                                                         1,
		"func BenchmarkA(b *testing.B) { if testing.Short() { b.Skipf(\"x\") } }":                       1,
		"func f(t testing.TB) { t.SkipNow() }":                                                          1,
		"func TestA(t *testing.T) { rapid.Check(t, func(t *rapid.T) { t.Skip() }) }":                    0,
		"func TestA(t *testing.T) { rapid.Check(t, func(r *rapid.T) { t.Skip() }) }":                    1,
		"func TestA(t *testing.T) { t.Run(\"x\", func(t *testing.T) { func() { t.Skip() }() }) }":       1,
		"func draw(t *rapid.T) { func() { t.Skip() }() }":                                               0,
		"func f(r reader) { r.Skip(3) }":                                                                0,
		"func TestA(t *testing.T) { rapid.Check(t, func(t *rapid.T) { t.Skip() }); t.Skip(\"again\") }": 1,
	} {
		if got := Skips(parse(t, text)); len(got) != want {
			t.Errorf("%s: %v, want %d", text, got, want)
		}
	}
}

func TestLengthsAreCounted(t *testing.T) {
	got := Lengths(parse(t, "func one() {}\nfunc alsoOne() { _ = 1 }\nfunc three() {\n_ = 1\n\n_ = 2\n}\n"))
	want := []Length{{3, "water/a.go: three"}, {1, "water/a.go: one"}, {1, "water/a.go: alsoOne"}}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

func TestBansStrike(t *testing.T) {
	for _, c := range []struct {
		name, text string
		strikes    bool
	}{
		{"a.go", "// TO" + "DO: later", true}, {"a.go", "todo := 1", false},
		{"a.md", "This is not " + "implemented.", true}, {"a.go", "// see issue " + "A", true}, {"a.go", "// may issue a warning", false},
		{"Makefile", "# as the br" + "ief says", true}, {".ci/run", "# issue " + "12", true},
		{"a.go", "// a st" + "ub for now", true}, {"a.go", "placeholder:\"HOUSE\"", false},
		{"picture.png", "TO" + "DO", false},
		{"docs/water.md", "drink it, it is Safe.", true}, {"web/text/en.json", "safely", true}, {"garden/doc.go", "// safe", false}, {"docs/water.md", "a safety valve", false},
	} {
		got := []string(nil)
		if isText(c.name) {
			got = Banned(c.name, "first line\n"+c.text)
		}
		if (len(got) > 0) != c.strikes {
			t.Errorf("%s in %s: got %v", c.text, c.name, got)
		}
		if c.strikes && !strings.HasPrefix(got[0], c.name+":2: ") {
			t.Errorf("%s in %s: got %v, want line 2 named", c.text, c.name, got)
		}
	}
}

func TestRequirementsAreRead(t *testing.T) {
	direct, indirect := requirements("module x\n\ngo 1.26.0\n\nrequire (\n\ta.b/c v1.2.3\n\td.e/f v0.1.0 // indirect\n)\n\nrequire g.h/i v1.0.0\n")
	if !slices.Equal(direct, []string{"a.b/c", "g.h/i"}) || !slices.Equal(indirect, []string{"d.e/f"}) {
		t.Errorf("got %v and %v", direct, indirect)
	}
}

func TestPromisesAreSeen(t *testing.T) {
	for text, want := range map[string]int{
		`var a = "the water is safe"`: 1, "var a = `Safer\nand safely`": 1, `var a = "safety valve"`: 0, `var a = "unsafe"`: 0, "// safe\nvar a = 1": 0,
	} {
		if got := Promises(parse(t, text)); len(got) != want {
			t.Errorf("%s: %v, want %d", text, got, want)
		}
	}
}
