package house

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"
	"pgregory.net/rapid"

	"suffice/examples"
	"suffice/internal/words"
)

// slip changes one letter of a word: one more, one less, another, or two exchanged.
func slip(t *rapid.T, word string) string {
	at := rapid.IntRange(0, len(word)-1).Draw(t, "at")
	letter := string(rapid.RuneFrom([]rune("abcdefghijklmnopqrstuvwxyz_")).Draw(t, "letter"))
	switch rapid.SampledFrom([]string{"more", "less", "other", "exchange"}).Draw(t, "slip") {
	case "more":
		return word[:at] + letter + word[at:]
	case "less":
		return word[:at] + word[at+1:]
	case "other":
		return word[:at] + letter + word[at+1:]
	}
	if at+1 == len(word) {
		at--
	}
	return word[:at] + word[at+1:at+2] + word[at:at+1] + word[at+2:]
}

// Any key with one slip is refused at its place, and the word named is no farther from what
// was written than the key that was meant.
func TestMistypedKeysAreFound(t *testing.T) {
	var root yaml.Node
	if err := yaml.Load(examples.Demo, &root); err != nil {
		t.Fatal(err)
	}
	keys := keysIn(&root)
	lines := strings.Split(string(examples.Demo), "\n")
	rapid.Check(t, func(t *rapid.T) {
		key := keys[rapid.IntRange(0, len(keys)-1).Draw(t, "key")]
		typo := rapid.Custom(func(t *rapid.T) string { return slip(t, key.Value) }).Filter(func(word string) bool {
			return word != "" && !slices.ContainsFunc(Keys(), func(k Key) bool { return k.Name == word })
		}).Draw(t, "typo")
		changed := slices.Clone(lines)
		line := changed[key.Line-1]
		changed[key.Line-1] = line[:key.Column-1] + typo + line[key.Column-1+len(key.Value):]
		_, err := Read("h", []byte(strings.Join(changed, "\n")))
		faults, ok := err.(Faults)
		if !ok {
			t.Fatalf("%q for %q was read: %v", typo, key.Value, err)
		}
		i := slices.IndexFunc(faults, func(f Fault) bool { return f.Line == key.Line && f.Column == key.Column })
		if i < 0 {
			t.Fatalf("%q for %q on line %d, column %d: no fault there, but\n%v", typo, key.Value, key.Line, key.Column, err)
		}
		_, rest, found := strings.Cut(faults[i].Says, `the nearest known is "`)
		near, _, _ := strings.Cut(rest, `"`)
		if !found || words.Distance(typo, near) > words.Distance(typo, key.Value) {
			t.Errorf("%q for %q: %s", typo, key.Value, faults[i].Says)
		}
	})
}

// keysIn lists the key nodes of a document.
func keysIn(n *yaml.Node) (keys []*yaml.Node) {
	for i, c := range n.Content {
		if n.Kind == yaml.MappingNode && i%2 == 0 {
			keys = append(keys, c)
			continue
		}
		keys = append(keys, keysIn(c)...)
	}
	return keys
}

// A part behind an alias reads as if it were written out.
func TestAliasIsItsPart(t *testing.T) {
	f, err := Read("h", []byte(strings.Replace(whole, "roofs: [{name: r, area: 90 m2, surface: metal}]",
		"roofs: [{name: r, area: &a 90 m2, surface: metal}, {name: s, area: *a, surface: metal}]", 1)))
	if err != nil {
		t.Fatal(err)
	}
	if f.Water.Roofs[1].Area != 90 {
		t.Errorf("the second roof has %g m2, want 90", float64(f.Water.Roofs[1].Area))
	}
}

// Every default that is listed belongs to a known key that the file leaves out, and is
// listed once.
func TestDefaultsAreWhatTheFileLeavesOut(t *testing.T) {
	for _, text := range [][]byte{examples.Demo, examples.RoofAndTank, examples.Southern, []byte(whole), []byte(full), []byte(chained)} {
		f, err := Read("h", text)
		if err != nil {
			t.Fatal(err)
		}
		seen := make(map[string]bool)
		for _, d := range Defaults(f) {
			if _, given := f.marks[d.Path]; given || seen[d.Path] || d.Value == "" || d.Source == "" {
				t.Errorf("default %+v: given %t, listed before %t", d, given, seen[d.Path])
			}
			seen[d.Path] = true
			if !slices.ContainsFunc(Keys(), func(k Key) bool { return k.Path == general(d.Path) }) {
				t.Errorf("default %s belongs to no key", d.Path)
			}
		}
	}
}

// Writing a default into the file changes nothing.
func TestDefaultsWrittenOutAreTheSameHouse(t *testing.T) {
	plain, err := Read("h", []byte(top+tank1))
	if err != nil {
		t.Fatal(err)
	}
	text := "format: 1\nindoors: 20 degC\n" + top + strings.NewReplacer("surface: metal", "surface: metal, coefficient: 90 %, wetting: 0.4 mm",
		"holds: 9 kL", "holds: 9 kL, dead: 0 L, fire: 0 L, start: 50 %, leak: 0 L/d, overflow: ground", "water: {", "water: {changes_itself: yes, salt: 0.03 g/L, ").Replace(tank1)
	full, err := Read("h", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if len(Defaults(full)) != 0 {
		t.Errorf("defaults %v are used though all is written", Defaults(full))
	}
	a, b := *plain, *full
	a.defaults, a.marks, b.defaults, b.marks = nil, nil, nil, nil
	if !reflect.DeepEqual(a, b) {
		t.Errorf("with the defaults written out the file is\n%+v\nand without\n%+v", b, a)
	}
}

// FuzzRead holds any text to an answer: faults with places, or a house that composes or says why not.
func FuzzRead(f *testing.F) {
	for _, c := range wrong {
		if len(c.text) < 4096 {
			f.Add([]byte(c.text))
		}
	}
	f.Add([]byte(whole))
	f.Add([]byte(full))
	f.Add([]byte(chained))
	f.Add(examples.Demo)
	f.Add(examples.Southern)
	f.Fuzz(func(t *testing.T, text []byte) {
		file, err := Read("h", text)
		if err == nil {
			_, err = Compose(file)
		}
		if err == nil {
			return
		}
		faults, ok := err.(Faults)
		if !ok || len(faults) == 0 {
			t.Fatalf("refused without faults: %v", err)
		}
		for _, one := range faults {
			if one.Line < 1 || one.Column < 1 || one.Says == "" || strings.ContainsAny(one.Error(), "\n\r") {
				t.Errorf("a fault without place or sentence, or on more than one line: %q", one.Error())
			}
		}
	})
}
