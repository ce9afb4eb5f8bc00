package house

import (
	"strings"
	"testing"

	"suffice/site"
)

func TestLightOfAnotherSunIsRefused(t *testing.T) {
	here := site.Place{Latitude: 35, Longitude: 25}
	for _, c := range []struct {
		at      site.Place
		refused bool
	}{
		{site.Place{Latitude: 35.03, Longitude: 24.83}, false},
		{site.Place{Latitude: 44.9, Longitude: 39.9}, false},
		{site.Place{Latitude: 47.6, Longitude: 25}, true},
		{site.Place{Latitude: 35, Longitude: -122}, true},
	} {
		err := otherSun("r.csv", c.at, here)
		if refused := err != nil; refused != c.refused {
			t.Errorf("a record of %v for a house at %v: %v, refused should be %t", c.at, here, err, c.refused)
		}
		if err != nil && !strings.Contains(err.Error(), "name a record of the place") {
			t.Errorf("no remedy in: %v", err)
		}
	}
	if err := otherSun("r.csv", site.Place{Latitude: 35, Longitude: -179}, site.Place{Latitude: 35, Longitude: 179}); err != nil {
		t.Errorf("two degrees across the date line: %v", err)
	}
}
