// Command gen writes CHECKS.md, and the same table for the program to show, from the
// test files: what every number was checked against, how far it may lie from it and
// why. It reads the tests and does not run them, which is why a published number must
// be written out in its test.
//
//	go run ./internal/check/gen
//
// Pages in docs/checks are put at the end of CHECKS.md as they are: tables that are
// kept by hand, such as the couplings between the parts.
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"suffice/internal/check/table"
	"suffice/internal/mutants"
	"suffice/internal/tree"
)

func main() {
	if err := generate(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func generate() error {
	root, err := tree.Root()
	if err != nil {
		return err
	}
	made, err := outputs(root)
	if err != nil {
		return err
	}
	for name, text := range made {
		if err := os.WriteFile(filepath.Join(root, name), []byte(text), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// outputs gives the text of every file that is generated, by its name.
func outputs(root string) (map[string]string, error) {
	files, err := tree.Go(root)
	if err != nil {
		return nil, err
	}
	r, err := read(root, files)
	if err != nil {
		return nil, err
	}
	if len(r.faults) > 0 {
		return nil, errors.New(strings.Join(r.faults, "\n"))
	}
	broken, err := mutants.All()
	if err != nil {
		return nil, err
	}
	fragments, err := fragments(root)
	if err != nil {
		return nil, err
	}
	explained, err := os.ReadFile(filepath.Join(root, "SOURCES.md"))
	if err != nil {
		return nil, err
	}
	rows, err := lines(r.rows)
	if err != nil {
		return nil, err
	}
	return map[string]string{
		"CHECKS.md":                        page(r, broken, fragments),
		"internal/check/table/checks.json": rows,
		"internal/check/table/sources.txt": publications(string(explained)),
	}, nil
}

// fragments gives the pages kept by hand, in the order of their names.
func fragments(root string) ([]string, error) {
	names, err := filepath.Glob(filepath.Join(root, "docs", "checks", "*.md"))
	if err != nil {
		return nil, err
	}
	var texts []string
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		texts = append(texts, demote(strings.TrimSpace(string(text))))
	}
	return texts, nil
}

// demote makes the title of a page a section, and its sections parts of that.
func demote(text string) string {
	if !strings.HasPrefix(text, "# ") {
		return text
	}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, "#") {
			lines[i] = "#" + line
		}
	}
	return strings.Join(lines, "\n")
}

// lines gives the rows as JSON, one row a line, so that a change of one shows as one.
func lines(rows []table.Row) (string, error) {
	texts := make([]string, len(rows))
	for i, r := range rows {
		text, err := json.Marshal(r)
		if err != nil {
			return "", err
		}
		texts[i] = string(text)
	}
	return "[\n" + strings.Join(texts, ",\n") + "\n]\n", nil
}
