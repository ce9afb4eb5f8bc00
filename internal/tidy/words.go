package tidy

import (
	"fmt"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// A Ban is a way of writing that must not stay in the tree.
type Ban struct {
	What *regexp.Regexp
	Why  string
	In   func(name string) bool
}

// Bans lists them. The patterns are written so that they do not match themselves.
var Bans = []Ban{
	{regexp.MustCompile(`\b(TO[D]O|FIX[M]E|X[X]X)\b`), "do it, or say in the package comment what is left out", isText},
	{regexp.MustCompile(`(?i)not[ ]implemented|\b[s]tub(s|bed)?\b`), "build it, or tell the resident that it cannot be had", isText},
	{regexp.MustCompile(`(?i)\bseed[ ]document|\b[b]rief(s|ing)?\b`), "code speaks of the house, not of how the work was given out", isText},
	{regexp.MustCompile(`\b[Ii]ssue[ ]#?([A-Z]\b|\d)`), "say what was wrong, not where it was noted", isText},
	promise,
}

// textKinds are the files that people write.
var textKinds = []string{".go", ".md", ".sh", ".yml", ".yaml", ".txt", ".txtar", ".css", ".js", ".html", ".json"}

func isText(name string) bool {
	return slices.Contains(textKinds, filepath.Ext(name)) || path.Base(name) == "Makefile" || strings.HasPrefix(name, ".ci/")
}

// Banned gives a line for every place of a text where a ban strikes.
func Banned(name, text string) []string {
	var found []string
	for _, ban := range Bans {
		if !ban.In(name) {
			continue
		}
		for _, at := range ban.What.FindAllStringIndex(text, -1) {
			line := 1 + strings.Count(text[:at[0]], "\n")
			found = append(found, fmt.Sprintf("%s:%d: %q: %s", name, line, text[at[0]:at[1]], ban.Why))
		}
	}
	return found
}
