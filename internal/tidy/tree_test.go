package tidy

import (
	"go/ast"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"suffice/internal/tree"
)

func root(t *testing.T) string {
	t.Helper()
	dir, err := tree.Root()
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

// parsed gives every Go file of the module.
func parsed(t *testing.T) []File {
	t.Helper()
	files, err := Parse(root(t))
	if err != nil {
		t.Fatal(err)
	}
	if len(files) < 20 {
		t.Fatalf("only %d Go files were found", len(files))
	}
	return files
}

// code leaves the tests out.
func code(files []File) []File {
	return slices.DeleteFunc(slices.Clone(files), func(f File) bool { return strings.HasSuffix(f.Name, "_test.go") })
}

func byPackage(files []File) map[string][]File {
	packages := make(map[string][]File)
	for _, f := range files {
		packages[f.Package()] = append(packages[f.Package()], f)
	}
	return packages
}

func TestEveryPackageHasOneComment(t *testing.T) {
	for pkg, files := range byPackage(code(parsed(t))) {
		var holders []string
		for _, f := range files {
			if f.Doc != nil {
				holders = append(holders, path.Base(f.Name))
			}
		}
		if len(holders) != 1 {
			t.Errorf("%s has %d package comments %v, want one", pkg, len(holders), holders)
		}
	}
}

// A package whose numbers are checked says against what, and what it leaves out, at the top.
func TestCheckedPackagesSaySo(t *testing.T) {
	files := parsed(t)
	for pkg, all := range byPackage(code(files)) {
		checked := slices.ContainsFunc(files, func(f File) bool { return f.Name == pkg+"/published_test.go" })
		var comment string
		for _, f := range all {
			comment += f.Doc.Text()
		}
		for _, phrase := range []string{"hecked against", "Left out:"} {
			if checked && !strings.Contains(comment, phrase) {
				t.Errorf("%s has a published_test.go, but its package comment does not say %q", pkg, phrase)
			}
		}
	}
}

func TestFunctionsAreShort(t *testing.T) {
	all := Lengths(code(parsed(t)))
	median, ninth := all[len(all)/2].Lines, all[len(all)/10].Lines
	worst := ""
	for _, l := range all[:10] {
		worst += "\n" + strconv.Itoa(l.Lines) + " " + l.Name
	}
	t.Logf("%d functions: half have under %d lines, nine of ten under %d; longest:%s", len(all), median+1, ninth+1, worst)
	if median >= 10 {
		t.Errorf("half of the functions have %d lines or more, want under 10; longest:%s", median, worst)
	}
	if ninth >= 40 {
		t.Errorf("one function in ten has %d lines or more, want under 40; longest:%s", ninth, worst)
	}
}

func TestNoTestSkipsItself(t *testing.T) {
	for _, line := range Skips(parsed(t)) {
		t.Error(line)
	}
}

func TestPackageVariablesStayAsTheyAre(t *testing.T) {
	for _, files := range byPackage(code(parsed(t))) {
		for _, line := range Changed(files) {
			t.Error(line)
		}
	}
}

func TestNoFileIsADrawerForEverything(t *testing.T) {
	files, err := tree.Files(root(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		for _, part := range strings.Split(f, "/") {
			name, _, _ := strings.Cut(part, ".")
			if slices.Contains([]string{"util", "utils", "model", "models", "common", "helper", "helpers", "misc", "types"}, strings.TrimSuffix(name, "_test")) {
				t.Errorf("%s: %s says nothing of what is in it: name the thing", f, part)
			}
		}
	}
}

func TestNothingBannedIsLeft(t *testing.T) {
	files, err := tree.Files(root(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !isText(f) {
			continue
		}
		text, err := os.ReadFile(filepath.Join(root(t), f))
		if err != nil {
			t.Fatal(err)
		}
		for _, line := range Banned(f, string(text)) {
			t.Error(line)
		}
	}
}

// No text in the program says that water, or anything else, may be trusted without a test; Bans strike in pages, examples and manual.
func TestNothingIsPromised(t *testing.T) {
	for _, line := range Promises(parsed(t)) {
		t.Error(line)
	}
}

// tools/fuzz finds its targets by their text; the parser must find the same.
func TestEveryFuzzTargetIsRun(t *testing.T) {
	var want []string
	for _, f := range parsed(t) {
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && strings.HasPrefix(fn.Name.Name, "Fuzz") && strings.HasSuffix(f.Name, "_test.go") {
				want = append(want, "./"+f.Package()+" "+fn.Name.Name)
			}
		}
	}
	slices.Sort(want)
	out, err := exec.Command("bash", filepath.Join(root(t), "tools", "fuzz"), "list").Output()
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Fields(string(out)); !slices.Equal(got, strings.Fields(strings.Join(want, " "))) {
		t.Errorf("tools/fuzz runs\n%s\nwant\n%s", out, strings.Join(want, "\n"))
	}
}

// Every module that is required directly is imported, and the other way round.
func TestModulesAreNeeded(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root(t), "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	direct, indirect := requirements(string(text))
	used := make(map[string]string) // module to a file that imports it
	for _, f := range parsed(t) {
		for _, spec := range f.Imports {
			name, _ := strconv.Unquote(spec.Path.Value)
			for _, module := range slices.Concat(direct, indirect) {
				if name == module || strings.HasPrefix(name, module+"/") {
					used[module] = f.Name
				}
			}
		}
	}
	for _, module := range direct {
		if used[module] == "" {
			t.Errorf("go.mod requires %s, which nothing imports: run go mod tidy", module)
		}
	}
	for _, module := range indirect {
		if used[module] != "" {
			t.Errorf("%s imports %s, which go.mod marks as indirect: run go mod tidy", used[module], module)
		}
	}
}

// requirements gives the modules that a go.mod requires.
func requirements(text string) (direct, indirect []string) {
	for line := range strings.SplitSeq(text, "\n") {
		words := strings.Fields(strings.TrimPrefix(line, "require "))
		if len(words) < 2 || !strings.HasPrefix(words[1], "v") {
			continue
		}
		if strings.HasSuffix(line, "// indirect") {
			indirect = append(indirect, words[0])
		} else {
			direct = append(direct, words[0])
		}
	}
	return direct, indirect
}

// NOTICE carries the licence of everything that is inside the program.
func TestNoticeIsFresh(t *testing.T) {
	made, err := exec.Command("bash", filepath.Join(root(t), "tools", "notice")).Output()
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(root(t), "NOTICE"))
	if err != nil {
		t.Fatal(err)
	}
	if string(text) != string(made) {
		t.Errorf("NOTICE has %d bytes and would have %d: run make notice", len(text), len(made))
	}
}
