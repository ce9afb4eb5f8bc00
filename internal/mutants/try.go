package mutants

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// Try runs the named tests with the fault in place. It gives nil where they fail, as
// they must, and else says what happened. Scratch is an empty folder.
func (m Mutant) Try(ctx context.Context, root, scratch string) error {
	overlay, err := m.overlay(root, scratch)
	if err != nil {
		return err
	}
	flags, err := m.flags(root)
	if err != nil {
		return err
	}
	args := append([]string{"test", "-count=1", "-vet=off", "-timeout=120s", "-overlay=" + overlay, "-run=" + m.Run, m.Test}, flags...)
	run := exec.CommandContext(ctx, "go", args...)
	run.Dir = root
	out, err := run.CombinedOutput()
	var exit *exec.ExitError
	switch said := string(out); {
	case err == nil && strings.Contains(said, "no tests to run"):
		return fmt.Errorf("%s: no test of %s is called %s", m.File, m.Test, m.Run)
	case err == nil:
		return fmt.Errorf("%s: %q became %q and the tests of %s did not notice (%s)", m.File, m.Before, m.After, m.Test, m.Why)
	case !errors.As(err, &exit):
		return fmt.Errorf("%s: go test did not run: %w", m.File, err)
	case !strings.Contains(said, "--- FAIL: ") || strings.Contains(said, "panic: test timed out"):
		return fmt.Errorf("%s: with %q the tests of %s did not fail but came to nothing:\n%s", m.File, m.After, m.Test, said)
	}
	return nil
}

// overlay writes the broken file and the list by which the go tool lays it over the real one.
func (m Mutant) overlay(root, scratch string) (string, error) {
	original := filepath.Join(root, filepath.FromSlash(m.File))
	source, err := os.ReadFile(original)
	if err != nil {
		return "", err
	}
	broken, err := m.Apply(string(source))
	if err != nil {
		return "", err
	}
	mutant, list := filepath.Join(scratch, "mutant.go"), filepath.Join(scratch, "overlay.json")
	text, err := json.Marshal(map[string]map[string]string{"Replace": {original: mutant}})
	if err != nil {
		return "", err
	}
	return list, errors.Join(os.WriteFile(mutant, []byte(broken), 0o600), os.WriteFile(list, text, 0o600))
}

// flags keeps property tests from searching long for the smallest failure and from
// leaving it in testdata: these failures are wanted. One seed: a mutant is noticed every time or never.
func (m Mutant) flags(root string) ([]string, error) {
	files, err := filepath.Glob(filepath.Join(root, filepath.FromSlash(m.Test), "*_test.go"))
	if err != nil || len(files) == 0 {
		return nil, errors.Join(err, fmt.Errorf("%s: %s has no tests", m.File, m.Test))
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			return nil, err
		}
		if strings.Contains(string(text), `"pgregory.net/rapid"`) {
			return []string{"-rapid.seed=1", "-rapid.nofailfile", "-rapid.shrinktime=100ms"}, nil
		}
	}
	return nil, nil
}
