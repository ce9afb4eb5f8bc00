package house

import (
	"bytes"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"
	"pgregory.net/rapid"

	"suffice/examples"
)

// A page is a house file written in some style, and where each value stands in it.
type page struct {
	strings.Builder
	t       *rapid.T
	newline string
	at      map[string][2]int // bytes of each value with its quotes, by path
	missing []string          // keys that may be added
}

type pair struct {
	key   string
	value any // a string, []pair for a group, [][]pair for a list of groups
}

// drawPage writes a small house in groups on lines and in braces, with and without quotes,
// comments, wide letters and both kinds of line ends.
func drawPage(t *rapid.T) *page {
	p := &page{t: t, newline: rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "newline"), at: make(map[string][2]int)}
	if rapid.IntRange(0, 4).Draw(t, "mark of byte order") == 0 {
		p.WriteString("\ufeff")
	}
	top := []pair{
		{"name", "Häuschen ☀"},
		{"site", []pair{{"latitude", "35 deg"}, {"longitude", "24 deg"}, {"altitude", "9 m"}, {"clock", "UTC+2"}}},
		{"people", []pair{{"residents", "2"}, {"uses", [][]pair{{{"name", "größe 𝛑"}, {"water", "washing"}, {"amount", "9 L/d"}}}}}},
		{"water", []pair{
			{"roofs", [][]pair{{{"name", "r"}, {"area", "90 m2"}, {"surface", "metal"}}}},
			{"tanks", [][]pair{{{"name", "main"}, {"holds", "9 kL"}}, {{"name", "zwei"}, {"holds", "4 kL"}}}},
		}},
		{"wants", []pair{{"water", []pair{{"short_days", "1 /year"}}}}},
	}
	p.missing = []string{"format", "indoors", "site.coldest", "people.uses[0].hours", "water.changes_itself", "water.roofs[0].wetting", "water.tanks[1].leak", "water.tanks[0].dead"}
	p.comment("")
	p.group(rapid.Permutation(top).Draw(t, "order"), "", "")
	return p
}

func (p *page) yes(what string) bool { return rapid.Bool().Draw(p.t, what) }

func (p *page) comment(indent string) {
	if p.yes("comment") {
		p.WriteString(indent + "# für 2, \"so\" {viel} ☀: x" + p.newline)
	}
}

// lineEnd ends a line, with a remark on it or without.
func (p *page) lineEnd() {
	if p.yes("remark") {
		p.WriteString("  # größer, it's {a: b}")
	}
	p.WriteString(p.newline)
}

func (p *page) scalar(path, value string) {
	from := p.Len()
	switch rapid.IntRange(0, 3).Draw(p.t, "quotes") {
	case 0:
		p.WriteString(`"` + value + `"`)
	case 1:
		p.WriteString("'" + value + "'")
	default:
		p.WriteString(value)
	}
	p.at[path] = [2]int{from, p.Len()}
}

// group writes one key a line. The first line's indent is already there.
func (p *page) group(pairs []pair, path, indent string) {
	for i, one := range pairs {
		if i > 0 {
			p.comment(indent)
			p.WriteString(indent)
		}
		where := under(path, one.key)
		p.WriteString(one.key + ":")
		switch v := one.value.(type) {
		case string:
			p.WriteString(" ")
			p.scalar(where, v)
			p.lineEnd()
		case []pair:
			p.inner(v, where, indent)
		case [][]pair:
			p.entries(v, where, indent)
		}
	}
}

func (p *page) inner(pairs []pair, path, indent string) {
	if p.yes("in braces") {
		p.WriteString(" ")
		p.braces(pairs, path, indent+"  ")
		p.lineEnd()
		return
	}
	p.lineEnd()
	indent += strings.Repeat(" ", rapid.IntRange(1, 4).Draw(p.t, "indent"))
	p.comment(indent)
	p.WriteString(indent)
	p.group(pairs, path, indent)
}

func (p *page) entries(list [][]pair, path, indent string) {
	if p.yes("in brackets") {
		p.WriteString(" [")
		for i, one := range list {
			p.braces(one, fmt.Sprintf("%s[%d]", path, i), indent+"  ")
			p.WriteString(",")
		}
		p.WriteString("]")
		p.lineEnd()
		return
	}
	p.lineEnd()
	for i, one := range list {
		where := fmt.Sprintf("%s[%d]", path, i)
		p.comment(indent)
		p.WriteString(indent + "- ")
		if p.yes("in braces") {
			p.braces(one, where, indent+"    ")
			p.lineEnd()
			continue
		}
		p.group(one, where, indent+"  ")
	}
}

func (p *page) braces(pairs []pair, path, indent string) {
	p.WriteString("{")
	for i, one := range pairs {
		if i > 0 {
			p.WriteString(",")
			if p.yes("broken line") {
				p.lineEnd()
				p.WriteString(indent)
			} else {
				p.WriteString(" ")
			}
		}
		where := under(path, one.key)
		p.WriteString(one.key + ": ")
		switch v := one.value.(type) {
		case string:
			p.scalar(where, v)
		case []pair:
			p.braces(v, where, indent)
		case [][]pair:
			p.WriteString("[")
			for j := range v {
				p.braces(v[j], fmt.Sprintf("%s[%d]", where, j), indent)
				p.WriteString(", ")
			}
			p.WriteString("]")
		}
	}
	p.WriteString("}")
}

// newValue draws a value that the key may have.
func newValue(t *rapid.T, path string) string {
	values := map[string][]string{
		"format": {"1"}, "indoors": {"18 degC"}, "latitude": {"-12.5 deg", "1 deg"}, "longitude": {"30 deg"}, "altitude": {"0 m", "-3 m", "1.2 km"}, "clock": {"UTC-3:30", "UTC"},
		"coldest": {"-4 degC"}, "residents": {"1", "7"}, "water": {"drinking", "outdoor"}, "amount": {"30 L/person/d", "2 L/d"}, "hours": {"6-9 19-22"}, "area": {"1.3e2 m2", "50 m2"},
		"surface": {"glazed tiles", "green"}, "holds": {"50 kL", "3000 L"}, "leak": {"3 L/d"}, "dead": {"200 L", "0 L"}, "wetting": {"1 mm"}, "changes_itself": {"no"}, "short_days": {"0.1 /year", "10 %/d"},
		"name": {"plain", "it's", `say "so"`, "a: b", "x # y", "{a}", `back\slash`, "- dash", "null", "~", "yes", "*star", "&and", "%x", "@at", "`tick", "a, b", "☀ Süd", "12", "[", "#", ":", "!tag", "|", ">", "? key", "'", `"`},
	}
	return rapid.SampledFrom(values[path[strings.LastIndex(path, ".")+1:]]).Draw(t, "value")
}

// reading gives a text as plain values, read without any code of this package.
func reading(t *rapid.T, text []byte) any {
	var v any
	if err := yaml.Load(text, &v); err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return texts(v)
}

// texts makes every value a text, since 12 and "12" are the same to a house file.
func texts(v any) any {
	switch v := v.(type) {
	case map[string]any:
		for k := range v {
			v[k] = texts(v[k])
		}
	case []any:
		for i := range v {
			v[i] = texts(v[i])
		}
	default:
		return fmt.Sprint(v)
	}
	return v
}

// setIn sets one value in what reading gives.
func setIn(v any, path, value string) {
	step, rest := firstStep(path)
	if rest == "" {
		v.(map[string]any)[step] = value
		return
	}
	if strings.HasPrefix(step, "[") {
		i, _ := strconv.Atoi(strings.Trim(step, "[]"))
		setIn(v.([]any)[i], rest, value)
		return
	}
	setIn(v.(map[string]any)[step], rest, value)
}

// Changing a value sets exactly this value, keeps its quotes, and leaves every byte before and behind.
func TestSpliceSetsOneValue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPage(t)
		text := p.String()
		path := rapid.SampledFrom(slices.Sorted(maps.Keys(p.at))).Draw(t, "path")
		value := newValue(t, path)
		next, done, err := Splice("h", []byte(text), Change{path, value})
		if err != nil {
			t.Fatalf("%s: %q: %v in\n%s", path, value, err, text)
		}
		from, to := p.at[path][0], p.at[path][1]
		if !strings.HasPrefix(string(next), text[:from]) || !strings.HasSuffix(string(next), text[to:]) {
			t.Fatalf("%s: %q changed more than bytes %d to %d of\n%s\ninto\n%s", path, value, from, to, text, next)
		}
		if quote := text[from]; (quote == '"' || quote == '\'') && (next[from] != quote || next[len(next)-len(text)+to-1] != quote) {
			t.Errorf("%s: %q lost its quotes in\n%s", path, value, next)
		}
		want := reading(t, []byte(text))
		setIn(want, path, value)
		if got := reading(t, next); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %q reads\n%v\nwant\n%v", path, value, got, want)
		}
		if got, there, err := ValueAt("h", next, path); got != value || !there || err != nil || done[0].Is != value {
			t.Errorf("%s: %q stands there, is told as %q: %t, %v; want %q", path, got, done[0].Is, there, err, value)
		}
		if !valid(value, path) {
			return
		}
		if _, err := sound("h", next); err != nil {
			t.Errorf("%s: %q is refused afterwards: %v", path, value, err)
		}
	})
}

// valid says whether a value of newValue fits the others of the page.
func valid(value, path string) bool { return path != "water.tanks[1].name" || value != "main" }

// What is written back as it was read changes no byte.
func TestSetAfterGetIsIdentity(t *testing.T) {
	for _, text := range [][]byte{examples.Demo, examples.Southern, []byte(whole)} {
		file, err := Read("h", text)
		if err != nil {
			t.Fatal(err)
		}
		values := 0
		read, err := newSplicer("h", text)
		if err != nil {
			t.Fatal(err)
		}
		for path := range file.marks {
			if _, err := KeyAt(path); err != nil {
				continue // a group or a list
			}
			values++
			at, err := read.find(path)
			if err != nil || at.value == nil {
				t.Fatalf("%s: not found, %v", path, err)
			}
			value := at.value.Value
			next, _, err := read.change(Change{path, value})
			if err != nil || !bytes.Equal(next, text) {
				t.Errorf("%s: set to the %q it has: %v", path, value, err)
			}
			if len(text) > 4000 {
				continue // the way back takes long in a long file
			}
			back, _, err := Splice("h", text, Change{path, value + "x"}, Change{path, value})
			if err != nil || !bytes.Equal(back, text) {
				t.Errorf("%s: away from %q and back: %v", path, value, err)
			}
		}
		if values < 20 {
			t.Errorf("only %d values were tried", values)
		}
	}
}

// Adding a key that was left out only puts bytes in, in one place, and sets exactly this value.
func TestSpliceAddsOneKey(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPage(t)
		text := p.String()
		path := rapid.SampledFrom(p.missing).Draw(t, "path")
		value := newValue(t, path)
		next, done, err := Splice("h", []byte(text), Change{path, value})
		if err != nil {
			t.Fatalf("%s: %q: %v in\n%s", path, value, err, text)
		}
		if !done[0].Added || done[0].Was != "" {
			t.Errorf("%s: %+v does not say that it was added", path, done[0])
		}
		before := 0
		for before < len(text) && text[before] == next[before] {
			before++
		}
		if !strings.HasSuffix(string(next), text[before:]) {
			t.Fatalf("%s: other bytes changed: from\n%s\nto\n%s", path, text, next)
		}
		if added := string(next[before : before+len(next)-len(text)]); strings.Contains(added, "\n") && strings.Contains(added, "\r") != strings.Contains(text, "\r") {
			t.Errorf("%s: the added %q has other line ends than the file", path, added)
		}
		want := reading(t, []byte(text))
		setIn(want, path, value)
		if got := reading(t, next); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %q reads\n%v\nwant\n%v", path, value, got, want)
		}
		if _, err := sound("h", next); err != nil {
			t.Errorf("%s: %q is refused afterwards: %v\n%s", path, value, err, next)
		}
	})
}

// FuzzSplice holds any change of any text to one of two ends: a sentence, or the value stands
// there, all else reads as before, and the bytes changed in one place.
func FuzzSplice(f *testing.F) {
	f.Add([]byte(whole), "water.tanks[0].holds", "50 kL")
	f.Add(examples.Demo, "water.tanks[1].leak", "2 L/d")
	f.Add([]byte("name: &a b\nrooms: [*a]\n"), "name", "c")
	f.Add([]byte("name: |\n  b\n"), "name", "c")
	f.Add([]byte("name: a\r\nsite: {latitude: 'x'}\r\n"), "site.clock", "a: b # c")
	f.Add([]byte("name: a\u0085site: {}\u2028gas: {fuel: \"\u2029\"}"), "gas.fuel", "\\ \"")
	f.Fuzz(func(t *testing.T, text []byte, path, value string) {
		next, _, err := Splice("h", text, Change{path, value})
		if err != nil {
			if err.Error() == "" {
				t.Error("refused without a sentence")
			}
			return
		}
		value = strings.TrimSpace(value)
		if got, there, err := ValueAt("h", next, path); got != value || !there || err != nil {
			t.Errorf("%q at %s, there %t, %v; want %q", got, path, there, err, value)
		}
		before, was, err := otherValues(text, path)
		after, is, err2 := otherValues(next, path)
		if err != nil || err2 != nil || !slices.Equal(before, after) {
			t.Errorf("%s from %q to %q moved other values: %v, %v\n%v\n%v", path, was, is, err, err2, before, after)
		}
	})
}

// otherValues lists every value of a text but the one at a path.
func otherValues(text []byte, except string) (all []string, value string, err error) {
	s, err := newSplicer("h", text)
	if err != nil {
		return nil, "", err
	}
	var walk func(n *yaml.Node, path string)
	walk = func(n *yaml.Node, path string) {
		if path == except && n.Kind == yaml.ScalarNode {
			value = n.Value
			return
		}
		if n.Kind == yaml.ScalarNode || n.Kind == yaml.AliasNode {
			all = append(all, path+"="+n.Value)
		}
		for i, c := range n.Content {
			switch {
			case n.Kind == yaml.SequenceNode:
				walk(c, fmt.Sprintf("%s[%d]", path, i))
			case i%2 == 1:
				walk(c, under(path, n.Content[i-1].Value))
			case c.Kind != yaml.ScalarNode:
				walk(c, path+"?")
			}
		}
	}
	walk(s.root, "")
	return all, value, nil
}
