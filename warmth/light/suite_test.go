package light

import (
	"testing"

	"suffice/glass"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/site/weather"
	"suffice/site/weather/files"
)

const surfrad = "../../site/sun/testdata/surfrad/"

const denver = "../../site/weather/files/testdata/725650TYA_denver-intl-ap.csv.gz"

// outdoors reads a record with the ground of the suite.
func outdoors(t testing.TB, path string, o Options) *Outdoors {
	t.Helper()
	r, err := files.Open(path, files.Options{})
	if err != nil {
		t.Fatal(err)
	}
	h, _, err := weather.Complete(r, weather.Options{})
	if err != nil {
		t.Fatal(err)
	}
	days := make([]sun.Date, len(h.Days))
	for i, d := range h.Days {
		days[i] = sun.Date{Year: d.Year, Month: d.Month, Date: d.Date}
	}
	out, err := NewOutdoors(h, sun.NewTrack(h.Place, days), o)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func upright(azimuth quantity.Degrees) sun.Plane { return sun.Plane{Slope: 90, Azimuth: azimuth} }

// suitePane is the clear pane of the 2020 suite, 3.048 mm, by its coefficients at normal incidence.
func suitePane() glass.Pane {
	return glass.Pane{Thickness: 3.048, Index: glass.GlassIndex, Conductivity: 1, Coating: glass.Coating{Transmitted: 0.834, Front: 0.075, Back: 0.075}}
}
