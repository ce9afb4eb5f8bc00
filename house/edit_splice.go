package house

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"
)

// change carries out one change and gives the new text.
func (s *splicer) change(c Change) ([]byte, Changed, error) {
	at, err := s.find(c.Path)
	if err != nil {
		return nil, Changed{}, err
	}
	if says := badText(c.Value); says != "" {
		return nil, Changed{}, fmt.Errorf("%s: %q %s", c.Path, short(c.Value), says)
	}
	done := Changed{Path: c.Path, Is: c.Value, Added: at.value == nil}
	if at.value != nil {
		if err := s.single(at); err != nil {
			return nil, Changed{}, err
		}
		done.Was = follow(at.value).Value
		if done.Was == c.Value {
			return s.text, done, nil
		}
	}
	if says, n := s.refusal(at); says != "" {
		return nil, Changed{}, s.paste(at, n, c.Value, says)
	}
	next, n := s.put(at, c.Value)
	if next == nil {
		return nil, Changed{}, s.paste(at, n, c.Value, "cannot be written here without touching more than this one value")
	}
	return next, done, nil
}

// refusal says why a value is not to be replaced in place, and where that is seen.
func (s *splicer) refusal(at spot) (string, *yaml.Node) {
	if at.shared != nil {
		return "stands in a part that the file uses in more than one place, by & and *", at.shared
	}
	v := at.value
	switch {
	case v == nil && slices.ContainsFunc(at.group.Content, func(n *yaml.Node) bool { return n.Tag == "!!merge" }):
		return "may be taken in from another group, by <<", at.group
	case v == nil:
		return "", nil
	case v.Kind == yaml.AliasNode:
		return "is taken from another place of the file, by *" + v.Value, v
	case v.Anchor != "":
		return "is taken over by other places of the file, by &" + v.Anchor, v
	case v.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return "is a text over several lines, by | or >", v
	case v.Style&yaml.TaggedStyle != 0:
		return "has the tag " + v.Tag, v
	case v.Value == "" && v.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) == 0:
		return "has no value yet", v
	}
	return "", nil
}

// paste refuses a change, with the line to write by hand.
func (s *splicer) paste(at spot, n *yaml.Node, value, says string) error {
	m := markOf(n)
	snippet := writings(0, value)
	line := at.key.Name + ": " + snippet[0]
	if at.key.Kind == List {
		line = snippet[0]
	}
	return PasteError{Fault{s.file, m.line, m.column, at.path, says}, line}
}

// put tries the ways of writing a value, in the style of what stood there, and takes the
// first by which exactly this value changed. It gives nil and a place for none.
func (s *splicer) put(at spot, value string) ([]byte, *yaml.Node) {
	from, to, lead, tail, style, near := s.room(at)
	if from < 0 {
		return nil, near
	}
	for _, written := range writings(style, value) {
		next := slices.Concat(s.text[:from], []byte(lead+written+tail), s.text[to:])
		after, err := newSplicer(s.file, next)
		if err == nil && (&delta{spot: at, is: value}).holds(s.root, after.root) {
			return next, nil
		}
	}
	return nil, near
}

// room gives the bytes that a value takes or is put between, what stands before and behind
// it there, and the style of writing. From is negative where there is no safe place.
func (s *splicer) room(at spot) (from, to int, lead, tail string, style yaml.Style, near *yaml.Node) {
	if at.value != nil {
		from, to = s.span(at.value)
		return from, to, "", "", at.value.Style, at.value
	}
	from, lead, tail = s.gap(at.group, at.key.Name)
	return from, from, lead, tail, 0, at.group
}

// writings gives the ways to write a value: in the style it had, else plain, else in
// double quotes.
func writings(style yaml.Style, value string) []string {
	double := `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(value) + `"`
	switch {
	case style&yaml.SingleQuotedStyle != 0:
		return []string{"'" + strings.ReplaceAll(value, "'", "''") + "'"}
	case style&yaml.DoubleQuotedStyle != 0:
		return []string{double}
	}
	return []string{value, double}
}

// span gives the bytes of a single value with its quotes, or -1 where they are not found.
func (s *splicer) span(n *yaml.Node) (from, to int) {
	from = offset(s.text, n.Line, n.Column)
	if from < 0 {
		return -1, -1
	}
	rest := s.text[from:]
	switch {
	case n.Style&yaml.SingleQuotedStyle != 0:
		to = closing(rest, '\'', '\'')
	case n.Style&yaml.DoubleQuotedStyle != 0:
		to = closing(rest, '"', '\\')
	case n.Value != "" && bytes.HasPrefix(rest, []byte(n.Value)):
		to = len(n.Value)
	}
	if to == 0 {
		return -1, -1 // a plain text over several lines, for example
	}
	return from, from + to
}

// closing gives the length of a quoted text: up to its second quote that is not escaped.
// In single quotes a quote escapes a quote.
func closing(text []byte, quote, escape byte) int {
	if len(text) == 0 || text[0] != quote {
		return 0
	}
	for i := 1; i < len(text); i++ {
		switch {
		case text[i] == escape && i+1 < len(text) && (escape != quote || text[i+1] == quote):
			i++
		case text[i] == quote:
			return i + 1
		}
	}
	return 0
}

// offset gives the byte of a line and a column, both from 1, or -1. Columns are runes, and
// lines end as in YAML 1.1: also at a lone return, at U+0085, U+2028 and U+2029.
func offset(text []byte, line, column int) int {
	i := len(text) - len(bytes.TrimPrefix(text, []byte("\ufeff")))
	for l, c := 1, 1; ; c++ {
		if l == line && c == column {
			return i
		}
		if i >= len(text) || l > line {
			return -1
		}
		r, size := utf8.DecodeRune(text[i:])
		i += size
		if r == '\r' && i < len(text) && text[i] == '\n' {
			i++
		}
		if isBreak(r) {
			l, c = l+1, 0
		}
	}
}

func isBreak(r rune) bool {
	return r == '\n' || r == '\r' || r == '\u0085' || r == '\u2028' || r == '\u2029'
}

// gap finds where a key may be added to a group, in the group's own style: behind its last
// single value, or before its first key. It gives -1 where there is no such place.
func (s *splicer) gap(group *yaml.Node, name string) (at int, lead, tail string) {
	flow := group.Style&yaml.FlowStyle != 0
	for i := len(group.Content) - 1; i > 0; i -= 2 {
		value := group.Content[i]
		if value.Kind != yaml.ScalarNode || flow && i < len(group.Content)-1 {
			continue
		}
		if _, end := s.span(value); end >= 0 && flow {
			return end, ", " + name + ": ", ""
		} else if end >= 0 {
			end, newline := s.lineEnd(end)
			return end, newline + indent(group) + name + ": ", ""
		}
	}
	first := offset(s.text, group.Line, group.Column)
	switch {
	case first < 0:
		return -1, "", ""
	case !flow:
		_, newline := s.lineEnd(first)
		return first, name + ": ", newline + indent(group)
	case len(group.Content) == 0:
		return first + 1, name + ": ", ""
	}
	return first + 1, name + ": ", ", "
}

// indent gives the spaces before the keys of a group that is written line by line.
func indent(group *yaml.Node) string { return strings.Repeat(" ", max(0, group.Column-1)) }

// lineEnd gives the end of the line that a byte lies in, before its break, and the break
// that this file uses.
func (s *splicer) lineEnd(from int) (end int, newline string) {
	end = len(s.text)
	if i := bytes.IndexFunc(s.text[from:], isBreak); i >= 0 {
		end = from + i
	}
	if i := bytes.IndexByte(s.text, '\n'); i > 0 && s.text[i-1] == '\r' {
		return end, "\r\n"
	}
	return end, "\n"
}

// A delta is the one difference that a change may make between two readings of a file.
type delta struct {
	spot
	is string
}

// holds reports whether b is a, but for the delta: every key, value, style, tag and anchor.
func (d *delta) holds(a, b *yaml.Node) bool {
	if a == d.value {
		return d.written(b)
	}
	theirs := b.Content
	if a == d.group && d.value == nil {
		rest, there := d.without(b)
		if !there {
			return false
		}
		theirs = rest
	}
	if a.Kind != b.Kind || a.Style != b.Style || a.Tag != b.Tag || a.Value != b.Value || a.Anchor != b.Anchor {
		return false
	}
	return slices.EqualFunc(a.Content, theirs, d.holds)
}

// written reports whether a node says exactly the new value.
func (d *delta) written(n *yaml.Node) bool {
	return n.Kind == yaml.ScalarNode && n.Value == d.is && n.Tag != "!!null" && n.Anchor == "" && n.Style&yaml.TaggedStyle == 0
}

// without takes the added key out of a group again.
func (d *delta) without(group *yaml.Node) (rest []*yaml.Node, there bool) {
	for i := 0; i+1 < len(group.Content); i += 2 {
		if group.Content[i].Value == d.key.Name && group.Content[i].Kind == yaml.ScalarNode && d.written(group.Content[i+1]) && !there {
			there = true
			continue
		}
		rest = append(rest, group.Content[i], group.Content[i+1])
	}
	return rest, there
}
