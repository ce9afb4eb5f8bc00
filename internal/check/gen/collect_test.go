package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"suffice/internal/check/table"
)

// module lays files into a folder and reads them.
func module(t *testing.T, files map[string]string) reading {
	t.Helper()
	root := t.TempDir()
	var names []string
	for name, text := range files {
		path := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		names = append(names, name)
	}
	r, err := read(root, names)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

const top = "package water\n\nimport \"suffice/internal/check\"\n\n"

// Every way in which Go lets a Published be written is found, with its type or without.
func TestLiteralsAreFound(t *testing.T) {
	for name, text := range map[string]string{
		"plain":       top + `var p = check.Published{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}`,
		"by position": top + `var p = check.Published{"a", "p. 1", "4.29", "L", 0, "", ""}`,
		"slice":       top + `var p = []check.Published{{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}}`,
		"array":       top + `var p = [...]check.Published{2: {Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}}`,
		"map":         top + `var p = map[string]check.Published{"x": {Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}}`,
		"map key":     top + `var p = map[check.Published]int{{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}: 1}`,
		"pointers":    top + `var p = []*check.Published{{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}}`,
		"deep":        top + `var p = map[string][][]check.Published{"x": {{{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}}}}`,
		"field":       top + `var p = []struct{ in float64; want check.Published }{{1, check.Published{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}}}`,
		"list field":  top + `var p = []struct{ want []check.Published }{{want: []check.Published{{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}}}}`,
		"named":       top + "type p = check.Published\ntype ps []p\n" + `var q = ps{{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}}`,
		"in a call":   top + `func f() { check.That(nil, 1, check.Published{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}) }`,
		"constants": top + `const page = "p."; func f() { const one = 1; const at = page + " 1"; _ = check.Published{Source: "a", At: at, Value: "4.29", Unit: "L"} }
func g() { const at = "p. 9"; _ = at }`,
		"among unknown things": top + `var p = map[string]any{"x": none.T{{1, check.Published{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}}}}`,
		"joined text":          top + `var p = check.Published{Source: "a", At: "p." + " 1", Value: "4.29", Unit: "L"}`,
		"renamed": strings.Replace(top, `"suffice`, `c "suffice`, 1) +
			`var p = c.Published{Source: "a", At: "p. 1", Value: "4.29", Unit: "L"}`,
	} {
		r := module(t, map[string]string{"water/published_test.go": text})
		want := table.Row{Package: "water", Source: "a", At: "p. 1", Printed: "4.29", Unit: "L", Allowed: 0.005, Standing: "published"}
		if len(r.faults) != 0 || len(r.rows) != 1 || r.rows[0] != want {
			t.Errorf("%s: got %+v, faults %v, want %+v", name, r.rows, r.faults, want)
		}
	}
}

func TestNamesFromAnotherFileAreKnown(t *testing.T) {
	r := module(t, map[string]string{
		"water/a_test.go": top + "type numbers []check.Published",
		"water/c.go":      "package water\n\nconst page = \"p. 1\"\n",
		"water/b_test.go": "package water\n\n" + `var p = numbers{{Source: "a", At: page, Value: "4"}}`,
	})
	if len(r.rows) != 1 || len(r.faults) != 0 {
		t.Errorf("got rows %v, faults %v, want one row", r.rows, r.faults)
	}
}

func TestWhatCannotBeReadIsRefused(t *testing.T) {
	for text, says := range map[string]string{
		`var p = check.Published{Source: "a", At: c.at, Value: "4"}`:                              "water/published_test.go:5: At of a published number is c.at",
		`var p = check.Published{Source: key, At: "p. 1", Value: "4"}`:                            "Source of a published number is key",
		`var p = check.Published{Source: "a", At: "p. 1", Value: f("4")}`:                         "f(\"4\"), which is no constant",
		`var p = check.Published{Source: "a", At: "p. 1", Value: 4}`:                              "is 4, which is no",
		`var p = check.Published{Source: "a", At: "p. 1", Value: "four"}`:                         "not a number",
		`var p = check.Published{Source: "a", At: "p. 1", Value: "4", Within: 1}`:                 "needs its reason",
		`var p = check.Published{Source: "a", At: "p. 1", Value: "4", Standing: "true"}`:          `standing "true" is not known`,
		`func f(p check.Published) { p.Within = 3 }`:                                              "write it into the literal",
		`func f() { for _, c := range cases { _ = []check.Published{{Source: "a", At: c.at}} } }`: "At of a published number",
	} {
		r := module(t, map[string]string{"water/published_test.go": top + text})
		if len(r.rows) != 0 || !strings.Contains(strings.Join(r.faults, "\n"), says) {
			t.Errorf("%s:\ngot rows %v, faults %q, want a fault saying %q", text, r.rows, r.faults, says)
		}
	}
}

// An empty Published is a zero to compare with; a bound may be a ratio of literals.
func TestWhatIsTaken(t *testing.T) {
	r := module(t, map[string]string{"water/published_test.go": top +
		`var zero, p = check.Published{}, check.Published{Source: "a", At: "p. 1", Value: "4", Within: 1.0 / 4, Why: "quarter marks", Standing: "measured"}`})
	if len(r.faults) != 0 || len(r.rows) != 1 || r.rows[0].Allowed != 0.25 || r.rows[0].Standing != "measured" {
		t.Errorf("got %+v, faults %v, want one measured row within 0.25", r.rows, r.faults)
	}
}

func TestLawsAreListed(t *testing.T) {
	r := module(t, map[string]string{"water/laws_test.go": "package water\n\n" +
		"// TestTankLosesNothing holds the tank's balance. Over a year.\nfunc TestTankLosesNothing() {}\n\n" +
		"func FuzzRoof_Dry() {}\n\nfunc helps() {}\n"})
	want := []Law{{"water", "tank loses nothing", "holds the tank's balance"}, {"water", "roof dry", ""}}
	if len(r.laws) != 2 || r.laws[0] != want[0] || r.laws[1] != want[1] {
		t.Errorf("got %+v, want %+v", r.laws, want)
	}
}
