package cli

import (
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/alecthomas/kong"
)

func quiet() Streams {
	return Streams{In: strings.NewReader(""), Out: io.Discard, Err: io.Discard, Width: 80}
}

// verbsOf lists the verbs that do something, by their words: "weather look".
func verbsOf(n *kong.Node, before string) map[string]*kong.Node {
	all := make(map[string]*kong.Node)
	for _, c := range n.Children {
		words := strings.TrimSpace(before + " " + c.Name)
		if c.Leaf() && !c.Hidden {
			all[words] = c
		}
		for name, inner := range verbsOf(c, words) {
			all[name] = inner
		}
	}
	return all
}

// examplesIn gives the command lines of a help, without the remarks behind them.
func examplesIn(help string) (lines []string) {
	for line := range strings.Lines(help) {
		if rest, is := strings.CutPrefix(line, "  suffice "); is {
			command, _, _ := strings.Cut(strings.TrimSpace(rest), "   ")
			command, _, _ = strings.Cut(command, " > ")
			lines = append(lines, strings.TrimSpace(command))
		}
	}
	return lines
}

// shellWords splits a command line at blanks outside of double quotes.
func shellWords(line string) (all []string) {
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			all = append(all, part)
			continue
		}
		all = append(all, strings.Fields(part)...)
	}
	return all
}

// Every verb has help with at least one example of itself, and every example is a command
// line that the program understands.
func TestEveryVerbHasExamplesThatParse(t *testing.T) {
	var c commands
	parser, err := c.parser(quiet(), func(int) {})
	if err != nil {
		t.Fatal(err)
	}
	verbs := verbsOf(parser.Model.Node, "")
	if len(verbs) < 10 {
		t.Fatalf("only %d verbs were found", len(verbs))
	}
	for name, node := range verbs {
		examples := examplesIn(node.Detail)
		if node.Help == "" || !slices.ContainsFunc(examples, func(e string) bool { return e == name || strings.HasPrefix(e, name+" ") }) {
			t.Errorf("%s: help %q, and no example of it among %q", name, node.Help, examples)
		}
		for _, example := range examples {
			var fresh commands
			parser, err := fresh.parser(quiet(), func(int) {})
			if err != nil {
				t.Fatal(err)
			}
			if _, err := parser.Parse(negatives(shellWords(example))); err != nil {
				t.Errorf("%s: the example %q: %v", name, example, err)
			}
		}
	}
}

// The test above sees an example that does not parse, and a verb without one.
func TestExamplesAreFound(t *testing.T) {
	got := examplesIn("Text.\n\nExamples:\n  suffice set a.yaml b \"c d\"     a remark\n  suffice schema > file\n suffice not this\n")
	if want := []string{`set a.yaml b "c d"`, "schema"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	var c commands
	parser, err := c.parser(quiet(), func(int) {})
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{"nonsense", "check --no-such-flag", "completion tcsh"} {
		if _, err := parser.Parse(shellWords(line)); err == nil {
			t.Errorf("%q was understood", line)
		}
	}
}
