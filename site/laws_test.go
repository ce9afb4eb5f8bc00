package site

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
)

// What cannot be is refused, all of it at once; what can be is not.
func TestFaults(t *testing.T) {
	if err := (Place{Latitude: -33.9, Longitude: 18.4, Altitude: 50, Clock: 2}).Faults(); err != nil {
		t.Errorf("a good place was refused: %v", err)
	}
	err := Place{Latitude: 91, Longitude: 200, Altitude: 9000, Clock: 15}.Faults()
	if err == nil {
		t.Fatal("an impossible place was taken")
	}
	for _, word := range []string{"latitude 91 deg", "longitude 200 deg", "altitude 9000 m", "clock 15 h"} {
		if !strings.Contains(err.Error(), word) {
			t.Errorf("%q is missing from %q", word, err)
		}
	}
	if (Place{Latitude: quantity.Degrees(math.NaN())}).Faults() == nil {
		t.Error("a latitude that is no number was taken")
	}
}

// A sign left out puts the sun's noon into the night, and is asked about.
func TestDoubts(t *testing.T) {
	if d := (Place{Latitude: 37.7, Longitude: -105.92, Clock: -7}).Doubts(); d != nil {
		t.Errorf("a good place was doubted: %v", d)
	}
	if d := (Place{Latitude: 37.7, Longitude: 105.92, Clock: -7}).Doubts(); len(d) != 1 || !strings.Contains(d[0], "west is negative") {
		t.Errorf("a longitude without its sign: %v", d)
	}
	if d := (Place{}).Doubts(); len(d) != 1 {
		t.Errorf("no place at all: %v", d)
	}
}

// A horizon passes through its points, runs straight between them and closes the circle.
func TestHorizonPassesItsPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		azimuths := rapid.SliceOfNDistinct(rapid.IntRange(0, 359), 1, MostHorizon, rapid.ID[int]).Draw(t, "azimuths")
		var points []HorizonPoint
		lowest, highest := 90.0, 0.0
		for _, a := range azimuths {
			height := rapid.Float64Range(0, 90).Draw(t, "height")
			lowest, highest = min(lowest, height), max(highest, height)
			points = append(points, HorizonPoint{quantity.Degrees(a), quantity.Degrees(height)})
		}
		h, err := NewHorizon(points...)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range points {
			for _, turn := range []quantity.Degrees{-720, 0, 360} {
				if got := h.Height(p.Azimuth + turn); math.Abs(float64(got-p.Height)) > 1e-9 {
					t.Fatalf("at %g: %g, want %g", float64(p.Azimuth+turn), float64(got), float64(p.Height))
				}
			}
		}
		a := quantity.Degrees(rapid.Float64Range(-400, 800).Draw(t, "azimuth"))
		if got := float64(h.Height(a)); got < lowest-1e-9 || got > highest+1e-9 {
			t.Fatalf("at %g: %g is outside the points' %g to %g", float64(a), got, lowest, highest)
		}
	})
}

// Between 350 and 30 the line runs through north.
func TestHorizonThroughNorth(t *testing.T) {
	h, err := NewHorizon(HorizonPoint{30, 20}, HorizonPoint{350, 0}, HorizonPoint{180, 5})
	if err != nil {
		t.Fatal(err)
	}
	for azimuth, want := range map[quantity.Degrees]quantity.Degrees{0: 5, 10: 10, 355: 2.5, 105: 12.5} {
		if got := h.Height(azimuth); math.Abs(float64(got-want)) > 1e-9 {
			t.Errorf("at %g: %g, want %g", float64(azimuth), float64(got), float64(want))
		}
	}
	if got := h.Points(); len(got) != 3 || got[0].Azimuth != 30 || got[2].Azimuth != 350 {
		t.Errorf("points came back as %v", got)
	}
}

// Faults of a horizon come together, and too many points are refused.
func TestHorizonFaults(t *testing.T) {
	_, err := NewHorizon(HorizonPoint{-5, 10}, HorizonPoint{10, 95}, HorizonPoint{20, 1}, HorizonPoint{20, 2})
	for _, word := range []string{"point 1: azimuth -5", "point 2: height 95", "azimuth 20 deg twice"} {
		if err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%q is missing from %v", word, err)
		}
	}
	if _, err := NewHorizon(make([]HorizonPoint, MostHorizon+1)...); err == nil {
		t.Error("too many points were taken")
	}
	var flat Horizon
	if low, err := NewHorizon(HorizonPoint{90, 0}); err != nil || !low.Flat() || !flat.Flat() || flat.Height(77) != 0 {
		t.Errorf("a flat horizon is not flat: %v", err)
	}
}
