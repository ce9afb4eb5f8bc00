package house

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"
)

// Open reads a house file from disk.
func Open(path string) (*File, error) {
	f, err := os.Open(path)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil, fmt.Errorf("%s: there is no such file: look at the name and the folder", path)
	case err != nil:
		return nil, fmt.Errorf("%s: cannot be opened: %w", path, err)
	}
	defer f.Close() // only read from
	text, err := io.ReadAll(io.LimitReader(f, maxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be read: %w", path, err)
	}
	return Read(path, text)
}

// Read reads a house file from text. The path is where the text is from: faults begin
// with it, and the paths of records are relative to its folder. The error is a Faults
// with everything wrong.
func Read(path string, text []byte) (*File, error) {
	r := reader{file: path, marks: make(map[string]mark), broken: make(map[string]bool)}
	root := r.parse(text)
	if root == nil {
		return nil, r.faults.told()
	}
	f := &File{path: path}
	if format := newer(root); format != "" {
		r.at(mark{1, 1}, "format", "%s is newer than this program reads: the newest it knows is %d, so get a newer program", format, Newest)
		return nil, r.faults.told()
	}
	r.group(root, "", reflectOf(f))
	r.check(f)
	if err := r.faults.told(); err != nil {
		return nil, err
	}
	r.complete(f)
	f.defaults, f.marks = r.defaults, r.marks
	return f, nil
}

// newer gives the format the file claims, if it is a later one than this program knows.
func newer(root *yaml.Node) string {
	for i := 0; i+1 < len(root.Content); i += 2 {
		value := follow(root.Content[i+1])
		if n, err := strconv.Atoi(value.Value); follow(root.Content[i]).Value == "format" && err == nil && n > Newest {
			return value.Value
		}
	}
	return ""
}

// parse gives the one document of a text, or nil and a fault.
func (r *reader) parse(text []byte) *yaml.Node {
	if says := unreadable(text); says != "" {
		r.at(mark{1, 1}, "", "%s", says)
		return nil
	}
	loader, err := yaml.NewLoader(bytes.NewReader(text))
	if err != nil {
		r.at(mark{1, 1}, "", "the text cannot be read: %v", err)
		return nil
	}
	var document, second yaml.Node
	if err := loader.Load(&document); err != nil {
		r.syntax(text, err)
		return nil
	}
	if err := loader.Load(&second); err != io.EOF {
		at := mark{max(second.Line, 1), max(second.Column, 1)}
		r.at(at, "", "a second document begins here: a house file is one, so take out the line with --- or ... and what follows")
		return nil
	}
	root := &document
	if root.Kind == yaml.DocumentNode && len(root.Content) == 1 {
		root = root.Content[0]
	}
	if root.Kind != yaml.MappingNode {
		r.at(markOf(root), "", "the file does not say anything about a house: begin with a line such as  name: Terrace House")
		return nil
	}
	if n, says := endless(root); n != nil {
		r.at(markOf(n), "", "%s", says)
		return nil
	}
	return root
}

// unreadable says why a text cannot be a house file at all.
func unreadable(text []byte) string {
	switch {
	case len(text) > maxBytes:
		return fmt.Sprintf("the file is larger than %d kB: a house file is a few pages, so this may be another file", maxBytes>>10)
	case bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")):
		return "the file is written in UTF-16: save it as UTF-8"
	case len(bytes.TrimSpace(bytes.TrimPrefix(text, []byte("\ufeff")))) == 0:
		return "the file is empty: begin with a line such as  name: Terrace House"
	case !utf8.Valid(text) || bytes.ContainsFunc(text, control):
		return "the file is not a text file: save the house file as plain text (UTF-8)"
	}
	return ""
}

func control(c rune) bool { return c < ' ' && c != '\n' && c != '\r' && c != '\t' || c == 0x7f }

// syntax tells where the marks of the language do not fit together.
func (r *reader) syntax(text []byte, err error) {
	if errors.Is(err, io.EOF) {
		r.at(mark{1, 1}, "", "the file has only comments: begin with a line such as  name: Terrace House")
		return
	}
	var fault *yaml.LoadError
	if !errors.As(err, &fault) {
		r.at(mark{1, 1}, "", "the text cannot be read as YAML: %v", err)
		return
	}
	at := mark{max(fault.Mark.Line, 1), max(fault.Mark.Column, 1)}
	says := strings.TrimSpace(strings.Join([]string{fault.ContextMsg, fault.Message}, " "))
	r.at(at, "", "the text cannot be read as YAML: %s: %s", says, remedy(text, at.line))
}

// remedy guesses from the line itself what its writer may have meant.
func remedy(text []byte, line int) string {
	lines := bytes.Split(text, []byte("\n"))
	near := string(bytes.TrimRight(lines[min(line, len(lines))-1], "\r"))
	indent := near[:len(near)-len(strings.TrimLeft(near, " \t"))]
	switch {
	case strings.Contains(indent, "\t"):
		return "indent with spaces, never with tabs"
	case strings.Count(near, ": ") > 1 && !strings.ContainsAny(near, "{["):
		return "put a text with a colon in quotes"
	case strings.ContainsAny(near, "%@`&*!|>"):
		return "put a text that begins with a sign in quotes"
	}
	return "look at brackets, colons and indents on this line and the one above"
}

// endless finds what is too deep, refers to itself, or grows without measure behind
// aliases, and says so. Aliases are counted each time they stand.
func endless(root *yaml.Node) (*yaml.Node, string) {
	nodes := 0
	open := make(map[*yaml.Node]bool)
	var walk func(n *yaml.Node, depth int) (*yaml.Node, string)
	walk = func(n *yaml.Node, depth int) (*yaml.Node, string) {
		nodes++
		switch {
		case depth > maxDepth:
			return n, fmt.Sprintf("lists and groups stand inside each other more than %d deep: a house file needs no more than 6", maxDepth)
		case nodes > maxNodes:
			return n, fmt.Sprintf("the file comes to more than %d values, aliases written out: write the house without repeating parts by & and *", maxNodes)
		case open[n]:
			return n, "this part contains itself through an alias: write it out without & and *"
		case n.Kind == yaml.AliasNode:
			if at, says := walk(n.Alias, depth); at != nil {
				return n, says
			}
			return nil, ""
		}
		open[n] = true
		defer delete(open, n)
		for _, c := range n.Content {
			if at, says := walk(c, depth+1); at != nil {
				return at, says
			}
		}
		return nil, ""
	}
	return walk(root, 1)
}
