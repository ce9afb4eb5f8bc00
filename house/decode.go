package house

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"suffice/internal/words"
)

// A mark is a place in the file.
type mark struct{ line, column int }

func markOf(n *yaml.Node) mark { return mark{max(n.Line, 1), max(n.Column, 1)} }

// A Default is one value that holds because the file leaves its key out.
type Default struct {
	Path   string `json:"path"`   // such as water.tanks[0].leak
	Value  string `json:"value"`  // with its unit, as a person would write it
	Source string `json:"source"` // where it comes from
}

// A reader puts the nodes of one document into a File and keeps what is wrong.
type reader struct {
	file     string
	faults   Faults
	defaults []Default
	marks    map[string]mark // where each value stands, by path
	broken   map[string]bool // paths whose value is at fault and must not be reasoned about
}

// at notes a fault at a place of the text.
func (r *reader) at(m mark, where, format string, args ...any) {
	r.faults = append(r.faults, Fault{r.file, m.line, m.column, where, fmt.Sprintf(format, args...)})
	r.broken[where] = true
}

// fault notes a fault of a value that was read, or is missing in the group that should hold it.
func (r *reader) fault(where, format string, args ...any) {
	at, found := r.marks[where]
	for up := where; !found && up != ""; at, found = r.marks[up] {
		up = outer(up)
	}
	r.at(at, where, format, args...)
}

// sound reports whether all these values, and the groups they stand in, were read without a fault.
func (r *reader) sound(paths ...string) bool {
	for _, p := range paths {
		for ; p != ""; p = outer(p) {
			if r.broken[p] {
				return false
			}
		}
	}
	return true
}

// outer gives the path of the group or list that a value stands in.
func outer(path string) string { return path[:max(strings.LastIndexAny(path, ".["), 0)] }

func reflectOf(f *File) reflect.Value { return reflect.ValueOf(f).Elem() }

func follow(n *yaml.Node) *yaml.Node {
	for n.Kind == yaml.AliasNode {
		n = n.Alias
	}
	return n
}

func under(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// group reads keys and values into a struct.
func (r *reader) group(n *yaml.Node, path string, into reflect.Value) {
	keys := keysOf(into.Type())
	r.marks[path] = markOf(n)
	if n.Kind != yaml.MappingNode {
		r.at(markOf(n), path, "is %s, but a group of keys is wanted here: %s", kindOf(n), strings.Join(namesOf(keys), ", "))
		return
	}
	seen := make(map[string]int)   // line of each key
	meant := make(map[string]bool) // keys that a misspelt one stands for
	for i := 0; i+1 < len(n.Content); i += 2 {
		word, value := follow(n.Content[i]), n.Content[i+1]
		k := find(keys, word)
		switch first, twice := seen[word.Value]; {
		case k == nil && n.Style&yaml.FlowStyle != 0 && value.Tag == "!!null" && value.Value == "":
			r.at(markOf(word), path, "%q stands alone between commas: put a text that has a comma in quotes, or write key: value", short(word.Value))
		case k == nil:
			r.unknown(word, path, keys, meant)
		case twice:
			r.at(markOf(word), under(path, k.Name), "stands twice, first on line %d: keep one of them", first)
		default:
			seen[k.Name] = max(word.Line, 1)
			r.value(k, value, under(path, k.Name), into.Field(k.index))
		}
	}
	for i := range keys {
		if k := &keys[i]; seen[k.Name] == 0 && !meant[k.Name] {
			r.leftOut(k, path, into.Field(k.index))
		}
	}
}

// leftOut puts the default of a key into place, or says that it is missing.
func (r *reader) leftOut(k *Key, path string, into reflect.Value) {
	where := under(path, k.Name)
	switch {
	case k.Default != "":
		if says := scalar(k, k.Default, into); says != "" {
			panic(fmt.Sprintf("house: default of %s: %s", where, says))
		}
		r.defaults = append(r.defaults, Default{where, k.Default, k.Source})
	case k.Needs && k.Example != "":
		r.at(r.marks[path], where, "is missing: write for example  %s: %s", k.Name, k.Example)
	case k.Needs:
		r.at(r.marks[path], where, "is missing: it says %s", k.Says)
	}
}

// unknown refuses a key, names the nearest known one, and keeps that one from being
// called missing as well when only letters are wrong.
func (r *reader) unknown(word *yaml.Node, path string, keys []Key, meant map[string]bool) {
	if word.Kind != yaml.ScalarNode {
		r.at(markOf(word), path, "a key is %s here: a key is one word", kindOf(word))
		return
	}
	if word.Value == "<<" {
		r.at(markOf(word), path, "the key << takes in another group: write its keys out instead")
		return
	}
	names := namesOf(keys)
	near := nearest(word.Value, names)
	says := fmt.Sprintf("%.40q is not a key here: the nearest known is %q", word.Value, near)
	switch homes := homesOf(word.Value); {
	case words.Distance(strings.ToLower(word.Value), near) <= 2:
		meant[near], r.broken[under(path, near)] = true, true
	case len(homes) > 0:
		says += fmt.Sprintf("; %s belongs under %s", word.Value, strings.Join(homes, " or "))
	default:
		says += fmt.Sprintf("; known here are %s", strings.Join(names, ", "))
	}
	r.at(markOf(word), under(path, short(word.Value)), "%s", says)
}

// nearest gives the known word with the least edit distance; of equals, the one whose
// length is nearest, since letters change places more often than they go missing.
func nearest(word string, known []string) string {
	far := func(k string) int { return words.Distance(strings.ToLower(word), strings.ToLower(k)) }
	longer := func(k string) int { return max(len(k)-len(word), len(word)-len(k)) }
	return slices.MinFunc(known, func(a, b string) int { return cmp.Or(far(a)-far(b), longer(a)-longer(b)) })
}

// value reads what stands behind a key.
func (r *reader) value(k *Key, n *yaml.Node, path string, into reflect.Value) {
	n = follow(n)
	r.marks[path] = markOf(n)
	if into.Kind() == reflect.Pointer {
		into.Set(reflect.New(into.Type().Elem()))
		into = into.Elem()
	}
	switch {
	case n.Style&yaml.TaggedStyle != 0:
		r.at(markOf(n), path, "has the tag %s: a house file has no tags, so write the value alone", n.Tag)
	case n.Kind == yaml.ScalarNode && n.Tag == "!!null":
		r.at(markOf(n), path, "has no value: write one%s, or leave the key out", forExample(k.Example))
	case k.Kind == List:
		r.list(k, n, path, into)
	case k.Kind == Group:
		r.group(n, path, into)
	case n.Kind != yaml.ScalarNode:
		r.at(markOf(n), path, "is %s, but one value is wanted here%s", kindOf(n), forExample(k.Example))
	default:
		if says := scalar(k, n.Value, into); says != "" {
			r.at(markOf(n), path, "%s", says)
		}
	}
}

// list reads a list of groups or of words.
func (r *reader) list(k *Key, n *yaml.Node, path string, into reflect.Value) {
	if n.Kind != yaml.SequenceNode {
		r.at(markOf(n), path, "is %s, but a list is wanted here: %s", kindOf(n), listRemedy(k))
		return
	}
	if most := k.count(); len(n.Content) > most {
		r.at(markOf(n), path, "has %d entries: the most is %d, so put similar ones together", len(n.Content), most)
		return
	}
	into.Set(reflect.MakeSlice(into.Type(), len(n.Content), len(n.Content)))
	item := *k
	item.Kind, item.Example = k.Of, ""
	for i, c := range n.Content {
		r.value(&item, c, fmt.Sprintf("%s[%d]", path, i), into.Index(i))
		if k.Of == Group {
			continue
		}
		for j := range i {
			if into.Index(i).String() == into.Index(j).String() && into.Index(i).String() != "" {
				r.fault(fmt.Sprintf("%s[%d]", path, i), "%s is in the list twice: write it once", into.Index(i))
			}
		}
	}
}

func listRemedy(k *Key) string {
	if k.Of == Group {
		return "begin each entry with a dash, even a single one"
	}
	return "put it in brackets, for example " + k.Example
}

func kindOf(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "a group of keys"
	case yaml.SequenceNode:
		return "a list"
	}
	if n.Tag == "!!null" {
		return "empty"
	}
	return fmt.Sprintf("the single value %q", short(n.Value))
}

func forExample(example string) string {
	if example == "" {
		return ""
	}
	return ", for example " + example
}

// short keeps a person's text from filling the screen.
func short(text string) string {
	if letters := []rune(text); len(letters) > 40 {
		return string(letters[:40]) + "..."
	}
	return text
}
