package house

import (
	"strconv"
	"strings"
)

// A Value is one value that a text states, or that it could state in a group which it has.
type Value struct {
	Key    Key
	Path   string // lists counted from 0: water.tanks[0].holds
	Text   string // as it was written but for quotes; "" where the key is left out
	Stated bool
}

// Values lists the single values under a path such as water, in the order of Keys. Groups that the
// text leaves out, and entries of lists that are words alone, are not listed.
func Values(path string, text []byte, under string) ([]Value, error) {
	s, err := newSplicer(path, text)
	if err != nil {
		return nil, err
	}
	var list []Value
	for _, k := range allKeys() {
		if k.Kind != Group && k.Kind != List && strings.HasPrefix(k.Path, under+".") {
			list = s.values(list, k, k.Path)
		}
	}
	return list, nil
}

// values appends those of one key, for every entry of the lists on its way.
func (s *splicer) values(list []Value, k Key, path string) []Value {
	before, after, open := strings.Cut(path, "[]")
	if !open {
		at, err := s.find(path)
		switch {
		case err != nil: // in a group that is not there, or written otherwise
		case at.value == nil:
			list = append(list, Value{Key: k, Path: path})
		case s.single(at) == nil:
			list = append(list, Value{Key: k, Path: path, Text: follow(at.value).Value, Stated: true})
		}
		return list
	}
	for i := 0; ; i++ {
		entry := before + "[" + strconv.Itoa(i) + "]"
		if !s.entry(entry) {
			return list
		}
		list = s.values(list, k, entry+after)
	}
}

// entry reports whether there is such an entry of a list.
func (s *splicer) entry(path string) bool {
	at := spot{value: s.root}
	var err error
	for rest := path; rest != "" && err == nil; {
		var step string
		step, rest = firstStep(rest)
		if at.value == nil {
			return false
		}
		at, err = s.into(at, step, "")
	}
	return err == nil && at.value != nil
}
