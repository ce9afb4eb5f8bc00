package cli

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/examples"
	"suffice/sheets"
)

// completed gives the candidates without their meanings.
func completed(t interface{ Fatal(...any) }, words ...string) (found []string) {
	var c commands
	parser, err := c.parser(quiet(), func(int) {})
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range completions(parser.Model.Node, words) {
		word, _, _ := strings.Cut(line, "\t")
		found = append(found, word)
	}
	return found
}

func TestCompletions(t *testing.T) {
	home := filepath.Join(t.TempDir(), "house.yaml")
	if err := os.WriteFile(home, examples.RoofAndTank, 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		words []string
		want  []string
	}{
		{[]string{"pro"}, []string{"prove"}},
		{[]string{"prove", "--row"}, []string{"--rows"}},
		{[]string{"prove", "ho"}, []string{filesHere}},
		{[]string{"prove", "house.yaml", ""}, nil},
		{[]string{"prove", "--weather", "sk"}, []string{filesHere}},
		{[]string{"prove", "--weather", "=", "sk"}, []string{filesHere}},
		{[]string{"prove", "--rows", "a.csv", "ho"}, []string{filesHere}},
		{[]string{"prove", "--json", "ho"}, []string{filesHere}},
		{[]string{"weather", "lo"}, []string{"look"}},
		{[]string{"weather", "import", "-o", "pl"}, []string{filesHere}},
		{[]string{"sheet", "roof-y"}, []string{"roof-yield"}},
		{[]string{"sheet", "roof-yield", "ar"}, nil},
		{[]string{"sheet", "roof-yield", "ro"}, []string{"roof="}},
		{[]string{"sheet", "roof-yield", "roof=9m2", "ro"}, nil},
		{[]string{"sheet", "no-such-sheet", ""}, nil},
		{[]string{"completion", ""}, []string{"bash", "zsh", "fish"}},
		{[]string{"new", "--surface", "gl"}, []string{"glazed tiles"}},
		{[]string{"new", "--surface=gl"}, []string{"--surface=glazed tiles"}},
		{[]string{"checks", "site/su"}, []string{"site/sun"}},
		{[]string{"set", home, "water.tanks[0].h"}, []string{"water.tanks[0].holds"}},
		{[]string{"set", home, "water.tanks[0].le"}, []string{"water.tanks[0].leak"}},
		{[]string{"set", "absent.yaml", "wat"}, nil},
		{[]string{"nonsense", ""}, nil},
		{[]string{"weather", "nonsense", "l"}, nil},
		{[]string{"prove", "--no-such=", "x"}, []string{filesHere}},
	} {
		if got := completed(t, c.words...); !slices.Equal(got, c.want) {
			t.Errorf("%q: got %q, want %q", c.words, got, c.want)
		}
	}
	if got := completed(t, "sheet", ""); len(got) != len(sheets.All()) {
		t.Errorf("%d sheets are offered, there are %d", len(got), len(sheets.All()))
	}
	if got := completed(t, ""); slices.Contains(got, "__complete") || !slices.Contains(got, "new") {
		t.Errorf("the verbs offered are %q", got)
	}
}

// Whatever is typed, every candidate begins with it, and nothing breaks.
func TestCandidatesBeginWithWhatWasTyped(t *testing.T) {
	var pool []string
	pool = append(pool, "", "-", "--", "--=", "=", "--weather", "--weather=x", "-o", "x=1", "[", "\\")
	for _, s := range sheets.All()[:5] {
		pool = append(pool, s.Name)
	}
	pool = append(pool, completed(t, "")...)
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.OneOf(rapid.SampledFrom(pool), rapid.StringN(0, 5, -1)), 0, 5).Draw(t, "words")
		last := ""
		if len(words) > 0 {
			last = words[len(words)-1]
		}
		for _, c := range completed(t, words...) {
			if c != filesHere && !strings.HasPrefix(c, strings.TrimPrefix(last, "=")) && !strings.HasPrefix(c, last) {
				t.Errorf("%q offers %q", words, c)
			}
		}
	})
}
