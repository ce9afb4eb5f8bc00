package table

import (
	"slices"
	"strings"
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

// A key, or a key with its place, leads to its publication; what is no key leads nowhere, nor does half of one.
func TestPublicationsAreFound(t *testing.T) {
	for source, want := range map[string]string{
		"fao56": "Irrigation and Drainage Paper 56", "fao56: eq. 84": "Irrigation and Drainage Paper 56", "ad-h2: up to four users": "Approved Document H",
		"": "", "fao": "", "ao56": "", "no-such-key: page 3": "",
	} {
		if got := Publication(source); !strings.Contains(got, want) || (got == "") != (want == "") {
			t.Errorf("%q: %q, want %q in it", source, got, want)
		}
	}
}
