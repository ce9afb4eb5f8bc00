package words

import "testing"

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"saturday", "sunday", 3}, {"", "ab", 2}, {"é", "e", 1}, {"same", "same", 0}} {
		if got := Distance(c.a, c.b); got != c.want {
			t.Errorf("%q to %q: %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

func TestNearest(t *testing.T) {
	if got := Nearest("Tnaks", []string{"roofs", "tanks", "pump"}); got != "tanks" {
		t.Errorf("got %q, want tanks", got)
	}
	if got := Nearest("x", nil); got != "" {
		t.Errorf("got %q of no words", got)
	}
}
