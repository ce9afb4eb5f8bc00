package canvas

import "testing"

func TestSay(t *testing.T) {
	s, err := ReadSentences([]byte(`{"a": "{x} over {y}, {x}", "b": "plain"}`))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ got, want string }{
		{s.Say("a", "x", "{y}", "y", "2"), "{y} over 2, {y}"}, {s.Say("b"), "plain"}, {s.Say("c"), "[c]"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	if _, err := ReadSentences([]byte(`{"a": 1}`)); err == nil {
		t.Error("a number was taken for a sentence")
	}
}
