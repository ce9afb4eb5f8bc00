package mutants

import (
	"strings"
	"testing"

	"suffice/internal/tree"
)

func TestEveryMutantIsNoticed(t *testing.T) {
	all, err := All()
	if err != nil {
		t.Fatal(err)
	}
	if len(all) == 0 {
		t.Fatal("list.txt names no mutant")
	}
	for _, m := range all {
		t.Run(m.File, func(t *testing.T) {
			t.Parallel()
			if err := m.Try(t.Context(), root(t), t.TempDir()); err != nil {
				t.Error(err)
			}
		})
	}
}

// A runner that takes every failure for a noticed mutant would prove nothing.
func TestTheRunnerCanFail(t *testing.T) {
	kilolitre := Mutant{File: "quantity/unit.go", Before: `"kL": {factor: 1, dim: volume}`, Test: "./quantity"}
	for _, c := range []struct {
		name string
		m    Mutant
		says string
	}{
		{"no harm done", with(kilolitre, `"kL": {factor: 1.0, dim: volume}`, ""), "did not notice"},
		{"does not compile", with(kilolitre, `"kL": {factor: one, dim: volume}`, ""), "came to nothing"},
		{"no such test", with(kilolitre, `"kL": {factor: 2, dim: volume}`, "TestOfNothing"), "no test"},
		{"text not there", Mutant{File: kilolitre.File, Before: "no such text", Test: kilolitre.Test}, "0 times"},
		{"text there often", Mutant{File: kilolitre.File, Before: "factor", Test: kilolitre.Test}, "times, want once"},
		{"nothing changed", with(kilolitre, kilolitre.Before, ""), "is the text before"},
		{"no tests there", Mutant{File: kilolitre.File, Before: kilolitre.Before, Test: "./docs"}, "has no tests"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			if err := c.m.Try(t.Context(), root(t), t.TempDir()); err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("got %v, want an error saying %q", err, c.says)
			}
		})
	}
}

func with(m Mutant, after, run string) Mutant {
	m.After, m.Run = after, run
	return m
}

func root(t *testing.T) string {
	t.Helper()
	dir, err := tree.Root()
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

func TestReadRefuses(t *testing.T) {
	for text, says := range map[string]string{
		"why: x\nfile: a.go\nbefore: b\nafter: c": `no line "test:"`,
		"wherefore: x": "does not begin with",
		"why: x\nfile: a.go\nbefore: b\nafter: c\ntest c": "does not begin with",
	} {
		if _, err := Read(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %v, want an error saying %q", text, err, says)
		}
	}
}

func TestReadTakesSeveralLines(t *testing.T) {
	all, err := Read("# head\n\nwhy: x\nfile: a.go\nbefore: one\nbefore: \ttwo: 2\nafter:\ntest: ./a\n\n")
	want := Mutant{Why: "x", File: "a.go", Before: "one\n\ttwo: 2", Test: "./a"}
	if err != nil || len(all) != 1 || all[0] != want {
		t.Errorf("got %+v, %v, want %+v", all, err, want)
	}
}
