package house

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v4"
	"pgregory.net/rapid"

	"suffice/examples"
)

func TestSchemaIsFresh(t *testing.T) {
	const path = "../docs/house.schema.json"
	want := Schema()
	if *update {
		if err := os.WriteFile(path, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s is stale: run  go test ./house -run Fresh -update", path)
	}
}

// compiled gives the schema as an independent validator understands it, which also holds
// it to the meta-schema of the draft.
func compiled(t testing.TB) *jsonschema.Schema {
	t.Helper()
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("house.schema.json", document); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("house.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	if s.DraftVersion != 2020 {
		t.Errorf("the schema is of draft %d, want 2020", s.DraftVersion)
	}
	return s
}

// held holds a text to the schema.
func held(s *jsonschema.Schema, text []byte) error {
	var v any
	if err := yaml.Load(text, &v); err != nil {
		return err
	}
	return s.Validate(v)
}

func TestExamplesFollowTheSchema(t *testing.T) {
	s := compiled(t)
	paths, err := filepath.Glob("../examples/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	four, err := filepath.Glob("../examples/four/*.yaml")
	if err != nil || len(paths) < 3 || len(four) < 4 {
		t.Fatalf("%d and %d example files, %v", len(paths), len(four), err)
	}
	for _, path := range append(paths, four...) {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := held(s, text); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
	if err := held(s, []byte(whole)); err != nil {
		t.Errorf("a house with every part: %v", err)
	}
}

func TestSchemaRefuses(t *testing.T) {
	s := compiled(t)
	for _, c := range []struct{ old, new string }{
		{"name: A", "nmae: A"},                               // an unknown key, and one missing
		{"latitude: 35 deg", "latitude: 35"},                 // no unit
		{"clock: UTC+2", "clock: +2"},                        // another way to write a clock
		{"clock: UTC+2", "clock: [UTC]"},                     // a list for a value
		{"residents: 1", "residents: 101"},                   // too many
		{"residents: 1", "residents: 1.5"},                   // no whole number
		{"residents: 1", "residents: one"},                   // a word for a number
		{"water: washing", "water: wash"},                    // an unknown word
		{"amount: 9 L/d", "amount: some"},                    // no number
		{"surface: metal", "surface: tin"},                   // an unknown word
		{"gas: {fuel: propane", "gas: {fuel: propane, x: 1"}, // an unknown key deep inside
		{"efficiency: 30 %", "efficiency: 30"},               // a share above one
		{"gas: {fuel: propane, ", "gas: {"},                  // a needed key missing deep inside
	} {
		text := strings.Replace(whole, c.old, c.new, 1)
		if text == whole {
			t.Errorf("%q is not in the text", c.old)
			continue
		}
		if held(s, []byte(text)) == nil {
			t.Errorf("%q for %q is not refused", c.new, c.old)
		}
		if _, err := Read("h", []byte(text)); err == nil {
			t.Errorf("%q for %q is refused by the schema alone", c.new, c.old)
		}
	}
}

// Whatever value the reader takes, the schema lets through: an editor never underlines
// what the program would read.
func TestSchemaRefusesNothingThatIsRead(t *testing.T) {
	s := compiled(t)
	file, err := Read("h", examples.Demo)
	if err != nil {
		t.Fatal(err)
	}
	var paths []string
	for path := range file.marks {
		if _, err := KeyAt(path); err == nil {
			paths = append(paths, path)
		}
	}
	slices.Sort(paths)
	tried, read := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		path := rapid.SampledFrom(paths).Draw(t, "path")
		next, _, err := Splice("h", examples.Demo, Change{path, likely(t, path)})
		if err != nil {
			return
		}
		tried++
		if _, err := Read("h", next); err != nil {
			return
		}
		read++
		if err := held(s, next); err != nil {
			value, _, _ := ValueAt("h", next, path)
			t.Errorf("%s: %q is read, but the schema says %v", path, value, err)
		}
	})
	if read < tried/10 {
		t.Errorf("only %d of %d values were read, so little was tried", read, tried)
	}
}

// likely draws a value that a key may take, or nearly.
func likely(t *rapid.T, path string) string {
	k, err := KeyAt(path)
	if err != nil {
		t.Fatal(err)
	}
	texts := append([]string{"0.5", "12", "12.0", "1e1", "yes", "true", "50 %", "3 kL", "0.2 m3", "10 L/person/d", "6-9", "UTC-3:30", "monday  friday", "every day", "all", "drinking flushing", "2-29", "5.5EUR"}, k.Choices...)
	for _, text := range []string{k.Example, k.Default, k.Least, k.Most} {
		if text != "" {
			texts = append(texts, text, strings.ReplaceAll(text, " ", ""), strings.ReplaceAll(text, " ", "  "))
		}
	}
	return rapid.SampledFrom(texts).Draw(t, "value")
}
