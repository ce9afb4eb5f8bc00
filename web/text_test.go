package web

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var (
	literal = regexp.MustCompile(`"([a-z_]+(?:\.[a-z0-9_]+)*)"`)
	asked   = regexp.MustCompile(`\b(?:Say|Count)\("([^"]*)"`)
)

// written gives the text of everything that people wrote for the pages.
func written(t *testing.T) (all string) {
	t.Helper()
	for _, pattern := range []string{"*.go", "*.templ"} {
		names, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			if strings.HasSuffix(name, "_test.go") || strings.HasSuffix(name, "_templ.go") {
				continue
			}
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			all += string(text)
		}
	}
	return all
}

// Every sentence that a page asks for is in the catalogue, and every sentence there is asked for.
func TestTheCatalogueIsWhole(t *testing.T) {
	c, err := english()
	if err != nil {
		t.Fatal(err)
	}
	code := written(t)
	for _, m := range asked.FindAllStringSubmatch(code, -1) {
		if _, known := c.sentences[m[1]]; !known && m[1] != "why." {
			t.Errorf("%q is asked for and not in text/en.json", m[1])
		}
	}
	var used []string
	for _, m := range literal.FindAllStringSubmatch(code, -1) {
		used = append(used, m[1])
	}
	for _, group := range []string{tellsWater, tellsPower, tellsHeat, tellsWarmth, tellsAir, tellsPlanter, tellsWell} {
		used = append(used, "why."+group)
	}
	for key := range c.sentences {
		if !slices.Contains(used, key) {
			t.Errorf("%q stands in text/en.json and nothing asks for it", key)
		}
	}
}

// The keys of figures stand in tables; each must be there.
func TestFiguresHaveTheirSentences(t *testing.T) {
	c, err := english()
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range literal.FindAllStringSubmatch(written(t), -1) {
		head, _, dotted := strings.Cut(m[1], ".")
		if _, known := c.sentences[m[1]]; dotted && !known && slices.Contains([]string{"water", "power", "heat", "verdict", "deed", "month", "today", "year", "change", "part", "caution"}, head) {
			t.Errorf("%q looks like a sentence and is not in text/en.json", m[1])
		}
	}
}

func TestCountedSentencesHaveTheirForms(t *testing.T) {
	c, err := english()
	if err != nil {
		t.Fatal(err)
	}
	for n, want := range map[int]string{1: "One thing is not right", 2: "2 things are not right", 0: "0 things are not right"} {
		if got := c.Count("faults", n); got != want {
			t.Errorf("of %d: %q, want %q", n, got, want)
		}
	}
	if got := c.Say("no.such.key"); got != "[no.such.key]" {
		t.Errorf("a key that is not there gives %q", got)
	}
}
