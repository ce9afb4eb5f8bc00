package house

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"suffice/examples"
)

// saved writes a house file into a folder of its own.
func saved(t *testing.T, text string) (path string, hash Hash) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "house.yaml")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path, HashOf([]byte(text))
}

func onDisk(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// The style of each place is kept: comments, quotes, braces, indents, line ends.
func TestSpliceKeepsTheStyle(t *testing.T) {
	for _, c := range []struct{ old, path, value, want string }{
		{"name: Süd   # ☀\nindoors: 20 degC", "indoors", "18 degC", "name: Süd   # ☀\nindoors: 18 degC"},
		{"name: 'it''s'\n", "name", "say 'no'", "name: 'say ''no'''\n"},
		{"name: \"a \\\" b\" # c\n", "name", `back\ "x"`, "name: \"back\\\\ \\\"x\\\"\" # c\n"},
		{"name: A # c\n", "name", "B: b", "name: \"B: b\" # c\n"},
		{"name: A # c\n", "name", "B # b", "name: \"B # b\" # c\n"},
		{"gas: {fuel: propane}\n", "gas.fuel", "a, bottle: 9 kg", "gas: {fuel: \"a, bottle: 9 kg\"}\n"},
		{"gas: {fuel: propane, bottle: 9 kg}\n", "gas.bottle", "11 kg", "gas: {fuel: propane, bottle: 11 kg}\n"},
		{"gas: {fuel: propane, bottle: 9 kg} # two\n", "gas.lead", "3 days", "gas: {fuel: propane, bottle: 9 kg, lead: 3 days} # two\n"},
		{"gas: {}\n", "gas.lead", "3 days", "gas: {lead: 3 days}\n"},
		{"gas:\r\n    fuel: propane # in steel\r\n    bottle: 9 kg\r\nname: A\r\n", "gas.lead", "3 days", "gas:\r\n    fuel: propane # in steel\r\n    bottle: 9 kg\r\n    lead: 3 days\r\nname: A\r\n"},
		{"water:\n  tanks:\n    - name: m # the main one\n      holds: 9 kL", "water.tanks[0].leak", "2 L/d", "water:\n  tanks:\n    - name: m # the main one\n      holds: 9 kL\n      leak: 2 L/d"},
		{"wants:\n  # strict\n  water: {short_days: 0.1 /year}\n", "wants.water.short_days", "1 /year", "wants:\n  # strict\n  water: {short_days: 1 /year}\n"},
		{"power:\n  # first\n  battery: {kind: lithium}\n", "power.could_above", "80 %", "power:\n  # first\n  could_above: 80 %\n  battery: {kind: lithium}\n"},
		{"rules: {when_dull: [swap, wait]}\n", "rules.when_dull[1]", "swap", "rules: {when_dull: [swap, swap]}\n"},
	} {
		got, _, err := Splice("h", []byte(c.old), Change{c.path, c.value})
		if err != nil || string(got) != c.want {
			t.Errorf("%s = %s in %q:\n got %q (%v)\nwant %q", c.path, c.value, c.old, got, err, c.want)
		}
	}
}

// What cannot be changed in one place is refused, with the line to write by hand.
func TestSpliceRefusals(t *testing.T) {
	for _, c := range []struct{ text, path, value, says string }{
		{"name: &n A\nrooms: [{name: *n}]\n", "rooms[0].name", "B", "h:2:16: rooms[0].name: is taken from another place of the file, by *n: write there by hand  name: B"},
		{"name: &n A\nrooms: [{name: *n}]\n", "name", "B", "h:1:7: name: is taken over by other places of the file, by &n: write there by hand  name: B"},
		{"gas: &g {fuel: propane}\nseptic: *g\n", "gas.fuel", "butane", "h:1:6: gas.fuel: stands in a part that the file uses in more than one place, by & and *: write there by hand  fuel: butane"},
		{"gas: &g {fuel: propane}\nseptic: {<<: *g}\n", "gas.fuel", "mixed", "h:1:6: gas.fuel: stands in a part that the file uses in more than one place, by & and *: write there by hand  fuel: mixed"},
		{"gas: {fuel: propane}\nseptic: {<<: &g {holds: 3 kL}}\n", "septic.holds", "4 kL", "h:2:9: septic.holds: may be taken in from another group, by <<: write there by hand  holds: 4 kL"},
		{"name: |\n  A\n  B\n", "name", "C", "h:1:7: name: is a text over several lines, by | or >: write there by hand  name: C"},
		{"name: A\n  B\n", "name", "C", "h:1:7: name: cannot be written here without touching more than this one value: write there by hand  name: C"},
		{"name: !!str A\n", "name", "B", "h:1:7: name: has the tag !!str: write there by hand  name: B"},
		{"name:\n", "name", "B", "h:1:6: name: has no value yet: write there by hand  name: B"},
		{"name: A\n", "gas.lead", "3 days", "h: there is no gas in this file: describe it first, then set gas.lead"},
		{"water: {tanks: [{name: m}]}\n", "water.tanks[3].holds", "9 kL", "h: there is no water.tanks[3] in this file: water.tanks has 1 entries, counted from [0]"},
		{"name: A\n", "water.tank[0].hold", "9 kL", "a house file has no water.tank[0].hold: the nearest is water.tanks[].holds, lists counted from [0]"},
		{"name: A\n", "water.tanks", "9 kL", "water.tanks is no single value: name one inside it, such as water.tanks[0].name"},
		{"name: A\n", "gas", "x", "gas is no single value: name one inside it, such as gas.fuel"},
		{"name: [A]\n", "name", "B", "h:1:7: name is a list, but one value is wanted here: mend it by hand"},
		{"name: A\nname: B\n", "name", "C", "h: name stands twice: keep one of them"},
		{"gas: [1]\n", "gas.fuel", "butane", "h: gas is a list, but a group of keys is wanted there: mend it by hand"},
		{"name: A\n", "name", "two\nlines", "name: \"two\\nlines\" runs over more than one line: keep it on one"},
		{"name: A\n", "name", " ", "name: \"\" is an empty text: write something, or leave the key out"},
	} {
		_, _, err := Splice("h", []byte(c.text), Change{c.path, c.value})
		if err == nil || !strings.HasPrefix(err.Error(), c.says) && !strings.Contains(err.Error(), strings.TrimPrefix(c.says, "h: ")) {
			t.Errorf("%s = %q in %q:\n got %v\nwant %s", c.path, c.value, c.text, err, c.says)
		}
		if err != nil && strings.Contains(c.says, "by hand  ") && !errors.As(err, new(PasteError)) {
			t.Errorf("%s = %q: no line to write is given apart: %v", c.path, c.value, err)
		}
	}
}

// Two changes that are sound only together are made together; one alone is refused and
// nothing is written.
func TestEditWritesOnlySoundHouses(t *testing.T) {
	path, hash := saved(t, whole)
	smaller := Change{"water.tanks[0].holds", "1 kL"}
	_, err := Edit(path, hash, []Change{smaller, {"water.tanks[0].dead", "1 kL"}})
	if err == nil || !strings.Contains(err.Error(), "nothing would be left to draw") || !strings.Contains(err.Error(), "nothing was changed") {
		t.Errorf("a tank all of dead water: %v", err)
	}
	if _, err := Edit(path, hash, []Change{{"water.tanks[0].holds", "9"}}); err == nil || !strings.Contains(err.Error(), "9 has no unit") {
		t.Errorf("no unit: %v", err)
	}
	if onDisk(t, path) != whole {
		t.Errorf("a refused change was written:\n%s", onDisk(t, path))
	}
	r, err := Edit(path, hash, []Change{{"water.tanks[0].dead", "0 L"}, smaller, {"water.tanks[0].start", "500 L"}})
	if err != nil {
		t.Fatal(err)
	}
	if onDisk(t, path) != string(r.Text) || r.File.Water.Tanks[0].Holds != 1000 || HashOf(r.Text) != r.Hash || onDisk(t, r.Kept) != whole {
		t.Errorf("written %t, holds %g L, kept %t", onDisk(t, path) == string(r.Text), float64(r.File.Water.Tanks[0].Holds), onDisk(t, r.Kept) == whole)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("the permissions became %v (%v), want those it had", info.Mode(), err)
	}
}

// A file that something else changed is left alone, by changes and by undo.
func TestForeignChangesAreSeen(t *testing.T) {
	path, hash := saved(t, whole)
	r, err := Edit(path, hash, []Change{{"name", "First"}})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Edit(path, hash, []Change{{"name", "Second"}}); !errors.Is(err, ErrChangedOnDisk) {
		t.Errorf("a change for the text before: %v", err)
	}
	if _, err := Undo(path, hash); !errors.Is(err, ErrChangedOnDisk) {
		t.Errorf("an undo of the text before: %v", err)
	}
	mine := strings.Replace(string(r.Text), "First", "By Hand", 1)
	if err := os.WriteFile(path, []byte(mine), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Undo(path, HashOf([]byte(mine))); err == nil || !strings.Contains(err.Error(), r.Kept) {
		t.Errorf("undo over what was written by hand: %v; want %s named", err, r.Kept)
	}
	if onDisk(t, path) != mine {
		t.Errorf("what was written by hand is gone:\n%s", onDisk(t, path))
	}
}

// Undo goes back step by step, to the very bytes, and says when there is no further.
func TestUndoRestoresBytes(t *testing.T) {
	path, hash := saved(t, string(examples.Demo))
	texts := []string{string(examples.Demo)}
	for i := range 4 {
		r, err := Edit(path, hash, []Change{{"water.tanks[0].holds", fmt.Sprintf("%d kL", 40+i)}, {"water.tanks[1].fire", "1 kL"}})
		if err != nil {
			t.Fatal(err)
		}
		texts, hash = append(texts, string(r.Text)), r.Hash
	}
	for i := 3; i >= 0; i-- {
		r, err := Undo(path, hash)
		if err != nil {
			t.Fatal(err)
		}
		if onDisk(t, path) != texts[i] || onDisk(t, r.Kept) != texts[i+1] {
			t.Errorf("undo %d: back %t, the undone text kept %t", i, onDisk(t, path) == texts[i], onDisk(t, r.Kept) == texts[i+1])
		}
		hash = r.Hash
	}
	if _, err := Undo(path, hash); err == nil || !strings.Contains(err.Error(), "nothing to undo") {
		t.Errorf("a fifth undo of four changes: %v", err)
	}
}

// The same value again writes nothing; the oldest texts go beyond MostKept.
func TestVersionsAreCounted(t *testing.T) {
	path, hash := saved(t, whole)
	r, err := Edit(path, hash, []Change{{"name", "H"}})
	if err != nil {
		t.Fatal(err)
	}
	again, err := Edit(path, r.Hash, []Change{{"name", "H"}})
	if err != nil || again.Kept != "" || again.Hash != r.Hash {
		t.Errorf("the same name again: %v, kept %q", err, again.Kept)
	}
	for i := range MostKept + 5 {
		if r, err = Edit(path, r.Hash, []Change{{"name", fmt.Sprintf("H%d", i)}}); err != nil {
			t.Fatal(err)
		}
	}
	all, err := versions(osDisk{}, path)
	if err != nil || len(all) != MostKept || all[MostKept-1].path != r.Kept {
		t.Errorf("%d versions are kept (%v), want %d, the last %s", len(all), err, MostKept, r.Kept)
	}
}

// A link stays a link, and a protected file is left alone.
func TestLinksAndProtectionStay(t *testing.T) {
	path, hash := saved(t, whole)
	link := filepath.Join(t.TempDir(), "link.yaml")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	r, err := Edit(link, hash, []Change{{"name", "Linked"}})
	if err != nil || onDisk(t, path) != string(r.Text) {
		t.Errorf("through a link: %v", err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is now %v (%v)", info.Mode(), err)
	}
	if err := os.Chmod(path, 0o400); err != nil {
		t.Fatal(err)
	}
	if _, err := Edit(path, r.Hash, []Change{{"name", "Forced"}}); err == nil || !strings.Contains(err.Error(), "protected against writing") {
		t.Errorf("a protected file: %v", err)
	}
}

func TestHashIsReadBack(t *testing.T) {
	want := HashOf([]byte(whole))
	if got, err := ParseHash(want.String()); got != want || err != nil {
		t.Errorf("%s read back is %s (%v)", want, got, err)
	}
	for _, text := range []string{"", "ab", want.String() + "00", strings.Repeat("x", 64)} {
		if _, err := ParseHash(text); err == nil {
			t.Errorf("%q is read as a hash", text)
		}
	}
}
