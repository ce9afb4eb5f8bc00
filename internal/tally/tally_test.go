package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// A small module is tested for real, so that the form of the go tool's events is the true one.
func TestTally(t *testing.T) {
	for name, c := range map[string]struct {
		body string
		want string
		show []string
		hide string
	}{
		"all well": {"func TestA(t *testing.T) { t.Run(\"x\", func(t *testing.T) {}); t.Log(\"quiet\") }", "2 passed, 0 failed", []string{"ok  \ttried"}, "quiet"},
		"one fails": {"func TestA(t *testing.T) {}\nfunc TestB(t *testing.T) { t.Error(\"loud\") }", "1 passed, 1 failed",
			[]string{"loud", "--- FAIL: TestB", "FAIL\ttried"}, "TestA"},
		"skipped":         {"func TestA(t *testing.T) {}\nfunc TestB(t *testing.T) { t.Ski" + "pNow() }", "1 passed, 0 failed, 1 skipped", nil, "TestB"},
		"does not build":  {"func TestA(t *testing.T) { none() }", "0 passed, 1 failed", []string{"undefined: none", "[build failed]"}, "ok"},
		"dies":            {"func TestA(t *testing.T) { panic(\"gone\") }", "0 passed, 1 failed", []string{"panic: gone"}, "ok"},
		"dies outside":    {"func TestMain(m *testing.M) { os.Exit(3) }", "0 passed, 1 failed", []string{"exit status 3"}, "ok"},
		"nothing to test": {"", "0 passed, 0 failed", []string{"no tests to run"}, ""},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			var shown strings.Builder
			got, err := read(strings.NewReader(run(t, c.body)), &shown)
			if err != nil || got.String() != c.want {
				t.Errorf("got %q, %v, want %q", got, err, c.want)
			}
			for _, s := range c.show {
				if !strings.Contains(shown.String(), s) {
					t.Errorf("%q is not shown in\n%s", s, &shown)
				}
			}
			if c.hide != "" && strings.Contains(shown.String(), c.hide) {
				t.Errorf("%q is shown in\n%s", c.hide, &shown)
			}
		})
	}
}

// run gives what go test -json prints for a test file with this body.
func run(t *testing.T, body string) string {
	t.Helper()
	dir := t.TempDir()
	imports := "import (\n\"testing\"\n\"os\"\n)\nvar _, _ = testing.Short, os.Exit\n"
	for name, text := range map[string]string{"go.mod": "module tried\n\ngo 1.26.0\n", "a_test.go": "package tried\n" + imports + body} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	test := exec.CommandContext(t.Context(), "go", "test", "-json", "./...")
	test.Dir = dir
	out, _ := test.Output() // it may fail; what it printed is what counts
	return string(out)
}
