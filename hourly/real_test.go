package hourly

import (
	"testing"

	"suffice/house"
)

// four reads one of the foretold houses with its own record.
func four(t testing.TB, name string) *Run {
	t.Helper()
	f, err := house.Open("../examples/four/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	h, err := house.Compose(f)
	if err != nil {
		t.Fatal(err)
	}
	w, _, _, err := h.Weather.Hours(h.Place)
	if err != nil {
		t.Fatal(err)
	}
	r, err := Prepare(h, w)
	if err != nil {
		t.Fatal(err)
	}
	return r
}
