package web

import (
	"html"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"suffice/examples"
	"suffice/house"
	"suffice/sheets"
)

func onDisk(t *testing.T) (s *Site, path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "house.yaml")
	if err := os.WriteFile(path, examples.Demo, 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := New(Options{Path: path, Name: path, Text: examples.Demo, Prove: proveShort})
	if err != nil {
		t.Fatal(err)
	}
	return s, path
}

func values(s *Site, pairs ...string) url.Values {
	form := url.Values{"hash": {s.house.Load().Hash.String()}, "part": {strings.SplitN(pairs[0], ".", 2)[0]}}
	for i := 0; i+1 < len(pairs); i += 2 {
		form.Set(pairs[i], pairs[i+1])
	}
	return form
}

// A smaller tank makes the demo fall short; the file changes at that value alone, the page tells both
// verdicts, and undo brings every byte back.
func TestAChangeIsWrittenLivedAndUndone(t *testing.T) {
	s, path := onDisk(t)
	w := post(t, s, "/change", values(s, "water.tanks[0].holds", "12 kL", "water.tanks[0].start", "5 kL"))
	if w.Code != http.StatusSeeOther {
		t.Fatalf("the form answers %d:\n%s", w.Code, w.Body)
	}
	want := strings.Replace(strings.Replace(string(examples.Demo), "holds: 30 kL", "holds: 12 kL", 1), "start: 15 kL", "start: 5 kL", 1)
	if text, err := os.ReadFile(path); err != nil || string(text) != want {
		t.Errorf("the file is not the demo with two values changed (%v)", err)
	}
	page := get(t, s, w.Header().Get("Location")).Body.String()
	made := page[strings.Index(page, `id="made"`):]
	suffices, short := strings.Index(made, ">Suffices<"), strings.Index(made, ">Falls short<")
	if suffices < 0 || short < suffices {
		t.Errorf("the page does not tell that it sufficed before (%d) and falls short after (%d)", suffices, short)
	}
	if w := post(t, s, "/change/undo", values(s, "water.x", "")); w.Code != http.StatusSeeOther {
		t.Fatalf("undo answers %d:\n%s", w.Code, w.Body)
	}
	if text, err := os.ReadFile(path); err != nil || string(text) != string(examples.Demo) {
		t.Errorf("undo did not bring the file back (%v)", err)
	}
	if !s.house.Load().Proof.Stated.Water.Suffices() {
		t.Error("the house is not lived anew after undo")
	}
}

// Without a file the same holds in memory, as often as there were changes.
func TestChangesInMemoryAreUndoneOneByOne(t *testing.T) {
	s := demo(t)
	for _, holds := range []string{"31 kL", "32 kL"} {
		if w := post(t, s, "/change", values(s, "water.tanks[0].holds", holds)); w.Code != http.StatusSeeOther {
			t.Fatalf("%s answers %d", holds, w.Code)
		}
	}
	for _, want := range []string{"31 kL", "30 kL"} {
		post(t, s, "/change/undo", values(s, "water.x", ""))
		if got, _, _ := house.ValueAt("demo.yaml", s.house.Load().Text, "water.tanks[0].holds"); got != want {
			t.Errorf("after undo the tank holds %s, want %s", got, want)
		}
	}
	if w := post(t, s, "/change/undo", values(s, "water.x", "")); w.Code != http.StatusBadRequest {
		t.Errorf("undo of nothing answers %d, want 400", w.Code)
	}
}

// What the form refuses, it refuses in the words of the house file's reader, shows what was
// written, and changes nothing.
func TestAFormRefusesInTheSameWords(t *testing.T) {
	s, path := onDisk(t)
	for at, bad := range map[string]string{
		"water.tanks[0].holds": "30", "water.roofs[0].area": "-4 m2", "power.battery.voltage": "lots", "site.clock": "CET",
		"water.roofs[0].surface": "grass", "power.loads[0].hours": "25-26", "water.tanks[0].dead": "29 kL",
	} {
		next, _, err := house.Splice(path, examples.Demo, house.Change{Path: at, Value: bad})
		if err == nil {
			_, err = house.Read(path, next)
		}
		if err == nil {
			t.Fatalf("%s: %s is taken", at, bad)
		}
		w := post(t, s, "/change", values(s, at, bad))
		page := html.UnescapeString(w.Body.String())
		if w.Code != http.StatusBadRequest || !strings.Contains(page, strings.Split(err.Error(), "\n")[0]) {
			t.Errorf("%s: %s answers %d without %q", at, bad, w.Code, err)
		}
		if !strings.Contains(page, `value="`+bad+`"`) && at != "water.roofs[0].surface" {
			t.Errorf("%s: what was written is lost", at)
		}
	}
	if text, err := os.ReadFile(path); err != nil || string(text) != string(examples.Demo) {
		t.Errorf("the file was changed (%v)", err)
	}
}

// A form made from an older text, and a file changed by another program, are refused.
func TestAStaleFormIsRefused(t *testing.T) {
	s, path := onDisk(t)
	old := values(s, "water.tanks[0].holds", "33 kL")
	if w := post(t, s, "/change", values(s, "water.tanks[0].holds", "31 kL")); w.Code != http.StatusSeeOther {
		t.Fatalf("a change answers %d", w.Code)
	}
	refused := func(form url.Values, why string) {
		t.Helper()
		if w := post(t, s, "/change", form); w.Code != http.StatusBadRequest || !strings.Contains(html.UnescapeString(w.Body.String()), house.ErrChangedOnDisk.Error()) {
			t.Errorf("%s answers %d", why, w.Code)
		}
	}
	refused(old, "an old form")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, append(text, "# a note\n"...), 0o600); err != nil {
		t.Fatal(err)
	}
	refused(values(s, "water.tanks[0].holds", "33 kL"), "a file changed by another program")
	post(t, s, "/change/reread", values(s, "water.x", ""))
	if w := post(t, s, "/change", values(s, "water.tanks[0].holds", "33 kL")); w.Code != http.StatusSeeOther {
		t.Errorf("after reading again a change answers %d:\n%s", w.Code, w.Body)
	}
}

// A sheet's form refuses in the words of the command line.
func TestASheetRefusesInTheSameWords(t *testing.T) {
	s := reading(t)
	for _, one := range []struct{ sheet, input, value string }{
		{"roof-yield", "roof", "120"}, {"roof-yield", "rain", "-1 mm"}, {"battery-days", "days", "x"}, {"roof-yield", "length", "3 m"}, {"tank-steps", "rule", "mine"},
	} {
		_, err := sheets.Named(one.sheet).Read(map[string]string{one.input: one.value})
		if err == nil {
			t.Fatalf("%v is taken", one)
		}
		w := get(t, s, "/sheets/"+one.sheet+"?"+url.Values{one.input: {one.value}}.Encode())
		if page := html.UnescapeString(w.Body.String()); w.Code != http.StatusBadRequest || !strings.Contains(page, err.Error()) {
			t.Errorf("%v answers %d without %q", one, w.Code, err)
		}
		for _, caution := range sheets.Named(one.sheet).Cautions {
			if !strings.Contains(html.UnescapeString(w.Body.String()), caution) {
				t.Errorf("%v: a caution is not told while the input is at fault: %s", one, caution)
			}
		}
	}
}
