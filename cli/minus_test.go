package cli

import (
	"slices"
	"strings"
	"testing"
)

func TestNegativesAreNoFlags(t *testing.T) {
	for _, c := range [][2]string{
		{"new --longitude -122.2 --usual", "new --longitude=-122.2 --usual"},
		{"new --longitude=-122.2", "new --longitude=-122.2"},
		{"set h p -4", "set h p -- -4"},
		{"set h p -.5 --json", "set h p --json -- -.5"},
		{"set h p -- -4", "set h p -- -4"},
		{"weather import sky -o out", "weather import sky -o out"},
		{"prove -h", "prove -h"},
		{"", ""},
	} {
		if got := negatives(strings.Fields(c[0])); !slices.Equal(got, strings.Fields(c[1])) {
			t.Errorf("%s: got %q, want %s", c[0], got, c[1])
		}
	}
}
