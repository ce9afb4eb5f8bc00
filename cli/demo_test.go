package cli

import "testing"

// The pages follow the verdict where a person sits, and never where a script waits for an end.
func TestWhenDemoServes(t *testing.T) {
	person, script := Streams{Terminal: true, Typed: true}, Streams{}
	for _, c := range []struct {
		verb   demoVerb
		s      Streams
		serves bool
	}{
		{demoVerb{}, person, true}, {demoVerb{}, script, false}, {demoVerb{Open: true}, script, true},
		{demoVerb{Once: true}, person, false}, {demoVerb{JSON: true}, person, false}, {demoVerb{}, Streams{Terminal: true}, false},
	} {
		if got := c.verb.serves(c.s); got != c.serves {
			t.Errorf("%+v with %+v serves %t, want %t", c.verb, c.s, got, c.serves)
		}
	}
}
