package tree

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

func TestFilesLeaveOutWhatIsNotOurs(t *testing.T) {
	root := t.TempDir()
	for _, name := range []string{
		"go.mod", "a/a.go", "a/a_test.go", "a/testdata/README.md", "a/testdata/record/README.md", "a/testdata/x.go", ".git/HEAD", ".ci/run",
		".tools/x.go", "bin/suffice", "tools/go.mod", "tools/x.go", "README.md", "testdata/README.md",
	} {
		path := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		list func(string) ([]string, error)
		want []string
	}{
		{Files, []string{".ci/run", "README.md", "a/a.go", "a/a_test.go", "go.mod"}},
		{Go, []string{"a/a.go", "a/a_test.go"}},
		{Notes, []string{"a/testdata/README.md", "a/testdata/record/README.md", "testdata/README.md"}},
	} {
		if got, err := c.list(root); err != nil || !slices.Equal(got, c.want) {
			t.Errorf("got %v, %v, want %v", got, err, c.want)
		}
	}
}

func TestRootIsAbove(t *testing.T) {
	root := t.TempDir()
	below := filepath.Join(root, "a", "b")
	if err := os.MkdirAll(below, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(root, "go.mod"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	t.Chdir(below)
	dir, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.Stat(dir)
	if err != nil {
		t.Fatal(err)
	}
	if want, err := os.Stat(root); err != nil || !os.SameFile(got, want) {
		t.Errorf("the root above %s is %s, want %s", below, dir, root)
	}
}
