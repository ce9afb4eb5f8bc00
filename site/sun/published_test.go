package sun

import (
	"testing"
	"time"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/site"
)

// golden is the worked example of the Solar Position Algorithm report.
var golden = site.Place{Latitude: 39.742476, Longitude: -105.1786, Altitude: 1830.14, Clock: -7}

func TestSolarPositionAlgorithmExample(t *testing.T) {
	at := time.Date(2003, 10, 17, 12, 30, 30, 0, time.FixedZone("", -7*3600))
	p := Look(golden, at, Sight{Pressure: 82, Temperature: 11})
	check.That(t, float64(p.Zenith), check.Published{Source: "spa", At: "table A5.1: zenith, refracted", Value: "50.111622", Unit: "deg",
		Within: 0.01, Why: "the series of 25 terms is good to 0.01 deg (meeus ch. 25)"})
	check.That(t, float64(p.Azimuth), check.Published{Source: "spa", At: "table A5.1: azimuth from north", Value: "194.340241", Unit: "deg",
		Within: 0.01, Why: "the series of 25 terms is good to 0.01 deg (meeus ch. 25)"})
	f := NewFace(Plane{Slope: 30, Azimuth: 170}, 0, Isotropic, site.Horizon{})
	t.Log(p, f, quantity.Degrees(0))
	d := DaylightOf(golden, Date{2003, 10, 17})
	t.Log(d.Rise, d.Noon, d.Set)
}
