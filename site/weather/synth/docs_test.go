package synth_test

import (
	"os"
	"testing"
)

func read(t testing.TB, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func write(t testing.TB, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// golden compares a page with what the program gives, or writes it anew.
func golden(t testing.TB, path, text string) {
	t.Helper()
	if *update {
		write(t, path, text)
		return
	}
	if have := read(t, path); have != text {
		t.Errorf("%s is not what the program gives now (go test ./site/weather/synth -update writes it):\n%s", path, text)
	}
}
