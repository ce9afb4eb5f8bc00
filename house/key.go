package house

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"

	"go.yaml.in/yaml/v4"
)

// A Kind says how the value of a key is written.
type Kind string

// The kinds of values.
const (
	Quantity Kind = "quantity"  // a number with its unit
	Number   Kind = "number"    // a plain number or a share: 0.8 or 80 %
	Count    Kind = "count"     // a whole number
	YesNo    Kind = "yes or no" // a yes or a no
	Word     Kind = "word"      // one of the Choices
	Text     Kind = "text"      // any text on one line
	Written  Kind = "special"   // a way of writing of its own: hours, days, dates, clock, money, amount, level
	Group    Kind = "group"     // keys and values
	List     Kind = "list"      // several, see Of
)

// A Key is one key of the house file, as its struct tag declares it.
type Key struct {
	Path    string // from the top, with [] behind lists: water.tanks[].holds
	Name    string // the last word of Path
	Kind    Kind
	Of      Kind   // of the entries of a List
	Form    string // how a Written value is written, in words
	Unit    string // the unit it is kept in
	Least   string // with its unit, "" for no limit
	Most    string // with its unit, "" for no limit; entries of a List
	Default string // "" for none
	Source  string // of the default
	Example string
	Says    string
	Choices []string
	Needs   bool

	pattern string // of a Written value, for the schema
	index   int    // of the struct's field
}

// Keys lists every key of the house file, each group before what is in it.
func Keys() []Key { return slices.Clone(allKeys()) }

// allKeys reads the tags once; they do not change.
var allKeys = sync.OnceValue(func() []Key { return keysUnder("", reflect.TypeFor[File]()) })

func keysUnder(path string, t reflect.Type) []Key {
	var all []Key
	for _, k := range keysOf(t) {
		k.Path = under(path, k.Name)
		inside, field := k.Path, bare(t.Field(k.index).Type)
		if k.Kind == List {
			inside, field = k.Path+"[]", bare(field.Elem())
		}
		all = append(all, k)
		if k.Kind == Group || k.Of == Group {
			all = append(all, keysUnder(inside, field)...)
		}
	}
	return all
}

func bare(t reflect.Type) reflect.Type {
	if t.Kind() == reflect.Pointer {
		return t.Elem()
	}
	return t
}

// keysOf reads the tags of one struct.
func keysOf(t reflect.Type) []Key {
	var keys []Key
	for i := range t.NumField() {
		f := t.Field(i)
		name, ok := f.Tag.Lookup("key")
		if !ok {
			continue
		}
		k := Key{Name: name, index: i, Unit: f.Tag.Get("unit"), Least: f.Tag.Get("least"), Most: f.Tag.Get("most"),
			Default: f.Tag.Get("default"), Source: f.Tag.Get("source"), Example: f.Tag.Get("example"),
			Says: f.Tag.Get("says"), Needs: f.Tag.Get("needs") == "yes"}
		if words := f.Tag.Get("choices"); words != "" {
			k.Choices = strings.Split(words, "|")
		}
		k.Kind = k.kindFor(bare(f.Type))
		if k.Kind == List {
			k.Of = k.kindFor(bare(f.Type.Elem()))
		}
		if w, ok := reflect.New(bare(f.Type)).Interface().(written); ok {
			k.Form, k.pattern = w.form(), w.pattern()
		}
		if k.Kind == Word && k.Example == "" {
			k.Example = k.Choices[0]
		}
		keys = append(keys, k)
	}
	return keys
}

// kindFor tells the kind from the type of the field and the other tags.
func (k *Key) kindFor(t reflect.Type) Kind {
	if reflect.PointerTo(t).Implements(reflect.TypeFor[written]()) {
		return Written
	}
	switch t.Kind() {
	case reflect.Struct:
		return Group
	case reflect.Slice:
		return List
	case reflect.Bool:
		return YesNo
	case reflect.Int:
		return Count
	case reflect.Float64:
		if k.Unit == "" {
			return Number
		}
		return Quantity
	case reflect.String:
		if k.Choices != nil {
			return Word
		}
		return Text
	}
	panic(fmt.Sprintf("house: key %s has a field of type %s", k.Name, t))
}

// count gives the most entries of a list.
func (k *Key) count() int {
	n, err := strconv.Atoi(k.Most)
	if err != nil {
		panic(fmt.Sprintf("house: list %s has no largest count: %v", k.Name, err))
	}
	return n
}

func find(keys []Key, word *yaml.Node) *Key {
	i := slices.IndexFunc(keys, func(k Key) bool { return k.Name == word.Value })
	if i < 0 || word.Kind != yaml.ScalarNode {
		return nil
	}
	return &keys[i]
}

func namesOf(keys []Key) []string {
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = k.Name
	}
	return names
}

// homesOf gives the groups that know a key by exactly this name, if they are few.
func homesOf(name string) []string {
	var homes []string
	for _, k := range allKeys() {
		switch {
		case k.Path == name:
			homes = append(homes, "no other key")
		case k.Name == name:
			homes = append(homes, strings.TrimSuffix(k.Path, "."+name))
		}
	}
	if len(homes) > 3 {
		return nil
	}
	return homes
}
