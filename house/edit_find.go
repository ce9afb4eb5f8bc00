package house

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"

	"suffice/internal/words"
)

// A splicer changes one value of one text.
type splicer struct {
	file string
	text []byte
	root *yaml.Node
}

func newSplicer(file string, text []byte) (*splicer, error) {
	r := reader{file: file, marks: make(map[string]mark), broken: make(map[string]bool)}
	root := r.parse(text)
	if root == nil {
		return nil, r.faults.told()
	}
	return &splicer{file, text, root}, nil
}

// A spot is where a path leads in a text.
type spot struct {
	path   string
	key    Key
	group  *yaml.Node // the group or list in which the value stands, or would stand
	value  *yaml.Node // nil where the file leaves the key out
	shared *yaml.Node // an alias, or a part with an anchor, on the way: more than one place of the file
}

var entryOf = regexp.MustCompile(`\[[0-9]+\]`)

// general takes the numbers of list entries out of a path.
func general(path string) string { return entryOf.ReplaceAllString(path, "[]") }

// KeyAt gives the key that a path stands for, such as water.tanks[0].holds. An entry of a
// list of words has the key of its list.
func KeyAt(path string) (Key, error) {
	var known []string
	for _, k := range allKeys() {
		inside := k.Path
		switch {
		case k.Kind == Group || k.Of == Group:
			continue
		case k.Kind == List:
			inside += "[]"
		}
		if inside == general(path) {
			return k, nil
		}
		known = append(known, inside)
	}
	for _, k := range allKeys() {
		if k.Path == general(path) || k.Path+"[]" == general(path) {
			return Key{}, fmt.Errorf("%s is no single value: name one inside it, such as %s", path, inner(path, k))
		}
	}
	near := words.Nearest(general(path), known)
	return Key{}, fmt.Errorf("a house file has no %s: the nearest is %s, lists counted from [0]", short(path), near)
}

// inner gives the first value inside a group or a list.
func inner(path string, outside Key) string {
	if outside.Kind == List && !strings.HasSuffix(path, "]") {
		path += "[0]"
	}
	for _, k := range allKeys() {
		if rest, inside := strings.CutPrefix(k.Path, general(path)+"."); inside && !strings.ContainsAny(rest, ".[") && k.Kind != Group && k.Kind != List {
			return path + "." + rest
		}
	}
	return path
}

// find follows a path from the top. A key left out of its group is a spot without a value;
// a group or an entry left out is refused.
func (s *splicer) find(path string) (spot, error) {
	key, err := KeyAt(path)
	if err != nil {
		return spot{}, err
	}
	at := spot{path: path, key: key, value: s.root}
	for rest, done := path, ""; rest != ""; {
		var step string
		step, rest = firstStep(rest)
		if at.value == nil {
			return spot{}, fmt.Errorf("%s: there is no %s in this file: describe it first, then set %s", s.file, done, path)
		}
		if at, err = s.into(at, step, done); err != nil {
			return spot{}, err
		}
		done += step
		if step[0] != '[' {
			done = strings.TrimPrefix(done[:len(done)-len(step)]+"."+step, ".")
		}
	}
	return at, nil
}

// firstStep cuts a path behind its first key or entry: "tanks", "[0]".
func firstStep(path string) (step, rest string) {
	path = strings.TrimPrefix(path, ".")
	if strings.HasPrefix(path, "[") {
		i := strings.IndexByte(path, ']') + 1
		return path[:i], path[i:]
	}
	if i := strings.IndexAny(path, ".["); i >= 0 {
		return path[:i], path[i:]
	}
	return path, ""
}

// into goes one step down.
func (s *splicer) into(at spot, step, done string) (spot, error) {
	next := spot{path: at.path, key: at.key, group: at.value, shared: at.shared}
	if next.shared == nil && (at.value.Kind == yaml.AliasNode || at.value.Anchor != "") {
		next.shared = at.value
	}
	next.group = follow(at.value)
	if step[0] == '[' {
		i, _ := strconv.Atoi(strings.Trim(step, "[]")) // KeyAt lets only digits through; too many are too large for any list
		if next.group.Kind != yaml.SequenceNode || len(step) > 8 || i >= len(next.group.Content) {
			return spot{}, fmt.Errorf("%s: there is no %s%s in this file: %s has %d entries, counted from [0]", s.file, done, step, done, len(next.group.Content))
		}
		next.value = next.group.Content[i]
		return next, nil
	}
	if next.group.Kind != yaml.MappingNode {
		return spot{}, fmt.Errorf("%s: %s is %s, but a group of keys is wanted there: mend it by hand", s.file, done, kindOf(next.group))
	}
	for i := 0; i+1 < len(next.group.Content); i += 2 {
		if follow(next.group.Content[i]).Value != step {
			continue
		}
		if next.value != nil {
			return spot{}, fmt.Errorf("%s: %s stands twice: keep one of them", s.file, under(done, step))
		}
		next.value = next.group.Content[i+1]
	}
	return next, nil
}

// single refuses what is not one value.
func (s *splicer) single(at spot) error {
	if v := follow(at.value); v.Kind != yaml.ScalarNode {
		return fmt.Errorf("%s:%d:%d: %s is %s, but one value is wanted here: mend it by hand", s.file, v.Line, v.Column, at.path, kindOf(v))
	}
	return nil
}
