package table

import (
	"slices"
	"testing"
)

func TestRowsAreWhole(t *testing.T) {
	rows, err := Rows()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) == 0 {
		t.Fatal("the program carries no checks")
	}
	for _, r := range rows {
		if r.Package == "" || r.Source == "" || r.At == "" || r.Printed == "" || !(r.Allowed > 0) || !slices.Contains(Standings(), r.Standing) {
			t.Errorf("a row lacks something: %+v", r)
		}
	}
}

func TestAPartHasItsOwnRows(t *testing.T) {
	all, err := Rows()
	if err != nil {
		t.Fatal(err)
	}
	part := all[0].Package
	rows, err := Of(part)
	if err != nil || len(rows) == 0 || len(rows) > len(all) {
		t.Fatalf("%s has %d rows of %d, %v", part, len(rows), len(all), err)
	}
	if none, err := Of(part + "x"); err != nil || len(none) != 0 {
		t.Errorf("%sx has %d rows, %v, want none", part, len(none), err)
	}
}

func TestEveryStandingHasItsMeaning(t *testing.T) {
	for _, s := range Standings() {
		if Meaning(s) == "" {
			t.Errorf("%s has no meaning", s)
		}
	}
	if m := Meaning("guessed"); m != "" {
		t.Errorf("guessed means %q, want nothing", m)
	}
}
