package house

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// A Hash tells one text of a house file from every other (SHA-256).
type Hash [sha256.Size]byte

// HashOf gives the hash of a text.
func HashOf(text []byte) Hash { return sha256.Sum256(text) }

// String gives the hash in hexadecimal digits, for a form to carry along.
func (h Hash) String() string { return hex.EncodeToString(h[:]) }

// ParseHash reads what String wrote.
func ParseHash(text string) (Hash, error) {
	var h Hash
	digits, err := hex.DecodeString(text)
	if err != nil || len(digits) != len(h) {
		return h, fmt.Errorf("%q is not the hash of a file: it has %d hexadecimal digits", short(text), 2*len(h))
	}
	copy(h[:], digits)
	return h, nil
}

// A Change gives one value of a house file another text.
type Change struct {
	Path  string // such as water.tanks[0].holds, lists counted from 0
	Value string // as a person would write it, without quotes: 50 kL
}

// A Changed is what one change did to the text.
type Changed struct {
	Path  string `json:"path"`
	Was   string `json:"was"` // "" for a key that was not in the file
	Is    string `json:"is"`
	Added bool   `json:"added"` // the key was not in the file
}

// A Result is a house file after a change.
type Result struct {
	File    *File
	Text    []byte
	Hash    Hash // of Text, for the next change
	Changes []Changed
	Kept    string // where the text before lies, "" where nothing changed
}

// ErrChangedOnDisk says that the file is no longer the one that was read.
var ErrChangedOnDisk = errors.New("the file was changed by something else since it was read: look at it again, then change it")

// Edit changes values of a house file on disk: only the bytes of those values, or one new
// line or entry each for keys that the file left out. The hash is of the text that the
// changes were thought of for. The house that results must be without a fault and compose;
// otherwise nothing is written. The text before is kept, and Undo brings it back.
func Edit(path string, hash Hash, changes []Change) (Result, error) {
	return edit(osDisk{}, path, hash, changes)
}

func edit(d disk, path string, hash Hash, changes []Change) (Result, error) {
	text, err := loadSame(d, path, hash)
	if err != nil {
		return Result{}, err
	}
	next, done, err := Splice(path, text, changes...)
	if err != nil {
		return Result{}, err
	}
	file, err := sound(path, next)
	if err != nil {
		return Result{}, fmt.Errorf("%w\nnothing was changed", err)
	}
	kept := ""
	if string(next) != string(text) {
		if kept, err = replace(d, path, text, next); err != nil {
			return Result{}, err
		}
	}
	return Result{File: file, Text: next, Hash: HashOf(next), Changes: done, Kept: kept}, nil
}

// sound reads and composes a text.
func sound(path string, text []byte) (*File, error) {
	file, err := Read(path, text)
	if err != nil {
		return nil, err
	}
	_, err = Compose(file)
	return file, err
}

// loadSame reads a house file and refuses one that is not the text of the hash.
func loadSame(d disk, path string, hash Hash) ([]byte, error) {
	text, err := d.read(path)
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s: cannot be read: %w", path, err)
	case len(text) > maxBytes:
		return nil, fmt.Errorf("%s: %s", path, unreadable(text))
	case HashOf(text) != hash:
		return nil, fmt.Errorf("%s: %w", path, ErrChangedOnDisk)
	}
	return text, nil
}

// A PasteError says that a value cannot be written without touching more than it, and what
// a person may write by hand instead.
type PasteError struct {
	Fault
	Snippet string // a line of the file
}

// Error gives the fault with the line to write, on one line.
func (p PasteError) Error() string {
	return fmt.Sprintf("%s: write there by hand  %s", p.Fault.Error(), p.Snippet)
}

// Splice carries out changes on a text, one after the other, and says what each did. It
// reads the text again after each and makes sure that exactly that value changed. Whether
// the house is still without a fault is for Read and Compose to say.
func Splice(path string, text []byte, changes ...Change) ([]byte, []Changed, error) {
	var done []Changed
	for _, c := range changes {
		s, err := newSplicer(path, text)
		if err != nil {
			return nil, nil, err
		}
		c.Value = strings.TrimSpace(c.Value)
		next, one, err := s.change(c)
		if err != nil {
			return nil, nil, err
		}
		text, done = next, append(done, one)
	}
	return text, done, nil
}

// ValueAt gives the value that a text states at a path, as it was written but for quotes.
// There is false where the text leaves the key out.
func ValueAt(path string, text []byte, at string) (value string, there bool, err error) {
	s, err := newSplicer(path, text)
	if err != nil {
		return "", false, err
	}
	spot, err := s.find(at)
	if err != nil || spot.value == nil {
		return "", false, err
	}
	return spot.value.Value, true, s.single(spot)
}

// Given lists the paths of the single values that a file states, sorted.
func Given(f *File) []string {
	var paths []string
	for path := range f.marks {
		if _, err := KeyAt(path); err == nil {
			paths = append(paths, path)
		}
	}
	slices.Sort(paths)
	return paths
}
