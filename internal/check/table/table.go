// Package table lists what the numbers of this program were checked against.
//
// The list is made from the test files by internal/check/gen; CHECKS.md shows the
// same rows. It lies inside the binary, so that a resident may ask what a figure
// rests on without having the tests.
package table

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"strings"
)

//go:generate go run suffice/internal/check/gen

// A Row is one number of somebody else and how far ours may lie from it.
type Row struct {
	Package  string  `json:"package"` // folder of the part, "site/sun"
	Source   string  `json:"source"`  // key in SOURCES.md
	At       string  `json:"at"`      // page, table, example
	Printed  string  `json:"printed"` // the number as the source prints it
	Unit     string  `json:"unit,omitempty"`
	Allowed  float64 `json:"allowed"` // either way, in Unit
	Standing string  `json:"standing"`
	Why      string  `json:"why,omitempty"` // where Allowed comes from, if not from the printed digits
}

// standings gives each word for how a number is known, and what it means.
var standings = [...]struct{ word, meaning string }{
	{"published", "printed in the source, which lay before us"},
	{"measured", "read off instruments by somebody else"},
	{"twin", "our second, independent computation of the same thing"},
	{"own", "our arithmetic on a published equation"},
	{"remembered", "from memory of the source; a recomputation gives it again"},
}

// Standings gives the words that Row.Standing may hold, most trusted first.
func Standings() []string {
	words := make([]string, len(standings))
	for i, s := range standings {
		words[i] = s.word
	}
	return words
}

// Meaning says what a standing stands for, "" for a word that is none.
func Meaning(standing string) string {
	for _, s := range standings {
		if s.word == standing {
			return s.meaning
		}
	}
	return ""
}

//go:embed sources.txt
var sources string

// Publication gives what a source is, from its key or from "key: place", and "" for a key that SOURCES.md does not explain.
func Publication(source string) string {
	key, _, _ := strings.Cut(source, ":")
	_, rest, found := strings.Cut("\n"+sources, "\n"+key+"\t")
	if key == "" || !found {
		return ""
	}
	said, _, _ := strings.Cut(rest, "\n")
	return said
}

//go:embed checks.json
var embedded []byte

// Rows gives every row, ordered by package.
func Rows() ([]Row, error) {
	var rows []Row
	if err := json.Unmarshal(embedded, &rows); err != nil {
		return nil, fmt.Errorf("the table of checks in this program cannot be read: %w", err)
	}
	return rows, nil
}

// Of gives the rows of one part and of the parts inside it ("site" has "site/sun"),
// and all rows for "".
func Of(part string) ([]Row, error) {
	all, err := Rows()
	if err != nil || part == "" {
		return all, err
	}
	var rows []Row
	for _, r := range all {
		if r.Package == part || strings.HasPrefix(r.Package, part+"/") {
			rows = append(rows, r)
		}
	}
	return rows, nil
}
