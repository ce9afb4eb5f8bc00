package main

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"suffice/internal/check/table"
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

func text(t *testing.T, name string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(root(t), name))
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestTablesAreFresh(t *testing.T) {
	made, err := outputs(root(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range slices.Sorted(maps.Keys(made)) {
		if old := text(t, name); old != made[name] {
			t.Errorf("%s is stale: run go run ./internal/check/gen; %s", name, firstDifference(old, made[name]))
		}
	}
}

func firstDifference(old, made string) string {
	a, b := strings.Split(old, "\n"), strings.Split(made, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return fmt.Sprintf("line %d is\n%s\nand would be\n%s", i+1, a[i], b[i])
		}
	}
	return fmt.Sprintf("it has %d lines and would have %d", len(a), len(b))
}

func TestSourcesAreExplained(t *testing.T) {
	known, faults := keys(text(t, "SOURCES.md"))
	for _, f := range faults {
		t.Errorf("SOURCES.md: %s", f)
	}
	rows, err := table.Rows()
	if err != nil {
		t.Fatal(err)
	}
	var citations []citation
	for _, r := range rows {
		citations = append(citations, citation{r.Source, fmt.Sprintf("%s, %s", r.Package, r.At)})
	}
	files, err := tree.Go(root(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		found, err := cited(root(t), file)
		if err != nil {
			t.Fatal(err)
		}
		citations = append(citations, found...)
	}
	unknown := make(map[string][]string)
	for _, c := range citations {
		if !slices.Contains(known, c.key) {
			unknown[c.key] = append(unknown[c.key], c.at)
		}
	}
	for key, at := range unknown {
		t.Errorf("source %q has no line in SOURCES.md; it is named %d times, first in %s", key, len(at), at[0])
	}
}

func TestSourcesAreUsed(t *testing.T) {
	known, _ := keys(text(t, "SOURCES.md"))
	used := words(t)
	for _, key := range known {
		if !used[key] {
			t.Errorf("SOURCES.md explains %s, which no code, page or data file names", key)
		}
	}
}

// words gives every word, in the sense of a key, of the module's texts other than
// SOURCES.md and what is made from it, with the notes that lie beside test data.
func words(t *testing.T) map[string]bool {
	t.Helper()
	files, err := tree.Files(root(t))
	if err != nil {
		t.Fatal(err)
	}
	notes, err := tree.Notes(root(t))
	if err != nil {
		t.Fatal(err)
	}
	found, word := make(map[string]bool), regexp.MustCompile(`[a-z0-9]+(-[a-z0-9]+)*`)
	for _, file := range append(files, notes...) {
		if slices.Contains([]string{"SOURCES.md", "CHECKS.md", "internal/check/table/sources.txt"}, file) || !slices.Contains([]string{".go", ".md", ".yaml", ".json", ".txt"}, filepath.Ext(file)) {
			continue
		}
		for _, w := range word.FindAllString(text(t, file), -1) {
			found[w] = true
		}
	}
	return found
}

func TestKeysAreHeldToTheirForm(t *testing.T) {
	const good = "# Sources\n\n    - **key** — an example\n\n- **fao56** — a paper; seen\n- **iso52010-1** — a standard; from memory\n"
	if found, faults := keys(good); len(faults) != 0 || !slices.Equal(found, []string{"fao56", "iso52010-1"}) {
		t.Errorf("got %v, faults %v, want two keys and no fault", found, faults)
	}
	for text, says := range map[string]string{
		"- **a** — seen\n- **a** — seen":  "twice",
		"- **FAO 56** — seen":             "no key",
		"- **b** — seen\n- **a** — seen":  "in order",
		"- **a** — a paper of some years": "does not say",
	} {
		if _, faults := keys(text); !strings.Contains(strings.Join(faults, "; "), says) {
			t.Errorf("%q: got %v, want a fault saying %q", text, faults, says)
		}
	}
}

func TestPagesBecomeSections(t *testing.T) {
	for from, want := range map[string]string{
		"# A\n\ntext # 1\n\n## B": "## A\n\ntext # 1\n\n### B",
		"## A\n\n### B":           "## A\n\n### B",
	} {
		if got := demote(from); got != want {
			t.Errorf("%q became %q, want %q", from, got, want)
		}
	}
}

func TestBoundsAreReadable(t *testing.T) {
	for v, want := range map[float64]string{4520: "4520", 0.00005: "0.00005", 1.0 / 3: "0.333", 5e-9: "5e-09", 123456: "123000"} {
		if got := threeDigits(v); got != want {
			t.Errorf("%g is printed %s, want %s", v, got, want)
		}
	}
}
