package evap

import (
	"math"
	"testing"

	"suffice/site"
)

// The two halves of a column meet without a seam: a column of days equals the hours taken one after the other.
func TestColumnIsHourAfterHour(t *testing.T) {
	c := Columns{Place: site.Place{Latitude: 16.22, Longitude: -16.25, Altitude: 8}}
	for d := range 9 {
		c.DayOfYear = append(c.DayOfYear, 270+d)
		for clock := range 24 {
			up := math.Max(0, math.Sin(float64(clock-6)*math.Pi/12))
			c.Temperature = append(c.Temperature, 25+8*up+float64(d%3))
			c.Humidity = append(c.Humidity, 80-30*up)
			c.Wind = append(c.Wind, 2+up)
			c.Light = append(c.Light, (400+60*float64(d))*up)
		}
	}
	want, cloudiness := make([]float64, len(c.Temperature)), 0.0
	for d := range c.DayOfYear {
		cloudiness = c.day(want[24*d:24*d+24], d, cloudiness)
	}
	if cloudiness <= 0 || cloudiness > 1 {
		t.Fatalf("the last evening is %g cloudy, want above 0 to 1", cloudiness)
	}
	for i, got := range Column(c) {
		if got != want[i] {
			t.Fatalf("hour %d: %g, one after the other %g", i, got, want[i])
		}
	}
}

// Under glass in still air, the light of FAO-56's example 19 and its air give what eq. 53 gives with its wind and long-wave loss set so.
func TestUnderIsTheHourlyEquation(t *testing.T) {
	in := Hour{Latitude: 16.22, Longitude: -16.25, Zone: -1, DayOfYear: 274, At: 14.5, Altitude: 8, Temperature: 38, Humidity: 52, Wind: StillWind, Radiation: 2.45}
	open := Hourly(in)
	below := open.Slope + open.Gamma*(1+0.34*StillWind)
	want := float64(open.ETo) + evaporates*open.Slope*(open.SoilHeat+open.Rnl)/below
	got := float64(Under(in.Altitude, in.Temperature, in.Humidity).Gives(in.Radiation / megajoules))
	if math.Abs(got-want) > 1e-12 {
		t.Errorf("%.15g mm under glass, the equation gives %.15g", got, want)
	}
}

// Dry air and light draw, damp dark air does not.
func TestUnderDrawsNothingFromDampDark(t *testing.T) {
	if got := Under(0, 20, 100).Gives(0); got != 0 {
		t.Errorf("damp dark air draws %g mm", float64(got))
	}
}
